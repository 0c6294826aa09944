"""Which heat step may be had."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from tarebook.findings import AskedWrongly
from tarebook.plan.heat import COSTS, WORDS, choose, offered
from tarebook.recipe.model import HeatStep, Recipe
from tarebook.safety import Case

RecipeOf = Callable[..., Recipe]
AFTER = HeatStep.OVEN_AFTER


def case(recipe_of: RecipeOf, **parts: object) -> Case:
    """Return the case of a recipe."""
    return Case.of(recipe_of(**parts))


def test_the_oven_after_for_thin_whole_strips(recipe_of: RecipeOf) -> None:
    """Strips of raised or hunted red meat up to a quarter inch may be heated after drying."""
    for meat in ("deer", "bison-top-round", "elk", "moose"):
        assert AFTER in offered(case(recipe_of, meat=meat, thickness="1/4 in"))


@pytest.mark.parametrize(
    "parts",
    [
        {"meat": "turkey-breast"},
        {"meat": "bear"},
        {"meat": "wild boar"},
        {"meat": "deer", "thickness": "3/8 in"},
        {"meat": "deer", "form": "pieces"},
        {"meat": "deer", "form": "ground", "marinade": {}, "mixed_in": {"salt-table": "1 tsp"}},
        {"meat": "chum salmon"},
    ],
)
def test_the_oven_after_for_nothing_else(parts: dict[str, object], recipe_of: RecipeOf) -> None:
    """Poultry, bear, wild pork, thick, lumpy or ground meat and fish are heated first."""
    found = case(recipe_of, heat="steamed or roasted first", **parts)

    assert AFTER not in offered(found)
    with pytest.raises(AskedWrongly, match="oven after drying is published"):
        choose(found, "oven-after")


def test_a_recipe_that_may_not_have_its_own_step(recipe_of: RecipeOf) -> None:
    """Bear with the oven after is planned with the most cautious step, and why is told."""
    found = choose(case(recipe_of, meat="bear", heat="oven after drying"))

    assert HeatStep.SIMMERED is found.step
    assert "not for bear" in found.refused and "Wisconsin" in found.refused


def test_what_the_recipe_says_where_it_may_be(recipe_of: RecipeOf) -> None:
    """The recipe's own step is kept; another may be asked for; both are told."""
    assert (AFTER, "") == choose(case(recipe_of, heat="oven after drying"))[::2][:2]
    asked = choose(case(recipe_of, heat="oven after drying"), "steam")
    assert (HeatStep.STEAMED, "as you asked") == asked[:2]


def test_the_most_cautious_where_none_is_said(recipe_of: RecipeOf) -> None:
    """Soaked meat is simmered in its marinade; rubbed or ground meat steamed first."""

    def unheated(recipe: Recipe) -> Case:
        return Case.of(recipe._replace(heat=HeatStep.UNSTATED))

    rubbed = recipe_of(marinade={}, rub={"salt-table": "1 tsp"})
    assert HeatStep.SIMMERED is choose(unheated(recipe_of())).step
    assert HeatStep.STEAMED is choose(unheated(rubbed)).step


def test_simmering_needs_a_marinade(recipe_of: RecipeOf) -> None:
    """What lies in no marinade cannot be simmered in it."""
    rubbed = case(recipe_of, marinade={}, rub={"salt-table": "1 tsp"})

    for word in ("simmer", "boil-down"):
        with pytest.raises(AskedWrongly, match="needs a marinade"):
            choose(rubbed, word)


def test_mushrooms_follow_their_recipe(recipe_of: RecipeOf) -> None:
    """Where no rule is held, the recipe is followed, and that is told."""
    found = choose(case(recipe_of, meat="portabella", heat="oven after drying"))

    assert AFTER is found.step and "no published rule" in found.why


def test_words(recipe_of: RecipeOf) -> None:
    """Every step has a word and a cost; a word that is none is met with those that are."""
    assert set(WORDS.values()) == set(COSTS)
    with pytest.raises(AskedWrongly, match="did you mean steam"):
        choose(case(recipe_of), "steem")
