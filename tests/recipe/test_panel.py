"""The panel of a bottle, copied as printed."""

from __future__ import annotations

from fractions import Fraction

import pytest

from tarebook.findings import AmountError
from tarebook.recipe.panel import printed_figure, printed_under, read_serving

F = Fraction


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("1 Tbsp (17 g)", (F(15), F(17))),
        ("1 tsp (5 mL)", (F(5), None)),
        ("15 mL", (F(15), None)),
        ("1/4 cup (2 oz)", (F(60), F(45359237, 800000))),
        ("28 g (1 Tbsp)", (F(15), F(28))),
        ("17g", (None, F(17))),
        ("9 crackers (30 g)", (None, F(30))),
        ("1 fl oz", (F(30), None)),
    ],
)
def test_serving(text: str, expected: tuple[Fraction | None, Fraction | None]) -> None:
    """A serving is read by measure and by weight, its spoons and cups as labels mean them."""
    assert expected == read_serving(text)


@pytest.mark.parametrize("text", ["", "a spoon", "2-3 g", "to taste", "9 crackers", "(", "0 g"])
def test_serving_refused(text: str) -> None:
    """A serving without one measure or weight above zero says nothing about a gram."""
    with pytest.raises(AmountError):
        read_serving(text)


@pytest.mark.parametrize(
    ("text", "unit", "expected"),
    [
        ("575 mg", "mg", F(575)),
        ("0.575g", "mg", F(575)),
        ("0 g", "g", F(0)),
        ("500 mg", "g", F(1, 2)),
        ("10 kcal", "kcal", F(10)),
        ("10 Calories", "kcal", F(10)),
    ],
)
def test_figure(text: str, unit: str, expected: Fraction) -> None:
    """A figure arrives in its key's unit, exact; zero is a figure."""
    assert expected == printed_figure(text, unit)


@pytest.mark.parametrize(
    ("text", "unit"),
    [
        ("575", "mg"),
        ("10 g", "kcal"),
        ("less than 1 g", "g"),
        ("<5 mg", "mg"),
        ("-5 mg", "mg"),
        ("1-2 g", "g"),
        ("999999999 mg", "mg"),
        ("mg", "mg"),
    ],
)
def test_figure_refused(text: str, unit: str) -> None:
    """Without its unit, with a sign, or beyond any panel, a figure is refused."""
    with pytest.raises(AmountError):
        printed_figure(text, unit)


@pytest.mark.parametrize("text", ["<1 g", "less than 1 g", "under 1 g", "< 1000 mg"])
def test_less_than_a_gram(text: str) -> None:
    """What labels may print of sugars; a plain figure is none of it."""
    assert 1 == printed_under(text, "sugars_g", "g")
    assert printed_under("1 g", "sugars_g", "g") is None


@pytest.mark.parametrize(
    ("text", "field", "unit"),
    [("<2 g", "sugars_g", "g"), ("<1 g", "fat_g", "g"), ("<5 mg", "sodium_mg", "mg"),
     ("< g", "sugars_g", "g"), ("<<1 g", "sugars_g", "g"), ("less than", "sugars_g", "g")],
)  # fmt: skip
def test_less_than_refused(text: str, field: str, unit: str) -> None:
    """Labels say it of a gram, of few figures, and once."""
    with pytest.raises(AmountError):
        printed_under(text, field, unit)
