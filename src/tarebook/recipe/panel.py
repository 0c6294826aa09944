"""The panel on a bottle: its serving and its figures, copied as printed."""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction
from functools import lru_cache

from tarebook.findings import AmountError
from tarebook.quantities.amount import Amount, AmountKind, parse_amount, to_g, to_ml
from tarebook.quantities.number import parse_number
from tarebook.quantities.units import Dimension, dimension
from tarebook.recipe.model import Panel
from tarebook.toml.fault import Refused, shown

MOST_PRINTED = 100_000
"""In the unit of the key; no panel prints more."""

PANEL_FIELDS: Mapping[str, str] = {
    "sodium": "sodium_mg",
    "sugars": "sugars_g",
    "added-sugars": "added_sugars_g",
    "energy": "energy_kcal",
    "fat": "fat_g",
    "saturated": "saturated_g",
    "cholesterol": "cholesterol_mg",
    "carbohydrate": "carbohydrate_g",
    "fiber": "fiber_g",
    "protein": "protein_g",
    "vitamin-d": "vitamin_d_ug",
    "calcium": "calcium_mg",
    "iron": "iron_mg",
    "potassium": "potassium_mg",
    "water": "water_g",
    "ash": "ash_g",
}
"""The field of a ``Panel`` that each key fills."""

UNDER: Mapping[str, Fraction] = {
    **dict.fromkeys(
        ("carbohydrate_g", "fiber_g", "sugars_g", "added_sugars_g", "protein_g"), Fraction(1)
    ),
    "cholesterol_mg": Fraction(5),
}
"""What labels may print as less than so much, and how much that is."""

_LESS_THAN = (
    'labels print "less than 1 g" of carbohydrate, fiber, sugars and protein, and "less than 5 mg" '
    "of cholesterol; else write the figure itself"
)

# Nothing that is eaten is denser; a serving by volume alone weighs no more than this [g/mL].
_DENSEST_G_PER_ML = Fraction(3, 2)
_SODIUM_MG_PER_G_OF_SALT = Fraction(39340, 100)

_PER_UNIT: dict[str, dict[str, Fraction]] = {
    "mg": {"mg": Fraction(1), "g": Fraction(1000), "mcg": Fraction(1, 1000)},
    "g": {"g": Fraction(1), "mg": Fraction(1, 1000)},
    "mcg": {"mcg": Fraction(1), "ug": Fraction(1), "mg": Fraction(1000)},
    "kcal": {"kcal": Fraction(1), "calories": Fraction(1), "cal": Fraction(1)},
}


@lru_cache(maxsize=512)
def read_serving(text: str) -> tuple[Fraction | None, Fraction | None]:
    """Return a serving by measure [mL] and by weight [g], each None where it is not printed.

    A panel's spoons and cups are label measures: 5, 15 and 240 mL.

    Args:
        text: as printed, such as ``"1 Tbsp (17 g)"``, ``"17 g"`` or ``"1 packet (6 g)"``.

    Raises:
        AmountError: neither a measure nor a weight can be read in it.

    Example:
        >>> read_serving("1 Tbsp (17 g)")
        (Fraction(15, 1), Fraction(17, 1))
    """
    outside, _, inside = text.partition("(")
    volume_ml = mass_g = None
    for part in (outside, inside.strip().removesuffix(")")):
        amount = _readable(part)
        kind = dimension(amount.unit) if amount is not None else None
        if amount is not None and kind is Dimension.VOLUME and volume_ml is None:
            volume_ml = to_ml(amount)[0]
        elif amount is not None and kind is Dimension.MASS and mass_g is None:
            mass_g = to_g(amount)[0]
    if volume_ml is None and mass_g is None:
        raise AmountError(
            f'serving "{shown(text)}" has neither a measure nor a weight',
            text=text,
            hint='copy it as printed, as in "1 Tbsp (17 g)"',
        )
    return volume_ml, mass_g


@lru_cache(maxsize=512)
def printed_figure(text: str, unit: str) -> Fraction:
    """Return a figure of a panel in the unit its key asks for, zero or more.

    Args:
        text: as printed, such as ``"580 mg"``.
        unit: ``mg``, ``g``, ``mcg`` or ``kcal``.

    Raises:
        AmountError: no number, no unit that fits, or a negative or absurd figure.

    Example:
        >>> printed_figure("0.6 g", "mg")
        Fraction(600, 1)
    """
    number, word = _split(text)
    factor = _PER_UNIT[unit].get(word.lower())
    if factor is None:
        raise AmountError(
            f'"{shown(text)}" is not in {unit}', text=text, hint=f'write "{shown(number)} {unit}"'
        )
    if less_than(number) is not None:
        raise AmountError(f'"{shown(text)}" stands on no label', text=text, hint=_LESS_THAN)
    figure = parse_number(number) * factor
    if not 0 <= figure <= MOST_PRINTED:
        raise AmountError(f'"{shown(text)}" cannot stand on a panel', text=text)
    return figure


def less_than(text: str) -> str | None:
    """Return what stands behind "less than" or its sign; None where neither is there.

    Example:
        >>> less_than("<1 g"), less_than("less than 1 g"), less_than("1 g")
        ('1 g', '1 g', None)
    """
    lower = text.strip().lower()
    for word in ("less than", "under", "<"):
        if lower.startswith(word):
            return text.strip()[len(word) :].strip()
    return None


def printed_under(text: str, field: str, unit: str) -> Fraction | None:
    """Return what a figure is printed as less than; None where it is printed as a number.

    Args:
        text: as printed, such as ``"<1 g"``.
        field: of a ``Panel``, as ``sugars_g``.
        unit: ``mg``, ``g``, ``mcg`` or ``kcal``.

    Raises:
        AmountError: labels print no such words of that figure.

    Source:
        21 CFR 101.9(c)(3), (c)(6) and (c)(7), source id "cfr-21-101.9".
    """
    rest = less_than(text)
    if rest is None:
        return None
    if UNDER.get(field) != (figure := printed_figure(rest, unit)):
        raise AmountError(f'"{shown(text)}" stands on no label', text=text, hint=_LESS_THAN)
    return figure


def refuse_impossible(panel: Panel) -> None:
    """Refuse a panel whose parts outweigh its serving, or whose part outweighs the whole.

    Raises:
        Refused: it was copied wrongly, or is for more than one serving.
    """
    total, added = panel.sugars_g, panel.added_sugars_g
    if total is not None and added is not None and added > total:
        raise Refused("panel", "the added sugars are more than the sugars", hint="read it again")
    whole = panel.serving_g
    if whole is None:
        whole = (panel.serving_ml or 0) * _DENSEST_G_PER_ML
    salt = (panel.sodium_mg or Fraction(0)) / _SODIUM_MG_PER_G_OF_SALT
    parts = salt + max(total or Fraction(0), panel.carbohydrate_g or Fraction(0))
    parts += sum(part or 0 for part in (panel.fat_g, panel.protein_g, panel.water_g))
    # Every figure is rounded on the panel: one in twenty is left for that.
    if parts > whole * Fraction(21, 20) + 2:
        raise Refused(
            "panel",
            f"its parts weigh {float(parts):.0f} g, more than the serving",
            hint="are the figures for one serving?",
        )


def _readable(text: str) -> Amount | None:
    """Return an amount, or None: one half of a serving may count what no table knows."""
    try:
        amount = parse_amount(text, cup="label")
    except AmountError:
        return None
    return None if amount.kind is AmountKind.TO_TASTE or amount.is_range else amount


def _split(text: str) -> tuple[str, str]:
    stripped = text.strip()
    number = stripped.rstrip("abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ")
    return number.strip(), stripped[len(number) :]
