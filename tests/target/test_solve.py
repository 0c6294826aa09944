"""Answers that keep what they promise: within 1 % in grams, at or under with spoons."""

from __future__ import annotations

from collections.abc import Callable
from fractions import Fraction

import pytest

from tarebook.nutrition import estimate, facts_of
from tarebook.quantities.drawer import choose_drawer
from tarebook.recipe.load import load_recipe, shipped_recipes
from tarebook.recipe.model import Recipe
from tarebook.scaling import scale_by_factor
from tarebook.target import (
    Answers,
    answers,
    marinade_g,
    marinade_ml,
    marinade_salt_percent,
    read_goal,
)

RecipeOf = Callable[..., Recipe]
BASIC = choose_drawer("basic")


def found(name: str, text: str, figure: str = "sodium_mg", *, likely: bool = False) -> Answers:
    """Return the answers for a shipped recipe."""
    return answers(load_recipe(name)[0], read_goal(figure, text, likely=likely), drawer=BASIC)


@pytest.mark.parametrize("name", shipped_recipes())
@pytest.mark.parametrize("text", ["10%", "30%"])
def test_an_answer_put_back_through_the_model_meets_its_goal(name: str, text: str) -> None:
    """In exact grams within 1 % of the limit and not over it; in scoops at or under it."""
    told = found(name, text)
    ways = [one for one in told.options if one.reaches]

    assert ways
    for one in ways:
        assert one.exact is not None and one.scooped is not None
        again = estimate(facts_of(one.exact.scaled))
        exact, scooped = told.goal.value(again), told.goal.value(one.scooped.estimate)
        assert exact is not None and scooped is not None
        assert exact <= told.goal.limit
        assert one.change.all_or_nothing or exact >= 0.99 * told.goal.limit
        assert scooped <= told.goal.limit


def test_the_high_estimate_is_held_against_it(recipe_of: RecipeOf) -> None:
    """By default; with the likely value less of a change is enough."""
    high, likely = (
        found("juniper-venison", "250 mg"),
        found("juniper-venison", "250 mg", likely=True),
    )
    shares = [
        next(one.exact.share for one in each.options if one.exact is not None)
        for each in (high, likely)
    ]

    assert shares[1] < shares[0]


def test_a_goal_that_is_met_changes_nothing() -> None:
    """Nothing is tried."""
    told = found("juniper-venison", "1000 mg")

    assert told.met_already and () == told.options


def test_what_no_change_reaches_is_said() -> None:
    """Even two changes together leave more; each option tells how far it gets."""
    told = found("juniper-venison", "30 mg")

    assert told.options and not any(one.reaches for one in told.options)
    assert any("+" in one.change.key for one in told.options)
    for one in told.options:
        most = told.goal.value(one.most.estimate)
        assert most is not None and most > told.goal.limit


def test_pairs_are_tried_only_where_no_single_change_is_enough() -> None:
    """The milder answer comes first."""
    assert not any("+" in one.change.key for one in found("juniper-venison", "10%").options)


def test_sugars_have_changes_of_their_own() -> None:
    """Less of what sweetens, not less salt."""
    keys = {one.change.key for one in found("juniper-venison", "20%", "sugars_g").options}

    assert "less-sweet" in keys
    assert {"less-salt", "low-sodium"}.isdisjoint(keys)


def test_a_batch_goal_is_about_the_batch() -> None:
    """Four grams in all is not four grams an ounce."""
    told = found("juniper-venison", "3 g/batch")

    assert ("batch", 3000.0) == (told.goal.per, told.goal.limit)
    for one in told.options:
        if one.exact is not None:
            whole = one.exact.estimate.per_batch["sodium_mg"]
            assert whole is not None and whole.high <= 3000.0


def test_without_a_total_nothing_is_answered(recipe_of: RecipeOf) -> None:
    """Salt by the spoon of unknown crystal: no figure, no answer."""
    recipe = recipe_of(marinade={"salt": "2 Tbsp", "water": "2 cups"})
    told = answers(recipe, read_goal("sodium_mg", "300 mg"), drawer=BASIC)

    assert () == told.options
    assert told.goal.value(told.now.estimate) is None


def test_an_answer_is_for_todays_meat() -> None:
    """Three times the meat, three times the sauce of the answer."""
    recipe = load_recipe("juniper-venison")[0]
    one, three = (
        answers(recipe, read_goal("sodium_mg", "20%"), factor=Fraction(times), drawer=BASIC)
        for times in (1, 3)
    )
    volumes = [marinade_ml(each.now.scaled) for each in (one, three)]

    assert volumes[0] is not None and volumes[1] == pytest.approx(3 * volumes[0], rel=0.05)


def test_syrup_is_liquid_of_the_marinade_and_sugar_is_not(recipe_of: RecipeOf) -> None:
    """What leaves the jug with the syrup leaves the volume; sugar dissolves and was never in it."""
    syrups = {"maple-syrup": "120 mL", "honey": "30 mL", "molasses": "30 mL"}
    recipe = recipe_of(marinade={"soy-sauce": "240 mL", "brown-sugar": "2 Tbsp", **syrups})

    whole = marinade_ml(scale_by_factor(recipe, Fraction(1), BASIC))
    assert whole == pytest.approx(420, rel=0.02)


def test_less_syrup_is_less_marinade(recipe_of: RecipeOf) -> None:
    """The way that takes syrup out tells less liquid than there was."""
    recipe = recipe_of(marinade={"soy-sauce": "1 cup", "maple-syrup": "1/2 cup"})
    told = answers(recipe, read_goal("sugars_g", "30%"), drawer=BASIC)
    way = next(one for one in told.options if one.change.key == "less-sweet")
    assert way.scooped is not None
    before, after = marinade_ml(told.now.scaled), marinade_ml(way.scooped.scaled)

    assert before is not None and after is not None
    syrup_ml = [
        sum(float(one.mass.middle_g) for one in each.scaled.ingredients
            if one.mass is not None and one.food.key == "maple-syrup") / 1.33
        for each in (told.now, way.scooped)
    ]  # fmt: skip
    assert before - after == pytest.approx(syrup_ml[0] - syrup_ml[1], rel=0.02)
    assert before - after > 20


@pytest.mark.published
def test_salt_of_a_brine_is_told_as_it_was_made(recipe_of: RecipeOf) -> None:
    """60 g of pure salt with 1,000 g of water is 5.66 % by weight: arithmetic."""
    recipe = recipe_of(marinade={"salt-table": "60 g", "water": "1000 g"})
    scaled = scale_by_factor(recipe, Fraction(1), BASIC)
    told = answers(recipe, read_goal("sodium_mg", "30%"), drawer=BASIC).now
    percent = marinade_salt_percent(told)

    assert percent == pytest.approx(100 * 60 / 1060, rel=0.02)
    assert marinade_ml(scaled) == pytest.approx(1000, rel=0.01)


def test_salt_and_weight_of_a_marinade_have_one_base(recipe_of: RecipeOf) -> None:
    """A hundredth of its weight by the percentage is the salt in it; what is in a rub is not."""
    recipe = recipe_of(marinade={"salt-table": "20 g", "honey": "80 g"}, rub={"salt-table": "9 g"})
    now = answers(recipe, read_goal("sodium_mg", "10%"), drawer=BASIC).now

    assert marinade_g(now) == pytest.approx(100)
    assert marinade_salt_percent(now) == pytest.approx(20, rel=0.02)
