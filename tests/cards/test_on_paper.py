"""Cautions as paper says them."""

from __future__ import annotations

import pytest

from tarebook.cards.content import content
from tarebook.cards.on_paper import on_paper
from tarebook.cards.worksheet import worksheet
from tarebook.recipe import read_recipe
from tarebook.recipe.load import shipped_recipes

BARE = """
title = "Strips of few words"
[meat]
food = "deer"
amount = "2 lb"
form = "{form}"
[marinade]
soy-sauce = "1/2 cup"
"""


@pytest.mark.parametrize("form", ["strips", "ground"])
def test_paper_tells_what_to_do_with_the_meat_and_not_with_a_file(form: str) -> None:
    """No caution on a card speaks of a key, a table or a line of the recipe's file."""
    recipe, _ = read_recipe(BARE.format(form=form), file="few.toml")
    assert recipe is not None
    sheet = worksheet(recipe)
    told = [one.text for one in content(sheet).cautions]
    on_screen = [one.text for one in sheet.cautions]

    assert any(" under [" in one or "[marinade]" in one for one in on_screen)
    assert [] == [one for one in told if "[" in one or " = " in one or '"' in one]
    assert len(on_screen) == len(told)


def test_what_is_so_is_told_as_on_the_screen() -> None:
    """Only what to do is put otherwise; what is wrong, who says so and how grave it is stay."""
    recipe, _ = read_recipe(BARE.format(form="strips"), file="few.toml")
    assert recipe is not None
    screen = worksheet(recipe).cautions
    changed = [(a, b) for a, b in zip(screen, on_paper(screen), strict=True) if a != b]

    assert {"heat-missing", "thickness-blank"} == {a.code for a, _ in changed}
    for a, b in changed:
        assert a.text.partition(". ")[0] == b.text.partition(". ")[0]
        assert (a.severity, a.cites, a.citation) == (b.severity, b.cites, b.citation)


@pytest.mark.parametrize("name", shipped_recipes())
def test_cautions_of_a_full_recipe_stay(name: str, shipped: object) -> None:
    """Whoever states heat and thickness is told the same on paper and on the screen."""
    cautions = shipped(name).cautions  # type: ignore[operator]

    assert all(
        a == b or a.code == "thickness-blank"
        for a, b in zip(cautions, on_paper(cautions), strict=True)
    )
