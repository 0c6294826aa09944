"""What a recipe goes by in the book: the name of its file, and its title where two share one.

A recipe may be moved, copied to another folder, or written anew, and its batches stay its own. Two
recipes that only their folders tell apart have two titles: the first that was started goes by the
file's name alone, and each later one has its title behind it. Names that stand in the book are
never changed.
"""

from __future__ import annotations

from collections.abc import Iterable
from pathlib import Path
from typing import TYPE_CHECKING

from tarebook.tuples import NamedTuple

if TYPE_CHECKING:
    import sqlite3

_LONGEST_NAME = 100
_PIPED = ("-", "<standard input>")  # as it is asked for, and as findings call it


class Named(NamedTuple):
    """What a recipe goes by in the book.

    Attributes:
        name: of its batches, those to come too.
        other: title of the recipe that has the file's name to itself, where this one has no batch
            yet; else empty. It may be the same recipe under an earlier title: that only the cook
            knows.
    """

    name: str
    other: str = ""


def recipe_key(which: str, title: str = "") -> str:
    """Return the name that the file of a recipe goes by, in whichever folder it lies.

    Args:
        which: a path, a name, or what stands for standard input.
        title: what to go by where it came down a pipe.

    Example:
        >>> recipe_key("juniper-venison"), recipe_key("ours/Juniper-Venison.toml")
        ('juniper-venison', 'juniper-venison')
        >>> recipe_key("-", "Piped strips")
        'piped-strips'
    """
    name = title if which in _PIPED else Path(which).name.removesuffix(".toml")
    words = "".join(c if c.isalnum() else " " for c in name.casefold()).split()
    return "-".join(words)[:_LONGEST_NAME] or "recipe"


def name_in_book(db: sqlite3.Connection, which: str, title: str) -> Named:
    """Return what a recipe goes by.

    Args:
        db: the book.
        which: a path, a name, or ``-``, as it was opened.
        title: the recipe's title.
    """
    key = recipe_key(which, title)
    if _has(db, key, title):
        return Named(key)
    titles = _titles(db, key)
    if not titles or _alike(title, titles):
        return Named(key)
    full = recipe_key("-", f"{key} {title}")
    return Named(full, other="" if _has(db, full) else titles[0])


def strangers(
    db: sqlite3.Connection, coming: Iterable[tuple[str, str]]
) -> list[tuple[str, str, str]]:
    """Return recipes of another book whose name another recipe has here, of all that come.

    Names are never changed, so that they share it from then on.

    Args:
        db: the book, before they are in it.
        coming: name and title of each.

    Returns:
        The name, the title that comes, and the one that is here.
    """
    found = []
    for name, title in sorted(coming):
        titles = _titles(db, name)
        if titles and not _alike(title, titles):
            found.append((name, title, titles[0]))
    return found


def _alike(title: str, titles: Iterable[str]) -> bool:
    """Whether a title is one of others, however it is spelled."""
    return recipe_key("-", title) in {recipe_key("-", one) for one in titles}


def _has(db: sqlite3.Connection, name: str, title: str | None = None) -> bool:
    """Whether there is a batch of that name, and of that title where one is told."""
    also, values = ("", [name]) if title is None else ("AND title = ?", [name, title])
    # The latest has the title of today, so that this ends at once however many there are.
    asked = f"SELECT 1 FROM batches WHERE recipe = ? {also} ORDER BY number DESC LIMIT 1"
    return db.execute(asked, values).fetchone() is not None


def _titles(db: sqlite3.Connection, name: str) -> list[str]:
    """Return the titles of the batches of a name, the one used last first."""
    asked = "SELECT title FROM batches WHERE recipe = ? GROUP BY title ORDER BY max(number) DESC"
    return [str(title) for (title,) in db.execute(asked, [name])]
