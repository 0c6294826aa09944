"""How much of a nutrient counts as a day's worth on a US label."""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache
from types import MappingProxyType

from tarebook.figures.table import Row, number, table
from tarebook.tuples import NamedTuple


class DailyValue(NamedTuple):
    """The Daily Value of one nutrient, for adults and children of four or more.

    Attributes:
        figure: name of the figure, as in ``FIGURES``, or ``added_sugars_g``, ``trans_fat_g``.
        name: in words.
        amount: per day, in ``unit``, or None where none is set.
        unit: g, mg or µg.
        source: id of the source.
        place: where in the source.
        status: S its own text, S2 a copy of it, M from memory.
        note: what to keep in mind.
    """

    figure: str
    name: str
    amount: float | None
    unit: str
    source: str
    place: str
    status: str
    note: str


@cache
def daily_values() -> Mapping[str, DailyValue]:
    """Return every Daily Value by the name of its figure."""
    found = [_daily_value(row) for row in table("daily-values.csv")]
    return MappingProxyType({entry.figure: entry for entry in found})


def _daily_value(row: Row) -> DailyValue:
    figure, name, amount, unit, source, place, status, note = row
    return DailyValue(
        figure=figure,
        name=name,
        amount=number(amount),
        unit=unit,
        source=source,
        place=place,
        status=status,
        note=note,
    )
