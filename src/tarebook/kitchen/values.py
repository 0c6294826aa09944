"""How each thing of a kitchen is written, and what is made of it.

Every reader takes what stands behind a key and returns it understood; it raises ``Refused`` or
``AmountError``, whose words say what to write instead.
"""

from __future__ import annotations

from collections.abc import Callable
from fractions import Fraction
from typing import Any

from tarebook.findings import AmountError, AskedWrongly
from tarebook.kitchen.profile import Tray
from tarebook.quantities.amount import parse_amount, parse_mass, to_ml
from tarebook.quantities.drawer import choose_drawer
from tarebook.quantities.number import parse_number, split
from tarebook.quantities.plain import plain
from tarebook.quantities.temperature import parse_temperature_f
from tarebook.quantities.units import Dimension, dimension, factor, read_unit
from tarebook.toml.fault import Refused, shown

Read = Callable[[Any], Any]

_MOST_TRAYS = 100
_LARGEST_MM = 2_000.0
_LARGEST_ML = 200_000
_COARSEST_G = 1_000
_HIGHEST_M = 6_000.0
_MOST_SODIUM_MG, _MOST_SUGARS_G = 10_000.0, 1_000.0
_M_PER_FT = 0.3048
_UNITS = {"us": "us", "cups": "us", "pounds": "us", "metric": "metric", "grams": "metric"}
_OUTLINE_WORDS = {
    "×": "x", " by ": "x", '"': "in", "″": "in", "diameter": "round", "across": "round",
}  # fmt: skip
_YES = {"yes": True, "y": True, "true": True, "no": False, "n": False, "false": False}


def read_count(value: Any) -> int:
    """Return how many there are: a whole number, zero included."""
    if isinstance(value, str):
        found = parse_number(value)
    elif isinstance(value, (int, Fraction)) and not isinstance(value, bool):
        found = Fraction(value)
    else:
        raise _refused("how many is a number", "as in 5")
    if found.denominator != 1 or not 0 <= found <= _MOST_TRAYS:
        raise _refused(f"{shown(str(value))} is no whole number up to {_MOST_TRAYS}", "as in 5")
    return int(found)


def read_flag(value: Any) -> bool:
    """Return whether it is so: ``true`` or ``false``, ``yes`` or ``no``."""
    if isinstance(value, bool):
        return value
    found = _YES.get(_text(value, "true or false").lower())
    if found is None:
        raise _refused(f'"{shown(value)}" is neither yes nor no', "write true or false")
    return found


def read_outline(value: Any) -> Tray:
    """Return an outline: ``15 x 13 in``, ``38 x 32 cm``, ``13 1/2 in round``.

    Example:
        >>> read_outline("15 x 13 in")
        Tray(long_mm=381.0, short_mm=330.2)
        >>> read_outline("33 cm round")
        Tray(long_mm=330.0, short_mm=None)
    """
    words = _outline_words(value)
    if "hole" in words:
        raise _refused(f'"{shown(value)}" tells of a hole too', "the hole is told by itself")
    if "round" in words:
        return Tray(_side_mm([word for word in words if word != "round"], value))
    if words.count("x") != 1:
        raise _refused(f'"{shown(value)}" is no outline', "write 15 x 13 in, or 13 in round")
    at = words.index("x")
    first, second = words[:at], words[at + 1 :]
    if first and not first[-1].isalpha():  # the unit stands once, at the end
        first = [*first, *second[-1:]]
    one, two = _side_mm(first, value), _side_mm(second, value)
    return Tray(max(one, two), min(one, two))


def read_hole(value: Any) -> Tray:
    """Return the outline of a hole; one size alone is that of a round one."""
    words = _outline_words(value)
    return read_outline(value if {"x", "round"} & set(words) else f"{value} round")


def read_span_f(value: Any) -> tuple[float, float]:
    """Return the coolest and the hottest a dryer can be set to [degF]; one figure is both."""
    return parse_temperature_f(_text(value, "a temperature"))


def read_degrees_f(value: Any) -> float:
    """Return a single temperature [degF]."""
    low, high = parse_temperature_f(_text(value, "a temperature"))
    if low != high:
        raise _refused(f'"{shown(value)}" is a range', "write one temperature")
    return low


def read_volume_ml(value: Any) -> Fraction:
    """Return what a bowl or a bag holds [mL]."""
    text = _text(value, "a volume")
    low, high = to_ml(parse_amount(text))
    if low != high or not 0 < low <= _LARGEST_ML:
        raise _refused(f'"{shown(text)}" is no volume of a bowl or bag', "as in 4 qt, 3 L")
    return low


def read_step_g(value: Any) -> Fraction:
    """Return the step of a scale [g]."""
    text = _text(value, "a weight")
    found = parse_mass(text)
    if found > _COARSEST_G:
        raise _refused(f'"{shown(text)}" is no step of a kitchen scale', "as in 1 g, 0.1 oz")
    return found


def read_height_m(value: Any) -> float:
    """Return a height above the sea [m].

    Example:
        >>> round(read_height_m("800 ft"), 2), read_height_m("240 m")
        (243.84, 240.0)
    """
    text = plain(_text(value, "a height"), "height").lower()
    number = text.rstrip("abcdefghijklmnopqrstuvwxyz. '")
    unit = text[len(number) :].strip(" .")
    feet = unit in ("ft", "feet", "foot", "'")
    if not feet and unit not in ("m", "meter", "meters", "metre", "metres"):
        raise _refused(f'"{shown(text)}" does not say feet or meters', "write 800 ft or 240 m")
    found = float(parse_number(number.replace(",", ""))) * (_M_PER_FT if feet else 1.0)
    if found > _HIGHEST_M:
        raise _refused(f'"{shown(text)}" is higher than people live', "is it feet or meters?")
    return found


def read_sodium_mg(value: Any) -> float:
    """Return a figure of sodium for a day [mg]."""
    return _a_day(value, 1000, _MOST_SODIUM_MG, "as in 1500 mg")


def read_sugars_g(value: Any) -> float:
    """Return a figure of sugars for a day [g]."""
    return _a_day(value, 1, _MOST_SUGARS_G, "as in 25 g")


def read_drawer(value: Any) -> str:
    """Return the name of a measuring set."""
    try:
        return choose_drawer(_text(value, "a measuring set")).name
    except AskedWrongly as fault:
        message, hint = str(fault).split("; ", 1)
        raise _refused(shown(message), hint) from None


def read_units(value: Any) -> str:
    """Return ``us`` or ``metric``."""
    text = _text(value, "us or metric")
    found = _UNITS.get(text.strip().lower())
    if found is None:
        raise _refused(f'"{shown(text)}" is neither us nor metric', "write us or metric")
    return found


def _a_day(value: Any, each_g: int, most: float, example: str) -> float:
    text = _text(value, "a figure for a day")
    try:
        found = float(parse_mass(text) * each_g)
    except AmountError as fault:  # its own hint speaks of pounds
        raise _refused(str(fault), example) from None
    if found > most:
        raise _refused(f'"{shown(text)}" is more than anybody eats in a day', example)
    return found


def _outline_words(value: Any) -> list[str]:
    text = plain(_text(value, "a size"), "size").lower()
    for said, means in _OUTLINE_WORDS.items():
        text = text.replace(said, f" {means} ")
    return split(text)


def _side_mm(words: list[str], value: Any) -> float:
    """Return the length of one side [mm]: numbers, then a unit."""
    unit = read_unit(words[-1]) if words else None
    if unit is None or dimension(unit) is not Dimension.LENGTH:
        raise _refused(f'"{shown(value)}" does not say inches or cm', "as in 15 x 13 in")
    found = float(parse_number(" ".join(words[:-1])) * factor(unit, "millimeter"))
    if not 0 < found <= _LARGEST_MM:
        raise _refused(f'"{shown(value)}" is no size of a tray', "was the unit inches or cm?")
    return found


def _text(value: Any, what: str) -> str:
    if not isinstance(value, str):
        raise _refused(f"{what} stands in quotes", "as in the remark above it")
    return value


def _refused(message: str, hint: str = "") -> Refused:
    return Refused("kitchen", message, hint=hint)
