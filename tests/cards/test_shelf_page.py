"""The list of all recipes, as text, cells and data."""

from __future__ import annotations

from tarebook.cards.lines import plain_text, width
from tarebook.cards.shelf_page import shelf_data, shelf_page, shelf_rows
from tarebook.shelf import Row

ROWS = [
    Row("juniper", "Juniper", "deer", (200.0, 280.4, 360.0), (1.0, 1.4, 1.8), ()),
    Row("a" * 90, "Long", "elk", (90.0, 100.0, 120.0), (1.0, 1.2, 1.4), ("sugars_g",)),
    Row("spoon", "Spoon", "elk", None, (0.0, 0.0, 0.004), ("sugars_g",)),
    Row("broken\x1b[2J", "", "", None, None, (), "its file has a fault: see tarebook check"),
]


def test_the_list_fits_eighty_columns() -> None:
    """Long names wrap, and nothing steers the terminal."""
    page = list(shelf_page(ROWS))

    assert [] == [one.text for one in page if width(one.text) > 80]
    assert "\x1b" not in plain_text(page)


def test_ranges_floors_and_gaps_are_told_apart() -> None:
    """A range, "at least", no total, and a fault."""
    page = plain_text(shelf_page(ROWS, not_told=2))

    assert "200-360 mg" in page and "≥ 1.0-1.4 g" in page and "no total" in page
    assert "not known" in page and "≥ 0" not in page  # an "at least" of nothing says nothing
    assert "see tarebook check" in page
    assert "4 recipes." in page and "2 more left out" in page


def test_cells_and_data_say_the_same() -> None:
    """Empty cells and null for what is not known, never zero."""
    heading, *cells = shelf_rows(ROWS)
    data = shelf_data(ROWS)

    assert all(len(heading) == len(one) for one in cells)
    assert ["200", "280.4", "360"] == cells[0][3:6]
    assert ["", "", ""] == cells[2][3:6]
    assert data[2]["sodium_mg_per_oz"] is None
    assert {"low": 200.0, "likely": 280.4, "high": 360.0} == data[0]["sodium_mg_per_oz"]
