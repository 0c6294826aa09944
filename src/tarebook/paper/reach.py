"""How far the lines of a table of figures reach: one measure for all, so that they compare."""

from __future__ import annotations

from collections.abc import Iterable
from math import ceil

from tarebook.cards.content import FigureRow
from tarebook.nutrition import Estimate
from tarebook.nutrition.range import Range

LEGEND = "The longer the line, the less sure the figure."

_LEAST_DRAWN = 0.005
"""A figure below this is as good as none; a line around it would only magnify noise."""
_STEP = 0.25
"""The reach of a table is a multiple of this share of the likely value."""


def drawn(row: FigureRow, found: Estimate) -> Range | None:
    """Return the range that a row draws; one that is not told, or without an upper end, is none."""
    one = found.per_ounce.get(row.figure) if row.span else None
    if one is None or one.at_least:
        return None
    return one if one.likely >= _LEAST_DRAWN else None


def reach_of(ranges: Iterable[Range]) -> float:
    """Return how far lines reach to either side of their dots, as a share of the likely value [-].

    One reach for a whole table: dots stand over one another, and lines can be compared.
    """
    widest = max((end for one in ranges for end in shares(one)), default=0.0)
    return _STEP * max(ceil(widest / _STEP), 1)


def shares(found: Range) -> tuple[float, float]:
    """Return how far low lies below and high above the likely value, as shares of it [-]."""
    return 1 - found.low / found.likely, found.high / found.likely - 1
