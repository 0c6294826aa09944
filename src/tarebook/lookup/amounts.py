"""The figures of an answer: by their numbers, each checked for its unit.

A figure that is missing stays unknown; one in another unit, or that cannot be, is refused and
said, and stays unknown too. None of them becomes zero.

Source:
    Numbers and units are the table's own, documented with its downloads (``nutrient.csv``):
    fdc.nal.usda.gov/download-datasets. In energy, 208 is missing from many newer rows, which give
    958 or 957 (by specific and by general factors) in its place.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from decimal import Decimal
from fractions import Fraction
from typing import Any

from tarebook.tuples import NamedTuple

NUMBERS: Mapping[str, str] = {
    "255": "water_g",
    "208": "energy_kcal",
    "203": "protein_g",
    "204": "fat_g",
    "606": "saturated_g",
    "205": "carbohydrate_g",
    "291": "fiber_g",
    "269": "sugars_g",
    "539": "added_sugars_g",
    "207": "ash_g",
    "601": "cholesterol_mg",
    "301": "calcium_mg",
    "303": "iron_mg",
    "306": "potassium_mg",
    "307": "sodium_mg",
    "328": "vitamin_d_ug",
}
"""Our name for each number of the table; its end tells the unit that we take it in."""

ENERGY = {"958": "by specific factors", "957": "by general factors"}
"""What stands in for a missing 208, the better one first."""

FIELDS = tuple(NUMBERS.values())

_SPELLINGS = {
    "g": ("g",),
    "mg": ("mg",),
    "ug": ("ug", "µg", "μg", "mcg"),
    "kcal": ("kcal",),
}
# What 100 g can hold at most; a hundred millilitres of something heavy, half as much again.
_MOST = {"g": 100, "mg": 100_000, "ug": 100_000, "kcal": 1_000}
_SMALLEST, _LARGEST, _NUMBER_LONGEST = -9, 12, 40  # powers of ten; digits
_HEAVIEST = Fraction(3, 2)


class Read(NamedTuple):
    """The figures of one food.

    Attributes:
        figures: by our names, per 100 g or 100 mL; None where not known.
        remarks: what was refused, and what stands in for what.
    """

    figures: Mapping[str, Fraction | None]
    remarks: tuple[str, ...]


class _Entry(NamedTuple):
    number: str
    unit: object
    amount: object


def read_figures(listed: object, *, per_ml: bool = False) -> Read:
    """Return the figures of a food, as any of the documented answers lists them.

    Args:
        listed: its ``foodNutrients``.
        per_ml: whether they are per 100 mL.
    """
    entries = list(_entries(listed))
    found: dict[str, Fraction | None] = dict.fromkeys(FIELDS)
    remarks: list[str] = []
    for number, field in NUMBERS.items():
        found[field] = _figure(field, _of(entries, number), remarks, per_ml)
    for number, how in ENERGY.items():
        if found["energy_kcal"] is None:
            found["energy_kcal"] = _figure("energy_kcal", _of(entries, number), remarks, per_ml)
            if found["energy_kcal"] is not None:
                remarks.append(f"energy is {how}")
    return Read(found, tuple(remarks))


def exact(value: object) -> Fraction | None:
    """Return a number of the answer exactly, or None where it is none that can be kept."""
    if isinstance(value, bool) or not isinstance(value, (int, Decimal)):
        return None
    number = Decimal(value)
    # Far exponents and endless digits would make numbers that nothing can hold.
    if not number.is_finite() or len(str(number)) > _NUMBER_LONGEST:
        return None
    if number and not _SMALLEST <= number.adjusted() <= _LARGEST:
        return None
    return Fraction(number)


def unit_of(field: str) -> str:
    """Return the unit that a name ends in."""
    return field.rpartition("_")[2]


def spoken(field: str) -> str:
    """Return the name of a figure without its unit, in words."""
    return field.rpartition("_")[0].replace("_", " ")


def _of(entries: Iterable[_Entry], number: str) -> list[_Entry]:
    return [entry for entry in entries if entry.number == number]


def _entries(listed: object) -> Iterator[_Entry]:
    """Yield the entries of any documented shape; of a food, of a search, and abridged."""
    for one in listed if isinstance(listed, list) else []:
        if not isinstance(one, dict):
            continue
        inner = one.get("nutrient")
        about = inner if isinstance(inner, dict) else one
        number = about.get("number", about.get("nutrientNumber"))
        text = str(number).strip() if isinstance(number, (str, int)) else ""
        if text:
            yield _Entry(text, about.get("unitName"), one.get("amount", one.get("value")))


def _figure(field: str, entries: list[_Entry], remarks: list[str], per_ml: bool) -> Fraction | None:
    stated = [entry for entry in entries if entry.amount is not None]
    if not stated:
        return None
    unit, name = unit_of(field), spoken(field)
    values = set()
    for entry in stated:
        if _folded(entry.unit) not in _SPELLINGS[unit]:
            remarks.append(f"{name} is not given in {unit}, and was not taken")
            return None
        values.add(_checked(entry.amount, name, _MOST[unit], remarks, per_ml))
    if len(values) > 1:
        remarks.append(f"{name} is given more than once, and differently: not taken")
        return None
    return values.pop()


def _folded(unit: object) -> str:
    return unit.strip().lower() if isinstance(unit, str) else ""


def _checked(
    amount: Any, name: str, most: int, remarks: list[str], per_ml: bool
) -> Fraction | None:
    value = exact(amount)
    if value is None:
        remarks.append(f"{name} is no number, and was not taken")
    elif value < 0:
        remarks.append(f"{name} is below zero, and was not taken")
    elif value > most * (_HEAVIEST if per_ml else 1):
        remarks.append(f"{name} is more than there can be, and was not taken")
    else:
        return value
    return None
