"""Bottles of the cook's own where recipes grow, swap and convert."""

from __future__ import annotations

from collections.abc import Callable
from fractions import Fraction
from pathlib import Path

import pytest

from tarebook.findings import AskedWrongly, FoodUnknown
from tarebook.quantities.drawer import choose_drawer
from tarebook.recipe.model import Recipe
from tarebook.scaling import scale_by_factor
from tarebook.scaling.conversion import converted
from tarebook.scaling.swap import Swap, swap

RecipeOf = Callable[..., Recipe]


@pytest.fixture(autouse=True)
def bottles(own_home: Path) -> None:
    """A soy sauce whose panel prints a spoon and grams, and one that prints grams alone."""
    folder = own_home / "foods"
    folder.mkdir(parents=True)
    for name, serving in (("lakeside-soy", "1 Tbsp (18 g)"), ("cove-soy", "18 g")):
        (folder / f"{name}.toml").write_text(
            f'name = "The {name}"\nlike = "soy-sauce"\n'
            f'[panel]\nserving = "{serving}"\nsodium = "600 mg"\n'
        )


def test_its_own_panel_turns_a_volume_into_a_weight(recipe_of: RecipeOf) -> None:
    """18 g in a label spoon of 15 mL: a metric cup of 250 mL weighs 300 g."""
    recipe = recipe_of(marinade={"lakeside-soy": "250 mL", "cove-soy": "250 mL"})
    scaled = scale_by_factor(recipe, Fraction(1), choose_drawer("metric"))
    own, by_table = (one.mass for one in scaled.ingredients)

    assert own is not None and by_table is not None
    assert ("own-panel", Fraction(6, 5)) == (own.source, own.g_per_ml)
    assert "own-panel" != by_table.source


def test_a_bottle_is_swapped_in(recipe_of: RecipeOf) -> None:
    """By its name, volume for volume, with its panel."""
    base = recipe_of(marinade={"soy-sauce": "1 cup"})
    (one,) = swap(base, Swap("soy-sauce", "Lakeside soy")).ingredients

    assert one.bottle is not None and one.panel == one.bottle.panel
    assert ("lakeside-soy", "soy-sauce", "1 cup") == (one.name, one.food, str(one.amount))


def test_a_bottle_is_swapped_out(recipe_of: RecipeOf) -> None:
    """By its name, or that of the food it is like; nothing of it stays behind."""
    base = recipe_of(marinade={"lakeside-soy": "1 cup"})
    for old in ("lakeside-soy", "LAKESIDE SOY", "soy-sauce"):
        (one,) = swap(base, Swap(old, "low-sodium-soy")).ingredients
        assert (None, None, "soy-sauce-low-sodium") == (one.bottle, one.panel, one.food)


def test_a_weight_is_swapped_by_the_density_of_the_bottle(recipe_of: RecipeOf) -> None:
    """100 g of water are 100 mL, and 100 mL of this sauce weigh 120 g."""
    base = recipe_of(marinade={"water": "100 g", "soy-sauce": "1 cup"})
    one, _ = swap(base, Swap("water", "lakeside-soy")).ingredients

    assert one.amount.low is not None
    assert 120 == pytest.approx(float(one.amount.low), rel=5e-3)


def test_a_bottle_takes_no_meat_s_place(recipe_of: RecipeOf) -> None:
    """A sauce is no meat, whatever it is called."""
    with pytest.raises(AskedWrongly, match="no meat"):
        swap(recipe_of(), Swap("meat", "lakeside-soy"))


def test_a_bottle_is_converted_by_its_own_panel() -> None:
    """Volume to weight, and back, under its own name."""
    there = converted("250 mL", "lakeside-soy")
    back = converted("300 g", "lakeside-soy", "mL")

    assert (300, 250) == (there.low, back.low)
    assert "250 mL The lakeside-soy = 300 grams" == there.lines()[0]
    assert "source own-panel (printed on the bottle)" in " ".join(back.lines())
    assert "lakeside-soy" == there.data()["food"]


def test_without_a_measure_on_its_panel_the_table_converts() -> None:
    """A serving by weight alone tells no density: that of the food it is like is used."""
    assert converted("1 cup", "cove-soy").low == converted("1 cup", "shoyu").low


def test_an_unknown_food_is_told_with_bottles_among_the_near() -> None:
    """A slip in a bottle's name is answered with it."""
    with pytest.raises(FoodUnknown, match="lakeside-soy"):
        converted("1 cup", "lakeside-soi")
