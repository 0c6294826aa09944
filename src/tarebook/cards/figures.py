"""How ranges, figures and "at least" are worded."""

from __future__ import annotations

from tarebook.nutrition.range import Range

NAMES = {
    "energy_kcal": "calories",
    "fat_g": "total fat",
    "saturated_g": "saturated fat",
    "trans_g": "trans fat",
    "cholesterol_mg": "cholesterol",
    "sodium_mg": "sodium",
    "carbohydrate_g": "carbohydrate",
    "fiber_g": "dietary fibre",
    "sugars_g": "total sugars",
    "added_sugars_g": "added sugars",
    "protein_g": "protein",
    "vitamin_d_ug": "vitamin D",
    "calcium_mg": "calcium",
    "iron_mg": "iron",
    "potassium_mg": "potassium",
}
"""What a cook calls each figure."""

NOT_KNOWN = "not known"
NO_TOTAL = "no total"


def digits(amount: float, unit: str) -> str:
    """Return an amount to about two significant digits of its doubt, without its unit.

    Args:
        amount: in ``unit``.
        unit: ``mg``, ``g``, ``µg``, ``kcal``, ``%`` or none.

    Returns:
        Whole numbers for mg, kcal and per cent; one decimal for small grams.
    """
    if not amount:
        return "0"
    if unit in ("mg", "kcal", "%"):
        return f"{amount:,.1f}" if unit == "mg" and abs(amount) < 10 else f"{amount:,.0f}"
    if abs(amount) >= 100:
        return f"{amount:,.0f}"
    return f"{amount:.1f}" if abs(amount) >= 1 else f"{amount:.2f}"


def ceiling(amount: float) -> str:
    """Return what something is at most, to two digits and never below it: 602 is 610.

    Args:
        amount: in any unit, above zero.
    """
    power = int(f"{amount:.1e}".partition("e")[2]) - 1
    tenths = amount / 10**power
    up = round(tenths) if round(tenths) >= tenths - 1e-9 else int(tenths) + 1
    return f"{up * 10.0**power:,.{max(-power, 0)}f}"


def nothing_known(found: Range) -> bool:
    """Whether so much is missing that what is known of it shows as nothing.

    An "at least" of nothing would only look like zero.
    """
    return found.at_least and float(digits(found.low, found.unit).replace(",", "")) == 0


def span(found: Range | None) -> str:
    """Return ``low-high unit`` of a range, one end where both read alike; or "not known"."""
    if found is None or nothing_known(found):
        return NOT_KNOWN
    ends = (digits(one, found.unit) for one in (found.low, found.high))
    return f"{'-'.join(dict.fromkeys(ends))} {found.unit}".strip()


def likely(found: Range | None) -> str:
    """Return the likely value with its unit; "at least" where something is missing."""
    if found is None or nothing_known(found):
        return NOT_KNOWN
    lead = "at least " if found.at_least else ""
    return f"{lead}{digits(found.likely, found.unit)} {found.unit}".strip()


def percent(share: float) -> str:
    """Return a share of one as whole per cent."""
    return f"{100 * share:.0f} %"
