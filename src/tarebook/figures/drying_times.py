"""Drying times that others printed, for a cook who has no batch to go by yet."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache

from tarebook.figures.table import Row, cells, number, table

_FILE = "drying-times.csv"
_MM = {"mm": 1.0, "in": 25.4}


@dataclass(frozen=True, slots=True, kw_only=True)
class DryingTime:
    """One printed drying time, with the conditions it was printed for.

    Attributes:
        key: its name in the table.
        what: what was dried.
        low_h, high_h: hours [h]; None where the source leaves that end open.
        air_c: coolest and hottest air [degC].
        thickness_mm: thinnest and thickest strips [mm]; None where not printed.
        source: id of the source.
        note: how the print was read.
    """

    key: str
    what: str
    low_h: float | None
    high_h: float | None
    air_c: tuple[float, float]
    thickness_mm: tuple[float, float] | None
    source: str
    note: str


@cache
def drying_times() -> tuple[DryingTime, ...]:
    """Return every printed drying time, in table order."""
    return tuple(_time(row) for row in table(_FILE))


def _time(row: Row) -> DryingTime:
    text = cells(_FILE, row)
    return DryingTime(
        key=text["key"],
        what=text["what"],
        low_h=number(text["hours_low"]),
        high_h=number(text["hours_high"]),
        air_c=(
            _celsius(float(text["air_low"]), text["air_unit"]),
            _celsius(float(text["air_high"]), text["air_unit"]),
        ),
        thickness_mm=_thickness(text),
        source=text["source"],
        note=text["note"],
    )


def _thickness(text: dict[str, str]) -> tuple[float, float] | None:
    if not text["thickness_unit"]:
        return None
    mm = _MM[text["thickness_unit"]]
    return float(text["thickness_low"]) * mm, float(text["thickness_high"]) * mm


def _celsius(degrees: float, unit: str) -> float:
    return (degrees - 32) / 1.8 if unit == "degF" else degrees
