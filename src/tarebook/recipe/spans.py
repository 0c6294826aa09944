"""Hours, temperatures, percentages and ratios as cooks write them, each a value or a range."""

from __future__ import annotations

from fractions import Fraction
from functools import lru_cache

from tarebook.findings import AmountError
from tarebook.quantities.number import parse_range

Span = tuple[Fraction, Fraction]
"""The lower and the upper end; twice the same for a single value."""


@lru_cache(maxsize=1024)
def read_hours(text: str) -> Span:
    """Return hours, ``"12"``, ``"8-12"`` or ``"8-12 hours"`` [h].

    Raises:
        AmountError: no number or range of hours.
    """
    rest, word = _trailing_word(text)
    if word.lower() not in ("", "h", "hr", "hrs", "hour", "hours"):
        raise AmountError(f'"{text}" is not in hours', text=text, hint='write hours, as in "8-12"')
    return parse_range(rest)


@lru_cache(maxsize=1024)
def read_temperature_f(text: str) -> Span:
    """Return a temperature or a range of temperatures in degrees Fahrenheit [degF], exact.

    Args:
        text: ``"155 F"``, ``"68 °C"``, ``"145-155 degrees F"``.

    Raises:
        AmountError: no scale is named, or no number.
    """
    rest, word = _trailing_word(text.replace("°", " ").replace("º", " "))
    scale = _SCALES.get(word.lower())
    if scale is None:
        raise AmountError(
            f'"{text}" does not say which degrees', text=text, hint='write "155 F" or "68 C"'
        )
    rest = rest.lower()
    for said in (word.lower(), "degrees", "degree", "deg"):  # "145 F - 155 F" says its scale twice
        rest = rest.replace(said, " ")
    low, high = parse_range(rest.strip())
    return (_fahrenheit(low, scale), _fahrenheit(high, scale))


@lru_cache(maxsize=1024)
def read_percent(text: str) -> Span:
    """Return a percentage or a range of percentages, as a number of percent [%].

    Raises:
        AmountError: the percent sign is missing, or the number.

    Example:
        >>> read_percent("6.25 %")
        (Fraction(25, 4), Fraction(25, 4))
    """
    stripped = text.strip()
    for sign in ("%", "percent", "per cent"):
        if stripped.endswith(sign):
            return parse_range(stripped.removesuffix(sign).replace("%", " ").strip())
    raise AmountError(f'"{text}" is no percentage', text=text, hint='write "25 %"')


_SCALES = {
    **dict.fromkeys(("f", "fahrenheit", "degf"), "F"),
    **dict.fromkeys(("c", "celsius", "degc"), "C"),
}


def _fahrenheit(degrees: Fraction, scale: str) -> Fraction:
    return degrees if scale == "F" else degrees * 9 / 5 + 32


def _trailing_word(text: str) -> tuple[str, str]:
    stripped = text.strip()
    rest = stripped.rstrip("abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ")
    return rest.strip(), stripped[len(rest) :]
