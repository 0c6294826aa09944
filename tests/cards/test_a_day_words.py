"""What is said of an ounce and the house's own figures for a day."""

from __future__ import annotations

from collections.abc import Callable, Iterable

import pytest

from tarebook.cards.a_day_words import ARITHMETIC, HEAD, a_day_data, a_day_sentences
from tarebook.cards.content import content
from tarebook.cards.keys import worksheet_data
from tarebook.cards.lines import Line
from tarebook.cards.sheet import sheet
from tarebook.cards.text_card import text_card
from tarebook.cards.worksheet import Worksheet, worksheet
from tarebook.nutrition import Ounce
from tarebook.nutrition.a_day import OfADay
from tarebook.recipe.load import load_recipe
from tarebook.recipe.model import Recipe

RecipeOf = Callable[..., Recipe]
Unwrapped = Callable[[Iterable[Line]], str]
CLAIMS = ("low", "healthy", "good for", "free", "safe", "light", "reduced", "allowed", "may eat")


def told(share: tuple[float, float, float] | None, ounces: int | None, *missing: str) -> str:
    """Return the sentence on sodium for such a share and count."""
    of_a_day = OfADay("sodium_mg", 1500.0, "mg", share, missing, ounces)
    one = worksheet(load_recipe("juniper-venison")[0])._replace(of_a_day=(of_a_day,))
    return next(iter(a_day_sentences(one)))


@pytest.mark.parametrize(
    ("ounces", "words"),
    [
        (0, "not even one whole ounce stays within it"),
        (1, "by the high estimate 1 whole ounce stays within it"),
        (4, "4 whole ounces stay within it"),
        (16, "16 whole ounces stay within it"),
        (17, "more than 16 whole ounces stay within it"),
        (500, "more than 16 whole ounces stay within it"),
    ],
)
def test_how_many_ounces(ounces: int, words: str) -> None:
    """In words, by the high estimate."""
    assert told((0.1, 0.2, 0.25), ounces).endswith(f"{words}.")
    assert "1,500 mg of sodium a day, an ounce of 28.35 g is 20 % (10-25 %)" in told(
        (0.1, 0.2, 0.25), ounces
    )


def test_ounces_are_counted_for_the_tightest_figure_alone() -> None:
    """Seventy ounces of sugars where sodium has room for four would read as an invitation."""
    figures = (
        OfADay("sugars_g", 25.0, "g", (0.005, 0.01, 0.014), (), 70),
        OfADay("sodium_mg", 1500.0, "mg", (0.1, 0.2, 0.25), (), 4),
        OfADay("fat_g", 60.0, "g", (0.01, 0.02, 0.03), (), 33),
    )
    one = worksheet(load_recipe("juniper-venison")[0])._replace(of_a_day=figures)
    sugars, sodium, fat, last = a_day_sentences(one)

    assert sugars.endswith("an ounce of 28.35 g is 1 % (0-1 %).")
    assert fat.endswith("an ounce of 28.35 g is 2 % (1-3 %).")
    assert sodium.endswith("by the high estimate 4 whole ounces stay within it.")
    assert ARITHMETIC == last


def test_a_floor_is_not_rounded_up_and_has_no_count() -> None:
    """With a part unknown it is at least so much, and why no ounces are counted is said."""
    text = told((0.1999, 0.3, 0.4), None, "allspice")

    assert "is at least 19 %; no count of ounces can be told" in text
    assert "from allspice is not known" in text


def test_without_a_total_why_is_said(recipe_of: RecipeOf, unwrapped: Unwrapped) -> None:
    """No share and no count: the salt has no weight."""
    done = worksheet(recipe_of(marinade={"salt": "1 Tbsp"}), a_day={"sodium_mg": 1500.0})

    assert "no share and no count of ounces can be told: salt has no weight" in unwrapped(
        sheet(done)
    )


def test_little_and_nothing() -> None:
    """Less than a hundredth is not called none, and none is not counted."""
    assert "is under 1 %" in told((0.001, 0.002, 0.003), 300)
    assert told((0.0, 0.0, 0.0), None).endswith("holds nothing.")


def test_sheet_and_card_say_it(unwrapped: Unwrapped) -> None:
    """Both say the share, the count and that it is arithmetic; data has the same numbers."""
    recipe, _ = load_recipe("juniper-venison")
    done = worksheet(recipe, a_day={"sodium_mg": 1500.0})
    pages = [unwrapped(sheet(done)), unwrapped(text_card(done)), " ".join(content(done).beneath)]
    data = worksheet_data(done)["house_limits"]

    for page in pages:
        assert "whole ounces stay within it" in page and ARITHMETIC in page
        assert "not medical advice: ask whoever advises on the diet" in page
    assert a_day_data(done.of_a_day) == data
    sodium = done.estimate.per_ounce["sodium_mg"]
    assert sodium is not None
    assert int(1500 // sodium.high) == data["sodium_mg"]["ounces_within"]


def test_nothing_of_it_without_a_figure(shipped: Callable[..., Worksheet]) -> None:
    """A cook who set none reads nothing of it."""
    done = shipped()
    text = "\n".join(line.text for line in (*sheet(done), *text_card(done)))

    assert HEAD not in text and "arithmetic" not in text
    assert {} == worksheet_data(done)["house_limits"]


def test_the_words_hold_no_claim() -> None:
    """No sentence calls a food low, healthy or anything like it."""
    sentences = [
        told((0.1, 0.2, 0.25), 4),
        told((0.1, 0.2, 0.25), 0),
        told((0.1, 0.2, 0.25), None, "allspice"),
        told(None, None, "salt"),
        ARITHMETIC,
        HEAD,
    ]

    assert [] == [
        (claim, text)
        for text in sentences
        for claim in CLAIMS
        if claim in text.replace("allspice", "").lower()
    ]


def test_a_name_cannot_move_the_cursor(recipe_of: RecipeOf) -> None:
    """A recipe's own names are cleaned."""
    recipe = recipe_of(marinade={"soy-sauce": "1 cup", "gochujang": "1 tsp"})
    names = [
        one._replace(name="gochu\x1b[2Jspice") if one.food == "gochujang" else one
        for one in recipe.ingredients
    ]
    done = worksheet(recipe._replace(ingredients=tuple(names)), a_day={"sugars_g": 25.0})

    assert all(text.isprintable() for text in a_day_sentences(done))
    assert any("spice" in text for text in a_day_sentences(done))


def test_the_ounce_of_labels_is_named() -> None:
    """Which ounce it is stands in the sentence."""
    recipe, _ = load_recipe("juniper-venison")
    done = worksheet(recipe, ounce=Ounce.LABEL, a_day={"sodium_mg": 1500.0})

    assert "a day, a label ounce of 28 g is " in next(iter(a_day_sentences(done)))
