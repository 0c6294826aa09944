"""Low, likely and high of one figure, and what is missing from it."""

from __future__ import annotations

from typing import NamedTuple

from tarebook.nutrition.draws import percentile

LOW, LIKELY, HIGH = 0.05, 0.50, 0.95
"""The percentiles shown as low, likely and high."""


class Range(NamedTuple):
    """A figure with its doubt: low, likely, high (5, 50 and 95 % of the draws).

    Attributes:
        low, likely, high: in ``unit``.
        unit: unit of all three.
        missing: names of ingredients whose share is not known; then each value is "at least".
        rough: True where the figure rests on a rougher rule than salt and sugar do.
    """

    low: float
    likely: float
    high: float
    unit: str
    missing: tuple[str, ...] = ()
    rough: bool = False

    @property
    def at_least(self) -> bool:
        """Whether something is missing, so that the true figure can only be higher."""
        return bool(self.missing)

    def includes_zero(self) -> bool:
        """Whether the range reaches or crosses zero: a difference smaller than its doubt."""
        return self.low <= 0 <= self.high


def range_of(
    values: list[float], unit: str, *, missing: tuple[str, ...] = (), rough: bool = False
) -> Range:
    """Return the range of a list of draws.

    Args:
        values: the draws, in ``unit``, any order, one or more.
        unit: their unit.
        missing: ingredients whose share is not known.
        rough: whether the figure rests on a rougher rule.

    Returns:
        Its 5, 50 and 95 % points.
    """
    ordered = sorted(values)
    return Range(
        low=percentile(ordered, LOW),
        likely=percentile(ordered, LIKELY),
        high=percentile(ordered, HIGH),
        unit=unit,
        missing=missing,
        rough=rough,
    )
