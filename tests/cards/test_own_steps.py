"""The recipe's own steps where nothing is poured away."""

from __future__ import annotations

import pytest

from tarebook.cards.content import content
from tarebook.cards.lines import plain_text
from tarebook.cards.own_steps import NOTHING_POURED, without_pouring
from tarebook.cards.text_card import text_card
from tarebook.cards.worksheet import worksheet
from tarebook.paper.html_card import html_card
from tarebook.paper.markdown_card import markdown_card
from tarebook.recipe.load import load_recipe


@pytest.mark.parametrize(
    ("step", "left"),
    [
        ("Drain the strips, throw the marinade away, and pat them dry.", ""),
        ("Drain; roast moist until done.", "Roast moist until done. "),
        ("Simmer, then lift them out and pour off the brine.", "Simmer, then lift them out. "),
        ("Cool. Discard the brine. Weigh.", "Cool. Weigh. "),
    ],
)
def test_what_throws_away_is_left_out_and_what_is_done_instead_is_told(
    step: str, left: str
) -> None:
    """All else that a step says stays."""
    assert [f"{left}{NOTHING_POURED}"] == list(without_pouring([step]))


@pytest.mark.parametrize(
    "step",
    [
        "Pour the marinade over the strips, and turn them.",
        "Stir, cool and lay the strips in.",
        "Dry at 155 °F (68 °C), e.g. on racks.",
    ],
)
def test_other_steps_stay_to_the_letter(step: str) -> None:
    """Pouring something over, or drying, is no pouring away."""
    assert [step] == list(without_pouring([step]))


def test_a_card_says_it_only_where_nothing_is_poured_away() -> None:
    """The soak and the steps of one card never say two things."""
    recipe, _ = load_recipe("juniper-venison")
    kept = recipe._replace(soak=recipe.soak._replace(poured_away=False))
    usual, today = content(worksheet(recipe)), content(worksheet(kept))

    assert list(recipe.steps) == list(usual.steps)
    assert NOTHING_POURED in today.steps
    assert "nothing is poured away" in today.conditions[0]
    assert not any("throw" in one.lower() for one in (*today.steps, *today.conditions))
    assert not any("Throw used marinade away" in one.text for one in today.cautions)


NOT_DONE = "Thaw the meat on the counter overnight."


def test_a_step_that_is_not_to_be_followed_is_marked_where_it_stands() -> None:
    """Every look of a card has the mark before the step; what is no danger has none."""
    recipe, _ = load_recipe("juniper-venison")
    sheet = worksheet(recipe._replace(steps=(NOT_DONE, "Slice it."), notes=("Dry in the sun.",)))
    card = content(sheet)

    assert (f"NOT SO (see Mind): {NOT_DONE}", "Slice it.") == card.steps
    assert ("NOT SO (see Mind): Dry in the sun.",) == card.notes
    looks = [
        " ".join(plain_text(text_card(sheet)).split()),
        html_card(sheet),
        markdown_card(sheet).replace("\\", ""),
    ]
    assert all(f"NOT SO (see Mind): {NOT_DONE}" in look for look in looks)
    assert all("nobody has checked them. Where they ask for less heat" in look for look in looks)
    assert not any("NOT SO" in step for step in content(worksheet(recipe)).steps)
