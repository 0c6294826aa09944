"""A figure printed on a panel: what stands for it, and how far off rounding leaves it."""

from __future__ import annotations

from fractions import Fraction

from tarebook.nutrition.draws import Even, Pert
from tarebook.nutrition.rounding import unrounded
from tarebook.tuples import NamedTuple


class Printed(NamedTuple):
    """One figure of one serving.

    Attributes:
        amount: what is reckoned with, in the unit of the figure.
        rounding: the true amount over that one [-], or None where nothing is left open.
        cv: relative standard deviation of the same [-].
    """

    amount: float
    rounding: Even | Pert | None
    cv: float


def read_figure(
    figure: str, printed: Fraction, row: float | None, *, rounded: bool = True
) -> Printed:
    """Return what a printed figure stands for.

    Above zero, the panel beats any table: the middle of what it may stand for, all of it alike.
    A printed zero says no more than "less than so much". There the row of the food that it is
    like tells what is likely, if it is under that; a food whose row has none, has none. A figure
    that was never rounded for a label is taken as it stands, zero too.

    Args:
        figure: its name, as in ``rounding``.
        printed: as on the panel, in the unit of the name.
        row: what a serving would hold by the table, in the same unit; None where not known.
        rounded: whether it was rounded as labels round.

    Example:
        >>> read_figure("sugars_g", Fraction(12), None).amount
        12.0
        >>> read_figure("sugars_g", Fraction(0), 0.0).amount  # plain salt
        0.0
    """
    if not rounded:
        return Printed(float(printed), None, 0.0)
    low, high = map(float, unrounded(figure, printed))
    if printed or row is None or row >= high:
        return _alike(low, high)
    return Printed(0.0, None, 0.0) if row <= 0 else _likely(low, row, high)


def _alike(low: float, high: float) -> Printed:
    middle = (low + high) / 2
    even = Even(low / middle, high / middle)
    return Printed(middle, even, (high - low) / middle / 12**0.5)


def _likely(low: float, likely: float, high: float) -> Printed:
    """Return a bounded judgement at its mean; mean and variance as ``Pert`` has them."""
    mean = (low + 4 * likely + high) / 6
    cv = ((mean - low) * (high - mean) / 7) ** 0.5 / mean
    return Printed(mean, Pert(low / mean, likely / mean, high / mean), cv)
