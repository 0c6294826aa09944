"""What a batch costs by the cook's own prices."""

from __future__ import annotations

from fractions import Fraction

import pytest

from tarebook.figures.foods import food
from tarebook.nutrition.range import Range
from tarebook.quantities.amount import parse_amount
from tarebook.scaling.volume_and_mass import mass_of
from tarebook.shopping import Need, Pack, cost_of

FINISHED = Range(low=300.0, likely=400.0, high=500.0, unit="g", missing=(), rough=False)


def need(name: str, mass_g: int | None, packs: int, pack: Pack | None) -> Need:
    """Return a need of so many grams and packs."""
    grams = None if mass_g is None else Fraction(mass_g)
    held = None if pack is None else mass_of(pack.size, food(name))
    each_g = None if held is None else held.middle_g
    found = Need(food(name), (name,), grams, ("some",), None, grams, packs, pack, "some")
    return found._replace(pack_g=each_g)


def pack(size: str, price: str) -> Pack:
    """Return a pack with a price."""
    return Pack(parse_amount(size), Fraction(price))


def test_what_is_used_and_what_is_paid() -> None:
    """300 g out of a 1,000 g pack at 10: worth 3, paid 10."""
    found = cost_of([need("deer", 300, 1, pack("1000 g", "10"))], FINISHED)

    assert (3, 10, ()) == (found.used, found.to_pay, found.without_price)


def test_an_ounce_is_dearest_where_the_batch_is_lightest() -> None:
    """3 in money over 300, 400 and 500 g, for 28.35 g and for 453.6 g."""
    found = cost_of([need("deer", 300, 1, pack("1000 g", "10"))], FINISHED)

    assert found.per_ounce is not None and found.per_pound is not None
    assert [3 / g * 28.349523125 for g in (500, 400, 300)] == pytest.approx(found.per_ounce)
    assert [16 * one for one in found.per_ounce] == pytest.approx(found.per_pound)


def test_what_has_no_price_is_named() -> None:
    """A total with something missing is told as such; without any price there is none."""
    priced = need("deer", 300, 1, pack("1000 g", "10"))
    free = need("honey", 50, 1, None)

    assert ("honey",) == cost_of([priced, free], FINISHED).without_price
    assert cost_of([free], FINISHED).per_ounce is None


def test_a_pack_of_unknown_weight_has_no_price_a_gram() -> None:
    """Three slices of sugar weigh nobody knows what."""
    odd = need("brown-sugar", 100, 1, Pack(parse_amount("3 slices"), Fraction(5)))

    assert ("brown sugar",) == cost_of([odd], FINISHED).without_price


def test_what_weighs_nobody_knows_what_is_named() -> None:
    """Salt by the spoon has no worth that can be told."""
    assert ("salt",) == tuple(
        name.split(",")[0]
        for name in cost_of([need("salt", None, 0, None)], FINISHED).without_price
    )
