"""Notes for next time: what a cook wanted to do otherwise, shown when a recipe comes up again.

Other commands ask here before they know whether there is a book at all: without one nothing is
opened and nothing more is loaded.
"""

from __future__ import annotations

from tarebook.records.place import is_there
from tarebook.tuples import NamedTuple


class NextTime(NamedTuple):
    """One note for next time.

    Attributes:
        batch, entry: numbers of the batch and of the note within it.
        text: as written.
        day: when it was written, as the list shows it: ``2026-11-25``.
    """

    batch: int
    entry: int
    text: str
    day: str


class Known(NamedTuple):
    """What the book has on a recipe that comes up again.

    Attributes:
        notes: for next time, the oldest first.
        other: title of another recipe that has the file's name in the book; see ``names.Named``.
    """

    notes: tuple[NextTime, ...] = ()
    other: str = ""


def next_time(which: str, title: str) -> Known:
    """Return the open notes for next time of a recipe.

    Args:
        which: a path, a name, or ``-``, as it was opened.
        title: the recipe's title.

    Raises:
        FileUnreadable, FileUnwritable: there is a book, and it cannot be read.
    """
    if not is_there():
        return Known()
    from tarebook.records.find import open_notes
    from tarebook.records.names import name_in_book
    from tarebook.records.store import reading

    with reading() as db:
        named = name_in_book(db, which, title)
        found = open_notes(db, named.name)
    notes = tuple(
        NextTime(note.batch, note.number, note.note, note.happened.local.date().isoformat())
        for note, _ in found
    )
    return Known(notes, named.other)
