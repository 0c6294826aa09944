"""Which sugars a food holds, and which of them a label counts as added.

Sugars go into meat at different speeds, so sucrose is told apart from glucose and fructose. A food
whose split no source gives stays not known. Added, after 21 CFR 101.9(c)(6)(iii): sugars put in
during processing, syrups and honey, and those of concentrated juice beyond the same volume of
juice; those of whole fruit, plain juice and milk are not.
"""

from __future__ import annotations

from functools import cache

from tarebook.figures.foods import food
from tarebook.figures.table import Row, cells, number, rows_of
from tarebook.tuples import NamedTuple

_FILE = "sugars.csv"


class SugarSplit(NamedTuple):
    """How the total sugars of a food divide.

    Attributes:
        sucrose: its share of the total sugars (0 to 1), or None where not known.
        hexose: share of glucose and fructose together, or None.
        other: share of lactose, maltose and longer sugars, or None.
        added: all, none, part or unknown.
        added_low: least share of the total that counts as added (0 to 1).
        added_high: greatest such share.
        source: id of the source.
        confidence: handbook, or from memory.
        note: what to keep in mind.
    """

    sucrose: float | None
    hexose: float | None
    other: float | None
    added: str
    added_low: float
    added_high: float
    source: str
    confidence: str
    note: str


@cache
def split(food_key: str) -> SugarSplit:
    """Return how the sugars of a food divide, and how much of them is added.

    Args:
        food_key: key of the food, or any name it goes by.

    Raises:
        FoodUnknown: no food goes by that name.
    """
    rows = rows_of(_FILE, food(food_key).key)
    return _split(rows[0]) if rows else _NO_SUGARS


_NO_SUGARS = SugarSplit(
    sucrose=None,
    hexose=None,
    other=None,
    added="none",
    added_low=0.0,
    added_high=0.0,
    source="by-definition",
    confidence="handbook",
    note="no sugars in the tables",
)


def _split(row: Row) -> SugarSplit:
    text = cells(_FILE, row)
    sucrose, hexose, other = _shares(text)
    return SugarSplit(
        sucrose=sucrose,
        hexose=hexose,
        other=other,
        added=text["added"],
        added_low=float(text["added_low"]),
        added_high=float(text["added_high"]),
        source=text["source"],
        confidence=text["confidence"],
        note=text["note"],
    )


def _shares(text: dict[str, str]) -> tuple[float | None, float | None, float | None]:
    sucrose, hexose, other = (number(text[name]) for name in ("sucrose", "hexose", "other"))
    if sucrose is None or hexose is None or other is None:
        return None, None, None
    whole = sucrose + hexose + other
    return sucrose / whole, hexose / whole, other / whole
