"""Low, likely and high of one figure, and what is missing from it."""

from __future__ import annotations

from collections.abc import Sequence
from math import exp, log
from typing import NamedTuple

from tarebook.nutrition.draws import percentile

LOW, LIKELY, HIGH = 0.05, 0.50, 0.95
"""The percentiles shown as low, likely and high."""

Points = tuple[float, float, float]

_NORMAL = (-1.6448536269514722, 0.0, 1.6448536269514722)  # their points of a normal distribution
# Outside these the expansion is not to be trusted, and the draws' own points stand.
_MOST_SKEW = 0.8
_LEAST_EXCESS, _MOST_EXCESS = -1.3, 2.0  # a flat law has -1.2, two heaps near -2
_FEWEST = 50


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
    values: Sequence[float],
    unit: str,
    *,
    missing: tuple[str, ...] = (),
    rough: bool = False,
    by_moments: bool = False,
) -> Range:
    """Return the range of a list of draws.

    Args:
        values: the draws, in ``unit``, any order, one or more.
        unit: their unit.
        missing: ingredients whose share is not known.
        rough: whether the figure rests on a rougher rule.
        by_moments: read the points from the draws' moments where that can be done: the better
            way for a product of many doubts, and the wrong one for a choice among cases.

    Returns:
        Its 5, 50 and 95 % points.
    """
    ends = points_by_moments(values) if by_moments else None
    low, likely, high = ends or _points(values)
    return Range(low, likely, high, unit=unit, missing=missing, rough=rough)


def points_by_moments(values: Sequence[float]) -> Points | None:
    """Return the 5, 50 and 95 % points of draws by the first four moments of their logarithms.

    A few hundred draws tell a percentile far from exactly: only the few beyond it count. Their
    moments rest on all of them, and scatter half as much.

    Args:
        values: the draws, any unit.

    Returns:
        Low, middle and high point; None where some draw is not above zero, where there are few,
        or where they are too far from log-normal for the expansion.

    Source:
        Cornish and Fisher's expansion, third order: Fisher and Cornish, Technometrics 2, 1960,
        209-225, source id "fisher-cornish-1960".

    Example:
        >>> from math import exp
        >>> bell = [exp(one / 100) for one in range(-50, 51)]
        >>> round(points_by_moments(bell)[1], 9)
        1.0
    """
    if len(values) < _FEWEST or min(values) <= 0:
        return None
    logs = [log(one) for one in values]
    count, middle = len(logs), sum(logs) / len(logs)
    away = [one - middle for one in logs]
    squares = [one * one for one in away]
    variance = sum(squares) / count
    if variance < 1e-12:
        return exp(middle), exp(middle), exp(middle)
    third = sum([a * b for a, b in zip(away, squares, strict=True)]) / count
    fourth = sum([one * one for one in squares]) / count
    spread = variance**0.5
    skew, excess = third / (variance * spread), fourth / (variance * variance) - 3
    if abs(skew) > _MOST_SKEW or not _LEAST_EXCESS <= excess <= _MOST_EXCESS:
        return None
    low, likely, high = (exp(middle + spread * _cornish_fisher(z, skew, excess)) for z in _NORMAL)
    return low, likely, high


def _points(values: Sequence[float]) -> Points:
    ordered = sorted(values)
    return percentile(ordered, LOW), percentile(ordered, LIKELY), percentile(ordered, HIGH)


def _cornish_fisher(z: float, skew: float, excess: float) -> float:
    """Return the standard deviations from the mean at which a normal one would have ``z``."""
    return (
        z
        + (z * z - 1) * skew / 6
        + (z * z * z - 3 * z) * excess / 24
        - (2 * z * z * z - 5 * z) * skew * skew / 36
    )
