"""The cook's own bottles, a line each: sodium and sugars of a spoon, or of 100 g."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction
from typing import Any

from tarebook.cards.food_page import COLUMNS, number, say, three
from tarebook.cards.lines import Line, Style, clean, row, table
from tarebook.recipe.model import Bottle, Panel

_SPOON_ML, _HUNDRED_G = 15, 100
_NOT_PRINTED = "not printed"


def bottles_page(bottles: Sequence[Bottle]) -> Iterator[Line]:
    """Yield a line for each bottle: sodium and sugars of a spoon, or of 100 g where it has none."""
    if not bottles:
        yield from say("No bottles of your own yet: tarebook foods add NAME keeps one.")
        return
    head = ("bottle", "like", "of", "sodium", "sugars", "date")
    rows = [_in_row(one) for one in bottles]
    widths = [max(len(cells[place]) for cells in (head, *rows)) for place in range(6)]
    spare = COLUMNS - 10 - sum(widths[2:])
    widths[0] = min(widths[0], spare * 3 // 5)
    widths[1] = min(widths[1], spare - widths[0])
    yield Line(row(head, widths, right=(3, 4)), Style.HEAD)
    yield from (Line(text) for text in table(rows, widths, right=(3, 4)))


def bottles_data(bottles: Sequence[Bottle]) -> list[dict[str, Any]]:
    """Return the same as plain data; a figure that is not printed is None."""
    found = []
    for one in bottles:
        by, of = _by(one.panel)
        sodium, sugars = _times(one.panel, "sodium_mg", by), _times(one.panel, "sugars_g", by)
        found.append(
            {
                "food": one.key,
                "name": one.name,
                "like": one.like,
                "of": of,
                "sodium_mg": number(sodium),
                "sugars_g": number(sugars),
                "date": one.origin_date,
            }
        )
    return found


def _in_row(bottle: Bottle) -> tuple[str, ...]:
    by, of = _by(bottle.panel)
    sodium, sugars = (_times(bottle.panel, name, by) for name in ("sodium_mg", "sugars_g"))
    return (
        bottle.key,
        bottle.like,
        of,
        _NOT_PRINTED if sodium is None else f"{three(float(sodium))} mg",
        _NOT_PRINTED if sugars is None else f"{_less(bottle.panel)}{three(float(sugars))} g",
        clean(bottle.origin_date),
    )


def _by(panel: Panel | None) -> tuple[Fraction | None, str]:
    """Return how many servings a spoon is, or 100 g, and which of them it is."""
    if panel is not None and panel.serving_ml:
        return _SPOON_ML / panel.serving_ml, "1 Tbsp"
    if panel is not None and panel.serving_g:
        return _HUNDRED_G / panel.serving_g, "100 g"
    return None, ""


def _less(panel: Panel | None) -> str:
    """Return the sign of sugars that are printed as less than a gram."""
    return "<" if panel is not None and "sugars_g" in panel.under else ""


def _times(panel: Panel | None, figure: str, by: Fraction | None) -> Fraction | None:
    printed: Fraction | None = None if panel is None else getattr(panel, figure)
    return None if printed is None or by is None else printed * by
