"""The whole recipe for today's meat."""

from __future__ import annotations

from collections.abc import Callable
from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tarebook.figures.foods import food
from tarebook.findings import QuantityError
from tarebook.quantities.amount import parse_amount
from tarebook.quantities.drawer import DRAWERS
from tarebook.recipe.model import Ingredient, Meat, Part, Recipe, ScaleBy
from tarebook.scaling import Mass, ScaledRecipe, scale_by_factor, scale_to_meat, trimmed

BASIC = DRAWERS["basic"]
RecipeOf = Callable[..., Recipe]


def mixed_recipe() -> Recipe:
    """Return a recipe with every kind of amount and every way of growing."""
    listed = {
        "soy-sauce": ("3/4 cup", ScaleBy.MEAT),
        "black-pepper": ("2-3 tsp ground", ScaleBy.MEAT),
        "garlic": ("3 cloves, minced", ScaleBy.MEAT),
        "honey": ("85 g", ScaleBy.MEAT),
        "cayenne": ("a pinch", ScaleBy.MEAT),
        "salt-table": ("to taste", ScaleBy.MEAT),
        "liquid-smoke": ("1 tsp", ScaleBy.FIXED),
        "onion": ("2 medium", ScaleBy.WHOLE),
        "curing-salt-1": ("2.3 g", ScaleBy.MEAT),
    }
    return Recipe(
        title="Everything",
        meat=Meat(food="deer", amount=parse_amount("1 kg"), mass_g=Fraction(1000)),
        ingredients=tuple(
            Ingredient(
                name=name,
                food=food(name).key,
                amount=parse_amount(amount),
                scale=scale,
                strength_percent=Fraction("6.25") if name == "curing-salt-1" else None,
            )
            for name, (amount, scale) in listed.items()
        ),
    )


def by_name(scaled: ScaledRecipe) -> dict[str, str]:
    """Return what to take of each ingredient."""
    return {one.ingredient.name: one.measure.text for one in scaled.ingredients}


def test_everything_grows_as_it_should() -> None:
    """With the meat, not at all, or to whole numbers: each ingredient as the recipe says."""
    assert {
        "soy-sauce": "1 cup + 1/2 cup",
        "black-pepper": "1 Tbsp + 1 tsp to 2 Tbsp",
        "garlic": "6 cloves",
        "honey": "170 g",
        "cayenne": "2 pinches",
        "salt-table": "to taste",
        "liquid-smoke": "1 tsp",
        "onion": "4 medium",
        "curing-salt-1": "4.6 g, weighed",
    } == by_name(scale_by_factor(mixed_recipe(), Fraction(2), BASIC))


def test_a_weight_of_meat_is_a_factor() -> None:
    """Six pounds of a recipe for two and a half is 2.4 times it, exactly."""
    recipe = mixed_recipe()
    scaled = scale_to_meat(recipe, Fraction(2400), BASIC)

    assert (Fraction(12, 5), Fraction(2400)) == (scaled.factor, scaled.meat_mass_g)
    assert scale_by_factor(recipe, Fraction(12, 5), BASIC) == scaled


def test_the_recipe_itself_is_left_alone() -> None:
    """Hours, temperatures, thickness and the recipe's own amounts stay as written."""
    recipe = mixed_recipe()

    assert recipe == scale_by_factor(recipe, Fraction(7), BASIC).recipe == mixed_recipe()


@pytest.mark.parametrize(
    ("by", "medium"), [("1/10", "1 medium"), ("6/5", "2 medium"), ("7/5", "3 medium")]
)
def test_whole_numbers_stay_whole(by: str, medium: str) -> None:
    """What grows by whole numbers goes to the nearest one, and never to none."""
    assert medium == by_name(scale_by_factor(mixed_recipe(), Fraction(by), BASIC))["onion"]


@pytest.mark.parametrize(
    ("by", "grams"),
    [
        ("1", "2.3 g, weighed"),
        ("1.04", "2.3 g, weighed"),  # 2.392 g
        ("1.05", "2.4 g, weighed"),  # 2.415 g
        ("10", "23.0 g, weighed"),
        ("0.9999", "2.2 g, weighed"),
    ],
)
def test_curing_salt_is_rounded_down(by: str, grams: str) -> None:
    """Curing salt is told in grams only and rounded down to a tenth, never up."""
    scaled = scale_by_factor(mixed_recipe(), Fraction(by), BASIC)

    assert grams == by_name(scaled)["curing-salt-1"]


def test_curing_salt_under_a_tenth_of_a_gram_is_refused() -> None:
    """What no kitchen scale shows is not printed as nought."""
    with pytest.raises(QuantityError, match=r"under 0\.1 g"):
        scale_by_factor(mixed_recipe(), Fraction(1, 100), BASIC)


def test_curing_salt_by_the_spoon_is_refused() -> None:
    """Whatever let it through before, a spoon of curing salt goes no further."""
    spoon = Ingredient(name="cure", food="curing-salt-1", amount=parse_amount("1 tsp"))
    meat = Meat(food="deer", amount=parse_amount("1 kg"), mass_g=Fraction(1000))

    with pytest.raises(QuantityError, match="by weight"):
        scale_by_factor(Recipe(title="x", meat=meat, ingredients=(spoon,)), Fraction(1), BASIC)


def test_the_mass_is_of_what_is_scooped() -> None:
    """Sodium is reckoned from the scoops, so the mass is theirs and not the exact amount's."""
    scaled = scale_by_factor(mixed_recipe(), Fraction(8, 5), BASIC)  # 1 1/5 cups of soy sauce
    soy = scaled.ingredients[0]
    exact = scale_by_factor(mixed_recipe(), Fraction(1), BASIC).ingredients[0].mass

    assert "1 cup + 3 Tbsp" == soy.measure.text
    assert soy.mass is not None and exact is not None
    assert exact.middle_g / Fraction("0.75") * Fraction(19, 16) == soy.mass.middle_g


def test_the_bottles_own_density_is_used(recipe_of: RecipeOf) -> None:
    """A panel with a serving by volume and by weight tells the density of that bottle."""
    panel = '{ amount = "1 cup", panel = { serving = "1 Tbsp (17 g)", sodium = "575 mg" } }'
    scaled = scale_by_factor(recipe_of(marinade={"soy-sauce": panel}), Fraction(1), BASIC)
    mass = scaled.ingredients[0].mass

    assert mass is not None
    assert "own-panel" == mass.source
    assert 17 / 15 == pytest.approx(float(mass.g_per_ml or 0), rel=0.02)


@pytest.mark.parametrize("grams", ["0", "-1", "1/100", "10000001"])
def test_an_absurd_weight_is_refused(grams: str) -> None:
    """Nothing, less than nothing, and more than ten thousand times the recipe are refused."""
    with pytest.raises(QuantityError):
        scale_to_meat(mixed_recipe(), Fraction(grams), BASIC)


@pytest.mark.parametrize("by", ["0", "-2", "10001", "1/10001"])
def test_an_absurd_factor_is_refused(by: str) -> None:
    """A factor is above zero and within ten thousand times, either way."""
    with pytest.raises(QuantityError):
        scale_by_factor(mixed_recipe(), Fraction(by), BASIC)


def test_trimming() -> None:
    """Seven pounds bought, an eighth trimmed away: six and an eighth are left."""
    assert Fraction("6.125") == trimmed(Fraction(7), Fraction(1, 8))
    assert Fraction(7) == trimmed(Fraction(7), Fraction(0))


@pytest.mark.parametrize(("bought", "trim"), [("0", "0"), ("-1", "0"), ("7", "1"), ("7", "-0.1")])
def test_absurd_trimming_is_refused(bought: str, trim: str) -> None:
    """Nothing bought, all of it trimmed, and a negative trim are refused."""
    with pytest.raises(QuantityError):
        trimmed(Fraction(bought), Fraction(trim))


factors = st.fractions(min_value=Fraction(1, 4), max_value=50, max_denominator=60)


@settings(max_examples=60, deadline=None)
@given(first=factors, second=factors)
def test_scaling_twice_is_scaling_once(first: Fraction, second: Fraction) -> None:
    """Scaled by a and then by b is scaled by ab, exactly; curing salt within its rounding."""
    recipe = mixed_recipe()
    once = scale_by_factor(recipe, first * second, BASIC)
    half = scale_by_factor(recipe, first, BASIC)
    twice = scale_by_factor(_written_down(half), second, BASIC)

    assert once.meat_mass_g == twice.meat_mass_g
    for one, other in zip(once.ingredients, twice.ingredients, strict=True):
        if one.food.curing:
            _within_a_step(one.mass, other.mass, second)
        elif one.ingredient.scale is ScaleBy.MEAT:
            assert one.measure == other.measure
            assert one.mass == other.mass


def _written_down(scaled: ScaledRecipe) -> Recipe:
    """Return a scaled recipe as a recipe for that much meat, at its exact amounts."""
    old = scaled.recipe
    return Recipe(
        title=old.title,
        meat=Meat(food="deer", amount=old.meat.amount, mass_g=scaled.meat_mass_g),
        ingredients=tuple(
            Ingredient(
                name=one.ingredient.name,
                food=one.food.key,
                # Curing salt as weighed: the tenth that was dropped stays dropped.
                amount=parse_amount(f"{float(one.mass.high_g):.1f} g")
                if one.food.curing and one.mass and one.mass.high_g
                else one.measure.exact,
                part=Part.MARINADE,
                scale=one.ingredient.scale,
            )
            for one in scaled.ingredients
        ),
    )


def _within_a_step(once: Mass | None, twice: Mass | None, second: Fraction) -> None:
    assert once is not None and twice is not None
    assert twice.high_g <= once.high_g <= twice.high_g + Fraction(1, 10) * (second + 1)
