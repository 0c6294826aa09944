"""How long a cook waits for a book of a hundred thousand batches.

A script, not a test: machines differ, so each command is told beside a yardstick of the same run,
``python -c "import typer, pint"``.

    python tests/benchmarks/book.py [--batches 100000] [--runs 9] [--keep FOLDER]
"""

from __future__ import annotations

import argparse
import os
import random
import runpy
import statistics
import sys
import tempfile
import time
from collections.abc import Iterator
from fractions import Fraction
from pathlib import Path

from tarebook.recipe.load import load_recipe, recipe_bytes, shipped_recipes
from tarebook.records.entry import MEAT, NEXT_TIME, Entry, Kind
from tarebook.records.keep import (
    insert_batch,
    insert_entry,
    keep_wording,
    new_uid,
    restate,
    standing_row,
)
from tarebook.records.moment import Moment
from tarebook.records.store import writing

MOST_SECONDS, MOST_MEGABYTES = 0.4, 150
HOUR = 3600
FIRST = 1_000_000_000
YARDSTICK = [sys.executable, "-c", "import typer, pint"]


def main() -> None:
    """Make a book, time the commands that read it and one that writes, and print what was found."""
    asked = _asked()
    with tempfile.TemporaryDirectory() as folder:
        home = Path(asked.keep or folder)
        os.environ["TAREBOOK_HOME"] = str(home)
        file = home / "book.sqlite3"
        if not file.exists():
            started = time.perf_counter()
            fill(file, asked.batches)
            print(f"{asked.batches:,} batches made in {time.perf_counter() - started:.0f} s")
        print(f"{file.stat().st_size / 1e6:.0f} MB, about 10 entries a batch\n")
        timed(asked.runs, asked.batches)


def fill(file: Path, count: int) -> None:
    """Write a book of invented batches, all in one transaction."""
    chance = random.Random(20_261_125)
    names = shipped_recipes()
    texts = {name: recipe_bytes(name)[0].decode() for name in names}
    titles = {name: load_recipe(name)[0].title for name in names}
    with writing(file) as db:
        for number in range(1, count + 1):
            name = chance.choice(names)
            wording = keep_wording(db, texts[name] + f"# {number // 1000}\n")
            batch_id = insert_batch(
                db,
                number=number,
                uid=new_uid(),
                recipe=name,
                title=titles[name],
                recipe_id=wording,
            )
            entries = tuple(invented(chance, number, done=number < count))
            for entry in entries:
                insert_entry(db, batch_id, entry)
            if any(one.what == NEXT_TIME for one in entries):
                restate(db, batch_id)
                continue
            row = [batch_id, *standing_row(entries)]
            db.execute(f"INSERT INTO standing VALUES ({', '.join('?' * len(row))})", row)


def invented(chance: random.Random, batch: int, *, done: bool) -> Iterator[Entry]:
    """Yield the entries of a batch such as families make, a new one every two hours."""
    start = FIRST + batch * 2 * HOUR
    raw = Fraction(chance.randint(1500, 5000))
    told: list[tuple[int, Kind, str, Fraction | None, str]] = [
        (0, Kind.START, MEAT, raw, ""),
        (1, Kind.SOAK, "in", None, ""),
        (5, Kind.TURN, "", None, ""),
        (13, Kind.SOAK, "out", None, ""),
        (13, Kind.WEIGH, "soaked", raw * chance.randint(104, 114) / 100, ""),
        (14, Kind.DRY, "in", None, ""),
        (16, Kind.TEMP, "meat", Fraction(chance.randint(155, 168)), ""),
        (20, Kind.DRY, "out", None, ""),
        (20, Kind.WEIGH, "finished", raw * chance.randint(32, 42) / 100, ""),
        (21, Kind.NOTE, NEXT_TIME if batch % 1000 == 0 else "", None, "less pepper"),
        (22, Kind.FINISH, "", None, ""),
    ]
    for number, (hour, kind, what, value, note) in enumerate(told[: 11 if done else 5], start=1):
        at = Moment(start + hour * HOUR, -360)
        written = "" if value is None else f"{float(value):g} {'F' if kind is Kind.TEMP else 'g'}"
        yield Entry(
            new_uid(),
            batch,
            number,
            kind,
            at,
            at,
            what=what,
            written=written,
            value=value,
            note=note,
        )


def timed(runs: int, batches: int) -> None:
    """Print median, memory and the ratio to the yardstick of each command as a whole process."""
    speed = runpy.run_path(str(Path(__file__).with_name("speed.py")))
    seconds_of, measured, program = (speed[n] for n in ("_seconds", "_measured", "_program"))
    of_one, middle = "juniper-venison", str(max(batches // 2, 1))
    quick = {
        "list": ["batch", "list"],
        "list --recipe": ["batch", "list", "--recipe", of_one],
        "show (in hand)": ["batch", "show"],
        "show N": ["batch", "show", middle],
        "next": ["batch", "next"],
        "wordings": ["batch", "wordings", of_one],
        "note (writes)": ["batch", "note", "turned the bags"],
    }
    # Every line of so many takes what it takes, and other commands have their own limits.
    others = {
        "list --all": ["batch", "list", "--all"],
        "list --all --json": ["batch", "list", "--all", "--json"],
        "scale": ["scale", of_one],
        "drying": ["drying", of_one],
    }
    yard = statistics.median(seconds_of(YARDSTICK) for _ in range(runs))
    print(f"{'import typer, pint':22}{1000 * yard:7.0f} ms")
    for name, args in (quick | others).items():
        found = [measured([program(), *args]) for _ in range(runs)]
        seconds = statistics.median(one for one, _ in found)
        megabytes = max(one for _, one in found)
        limit = (seconds < MOST_SECONDS or name in others) and megabytes < MOST_MEGABYTES
        verdict = "" if limit else f"  over {MOST_SECONDS} s or {MOST_MEGABYTES} MB"
        print(f"{name:22}{1000 * seconds:7.0f} ms{megabytes:6.0f} MB{seconds / yard:6.2f}{verdict}")


def _asked() -> argparse.Namespace:
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0] if __doc__ else "")
    parser.add_argument("--batches", type=int, default=100_000, help="batches in the book")
    parser.add_argument("--runs", type=int, default=9, help="runs of each command")
    parser.add_argument("--keep", help="folder to leave the book in, or to find it in")
    return parser.parse_args()


if __name__ == "__main__":
    main()
