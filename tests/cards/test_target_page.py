"""The page of ways to get under a figure."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest

from tarebook.cards.lines import plain_text, width
from tarebook.cards.target_page import HEAT_STAYS, target_data, target_page
from tarebook.quantities.drawer import choose_drawer
from tarebook.recipe.load import load_recipe
from tarebook.recipe.model import Recipe
from tarebook.safety.ingoing import ingoing
from tarebook.target import Answers, answers, read_goal

RecipeOf = Callable[..., Recipe]


def found(name: str, text: str) -> Answers:
    """Return the answers for a shipped recipe."""
    goal = read_goal("sodium_mg", text)
    return answers(load_recipe(name)[0], goal, drawer=choose_drawer("basic"))


@pytest.mark.parametrize("name", ["juniper-venison", "maple-dill-salmon", "cabin-rub-elk"])
@pytest.mark.parametrize("text", ["300 mg", "30 mg", "2 g"])
def test_every_page_fits_eighty_columns(name: str, text: str) -> None:
    """Reached, not reached, and met already."""
    page = list(target_page("Lake strips", found(name, text)))

    assert [] == [one.text for one in page if width(one.text) > 80]


def test_a_way_tells_what_to_measure_and_what_it_costs() -> None:
    """The lines that change, in scoops and grams, and everything else that moves."""
    page = " ".join(plain_text(target_page("x", found("juniper-venison", "300 mg"))).split())

    assert "by the high estimate" in page
    assert "lower-sodium soy sauce" in page
    for word in (
        "Total sugars",
        "g in all (was ",
        "% of it salt (was ",
        "mL of it liquid (was ",
        "doubt ±",
        "Weighed instead",
    ):
        assert word in page
    assert HEAT_STAYS in page


def test_what_cannot_be_reached_is_said_plainly() -> None:
    """No way is printed, and how far each gets."""
    page = plain_text(target_page("x", found("juniper-venison", "30 mg")))

    assert "No honest change gets there." in page
    assert "Not enough: " in page and "\n1. " not in page


def test_more_nitrite_by_a_method_is_never_silent() -> None:
    """Less marinade round the same curing salt: the long soak's figure rises, and that is said."""
    told = found("cranberry-moose", "20%")
    page = " ".join(plain_text(target_page("x", told)).split())
    now, *then = (
        float(ingoing(one.scaled)[-1].ppm or 0)
        for one in (told.now, *(way.scooped for way in told.options if way.scooped))
    )

    assert 110 < max(then)
    assert f"goes up to {max(then):.0f} ppm (was {now:.0f})" in page
    assert sum(one > now for one in then) == page.count("goes up to")


def test_an_allergen_that_comes_in_is_told(recipe_of: RecipeOf) -> None:
    """No tamari with less salt is held: wheat comes with what stands in for it."""
    recipe = recipe_of(marinade={"soy-sauce-tamari": "1 cup"})
    told = answers(recipe, read_goal("sodium_mg", "20%"), drawer=choose_drawer("basic"))

    assert "New in it: wheat, by the lower-sodium soy sauce" in plain_text(target_page("x", told))
    assert "New in it" not in plain_text(target_page("x", found("juniper-venison", "20%")))


def test_an_own_bottle_is_told_by_its_name(own_home: Path, recipe_of: RecipeOf) -> None:
    """First of the ways, with what to pour of it."""
    file = own_home / "foods" / "cove-soy.toml"
    file.parent.mkdir(parents=True)
    file.write_text('like = "soy-sauce"\n[panel]\nserving = "15 mL (17 g)"\nsodium = "500 mg"\n')
    recipe = recipe_of(marinade={"soy-sauce": "1 cup"})
    told = answers(recipe, read_goal("sodium_mg", "20%"), drawer=choose_drawer("basic"))
    page = plain_text(target_page("x", told))

    assert "1. part of the soy sauce as your own cove soy" in page
    assert ["soy-sauce", "cove-soy"] == [
        one["name"] for one in target_data(told)["options"][0]["measured"]["ingredients"]
    ]


def test_no_claim_is_made() -> None:
    """No words that a label would need a rule for."""
    page = plain_text(target_page("x", found("juniper-venison", "100 mg"))).lower()

    assert "healthy" not in page and "sodium free" not in page


def test_the_data_say_the_same() -> None:
    """Shares, figures and grams as numbers."""
    data = target_data(found("juniper-venison", "300 mg"))
    first = data["options"][0]

    assert (300.0, "ounce", "high", False) == (
        data["limit"], data["per"], data["held_against"], data["met_already"],
    )  # fmt: skip
    assert first["reaches"] and first["measured"]["high"] <= 300.0
    assert all("mass_g" in one for one in first["measured"]["ingredients"])
