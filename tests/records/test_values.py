"""Weights and temperatures as they are entered."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tarebook.findings import AmountError, UnitError
from tarebook.records.values import exact_text, exact_value, read_temperature, read_weight

OUNCE = Fraction("28.349523125")


@pytest.mark.parametrize(
    ("text", "grams"),
    [
        ("992 g", Fraction(992)),
        ("2 lb 3 oz", 35 * OUNCE),
        ("2lb3oz", 35 * OUNCE),
        ("2 lb + 14 oz", 46 * OUNCE),
        ("6 lb 4 oz + 2 lb 3 oz", 135 * OUNCE),
        ("3 lb less 410 g", 48 * OUNCE - 410),
        ("1/3 lb", 16 * OUNCE / 3),
    ],
)
def test_weights(text: str, grams: Fraction) -> None:
    """Scales of either kind, several bowls, and the bowl taken off again; all exact."""
    assert grams == read_weight(text)


@pytest.mark.parametrize(
    "text",
    ["0 g", "1 cup", "2-3 lb", "heavy", "", "2", "1 lb less 2 lb", "1 lb less 16 oz", "-1 g"],
)
def test_no_weights(text: str) -> None:
    """Nothing, a volume, a range, and less than nothing are refused."""
    with pytest.raises((AmountError, UnitError)):
        read_weight(text)


def test_nothing_can_be_weighed() -> None:
    """Where nothing may be left, zero is a weight, and told so; a range is none even then."""
    assert 0 == read_weight("0 g", zero=True)
    assert 0 == read_weight("410 g less 410 g", zero=True)
    assert 300 == read_weight("300 g", zero=True)
    assert [0, 0] == [read_weight(text, zero=True) for text in ("0", "nothing")]
    with pytest.raises(AmountError, match="nothing at all is no weight"):
        read_weight("0")
    for text in ("0 cups", "0-5 g", "400 g less 410 g"):
        with pytest.raises((AmountError, UnitError)):
            read_weight(text, zero=True)


@pytest.mark.parametrize(
    ("text", "degrees"),
    [("160 F", 160), ("160F", 160), ("71.5 C", Fraction(1607, 10)), ("160.4°F", Fraction(802, 5))],
)
def test_temperatures(text: str, degrees: Fraction) -> None:
    """Either scale, exact in degrees Fahrenheit."""
    assert degrees == read_temperature(text)


@pytest.mark.parametrize("text", ["160", "150-160 F", "hot", "", "2000 F"])
def test_no_temperatures(text: str) -> None:
    """Without its scale, as a range, or hotter than any oven it is no reading."""
    with pytest.raises(AmountError):
        read_temperature(text)


@given(st.fractions())
def test_exact_numbers_there_and_back(value: Fraction) -> None:
    """Every number is read as it was written."""
    assert value == exact_value(exact_text(value))


@given(st.integers(-(10**12), 10**12), st.integers(0, 12))
def test_what_ends_is_written_as_a_decimal(number: int, places: int) -> None:
    """A number that ends is written with a point and without a stroke."""
    assert "/" not in exact_text(Fraction(number, 10**places))


@pytest.mark.parametrize("text", ["", "1/0", "1e5", "nan", "١", "1_000", "9" * 201, "1.2.3", "½"])
def test_no_exact_number(text: str) -> None:
    """Only what is written here is read here."""
    with pytest.raises(AmountError):
        exact_value(text)
