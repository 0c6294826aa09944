"""What 100 g of a food holds, each figure with who says so.

``reference/nutrients.csv`` keeps every figure as printed. Where a printed figure cannot be right,
``reference/remedies.csv`` says what is taken in its place, and the figure's note tells it. A figure
that its maker's products spread widely about has a range in ``reference/ranges.csv``.
"""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache
from types import MappingProxyType
from typing import Any, Self

from tarebook.figures.foods import food
from tarebook.figures.table import Row, columns, number, rows_of, table
from tarebook.findings import AskedWrongly
from tarebook.tuples import NamedTuple

FIGURES: tuple[str, ...] = (
    "water_g",
    "energy_kcal",
    "protein_g",
    "fat_g",
    "saturated_g",
    "carbohydrate_g",
    "fiber_g",
    "sugars_g",
    "ash_g",
    "cholesterol_mg",
    "calcium_mg",
    "iron_mg",
    "potassium_mg",
    "sodium_mg",
    "vitamin_d_ug",
)

_FILE = "nutrients.csv"
_UNITS = {"g": "g", "kcal": "kcal", "mg": "mg", "ug": "µg"}
_SHARED = ("source", "basis", "confidence", "note")
_PARTS = ("water_g", "protein_g", "fat_g", "carbohydrate_g", "ash_g")


class _Figure(NamedTuple):
    value: float | None
    unit: str
    source: str
    basis: str
    confidence: str = "measured"
    note: str = ""
    low: float | None = None
    high: float | None = None


class Figure(_Figure):
    """One figure of one food. It cannot be built without a source.

    Attributes:
        value: the figure, or None where it is not known; unknown is never zero.
        unit: g, mg, µg or kcal.
        source: id of the source.
        basis: what it is per: ``100 g`` or ``100 g edible part``.
        confidence: measured, computed, handbook, common practice or from memory.
        note: what was done to it, or what to keep in mind.
        low: least value that products of its kind have, or None where no range is held.
        high: greatest such value; for an unknown figure also the most it can be, if known.
    """

    __slots__ = ()

    def __new__(cls, *told: Any, **named: Any) -> Self:
        """Refuse a figure that nobody says."""
        made = super().__new__(cls, *told, **named)
        if not made.source.strip():
            raise AskedWrongly("a figure cannot exist without a source")
        return made

    def __str__(self) -> str:
        """Return value, unit and source: ``5493 mg (sr26)``."""
        value = "not known" if self.value is None else f"{self.value:g} {self.unit}"
        return f"{value} ({self.source})"


@cache
def nutrients(food_key: str) -> Mapping[str, Figure]:
    """Return every figure of a food, by its name in ``FIGURES``, ready to be used.

    Args:
        food_key: key of the food, or any name it goes by.

    Raises:
        FoodUnknown: no food goes by that name.
    """
    key = food(food_key).key
    figures = _with_ranges(key, _mended(key, _borrowed(key, _printed(key))))
    return MappingProxyType(figures)


def printed(food_key: str) -> Mapping[str, Figure]:
    """Return a food's own row exactly as its source prints it, before any remedy."""
    return MappingProxyType(_printed(food(food_key).key))


def values(food_key: str) -> dict[str, float | None]:
    """Return the bare numbers of ``nutrients``, per 100 g; None where not known."""
    return {name: figure.value for name, figure in nutrients(food_key).items()}


@cache
def citation(food_key: str) -> tuple[str, str, str]:
    """Return source id, row number and the source's own description of a food's row."""
    row, at = _row(food(food_key).key), columns(_FILE)
    return row[at["source"]], row[at["source_row"]], row[at["description"]]


def figures_of(row: Row, at: Mapping[str, int]) -> dict[str, Figure]:
    """Return the figures of one row of a table that has the columns of ``FIGURES``, as printed."""
    source, basis, confidence, note = (row[at[name]] for name in _SHARED)
    return {
        name: Figure(
            value=number(row[at[name]]),
            unit=_unit(name),
            source=source,
            basis=basis,
            confidence=confidence,
            note=note,
        )
        for name in FIGURES
    }


def _printed(key: str) -> dict[str, Figure]:
    return figures_of(_row(key), columns(_FILE))


def _row(key: str) -> Row:
    return rows_of(_FILE, key)[0]


def _unit(name: str) -> str:
    return _UNITS[name.rpartition("_")[2]]


def _borrowed(key: str, figures: dict[str, Figure]) -> dict[str, Figure]:
    other = _row(key)[columns(_FILE)["use_figures_of"]]
    if not other:
        return figures
    lent = nutrients(other)
    return {
        name: _lend(lent[name], other, "figure") if figure.value is None else figure
        for name, figure in figures.items()
    }


def _lend(figure: Figure, other: str, what: str, why: str = "") -> Figure:
    notes = (f"{what} of {other}", why, figure.note)
    confidence = "common practice" if figure.confidence == "measured" else figure.confidence
    return figure._replace(confidence=confidence, note="; ".join(n for n in notes if n))


def _mended(key: str, figures: dict[str, Figure]) -> dict[str, Figure]:
    mended = {**figures, "sugars_g": _sugars(figures)}
    for name, (action, lender, reason, source) in _remedies().get(key, {}).items():
        if action == "by difference":
            mended[name] = _water_by_difference(figures, reason, source)
        elif action == "borrow":
            mended[name] = _lend(nutrients(lender)[name], lender, "borrowed: figure", reason)
        else:
            mended[name] = figures[name]._replace(value=None, source=source, note=reason)
    return {name: _bounded(name, figure, mended) for name, figure in mended.items()}


def _sugars(figures: Mapping[str, Figure]) -> Figure:
    sugars, carbohydrate = figures["sugars_g"], figures["carbohydrate_g"]
    if sugars.value is None and carbohydrate.value == 0:
        return sugars._replace(value=0.0, note="0 since there is no carbohydrate")
    return sugars


def _water_by_difference(figures: Mapping[str, Figure], reason: str, source: str) -> Figure:
    parts = [figures[name].value or 0.0 for name in _PARTS[1:]]
    water = figures["water_g"]
    note = f"100 less the other parts; {reason}; {water.value:g} printed"
    value = round(100.0 - sum(parts), 2)
    return water._replace(value=value, source=source, confidence="computed", note=note)


def _bounded(name: str, figure: Figure, figures: Mapping[str, Figure]) -> Figure:
    carbohydrate = figures["carbohydrate_g"].value
    if name != "sugars_g" or figure.value is not None or carbohydrate is None:
        return figure
    most = carbohydrate - (figures["fiber_g"].value or 0.0)
    note = "; ".join(n for n in (figure.note, "at most carbohydrate less fiber") if n)
    return figure._replace(low=0.0, high=round(most, 2), note=note)


def _with_ranges(key: str, figures: dict[str, Figure]) -> dict[str, Figure]:
    for name, (low, high, note) in _ranges().get(key, {}).items():
        notes = "; ".join(n for n in (figures[name].note, note) if n)
        figures[name] = figures[name]._replace(low=low, high=high, note=notes)
    return figures


@cache
def _remedies() -> dict[str, dict[str, tuple[str, str, str, str]]]:
    remedies: dict[str, dict[str, tuple[str, str, str, str]]] = {}
    for key, name, action, lender, reason, source in table("remedies.csv"):
        remedies.setdefault(key, {})[name] = (action, lender, reason, source)
    return remedies


@cache
def _ranges() -> dict[str, dict[str, tuple[float, float, str]]]:
    ranges: dict[str, dict[str, tuple[float, float, str]]] = {}
    for key, name, low, high, _source, _confidence, note in table("ranges.csv"):
        ranges.setdefault(key, {})[name] = (float(low), float(high), note)
    return ranges
