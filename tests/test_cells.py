"""Tables that a spreadsheet opens without running anything."""

from __future__ import annotations

import csv
import io

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tarebook.cells import csv_text, defused


@pytest.mark.parametrize(
    "cell", ["=1+1", "+cmd|' /C calc'!A0", "-2+3", "@SUM(A1)", "\t=1", "\r=1", "-", "+", "--1"]
)
def test_what_might_be_a_formula_is_defused(cell: str) -> None:
    """An apostrophe stands before it."""
    assert f"'{cell}" == defused(cell)


@pytest.mark.parametrize("cell", ["", "honey", "-36", "+1.5", "0.25", "a=b", "1-2 cups"])
def test_words_and_numbers_stay(cell: str) -> None:
    """A negative number is a number."""
    assert cell == defused(cell)


@given(st.lists(st.lists(st.text(alphabet=st.characters(codec="utf-8")), min_size=1), max_size=5))
def test_a_reader_of_csv_gets_the_same_cells(rows: list[list[str]]) -> None:
    """But for apostrophes, whatever the cells hold."""
    read = list(csv.reader(io.StringIO(csv_text(rows), newline="")))

    assert [[defused(cell) for cell in row] for row in rows] == read
