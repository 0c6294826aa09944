"""Finished batches out of the book: of one recipe, or of the kitchen."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from typing import TYPE_CHECKING

from tarebook.lessons.learn import learn
from tarebook.nutrition.facts import OwnYield
from tarebook.records.entry import Row
from tarebook.records.place import is_there

if TYPE_CHECKING:
    import sqlite3

_MOST = 200
"""How many batches back: the latest tell most of the next."""


def past(recipe: str | None = None) -> tuple[Row, ...]:
    """Return batches that were weighed raw and finished, the newest first; none without a book.

    Args:
        recipe: the name that a recipe goes by in the book; None for all of the kitchen.
    """
    if not is_there():
        return ()
    from tarebook.records.find import rows
    from tarebook.records.store import reading

    with reading() as db:
        return _weighed(rows(db, recipe=recipe, most=_MOST))


def own_yields(recipes: Iterable[tuple[str, Callable[[], str]]]) -> dict[str, OwnYield]:
    """Return what the kitchen's own batches say of the next one, of many recipes at once.

    Args:
        recipes: of each how it was opened, and what gives its title, asked only where the book
            has a recipe by such a name.

    Returns:
        How it was opened, to what is said; nothing of recipes without batches.
    """
    if not is_there():
        return {}
    from tarebook.records.find import recipes_known
    from tarebook.records.names import recipe_key
    from tarebook.records.store import reading

    found = {}
    with reading() as db:
        known = frozenset(recipes_known(db))
        for which, title in recipes:
            if recipe_key(which) in known and (said := _said_of(db, which, title())):
                found[which] = said
    return found


def own_yield(which: str, title: str) -> OwnYield | None:
    """Return what the kitchen's own batches say of a recipe's next one; None without any.

    Args:
        which: a path, a name, or ``-``, as the recipe was opened.
        title: the recipe's title.
    """
    if not is_there():
        return None
    from tarebook.records.store import reading

    with reading() as db:
        return _said_of(db, which, title)


def _said_of(db: sqlite3.Connection, which: str, title: str) -> OwnYield | None:
    from tarebook.records.find import rows
    from tarebook.records.names import name_in_book

    same = _weighed(rows(db, recipe=name_in_book(db, which, title).name, most=_MOST))
    return learn([one.yield_fraction for one in same if one.yield_fraction is not None])


def _weighed(found: Iterable[Row]) -> tuple[Row, ...]:
    return tuple(one for one in found if not one.struck and _sound(one.yield_fraction))


def _sound(yield_fraction: float | None) -> bool:
    """Whether a yield can be one: what is heavier than it went in was not dried."""
    return yield_fraction is not None and 0 < yield_fraction < 1
