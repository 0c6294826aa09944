"""Finding in the book."""

from __future__ import annotations

from collections.abc import Callable

from tarebook.records.find import how_many, open_notes, recipes_known, rows
from tarebook.records.store import reading

Fill = Callable[..., object]


def test_lists(start: Fill) -> None:
    """The newest first, as many as asked for, of all recipes or of one."""
    for recipe in ("lake", "bison", "lake", "lake"):
        start(recipe)
    with reading() as db:
        assert [4, 3, 2, 1] == [row.number for row in rows(db)]
        assert [4, 3] == [row.number for row in rows(db, most=2)]
        assert [4, 3, 1] == [row.number for row in rows(db, recipe="lake")]
        assert (4, 3, 0) == (
            how_many(db), how_many(db, recipe="lake"), how_many(db, recipe="elk")
        )  # fmt: skip
        assert ("bison", "lake") == recipes_known(db)


def test_every_question_has_its_index(start: Fill) -> None:
    """None of what a cook waits for reads a whole table of entries."""
    start()
    asked: list[str] = []
    with reading() as db:
        db.set_trace_callback(asked.append)
        rows(db, recipe="lake", most=20)
        rows(db, most=20)
        open_notes(db, "lake")
        from tarebook.records.find import entries_of, in_hand, last_batch_touched, latest

        entries_of(db, 1)
        in_hand(db)
        latest(db)
        last_batch_touched(db)
        db.set_trace_callback(None)
        plans = [
            (one, step[3])
            for one in asked
            for step in db.execute(f"EXPLAIN QUERY PLAN {one}")
            if step[3].startswith("SCAN") and "USING" not in step[3]
        ]

    # The last entry written is found by walking back from the end of the table.
    assert ["SCAN e"] == [step for _, step in plans if "n." not in step]
