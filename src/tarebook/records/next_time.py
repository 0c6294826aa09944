"""Notes for next time: what a cook wanted to do otherwise, shown when a recipe comes up again.

Other commands ask here before they know whether there is a book at all: without one nothing is
opened and nothing more is loaded.
"""

from __future__ import annotations

from pathlib import Path

from tarebook.records.place import is_there
from tarebook.tuples import NamedTuple

_LONGEST_NAME = 100


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


def next_time(recipe: str) -> tuple[NextTime, ...]:
    """Return the open notes for next time of a recipe, the oldest first.

    Args:
        recipe: the name that it goes by; see :func:`recipe_key`.

    Raises:
        FileUnreadable, FileUnwritable: there is a book, and it cannot be read.
    """
    if not is_there():
        return ()
    from tarebook.records.find import open_notes
    from tarebook.records.store import reading

    with reading() as db:
        found = open_notes(db, recipe)
    return tuple(
        NextTime(note.batch, note.number, note.note, note.happened.local.date().isoformat())
        for note, _ in found
    )


def recipe_key(which: str, title: str = "") -> str:
    """Return the name that a recipe goes by in the book, however it was named today.

    Args:
        which: a path, a name, or ``-``.
        title: what to go by where it came down a pipe.

    Example:
        >>> recipe_key("juniper-venison"), recipe_key("ours/Juniper-Venison.toml")
        ('juniper-venison', 'juniper-venison')
        >>> recipe_key("-", "Piped strips")
        'piped-strips'
    """
    name = title if which == "-" else Path(which).name.removesuffix(".toml")
    words = "".join(c if c.isalnum() else " " for c in name.casefold()).split()
    return "-".join(words)[:_LONGEST_NAME] or "recipe"
