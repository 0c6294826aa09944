"""The tables as a whole: how many rows, what their columns add up to, who says so."""

import socket
from decimal import Decimal

import pytest

from tarebook.figures import table as reader
from tarebook.figures.foods import food_keys
from tarebook.figures.nutrients import FIGURES, nutrients
from tarebook.figures.sources import sources
from tarebook.figures.table import columns, keys, number, rows_of, table, words

ROWS = {
    "foods.csv": 356,
    "nutrients.csv": 356,
    "dried-products.csv": 10,
    "measures.csv": 667,
    "sugars.csv": 226,
    "remedies.csv": 27,
    "ranges.csv": 8,
    "daily-values.csv": 14,
    "lower-sodium.csv": 11,
    "working-values.csv": 103,
}

SUMS = {
    "foods.csv": {
        "nitrite_percent": "12.50",
        "nitrate_percent": "4",
    },
    "nutrients.csv": {
        "water_g": "17225.94",
        "energy_kcal": "62769",
        "protein_g": "3331.05",
        "fat_g": "2510.26",
        "saturated_g": "761.209",
        "carbohydrate_g": "7518.08",
        "fiber_g": "1640.4",
        "sugars_g": "3104.06",
        "ash_g": "1586.35",
        "cholesterol_mg": "6711",
        "calcium_mg": "66196",
        "iron_mg": "1793.58",
        "potassium_mg": "239905",
        "sodium_mg": "904192",
        "vitamin_d_ug": "120.0",
        "refuse_percent": "1332",
    },
    "dried-products.csv": {
        "water_g": "255.72",
        "energy_kcal": "3577",
        "protein_g": "490.96",
        "fat_g": "168.49",
        "saturated_g": "58.272",
        "carbohydrate_g": "19.96",
        "fiber_g": "1.8",
        "sugars_g": "12.50",
        "ash_g": "72.24",
        "cholesterol_mg": "1526",
        "calcium_mg": "1348",
        "iron_mg": "46.86",
        "potassium_mg": "8162",
        "sodium_mg": "19429",
        "vitamin_d_ug": "20.0",
        "refuse_percent": "0",
    },
    "measures.csv": {
        "volume_ml": "54612.2270958968750",
        "grams": "85303.65",
        "density_g_per_ml": "385.97745",
        "spread": "5.09",
    },
    "sugars.csv": {
        "sucrose": "498.74",
        "hexose": "735.11",
        "other": "177.14",
        "added_low": "34.386",
        "added_high": "78.136",
    },
    "ranges.csv": {
        "low": "122088",
        "high": "209594",
    },
    "daily-values.csv": {
        "amount": "9139",
    },
    "working-values.csv": {
        "low": "6428.292500000170",
        "likely": "6893.168000000332",
        "high": "7911.06300000075",
    },
}

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


@pytest.mark.parametrize("name", ROWS)
def test_row_count(name: str) -> None:
    """No row of a table gets lost or slips in unseen."""
    assert ROWS[name] == len(table(name))


@pytest.mark.parametrize(
    ("name", "column"), [(name, column) for name, sums in SUMS.items() for column in sums]
)
def test_unchanged_column_sums(name: str, column: str) -> None:
    """No digit of a numeric column changes unseen: each adds up to what it did when checked."""
    cells = [row[columns(name)[column]] for row in table(name)]
    assert Decimal(SUMS[name][column]) == sum((Decimal(cell) for cell in cells if cell), Decimal())


@pytest.mark.parametrize("name", ROWS)
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
    assert food_keys() == keys("nutrients.csv")


def test_row_by_key_is_the_row_of_the_table() -> None:
    """Taking one line apart gives what taking the whole table apart gives."""
    for name in ROWS:
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
    assert len(FIGURES) * ROWS["foods.csv"] == len(figures)
    assert {figure.source for figure in figures} <= set(sources())
