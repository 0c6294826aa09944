"""The book as rows for a spreadsheet."""

from __future__ import annotations

import csv
import io
from collections.abc import Callable

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tarebook.records.as_csv import COLUMNS, defused, restored, to_csv
from tarebook.records.find import read_batch
from tarebook.records.store import reading

STARTS = ("=", "+", "-", "@", "\t", "\r", "\n", "＝", "＋", "－", "＠")


@given(st.text() | st.builds("".join, st.lists(st.sampled_from([*STARTS, "'", "1"]))))
def test_cells_there_and_back(cell: str) -> None:
    """No cell that is written begins a formula, and each is read as it was."""
    assert not defused(cell).startswith(STARTS)
    assert cell == restored(defused(cell))


@pytest.mark.parametrize("note", ["=HYPERLINK(1)", "+1", "-1", "@x", "\t=1", "\r=1"])
def test_no_formula_in_the_file(
    note: str, start: Callable[..., object], add: Callable[..., object]
) -> None:
    """What is typed as a formula stands in the file as a text."""
    start()
    add("note", note=note)
    with reading() as db:
        batch = read_batch(db, 1)
    text = "".join(to_csv([batch], {batch.wording: batch.recipe_text}))
    rows = list(csv.DictReader(io.StringIO(text, newline="")))

    assert f"'{note}" == rows[1]["note"]
    assert [list(COLUMNS)] == list(csv.reader([text.partition("\r\n")[0]]))
    assert [] == [cell for row in rows for cell in row.values() if cell.startswith(STARTS)]


def test_what_a_cook_looks_for_comes_first(start: Callable[..., object]) -> None:
    """An entry a row, its batch and what was weighed to the left; recipes at the end."""
    start()
    with reading() as db:
        batch = read_batch(db, 1)
    text = "".join(to_csv([batch], {batch.wording: batch.recipe_text}))

    assert text.startswith("batch,recipe,title,entry,kind,what,written,value,happened,note,")
    assert text.splitlines()[1].startswith("1,lake,Lake strips,1,start,meat,2500 g,2500,2026-")
    assert ",wording," in text.splitlines()[2]
