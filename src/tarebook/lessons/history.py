"""Finished batches out of the book: of one recipe, or of the kitchen."""

from __future__ import annotations

from collections.abc import Iterable

from tarebook.lessons.learn import learn
from tarebook.nutrition.facts import OwnYield
from tarebook.records.entry import Row
from tarebook.records.place import is_there

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


def own_yield(which: str, title: str) -> OwnYield | None:
    """Return what the kitchen's own batches say of a recipe's next one; None without any.

    Args:
        which: a path, a name, or ``-``, as the recipe was opened.
        title: the recipe's title.
    """
    if not is_there():
        return None
    from tarebook.records.find import rows
    from tarebook.records.names import name_in_book
    from tarebook.records.store import reading

    with reading() as db:
        same = _weighed(rows(db, recipe=name_in_book(db, which, title).name, most=_MOST))
    return learn([one.yield_fraction for one in same if one.yield_fraction is not None])


def _weighed(found: Iterable[Row]) -> tuple[Row, ...]:
    return tuple(one for one in found if not one.struck and _sound(one.yield_fraction))


def _sound(yield_fraction: float | None) -> bool:
    """Whether a yield can be one: what is heavier than it went in was not dried."""
    return yield_fraction is not None and 0 < yield_fraction < 1
