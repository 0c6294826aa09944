"""Finished dried meats and fish of the tables: checks on the whole reckoning, no ingredients."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from types import MappingProxyType

from tarebook.figures.nutrients import Figure, figures_of
from tarebook.figures.table import Row, cells, columns, table

_FILE = "dried-products.csv"


@dataclass(frozen=True, slots=True, kw_only=True)
class DriedProduct:
    """One finished dried product.

    Attributes:
        key: its name in the table.
        name: in words.
        kind: meat or fish.
        figures: the same figures as a food has, per 100 g, as printed.
        source_row: number of the row in the source, as text.
        description: the source's own words for it.
        note: what it may and may not be compared with.
    """

    key: str
    name: str
    kind: str
    figures: Mapping[str, Figure]
    source_row: str
    description: str
    note: str


@cache
def dried_products() -> tuple[DriedProduct, ...]:
    """Return the finished dried meats and fish of the tables, figures as printed."""
    return tuple(_product(row) for row in table(_FILE))


def _product(row: Row) -> DriedProduct:
    text = cells(_FILE, row)
    return DriedProduct(
        key=text["food"],
        name=text["name"],
        kind=text["kind"],
        figures=MappingProxyType(figures_of(row, columns(_FILE))),
        source_row=text["source_row"],
        description=text["description"],
        note=text["note"],
    )
