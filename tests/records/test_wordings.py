"""The wordings of a recipe, batch by batch."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from tarebook.records.entry import Kind
from tarebook.records.keep import settle_note, strike
from tarebook.records.moment import Moment
from tarebook.records.store import reading, writing
from tarebook.records.wordings import wordings_of

Start, Add, At = Callable[..., Any], Callable[..., Any], Callable[..., Moment]
FIRST, SECOND, THIRD = (f'title = "Lake strips"\n# {n}\n' for n in ("one", "two", "three"))


def found(recipe: str = "lake") -> list[tuple[str, tuple[int, ...], list[str]]]:
    """Return text, batches and notes of each wording in the book of this test."""
    with reading() as db:
        told = wordings_of(db, recipe)
    return [(one.text, one.batches, [note.note for note in one.notes]) for one in told]


def take(entry: int, text: str, at: Moment, batch: int = 1) -> None:
    """Take up a note in a wording of the recipe."""
    with writing() as db:
        settle_note(db, batch, entry, Kind.TAKEN, at=at, recipe_text=text)


def test_each_wording_with_its_batches(start: Start) -> None:
    """The earliest first; the same wording once, whatever stood between."""
    for hours, text in enumerate((FIRST, FIRST, SECOND, FIRST)):
        start("lake", text=text, hours=hours)
    start("elk", text=THIRD)

    assert [(FIRST, (1, 2, 4), []), (SECOND, (3,), [])] == found()
    assert [] == found("bear")


def test_what_a_note_was_taken_up_in(start: Start, add: Add, at: At) -> None:
    """The changed recipe is kept before any batch is made by it, and the earlier one stays."""
    start("lake", text=FIRST)
    add("note", what="next-time", note="less pepper")
    add("note", what="next-time", note="more salt")
    take(2, SECOND, at(2))
    assert [(FIRST, (1,), []), (SECOND, (), ["less pepper"])] == found()
    take(3, THIRD, at(3))
    start("lake", text=THIRD, hours=4)

    assert [
        (FIRST, (1,), []),
        (SECOND, (), ["less pepper"]),
        (THIRD, (2,), ["more salt"]),
    ] == found()


def test_a_taking_that_was_struck(start: Start, add: Add, at: At) -> None:
    """It changed nothing, and is not told."""
    start("lake", text=FIRST)
    add("note", what="next-time", note="less pepper")
    take(2, SECOND, at(2))
    with writing() as db:
        strike(db, 1, 3, at=at(3))

    assert [(FIRST, (1,), [])] == found()


def test_since_when(start: Start, at: At) -> None:
    """The start of its first batch."""
    start("lake", text=FIRST, hours=5)
    start("lake", text=SECOND, hours=2)
    with reading() as db:
        told = wordings_of(db, "lake")

    assert [SECOND, FIRST] == [one.text for one in told]
    assert [at(2), at(5)] == [one.since for one in told]


def test_a_batch_that_was_struck_keeps_its_wording(start: Start, at: At) -> None:
    """Nothing is lost: it comes last, as no start of it stands."""
    start("lake", text=FIRST)
    start("lake", text=SECOND, hours=1)
    with writing() as db:
        strike(db, 1, 1, at=at(3))
    with reading() as db:
        told = wordings_of(db, "lake")

    assert [SECOND, FIRST] == [one.text for one in told]
    assert told[1].since is None
