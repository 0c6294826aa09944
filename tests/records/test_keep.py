"""Writing in the book."""

from __future__ import annotations

from collections.abc import Callable
from contextlib import suppress
from fractions import Fraction
from pathlib import Path

import pytest

from tarebook.findings import AskedWrongly
from tarebook.records import keep
from tarebook.records.backup import check
from tarebook.records.entry import LONGEST_TEXT, Entry, Kind
from tarebook.records.find import (
    in_hand,
    last_batch_touched,
    latest,
    open_notes,
    read_batch,
    rows,
    wordings,
)
from tarebook.records.keep import digest_of, replace, settle_note, strike
from tarebook.records.moment import Moment
from tarebook.records.store import reading, writing

Start = Callable[..., Entry]
Add = Callable[..., Entry]
NOW = Moment(1_795_700_000, -360)


def undo(batch: int | None = None, entry: int | None = None) -> tuple[int, int]:
    """Strike an entry; return the numbers of both."""
    with writing() as db:
        struck, by = strike(db, batch, entry, at=NOW)
    return struck.number, by.number


def test_batches_count_from_one(start: Start) -> None:
    """Each batch gets the next number, and each entry the next within its batch."""
    assert [(1, 1), (2, 1), (3, 1)] == [
        (one.batch, one.number) for one in (start(), start(), start())
    ]


def test_the_recipe_is_kept_as_it_was(start: Start) -> None:
    """Every batch has its recipe whole, to the letter; the same wording is kept once."""
    texts = ["title = 'a'\r\n", "title = 'b'\n", "title = 'a'\r\n"]
    for text in texts:
        start(text=text)
    with reading() as db:
        assert texts == [read_batch(db, number).recipe_text for number in (1, 2, 3)]
        assert 2 == db.execute("SELECT count(*) FROM recipes").fetchone()[0]


def test_an_entry_is_kept_as_it_was_told(start: Start, add: Add) -> None:
    """As written and exactly, with both times, and to the letter."""
    start()
    told = add(
        "weigh", what="finished", value="1000/7", written="1/7 kg", note="\x1b[2J ünder «»\n"
    )
    with reading() as db:
        kept = read_batch(db, 1).entries[1]

    assert told == kept
    assert Fraction(1000, 7) == kept.value


def test_undo_walks_back(start: Start, add: Add) -> None:
    """Each undo strikes the last that stands, back to the start itself."""
    start()
    add("turn")
    add("turn")

    assert [(3, 4), (2, 5), (1, 6)] == [undo(), undo(), undo()]
    with pytest.raises(AskedWrongly, match=r"struck as a whole; tarebook batch undo 1\.6 brings"):
        undo()
    with pytest.raises(AskedWrongly, match="struck as a whole"):
        add("turn")
    with reading() as db:
        assert (True, None, ()) == (rows(db)[0].struck, latest(db), in_hand(db))


def test_an_undo_is_undone(start: Start, add: Add) -> None:
    """Named by its number, an undo is taken back: the batch stands again."""
    start()
    undo()
    assert (2, 3) == undo(1, 2)
    with reading() as db:
        assert (1,) == in_hand(db)
    add("turn")


def test_undo_goes_where_was_written_last(start: Start, add: Add) -> None:
    """Not the batch in hand but the last entry is taken back: a finish, too."""
    start()
    start()
    add("finish", batch=1)
    with reading() as db:
        assert (2,) == in_hand(db) and 1 == last_batch_touched(db)

    undo()
    with reading() as db:
        assert (2, 1) == in_hand(db)


def test_nothing_is_struck_twice(start: Start, add: Add) -> None:
    """What was struck or replaced is not struck again; what is not there, not at all."""
    start()
    add("turn")
    undo(1, 2)
    with pytest.raises(AskedWrongly, match=r"entry 1\.2 was struck by 1\.3 already"):
        undo(1, 2)
    with pytest.raises(AskedWrongly, match="batch 1 has no entry 9; its last is 3"):
        undo(1, 9)
    with pytest.raises(AskedWrongly, match="there is no batch 9"):
        undo(9, 1)


def test_undo_of_nothing() -> None:
    """In an empty book there is nothing to take back."""
    with pytest.raises(AskedWrongly, match="nothing has been written"):
        undo()


def test_a_replacement_keeps_what_is_not_said(start: Start, add: Add) -> None:
    """Only what is said is other; the old entry is there as it was."""
    start()
    old = add("weigh", hours=9, what="finished", value=9000, note="on the old scale")
    with writing() as db:
        same, new = replace(db, 1, 2, {"written": "900 g", "value": Fraction(900)}, at=NOW)

    assert old == same
    assert (900, "finished", "on the old scale", old.happened, NOW, 2) == (
        new.value, new.what, new.note, new.happened, new.recorded, new.about
    )  # fmt: skip
    with reading() as db:
        assert old == read_batch(db, 1).entries[1]
        assert 900.0 == rows(db)[0].finished_g


def test_no_replacement(start: Start, add: Add) -> None:
    """The same again, what does not stand, and what holds nothing are refused."""
    start()
    add("weigh", what="raw", value=2500)
    for entry, changes, says in (
        (2, {"value": Fraction(2500)}, "says just that already"),
        (3, {"note": "x"}, "has no entry 3"),
    ):
        with pytest.raises(AskedWrongly, match=says), writing() as db:
            replace(db, 1, entry, changes, at=NOW)
    undo()
    with pytest.raises(AskedWrongly, match=r"struck by 1\.3 already"), writing() as db:
        replace(db, 1, 2, {"note": "x"}, at=NOW)
    with pytest.raises(AskedWrongly, match="holds nothing to change"), writing() as db:
        replace(db, 1, 3, {"note": "x"}, at=NOW)


def test_finished_once(start: Start, add: Add) -> None:
    """A batch is finished once; when, can be put right."""
    start()
    add("finish")
    with pytest.raises(AskedWrongly, match=r"finished already; tarebook batch edit 1\.2 --at"):
        add("finish")
    with writing() as db:
        replace(db, 1, 2, {"happened": NOW}, at=NOW)
    with reading() as db:
        assert NOW == rows(db)[0].finished


def test_notes_are_settled(start: Start, add: Add) -> None:
    """A note that is taken up keeps both wordings of the recipe; then it is open no more."""
    start(text="before")
    add("note", what="next-time", note="less pepper")
    with reading() as db:
        assert ["less pepper"] == [note.note for note, _ in open_notes(db, "lake")]
    with writing() as db:
        _, taken = settle_note(db, 1, 2, Kind.TAKEN, at=NOW, recipe_text="after")

    with reading() as db:
        batch = read_batch(db, 1)
        assert () == open_notes(db)
        both = [batch.wording, taken.wording or ""]
        assert {digest_of("before"): "before", digest_of("after"): "after"} == wordings(db, both)
    with pytest.raises(AskedWrongly, match="settled already"), writing() as db:
        settle_note(db, 1, 2, Kind.DROPPED, at=NOW)
    with pytest.raises(AskedWrongly, match="no note for next time"), writing() as db:
        settle_note(db, 1, 1, Kind.DROPPED, at=NOW)
    undo(1, 3)
    with reading() as db:
        assert 1 == len(open_notes(db, "lake"))


@pytest.mark.parametrize("note", ["x" * (LONGEST_TEXT + 1), "\udcff"])
def test_what_is_no_remark(note: str, start: Start, add: Add) -> None:
    """A whole book, and bytes that are no letters, are refused; nothing is written."""
    start()
    with pytest.raises(AskedWrongly):
        add("note", note=note)
    with reading() as db:
        assert 1 == len(read_batch(db, 1).entries)


def test_a_program_gone_wild(start: Start, add: Add, monkeypatch: pytest.MonkeyPatch) -> None:
    """A batch has an end to its entries."""
    monkeypatch.setattr(keep, "MOST_ENTRIES", 3)
    start()
    add("turn")
    add("turn")
    with pytest.raises(AskedWrongly, match="no batch any more"):
        add("turn")


def test_what_is_reckoned_is_what_the_entries_say(start: Start, add: Add) -> None:
    """Whatever is written, the sums are right at once."""
    for number in (1, 2, 3):
        start(meat=None if number == 2 else 2500)
        for kind, fields in (
            ("soak", {"what": "in"}),
            ("soak", {"what": "out", "hours": 12}),
            ("weigh", {"what": "soaked", "value": 2700}),
            ("weigh", {"what": "finished", "value": 900}),
            ("note", {"what": "next-time", "note": "x"}),
            ("strike", {"about": 4}),
            ("finish", {}),
        ):
            add(kind, batch=number, **fields)
            assert () == check().faults
    with reading() as db:
        first, second, _ = reversed(rows(db))
    assert (11.0, None, 0.36) == (first.soak_h, first.soaked_g, first.yield_fraction)
    assert (None, None) == (second.raw_g, second.yield_fraction)


def test_a_name_of_its_own(start: Start, own_home: Path) -> None:
    """No two entries go by the same name."""
    names = set()
    with suppress(AskedWrongly):
        for _ in range(20):
            names.add(start().uid)
    assert 20 == len(names) and all(16 == len(name) for name in names)
