"""Bottles on the shopping list: their own line, their own pack, their own price."""

from __future__ import annotations

from collections.abc import Callable
from fractions import Fraction
from pathlib import Path

import pytest

from tarebook.nutrition.range import Range
from tarebook.quantities.drawer import choose_drawer
from tarebook.recipe.model import Recipe
from tarebook.scaling import scale_by_factor
from tarebook.shopping import Need, cost_of, needs_of, read_pantry

RecipeOf = Callable[..., Recipe]
BOTTLE = """\
name = "Lakeside soy sauce"
like = "soy-sauce"
[panel]
serving = "1 Tbsp (18 g)"
[pack]
size = "150 mL"
price = 3.50
"""


@pytest.fixture(autouse=True)
def lakeside(own_home: Path) -> None:
    """One bottle, 150 mL for 3.50."""
    file = own_home / "foods" / "lakeside-soy.toml"
    file.parent.mkdir(parents=True)
    file.write_text(BOTTLE)


@pytest.fixture
def need(recipe_of: RecipeOf) -> Callable[[str], tuple[Need, ...]]:
    """What 250 mL of the bottle, and as much plain soy sauce, need by a list of the house."""

    def make(listed: str) -> tuple[Need, ...]:
        recipe = recipe_of(marinade={"lakeside-soy": "250 mL", "soy-sauce": "250 mL"})
        scaled = scale_by_factor(recipe, Fraction(1), choose_drawer("metric"))
        pantry, findings = read_pantry(listed.encode(), file="pantry.toml")
        assert pantry is not None, findings
        return needs_of([scaled], pantry)[1:]

    return make


Needed = Callable[[str], tuple[Need, ...]]


def test_a_bottle_is_a_line_of_its_own(need: Needed) -> None:
    """It is not what it is like: two lines, the bottle by its own name and density."""
    own, plain = need("currency = '$'")

    assert ("lakeside-soy", "Lakeside soy sauce", 300) == (own.food.key, own.food.name, own.mass_g)
    assert "soy-sauce" == plain.food.key


def test_its_own_pack_and_price_are_used(need: Needed) -> None:
    """250 mL out of bottles of 150 mL: two, of which 5/3 are used."""
    own, _ = need("currency = '$'")
    weight = Range(low=300.0, likely=400.0, high=500.0, unit="g", missing=(), rough=False)
    cost = cost_of([own], weight)

    assert (2, "2 x 150 mL") == (own.packs, own.buy)
    assert (7, Fraction(35, 6)) == (cost.to_pay, cost.used)


def test_the_list_of_the_house_wins(need: Needed) -> None:
    """Where the cook's list says how it is sold, that is how it is sold."""
    own, _ = need('[packs]\nlakeside-soy = { size = "500 mL", price = 9 }')

    assert (1, "1 x 500 mL") == (own.packs, own.buy)


def test_the_house_holds_a_bottle(need: Needed) -> None:
    """[have] names it too, by the measure of its own panel."""
    own, plain = need('[have]\nlakeside-soy = "250 mL"')

    assert ("", "in the house") == (own.buy, own.note)
    assert plain.buy
