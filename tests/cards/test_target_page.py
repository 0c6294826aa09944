"""The page of ways to get under a figure."""

from __future__ import annotations

import pytest

from tarebook.cards.lines import plain_text, width
from tarebook.cards.target_page import HEAT_STAYS, target_data, target_page
from tarebook.quantities.drawer import choose_drawer
from tarebook.recipe.load import load_recipe
from tarebook.target import Answers, answers, read_goal


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
        "liquid in the marinade",
        "salt in all of it by weight",
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
