"""A cook's amount of a food as grams.

Volume becomes mass only through a density that was named, and the density travels along. Where
no density or count weight is held the mass is not known; it is never taken for zero.
"""

from __future__ import annotations

from fractions import Fraction

from tarebook.figures.foods import Food, salt_kinds
from tarebook.figures.measures import count_mass, density
from tarebook.figures.working import value
from tarebook.quantities.amount import Amount, AmountKind
from tarebook.quantities.units import Dimension, dimension, factor
from tarebook.tuples import NamedTuple

# Units that are a habit of the hand rather than a measure.
_BY_HAND = frozenset({"dash", "pinch", "drop"})
_STICK = "stick"

OWN_PANEL, PRINTED = "own-panel", "printed on the bottle"
"""Who says so, where a bottle's own panel states the density."""


class Mass(NamedTuple):
    """What an amount weighs, how far off that may be, and who says so.

    Attributes:
        low_g, high_g: ends of the amount as written, equal unless it is a range [g].
        doubt: relative standard deviation of measuring and density together [-].
        how: ``weighed``, ``by volume`` or ``by count``.
        source: source id of the density or count weight; empty where weighed.
        confidence: as in the tables; empty where weighed.
        note: what the table says of the figure.
        g_per_ml: the density used [g/mL], or None.
    """

    low_g: Fraction
    high_g: Fraction
    doubt: float
    how: str
    source: str = ""
    confidence: str = ""
    note: str = ""
    g_per_ml: Fraction | None = None

    @property
    def middle_g(self) -> Fraction:
        """Middle of the range [g]."""
        return (self.low_g + self.high_g) / 2

    def times(self, by: Fraction) -> Mass:
        """Return the mass of that many times as much."""
        return Mass(
            low_g=self.low_g * by,
            high_g=self.high_g * by,
            doubt=self.doubt,
            how=self.how,
            source=self.source,
            confidence=self.confidence,
            note=self.note,
            g_per_ml=self.g_per_ml,
        )


def mass_of(
    amount: Amount,
    food: Food,
    form: tuple[str, ...] = (),
    *,
    g_per_ml: Fraction | None = None,
) -> Mass | None:
    """Return what an amount of a food weighs, or None where nobody has said.

    Args:
        amount: as the cook wrote it.
        food: the food, for its density or count weight.
        form: form words (``packed``, ``ground``) beside those of the amount.
        g_per_ml: density from the food's own bottle [g/mL], which wins over the table.

    Returns:
        Its mass [g], or None: "to taste", no density, an unknown crystal, an unknown piece.
    """
    if amount.kind is AmountKind.TO_TASTE or amount.low is None or amount.high is None:
        return None
    words = form or amount.form
    match dimension(amount.unit):
        case Dimension.MASS:
            grams = factor(amount.unit, "gram")
            return Mass(
                low_g=amount.low * grams,
                high_g=amount.high * grams,
                doubt=value("measure-weighed-cv").likely,
                how="weighed",
            )
        case Dimension.VOLUME:
            return _by_volume(amount, food, words, g_per_ml)
        case Dimension.COUNT:
            return _by_count(amount, food, words)
        case _:
            return None


def salt_mass_bounds(amount: Amount) -> Mass | None:
    """Return what a spoon of salt weighs at the least and at the most, its crystal not said.

    Args:
        amount: an amount of plain salt.

    Returns:
        Mass from the lightest to the heaviest kind held [g]: never an answer for sodium, but
        what a batch weighs needs it. None where no volume is given.
    """
    if amount.low is None or amount.high is None:
        return None
    if dimension(amount.unit) is not Dimension.VOLUME:
        return None
    kinds = [found.g_per_ml for key in salt_kinds() if (found := density(key)) is not None]
    millilitres = factor(amount.unit, "milliliter")
    return Mass(
        low_g=amount.low * millilitres * min(kinds),
        high_g=amount.high * millilitres * max(kinds),
        doubt=value("measure-spoon-cv").likely,
        how="by volume",
        note="kind of crystal not said: from the lightest to the heaviest",
    )


def _by_volume(
    amount: Amount, food: Food, form: tuple[str, ...], bottle: Fraction | None
) -> Mass | None:
    assert amount.low is not None and amount.high is not None
    if amount.unit in _BY_HAND:
        own = count_mass(food.key, amount.unit, form)
        if own is not None:
            return _counted(amount, own.grams, own.source, own.confidence, own.note, by_hand=True)
    scooped = value("measure-spoon-cv").likely
    if amount.unit in _BY_HAND:
        scooped = value("measure-by-hand-cv").likely
    millilitres = factor(amount.unit, "milliliter")
    if bottle is not None:
        return Mass(
            low_g=amount.low * millilitres * bottle,
            high_g=amount.high * millilitres * bottle,
            doubt=scooped,
            how="by volume",
            g_per_ml=bottle,
            source=OWN_PANEL,
            confidence=PRINTED,
        )
    known = density(food.key, form)
    if known is None:
        return None
    return Mass(
        low_g=amount.low * millilitres * known.g_per_ml,
        high_g=amount.high * millilitres * known.g_per_ml,
        doubt=(scooped**2 + known.spread**2) ** 0.5,
        how="by volume",
        source=known.source,
        confidence=known.confidence,
        note=known.note,
        g_per_ml=known.g_per_ml,
    )


def _by_count(amount: Amount, food: Food, form: tuple[str, ...]) -> Mass | None:
    own = count_mass(food.key, amount.unit, form)
    if own is None:
        return None
    return _counted(amount, own.grams, own.source, own.confidence, own.note)


def _counted(
    amount: Amount,
    grams: Fraction,
    source: str,
    confidence: str,
    note: str,
    *,
    by_hand: bool = False,
) -> Mass:
    assert amount.low is not None and amount.high is not None
    kind = "by-hand" if by_hand else "stick" if amount.unit == _STICK else "count"
    doubt = value(f"measure-{kind}-cv").likely
    return Mass(
        low_g=amount.low * grams,
        high_g=amount.high * grams,
        doubt=doubt,
        how="by count",
        source=source,
        confidence=confidence,
        note=note,
    )
