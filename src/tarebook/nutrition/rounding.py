"""Rounding of figures as US food labels round them, exact halves going up, and what was rounded.

Source: 21 CFR 101.9(c), source id ``cfr-21-101.9``; each rule names its paragraph. Rounding is
decimal, happens once, and last: everything before it is unrounded.
"""

from __future__ import annotations

from collections.abc import Callable
from decimal import ROUND_DOWN, ROUND_HALF_UP, Decimal
from fractions import Fraction

from tarebook.tuples import NamedTuple


class Rounded(NamedTuple):
    """A rounded figure: the number, or the words that stand in for it."""

    value: Decimal
    text: str

    def __str__(self) -> str:
        return self.text


def round_label(figure: str, amount: float | Decimal) -> Rounded:
    """Return one figure of a serving, rounded as a label rounds it.

    Args:
        figure: ``energy_kcal``, ``fat_g``, ``saturated_g``, ``cholesterol_mg``, ``sodium_mg``,
            ``carbohydrate_g``, ``fiber_g``, ``sugars_g``, ``added_sugars_g``, ``protein_g``,
            ``vitamin_d_ug``, ``calcium_mg``, ``iron_mg`` or ``potassium_mg``.
        amount: the unrounded amount, in the unit of the name; zero or more.

    Returns:
        The rounded number and how it is written ("less than 1" where the rule says so).

    Raises:
        KeyError: the figure has no rounding rule.
        ValueError: the amount is negative or not a number.

    Source:
        21 CFR 101.9(c), source id "cfr-21-101.9".

    Example:
        >>> round_label("sodium_mg", 137).text
        '135'
    """
    exact = _decimal(amount)
    if exact.is_nan() or exact < 0:
        raise ValueError(f"{figure} cannot be {amount}")
    return _RULES[figure](exact)


def unrounded(figure: str, printed: Fraction) -> tuple[Fraction, Fraction]:
    """Return the amounts that a printed figure may stand for, from the lowest to the highest.

    A printed 0 g of sugars is anything under 0.5 g. A figure that the rule would not print, such
    as 575 mg of sodium where tens are due, is not taken for surer than one that it would: a step
    of the rule lies about it. Water and ash stand on no US label: a pack that prints them is
    taken to round them to grams, or more finely.

    Args:
        figure: as in :func:`round_label`; also ``water_g`` and ``ash_g``.
        printed: the figure on the panel, in the unit of the name; zero or more.

    Returns:
        Low and high, in the same unit; low stands for the figure itself, high just no more.

    Raises:
        KeyError: the figure has no rounding rule.

    Source:
        21 CFR 101.9(c), source id "cfr-21-101.9", read backwards.

    Example:
        >>> unrounded("sugars_g", Fraction(0))
        (Fraction(0, 1), Fraction(1, 2))
        >>> unrounded("sodium_mg", Fraction(575))
        (Fraction(570, 1), Fraction(580, 1))
    """
    spans = _spans(figure, printed)
    if spans:
        return min(low for low, _ in spans), max(high for _, high in spans)
    half = _step_at(figure, printed) / 2
    return max(printed - half, Fraction(0)), printed + half


def under(figure: str) -> tuple[Fraction, Fraction]:
    """Return the amounts that a label may print as "less than" so much.

    Grams under one, however few; of cholesterol 2 to 5 mg, since less than that is zero.

    Args:
        figure: one of those that labels print so.

    Source:
        21 CFR 101.9(c)(3), (c)(6) and (c)(7), source id "cfr-21-101.9".
    """
    if figure == "cholesterol_mg":
        return Fraction(2), Fraction(5)
    return Fraction(0), Fraction(1)


def printable(figure: str, printed: Fraction) -> bool:
    """Whether a label could print a figure; what stands on no US label, in whatever way.

    Args:
        figure: as in :func:`unrounded`.
        printed: the figure on the panel, in the unit of the name; zero or more.

    Example:
        >>> printable("sodium_mg", Fraction(580)), printable("sodium_mg", Fraction(575))
        (True, False)
    """
    return figure in _ON_NO_LABEL or bool(_spans(figure, printed))


def _spans(figure: str, printed: Fraction) -> list[tuple[Fraction, Fraction]]:
    """Return the amounts that each piece of a rule prints as a figure; none if no piece does."""
    return [span for piece in _PIECES[figure] if (span := _within(piece, printed)) is not None]


def _step_at(figure: str, printed: Fraction) -> Fraction:
    """Return how far apart figures are that the rule prints about there."""
    if figure in _ON_NO_LABEL:
        return next((step for step in _FINER if not printed % step), Fraction(1, 1000))
    for one in _PIECES[figure]:
        if one.high is not None and printed < one.high:
            return one.step or one.high - one.low
    last = _PIECES[figure][-1].step
    assert last is not None  # beyond all ends there are steps
    return last


class _Piece(NamedTuple):
    """Amounts from ``low`` up to ``high`` are printed to the nearest ``step``, or as one figure."""

    low: Fraction
    high: Fraction | None
    step: Fraction | None
    word: Fraction | None = None


def _within(piece: _Piece, printed: Fraction) -> tuple[Fraction, Fraction] | None:
    """Return the amounts of a piece that it prints as this figure, or None."""
    low, high = piece.low, piece.high
    if piece.step is None:
        return (low, high) if printed == piece.word and high is not None else None
    if printed % piece.step:
        return None
    low = max(low, printed - piece.step / 2)
    top = printed + piece.step / 2
    high = top if high is None else min(high, top)
    return (low, high) if low < high else None


def _pieces(*rows: tuple[str, str, str]) -> tuple[_Piece, ...]:
    """Return pieces from rows of a low end, a high end (empty: none) and a step or ``= figure``."""
    found = []
    for low, high, step in rows:
        top = Fraction(high) if high else None
        if step.startswith("="):
            found.append(_Piece(Fraction(low), top, None, Fraction(step[1:])))
        else:
            found.append(_Piece(Fraction(low), top, Fraction(step)))
    return tuple(found)


_ON_NO_LABEL = ("water_g", "ash_g")
_FINER = tuple(Fraction(step) for step in ("5", "1", "0.5", "0.1", "0.05", "0.01"))
_FAT_PIECES = _pieces(("0", "0.5", "=0"), ("0.5", "5", "0.5"), ("5", "", "1"))
# "Less than 1 g" is an alternative: half a gram and more may be printed as 1 g too.
_GRAM_PIECES = _pieces(("0", "0.5", "=0"), ("0.5", "1", "=1"), ("1", "", "1"))
_PIECES: dict[str, tuple[_Piece, ...]] = {
    "energy_kcal": _pieces(("0", "5", "=0"), ("5", "50", "5"), ("50", "", "10")),
    "fat_g": _FAT_PIECES,
    "saturated_g": _FAT_PIECES,
    "cholesterol_mg": _pieces(("0", "2", "=0"), ("2", "5", "=5"), ("5", "", "5")),
    "sodium_mg": _pieces(("0", "5", "=0"), ("5", "140", "5"), ("140", "", "10")),
    **dict.fromkeys(
        ("carbohydrate_g", "fiber_g", "sugars_g", "added_sugars_g", "protein_g"), _GRAM_PIECES
    ),
    **dict.fromkeys(_ON_NO_LABEL, _pieces(("0", "", "1"))),
    **dict.fromkeys(("vitamin_d_ug", "iron_mg"), _pieces(("0", "", "0.1"))),
    **dict.fromkeys(("calcium_mg", "potassium_mg"), _pieces(("0", "", "10"))),
}


def percent_daily_value(figure: str, amount: float | Decimal, daily_value: float) -> int:
    """Return the percent Daily Value of an unrounded amount, rounded as a label rounds it.

    Args:
        figure: as in :func:`round_label`.
        amount: the unrounded amount, in the unit of the name.
        daily_value: the Daily Value in the same unit, above zero.

    Returns:
        Whole percent [%].

    Source:
        21 CFR 101.9(c)(8)(iii) for vitamins and minerals, (d)(7)(ii) for the others,
        source id "cfr-21-101.9".
    """
    percent = 100 * _decimal(amount) / _decimal(daily_value)
    if figure not in _VITAMINS_AND_MINERALS:
        return int(_nearest(percent, 1))
    if percent < 2:
        return 0
    step = 2 if percent <= 10 else 5 if percent <= 50 else 10
    return int(_nearest(percent, step))


_VITAMINS_AND_MINERALS = frozenset({"vitamin_d_ug", "calcium_mg", "iron_mg", "potassium_mg"})


def _decimal(amount: float | Decimal) -> Decimal:
    return amount if isinstance(amount, Decimal) else Decimal(repr(amount))


def _nearest(amount: Decimal, step: int | Decimal) -> Decimal:
    step = Decimal(step)
    return (amount / step).quantize(Decimal(1), ROUND_HALF_UP) * step


def _plain(value: Decimal) -> Rounded:
    whole = value == value.to_integral_value(ROUND_DOWN)
    return Rounded(value, str(int(value)) if whole else str(value.normalize()))


def _calories(amount: Decimal) -> Rounded:
    """(c)(1): under 5 zero; to 50 nearest 5; above nearest 10."""
    if amount < 5:
        return _plain(Decimal(0))
    return _plain(_nearest(amount, 5 if amount <= 50 else 10))


def _fat(amount: Decimal) -> Rounded:
    """(c)(2): under 0.5 g zero; under 5 g nearest 0.5 g; above nearest 1 g."""
    if amount < Decimal("0.5"):
        return _plain(Decimal(0))
    return _plain(_nearest(amount, Decimal("0.5") if amount < 5 else 1))


def _cholesterol(amount: Decimal) -> Rounded:
    """(c)(3): under 2 mg zero; 2 to 5 mg "less than 5"; above nearest 5 mg."""
    if amount < 2:
        return _plain(Decimal(0))
    if amount <= 5:
        return Rounded(Decimal(5), "less than 5")
    return _plain(_nearest(amount, 5))


def _sodium(amount: Decimal) -> Rounded:
    """(c)(4): under 5 mg zero; to 140 mg nearest 5 mg; above nearest 10 mg."""
    if amount < 5:
        return _plain(Decimal(0))
    return _plain(_nearest(amount, 5 if amount <= 140 else 10))


def _gram_or_less(amount: Decimal) -> Rounded:
    """(c)(6), (c)(7): under 0.5 g zero; under 1 g "less than 1"; above nearest 1 g."""
    if amount < Decimal("0.5"):
        return _plain(Decimal(0))
    if amount < 1:
        return Rounded(Decimal(1), "less than 1")
    return _plain(_nearest(amount, 1))


def _tenth(amount: Decimal) -> Rounded:
    """Vitamin D and iron: nearest 0.1 (FDA questions and answers on quantities, 2019)."""
    return _plain(_nearest(amount, Decimal("0.1")))


def _ten(amount: Decimal) -> Rounded:
    """Calcium and potassium: nearest 10 mg (same place; from memory)."""
    return _plain(_nearest(amount, 10))


_RULES: dict[str, Callable[[Decimal], Rounded]] = {
    "energy_kcal": _calories,
    "fat_g": _fat,
    "saturated_g": _fat,
    "trans_g": _fat,
    "cholesterol_mg": _cholesterol,
    "sodium_mg": _sodium,
    "carbohydrate_g": _gram_or_less,
    "fiber_g": _gram_or_less,
    "sugars_g": _gram_or_less,
    "added_sugars_g": _gram_or_less,
    "protein_g": _gram_or_less,
    "vitamin_d_ug": _tenth,
    "iron_mg": _tenth,
    "calcium_mg": _ten,
    "potassium_mg": _ten,
}
