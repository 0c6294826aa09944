"""Two variants side by side, and whether their difference is more than the doubt in it.

Meat, uptake, thickness and finish are common to both sides: they share their draws. Each sauce's
own figure is its own. So the difference is taken draw by draw, and its range is far narrower
than two ranges laid side by side would suggest.
"""

from __future__ import annotations

from tarebook.nutrition.estimate import Estimate
from tarebook.nutrition.range import Range, range_of
from tarebook.nutrition.ranges import unit_of
from tarebook.tuples import NamedTuple


class Difference(NamedTuple):
    """How one figure differs between two variants (second less first).

    Attributes:
        figure: name of the figure.
        first, second: ranges of the two sides, or None where a side has no total.
        change: range of the paired difference, in the figure's unit, or None.
        percent: the same as a percentage of the first side, or None where that is zero.
        smaller_than_doubt: whether the range of the difference includes zero. A share that is
            missing on one side only leaves the range open on that side.
    """

    figure: str
    first: Range | None
    second: Range | None
    change: Range | None
    percent: Range | None

    @property
    def only_at_least(self) -> bool:
        """Whether the second side lacks a share that the first does not: it can only be more."""
        return bool(_missing(self.second) - _missing(self.first))

    @property
    def only_at_most(self) -> bool:
        """Whether the first side lacks a share that the second does not: it can only be less."""
        return bool(_missing(self.first) - _missing(self.second))

    @property
    def unshared(self) -> tuple[str, ...]:
        """Names whose share is missing on one side only."""
        return tuple(sorted(_missing(self.first) ^ _missing(self.second)))

    @property
    def smaller_than_doubt(self) -> bool:
        """Whether the difference may as well be none, or the other way round."""
        if self.change is None:
            return False
        reaches_down = self.only_at_most or self.change.low <= 0
        reaches_up = self.only_at_least or self.change.high >= 0
        return reaches_down and reaches_up


def _missing(side: Range | None) -> frozenset[str]:
    return frozenset() if side is None else frozenset(side.missing)


def difference(first: Estimate, second: Estimate, figure: str, *, per: str) -> Difference:
    """Return how a figure differs between two estimates.

    Args:
        first, second: the two sides; same number of draws.
        figure: name of the figure (``sodium_mg``).
        per: ``ounce`` or ``batch``.

    Returns:
        The paired difference, second less first.

    Raises:
        ValueError: ``per`` is neither.
    """
    if per not in ("ounce", "batch"):
        raise ValueError(f"per {per}: ounce or batch")
    sides = [
        (one.per_ounce if per == "ounce" else one.per_batch)[figure] for one in (first, second)
    ]
    if sides[0] is None or sides[1] is None:
        return Difference(figure=figure, first=sides[0], second=sides[1], change=None, percent=None)
    draws = [(one.draws if per == "ounce" else one.batch_draws)[figure] for one in (first, second)]
    missing = tuple(dict.fromkeys(sides[0].missing + sides[1].missing))
    change = [b - a for a, b in zip(*draws, strict=True)]
    percent = None
    if all(a > 0 for a in draws[0]):
        percent = range_of(
            [100 * (b - a) / a for a, b in zip(*draws, strict=True)], "%", missing=missing
        )
    return Difference(
        figure=figure,
        first=sides[0],
        second=sides[1],
        change=range_of(change, unit_of(figure), missing=missing),
        percent=percent,
    )
