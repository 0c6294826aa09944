"""The tables as a whole: how many rows, what their columns add up to, who says so.

After a change that was meant, ``python tests/figures/test_table.py`` counts and adds up anew.
"""

import json
import socket
from decimal import Decimal
from pathlib import Path
from typing import Any

import pytest

from tarebook.figures import table as reader
from tarebook.figures.foods import food_keys
from tarebook.figures.nutrients import FIGURES, nutrients
from tarebook.figures.sources import sources
from tarebook.figures.table import columns, keys, number, rows_of, table, words

PINS = Path(__file__).with_name("pins.json")
TABLES: dict[str, dict[str, Any]] = json.loads(PINS.read_text(encoding="utf-8"))
"""Rows of each table, and what its columns of numbers added up to when somebody checked it."""

MEANT = "was this change meant? then: python tests/figures/test_table.py, and commit pins.json too"

WITH_SOURCE = (
    "nutrients.csv",
    "dried-products.csv",
    "measures.csv",
    "sugars.csv",
    "remedies.csv",
    "ranges.csv",
    "daily-values.csv",
    "lower-sodium.csv",
    "working-values.csv",
)


@pytest.mark.parametrize("name", TABLES)
def test_unchanged_rows_and_sums(name: str) -> None:
    """No row gets lost or slips in unseen, and no digit of a column of numbers changes so."""
    assert TABLES[name] == counted(name), MEANT


def counted(name: str) -> dict[str, Any]:
    """Return how many rows a table has, and what its pinned columns add up to."""
    rows, at = table(name), columns(name)
    sums = {
        column: str(sum((Decimal(row[at[column]] or 0) for row in rows), Decimal()))
        for column in TABLES[name]["sums"]
    }
    return {"rows": len(rows), "sums": sums}


@pytest.mark.parametrize("name", TABLES)
def test_rows_are_as_long_as_the_header(name: str) -> None:
    """Every row has a cell for every column."""
    assert {len(columns(name))} == {len(row) for row in table(name)}


@pytest.mark.parametrize("name", WITH_SOURCE)
def test_every_row_has_a_known_source(name: str) -> None:
    """No row is without a source, and every source named is described."""
    named = {row[columns(name)["source"]] for row in table(name)}
    assert set() == named - set(sources())


def test_every_allergen_has_a_source_and_a_status() -> None:
    """Whatever is said of allergens says on whose word, and how that was confirmed."""
    at = columns("foods.csv")
    said = ("allergens", "other_allergens", "check_for")
    rows = [row for row in table("foods.csv") if any(row[at[name]] for name in said)]
    assert {"S", "S2", "M"} == {row[at["allergen_status"]] for row in rows}
    assert set() == {row[at["allergen_source"]] for row in rows} - set(sources())


@pytest.mark.parametrize("name", ["foods.csv", "nutrients.csv", "sugars.csv", "working-values.csv"])
def test_one_row_a_key(name: str) -> None:
    """A table with one row a food names no food twice."""
    assert len(table(name)) == len(keys(name))


@pytest.mark.parametrize("name", ["measures.csv", "sugars.csv", "remedies.csv", "ranges.csv"])
def test_every_food_named_is_known(name: str) -> None:
    """No table speaks of a food that the list of foods does not have."""
    assert set() == set(keys(name)) - set(food_keys())


def test_every_food_has_its_row_of_figures() -> None:
    """Foods and figures have the same keys, in the same order."""
    here = "a row of foods.csv has its row of nutrients.csv at the same place"
    assert food_keys() == keys("nutrients.csv"), here


def test_row_by_key_is_the_row_of_the_table() -> None:
    """Taking one line apart gives what taking the whole table apart gives."""
    for name in TABLES:
        by_key = [tuple(row) for key in keys(name) for row in rows_of(name, key)]
        assert sorted(by_key) == sorted(tuple(row) for row in table(name))


def test_empty_cell_is_not_zero() -> None:
    """An empty cell is not known; a zero is a zero."""
    assert (number(""), number("0.00")) == (None, 0.0)
    assert (words(""), words("soybeans; wheat")) == ((), ("soybeans", "wheat"))


def test_reading_is_offline(monkeypatch: pytest.MonkeyPatch) -> None:
    """Every table and every figure can be read with no network at all."""

    def refuse(*_args: object, **_kwargs: object) -> None:
        raise AssertionError("a table tried to reach the network")

    monkeypatch.setattr(socket, "socket", refuse)
    for cached in (reader._read, reader._by_key, reader.table, rows_of, nutrients, sources):
        cached.cache_clear()
    figures = [nutrients(key)[name] for key in food_keys() for name in FIGURES]
    assert len(FIGURES) * TABLES["foods.csv"]["rows"] == len(figures)
    assert {figure.source for figure in figures} <= set(sources())


if __name__ == "__main__":
    PINS.write_text(json.dumps({name: counted(name) for name in TABLES}, indent=2) + "\n", "utf-8")
