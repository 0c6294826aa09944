"""Finished batches out of the book: of one recipe, or of the kitchen."""

from __future__ import annotations

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
        found = rows(db, recipe=recipe, most=_MOST)
    return tuple(one for one in found if not one.struck and _sound(one.yield_fraction))


def own_yield(recipe: str) -> OwnYield | None:
    """Return what the kitchen's own batches say of a recipe's next one; None without any.

    Args:
        recipe: the name that it goes by in the book.
    """
    same = [one.yield_fraction for one in past(recipe)]
    return learn([one for one in same if one is not None])


def last_hours(recipe: str) -> float | None:
    """Return how long the last batch of a recipe was in the dryer [h], or None."""
    return next((one.dry_h for one in past(recipe) if one.dry_h), None)


def _sound(yield_fraction: float | None) -> bool:
    """Whether a yield can be one: what is heavier than it went in was not dried."""
    return yield_fraction is not None and 0 < yield_fraction < 1
