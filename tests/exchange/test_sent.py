"""Recipes sent out as schema.org lines come back the same."""

from __future__ import annotations

import json
from fractions import Fraction
from typing import Any

import pytest

from tarebook.cards.content import content
from tarebook.cards.worksheet import worksheet
from tarebook.exchange.brought import bring
from tarebook.exchange.line import read_line
from tarebook.exchange.page import find_recipe
from tarebook.exchange.sent import recipe_lines
from tarebook.exchange.taken import take
from tarebook.figures.foods import food, food_keys
from tarebook.paper.structured_data import structured_data
from tarebook.quantities import parse_amount
from tarebook.recipe.load import load_recipe, shipped_recipes
from tarebook.recipe.model import Ingredient, Part
from tarebook.recipe.read import read_recipe


@pytest.mark.parametrize("name", shipped_recipes())
def test_shipped_recipes_go_out_and_come_back(name: str) -> None:
    """Title, what is dried, each food, amount, form, part and strength come back exactly."""
    recipe, _ = load_recipe(name)
    sheet = worksheet(recipe)
    data: dict[str, Any] = structured_data(content(sheet), sheet.estimate)
    data["recipeIngredient"] = recipe_lines(recipe)

    found, _ = find_recipe(json.dumps(data).encode(), "card.jsonld")
    back, _ = read_recipe(bring(take(found, "card.jsonld"), "card.jsonld").text, file="back.toml")

    assert back is not None
    assert recipe.title == back.title
    assert (recipe.meat.food, recipe.meat.amount) == (back.meat.food, back.meat.amount)
    assert [_said(one) for one in recipe.ingredients] == [_said(one) for one in back.ingredients]


def _said(one: Ingredient) -> tuple[object, ...]:
    return one.food, one.amount, one.part, one.strength_percent


def test_lines_grow_with_the_meat() -> None:
    """For twice the meat every line says exactly twice as much."""
    recipe, _ = load_recipe("juniper-venison")

    once = [read_line(line).amount for line in recipe_lines(recipe)]
    twice = [read_line(line).amount for line in recipe_lines(recipe, Fraction(2))]

    assert [one.times(2) for one in once if one] == twice


def test_every_food_has_a_line_that_reads_back() -> None:
    """For every food of the table there is a line that names it again."""
    lost = []
    recipe, _ = load_recipe("juniper-venison")
    for key in food_keys():
        one = Ingredient(name=key, food=key, amount=parse_amount("3 g"), part=Part.MARINADE)
        line = recipe_lines(recipe._replace(ingredients=(one,)))[1]
        names = read_line(line).foods
        try:
            same = food(names[0]).key == key
        except LookupError:
            same = False
        if not same:
            lost.append(key)

    assert [] == lost
