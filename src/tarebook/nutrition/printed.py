"""The figures printed on a panel: what stands for each, and how far off rounding leaves it."""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction

from tarebook.figures.measures import density
from tarebook.figures.nutrients import FIGURES, values
from tarebook.figures.sugars import split
from tarebook.nutrition.draws import Even, Pert
from tarebook.nutrition.rounding import under, unrounded
from tarebook.recipe.model import Panel
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

    @property
    def least(self) -> float:
        """The least that it may stand for, in the unit of the figure."""
        return self.amount * (1.0 if self.rounding is None else self.rounding.low)


PRINTED = (*FIGURES, "added_sugars_g")
"""Every figure that a panel may state."""


def serving_g(panel: Panel, food_key: str) -> float | None:
    """Return what a serving weighs [g]: as printed, or by the density of the food it is like."""
    if panel.serving_g is not None or panel.serving_ml is None:
        return None if panel.serving_g is None else float(panel.serving_g)
    known = density(food_key)
    return None if known is None else float(panel.serving_ml * known.g_per_ml)


def read_panel(panel: Panel, food_key: str) -> Mapping[str, Printed]:
    """Return what a panel's figures come to in 100 g; nothing where its serving has no weight.

    Args:
        panel: as printed.
        food_key: key of the food that it is like, whose row tells what is likely.

    Returns:
        Each figure that is printed, by its name, per 100 g.
    """
    grams = serving_g(panel, food_key)
    if not grams:
        return {}
    by = grams / 100
    none_added = split(food_key).added_high == 0
    rows = {**values(food_key), "added_sugars_g": 0.0 if none_added else None}
    found = {}
    for name in PRINTED:
        printed: Fraction | None = getattr(panel, name)
        if printed is not None:
            row = rows[name]
            likely = None if row is None else row * by
            one = read_figure(
                name, printed, likely, rounded=panel.rounded, less=name in panel.under
            )
            found[name] = one._replace(amount=one.amount / by)
    return _added_within(found)


def _added_within(found: dict[str, Printed]) -> dict[str, Printed]:
    """Return the figures with no more added sugars than sugars.

    Two zeros may be read apart, as the food that it is like tells of its sugars and not of those
    that are added: those are then anywhere from none to all of them.
    """
    sugars, added = found.get("sugars_g"), found.get("added_sugars_g")
    if sugars is not None and added is not None and added.amount > sugars.amount:
        found["added_sugars_g"] = _alike(min(added.least, sugars.amount), sugars.amount)
    return found


def span(panel: Panel, figure: str) -> tuple[float, float]:
    """Return what a printed figure may stand for, in one serving: low, and high just no more.

    Args:
        panel: as printed; it must print the figure.
        figure: its name, as in ``PRINTED``.
    """
    printed: Fraction = getattr(panel, figure)
    if not panel.rounded:
        return float(printed), float(printed)
    low, high = under(figure) if figure in panel.under else unrounded(figure, printed)
    return float(low), float(high)


def read_figure(
    figure: str,
    printed: Fraction,
    row: float | None,
    *,
    rounded: bool = True,
    less: bool = False,
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
        less: whether it is printed as "less than" that. The row tells what is likely there too,
            if it is some and under that.

    Example:
        >>> read_figure("sugars_g", Fraction(12), None).amount
        12.0
        >>> read_figure("sugars_g", Fraction(0), 0.0).amount  # plain salt
        0.0
    """
    if not rounded:
        return Printed(float(printed), None, 0.0)
    low, high = map(float, under(figure) if less else unrounded(figure, printed))
    if less and not low < (row or 0.0) < high:
        return _alike(low, high)
    if (printed and not less) or row is None or row >= high:
        return _alike(low, high)
    return Printed(0.0, None, 0.0) if row <= 0 else _likely(low, row, high)


def _alike(low: float, high: float) -> Printed:
    if low == high:
        return Printed(low, None, 0.0)
    middle = (low + high) / 2
    even = Even(low / middle, high / middle)
    return Printed(middle, even, (high - low) / middle / 12**0.5)


def _likely(low: float, likely: float, high: float) -> Printed:
    """Return a bounded judgement at its mean; mean and variance as ``Pert`` has them."""
    mean = (low + 4 * likely + high) / 6
    cv = ((mean - low) * (high - mean) / 7) ** 0.5 / mean
    return Printed(mean, Pert(low / mean, likely / mean, high / mean), cv)
