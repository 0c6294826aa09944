"""Label rounding against every boundary of the rule."""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tarebook.nutrition.rounding import percent_daily_value, printable, round_label, unrounded

# figure, amount as it would be printed, result as the rule has it, place in 21 CFR 101.9
# (source cfr-21-101.9). Exact halves go up.
PUBLISHED = [
    ("energy_kcal", "4.9", "0", "(c)(1): under 5, zero"),
    ("energy_kcal", "5", "5", "(c)(1): 5 to 50, nearest 5"),
    ("energy_kcal", "7.4", "5", "(c)(1): 5 to 50, nearest 5"),
    ("energy_kcal", "7.5", "10", "(c)(1): 5 to 50, nearest 5, half up"),
    ("energy_kcal", "50", "50", "(c)(1): 5 to 50, nearest 5"),
    ("energy_kcal", "54.9", "50", "(c)(1): over 50, nearest 10"),
    ("energy_kcal", "55", "60", "(c)(1): over 50, nearest 10, half up"),
    ("energy_kcal", "64.9", "60", "(c)(1): over 50, nearest 10"),
    ("fat_g", "0.49", "0", "(c)(2): under 0.5 g, zero"),
    ("fat_g", "0.5", "0.5", "(c)(2): under 5 g, nearest 0.5 g"),
    ("fat_g", "0.74", "0.5", "(c)(2): under 5 g, nearest 0.5 g"),
    ("fat_g", "0.75", "1", "(c)(2): under 5 g, nearest 0.5 g, half up"),
    ("fat_g", "4.74", "4.5", "(c)(2): under 5 g, nearest 0.5 g"),
    ("fat_g", "5.4", "5", "(c)(2): 5 g and over, nearest 1 g"),
    ("fat_g", "5.5", "6", "(c)(2): 5 g and over, nearest 1 g, half up"),
    ("saturated_g", "0.49", "0", "(c)(2)(i): as total fat"),
    ("saturated_g", "2.25", "2.5", "(c)(2)(i): as total fat, half up"),
    ("cholesterol_mg", "1.9", "0", "(c)(3): under 2 mg, zero"),
    ("cholesterol_mg", "2", "less than 5", "(c)(3): 2 to 5 mg"),
    ("cholesterol_mg", "5", "less than 5", "(c)(3): 2 to 5 mg"),
    ("cholesterol_mg", "7.4", "5", "(c)(3): over 5 mg, nearest 5 mg"),
    ("cholesterol_mg", "7.5", "10", "(c)(3): over 5 mg, nearest 5 mg, half up"),
    ("sodium_mg", "4.9", "0", "(c)(4): under 5 mg, zero"),
    ("sodium_mg", "5", "5", "(c)(4): 5 to 140 mg, nearest 5 mg"),
    ("sodium_mg", "137.4", "135", "(c)(4): 5 to 140 mg, nearest 5 mg"),
    ("sodium_mg", "137.5", "140", "(c)(4): 5 to 140 mg, nearest 5 mg, half up"),
    ("sodium_mg", "140", "140", "(c)(4): 5 to 140 mg, nearest 5 mg"),
    ("sodium_mg", "143", "140", "(c)(4): over 140 mg, nearest 10 mg"),
    ("sodium_mg", "145", "150", "(c)(4): over 140 mg, nearest 10 mg, half up"),
    ("carbohydrate_g", "0.49", "0", "(c)(6): under 0.5 g, zero"),
    ("carbohydrate_g", "0.5", "less than 1", "(c)(6): under 1 g"),
    ("carbohydrate_g", "0.99", "less than 1", "(c)(6): under 1 g"),
    ("carbohydrate_g", "1.49", "1", "(c)(6): nearest 1 g"),
    ("carbohydrate_g", "1.5", "2", "(c)(6): nearest 1 g, half up"),
    ("fiber_g", "0.5", "less than 1", "(c)(6)(i): as carbohydrate"),
    ("sugars_g", "2.5", "3", "(c)(6)(ii): as carbohydrate, half up"),
    ("added_sugars_g", "0.4", "0", "(c)(6)(iii): as total sugars"),
    ("protein_g", "0.49", "0", "(c)(7): under 0.5 g, zero"),
    ("protein_g", "0.5", "less than 1", "(c)(7): under 1 g"),
    ("protein_g", "13.5", "14", "(c)(7): nearest 1 g, half up"),
    ("vitamin_d_ug", "0.25", "0.3", "quantities, Q&A 2019: nearest 0.1 mcg"),
    ("iron_mg", "1.04", "1", "quantities, Q&A 2019: nearest 0.1 mg"),
    ("calcium_mg", "4.9", "0", "quantities: nearest 10 mg (from memory)"),
    ("potassium_mg", "215", "220", "quantities: nearest 10 mg (from memory)"),
]


@pytest.mark.published
@pytest.mark.parametrize(("figure", "amount", "printed", "place"), PUBLISHED)
def test_label_rounding_meets_the_rule(figure: str, amount: str, printed: str, place: str) -> None:
    """Each boundary of 21 CFR 101.9(c) rounds as the paragraph says."""
    assert round_label(figure, Decimal(amount)).text == printed, place


# figure, amount, Daily Value, per cent, place in 21 CFR 101.9.
PERCENT = [
    ("sodium_mg", "542", 2300, 24, "(d)(7)(ii): nearest 1 %"),
    ("sodium_mg", "11.5", 2300, 1, "(d)(7)(ii): nearest 1 %, half up"),
    ("iron_mg", "0.35", 18, 0, "(c)(8)(iii): under 2 %, zero"),
    ("iron_mg", "0.36", 18, 2, "(c)(8)(iii): to 10 %, nearest 2 %"),
    ("iron_mg", "0.54", 18, 4, "(c)(8)(iii): to 10 %, nearest 2 %, half up"),
    ("iron_mg", "1.8", 18, 10, "(c)(8)(iii): to 10 %, nearest 2 %"),
    ("iron_mg", "2.25", 18, 15, "(c)(8)(iii): 10 to 50 %, nearest 5 %, half up"),
    ("potassium_mg", "2350", 4700, 50, "(c)(8)(iii): 10 to 50 %, nearest 5 %"),
    ("potassium_mg", "2585", 4700, 60, "(c)(8)(iii): over 50 %, nearest 10 %, half up"),
]


@pytest.mark.published
@pytest.mark.parametrize(("figure", "amount", "daily", "percent", "place"), PERCENT)
def test_percent_daily_value_meets_the_rule(
    figure: str, amount: str, daily: int, percent: int, place: str
) -> None:
    """Per cent of a day rounds by the rule of its kind."""
    assert percent_daily_value(figure, Decimal(amount), daily) == percent, place


def test_negative_amount_is_refused() -> None:
    """No figure is negative, and none is not a number."""
    for amount in (-0.1, float("nan")):
        with pytest.raises(ValueError, match="sodium_mg cannot be"):
            round_label("sodium_mg", amount)


# figure, as printed, the least and the most it may stand for, place in 21 CFR 101.9.
BACKWARDS = [
    ("sugars_g", "0", "0", "0.5", "(c)(6)(ii): under 0.5 g, zero"),
    ("sugars_g", "1", "0.5", "1.5", "(c)(6)(ii): under 1 g may be so said, or to the nearest 1 g"),
    ("sugars_g", "12", "11.5", "12.5", "(c)(6)(ii): nearest 1 g"),
    ("sugars_g", "1.5", "1", "2", "no multiple of 1 g: a step of 1 g about it"),
    ("sodium_mg", "0", "0", "5", "(c)(4): under 5 mg, zero"),
    ("sodium_mg", "5", "5", "7.5", "(c)(4): 5 to 140 mg, nearest 5 mg"),
    ("sodium_mg", "140", "137.5", "145", "(c)(4): either side of 140 mg"),
    ("sodium_mg", "580", "575", "585", "(c)(4): over 140 mg, nearest 10 mg"),
    ("sodium_mg", "575", "570", "580", "no multiple of 10 mg: a step of 10 mg about it"),
    ("sodium_mg", "143", "138", "148", "no multiple of 10 mg: a step of 10 mg about it"),
    ("sodium_mg", "138", "135.5", "140.5", "no multiple of 5 mg: a step of 5 mg about it"),
    ("sodium_mg", "3", "0.5", "5.5", "printed as zero: that wide about it"),
    ("energy_kcal", "53", "48", "58", "no multiple of 10: a step of 10 about it"),
    ("fat_g", "0", "0", "0.5", "(c)(2): under 0.5 g, zero"),
    ("fat_g", "4.5", "4.25", "4.75", "(c)(2): under 5 g, nearest 0.5 g"),
    ("fat_g", "5", "4.75", "5.5", "(c)(2): either side of 5 g"),
    ("energy_kcal", "50", "47.5", "55", "(c)(1): either side of 50"),
    ("energy_kcal", "60", "55", "65", "(c)(1): over 50, nearest 10"),
    ("cholesterol_mg", "5", "2", "7.5", "(c)(3): less than 5 mg, and nearest 5 mg"),
    ("potassium_mg", "0", "0", "5", "quantities: nearest 10 mg (from memory)"),
    ("vitamin_d_ug", "0.04", "0", "0.09", "no multiple of 0.1 mcg: a step about it, above none"),
    ("water_g", "71.15", "71.125", "71.175", "on no US label: rounded to 0.05 g"),
]


@pytest.mark.published
@pytest.mark.parametrize(("figure", "printed", "low", "high", "place"), BACKWARDS)
def test_a_printed_figure_stands_for_a_span(
    figure: str, printed: str, low: str, high: str, place: str
) -> None:
    """Each rule read backwards: what may have been rounded to the figure."""
    assert (Fraction(low), Fraction(high)) == unrounded(figure, Fraction(printed)), place


RULED = sorted({figure for figure, *_ in PUBLISHED})


@given(st.sampled_from(RULED), st.decimals(0, 3000, places=3))
def test_what_was_rounded_lies_in_the_span_of_what_is_printed(figure: str, amount: Decimal) -> None:
    """Whatever is in the bottle, the span of the figure that the rule prints holds it."""
    printed = round_label(figure, amount).value
    low, high = unrounded(figure, Fraction(printed))

    assert low <= Fraction(amount) <= high


@given(st.sampled_from(RULED), st.fractions(0, 3000, max_denominator=100))
def test_a_span_holds_its_figure_and_little_else(figure: str, printed: Fraction) -> None:
    """However finely a panel was rounded, its figure lies in the span, and no far one does."""
    low, high = unrounded(figure, printed)

    assert 0 <= low <= printed <= high
    assert 0 < high - low <= 12


@given(st.sampled_from(RULED), st.fractions(0, 3000, max_denominator=100))
def test_a_figure_that_no_label_prints_is_no_surer_than_its_neighbours(
    figure: str, printed: Fraction
) -> None:
    """575 mg is not known twice as well as 570 and 580: what a label prints there lies no wider."""
    low, high = unrounded(figure, printed)
    as_labelled = round_label(figure, Decimal(printed.numerator) / printed.denominator).value
    if not printable(figure, printed) and low > 0:
        neighbour = unrounded(figure, Fraction(as_labelled))
        assert 2 * (high - low) >= neighbour[1] - neighbour[0]


def test_whether_a_label_prints_a_figure() -> None:
    """Steps of the rule only; water, which no US label tells, as it comes."""
    assert printable("sodium_mg", Fraction(580)) and not printable("sodium_mg", Fraction(575))
    assert printable("sodium_mg", Fraction(135)) and not printable("sodium_mg", Fraction(143))
    assert printable("water_g", Fraction("71.15"))
