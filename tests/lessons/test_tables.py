"""Counts and spread of what batches came to."""

from __future__ import annotations

import statistics

import pytest

from tarebook.cards.lines import plain_text, width
from tarebook.lessons.page import NONE_YET, lessons_data, lessons_page, lessons_rows
from tarebook.lessons.tables import ALL, taught
from tarebook.records.entry import Row


def batch(
    recipe: str, finished_g: float, *, dry_h: float | None = None, soaked_g: float | None = None
) -> Row:
    """Return a finished batch of a kilogram."""
    return Row(
        1, recipe, recipe, "", None, None, False, 1000.0, soaked_g, None, None, finished_g, None,
        None, None, dry_h,
    )  # fmt: skip


ROWS = [
    batch("elk", 400.0, dry_h=6.0),
    batch("elk", 420.0, dry_h=7.0, soaked_g=1050.0),
    batch("turkey", 300.0),
]


def test_each_recipe_and_all_are_told() -> None:
    """In order of their names, all of them last."""
    assert ["elk", "turkey", ALL] == [one.recipe for one in taught(ROWS)]
    assert [2, 1, 3] == [one.batches for one in taught(ROWS)]


def test_mean_and_spread_are_those_of_the_batches() -> None:
    """Held against the standard library's."""
    found = taught(ROWS)[0].spreads["yield_fraction"]

    assert (2, 0.40, 0.42) == (found.batches, found.low, found.high)
    assert statistics.mean([0.40, 0.42]) == pytest.approx(found.mean)
    assert statistics.stdev([0.40, 0.42]) == pytest.approx(found.deviation)


def test_what_was_never_told_is_left_out() -> None:
    """One batch has no spread; what no batch told has no line."""
    elk, turkey, _ = taught(ROWS)

    assert 1 == elk.spreads["gain_fraction"].batches
    assert elk.spreads["gain_fraction"].deviation is None
    assert "dry_h" not in turkey.spreads


def test_no_batches_teach_nothing() -> None:
    """And the page says how to begin."""
    assert () == taught([])
    assert NONE_YET in " ".join(plain_text(lessons_page([])).split())


def test_the_page_fits_eighty_columns() -> None:
    """Long names too."""
    page = list(lessons_page(taught([*ROWS, batch("x" * 100, 350.0)])))

    assert [] == [one.text for one in page if width(one.text) > 80]
    assert "From your 2 batches: 41 % of the raw meat" in plain_text(page)


def test_cells_and_data_say_the_same() -> None:
    """A row a measure; null where there is no spread."""
    found = taught(ROWS)
    rows = list(lessons_rows(found))
    data = lessons_data(found)

    assert ["elk", "2", "yield_fraction", "2", "0.41"] == rows[1][:5]
    assert data[0]["measures"]["gain_fraction"]["deviation"] is None
    assert data[-1]["recipe"] is None
