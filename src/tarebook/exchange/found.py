"""An amount found in an ingredient line, and how a recipe of ours writes it."""

from __future__ import annotations

from fractions import Fraction

from tarebook.quantities import format_fraction, unit_text
from tarebook.tuples import NamedTuple

__all__ = ["BARE", "DECIMAL", "NOTHING", "RATE", "Measure", "written"]

BARE, RATE, NOTHING = "bare", "rate", "nothing"
DECIMAL = ("gram", "kilogram", "milligram", "milliliter", "liter")
"""Units that kitchens tell in decimals."""


class Measure(NamedTuple):
    """An amount found at a place.

    Attributes:
        terms: each term: low end, high end, our name of its unit.
        kind: mass, volume, count; ``bare`` for a count without unit; ``nothing`` where no amount
            that could be scaled is told; ``rate`` for percents and parts; length or time.
        at: place of the next token.
        notes: what else was said (``scant``, a second measure).
        size: small, medium or large, of a bare count.
        container: whether the unit is a container whose size may stand further on.
        to: whether two terms are the ends of a range (``2 tsp to 1 Tbsp``).
    """

    terms: tuple[tuple[Fraction, Fraction, str], ...]
    kind: str
    at: int
    notes: tuple[str, ...] = ()
    size: str = ""
    container: bool = False
    to: bool = False


def written(found: Measure) -> str:
    """Return an amount as a recipe of ours writes it; nothing where none was told."""
    joined = " to " if found.to else " + "
    return joined.join(_term(*term) for term in found.terms)


def _term(low: Fraction, high: Fraction, unit: str) -> str:
    number = _number(low, unit)
    if high != low:
        number = f"{number} to {_number(high, unit)}"
    return f"{number} {unit_text(unit, high)}"


def _number(value: Fraction, unit: str) -> str:
    """Return a number as kitchens write it; decimals where the unit is metric or it is odd."""
    bottom = value.denominator
    tenths = 1000 % bottom == 0
    if tenths and (unit in DECIMAL or bottom not in (1, 2, 4, 8)):
        return f"{float(value):.3f}".rstrip("0").rstrip(".")
    return format_fraction(value)
