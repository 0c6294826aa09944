"""Temperatures as a cook writes them. They are read and shown, and never scaled."""

from __future__ import annotations

from fractions import Fraction

from tarebook.findings import AmountError
from tarebook.quantities.number import parse_range
from tarebook.quantities.plain import plain, quoted
from tarebook.quantities.units import unit

__all__ = ["parse_temperature_f", "to_celsius", "to_fahrenheit"]

_SCALES = {"f": "fahrenheit", "c": "celsius", "fahrenheit": "fahrenheit", "celsius": "celsius"}
_HOTTEST_F = 1000


def parse_temperature_f(text: str) -> tuple[float, float]:
    """Return a temperature, or the ends of a range, in degrees Fahrenheit.

    Args:
        text: ``155 F``, ``68 C``, ``145-155 F``, ``155°F``, ``68 degrees Celsius``.

    Returns:
        Low and high [degF], equal unless a range, at most 1000 degF.

    Raises:
        AmountError: it is no temperature, names no scale, or is hotter than any oven.

    Example:
        >>> parse_temperature_f("145-155 F"), parse_temperature_f("68 C")
        ((145.0, 155.0), (154.4, 154.4))
    """
    words = plain(text, "temperature").lower().replace("°", " ").rstrip(".")
    number = words.rstrip("abcdefghijklmnopqrstuvwxyz")
    scale = _SCALES.get(words[len(number) :])
    if scale is None:
        raise AmountError(
            f"temperature {quoted(text)} names no scale", text=text, hint="write 155 F or 68 C"
        )
    number = number.replace("degrees", "").replace("deg", "").strip()
    low, high = parse_range(number or "F")
    ends = (low, high) if scale == "fahrenheit" else (to_fahrenheit(low), to_fahrenheit(high))
    if ends[1] > _HOTTEST_F:
        raise AmountError(f"temperature {quoted(text)} is hotter than any oven", text=text)
    return float(ends[0]), float(ends[1])


def to_fahrenheit(celsius: Fraction) -> Fraction:
    """Return degrees Fahrenheit for degrees Celsius, exactly.

    Args:
        celsius: temperature [degC].

    Returns:
        The same [degF].

    Source:
        ``reference/units.txt``, rows ``celsius`` and ``fahrenheit``.

    Example:
        >>> to_fahrenheit(Fraction(100))
        Fraction(212, 1)
    """
    return _turned(celsius, "celsius", "fahrenheit")


def to_celsius(fahrenheit: Fraction) -> Fraction:
    """Return degrees Celsius for degrees Fahrenheit, exactly; see :func:`to_fahrenheit`."""
    return _turned(fahrenheit, "fahrenheit", "celsius")


def _turned(value: Fraction, given: str, to: str) -> Fraction:
    have, want = unit(given), unit(to)
    return (value * have.to_base + have.zero - want.zero) / want.to_base
