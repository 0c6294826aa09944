"""Every assumption is shown with its range, its code and its reason."""

from __future__ import annotations

from fractions import Fraction

from tarebook.cards.lines import plain_text
from tarebook.cards.why import why, why_data
from tarebook.cards.worksheet import worksheet
from tarebook.recipe.load import load_recipe


def test_every_assumption_is_shown() -> None:
    """Each input of the estimate stands in the list, with a code that is explained."""
    sheet = worksheet(load_recipe("juniper-venison")[0], factor=Fraction(2))

    text = plain_text(why(sheet))

    for name in sheet.estimate.assumptions:
        assert f"{name}: " in text
    assert "[W]" in text and "W working value" in text
    assert all(len(line) <= 80 for line in text.splitlines())


def test_no_sodium_total_no_sodium_swings() -> None:
    """Where sodium has no total, nothing is said to move it."""
    recipe = load_recipe("trail-sticks-venison")[0]
    first = recipe.ingredients[0]
    import dataclasses

    bare = dataclasses.replace(
        recipe, ingredients=(first._replace(food="salt"), *recipe.ingredients[1:])
    )

    found = why_data(worksheet(bare))

    assert "sodium_mg" not in found["swings_per_ounce"]
    assert found["swings_per_ounce"]["sugars_g"]


def test_points_of_an_assumption_rise() -> None:
    """Five, fifty and ninety-five per cent stand in order for every input."""
    found = why_data(worksheet(load_recipe("maple-dill-salmon")[0]))

    assert all(one["p5"] <= one["p50"] <= one["p95"] for one in found["assumptions"])
