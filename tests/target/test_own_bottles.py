"""The cook's own bottles as one more change to get under a figure."""

from __future__ import annotations

from collections.abc import Callable
from fractions import Fraction
from pathlib import Path

import pytest

from tarebook.nutrition import estimate, facts_of
from tarebook.quantities.drawer import choose_drawer
from tarebook.recipe.model import Recipe
from tarebook.target import answers, read_goal
from tarebook.target.own_bottles import KEY, own_bottle_change

RecipeOf = Callable[..., Recipe]
SOY = {"soy-sauce": "1 cup"}


def bottle(home: Path, name: str, like: str, **panel: str) -> None:
    """Put a bottle into the cook's own folder, its serving 15 mL of 17 g."""
    file = home / "foods" / f"{name}.toml"
    file.parent.mkdir(parents=True, exist_ok=True)
    rows = "".join(f'{key.replace("_", "-")} = "{figure}"\n' for key, figure in panel.items())
    file.write_text(f'like = "{like}"\n[panel]\nserving = "15 mL (17 g)"\n{rows}')


def test_without_bottles_there_is_no_such_change(recipe_of: RecipeOf) -> None:
    """Nothing to offer from an empty shelf."""
    assert own_bottle_change(recipe_of(marinade=SOY), "sodium_mg") is None


def test_of_a_kind_the_one_that_holds_least_is_offered(own_home: Path, recipe_of: RecipeOf) -> None:
    """A bottle like the sauce or like its low-sodium kind; not one of another kind."""
    bottle(own_home, "lakeside-soy", "soy-sauce", sodium="700 mg")
    bottle(own_home, "cove-soy", "soy-sauce-low-sodium", sodium="500 mg")
    bottle(own_home, "weak-vinegar", "vinegar-cider", sodium="0 mg")
    found = own_bottle_change(recipe_of(marinade=SOY), "sodium_mg")

    assert found is not None
    assert "part of the soy sauce as your own cove soy" == found.words
    half = found.apply(recipe_of(marinade=SOY), Fraction(1, 2)).ingredients
    assert ["soy-sauce", "cove-soy"] == [one.name for one in half]
    assert [None, "cove-soy"] == [one.bottle and one.bottle.key for one in half]
    assert half[1].panel is not None and half[0].amount.middle == half[1].amount.middle


def test_a_bottle_with_more_in_it_is_not_offered(own_home: Path, recipe_of: RecipeOf) -> None:
    """Nor the one that the recipe has already."""
    bottle(own_home, "strong-soy", "soy-sauce", sodium="1200 mg")
    assert own_bottle_change(recipe_of(marinade=SOY), "sodium_mg") is None
    bottle(own_home, "cove-soy", "soy-sauce", sodium="500 mg")
    assert own_bottle_change(recipe_of(marinade={"cove-soy": "1 cup"}), "sodium_mg") is None


def test_a_figure_that_is_borrowed_is_no_reason(own_home: Path, recipe_of: RecipeOf) -> None:
    """A bottle like the low-sodium kind which prints no sodium is not known to hold less."""
    bottle(own_home, "blank-soy", "soy-sauce-low-sodium", sugars="1 g")

    assert own_bottle_change(recipe_of(marinade=SOY), "sodium_mg") is None


def test_for_sugars_the_one_with_least_sugar(own_home: Path, recipe_of: RecipeOf) -> None:
    """Not the one with least salt."""
    bottle(own_home, "plain", "teriyaki-sauce", sodium="900 mg", sugars="1 g", carbohydrate="2 g")
    bottle(own_home, "sweet", "teriyaki-sauce", sodium="100 mg", sugars="2 g", carbohydrate="3 g")
    recipe = recipe_of(marinade={"teriyaki-sauce": "1 cup"})
    by_salt, by_sugar = (own_bottle_change(recipe, key) for key in ("sodium_mg", "sugars_g"))

    assert by_salt is not None and by_salt.words.endswith("sweet")
    assert by_sugar is not None and by_sugar.words.endswith("plain")


def test_it_is_answered_first_and_leads_the_pairs(own_home: Path, recipe_of: RecipeOf) -> None:
    """The bottle in the house before one to buy; where it gets further, with another change too."""
    bottle(own_home, "cove-soy", "soy-sauce", sodium="300 mg")
    recipe, drawer = recipe_of(marinade=SOY), choose_drawer("basic")
    told = answers(recipe, read_goal("sodium_mg", "30%"), drawer=drawer).options[0]
    never = answers(recipe, read_goal("sodium_mg", "99%"), drawer=drawer)
    pairs = [one.change.key for one in never.options if "+" in one.change.key]

    assert KEY == told.change.key and told.reaches
    assert pairs and all(key.startswith(f"{KEY}+") for key in pairs)
    assert never.options[-1].change.words.startswith("all of the soy sauce as your own cove soy, ")
    assert "part of the soy sauce as your own cove soy" == told.change.words_at(told.most.share / 2)
    assert "all of the soy sauce as your own cove soy" == told.change.words_at(told.most.share)


def test_a_weaker_bottle_does_not_lead_the_pairs(own_home: Path, recipe_of: RecipeOf) -> None:
    """Then the low-sodium kind gets further, and leads as it did."""
    bottle(own_home, "cove-soy", "soy-sauce", sodium="850 mg")
    goal = read_goal("sodium_mg", "99%")
    never = answers(recipe_of(marinade=SOY), goal, drawer=choose_drawer("basic"))
    pairs = [one.change.key for one in never.options if "+" in one.change.key]

    assert KEY == never.options[0].change.key
    assert pairs and all(key.startswith("low-sodium+") for key in pairs)


def test_its_answer_put_back_through_the_model_meets_its_goal(
    own_home: Path, recipe_of: RecipeOf
) -> None:
    """In exact grams within 1 % and not over; in scoops at or under, by the high estimate."""
    bottle(own_home, "cove-soy", "soy-sauce", sodium="500 mg")
    for cut in ("5%", "15%", "25%"):
        goal = read_goal("sodium_mg", cut)
        told = answers(recipe_of(marinade=SOY), goal, drawer=choose_drawer("basic"))
        one = told.options[0]
        assert one.exact is not None and one.scooped is not None
        exact = estimate(facts_of(one.exact.scaled)).per_ounce["sodium_mg"]
        scooped = estimate(facts_of(one.scooped.scaled)).per_ounce["sodium_mg"]

        assert exact is not None and scooped is not None
        assert 0.99 * told.goal.limit <= exact.high <= told.goal.limit
        assert scooped.high <= told.goal.limit


def test_the_whole_of_it_is_the_bottle_alone(own_home: Path, recipe_of: RecipeOf) -> None:
    """As much of it by volume as there was of the sauce; the panel's own density weighs it."""
    bottle(own_home, "cove-soy", "soy-sauce", sodium="500 mg")
    found = own_bottle_change(recipe_of(marinade=SOY), "sodium_mg")
    assert found is not None
    (all_of_it,) = found.apply(recipe_of(marinade=SOY), Fraction(1)).ingredients

    assert ("cove-soy", "1 cup") == (all_of_it.name, f"{all_of_it.amount.middle} cup")
    assert Fraction(17, 15) == pytest.approx(all_of_it.panel and all_of_it.panel.g_per_ml)


def test_each_sauce_gets_the_bottle_of_its_own_kind(own_home: Path, recipe_of: RecipeOf) -> None:
    """Two sauces, two bottles; curing salt and what has none stay as they are."""
    bottle(own_home, "cove-soy", "soy-sauce", sodium="500 mg")
    bottle(own_home, "bay-ketchup", "ketchup", sodium="20 mg")
    marinade = {
        "soy-sauce": "1 cup",
        "ketchup": "2 Tbsp",
        "honey": "1 Tbsp",
        "curing-salt-1": '{ amount = "1 g", strength = "6.25 %" }',
    }
    recipe = recipe_of(marinade=marinade)
    found = own_bottle_change(recipe, "sodium_mg")
    assert found is not None
    after = found.apply(recipe, Fraction(1)).ingredients

    assert ["cove-soy", "bay-ketchup", "honey", "curing-salt-1"] == [one.name for one in after]
    assert recipe.ingredients[2:] == after[2:]
    assert (
        "part of the soy sauce as your own cove soy, of the ketchup as your own bay ketchup"
        == found.words
    )
