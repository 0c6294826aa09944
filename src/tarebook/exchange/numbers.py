"""Numbers of ingredient lines: digits, fractions, words, ranges, and the words around them.

``quantities.number`` reads what a recipe of ours may hold; pasted lines say it in many more ways
(``one and a half``, ``1,5``, ``three quarters of a``), and these are read here.
"""

from __future__ import annotations

from fractions import Fraction

from tarebook.exchange.tokens import Token
from tarebook.exchange.vocabulary import NUMBER_WORDS, PARTS, known
from tarebook.tuples import NamedTuple

__all__ = ["Quantity", "low_at", "quantity_at"]

_ARTICLES = ("a", "an", "the")
_SMALL_UNITS = ("g", "gr", "gram", "grams", "ml", "milliliters", "millilitres", "mg")
_MOST_DIGITS = 12


class Quantity(NamedTuple):
    """A number or range, and what was said around it.

    Attributes:
        low, high: its ends, exact; equal unless a range.
        at: place of the next token.
        about: words that do not change the number (``scant``).
    """

    low: Fraction
    high: Fraction
    at: int
    about: tuple[str, ...] = ()


def low_at(tokens: list[Token], at: int) -> str:
    """Return the token there in small letters, or nothing behind the last."""
    return tokens[at].low if 0 <= at < len(tokens) else ""


def quantity_at(tokens: list[Token], at: int) -> Quantity | None:
    """Return the number or range that starts here, after words such as ``about a scant``.

    Args:
        tokens: the tokens of a line.
        at: where to look.

    Returns:
        The quantity, or None where no number is told.
    """
    about: list[str] = []
    while at < len(tokens):
        found = _number_at(tokens, at)
        if found:
            return _ranged(tokens, *found, about)
        if not _is_about(tokens, at):
            return None
        if tokens[at].low not in _ARTICLES:
            about.append(tokens[at].text)
        at += 1
    return None


def _is_about(tokens: list[Token], at: int) -> bool:
    token = tokens[at]
    if token.kind == "bracket":
        words = token.text.lower().split()
        return bool(words) and all(
            word in known("about") or word in known("sizes") for word in words
        )
    if token.low == "c":  # circa
        return at + 1 < len(tokens) and tokens[at + 1].kind == "number"
    if token.low == "to":
        return low_at(tokens, at - 1) in ("up", "close", "equal")
    return token.low in known("about") or token.low in _ARTICLES


def _ranged(tokens: list[Token], low: Fraction, at: int, about: list[str]) -> Quantity | None:
    joined = low_at(tokens, at)
    between = joined == "and" and "between" in (word.lower() for word in about)
    if joined in ("-", "–", "to", "or", "through", "~") or between:
        start = at + 1
        while low_at(tokens, start) in ("up", "to", "about", "even", "maybe"):
            start += 1
        further = _number_at(tokens, start)
        if further:
            high, behind = further
            if high > low:
                return Quantity(low, high, _past_plus(tokens, behind), tuple(about))
            if joined in "-–" and 0 < high < 1 and low.denominator == 1:
                return Quantity(low + high, low + high, behind, tuple(about))
    return Quantity(low, low, _past_plus(tokens, at), tuple(about))


def _past_plus(tokens: list[Token], at: int) -> int:
    """Return the place behind the ``+`` of ``1+ cups``."""
    plus = at < len(tokens) and tokens[at].text == "+" and not tokens[at].blank
    return at + 1 if plus and not _number_at(tokens, at + 1) else at


def _number_at(tokens: list[Token], at: int) -> tuple[Fraction, int] | None:
    if at >= len(tokens):
        return None
    token = tokens[at]
    if token.kind == "number":
        found = _digits_at(tokens, at)
    elif token.kind == "word":
        found = _words_at(tokens, at)
    else:
        return None
    if found and low_at(tokens, found[1]) in ("dozen", "doz"):
        value, behind = found
        return value * 12, behind + 1
    return found


def _digits_at(tokens: list[Token], at: int) -> tuple[Fraction, int] | None:
    value = _value(tokens[at].text, low_at(tokens, at + 1))
    if value is None:
        return None
    at += 1
    if low_at(tokens, at) in ("th", "ths", "rd", "rds", "nd"):
        at += 1
    if value.denominator == 1 and value:
        return _mixed(tokens, value, at)
    return value, _past_of(tokens, at) if value < 1 else at


def _value(text: str, unit: str) -> Fraction | None:
    """Return the value of a number token; ``1,500`` is thousands before a small unit."""
    if len(text) > _MOST_DIGITS:
        return None
    top, slash, bottom = text.partition("/")
    if slash:
        return Fraction(int(top), int(bottom)) if int(bottom) else None
    whole, comma, part = text.partition(",")
    if comma and len(part) == 3 and whole != "0" and unit in _SMALL_UNITS:
        return Fraction(int(whole + part))
    return Fraction(text.replace(",", "."))


def _mixed(tokens: list[Token], whole: Fraction, at: int) -> tuple[Fraction, int]:
    """Read on behind a whole number: ``1 1/2``, ``1-1/2``, ``1 and 1/2``, ``1 and a half``."""
    if low_at(tokens, at) in PARTS and whole < 10:  # 3 quarters, 1 half
        return Fraction(whole.numerator, PARTS[low_at(tokens, at)]), _past_of(tokens, at + 1)
    start = at
    if low_at(tokens, at) in ("and", "&") or (
        low_at(tokens, at) == "-" and not tokens[at].blank and _fraction(tokens, at + 1)
    ):
        start += 1
    part = _fraction(tokens, start)
    if part:
        return whole + part, start + 1
    if start > at and low_at(tokens, at) != "-":
        words = _part_words(tokens, start)
        if words:
            return whole + words[0], _past_of(tokens, words[1])
    return whole, at


def _fraction(tokens: list[Token], at: int) -> Fraction | None:
    """Return the proper fraction there, in digits, or None."""
    if at < len(tokens) and tokens[at].kind == "number" and "/" in tokens[at].text:
        value = _value(tokens[at].text, "")
        return value if value and value < 1 else None
    return None


def _words_at(tokens: list[Token], at: int) -> tuple[Fraction, int] | None:
    word = tokens[at].low
    if word in ("dozen", "doz"):
        return Fraction(1), at
    if word in NUMBER_WORDS:
        value, at = Fraction(NUMBER_WORDS[word]), at + 1
        units = NUMBER_WORDS.get(low_at(tokens, at), 0)
        if value >= 20 and 0 < units < 10:
            value, at = value + units, at + 1
        return _mixed(tokens, value, at)
    return _part_words(tokens, at)


def _part_words(tokens: list[Token], at: int) -> tuple[Fraction, int] | None:
    """Read ``half``, ``a quarter``, ``three quarters``, ``two thirds``."""
    top, start = 1, at
    if low_at(tokens, at) in ("a", "an"):
        start += 1
    elif low_at(tokens, at) in NUMBER_WORDS:
        top, start = NUMBER_WORDS[low_at(tokens, at)], at + 1
    word = low_at(tokens, start)
    if word not in PARTS or (
        (low_at(tokens, start + 1), word) == ("and", "half") and _twice(tokens, start)
    ):
        return None
    return Fraction(top, PARTS[word]), _past_of(tokens, start + 1)


def _twice(tokens: list[Token], at: int) -> bool:
    return low_at(tokens, at + 2) == "half"  # half and half is a food


def _past_of(tokens: list[Token], at: int) -> int:
    """Return the place behind ``of a`` of a part: ``half of a cup``, ``1/2 an onion``."""
    if low_at(tokens, at) == "of":
        at += 1
    articles = ("a", "an", "one", "the")
    if low_at(tokens, at) in articles and low_at(tokens, at + 1) not in ("to", "or", "-"):
        return at + 1
    return at
