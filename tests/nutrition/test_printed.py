"""What a printed figure is reckoned with: the panel beats the table, but a zero is no number."""

from __future__ import annotations

from fractions import Fraction
from statistics import fmean, pstdev

import pytest

from tarebook.nutrition.draws import Even, Pert, strata
from tarebook.nutrition.printed import read_figure

F = Fraction


@pytest.mark.parametrize("row", [None, 0.0, 3.0, 700.0])
def test_a_figure_above_zero_beats_any_table(row: float | None) -> None:
    """The middle of its span, all of the span alike, whatever the table says."""
    found = read_figure("sodium_mg", F(575), row)

    assert 575 == found.amount
    assert Even(570 / 575, 580 / 575) == found.rounding


@pytest.mark.parametrize("row", [None, 0.5, 2.0])
def test_a_zero_with_no_likelier_figure_is_the_middle(row: float | None) -> None:
    """Nobody knows, or the table has more than a zero allows: a quarter of a gram, 0 to 0.5."""
    found = read_figure("sugars_g", F(0), row)

    assert 0.25 == found.amount
    assert Even(0, 2) == found.rounding


def test_a_zero_leans_to_the_table() -> None:
    """Soy sauce holds 0.07 g a spoon: a bottle that prints none lies about there, under 0.5 g."""
    found = read_figure("sugars_g", F(0), 0.07)

    assert isinstance(found.rounding, Pert)
    ends = [end * found.amount for end in found.rounding]
    assert [0, 0.07, 0.5] == pytest.approx(ends)
    assert 0.07 < found.amount < 0.25


def test_what_has_none_by_its_kind_has_none() -> None:
    """Plain salt whose panel prints 0 g of sugars holds no sugar, and no doubt of it."""
    assert (0.0, None, 0.0) == read_figure("sugars_g", F(0), 0.0)


@pytest.mark.parametrize(
    ("printed", "row"), [(F(0), None), (F(0), 0.07), (F(1), None), (F(12), 3.0)]
)
def test_the_draws_have_the_mean_and_spread_that_are_told(
    printed: Fraction, row: float | None
) -> None:
    """Factors around one, as wide as the relative deviation says, within the span."""
    found = read_figure("sugars_g", printed, row)
    assert found.rounding is not None
    draws = strata(found.rounding, 1024)

    assert 1 == pytest.approx(fmean(draws), abs=2e-3)
    assert found.cv == pytest.approx(pstdev(draws), rel=2e-2)
    assert 0 <= min(draws) and max(draws) * found.amount <= float(printed) + 0.5


@pytest.mark.parametrize("row", [None, 0.0, 3.0])
@pytest.mark.parametrize("figure", [F(0), F("5493.2")])
def test_what_was_never_rounded_stands_as_it_is(figure: Fraction, row: float | None) -> None:
    """A laboratory's figure per 100 g: no interval is read into it, not even into a zero."""
    assert (float(figure), None, 0.0) == read_figure("sodium_mg", figure, row, rounded=False)


@pytest.mark.published
@pytest.mark.parametrize(
    ("figure", "most", "low", "high"),
    [
        # source cfr-21-101.9: (c)(6) and (c)(7) "less than 1 gram"; (c)(3) 2 to 5 mg "less than 5"
        ("sugars_g", F(1), 0.0, 1.0),
        ("protein_g", F(1), 0.0, 1.0),
        ("cholesterol_mg", F(5), 2.0, 5.0),
    ],
)
def test_less_than_so_much_is_all_that_is_under_it(
    figure: str, most: Fraction, low: float, high: float
) -> None:
    """The middle, and anything from low to high alike: no table that has more or none counts."""
    for row in (None, 0.0, high, 700.0):
        found = read_figure(figure, most, row, less=True)
        assert (low + high) / 2 == found.amount
        assert (low, high) == pytest.approx(
            (found.rounding.low * found.amount, found.rounding.high * found.amount)  # type: ignore[union-attr]
        )


def test_less_than_a_gram_leans_to_the_table() -> None:
    """Soy sauce holds 0.07 g a spoon: a bottle that prints less than a gram lies about there."""
    found = read_figure("sugars_g", F(1), 0.07, less=True)

    assert isinstance(found.rounding, Pert)
    assert [0, 0.07, 1] == pytest.approx([end * found.amount for end in found.rounding])
