"""Rows that were worked out before, kept by what they were worked out from.

A row is found by a digest of everything it rests on: the recipe's bytes, every table, the program
itself, the measuring set, what the cook's own batches say, and those of the cook's own bottles that
the recipe names. Whatever changes, the digest does; so nothing kept is stale. The file may be lost
or damaged at any time: then all is worked out again.
"""

from __future__ import annotations

import json
import sqlite3
import sys
from collections.abc import Iterable, Mapping
from contextlib import closing, suppress
from hashlib import sha256
from pathlib import Path

from tarebook.shelf.rows import Kept, Row
from tarebook.tuples import NamedTuple
from tarebook.where import cache, folder, home

_FILE = "shelf.sqlite3"
_AT_ONCE = 500
_MOST_KEPT = 100_000
_TABLE = (
    "CREATE TABLE IF NOT EXISTS kept_rows (digest BLOB PRIMARY KEY, row TEXT) STRICT, WITHOUT ROWID"
)
# Beside tables and bottles only these rooms, and what lies beside them, have a say in a row.
_ROOMS = (
    ".", "findings", "toml", "quantities", "figures", "recipe", "scaling", "uptake", "drying",
    "nutrition", "safety", "shelf",
)  # fmt: skip


class Ground(NamedTuple):
    """What rows rest on beside their recipes.

    Attributes:
        digest: of tables, program and measuring set.
        bottles: digest of each of the cook's own bottles, by its name.
    """

    digest: bytes
    bottles: Mapping[str, str]


def ground_of(drawer: str) -> Ground:
    """Return what rows rest on today.

    Args:
        drawer: name of the measuring set.
    """
    package = Path(__file__).resolve().parents[1]
    digest = sha256(f"{sys.version}\0{drawer}\0".encode())
    files = [path for room in _ROOMS for path in sorted((package / room).iterdir())]
    for path in (*files, *sorted(folder("reference").iterdir())):
        if path.is_file():
            digest.update(f"{path.name}\0{_digest_of_file(path)}\0".encode())
    return Ground(digest.digest(), _bottles())


def _bottles() -> dict[str, str]:
    from tarebook.figures.foods import normalised

    found: dict[str, str] = {}
    for path in sorted(home().glob("foods/*.toml")):
        name = normalised(path.stem)
        found[name] = found.get(name, "") + _digest_of_file(path)
    return found


def _digest_of_file(path: Path) -> str:
    try:
        return sha256(path.read_bytes()).hexdigest()
    except OSError as fault:  # one that cannot be read is another than one that is not there
        return f"{fault.strerror}"


def digest_of(data: bytes, ground: Ground, own_yield: object = None) -> bytes:
    """Return the digest of a recipe on the ground of everything else but bottles.

    Args:
        data: its bytes.
        ground: what else its row rests on.
        own_yield: what the cook's own batches say of it.
    """
    return sha256(ground.digest + f"{own_yield!r}\0".encode() + data).digest()


def _bottles_among(foods: tuple[str, ...] | None, ground: Ground) -> str:
    """Return a digest of the bottles that a recipe asks for; of all, where that is not known."""
    names = ground.bottles if foods is None else [one for one in foods if one in ground.bottles]
    said = "".join(f"{name}\0{ground.bottles[name]}\0" for name in sorted(set(names)))
    return sha256(said.encode()).hexdigest() if said else ""


def kept_rows(digests: Iterable[bytes], ground: Ground) -> Mapping[bytes, list[object]]:
    """Return the values of rows kept under these digests; none where the file is lost."""
    wanted = list(digests)
    found: dict[bytes, list[object]] = {}
    with suppress(sqlite3.Error, OSError, ValueError):
        path = cache() / _FILE
        if not path.is_file():
            return found
        with closing(sqlite3.connect(f"{path.as_uri()}?mode=ro", uri=True, timeout=2)) as kept:
            for start in range(0, len(wanted), _AT_ONCE):
                some = wanted[start : start + _AT_ONCE]
                marks = ",".join("?" * len(some))
                asked = f"SELECT digest, row FROM kept_rows WHERE digest IN ({marks})"
                for digest, text in kept.execute(asked, some):
                    foods, bottles, *row = json.loads(text)
                    whole = len(row) == len(Row._fields) - 1
                    if whole and bottles == _bottles_among(foods, ground):
                        found[digest] = row
    return found


def keep_rows(rows: Mapping[bytes, Kept], ground: Ground) -> None:
    """Keep rows for the next time; where that cannot be done, nothing is lost but time."""
    with suppress(sqlite3.Error, OSError):
        cache().mkdir(parents=True, exist_ok=True)
        with closing(sqlite3.connect(cache() / _FILE, timeout=2)) as kept, kept:
            kept.execute(_TABLE)
            (held,) = kept.execute("SELECT count(*) FROM kept_rows").fetchone()
            if held > _MOST_KEPT:  # recipes long changed; all of today's come again
                kept.execute("DELETE FROM kept_rows")
            kept.executemany(
                "INSERT OR REPLACE INTO kept_rows VALUES (?, ?)",
                [(digest, _text(one, ground)) for digest, one in rows.items()],
            )


def _text(one: Kept, ground: Ground) -> str:
    # The name is no part of what is kept: two files may hold the same recipe.
    return json.dumps([one.foods, _bottles_among(one.foods, ground), *one.row[1:]])
