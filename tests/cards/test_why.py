"""Every assumption is shown with its range, its code and its reason."""

from __future__ import annotations

import re
from fractions import Fraction

import pytest

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
    bare = recipe._replace(ingredients=(first._replace(food="salt"), *recipe.ingredients[1:]))

    found = why_data(worksheet(bare))

    assert "sodium_mg" not in found["swings_per_ounce"]
    assert found["swings_per_ounce"]["sugars_g"]


def test_points_of_an_assumption_rise() -> None:
    """Five, fifty and ninety-five per cent stand in order for every input."""
    found = why_data(worksheet(load_recipe("maple-dill-salmon")[0]))

    assert all(one["p5"] <= one["p50"] <= one["p95"] for one in found["assumptions"])


def test_doubt_of_the_inputs_and_of_the_model_are_told_apart() -> None:
    """Both are named, each alone is narrower than the two together."""
    sheet = worksheet(load_recipe("juniper-venison")[0])
    text = plain_text(why(sheet))
    apart = why_data(sheet)["doubt_apart"]["sodium_mg"]
    both = sheet.estimate.per_ounce["sodium_mg"]

    assert "Two kinds of doubt" in text and "inputs alone" in text and "model alone" in text
    assert both is not None
    for one in apart.values():
        assert both.low < one["low"] < both.likely < one["high"] < both.high


def test_a_bar_says_what_moves_and_not_where_its_range_is_from() -> None:
    """Paces are named by what travels."""
    text = plain_text(why(worksheet(load_recipe("bay-brine-bison")[0])))
    bars = text.partition("Two kinds")[0]

    assert "free-water ratio" not in bars


def by_hand(text: str) -> tuple[float, float]:
    """Return what the sum in a text comes to, and what it says that it does."""
    told = text.partition("How the sodium with everything counted comes about")[2]
    told = " ".join(told.replace(",", "").split())
    added = re.search(r"\((.*?)\) / ([\d.]+) g x ([\d.]+) g = (\d+) mg", told)
    assert added is not None
    total = 0.0
    for part in added[1].split(" + "):
        factor = part.rpartition(" x ")[2] if " x " in part else 1
        total += float(part.partition(" mg ")[0]) * float(factor)
    return total / float(added[2]) * float(added[3]), float(added[4])


@pytest.mark.parametrize("name", ["juniper-venison", "orchard-turkey", "woodland-mushrooms"])
def test_the_ceiling_can_be_worked_out_again_by_hand(name: str) -> None:
    """The numbers that stand there lead to the one that is told."""
    found = worksheet(load_recipe(name)[0])
    ours, told = by_hand(plain_text(why(found)))

    assert ours == pytest.approx(told, abs=1)
    assert told == pytest.approx(found.estimate.ceiling_sodium_mg_per_oz, abs=0.5)
    assert why_data(found)["ceiling"]["per_ounce_mg"] == pytest.approx(told, abs=0.5)


def test_the_ceiling_of_a_weighed_batch_is_over_its_own_weight() -> None:
    """Where the batch was weighed, nothing is reckoned of its least weight."""
    found = worksheet(load_recipe("juniper-venison")[0], finished_g=480.0)
    text = plain_text(why(found))

    assert "/ 480.0 g x" in " ".join(text.split())
    assert "The weight is the finished batch's on the scale." in " ".join(text.split())
    assert by_hand(text)[0] == pytest.approx(found.estimate.ceiling_sodium_mg_per_oz, abs=1)
