"""Temperatures are read in either scale and never scaled."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tarebook.findings import AmountError
from tarebook.quantities.temperature import parse_temperature_f, to_celsius, to_fahrenheit


@pytest.mark.parametrize(
    ("written", "expected"),
    [
        ("155 F", (155.0, 155.0)),
        ("155F", (155.0, 155.0)),
        ("155°F", (155.0, 155.0)),
        ("155 deg F", (155.0, 155.0)),
        ("155 degrees Fahrenheit", (155.0, 155.0)),
        ("145-155 F", (145.0, 155.0)),
        ("145 to 155 °F", (145.0, 155.0)),
        ("68 C", (154.4, 154.4)),
        ("60–70 C", (140.0, 158.0)),
        ("1000 F", (1000.0, 1000.0)),
    ],
)
def test_temperatures_as_written(written: str, expected: tuple[float, float]) -> None:
    """Either scale, with or without its sign, single or a range."""
    assert expected == parse_temperature_f(written)


@pytest.mark.parametrize(
    ("written", "message"),
    [
        ("155", 'temperature "155" names no scale'),
        ("155 K", 'temperature "155 K" names no scale'),
        ("1001 F", 'temperature "1001 F" is hotter than any oven'),
        ("600 C", 'temperature "600 C" is hotter than any oven'),
    ],
)
def test_err_temperature(written: str, message: str) -> None:
    """A missing scale and a slip of the finger are refused, word for word."""
    with pytest.raises(AmountError) as caught:
        parse_temperature_f(written)

    assert message == str(caught.value)


@pytest.mark.parametrize("written", ["F", "hot F", "-5 F", "155-145 F", "155 F F", "", "1,5 C"])
def test_err_no_number_before_the_scale(written: str) -> None:
    """What stands before the scale must be a number or a range."""
    with pytest.raises(AmountError):
        parse_temperature_f(written)


@pytest.mark.published
@pytest.mark.parametrize(("celsius", "fahrenheit"), [("0", "32"), ("100", "212"), ("-40", "-40")])
def test_fixed_points(celsius: str, fahrenheit: str) -> None:
    """t/degF = 1.8 t/degC + 32 (nist-sp811, appendix B), met exactly."""
    assert Fraction(fahrenheit) == to_fahrenheit(Fraction(celsius))


@given(st.fractions(min_value=-500, max_value=5000))
def test_there_and_back(celsius: Fraction) -> None:
    """Turned there and back it is the same temperature."""
    assert celsius == to_celsius(to_fahrenheit(celsius))
