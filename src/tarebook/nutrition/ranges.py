"""Draws and ranges of all figures of a batch, each made when it is first asked for."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping

from tarebook.nutrition.facts import Facts
from tarebook.nutrition.model import FIGURES, ROUGH
from tarebook.nutrition.range import Range, Ways, range_of_ways

_SUGARS = frozenset({"sugars_g", "added_sugars_g"})
_MOSTLY = 0.5


class Draws(Mapping[str, "list[float]"]):
    """The draws of each figure."""

    def __init__(self, make: Callable[[str], list[float]]) -> None:
        self._make = make
        self._made: dict[str, list[float]] = {}

    def __getitem__(self, figure: str) -> list[float]:
        if figure not in self._made:
            self._made[figure] = self._make(figure)
        return self._made[figure]

    def __iter__(self) -> Iterator[str]:
        return iter(FIGURES)

    def __len__(self) -> int:
        return len(FIGURES)


class Ranges(Mapping[str, "Range | None"]):
    """The range of each figure.

    Attributes:
        facts: what is known of the batch, and what is missing.
        ways: draws of a figure, for each way that the meat may have been heated.
        smooth: whether the ranges are read from the moments of the draws.
    """

    def __init__(self, facts: Facts, ways: Callable[[str], Ways], *, smooth: bool) -> None:
        self.facts = facts
        self.ways = ways
        self.smooth = smooth
        self._found: dict[str, Range | None] = {}

    def __getitem__(self, figure: str) -> Range | None:
        if figure not in self._found:
            self._found[figure] = self._range(figure)
        return self._found[figure]

    def __iter__(self) -> Iterator[str]:
        return iter(FIGURES)

    def __len__(self) -> int:
        return len(FIGURES)

    def _range(self, figure: str) -> Range | None:
        if figure == "sodium_mg" and self.facts.no_sodium_total:
            return None
        return range_of_ways(
            self.ways(figure),
            unit_of(figure),
            missing=missing_of(self.facts, figure),
            rough=figure in ROUGH,
            by_moments=self.smooth and not (figure in _SUGARS and _mostly_unstated(self.facts)),
        )


def _mostly_unstated(facts: Facts) -> bool:
    """Whether most sugars put in are such as nobody states: from none to their most, all alike.

    Their sum is then too far from log-normal for its moments, which tell its high end too high.
    """
    known = unstated = 0.0
    for line in facts.lines:
        sugars_g = line.mass_g * (line.makeup.sucrose + line.makeup.hexose)
        if line.makeup.sugars_bounded:
            unstated += sugars_g
        else:
            known += sugars_g
    return unstated > _MOSTLY * (known + unstated)


def unit_of(figure: str) -> str:
    """Return the unit in a figure's name: ``sodium_mg`` is in mg."""
    return {"kcal": "kcal", "g": "g", "mg": "mg", "ug": "µg"}[figure.rsplit("_", 1)[1]]


def missing_of(facts: Facts, figure: str) -> tuple[str, ...]:
    """Return whose share of a figure is not known; energy and carbohydrate follow their parts."""
    parts = {
        "energy_kcal": ("protein_g", "carbohydrate_g", "fat_g"),
        "carbohydrate_g": ("carbohydrate_g", "sugars_g"),
        "added_sugars_g": ("added_sugars_g", "sugars_g"),
    }.get(figure, (figure,))
    names = (name for part in parts for name in facts.missing.get(part, ()))
    return tuple(dict.fromkeys(names))
