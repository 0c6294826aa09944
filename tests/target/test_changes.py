"""What a cook can change, and what no change ever touches."""

from __future__ import annotations

from collections.abc import Callable
from fractions import Fraction
from pathlib import Path

import pytest

from tarebook.figures.foods import food
from tarebook.quantities.units import factor
from tarebook.recipe.load import load_recipe, shipped_recipes
from tarebook.recipe.model import Recipe, Surface
from tarebook.target import CHANGES
from tarebook.target.changes import both

RecipeOf = Callable[..., Recipe]
BY_KEY = {one.key: one for one in CHANGES}
HALF = Fraction(1, 2)


def volumes(recipe: Recipe) -> dict[str, Fraction]:
    """Return what each ingredient measures [mL], of those measured by volume."""
    return {
        one.name: one.amount.middle * factor(one.amount.unit, "milliliter")
        for one in recipe.ingredients
    }


@pytest.mark.parametrize("name", shipped_recipes())
@pytest.mark.parametrize("change", CHANGES, ids=lambda one: one.key)
def test_none_of_a_change_is_the_recipe_as_written(name: str, change: object) -> None:
    """A share of nothing changes nothing."""
    recipe, _ = load_recipe(name)
    assert isinstance(change, type(CHANGES[0]))
    if change.applies(recipe):
        assert recipe.ingredients == change.apply(recipe, Fraction(0)).ingredients
        assert recipe.soak.surface == change.apply(recipe, Fraction(0)).soak.surface


@pytest.mark.parametrize("share", [Fraction(1, 3), HALF, Fraction(1)])
@pytest.mark.parametrize("change", CHANGES, ids=lambda one: one.key)
def test_curing_salt_and_heat_are_never_touched(change: object, share: Fraction) -> None:
    """Whatever changes, the curing salt is the same for the same meat, and so is the heat step."""
    recipe, _ = load_recipe("cranberry-moose")
    assert isinstance(change, type(CHANGES[0]))
    after = change.apply(recipe, share)
    cures = [[one for one in each.ingredients if food(one.food).curing] for each in (recipe, after)]

    assert cures[0] and cures[0] == cures[1]
    assert (recipe.heat, recipe.drying, recipe.meat) == (after.heat, after.drying, after.meat)


def test_half_a_sauce_as_its_low_sodium_kind(recipe_of: RecipeOf) -> None:
    """A cup becomes half a cup of each; the volume stays."""
    after = volumes(BY_KEY["low-sodium"].apply(recipe_of(marinade={"soy-sauce": "1 cup"}), HALF))
    cup = factor("cup", "milliliter")

    assert {"soy-sauce": cup / 2, "soy-sauce-low-sodium": cup / 2} == after


def test_all_of_a_sauce_leaves_no_empty_line(recipe_of: RecipeOf) -> None:
    """Nothing of the old one is left to measure."""
    recipe = recipe_of(marinade={"soy-sauce": "1 cup"})

    assert ["soy-sauce-low-sodium"] == list(
        volumes(BY_KEY["low-sodium"].apply(recipe, Fraction(1)))
    )


def test_water_for_two_sauces_is_one_line(recipe_of: RecipeOf) -> None:
    """And joins water that is there already."""
    recipe = recipe_of(
        marinade={"soy-sauce": "1 cup", "water": "1/2 cup", "worcestershire": "1/4 cup"}
    )
    after = volumes(BY_KEY["water"].apply(recipe, Fraction(1)))

    assert {"soy-sauce", "water", "worcestershire"} == set(after)
    assert sum(volumes(recipe).values()) == sum(after.values())


def test_water_never_takes_the_place_of_what_has_no_salt(recipe_of: RecipeOf) -> None:
    """Vinegar and oil stay as they are."""
    recipe = recipe_of(marinade={"cider-vinegar": "1 cup", "oil-olive": "1 Tbsp"})

    assert not BY_KEY["water"].applies(recipe)


def test_a_shorter_soak_stays_a_soak(recipe_of: RecipeOf) -> None:
    """At its most, two hours; never below."""
    after = BY_KEY["shorter"].apply(recipe_of(), Fraction(1))

    assert 2.0 == pytest.approx(after.soak.hours[1])
    assert not BY_KEY["shorter"].applies(recipe_of(soak="hours = 2"))


def test_patting_is_all_or_nothing(recipe_of: RecipeOf) -> None:
    """Strips that are patted already cannot be patted more."""
    after = BY_KEY["patted"].apply(recipe_of(), Fraction(1))

    assert Surface.PATTED is after.soak.surface
    assert not BY_KEY["patted"].applies(after)


@pytest.mark.parametrize("step", ["simmered in its marinade", "marinade boiled down onto the meat"])
def test_where_all_is_cooked_in_the_soak_decides_nothing(recipe_of: RecipeOf, step: str) -> None:
    """Then neither fewer hours nor patting is offered."""
    recipe = recipe_of(heat=step)

    assert not BY_KEY["shorter"].applies(recipe) and not BY_KEY["patted"].applies(recipe)


def test_two_changes_together(recipe_of: RecipeOf) -> None:
    """All of the first, and a share of the second."""
    pair = both(BY_KEY["low-sodium"], BY_KEY["water"])
    after = volumes(pair.apply(recipe_of(marinade={"soy-sauce": "1 cup"}), HALF))

    assert {"soy-sauce-low-sodium", "water"} == set(after)


def test_what_takes_a_bottle_s_place_is_no_bottle(own_home: Path, recipe_of: RecipeOf) -> None:
    """Part of a bottle as its low-sodium kind: what comes has the table's figures, not its own."""
    file = own_home / "foods" / "lakeside-soy.toml"
    file.parent.mkdir(parents=True)
    file.write_text('like = "soy-sauce"\n[panel]\nserving = "17 g"\nsodium = "900 mg"')
    recipe = recipe_of(marinade={"lakeside-soy": "1 cup", "soy-sauce": "1 cup"})
    stays, comes = BY_KEY["low-sodium"].apply(recipe, HALF).ingredients[:2]

    assert stays.bottle is not None and stays.panel is not None
    assert (None, None) == (comes.bottle, comes.panel)


def test_a_bottle_with_less_salt_already_is_not_exchanged(
    own_home: Path, recipe_of: RecipeOf
) -> None:
    """The tables' low-sodium kind has 3,600 mg in 100 g: a bottle of 3,400 gains nothing by it."""
    file = own_home / "foods" / "lakeside-soy.toml"
    file.parent.mkdir(parents=True)
    file.write_text('like = "soy-sauce"\n[panel]\nserving = "17 g"\nsodium = "575 mg"')

    assert not BY_KEY["low-sodium"].applies(recipe_of(marinade={"lakeside-soy": "1 cup"}))
    assert BY_KEY["low-sodium"].applies(recipe_of(marinade={"soy-sauce": "1 cup"}))
