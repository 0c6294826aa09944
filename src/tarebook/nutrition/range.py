"""Low, likely and high of one figure, and what is missing from it."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from math import exp, log
from operator import mul

from tarebook.nutrition.draws import bell, percentile
from tarebook.tuples import NamedTuple

LOW, LIKELY, HIGH = 0.05, 0.50, 0.95
"""The percentiles shown as low, likely and high."""

Points = tuple[float, float, float]
Ways = Sequence[tuple[float, Sequence[float]]]

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


def range_of_ways(
    ways: Ways,
    unit: str,
    *,
    missing: tuple[str, ...] = (),
    rough: bool = False,
    by_moments: bool = False,
) -> Range:
    """Return the range of a figure that may have come about in more ways than one.

    Args:
        ways: how likely each way is, adding up to 1, and the draws of the figure that way.
        unit, missing, rough, by_moments: as of :func:`range_of`.

    Returns:
        The 5, 50 and 95 % points of all ways together.
    """
    if len(ways) == 1:
        return range_of(ways[0][1], unit, missing=missing, rough=rough, by_moments=by_moments)
    pooled = []
    for how_likely, values in ways:
        pooled += _spread(values, round(how_likely * len(values)), by_moments)
    pooled.sort()
    least, most = (end(end(values) for _, values in ways) for end in (min, max))
    low, likely, high = (
        min(max(percentile(pooled, place), least), most) for place in (LOW, LIKELY, HIGH)
    )
    return Range(low, likely, high, unit=unit, missing=missing, rough=rough)


def points_by_moments(values: Sequence[float]) -> Points | None:
    """Return the 5, 50 and 95 % points of draws by the first four moments of their logarithms.

    A few hundred draws tell a percentile far from exactly: only the few beyond it count. Their
    moments rest on all of them, and scatter half as much.

    Args:
        values: the draws, any unit.

    Returns:
        Low, middle and high point, none beyond the farthest draw; None where some draw is not
        above zero, where there are few, or where they are too far from log-normal for the
        expansion.

    Source:
        Cornish and Fisher's expansion, third order: Fisher and Cornish, Technometrics 2, 1960,
        209-225, source id "fisher-cornish-1960".

    Example:
        >>> from math import exp
        >>> bell = [exp(one / 100) for one in range(-50, 51)]
        >>> round(points_by_moments(bell)[1], 9)
        1.0
    """
    law = _law_of(values)
    if law is None:
        return None
    least, most = min(values), max(values)
    low, likely, high = (min(max(one, least), most) for one in law.at(_NORMAL))
    return low, likely, high


class _Law(NamedTuple):
    """A law near log-normal, by the moments of its logarithm."""

    middle: float
    spread: float
    skew: float
    excess: float

    def at(self, normal: Iterable[float]) -> list[float]:
        """Return the values that lie where these do in a normal law."""
        steps = _cornish_fisher(normal, self.skew, self.excess)
        return [exp(self.middle + self.spread * one) for one in steps]


def _law_of(values: Sequence[float]) -> _Law | None:
    """Return the law by its moments, or None where it is none of that kind."""
    if len(values) < _FEWEST or min(values) <= 0:
        return None
    logs = list(map(log, values))
    count, middle = len(logs), sum(logs) / len(logs)
    away = [one - middle for one in logs]
    squares = list(map(mul, away, away))
    variance = sum(squares) / count
    if variance < 1e-12:
        return _Law(middle, 0.0, 0.0, 0.0)
    spread = variance**0.5
    skew = sum(map(mul, away, squares)) / count / (variance * spread)
    excess = sum(map(mul, squares, squares)) / count / (variance * variance) - 3
    if abs(skew) > _MOST_SKEW or not _LEAST_EXCESS <= excess <= _MOST_EXCESS:
        return None
    return _Law(middle, spread, skew, excess)


def _spread(values: Sequence[float], count: int, by_moments: bool) -> list[float]:
    """Return so many points of a law, evenly spread over its probability."""
    law = _law_of(values) if by_moments else None
    if law is not None:
        return law.at(bell(count))
    ordered = sorted(values)
    return [percentile(ordered, (one + 0.5) / count) for one in range(count)]


def _points(values: Sequence[float]) -> Points:
    ordered = sorted(values)
    return percentile(ordered, LOW), percentile(ordered, LIKELY), percentile(ordered, HIGH)


def _cornish_fisher(normal: Iterable[float], skew: float, excess: float) -> list[float]:
    """Return the standard deviations from the mean at which a normal law would have these."""
    # z + (zz - 1) s/6 + (zzz - 3z) e/24 - (2zzz - 5z) ss/36, sorted by powers of z
    none, once = -skew / 6, 1 - excess / 8 + 5 * skew * skew / 36
    twice, thrice = skew / 6, excess / 24 - skew * skew / 18
    return [none + z * (once + z * (twice + z * thrice)) for z in normal]
