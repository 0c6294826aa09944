"""A cook's amount, understood: how much, in which unit, in which form.

Amounts are exact fractions in the unit they were written in; nothing is rounded here.
"""

from __future__ import annotations

from collections.abc import Sequence
from enum import StrEnum
from fractions import Fraction
from functools import lru_cache
from itertools import pairwise

from tarebook.findings import QuantityError, UnitError
from tarebook.quantities.forms import BEFORE
from tarebook.quantities.number import format_fraction
from tarebook.quantities.terms import MEASURES, Reader, Term
from tarebook.quantities.units import TRADITIONS, Dimension, dimension, factor, unit_text
from tarebook.tuples import NamedTuple

__all__ = [
    "Amount",
    "AmountKind",
    "parse_amount",
    "parse_length_mm",
    "parse_mass",
    "to_g",
    "to_ml",
]


class AmountKind(StrEnum):
    """Whether an amount says how much."""

    MEASURED = "measured"
    TO_TASTE = "to taste"


class Amount(NamedTuple):
    """How much of something a cook wrote.

    Two amounts are equal if they mean the same; how they were written does not count.

    Attributes:
        low, high: the ends in ``unit``, exact, equal unless a range; None for "to taste".
        unit: our name of the unit (``fluid_ounce``); empty for "to taste".
        form: form words (``packed``, ``minced``): a size, then what stands before a counted thing.
        kind: measured, or to taste.
        text: as written; for a scaled amount, as it would be written.
        readings: how doubtful words were read (``T read as tablespoon``).
    """

    low: Fraction | None
    high: Fraction | None
    unit: str
    form: tuple[str, ...] = ()
    kind: AmountKind = AmountKind.MEASURED
    text: str = ""
    readings: tuple[str, ...] = ()

    @property
    def meaning(self) -> tuple[Fraction | None, Fraction | None, str, tuple[str, ...], AmountKind]:
        """What the amount says, however it was written."""
        return self.low, self.high, self.unit, self.form, self.kind

    def __eq__(self, other: object) -> bool:
        return isinstance(other, Amount) and self.meaning == other.meaning

    def __ne__(self, other: object) -> bool:
        return not self == other

    def __hash__(self) -> int:
        return hash(self.meaning)

    @property
    def is_range(self) -> bool:
        """Whether the two ends differ."""
        return self.low != self.high

    @property
    def middle(self) -> Fraction:
        """Half way between the two ends, in ``unit``; ``QuantityError`` for "to taste"."""
        low, high = self._ends()
        return (low + high) / 2

    def times(self, by: Fraction | int) -> Amount:
        """Return the amount of that many times as much, exactly.

        Args:
            by: factor above zero [-].

        Returns:
            The scaled amount; "to taste" stays as it is.

        Raises:
            QuantityError: the factor is not above zero.

        Example:
            >>> str(parse_amount("3/4 cup packed").times(Fraction(5, 2)))
            '1 7/8 cups packed'
        """
        if by <= 0:
            raise QuantityError("an amount is scaled by a factor above zero")
        if self.low is None or self.high is None:
            return self
        low = self.low * by
        high = low if self.low == self.high else self.high * by
        return Amount(
            low=low,
            high=high,
            unit=self.unit,
            form=self.form,
            kind=self.kind,
            text=_written(low, high, self.unit, self.form),
            readings=self.readings,
        )

    def _ends(self) -> tuple[Fraction, Fraction]:
        if self.low is None or self.high is None:
            raise QuantityError('"to taste" says no amount')
        return self.low, self.high

    def __str__(self) -> str:
        """Return the amount as a cook writes it, so that it reads back as the same."""
        if self.low is None or self.high is None:
            return ", ".join(("to taste", *self.form))
        return _written(self.low, self.high, self.unit, self.form)


def parse_amount(text: str, *, cup: str = "us", zero: bool = False) -> Amount:
    """Return what a cook's amount means.

    Args:
        text: as written: ``1 1/2 cups``, ``2-3 tsp``, ``3 cloves, minced``, ``6 lb 4 oz``,
            ``a pinch``, ``to taste``.
        cup: whose cup and spoons the bare words mean: ``us``, ``metric`` or ``label``.
        zero: whether zero is an amount, as it is on the panel of a bottle.

    Returns:
        The amount, exact, in the unit it was written in (a sum in the unit of its first term).

    Raises:
        AmountError: it cannot be read; ``hint`` says what to write instead.
        UnitError: ``cup`` is none of the three.

    Example:
        >>> amount = parse_amount("1-1/2 T, packed")
        >>> amount.low, amount.unit, amount.form, amount.readings
        (Fraction(3, 2), 'tablespoon', ('packed',), ('T read as tablespoon',))
        >>> str(parse_amount("1 cup plus 2 Tbsp")), str(parse_amount("½–1 tsp"))
        ('1 1/8 cups', '1/2 to 1 tsp')
    """
    return _parsed(text, cup, zero)


def parse_mass(text: str) -> Fraction:
    """Return a weight as it is given for meat, in grams.

    Args:
        text: ``6lb``, ``6 lb 4 oz``, ``2.7kg``, ``2700 g``.

    Returns:
        The weight [g], exact, above zero and at most 1000 kg.

    Raises:
        AmountError: it is no single weight.

    Example:
        >>> parse_mass("6 lb 4 oz"), parse_mass("2.7kg")
        (Fraction(45359237, 16000), Fraction(2700, 1))
    """
    reader = Reader(text, what="weight")
    amount = _combined(reader, zero=False)
    if amount.low is None or dimension(amount.unit) is not Dimension.MASS:
        raise reader.error("is no weight", "write 6 lb, 2.7 kg or 2700 g")
    if amount.is_range:
        raise reader.error("is a range", "give one weight")
    return amount.low * factor(amount.unit, "gram")


def parse_length_mm(text: str) -> tuple[float, float, float]:
    """Return a thickness in millimeters: low end, middle, high end.

    Args:
        text: ``1/4 in``, ``6 mm``, ``5-7 mm``, ``1/8 to 1/4 inch``.

    Returns:
        Low, middle and high [mm], above zero and at most 300 mm.

    Raises:
        AmountError: it is no length.

    Example:
        >>> parse_length_mm("1/4 in"), parse_length_mm("5-7 mm")
        ((6.35, 6.35, 6.35), (5.0, 6.0, 7.0))
    """
    reader = Reader(text, what="length")
    amount = _combined(reader, zero=False)
    if amount.low is None or amount.high is None or dimension(amount.unit) is not Dimension.LENGTH:
        raise reader.error("is no length", "write 1/4 in or 6 mm")
    millimeters = factor(amount.unit, "millimeter")
    ends = amount.low, (amount.low + amount.high) / 2, amount.high
    low, middle, high = (float(end * millimeters) for end in ends)
    return low, middle, high


def to_ml(amount: Amount) -> tuple[Fraction, Fraction]:
    """Return both ends of a volume in milliliters; ``UnitError`` if it is none."""
    return _in_unit(amount, "milliliter")


def to_g(amount: Amount) -> tuple[Fraction, Fraction]:
    """Return both ends of a weight in grams; ``UnitError`` if it is none."""
    return _in_unit(amount, "gram")


def _in_unit(amount: Amount, to: str) -> tuple[Fraction, Fraction]:
    low, high = amount._ends()
    by = factor(amount.unit, to)
    return low * by, high * by


@lru_cache(maxsize=4096)
def _parsed(text: str, cup: str, zero: bool) -> Amount:
    if cup not in TRADITIONS:
        raise UnitError(
            f'no cup is called "{cup[:20]}"', given=cup[:20], hint="write us, metric or label"
        )
    reader = Reader(text, cup=cup)
    amount = _combined(reader, zero=zero)
    if amount.low is not None and dimension(amount.unit) not in MEASURES["amount"]:
        kind = dimension(amount.unit).value
        raise reader.error(
            f"is a {kind}, not an amount of food", "write a volume, a weight or a count"
        )
    return amount


_LARGEST = {
    Dimension.MASS: ("gram", 1_000_000, "1000 kg"),
    Dimension.VOLUME: ("milliliter", 1_000_000, "1000 L"),
    Dimension.LENGTH: ("millimeter", 300, "300 mm"),
    Dimension.COUNT: ("", 10_000, "10,000 pieces"),
}


def _combined(reader: Reader, *, zero: bool) -> Amount:
    """Return the one amount that the terms of a text make, in the unit of the first."""
    if not reader.terms:
        return Amount(
            low=None,
            high=None,
            unit="",
            form=tuple(reader.forms),
            kind=AmountKind.TO_TASTE,
            text=reader.text.strip(),
        )
    if reader.to_taste:
        reader.readings.append("to taste left out: the amount counts")
    first = reader.terms[0]
    low, high = (first.low, first.high) if len(reader.terms) == 1 else _joined(reader)
    _refuse_absurd(reader, low, high, first.unit, zero=zero)
    return Amount(
        low=low,
        high=high,
        unit=first.unit,
        form=tuple(reader.forms),
        text=reader.text.strip(),
        readings=tuple(dict.fromkeys(reader.readings)),
    )


def _joined(reader: Reader) -> tuple[Fraction, Fraction]:
    """Return a sum (``1 cup + 2 Tbsp``) or a range of two units (``2 tsp to 1 Tbsp``)."""
    first, *others = reader.terms
    if any(term.joined == "to" for term in others):
        if len(others) > 1 or first.low != first.high or others[0].low != others[0].high:
            raise reader.error("is more than one range", "write one range, in one unit")
        high = others[0].low * _factor(reader, others[0], first)
        if high < first.low:
            raise reader.error("runs backwards", "write the smaller amount first")
        return first.low, high
    _refuse_bare_sum(reader, reader.terms)
    factors = [_factor(reader, term, first) for term in others]
    low = first.low + sum(term.low * by for term, by in zip(others, factors, strict=True))
    high = first.high + sum(term.high * by for term, by in zip(others, factors, strict=True))
    return low, high


def _factor(reader: Reader, term: Term, first: Term) -> Fraction:
    try:
        return factor(term.unit, first.unit)
    except UnitError as error:
        raise reader.error(f"does not add up: {error}", "write it in one unit") from None


# In these, a smaller unit may follow a larger one without a plus, as in "6 lb 4 oz".
_LADDERS = (
    ("pound", "ounce"),
    ("kilogram", "gram", "milligram"),
    ("liter", "milliliter"),
    ("gallon", "quart", "pint", "cup", "tablespoon", "teaspoon"),
    ("gallon", "quart", "pint", "cup", "fluid_ounce"),
    ("metric_cup", "metric_tablespoon", "metric_teaspoon"),
    ("label_cup", "label_tablespoon", "label_teaspoon"),
)


def _refuse_bare_sum(reader: Reader, terms: Sequence[Term]) -> None:
    """Refuse ``1 cup 240 mL``: two amounts side by side may be the same one said twice."""
    for one, other in pairwise(terms):
        if other.joined:
            continue
        stepping_down = any(
            one.unit in ladder and other.unit in ladder[ladder.index(one.unit) + 1 :]
            for ladder in _LADDERS
        )
        if not stepping_down or other.high * factor(other.unit, one.unit) >= 1:
            raise reader.error(
                "is two amounts side by side", 'write a "+" between them, or only one of them'
            )


def _refuse_absurd(reader: Reader, low: Fraction, high: Fraction, unit: str, *, zero: bool) -> None:
    """Refuse zero, and more than any kitchen holds."""
    if not zero and not low:
        if high:
            raise reader.error("starts at zero", "write the least you would use")
        hint = "leave the ingredient out, or write how much" if reader.what == "amount" else ""
        raise reader.error("is zero", hint)
    limit = _largest(unit)
    if limit is not None and high > limit:
        most = _LARGEST[dimension(unit)][2]
        raise reader.error(f"is absurdly large: more than {most}", "check number and unit")


@lru_cache(maxsize=256)
def _largest(unit: str) -> Fraction | int | None:
    """Return the largest amount that is believed, in ``unit``, or None where there is no limit."""
    kind = dimension(unit)
    if kind not in _LARGEST:
        return None
    base, most, _ = _LARGEST[kind]
    return most * factor(base, unit) if base else most


def _written(low: Fraction, high: Fraction, unit: str, form: tuple[str, ...]) -> str:
    """Return number, unit and form words, each where a cook puts it."""
    number = format_fraction(low)
    if low != high:
        number = f"{number} to {format_fraction(high)}"
    if not form:
        return f"{number} {unit_text(unit, high)}"
    if dimension(unit) is not Dimension.COUNT:
        return f"{number} {unit_text(unit, high)} {' '.join(form)}"
    before = [word for word in form if word in BEFORE]
    behind = [word for word in form if word not in BEFORE]
    counted = " ".join((number, *before, unit_text(unit, high)))
    return ", ".join((counted, " ".join(behind))) if behind else counted
