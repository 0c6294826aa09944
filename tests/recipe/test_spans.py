"""Hours, temperatures and percentages, each a value or a range."""

from __future__ import annotations

from collections.abc import Callable
from fractions import Fraction

import pytest

from tarebook.findings import AmountError
from tarebook.recipe.spans import Span, read_hours, read_percent, read_temperature_f

F = Fraction


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("12", (F(12), F(12))),
        ("8-12", (F(8), F(12))),
        ("8 – 12 hours", (F(8), F(12))),
        ("1/2 to 3/4 h", (F(1, 2), F(3, 4))),
        ("1½ hrs", (F(3, 2), F(3, 2))),
    ],
)
def test_hours(text: str, expected: Span) -> None:
    """Hours are a number or a range, the word behind them optional."""
    assert expected == read_hours(text)


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("155 F", (F(155), F(155))),
        ("155F", (F(155), F(155))),
        ("155 °F", (F(155), F(155))),
        ("155 degrees Fahrenheit", (F(155), F(155))),
        ("155 deg F", (F(155), F(155))),
        ("145-155 F", (F(145), F(155))),
        ("145 °F – 155 °F", (F(145), F(155))),
        ("68 C", (F(772, 5), F(772, 5))),
        ("60-70 ºC", (F(140), F(158))),
        ("62.5 Celsius", (F(289, 2), F(289, 2))),
    ],
)
def test_temperature(text: str, expected: Span) -> None:
    """Either scale is read exactly into degrees Fahrenheit; 70 °C is 158 °F."""
    assert expected == read_temperature_f(text)


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("6.25 %", (F(25, 4), F(25, 4))),
        ("25%", (F(25), F(25))),
        ("20-30 %", (F(20), F(30))),
        ("20 % - 30 %", (F(20), F(30))),
        ("25 percent", (F(25), F(25))),
    ],
)
def test_percent(text: str, expected: Span) -> None:
    """A percentage is a number of percent and needs its sign."""
    assert expected == read_percent(text)


@pytest.mark.parametrize(
    ("read", "text"),
    [
        (read_hours, "overnight"),
        (read_hours, "2 days"),
        (read_hours, "12-8"),
        (read_hours, "-3"),
        (read_hours, ""),
        (read_hours, "1" * 100),
        (read_temperature_f, "155"),
        (read_temperature_f, "155 K"),
        (read_temperature_f, "F"),
        (read_temperature_f, "155 F (68 C)"),
        (read_temperature_f, "-" * 5000 + "F"),
        (read_percent, "25"),
        (read_percent, "%"),
        (read_percent, "a quarter"),
    ],
)
def test_refused(read: Callable[[str], Span], text: str) -> None:
    """What is no such value is refused, never guessed at."""
    with pytest.raises(AmountError):
        read(text)
