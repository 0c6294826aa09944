"""Rows of cells for a spreadsheet."""

from __future__ import annotations

from fractions import Fraction

from tarebook.cards.beside import Variant
from tarebook.cards.spreadsheet import comparison_rows, scale_rows
from tarebook.cards.worksheet import Worksheet, worksheet
from tarebook.nutrition import FIGURES
from tarebook.recipe.load import load_recipe


def batch(name: str) -> Worksheet:
    """Return a shipped recipe at its own size."""
    return worksheet(load_recipe(name)[0], factor=Fraction(1))


def test_every_ingredient_and_every_figure_has_its_row() -> None:
    """Ingredients first; figures of an ounce and of the batch after them."""
    done = batch("juniper-venison")
    rows = list(scale_rows(done))
    ingredients = [row for row in rows if row[0] == "ingredient"]
    figures = [row for row in rows if row[0] == "figure"]

    assert len(done.scaled.ingredients) == len(ingredients)
    assert 2 * len(FIGURES) == len(figures)
    assert ["136.5"] == [row[5] for row in ingredients if row[3] == "soy-sauce"]


def test_what_is_not_known_is_an_empty_cell() -> None:
    """Never a zero; what is only at least says so and names what is missing."""
    rows = list(comparison_rows([Variant("A", batch("juniper-venison"))]))
    sugars = next(row for row in rows if row[1:3] == ["ounce", "added_sugars_g"])

    assert ["yes", "worcestershire"] == sugars[-2:]
    assert all(len(rows[0]) == len(row) for row in rows)
