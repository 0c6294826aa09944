"""What a batch costs, and a finished ounce and pound of it, by the cook's own prices."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from tarebook.nutrition.range import Range
from tarebook.quantities.units import factor
from tarebook.recipe.model import Pack
from tarebook.shopping.needs import Need
from tarebook.tuples import NamedTuple

_OUNCE_G = float(factor("ounce", "gram"))
_POUND_G = float(factor("pound", "gram"))


class Cost(NamedTuple):
    """What food costs. Money is in the cook's own, whatever that is.

    Attributes:
        used: worth of what goes into the batch, the house's share too.
        to_pay: price of the packs to buy today.
        per_ounce: low, likely and high for a finished ounce of 28.35 g; None without any price.
        per_pound: the same for a finished pound.
        without_price: foods whose price is not known; then every figure is "at least".
    """

    used: Fraction
    to_pay: Fraction
    per_ounce: tuple[float, float, float] | None
    per_pound: tuple[float, float, float] | None
    without_price: tuple[str, ...]


def cost_of(needs: Sequence[Need], finished_g: Range | None = None) -> Cost:
    """Return what a batch costs, or several of them.

    Args:
        needs: what the batch needs, food by food.
        finished_g: what the finished batch weighs [g], low, likely, high; left out, no ounce of
            it is reckoned.

    Returns:
        The cost; a lighter batch makes each ounce dearer.
    """
    used, to_pay, unknown = Fraction(0), Fraction(0), []
    for need in needs:
        each = _per_gram(need)
        if each is None or need.mass_g is None or need.pack is None or need.pack.price is None:
            unknown.append(need.food.name)
            continue
        used += each * need.mass_g
        to_pay += need.pack.price * (need.packs or 0)
    return Cost(
        used=used,
        to_pay=to_pay,
        per_ounce=_each(used, finished_g, _OUNCE_G),
        per_pound=_each(used, finished_g, _POUND_G),
        without_price=tuple(unknown),
    )


def _per_gram(need: Need) -> Fraction | None:
    pack: Pack | None = need.pack
    if pack is None or pack.price is None:
        return None
    return pack.price / need.pack_g if need.pack_g else None


def _each(
    used: Fraction, finished_g: Range | None, unit_g: float
) -> tuple[float, float, float] | None:
    if not used or finished_g is None or finished_g.low <= 0:
        return None
    low, likely, high = (
        float(used) / grams * unit_g
        for grams in (finished_g.high, finished_g.likely, finished_g.low)
    )
    return low, likely, high
