"""Counts and spread of what batches came to, by recipe and for the kitchen."""

from __future__ import annotations

from collections.abc import Iterable
from typing import TYPE_CHECKING

from tarebook.lessons.learn import own_mean
from tarebook.records.entry import Row
from tarebook.tuples import NamedTuple

if TYPE_CHECKING:
    import pandas as pd

MEASURES = ("yield_fraction", "gain_fraction", "soak_h", "dry_h")
ALL = ""
"""Stands for all recipes together."""


class Spread(NamedTuple):
    """What was measured so many times.

    Attributes:
        batches: how many told it.
        mean, low, high: mean, least and greatest.
        deviation: standard deviation; None of fewer than two.
    """

    batches: int
    mean: float
    deviation: float | None
    low: float
    high: float


class Taught(NamedTuple):
    """What the batches of a recipe teach, or of all.

    Attributes:
        recipe: its name in the book; empty for all.
        batches: how many there are.
        spreads: by measure, those that were ever told.
        own_yield: the kitchen's own yield with its 90 % range [-]; None for all, whose recipes
            differ.
    """

    recipe: str
    batches: int
    spreads: dict[str, Spread]
    own_yield: tuple[float, float, float] | None


def taught(rows: Iterable[Row]) -> tuple[Taught, ...]:
    """Return what batches teach, one a recipe in order of their names, and all together last.

    Args:
        rows: batches that were weighed raw and finished.
    """
    import pandas as pd

    found = list(rows)
    if not found:
        return ()
    frame = pd.DataFrame(
        [{"recipe": one.recipe, **{name: getattr(one, name) for name in MEASURES}} for one in found]
    ).astype(dict.fromkeys(MEASURES, "float64"))
    told = [_taught(str(recipe), group) for recipe, group in frame.groupby("recipe", sort=True)]
    return (*told, _taught(ALL, frame))


def _taught(recipe: str, frame: pd.DataFrame) -> Taught:
    told = {name: frame[name].dropna() for name in MEASURES}
    spreads = {name: _spread(values.tolist()) for name, values in told.items() if len(values)}
    own = None if recipe == ALL else own_mean(frame["yield_fraction"].tolist())
    return Taught(recipe, len(frame), spreads, own)


def _spread(values: list[float]) -> Spread:
    import pandas as pd

    told = pd.Series(values, dtype="float64")
    deviation = float(told.std()) if len(values) > 1 else None
    return Spread(len(values), float(told.mean()), deviation, min(values), max(values))
