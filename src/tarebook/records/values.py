"""Weights and temperatures as they are entered, and exact numbers as they are kept."""

from __future__ import annotations

from fractions import Fraction

from tarebook.findings import AmountError
from tarebook.quantities.amount import parse_amount, parse_mass, to_g
from tarebook.quantities.temperature import parse_temperature_f
from tarebook.quantities.units import Dimension, dimension

LESS = " less "
_LONGEST_NUMBER = 200
_NOTHING = ("0", "nothing", "none")


def read_weight(text: str, *, zero: bool = False) -> Fraction:
    """Return what was weighed.

    Args:
        text: ``2 lb 3 oz``, ``992 g``, several bowls as ``2 lb + 14 oz``, and what the bowl weighs
            taken off again as ``3 lb less 410 g``.
        zero: whether nothing at all is a weight, as it is of liquid on towels; it needs no unit.

    Returns:
        The weight [g], exact.

    Raises:
        AmountError: it cannot be read, or nothing is left without the bowl.

    Example:
        >>> read_weight("1 kg less 410 g"), read_weight("0 g", zero=True)
        (Fraction(590, 1), Fraction(0, 1))
    """
    gross, less, bowl = text.partition(LESS)
    if not less:
        return _weight(text, zero)
    left = parse_mass(gross) - parse_mass(bowl)
    if left < 0 or not (left or zero):
        raise AmountError(
            "nothing is left without the bowl", text=text, hint="weigh both again, or swap them"
        )
    return left


def read_temperature(text: str) -> Fraction:
    """Return a temperature that was read off a thermometer [degF], exact.

    Raises:
        AmountError: it cannot be read, names no scale, or is a range.

    Example:
        >>> read_temperature("160 F"), read_temperature("71.5 C")
        (Fraction(160, 1), Fraction(1607, 10))
    """
    low, high = parse_temperature_f(text)
    if low != high:
        raise AmountError(f'temperature "{text}" is a range', text=text, hint="give one reading")
    return Fraction(str(low))


def exact_text(value: Fraction) -> str:
    """Return a number so that it is read back the same: a decimal where it ends, or a fraction.

    Example:
        >>> exact_text(Fraction("992.233309375")), exact_text(Fraction(453, 7))
        ('992.233309375', '453/7')
    """
    rest, places = value.denominator, 0
    while rest % 2 == 0 or rest % 5 == 0:
        rest //= 10 if rest % 10 == 0 else 5 if rest % 5 == 0 else 2
        places += 1
    if rest != 1:
        return f"{value.numerator}/{value.denominator}"
    digits = f"{abs(value.numerator) * 10**places // value.denominator:0{places + 1}d}"
    sign = "-" if value < 0 else ""
    return sign + (f"{digits[:-places]}.{digits[-places:]}" if places else digits)


def exact_value(text: str) -> Fraction:
    """Return the number that :func:`exact_text` wrote.

    Raises:
        AmountError: it is no such number.
    """
    plain = text.isascii() and len(text) <= _LONGEST_NUMBER and not set(text) - set("-0123456789./")
    try:
        if plain:
            return Fraction(text)
    except (ValueError, ZeroDivisionError):
        pass
    raise AmountError(f'"{text[:40]}" is no exact number', text=text, hint="as in 992.25 or 453/7")


def _weight(text: str, zero: bool) -> Fraction:
    if text.strip() in _NOTHING:
        if zero:
            return Fraction(0)
        raise AmountError("nothing at all is no weight", text=text, hint="write 2 lb 3 oz or 992 g")
    if not zero:
        return parse_mass(text)
    amount = parse_amount(text, zero=True)
    if amount.low == 0 and dimension(amount.unit) is Dimension.MASS and not amount.is_range:
        return to_g(amount)[0]
    return parse_mass(text)
