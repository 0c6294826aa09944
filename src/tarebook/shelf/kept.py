"""Rows that were worked out before, kept by what they were worked out from.

A row is found by a digest of everything it rests on: the recipe's bytes, every table, the cook's
own bottles, and the program itself. Whatever changes, the digest does; so nothing kept is stale.
The file may be lost or damaged at any time: then all is worked out again.
"""

from __future__ import annotations

import json
import sqlite3
import sys
from collections.abc import Iterable, Mapping
from contextlib import closing, suppress
from hashlib import sha256
from pathlib import Path

from tarebook.shelf.rows import Row
from tarebook.where import cache, folder, home

_FILE = "shelf.sqlite3"
_AT_ONCE = 500
_MOST_KEPT = 100_000
_TABLE = "CREATE TABLE IF NOT EXISTS kept (digest BLOB PRIMARY KEY, row TEXT) STRICT, WITHOUT ROWID"


def fingerprint() -> bytes:
    """Return a digest of all that a row rests on beside its recipe."""
    digest = sha256(sys.version.encode())
    package = Path(__file__).resolve().parents[1]
    # Beside the tables and the bottles only these rooms have a say in a row.
    rooms = ("quantities", "figures", "recipe", "scaling", "uptake", "drying", "nutrition",
             "safety", "shelf", "toml")  # fmt: skip
    code = [path for room in rooms for path in sorted((package / room).glob("*.py"))]
    tables = sorted(path for path in folder("reference").iterdir() if path.is_file())
    bottles = sorted(home().glob("foods/*.toml"))
    for path in (*code, *tables, *bottles):
        with suppress(OSError):
            data = path.read_bytes()
            digest.update(f"{path.name}\0{len(data)}\0".encode())
            digest.update(data)
    return digest.digest()


def digest_of(data: bytes, ground: bytes) -> bytes:
    """Return the digest of a recipe's bytes on the ground of everything else."""
    return sha256(ground + data).digest()


def kept_rows(digests: Iterable[bytes]) -> Mapping[bytes, list[object]]:
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
                rows = kept.execute(f"SELECT digest, row FROM kept WHERE digest IN ({marks})", some)
                found.update((digest, json.loads(row)) for digest, row in rows)
    return found


def keep_rows(rows: Mapping[bytes, Row]) -> None:
    """Keep rows for the next time; where that cannot be done, nothing is lost but time."""
    with suppress(sqlite3.Error, OSError):
        cache().mkdir(parents=True, exist_ok=True)
        with closing(sqlite3.connect(cache() / _FILE, timeout=2)) as kept, kept:
            kept.execute(_TABLE)
            (held,) = kept.execute("SELECT count(*) FROM kept").fetchone()
            if held > _MOST_KEPT:  # recipes long changed; all of today's come again
                kept.execute("DELETE FROM kept")
            kept.executemany(
                "INSERT OR REPLACE INTO kept VALUES (?, ?)",
                # The name is no part of what is kept: two files may hold the same recipe.
                [(digest, json.dumps(row[1:])) for digest, row in rows.items()],
            )
