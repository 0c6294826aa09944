"""Many writing at once."""

from __future__ import annotations

import subprocess
import sys
from collections.abc import Callable

from tarebook.records.backup import check
from tarebook.records.find import read_batch, rows
from tarebook.records.store import reading

WRITERS, EACH = 8, 12
WRITER = """
import sys
from tarebook.records.entry import Draft, Kind
from tarebook.records.keep import add_entry, start_batch
from tarebook.records.moment import Moment
from tarebook.records.store import reading, writing

me, each = sys.argv[1], int(sys.argv[2])
now = Moment(1_795_000_000, -360)
with writing() as db:
    own = start_batch(db, recipe=me, title=me, recipe_text=me,
                      draft=Draft(kind=Kind.START, happened=now, recorded=now, what="meat"))
for count in range(each):
    for batch in (1, own.batch):
        with writing() as db:
            entry = add_entry(db, batch, Draft(kind=Kind.NOTE, happened=now, recorded=now,
                                               note=f"{me}-{count}"))
        print(entry.batch, entry.number, entry.uid, flush=True)
    with reading() as db:
        db.execute("SELECT count(*) FROM entries").fetchone()
"""


def test_eight_lose_nothing(own_home: object) -> None:
    """Eight that make the book and write at once: each entry is there, under its number."""
    children = [
        subprocess.Popen(
            [sys.executable, "-c", WRITER, f"w{number}", str(EACH)],
            stdout=subprocess.PIPE,
            stderr=subprocess.PIPE,
            text=True,
        )
        for number in range(WRITERS)
    ]
    told = set()
    for child in children:
        out, err = child.communicate(timeout=120)
        assert (0, "") == (child.returncode, err)
        told |= {tuple(line.split()) for line in out.splitlines()}

    with reading() as db:
        batches = [read_batch(db, row.number) for row in rows(db)]
    kept = {
        (str(one.batch), str(one.number), one.uid)
        for batch in batches
        for one in batch.entries
        if one.kind == "note"
    }
    assert WRITERS * EACH * 2 == len(told)
    assert told == kept
    assert {f"w{number}" for number in range(WRITERS)} == {one.recipe for one in batches}
    assert () == check().faults


def test_eight_commands_lose_nothing(start: Callable[..., object]) -> None:
    """The command itself, eight times at once: eight notes, eight numbers."""
    start()
    args = [sys.executable, "-m", "tarebook", "batch", "note"]
    children = [
        subprocess.Popen([*args, f"hand {n}"], stdout=subprocess.PIPE, text=True)
        for n in range(WRITERS)
    ]
    told = sorted(child.communicate(timeout=120)[0].split()[0] for child in children)

    assert sorted(f"1.{number}" for number in range(2, WRITERS + 2)) == told
    with reading() as db:
        notes = [one.note for one in read_batch(db, 1).entries[1:]]
    assert {f"hand {n}" for n in range(WRITERS)} == set(notes)
