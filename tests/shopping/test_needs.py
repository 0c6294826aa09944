"""What to buy is what is needed less what is in the house, in units a shop sells by."""

from __future__ import annotations

from collections.abc import Callable
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tarebook.quantities.drawer import choose_drawer
from tarebook.recipe.model import Recipe
from tarebook.recipe.read import read_recipe
from tarebook.scaling import ScaledRecipe, scale_by_factor
from tarebook.shopping import Need, Pantry, needs_of, read_pantry

RecipeOf = Callable[..., Recipe]
MARINADE = {"soy-sauce": "1 cup", "brown-sugar": "1/2 cup packed", "garlic": "3 cloves"}


def pantry(text: str) -> Pantry:
    """Return a pantry as written."""
    found, findings = read_pantry(text.encode(), file="pantry.toml")
    assert found is not None, findings
    return found


def lake() -> ScaledRecipe:
    """Return a kilogram of venison in soy sauce, brown sugar and garlic."""
    text = 'title = "Lake strips"\n[meat]\nfood = "deer"\namount = "1 kg"\n[marinade]\n'
    rows = "".join(f'{name} = "{amount}"\n' for name, amount in MARINADE.items())
    recipe, findings = read_recipe(text + rows, file="lake.toml")
    assert recipe is not None, findings
    return scale_by_factor(recipe, Fraction(1), choose_drawer("basic"))


LAKE = lake()


@pytest.fixture
def scaled() -> ScaledRecipe:
    """The same, for a test to name."""
    return LAKE


def by_food(needs: tuple[Need, ...]) -> dict[str, Need]:
    """Return needs by food."""
    return {one.food.key: one for one in needs}


def test_an_empty_house_buys_all(scaled: ScaledRecipe) -> None:
    """Poured things by the fluid ounce, the rest by weight, the meat first."""
    found = needs_of([scaled], pantry("currency = ''"))

    assert "deer" == found[0].food.key
    assert "2 lb 3.3 oz (1,000 g)" == found[0].buy
    assert "8.0 fl oz (237 mL)" == by_food(found)["soy-sauce"].buy


def test_the_house_is_counted_first(scaled: ScaledRecipe) -> None:
    """A quarter cup in the house leaves three quarters to buy."""
    found = by_food(needs_of([scaled], pantry('[have]\nsoy-sauce = "1/4 cup"')))

    assert "6.0 fl oz (177 mL)" == found["soy-sauce"].buy


def test_what_the_house_holds_is_not_bought(scaled: ScaledRecipe) -> None:
    """A pound of sugar is enough."""
    found = by_food(needs_of([scaled], pantry('[have]\nbrown-sugar = "1 lb"')))["brown-sugar"]

    assert ("", 0, "in the house") == (found.buy, found.buy_g, found.note)


def test_packs_are_whole(scaled: ScaledRecipe) -> None:
    """A cup out of bottles of 5 fl oz is two bottles."""
    found = by_food(needs_of([scaled], pantry('[packs]\nsoy-sauce = "5 fl oz"')))["soy-sauce"]

    assert (2, "2 x 5 fl oz") == (found.packs, found.buy)


def test_trim_is_bought_too(scaled: ScaledRecipe) -> None:
    """An eighth cut away: a kilogram trimmed is 8/7 kg bought."""
    (meat, *_) = needs_of([scaled], pantry("currency = ''"), trim=Fraction(1, 8))

    assert Fraction(8000, 7) == meat.mass_g


def test_two_recipes_share_one_line_a_food(scaled: ScaledRecipe) -> None:
    """The same sauce in both is one thing to buy."""
    one = needs_of([scaled], pantry("currency = ''"))
    two = needs_of([scaled, scaled], pantry("currency = ''"))

    assert len(one) == len(two)
    assert all(b.mass_g == 2 * a.mass_g for a, b in zip(one, two, strict=True) if a.mass_g)


def test_salt_of_unknown_crystal_is_bought_by_its_measure(recipe_of: RecipeOf) -> None:
    """What it weighs is not known, and that is said; it is not left out."""
    recipe = recipe_of(marinade={"salt": "2 Tbsp", "water": "2 cups"})
    scaled = scale_by_factor(recipe, Fraction(1), choose_drawer("basic"))
    found = by_food(needs_of([scaled], pantry("currency = ''")))["salt"]

    assert ("2 Tbsp", None, "what it weighs is not known") == (found.buy, found.buy_g, found.note)


def test_a_house_that_cannot_be_compared_says_so(scaled: ScaledRecipe) -> None:
    """A bunch of garlic of unknown weight: all of it is bought, and the note says why."""
    found = by_food(needs_of([scaled], pantry('[have]\nbrown-sugar = "3 slices"')))["brown-sugar"]

    assert found.mass_g == found.buy_g
    assert "cannot be compared" in found.note


@given(st.fractions(0, 5, max_denominator=16))
def test_bought_and_held_cover_what_is_needed(held: Fraction) -> None:
    """Whatever is in the house: house and packs together hold the batch, with no pack too many."""
    listed = pantry(f'[have]\nsoy-sauce = "{held} cup"\n[packs]\nsoy-sauce = "3 fl oz"')
    need = by_food(needs_of([LAKE], listed))["soy-sauce"]
    pack_g = need.mass_g / 8 * 3 if need.mass_g else Fraction(0)
    packs = need.packs or 0

    assert need.mass_g is not None
    assert (need.have_g or 0) + packs * pack_g >= need.mass_g
    assert packs == 0 or (need.have_g or 0) + (packs - 1) * pack_g < need.mass_g
