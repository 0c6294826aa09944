"""The card once more as linked data."""

from __future__ import annotations

import json
import re
from collections.abc import Callable
from fractions import Fraction
from typing import Any

import pytest

from tarebook.cards.content import content
from tarebook.cards.keys import worksheet_data
from tarebook.cards.worksheet import Worksheet, worksheet
from tarebook.exchange.page import find_recipe
from tarebook.exchange.sent import recipe_lines
from tarebook.paper.html_card import html_card
from tarebook.paper.structured_data import structured_data
from tarebook.recipe.load import load_recipe, shipped_recipes

Shipped = Callable[..., Worksheet]

# As schema.org has them (vocabulary read in 2026), for the types used here.
RECIPE = {
    "@context", "@type", "name", "description", "recipeYield", "recipeIngredient",
    "recipeInstructions", "nutrition", "sdDatePublished",
}  # fmt: skip
NUTRITION = {
    "@type", "name", "description", "servingSize", "calories", "carbohydrateContent",
    "cholesterolContent", "fatContent", "fiberContent", "proteinContent", "saturatedFatContent",
    "sodiumContent", "sugarContent", "transFatContent", "unsaturatedFatContent",
}  # fmt: skip
NESTED = {
    "HowToStep": {"@type", "text"},
    "HowToTip": {"@type", "name", "text", "citation"},
    "HowToSection": {"@type", "name", "itemListElement"},
}


def data_of(sheet: Worksheet, date: str | None = None) -> Any:
    """Return the data as a reader would get it."""
    return json.loads(json.dumps(structured_data(content(sheet), sheet, date=date)))


@pytest.mark.parametrize("name", shipped_recipes())
def test_only_words_of_the_vocabulary_are_used(name: str, shipped: Shipped) -> None:
    """Every type and property is one that schema.org has for it."""
    data = data_of(shipped(name))

    assert ("https://schema.org", "Recipe") == (data["@context"], data["@type"])
    assert set(data) <= RECIPE
    assert set(data["nutrition"]) <= NUTRITION
    for one in _nested(data["recipeInstructions"]):
        assert set(one) <= NESTED[one["@type"]]


@pytest.mark.parametrize("name", shipped_recipes())
def test_a_figure_is_given_only_where_it_is_known(name: str, shipped: Shipped) -> None:
    """A number with its unit, as on the card; floors and unknowns have no field."""
    sheet = shipped(name)
    nutrition = data_of(sheet)["nutrition"]
    amounts = {one.amount for one in content(sheet).figures}
    given = {key: value for key, value in nutrition.items() if key.endswith(("Content", "ies"))}

    assert given
    for value in given.values():
        assert re.fullmatch(r"[\d.]+ (g|mg|kcal)", value)
        assert value in amounts
    assert "transFatContent" not in nutrition
    sugars = sheet.estimate.per_ounce["sugars_g"]
    assert sugars is not None
    assert ("sugarContent" in nutrition) == (not sugars.at_least)


def test_figures_are_of_a_named_ounce_and_called_an_estimate(shipped: Shipped) -> None:
    """The serving names its ounce; the figures say that they are estimates, with their ranges."""
    sheet = shipped()
    nutrition = data_of(sheet)["nutrition"]
    (sodium,) = [one for one in content(sheet).figures if one.name == "sodium"]

    assert "1 finished ounce (ounce of 28.35 g)" == nutrition["servingSize"]
    assert "Home estimate" == nutrition["name"]
    assert nutrition["description"].startswith("Home estimate, not a retail label. Likely value")
    assert f"sodium {sodium.amount} ({sodium.span})" in nutrition["description"]
    assert "trans fat not known" in nutrition["description"]
    assert "added sugars at least 1" in nutrition["description"]


def test_ingredients_are_exact_and_the_meat_is_first(shipped: Shipped) -> None:
    """Each on a line at today's size, in the order of the recipe, as the exchange sends it."""
    sheet = shipped(factor="12/5")
    lines = data_of(sheet)["recipeIngredient"]

    assert recipe_lines(sheet.recipe, Fraction(12, 5)) == lines
    assert ["6 lb venison (1/4 in thick)", "1 1/5 cups soy sauce"] == lines[:2]


def test_a_curing_salt_bears_its_strength(shipped: Shipped) -> None:
    """What is weighed has its weight once; a curing salt its strength and how it is measured."""
    lines = data_of(shipped("cranberry-moose"))["recipeIngredient"]

    assert "20 g table salt" in lines
    (cure,) = [line for line in lines if "curing" in line]
    assert cure.startswith("3 g curing salt") and cure.count("3 g") == 1
    assert "6.25 % sodium nitrite" in cure and "weigh it; never a spoon" in cure


@pytest.mark.parametrize("name", shipped_recipes())
def test_a_page_holds_the_same_words_as_a_file_of_its_own(name: str, shipped: Shipped) -> None:
    """Whoever reads the HTML card gets the very data that stand alone as JSON-LD."""
    sheet = shipped(name)
    found, others = find_recipe(html_card(sheet, date="2026-11-25").encode(), "card.html")

    assert (data_of(sheet, "2026-11-25"), 0) == (found, others)


def test_who_collects_the_recipe_collects_its_cautions(shipped: Shipped) -> None:
    """Conditions, steps, notes and every caution with who says so are among the instructions."""
    sheet = shipped()
    card = content(sheet)
    *_, mind = sections = data_of(sheet)["recipeInstructions"]
    steps = [one["text"] for one in sections if one["@type"] == "HowToStep"]

    assert list(card.steps) == steps
    assert {"Times and heat": list(card.conditions), "Notes": list(card.notes)} == {
        one["name"]: [tip["text"] for tip in one["itemListElement"]]
        for one in sections
        if one.get("name") not in (None, "Mind")
    }
    assert [(c.title, c.text, c.citation) for c in card.cautions] == [
        (tip["name"], tip["text"], "; ".join(tip["citation"])) for tip in mind["itemListElement"]
    ]


def test_a_recipe_without_steps_has_what_it_says_of_soak_and_heat(shipped: Shipped) -> None:
    """Where nobody wrote steps, soak, heat and drying are the steps, in their order."""
    sheet = shipped()
    card = content(sheet)._replace(steps=(), notes=())
    told = structured_data(card, sheet)["recipeInstructions"]
    assert isinstance(told, list)
    *steps, mind = told

    assert "Mind" == mind["name"]
    assert list(card.conditions) == [one["text"] for one in steps]


def test_a_weighed_batch_is_not_called_an_estimate() -> None:
    """The yield is the cook's own weight where there is one, and an estimate with range else."""
    recipe, _ = load_recipe("juniper-venison")

    assert "500 g dried, as weighed" == data_of(worksheet(recipe, finished_g=500))["recipeYield"]
    estimated = data_of(worksheet(recipe))["recipeYield"]
    assert re.fullmatch(r"about \d+ g dried \(home estimate, \d+ g to \d+ g\)", estimated), (
        estimated
    )


def test_nothing_is_invented(shipped: Shipped) -> None:
    """No date unless told, no author, no picture, no times, no stars, no description unwritten."""
    recipe, _ = load_recipe("juniper-venison")
    data = data_of(shipped())

    assert "sdDatePublished" not in data
    assert not {"author", "image", "totalTime", "aggregateRating", "keywords"} & set(data)
    assert "2026-11-25" == data_of(shipped(), "2026-11-25")["sdDatePublished"]
    assert data["description"] == recipe.about


def _nested(items: Any) -> Any:
    for one in items:
        yield one
        yield from _nested(one.get("itemListElement", ()))


def test_hostile_words_stay_words_in_data_and_in_a_page(hostile: Worksheet) -> None:
    """Whatever a recipe's texts try to become, they are read back; but what HTML cannot hold."""
    recipe = hostile.recipe
    data, *others = find_recipe(html_card(hostile).encode(), "card.html")
    found = data_of(hostile)

    assert [0] == others
    assert json.loads(json.dumps(found).replace("\\ufffe", "\\ufffd")) == data
    assert (recipe.title, recipe.about) == (found["name"], found["description"])
    steps = [one["text"] for one in found["recipeInstructions"] if one["@type"] == "HowToStep"]
    assert list(recipe.steps) == steps
    assert 1 + len(recipe.ingredients) == len(found["recipeIngredient"])
    assert any("<" in text for text in (recipe.title, recipe.about, *steps))


def test_hostile_words_in_json_stay_in_their_strings(hostile: Worksheet, shipped: Shipped) -> None:
    """The keys are those of any other recipe; no text of a cook adds one."""
    told = json.loads(json.dumps(worksheet_data(hostile), ensure_ascii=False))
    usual = json.loads(json.dumps(worksheet_data(shipped())))

    assert set(told) == set(usual)
    assert hostile.recipe.title == told["title"]
    assert len(hostile.recipe.ingredients) == len(told["ingredients"])
    for one in told["ingredients"]:
        assert set(one) == set(usual["ingredients"][0])
