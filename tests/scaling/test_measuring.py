"""What to take from the drawer, and what the scale should read."""

from __future__ import annotations

from fractions import Fraction

import pytest

from tarebook.figures.foods import food
from tarebook.quantities.amount import parse_amount
from tarebook.quantities.drawer import DRAWERS
from tarebook.scaling.measuring import exact_text, measure_amount

BASIC = DRAWERS["basic"]


@pytest.mark.parametrize(
    ("amount", "name", "drawer", "taken"),
    [
        ("1 1/2 cups", "soy-sauce", "basic", "1 cup + 1/2 cup"),
        ("3/8 cup", "honey", "basic", "1/4 cup + 2 Tbsp"),
        ("3/8 cup", "honey", "full", "1/4 cup + 1/8 cup"),
        ("90 mL", "soy-sauce", "metric", "83 mL (1/3 cup) + 5 mL"),
        ("500 mL", "water", "metric", "2 x 250 mL"),
        ("2-3 tsp", "black-pepper", "basic", "2 tsp to 1 Tbsp"),
        ("340 g", "honey", "basic", "340 g"),
        ("6 lb 4 oz", "onion", "basic", "6 lb 4 oz"),
        ("1-2 kg", "onion", "basic", "1,000 g to 2,000 g"),
        ("to taste", "black-pepper", "basic", "to taste"),
        ("3 cloves, minced", "garlic", "basic", "3 cloves"),
        ("a pinch", "cayenne", "basic", "1 pinch"),
    ],
)
def test_what_to_take(amount: str, name: str, drawer: str, taken: str) -> None:
    """An amount is told in the tools of the drawer, or in the weight or count it was given in."""
    assert taken == measure_amount(parse_amount(amount), food(name), DRAWERS[drawer]).text


@pytest.mark.parametrize(
    ("cloves", "taken"),
    [
        ("1/5", "1/2 clove"),
        ("7 1/5", "7 cloves"),
        ("7 1/4", "7 cloves"),
        ("7 1/3", "7 1/2 cloves"),
        ("14 2/5", "14 cloves"),
        ("2 2/5 to 3 3/5", "2 1/2 to 3 1/2 cloves"),
    ],
)
def test_counts_go_to_the_nearest_half(cloves: str, taken: str) -> None:
    """Nobody cuts a fifth of a clove: halves, whole from ten up, and never none at all."""
    name = f"{cloves} cloves"

    assert taken == measure_amount(parse_amount(name), food("garlic"), BASIC).text


def test_taken_is_what_the_scoops_hold() -> None:
    """What is reckoned with is what the scoops hold, not the exact amount."""
    found = measure_amount(parse_amount("1 1/5 cups"), food("soy-sauce"), BASIC)

    assert "1 cup + 3 Tbsp" == found.text
    assert Fraction(19, 16) / Fraction(6, 5) == found.taken
    assert found.within and Fraction(-1, 96) == found.error


def test_a_dry_spice_may_be_rougher() -> None:
    """Five per cent is near enough for a dry spice where two are asked of a sauce."""
    amount = parse_amount("1 1/5 tsp")
    spice = measure_amount(amount, food("allspice"), BASIC)
    sauce = measure_amount(amount, food("soy-sauce"), BASIC)

    assert spice.within and not sauce.within
    assert Fraction(1, 24) == spice.error == sauce.error


def test_a_spoon_out_of_reach_says_so() -> None:
    """Where nothing in the drawer is near enough, the nearest is taken and its error is told."""
    found = measure_amount(parse_amount("1/10 tsp"), food("soy-sauce"), BASIC)

    assert "1/4 tsp" == found.text
    assert not found.within and Fraction(3, 2) == found.error


def test_the_ends_of_a_range_are_both_scooped() -> None:
    """A range is measured at both ends; its middle is what is reckoned with."""
    found = measure_amount(parse_amount("1/2 to 1 cup"), food("water"), BASIC)

    assert "1/2 cup to 1 cup" == found.text
    assert found.scoops is not None and 1 == found.taken


@pytest.mark.parametrize(
    ("amount", "by", "told"),
    [
        ("3/4 cup packed", Fraction(12, 5), "1 4/5 cups"),
        ("2-3 tsp", Fraction(1, 7), "2/7 to 3/7 tsp"),
        ("to taste", Fraction(2), "to taste"),
    ],
)
def test_the_exact_amount_is_exact(amount: str, by: Fraction, told: str) -> None:
    """The exact amount is a fraction in the unit it was written in."""
    assert told == exact_text(parse_amount(amount).times(by))
