"""Recipes sent out as schema.org lines come back the same."""

from __future__ import annotations

import json
from collections.abc import Callable
from fractions import Fraction

import pytest

from tarebook.cards.content import content
from tarebook.cards.worksheet import worksheet
from tarebook.exchange.brought import bring
from tarebook.exchange.line import read_line
from tarebook.exchange.page import find_recipe
from tarebook.exchange.sent import recipe_lines
from tarebook.exchange.taken import take
from tarebook.figures.foods import food, food_keys
from tarebook.paper.html_card import html_card
from tarebook.paper.structured_data import structured_data
from tarebook.quantities import parse_amount
from tarebook.recipe.load import load_recipe, shipped_recipes
from tarebook.recipe.model import Ingredient, Part, Recipe
from tarebook.recipe.read import read_recipe


def _linked(recipe: Recipe) -> bytes:
    sheet = worksheet(recipe)
    return json.dumps(structured_data(content(sheet), sheet)).encode()


def _page(recipe: Recipe) -> bytes:
    return html_card(worksheet(recipe)).encode()


@pytest.mark.parametrize("made", [_linked, _page])
@pytest.mark.parametrize("name", shipped_recipes())
def test_shipped_recipes_go_out_and_come_back(name: str, made: Callable[[Recipe], bytes]) -> None:
    """As data and as a page: title, meat, every food, amount, part, strength and step come back."""
    recipe, _ = load_recipe(name)

    found, others = find_recipe(made(recipe), "card")
    brought = bring(take(found, "card"), "card")
    back, _ = read_recipe(brought.text, file="back.toml")

    assert (0, ()) == (others, brought.not_read)
    assert back is not None
    assert recipe.title == back.title
    assert (recipe.meat.food, recipe.meat.amount) == (back.meat.food, back.meat.amount)
    assert [_said(one) for one in recipe.ingredients] == [_said(one) for one in back.ingredients]
    assert recipe.steps == back.steps


def test_a_name_does_not_say_the_unit_again() -> None:
    """Garlic is counted in cloves; its line does not call it a clove once more."""
    recipe, _ = load_recipe("woodland-mushrooms")

    assert "2 cloves garlic, crushed" in recipe_lines(recipe)


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
