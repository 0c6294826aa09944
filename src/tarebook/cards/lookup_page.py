"""What the open table of foods says: foods by their words, and one food with every figure."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from datetime import date
from fractions import Fraction
from typing import Any

from tarebook.cards.lines import Line, Style, row, table, wrap
from tarebook.lookup.amounts import FIELDS, spoken, unit_of
from tarebook.lookup.answers import LABEL, Found, Hit, TableFood

COLUMNS = 80
SOURCE = (
    "U.S. Department of Agriculture, Agricultural Research Service: FoodData Central, "
    "fdc.nal.usda.gov; public domain"
)
_WIDTHS, _FLUSH = (8, 33, 11, 9, 9), (0, 3, 4)
_TOLD = ("sodium", "sugars")
_KINDS = {"Survey (FNDDS)": "Survey", LABEL: "label"}
_UNITS = {"ug": "µg"}


def hits_page(words: str, found: Found, *, day: date, kept: bool) -> Iterator[Line]:
    """Yield the foods that a search found, with sodium and sugars of each.

    Args:
        words: what was looked for.
        found: what was found.
        day: when the service was asked.
        kept: whether this is an answer kept from before.
    """
    yield Line(f"FoodData Central: {' '.join(words.split())[:60]}", Style.TITLE)
    yield Line()
    heads = (("number", "food", "kind", "sodium", "sugars"), ("", "", "", "mg/100 g", "g/100 g"))
    yield from (Line(row(cells, _WIDTHS, right=_FLUSH), Style.HEAD) for cells in heads)
    for hit in found.foods:
        yield from (Line(text) for text in table([_cells(hit)], _WIDTHS, right=_FLUSH))
        yield from _quiet(_remarks(hit))
    yield Line()
    yield from _say(_count(found))
    yield from _say(_asked(day, kept))
    if found.foods:
        best = found.foods[0].fdc_id
        yield from _say(f"Every figure of the first: tarebook foods lookup --id {best}")
    yield from _quiet([SOURCE])


def hits_data(found: Found, *, day: date, kept: bool) -> dict[str, Any]:
    """Return the same as plain data."""
    return {
        "foods": [
            {
                "id": hit.fdc_id,
                "description": hit.description,
                "kind": hit.kind,
                "brand": hit.brand,
                "per": hit.per,
                "sodium_mg": _number(hit.figures["sodium_mg"]),
                "sugars_g": _number(hit.figures["sugars_g"]),
                "remarks": list(hit.remarks),
            }
            for hit in found.foods
        ],
        "total": found.total,
        "unread": found.unread,
        "asked": day.isoformat(),
        "kept": kept,
    }


def table_food_page(found: TableFood, *, day: date, kept: bool) -> Iterator[Line]:
    """Yield every figure of one food of the table; arguments as of :func:`hits_page`."""
    for text in wrap(f"{found.fdc_id}: {found.description}", COLUMNS):
        yield Line(text, Style.TITLE)
    taken_up = f", taken up {found.published}" if found.published else ""
    yield from _say(f"{found.kind}{f', {found.brand}' if found.brand else ''}{taken_up}")
    yield from _say(_asked(day, kept))
    yield Line()
    yield Line(f"Per {found.per}", Style.HEAD)
    yield from (Line(row(_figure(found, field), (16, 14), right=(1,))) for field in FIELDS)
    yield from _quiet(found.remarks)
    yield from _measures(found)
    if found.ingredients:
        yield Line()
        yield from _say(f"Ingredients on the label: {found.ingredients}")
    yield Line()
    yield from _quiet([SOURCE])


def table_food_data(found: TableFood, *, day: date, kept: bool) -> dict[str, Any]:
    """Return the same as plain data."""
    serving = found.serving
    return {
        "id": found.fdc_id,
        "description": found.description,
        "kind": found.kind,
        "brand": found.brand,
        "per": found.per,
        "figures": {field: _number(found.figures[field]) for field in FIELDS},
        "remarks": list(found.remarks),
        "published": found.published,
        "measures": [
            {"measure": one.measure, "mass_g": float(one.mass_g)} for one in found.portions
        ],
        "serving": None
        if serving is None
        else {"size": float(serving.size), "unit": serving.unit, "as_printed": serving.household},
        "ingredients": found.ingredients,
        "asked": day.isoformat(),
        "kept": kept,
    }


def _cells(hit: Hit) -> tuple[str, ...]:
    name = hit.description + (f" ({hit.brand})" if hit.brand else "")
    figures = (_shown(hit.figures[field]) for field in ("sodium_mg", "sugars_g"))
    return (str(hit.fdc_id), name, _KINDS.get(hit.kind, hit.kind), *figures)


def _remarks(hit: Hit) -> Iterator[str]:
    if hit.per != "100 g":
        yield f"{hit.fdc_id}: figures per {hit.per}"
    yield from (f"{hit.fdc_id}: {one}" for one in hit.remarks if one.startswith(_TOLD))


def _shown(figure: Fraction | None) -> str:
    return "not known" if figure is None else f"{float(figure):,g}"


def _figure(found: TableFood, field: str) -> tuple[str, str]:
    figure, unit = found.figures[field], unit_of(field)
    shown = _shown(figure)
    return spoken(field).replace(
        " d", " D"
    ), shown if figure is None else f"{shown} {_UNITS.get(unit, unit)}"


def _measures(found: TableFood) -> Iterator[Line]:
    serving = found.serving
    if not found.portions and serving is None:
        return
    yield Line()
    yield Line("Measures", Style.HEAD)
    rows = [(one.measure, f"{float(one.mass_g):,g} g") for one in found.portions]
    if serving is not None:
        size = f"{float(serving.size):,g} {serving.unit}"
        printed = f" ({serving.household})" if serving.household else ""
        rows.append((f"serving on the label{printed}", size))
    yield from (Line(text) for text in table(rows, (60, 12), right=(1,)))


def _count(found: Found) -> str:
    shown = len(found.foods)
    words = f"The likeliest {shown} of {found.total:,}" if _more(found) else f"All {shown}"
    unread = f"; {found.unread} could not be read" if found.unread else ""
    if words == "All 1":
        return f"The only one{unread}."
    return f"{words}, in the order of the service{unread}."


def _more(found: Found) -> bool:
    return found.total is not None and found.total > len(found.foods) + found.unread


def _asked(day: date, kept: bool) -> str:
    if kept:
        return f"Kept since {day}, when the service was asked; --again asks it anew."
    return f"The service was asked on {day}."


def _number(figure: Fraction | None) -> float | None:
    return None if figure is None else float(figure)


def _say(text: str) -> Iterator[Line]:
    return (Line(one) for one in wrap(text, COLUMNS))


def _quiet(texts: Iterable[str]) -> Iterator[Line]:
    for text in texts:
        lines = wrap(text, COLUMNS, first="  ", rest="  ")
        yield from (Line(one, Style.QUIET) for one in lines)
