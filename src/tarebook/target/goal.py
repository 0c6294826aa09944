"""What is asked for: sodium or sugars at most so much, in an ounce or in the batch."""

from __future__ import annotations

from tarebook.findings import AmountError
from tarebook.nutrition import Estimate
from tarebook.nutrition.range import Range
from tarebook.quantities.amount import parse_mass
from tarebook.quantities.number import parse_number
from tarebook.tuples import NamedTuple

_PER = {"oz": "ounce", "ounce": "ounce", "batch": "batch", "all": "batch", "": "ounce"}
_SCALE = {"sodium_mg": 1000.0, "sugars_g": 1.0, "added_sugars_g": 1.0}


class Goal(NamedTuple):
    """A limit on one figure.

    Attributes:
        figure: ``sodium_mg``, ``sugars_g`` or ``added_sugars_g``.
        limit: in the unit of the figure; of a cut, still to be worked out.
        per: ``ounce`` or ``batch``.
        cut: part of today's figure to be taken off [-], or None where a limit is named.
        likely: whether the likely value is held against it rather than the high one.
    """

    figure: str
    limit: float
    per: str
    cut: float | None = None
    likely: bool = False

    def value(self, found: Estimate) -> float | None:
        """Return what is held against the limit, or None where there is no total."""
        one = self.range(found)
        if one is None:
            return None
        return one.likely if self.likely else one.high

    def range(self, found: Estimate) -> Range | None:
        """Return the whole range of the figure."""
        return (found.per_ounce if self.per == "ounce" else found.per_batch)[self.figure]

    def set_from(self, found: Estimate) -> Goal:
        """Return the goal with its limit worked out from what the recipe holds now."""
        now = self.value(found)
        if self.cut is None or now is None:
            return self
        return self._replace(limit=now * (1 - self.cut))


def read_goal(figure: str, text: str, *, likely: bool = False) -> Goal:
    """Return a goal as a cook writes it.

    Args:
        figure: ``sodium_mg``, ``sugars_g`` or ``added_sugars_g``.
        text: ``300 mg/oz``, ``300mg``, ``4 g per batch``, or a cut: ``30%``, ``30% less``.
        likely: hold the likely value against it rather than the high one.

    Raises:
        AmountError: it is no such limit.

    Example:
        >>> read_goal("sodium_mg", "300 mg/oz").limit
        300.0
        >>> read_goal("sugars_g", "25 %").cut
        0.25
    """
    body = text.strip().removesuffix(" less").rstrip()
    if body.endswith("%"):
        share = body[:-1].strip()
        cut = 0.0 if share.startswith("-") else float(parse_number(share)) / 100
        if not 0 < cut < 1:
            hint = "write 30 % for 30 % less"
            raise AmountError(f'a cut of "{body[:20]}" is none', text=text, hint=hint)
        return Goal(figure, 0.0, "ounce", cut, likely)
    amount, _, per = body.replace(" per ", "/").partition("/")
    word = per.strip().lower()
    if word not in _PER:
        raise AmountError(
            f'"{word[:20]}" is nothing to count by', text=text, hint="write 300 mg/oz or 4 g/batch"
        )
    grams = float(parse_mass(amount))
    return Goal(figure, grams * _SCALE[figure], _PER[word], None, likely)
