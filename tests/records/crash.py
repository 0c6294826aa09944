"""Kills writers at random instants and looks whether anything they were told is kept is missing.

A child writes entries and tells each one once it is kept; at some instant it is killed with
``SIGKILL``, which it can neither see nor answer. Then SQLite's own check is run over the book, and
every entry that was told is looked for, to the letter. Some children are killed while they make a
new book, or bring one of an earlier version up to date.

What this shows is that a killed process loses nothing. It shows nothing about a power cut, for
which there is ``power.py`` beside it.

    python tests/records/crash.py [--kills 500] [--seed 1]
"""

from __future__ import annotations

import argparse
import json
import os
import random
import signal
import sqlite3
import subprocess
import sys
import tempfile
import time
from contextlib import closing
from pathlib import Path
from typing import NamedTuple

from tarebook.records.backup import check
from tarebook.records.keep import digest_of
from tarebook.records.schema import MIGRATIONS, bring_up_to
from tarebook.records.store import reading

WRITER = """
import sys
from tarebook.records.entry import Draft, Kind
from tarebook.records.keep import add_entry, start_batch
from tarebook.records.moment import Moment
from tarebook.records.store import writing

me, now = sys.argv[1], Moment(1_795_000_000, -360)
def draft(kind, note):
    return Draft(kind=kind, happened=now, recorded=now, what="", note=note)
print("ready", flush=True)
with writing() as db:
    entry = start_batch(db, recipe="r", title="T", recipe_text=me, draft=draft(Kind.START, me))
print(entry.uid, me, flush=True)
count = 0
while True:
    count += 1
    with writing() as db:
        entry = add_entry(db, entry.batch, draft(Kind.NOTE, f"{me}-{count}"))
    print(entry.uid, entry.note, flush=True)
"""


class Found(NamedTuple):
    """What came of the kills.

    Attributes:
        kills: how many there were.
        midway: after how many a journal lay there: the child was killed while it wrote the file.
        told: how many entries were told as kept.
        lost: how many of those are not in the book as they were told.
        untold: how many are in the book that the child did not live to tell.
        corrupt: after how many kills a check found something.
        backups_broken: how many copies made before a new version cannot be read.
    """

    kills: int = 0
    midway: int = 0
    told: int = 0
    lost: int = 0
    untold: int = 0
    corrupt: int = 0
    backups_broken: int = 0


def crash(home: Path, kills: int, seed: int = 1) -> Found:
    """Kill writers of the book in a folder again and again, and return what was found.

    Args:
        home: an empty folder; ``TAREBOOK_HOME`` points there meanwhile.
        kills: how often.
        seed: of the instants.
    """
    os.environ["TAREBOOK_HOME"] = str(home)
    chance = random.Random(seed)
    book, done, told = home / "book.sqlite3", Found(), {}
    for number in range(kills):
        if number % 10 == 0:  # from the start again, or from an earlier version
            done = _counted(done, told)
            told = {}
            _clear(home)
            if number % 20 == 10:
                _old_book(book)
        kill = _program_killed if number % 5 == 4 else _writer_killed
        told |= kill(home, f"child{number}", chance)
        done = done._replace(midway=done.midway + book.with_name(f"{book.name}-journal").exists())
        faults = check().faults if book.exists() else ()
        done = done._replace(kills=done.kills + 1, corrupt=done.corrupt + bool(faults))
        done = done._replace(backups_broken=done.backups_broken + _broken(home))
    return _counted(done, told)


def _writer_killed(home: Path, name: str, chance: random.Random) -> dict[str, str]:
    """Let a child write one entry after the other and kill it; return what it told."""
    with _child(home, "-c", WRITER, name) as child:
        assert child.stdout is not None and child.stderr is not None
        assert b"ready\n" == child.stdout.readline(), child.stderr.read().decode()
        time.sleep(chance.choice((0.01, 0.04, 0.15, 0.6)) * chance.random())
        child.send_signal(signal.SIGKILL)
        lines = child.stdout.read().decode().split("\n")[:-1]  # the last may be half a line
        said = child.stderr.read().decode()
    assert -signal.SIGKILL == child.returncode, said
    return {uid: note for uid, _, note in (line.partition(" ") for line in lines)}


def _program_killed(home: Path, name: str, chance: random.Random) -> dict[str, str]:
    """Run the command itself and kill it; it tells its entry by what it prints."""
    words = ("batch", "start", "juniper-venison", "--meat", "6lb", "--note", name, "--json")
    with _child(home, "-m", "tarebook", *words) as child:
        assert child.stdout is not None
        time.sleep(0.05 + 0.15 * chance.random())
        child.send_signal(signal.SIGKILL)
        out = child.stdout.read()
    try:
        return {json.loads(out)["uid"]: name}
    except ValueError:
        return {}


def _child(home: Path, *args: str) -> subprocess.Popen[bytes]:
    return subprocess.Popen(
        [sys.executable, *args],
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        env={**os.environ, "TAREBOOK_HOME": str(home)},
    )


def _counted(done: Found, told: dict[str, str]) -> Found:
    """Add up what is there of what was told."""
    with reading() as db:
        kept = dict(db.execute("SELECT uid, note FROM entries WHERE note LIKE 'child%'"))
    lost = sum(kept.get(uid) != note for uid, note in told.items())
    return done._replace(
        told=done.told + len(told),
        lost=done.lost + lost,
        untold=done.untold + len(kept) - (len(told) - lost),
    )


def _old_book(book: Path) -> None:
    """Make a book of the version before this one, with some batches in it."""
    with closing(sqlite3.connect(book, isolation_level=None)) as db:
        db.execute("BEGIN")
        bring_up_to(db, len(MIGRATIONS) - 1)
        db.execute("INSERT INTO recipes VALUES (1, ?, 'y')", [digest_of("y")])
        db.executemany(
            "INSERT INTO batches VALUES (?, ?, ?, 'r', 'T', 1)",
            [(n, n, f"{n:016x}") for n in range(1, 101)],
        )
        db.executemany(
            "INSERT INTO entries VALUES (?, ?, ?, 1, 'start', '', '', NULL, 0, 0, 0, 0, '', NULL, "
            "NULL, 0)",
            [(n, f"{n + 1000:016x}", n) for n in range(1, 101)],
        )
        db.execute("COMMIT")


def _broken(home: Path) -> int:
    """Return how many copies cannot be read through; half-written ones have no such name."""
    broken = 0
    for copy in home.glob("backups/*.sqlite3"):
        with closing(sqlite3.connect(copy)) as db:
            broken += db.execute("PRAGMA integrity_check").fetchone() != ("ok",)
    return broken


def _clear(home: Path) -> None:
    for file in (*home.glob("*"), *home.glob("backups/*"), *home.glob("backups/.*")):
        if file.is_file():
            file.unlink()


def main() -> None:
    """Kill, and print the counts."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0] if __doc__ else "")
    parser.add_argument("--kills", type=int, default=500, help="how many writers to kill")
    parser.add_argument("--seed", type=int, default=1, help="of the instants")
    asked = parser.parse_args()
    with tempfile.TemporaryDirectory() as folder:
        found = crash(Path(folder), asked.kills, asked.seed)
    print(f"{found.kills:,} writers killed, {found.midway:,} of them while the file was written")
    print(f"{found.told:,} entries told as kept: {found.lost} lost")
    print(f"{found.untold:,} entries kept that nobody lived to tell")
    print(f"{found.corrupt} checks found a fault; {found.backups_broken} backups cannot be read")
    sys.exit(bool(found.lost or found.corrupt or found.backups_broken))


if __name__ == "__main__":
    main()
