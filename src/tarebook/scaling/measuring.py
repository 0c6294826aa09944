"""What to take from the drawer, and what the scale should read."""

from __future__ import annotations

from fractions import Fraction

from tarebook.figures.foods import Food
from tarebook.quantities.amount import Amount, AmountKind
from tarebook.quantities.drawer import Drawer, Scoops, measure
from tarebook.quantities.units import Dimension, dimension, factor
from tarebook.quantities.words import format_mass_g, format_pounds
from tarebook.tuples import NamedTuple

TOLERANCE = Fraction(2, 100)
"""How far scoops may be from the exact amount."""

DRY_SPICE_TOLERANCE = Fraction(5, 100)
"""The same for dry spices and herbs, whose spoons are rougher anyway."""

_DRY = frozenset({"spice", "herb"})
_HAND_UNITS = frozenset({"dash", "pinch", "drop"})
_COUNT_STEP = Fraction(1, 2)
# Pieces differ that much among themselves.
_COUNT_TOLERANCE = Fraction(1, 4)


class Measure(NamedTuple):
    """How to measure one scaled amount.

    Attributes:
        text: what to take (``1 cup + 1/3 cup``, ``5 cloves``, ``340 g``).
        exact: the exact scaled amount.
        taken: the exact amount over what the scoops really hold: multiply the exact amount by
            this to get what is measured [-].
        scoops: the scoops of the low and of the high end (the same twice unless a range).
        within: whether the drawer meets the tolerance.
    """

    text: str
    exact: Amount
    taken: Fraction = Fraction(1)
    scoops: tuple[Scoops, Scoops] | None = None
    within: bool = True

    @property
    def error(self) -> Fraction:
        """How far the scoops are from the exact amount, signed [-]."""
        return self.taken - 1


def measure_amount(amount: Amount, food: Food, drawer: Drawer) -> Measure:
    """Return what to measure for a scaled amount.

    Args:
        amount: the exact scaled amount.
        food: the food; dry spices get the wider tolerance, curing salts never a spoon.
        drawer: the spoons and cups in the house.

    Returns:
        Fewest scoops within tolerance; the nearest reachable volume where there are none.
    """
    if amount.kind is AmountKind.TO_TASTE or amount.low is None or amount.high is None:
        return Measure(text="to taste", exact=amount)
    kind = dimension(amount.unit)
    if amount.unit in _HAND_UNITS or kind is Dimension.COUNT:
        return _counted(amount)
    if kind is Dimension.MASS:
        return Measure(text=_weight_text(amount), exact=amount)
    return _scooped(amount, food, drawer)


def _scooped(amount: Amount, food: Food, drawer: Drawer) -> Measure:
    assert amount.low is not None and amount.high is not None
    tolerance = DRY_SPICE_TOLERANCE if food.kind in _DRY else TOLERANCE
    millilitres = factor(amount.unit, "milliliter")
    low = measure(amount.low * millilitres, drawer, tolerance)
    if not amount.is_range:
        return Measure(
            text=str(low),
            exact=amount,
            taken=1 + low.error,
            scoops=(low, low),
            within=low.within,
        )
    high = measure(amount.high * millilitres, drawer, tolerance)
    middle = (amount.low + amount.high) * millilitres
    return Measure(
        text=f"{low} to {high}" if low.volume_ml != high.volume_ml else str(low),
        exact=amount,
        taken=(low.volume_ml + high.volume_ml) / middle,
        scoops=(low, high),
        within=low.within and high.within,
    )


def _counted(amount: Amount) -> Measure:
    """Return counts to the nearest half (nearest whole from ten up), never zero."""
    assert amount.low is not None and amount.high is not None
    low, high = _nearest_count(amount.low), _nearest_count(amount.high)
    middle = (amount.low + amount.high) / 2
    rounded = amount._replace(low=low, high=high, form=())
    taken = (low + high) / 2 / middle
    within = abs(taken - 1) <= _COUNT_TOLERANCE
    return Measure(text=str(rounded), exact=amount, taken=taken, within=within)


def _nearest_count(value: Fraction) -> Fraction:
    step = Fraction(1) if value >= 10 else _COUNT_STEP
    return max(step, round(value / step) * step) if value > 0 else value


def _weight_text(amount: Amount) -> str:
    assert amount.low is not None and amount.high is not None
    grams = factor(amount.unit, "gram")
    ends = amount.low * grams, amount.high * grams
    show = format_pounds if amount.unit in ("pound", "ounce") else format_mass_g
    low, high = show(ends[0]), show(ends[1])
    return low if low == high else f"{low} to {high}"


def exact_text(amount: Amount) -> str:
    """Return the exact scaled amount in the unit it was written in, as a fraction."""
    return str(amount._replace(form=()))
