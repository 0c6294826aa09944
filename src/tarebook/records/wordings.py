"""The wordings that a recipe had, one after the other, and what each was changed for."""

from __future__ import annotations

import sqlite3
from collections.abc import Iterable

from tarebook.records.entry import Entry, Kind
from tarebook.records.find import entries_of, rows, wordings
from tarebook.records.moment import Moment
from tarebook.records.standing import ended_by
from tarebook.tuples import NamedTuple


class Wording(NamedTuple):
    """A recipe as it was written for a while.

    Attributes:
        digest: of its text.
        text: the whole recipe.
        since: when it is first seen: a batch was started by it, or a note taken up in it. None
            only where that was struck.
        batches: numbers of the batches that were made by it.
        notes: notes for next time that were taken up in it.
    """

    digest: str
    text: str
    since: Moment | None
    batches: tuple[int, ...]
    notes: tuple[Entry, ...]


def wordings_of(db: sqlite3.Connection, recipe: str) -> tuple[Wording, ...]:
    """Return the wordings of a recipe, the earliest first; none is ever lost.

    Args:
        db: the book.
        recipe: the name that it goes by in the book.
    """
    batches: dict[str, list[int]] = {}
    since: dict[str, Moment | None] = {}
    notes: dict[str, list[Entry]] = {}
    taken, made = _taken(db, recipe), rows(db, recipe=recipe)[::-1]
    seen = [(one.started, one.wording) for one in made]
    seen += [(by.happened, by.wording) for by, _ in taken if by.wording]
    for moment, digest in sorted(seen, key=lambda pair: (pair[0] is None, pair[0] or ())):
        since.setdefault(digest, moment)
    for one in made:
        batches.setdefault(one.wording, []).append(one.number)
    for by, note in taken:
        notes.setdefault(by.wording or "", []).append(note)
    texts = wordings(db, since)
    return tuple(
        Wording(
            digest, texts[digest], moment, tuple(batches.get(digest, ())),
            tuple(notes.get(digest, ())),
        )
        for digest, moment in since.items()
    )  # fmt: skip


def _taken(db: sqlite3.Connection, recipe: str) -> list[tuple[Entry, Entry]]:
    """Return the entries that take up a note, and the note; those that stand."""
    asked = (
        "SELECT DISTINCT b.number FROM entries e JOIN batches b USING (batch_id) "
        "WHERE b.recipe = ? AND e.kind = ? ORDER BY b.number"
    )
    found = []
    for (number,) in db.execute(asked, [recipe, Kind.TAKEN.value]).fetchall():
        entries = entries_of(db, number)
        found += _pairs(entries)
    return sorted(found, key=lambda pair: pair[0].happened)


def _pairs(entries: Iterable[Entry]) -> list[tuple[Entry, Entry]]:
    told = {one.number: one for one in entries}
    ended = ended_by(tuple(told.values()))
    return [
        (one, told[one.about])
        for one in told.values()
        if one.kind is Kind.TAKEN and one.number not in ended and one.about is not None
    ]
