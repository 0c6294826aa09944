"""Sheets of labels: where each lies on its page.

A sheet is a row of ``reference/label-sheets.csv``; to add one, add a row and print its alignment
page. Names tell the geometry and nobody's wares.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from functools import cache

from tarebook.figures.table import cells, table
from tarebook.findings import AskedWrongly, nearest
from tarebook.tuples import NamedTuple

_FILE = "label-sheets.csv"
_MM = {"mm": 1.0, "in": 25.4}


class Sheet(NamedTuple):
    """A page of equal labels [mm].

    Attributes:
        name: how it is asked for.
        page_width, page_height: of the page.
        columns, rows: how many labels beside and below one another.
        width, height: of one label.
        left, top: from the page's edge to the first label.
        gap_x, gap_y: between labels.
    """

    name: str
    page_width: float
    page_height: float
    columns: int
    rows: int
    width: float
    height: float
    left: float
    top: float
    gap_x: float
    gap_y: float

    @property
    def places(self) -> int:
        """How many labels a page holds."""
        return self.columns * self.rows

    def corner(self, place: int) -> tuple[float, float]:
        """Return the top left corner of a label [mm from the left, mm from the top].

        Args:
            place: from 0, along the rows.
        """
        row, column = divmod(place, self.columns)
        return (
            self.left + column * (self.width + self.gap_x),
            self.top + row * (self.height + self.gap_y),
        )


@cache
def sheets() -> Mapping[str, Sheet]:
    """Return every sheet by name, in the order of the table."""
    return {one.name: one for one in map(_sheet, (cells(_FILE, row) for row in table(_FILE)))}


def sheet_named(name: str) -> Sheet:
    """Return a sheet by its name.

    Raises:
        AskedWrongly: there is none of it; names what is near, or all of them.
    """
    found = sheets().get(name.strip().lower())
    if found is not None:
        return found
    near = nearest(name, sheets())
    hint = f"did you mean {near[0]}?" if near else f"there are {', '.join(sheets())}"
    raise AskedWrongly(f'--sheet: there is no sheet "{name[:30]}"; {hint}')


def larger(than: Sheet) -> Iterator[Sheet]:
    """Yield sheets for the same page whose labels have more room, the smallest first."""
    area = than.width * than.height
    same = [
        one
        for one in sheets().values()
        if abs(one.page_width - than.page_width) < 1 and one.width * one.height > area
    ]
    yield from sorted(same, key=lambda one: one.width * one.height)


def _sheet(row: Mapping[str, str]) -> Sheet:
    mm = _MM[row["unit"]]

    def at(name: str) -> float:
        return float(row[name]) * mm

    return Sheet(
        name=row["name"],
        page_width=at("page_width"),
        page_height=at("page_height"),
        columns=int(row["columns"]),
        rows=int(row["rows"]),
        width=at("width"),
        height=at("height"),
        left=at("left"),
        top=at("top"),
        gap_x=at("gap_x"),
        gap_y=at("gap_y"),
    )
