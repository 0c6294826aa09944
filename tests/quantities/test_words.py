"""Weights in words."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tarebook.quantities.amount import parse_mass
from tarebook.quantities.words import format_mass_g, format_pounds


@pytest.mark.parametrize(
    ("mass_g", "expected"),
    [
        (0, "0 g"), (0.03, "0.03 g"), (0.4, "0.4 g"), (2.8, "2.8 g"), (12, "12 g"),
        (12.34, "12.3 g"), (Fraction("12.35"), "12.4 g"), (99.94, "99.9 g"), (99.96, "100 g"),
        (1234.4, "1,234 g"), (Fraction("1234.5"), "1,235 g"), (2721.55422, "2,722 g"),
    ],
)  # fmt: skip
def test_grams(mass_g: float | Fraction, expected: str) -> None:
    """As many digits as a kitchen scale shows; halves go up."""
    assert expected == format_mass_g(mass_g)


@pytest.mark.parametrize(
    ("written", "expected"),
    [
        ("6 lb 4 oz", "6 lb 4 oz"), ("6 lb", "6 lb"), ("2 1/2 lb", "2 lb 8 oz"), ("8 oz", "8 oz"),
        ("15.96 oz", "1 lb"), ("15.94 oz", "15.9 oz"), ("2 lb 8.5 oz", "2 lb 8.5 oz"),
        ("0.04 oz", "0.04 oz"), ("1500 lb", "1,500 lb"),
    ],
)  # fmt: skip
def test_pounds_and_ounces(written: str, expected: str) -> None:
    """Pounds, then ounces to a tenth, carried over where the tenth fills a pound."""
    assert expected == format_pounds(parse_mass(written))


@given(st.fractions(min_value=1, max_value=999_000))
def test_pounds_are_within_half_a_tenth_of_an_ounce(mass_g: Fraction) -> None:
    """What is printed weighs what was meant, to a twentieth of an ounce."""
    printed = parse_mass(format_pounds(mass_g).replace(",", ""))

    assert abs(printed - mass_g) <= Fraction("28.349523125") / 20


@pytest.mark.parametrize(
    ("mass_g", "expected"),
    [("0.094", "0.09 g"), ("0.1", "0.1 g"), ("99.94", "99.9 g"), ("99.95", "100 g")],
)
def test_where_the_digits_change(mass_g: str, expected: str) -> None:
    """Hundredths below a tenth, tenths from there on, whole grams from what would round to 100."""
    assert expected == format_mass_g(Fraction(mass_g))
