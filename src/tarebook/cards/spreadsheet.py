"""What ``scale`` and ``compare`` tell, as rows of cells for a spreadsheet."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from tarebook.cards.beside import Variant
from tarebook.cards.words import ingredient_name
from tarebook.cards.worksheet import Worksheet
from tarebook.nutrition.range import Range

_FIGURE = ("figure", "unit", "low", "likely", "high", "at_least", "missing")


def scale_rows(sheet: Worksheet) -> Iterator[list[str]]:
    """Yield what to measure, one ingredient a row, and then the figures of an ounce and the batch.

    The first cell says of which kind a row is; what is not known is an empty cell.
    """
    yield ["row", "part", "name", "food", "measure", "mass_g", "note"]
    for one in sheet.scaled.ingredients:
        mass = "" if one.mass is None else f"{float(one.mass.middle_g):.6g}"
        yield [
            "ingredient", one.ingredient.part.value, ingredient_name(one), one.food.key,
            one.measure.text, mass, one.ingredient.note,
        ]  # fmt: skip
    yield ["row", "per", *_FIGURE]
    for per, found in _figures(sheet):
        yield ["figure", per, *found]


def comparison_rows(variants: Sequence[Variant]) -> Iterator[list[str]]:
    """Yield the figures of every variant, one figure a row."""
    yield ["variant", "per", *_FIGURE]
    for one in variants:
        for per, found in _figures(one.sheet):
            yield [one.name, per, *found]


def _figures(sheet: Worksheet) -> Iterator[tuple[str, list[str]]]:
    found = sheet.estimate
    for per, ranges in (("ounce", found.per_ounce), ("batch", found.per_batch)):
        for figure, value in ranges.items():
            yield per, [figure, *_cells(value)]


def _cells(found: Range | None) -> list[str]:
    if found is None:
        return ["", "", "", "", "", ""]
    ends = [f"{end:.6g}" for end in (found.low, found.likely, found.high)]
    return [found.unit, *ends, "yes" if found.at_least else "no", " ".join(found.missing)]
