"""Which food stands for which with less salt in it."""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache

from tarebook.figures.table import cells, table

_FILE = "lower-sodium.csv"


@cache
def lower_sodium() -> Mapping[str, str]:
    """Return, for the key of a salty food, the key of the one that takes its place cup for cup."""
    rows = (cells(_FILE, row) for row in table(_FILE))
    return {row["food"]: row["instead"] for row in rows}
