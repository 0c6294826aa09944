"""What ``list`` prints: every recipe with sodium and sugars of a finished ounce."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Any

from tarebook.cards.figures import NO_TOTAL, nothing_known, span
from tarebook.cards.lines import Line, Style, clean, row, table, wrap
from tarebook.nutrition.range import Range
from tarebook.shelf import Row

COLUMNS = 80
_WIDTHS = (34, 22, 18)
_UNITS = {"sodium_mg": "mg", "sugars_g": "g"}
FOOT = "Low-high in a finished ounce of 28.35 g, each recipe at its own size: home estimates."


def shelf_page(rows: Sequence[Row], *, not_told: int = 0) -> Iterator[Line]:
    """Yield the list, 80 columns.

    Args:
        rows: in the order to print.
        not_told: how many recipes were left out because their figure is not known in full.
    """
    yield Line(row(("recipe", "sodium", "sugars"), _WIDTHS), Style.HEAD)
    for one in rows:
        if one.fault:
            yield from _lines(wrap(f"{clean(one.name)}: {clean(one.fault)}", COLUMNS), Style.WARN)
            continue
        cells = (clean(one.name), _span(one, "sodium_mg"), _span(one, "sugars_g"))
        yield from (Line(text) for text in _in_columns(cells))
    yield Line()
    recipes = "1 recipe" if len(rows) == 1 else f"{len(rows):,} recipes"
    yield from _lines(wrap(f"{recipes}. {FOOT}", COLUMNS), Style.QUIET)
    if not_told:
        text = (
            f"{not_told:,} more left out: something of their figure is not known, or their file "
            "has a fault."
        )
        yield from _lines(wrap(text, COLUMNS), Style.QUIET)


def shelf_data(rows: Sequence[Row]) -> list[dict[str, Any]]:
    """Return the same as plain data."""
    return [
        {
            "name": one.name,
            "title": one.title or None,
            "meat": one.meat or None,
            "sodium_mg_per_oz": _three(one, "sodium_mg"),
            "sugars_g_per_oz": _three(one, "sugars_g"),
            "at_least": list(one.at_least),
            "fault": one.fault or None,
        }
        for one in rows
    ]


def shelf_rows(rows: Sequence[Row]) -> Iterator[list[str]]:
    """Yield the same as cells of a table, the heading first; what is not known is empty."""
    ends = ("low", "likely", "high")
    yield [
        "name", "title", "meat",
        *(f"sodium_mg_per_oz_{end}" for end in ends), *(f"sugars_g_per_oz_{end}" for end in ends),
        "at_least", "fault",
    ]  # fmt: skip
    for one in rows:
        figures = [
            "" if three is None else f"{value:.4g}"
            for three in (one.sodium_mg, one.sugars_g)
            for value in (three or (0.0, 0.0, 0.0))
        ]
        yield [one.name, one.title, one.meat, *figures, " ".join(one.at_least), one.fault]


def _in_columns(cells: tuple[str, str, str]) -> Iterator[str]:
    if cells[0].isascii() and len(cells[0]) <= _WIDTHS[0]:  # nearly all of ten thousand
        return iter((row(cells, _WIDTHS),))
    return table([cells], _WIDTHS)


def _span(one: Row, figure: str) -> str:
    three, unit = getattr(one, figure), _UNITS[figure]
    if three is None:
        return NO_TOTAL
    low, likely, high = three
    missing = ("something",) if figure in one.at_least else ()
    found = Range(low, likely, high, unit, missing=missing)
    lead = "≥ " if found.at_least and not nothing_known(found) else ""
    return lead + span(found)


def _three(one: Row, figure: str) -> dict[str, float] | None:
    three = getattr(one, figure)
    return None if three is None else dict(zip(("low", "likely", "high"), three, strict=True))


def _lines(texts: Iterator[str], style: Style) -> Iterator[Line]:
    return (Line(text, style) for text in texts)
