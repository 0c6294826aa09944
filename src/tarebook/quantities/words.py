"""Weights in words, as they are read off a kitchen scale."""

from __future__ import annotations

from fractions import Fraction

from tarebook.quantities.units import factor

__all__ = ["format_mass_g", "format_pounds"]

_TENTH = Fraction(1, 10)
_SHOWN_WHOLE_G = Fraction("99.95")  # from here up, tenths would round to 100.0


def format_mass_g(mass_g: Fraction | float) -> str:
    """Return a weight in grams, with as many digits as a kitchen scale shows.

    Args:
        mass_g: weight [g], zero or more.

    Returns:
        Whole grams from 100 g up and where it is whole, tenths below, hundredths below a tenth;
        halves go up.

    Example:
        >>> format_mass_g(1234.4), format_mass_g(12.34), format_mass_g(Fraction(2, 5))
        ('1,234 g', '12.3 g', '0.4 g')
    """
    exact = Fraction(mass_g)
    whole = exact.denominator == 1 or exact >= _SHOWN_WHOLE_G
    return f"{_decimal(exact, 0 if whole else _decimals(exact))} g"


def format_pounds(mass_g: Fraction | float) -> str:
    """Return a weight in pounds and ounces, to a tenth of an ounce.

    Args:
        mass_g: weight [g], zero or more.

    Example:
        >>> format_pounds(2835), format_pounds(100), format_pounds(Fraction("453.59237"))
        ('6 lb 4 oz', '3.5 oz', '1 lb')
    """
    exact = Fraction(mass_g) / factor("ounce", "gram")
    if 0 < exact < _TENTH:
        return f"{_decimal(exact, _decimals(exact))} oz"
    tenths = _half_up(exact * 10)
    pounds, rest = divmod(tenths, 160)
    ounces = f"{rest // 10}.{rest % 10} oz".replace(".0 ", " ")
    if not pounds:
        return ounces
    return f"{pounds:,} lb {ounces}" if rest else f"{pounds:,} lb"


def _decimal(value: Fraction, decimals: int) -> str:
    whole, part = divmod(_half_up(value * 10**decimals), 10**decimals)
    return f"{whole:,}.{part:0{decimals}d}" if decimals else f"{whole:,}"


def _decimals(value: Fraction) -> int:
    return 2 if value < _TENTH else 1


def _half_up(value: Fraction) -> int:
    """Return the nearest whole number; a half goes up."""
    return (2 * value.numerator + value.denominator) // (2 * value.denominator)
