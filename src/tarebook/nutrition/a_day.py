"""A finished ounce held against the house's own figure for a day: arithmetic, and no advice."""

from __future__ import annotations

from collections.abc import Mapping
from math import floor

from tarebook.nutrition.estimate import Estimate
from tarebook.nutrition.range import Range
from tarebook.tuples import NamedTuple


class OfADay(NamedTuple):
    """What an ounce is of a figure that the cook set for a day.

    Attributes:
        figure: ``sodium_mg`` or another figure of an ounce.
        a_day: what the cook set, above zero [unit of the figure].
        unit: unit of the figure.
        share: low, likely and high of an ounce over it [-], or None where an ounce has no total.
        missing: names of ingredients whose part is not known.
        ounces: how many whole ounces stay within it by the high estimate; None where something
            is missing, and where an ounce holds nothing of it.
    """

    figure: str
    a_day: float
    unit: str
    share: tuple[float, float, float] | None
    missing: tuple[str, ...]
    ounces: int | None


def of_a_day(found: Estimate, a_day: Mapping[str, float]) -> tuple[OfADay, ...]:
    """Return what an ounce is of each figure that the cook set for a day.

    Args:
        found: the estimate of the batch.
        a_day: figure to what was set for a day [unit of the figure]; may be empty.

    Returns:
        One for each, in the order given.
    """
    return tuple(_of(found, figure, amount) for figure, amount in a_day.items())


def _of(found: Estimate, figure: str, a_day: float) -> OfADay:
    value, unit = found.per_ounce[figure], figure.rpartition("_")[2]
    if value is None:
        return OfADay(figure, a_day, unit, None, found.no_sodium_total, None)
    share = (value.low / a_day, value.likely / a_day, value.high / a_day)
    return OfADay(figure, a_day, unit, share, value.missing, _ounces(value, a_day))


def _ounces(value: Range, a_day: float) -> int | None:
    """Return how many whole ounces stay within it: with a part unknown, nobody can say."""
    if value.missing or value.high <= 0:
        return None
    count = floor(a_day / value.high)
    return count if count * value.high <= a_day else count - 1
