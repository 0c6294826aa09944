"""What ``kitchen`` prints: what is known of the kitchen, and what is not."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from tarebook.cards.lines import Line, Style, clean, row, wrap
from tarebook.cards.words import temperature_words
from tarebook.kitchen.keys import BY_PATH
from tarebook.kitchen.profile import CM2_PER_FT2, Kitchen, Tray
from tarebook.quantities.words import format_mass_g

COLUMNS = 80
NOT_KNOWN = "not known"
_WIDTHS = (22, 56)
_MM_PER_INCH = 25.4
_M_PER_FT = 0.3048


def kitchen_page(kitchen: Kitchen, *, file: str, there: bool) -> Iterator[Line]:
    """Yield what is known of a kitchen, 80 columns.

    Args:
        kitchen: as read.
        file: where it is kept.
        there: whether that file exists.
    """
    yield Line("Kitchen", Style.TITLE)
    missing = []
    for path, name, words in _rows(kitchen):
        if words:
            yield from (Line(text) for text in _said(name, words))
        else:
            missing.append(path)
    yield from (Line(text) for text in _said("drying surface", surface_words(kitchen)))
    yield Line()
    if missing:
        yield from _wrapped(f"Not known: {', '.join(missing)}.")
    path = next((one for one in missing if one in BY_PATH), "dryer.trays")
    yield from _wrapped("tarebook kitchen ask asks for all of it; this says one thing:")
    yield Line(f'  tarebook kitchen set {path} "{BY_PATH[path].example}"')
    yield from _wrapped(f"Kept in {file}." if there else f"To be kept in {file}.", Style.QUIET)


def kitchen_data(kitchen: Kitchen, *, file: str) -> dict[str, Any]:
    """Return the same as plain data; what is not known is None."""
    surface = kitchen.tray_cm2
    return {
        "file": file,
        "trays": kitchen.trays,
        "tray_mm": _sides(kitchen.tray),
        "hole_mm": _sides(kitchen.hole),
        "tray_cm2": None if surface is None else round(surface, 1),
        "dryer_f": None if kitchen.dryer_f is None else list(kitchen.dryer_f),
        "adjustable": kitchen.adjustable,
        "oven_lowest_f": kitchen.oven_lowest_f,
        "oven_racks": kitchen.oven_racks,
        "oven_rack_mm": _sides(kitchen.oven_rack),
        "bowls_ml": {one.name: float(one.volume_ml) for one in kitchen.bowls},
        "drawer": kitchen.drawer,
        "scale_step_g": None if kitchen.scale_g is None else float(kitchen.scale_g),
        "altitude_m": kitchen.altitude_m,
        "units": kitchen.units,
        "sodium_a_day_mg": kitchen.sodium_a_day_mg,
        "sugars_a_day_g": kitchen.sugars_a_day_g,
    }


def surface_words(kitchen: Kitchen) -> str:
    """Return how much there is to dry on, in words."""
    if kitchen.trays == 0:
        if kitchen.oven_racks is None or kitchen.oven_rack is None:
            return f"{NOT_KNOWN}: the racks of the oven are not told"
        return area_words(kitchen.oven_racks * kitchen.oven_rack.area_cm2)
    one = kitchen.tray_cm2
    if kitchen.trays is None or one is None:
        return NOT_KNOWN
    return f"{area_words(kitchen.trays * one)}, {area_words(one)} a tray"


def area_words(cm2: float) -> str:
    """Return an area in square feet and square centimeters."""
    return f"{cm2 / CM2_PER_FT2:.2f} sq ft ({cm2:,.0f} cm²)"


def _rows(kitchen: Kitchen) -> Iterator[tuple[str, str, str]]:
    """Yield path, name and words of everything; no words where it is not known."""
    trays = kitchen.trays
    yield "dryer.trays", "dryer", "" if trays is None else _trays_words(trays)
    if trays != 0:
        yield "dryer.tray", "tray", _outline_words(kitchen.tray)
        if kitchen.hole is not None:
            yield "dryer.hole", "hole in the tray", _outline_words(kitchen.hole)
        heat = kitchen.dryer_f
        yield "dryer.temperature", "dryer's heat", "" if heat is None else temperature_words(heat)
        yield "dryer.adjustable", "heat can be set", _yes_or_no(kitchen.adjustable)
    lowest = kitchen.oven_lowest_f
    words = "" if lowest is None else temperature_words((lowest, lowest))
    yield "oven.lowest", "oven's lowest", words
    if trays == 0 or kitchen.oven_racks is not None:
        racks = kitchen.oven_racks
        yield "oven.racks", "oven racks", "" if racks is None else str(racks)
        yield "oven.rack", "oven rack", _outline_words(kitchen.oven_rack)
    yield (
        "bowls",
        "bowls and bags",
        "; ".join(
            f"{clean(one.name)} {float(one.volume_ml) / 1000:.3g} L" for one in kitchen.bowls
        ),
    )
    yield "measuring.set", "measuring set", kitchen.drawer or ""
    step = kitchen.scale_g
    yield "scale.step", "scale's step", "" if step is None else format_mass_g(step)
    height = kitchen.altitude_m
    yield "house.altitude", "height above sea", "" if height is None else height_words(height)
    yield "house.units", "units", kitchen.units or ""
    # Most houses have no such figure, and miss nothing.
    if kitchen.sodium_a_day_mg is not None:
        yield "house.sodium-a-day", "sodium a day", f"{kitchen.sodium_a_day_mg:,.10g} mg"
    if kitchen.sugars_a_day_g is not None:
        yield "house.sugars-a-day", "total sugars a day", f"{kitchen.sugars_a_day_g:,.10g} g"


def height_words(meters: float) -> str:
    """Return a height above the sea in feet and meters."""
    return f"{meters / _M_PER_FT:,.0f} ft ({meters:,.0f} m)"


def _trays_words(trays: int) -> str:
    if trays == 0:
        return "none: the oven dries"
    return "1 tray" if trays == 1 else f"{trays} trays"


def _outline_words(tray: Tray | None) -> str:
    if tray is None:
        return ""
    if tray.short_mm is None:
        return f"{tray.long_mm / _MM_PER_INCH:.3g} in ({tray.long_mm / 10:.3g} cm) round"
    inches = f"{tray.long_mm / _MM_PER_INCH:.3g} x {tray.short_mm / _MM_PER_INCH:.3g} in"
    return f"{inches} ({tray.long_mm / 10:.3g} x {tray.short_mm / 10:.3g} cm)"


def _yes_or_no(flag: bool | None) -> str:
    return "" if flag is None else "yes" if flag else "no"


def _sides(tray: Tray | None) -> list[float] | None:
    if tray is None:
        return None
    sides = [tray.long_mm] if tray.short_mm is None else [tray.long_mm, tray.short_mm]
    return [round(side, 1) for side in sides]


def _said(name: str, words: str) -> Iterator[str]:
    lead = row((name, ""), _WIDTHS).ljust(_WIDTHS[0] + 2)
    return wrap(words, COLUMNS, first=lead, rest=" " * len(lead))


def _wrapped(text: str, style: Style = Style.PLAIN) -> Iterator[Line]:
    return (Line(one, style) for one in wrap(text, COLUMNS))
