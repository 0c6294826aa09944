"""Reads our tables: CSV files of ``reference/``, one food or one fact a line, columns named first.

A line is taken apart only when somebody asks for its food; a recipe touches a dozen of hundreds.
"""

from __future__ import annotations

import csv
from collections.abc import Mapping, Sequence
from functools import cache

from tarebook.where import folder

Row = Sequence[str]


@cache
def columns(name: str) -> Mapping[str, int]:
    """Return where each column of a table stands in its rows, counted from 0.

    Args:
        name: file name in ``reference/``, such as ``foods.csv``.
    """
    return {column: place for place, column in enumerate(_read(name)[0].split(","))}


@cache
def table(name: str) -> tuple[Row, ...]:
    """Return every row of a table as plain text, in file order."""
    return tuple(csv.reader(_read(name)[1:]))


def lines(name: str) -> Sequence[str]:
    """Return every row of a table as it is written, in file order."""
    return _read(name)[1:]


def keys(name: str) -> tuple[str, ...]:
    """Return the first cell of every row, each once, in file order."""
    return tuple(_by_key(name))


@cache
def rows_of(name: str, key: str) -> tuple[Row, ...]:
    """Return the rows of a table whose first cell is the key; empty where there are none."""
    return tuple(csv.reader(_by_key(name).get(key, ())))


def cells(name: str, row: Row) -> dict[str, str]:
    """Return a row as a mapping from column name to text."""
    return dict(zip(columns(name), row, strict=True))


def number(text: str) -> float | None:
    """Return the number in a cell, or None where the cell is empty: empty never means zero."""
    return float(text) if text else None


def words(text: str) -> tuple[str, ...]:
    """Return the parts of a cell that lists several things, divided by semicolons."""
    return tuple(part.strip() for part in text.split(";")) if text else ()


@cache
def _by_key(name: str) -> dict[str, list[str]]:
    lines: dict[str, list[str]] = {}
    for line in _read(name)[1:]:
        lines.setdefault(line.partition(",")[0], []).append(line)
    return lines


@cache
def _read(name: str) -> list[str]:
    return folder("reference").joinpath(name).read_text(encoding="utf-8").splitlines()
