"""The one door for numbers: a cook's text in, an exact fraction out, and back.

Whole numbers, decimals, fractions and mixed numbers are read; nothing else is. A decimal comma is
refused, since ``1,500`` may mean either of two things.
"""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from functools import cache, lru_cache
from typing import TYPE_CHECKING

from tarebook.findings import AmountError
from tarebook.quantities.plain import plain, quoted, refuse_comma

if TYPE_CHECKING:
    import re

__all__ = ["format_fraction", "parse_number", "parse_range", "read_number", "read_span", "split"]

_MOST_DIGITS = 60
_DIGITS = frozenset("0123456789")
_BETWEEN = frozenset({"-", "–", "to", "or"})
_NOT_NUMBERS = frozenset({"nan", "inf", "infinity", "infinite"})


def parse_number(text: str) -> Fraction:
    """Return the number a cook wrote, exactly.

    Args:
        text: ``3``, ``0.5``, ``.5``, ``3/4``, ``1 1/2``, ``1-1/2``, ``½`` or ``1½``.

    Returns:
        The same number, zero or more.

    Raises:
        AmountError: it is no number, is negative, has a comma, or is absurdly long.

    Example:
        >>> parse_number("1 1/2"), parse_number("1½"), parse_number(".5")
        (Fraction(3, 2), Fraction(3, 2), Fraction(1, 2))
    """
    low, high = _whole_text(text, "number")
    if high is not None:
        raise AmountError(f"number {quoted(text)} is a range", text=text, hint="write one number")
    return low


def parse_range(text: str) -> tuple[Fraction, Fraction]:
    """Return the two ends of a range (``5-8``, ``0.5 to 0.7``), or one number twice.

    Args:
        text: two numbers with a hyphen, a dash or ``to`` between them, or a single number.

    Returns:
        Low and high end, zero or more.

    Raises:
        AmountError: either end is no number, or the range runs backwards.

    Example:
        >>> parse_range("5-8"), parse_range("1-1/2")
        ((Fraction(5, 1), Fraction(8, 1)), (Fraction(3, 2), Fraction(3, 2)))
    """
    low, high = _whole_text(text, "range")
    return (low, low) if high is None else (low, high)


@lru_cache(maxsize=1024)
def format_fraction(value: Fraction | int) -> str:
    """Return a number as a cook writes it, exactly: whole, fraction or mixed.

    Args:
        value: any exact number.

    Example:
        >>> format_fraction(Fraction(3, 2)), format_fraction(Fraction(3, 4)), format_fraction(2)
        ('1 1/2', '3/4', '2')
    """
    sign = "-" if value < 0 else ""
    top, bottom = abs(value.numerator), value.denominator
    if bottom == 1:
        return f"{sign}{top}"
    whole, rest = divmod(top, bottom)
    return f"{sign}{whole} {rest}/{bottom}" if whole else f"{sign}{rest}/{bottom}"


def split(text: str) -> list[str]:
    """Return plain text as numbers, words and single marks, in order.

    A whole number, a hyphen and a fraction without spaces stay together (``1-1/2``).

    Example:
        >>> split("1-1/2 to 2 fl. oz.")
        ['1-1/2', 'to', '2', 'fl.', 'oz.']
    """
    return _pattern().findall(text)


def read_span(
    tokens: Sequence[str], at: int, what: str, text: str
) -> tuple[Fraction, Fraction | None, int]:
    """Return the number or range that starts at a token, and the place behind it.

    Args:
        tokens: as :func:`split` gives them.
        at: place of the first token, which begins with a digit or a point.
        what: what the text is meant to be, for messages.
        text: as written, for messages.

    Returns:
        Low end, high end (None where it is no range), and the place of the next token.

    Raises:
        AmountError: a number cannot be read, or the range runs backwards.
    """
    low, high, at = read_number(tokens, at, what, text)
    if high is None and _continues(tokens, at):
        high, past, at = read_number(tokens, at + 1, what, text)
        if past is not None:
            raise _unreadable(text, what)
    if high is not None and high < low:
        raise _backwards(low, high, what, text)
    return low, high, at


def read_number(
    tokens: Sequence[str], at: int, what: str, text: str
) -> tuple[Fraction, Fraction | None, int]:
    """Return the one number at a token; a high end only for ``1-3/2``, which is no mixed number."""
    token = tokens[at]
    if "-" in token:
        whole, _, fraction = token.partition("-")
        low, high = _value(whole, what, text), _value(fraction, what, text)
        mixed = low >= 1 > high > 0
        return (low + high, None, at + 1) if mixed else (low, high, at + 1)
    value = _value(token, what, text)
    at += 1
    if "/" in token or "." in token or at == len(tokens):
        return value, None, at
    if tokens[at] == "and" and at + 1 < len(tokens) and _is_fraction(tokens[at + 1]):
        at += 1
    if _is_fraction(tokens[at]):
        value += _proper(_value(tokens[at], what, text), value, what, text)
        at += 1
    return value, None, at


def _whole_text(text: str, what: str) -> tuple[Fraction, Fraction | None]:
    """Return the number or range that is the whole of a text."""
    tokens = split(plain(text, what))
    if tokens[0] in "-–" and len(tokens) > 1 and _starts_number(tokens[1]):
        raise AmountError(f"{what} {quoted(text)} is negative", text=text)
    if tokens[0].lower() in _NOT_NUMBERS or not _starts_number(tokens[0]):
        raise _unreadable(text, what)
    low, high, at = read_span(tokens, 0, what, text)
    if at == len(tokens):
        return low, high
    if tokens[at] == "," and at + 1 < len(tokens) and tokens[at + 1].isdigit():
        raise refuse_comma(tokens[at - 1], tokens[at + 1], what, text)
    raise _unreadable(text, what)


def _continues(tokens: Sequence[str], at: int) -> bool:
    """Return whether a range goes on at a token."""
    behind = at + 1 < len(tokens) and tokens[at].lower() in _BETWEEN
    return behind and _starts_number(tokens[at + 1])


def _backwards(low: Fraction, high: Fraction, what: str, text: str) -> AmountError:
    hint = "write the smaller number first"
    if low.denominator == 1 and 0 < high < 1:
        hint = f"did you mean {format_fraction(low)} {format_fraction(high)}?"
    return AmountError(f"{what} {quoted(text)} runs backwards", text=text, hint=hint)


def _starts_number(token: str) -> bool:
    return token[0] in _DIGITS or (token[0] == "." and len(token) > 1)


def _is_fraction(token: str) -> bool:
    return "/" in token and "-" not in token and len(token) > 1


def _proper(fraction: Fraction, whole: Fraction, what: str, text: str) -> Fraction:
    """Return the fraction behind a whole number, which must be one of a mixed number."""
    if whole and 0 < fraction < 1:
        return fraction
    raise AmountError(
        f"{what} {quoted(text)} is no mixed number", text=text, hint="write it as 1 1/2 is written"
    )


def _value(token: str, what: str, text: str) -> Fraction:
    """Return ``3``, ``3/4`` or ``0.75`` exactly; more than 60 digits are refused."""
    if len(token) > _MOST_DIGITS:
        raise AmountError(f"{what} {quoted(text)} has too many digits", text=text)
    if token.isdigit():
        return Fraction(int(token))
    top, slash, bottom = token.partition("/")
    if slash:
        if not int(bottom):
            raise AmountError(f"{what} {quoted(text)} divides by zero", text=text)
        return Fraction(int(top), int(bottom))
    whole, _, part = token.partition(".")
    if not part:
        raise _unreadable(text, what)
    return Fraction(int(whole + part), 10 ** len(part))


def _unreadable(text: str, what: str) -> AmountError:
    return AmountError(
        f"{what} {quoted(text)} cannot be read",
        text=text,
        hint="write a number such as 2, 0.5, 3/4 or 1 1/2",
    )


@cache
def _pattern() -> re.Pattern[str]:
    import re  # compiled at first use, not at import

    return re.compile(r"[0-9]+-[0-9]+/[0-9]+|[0-9]+/[0-9]+|[0-9]*\.[0-9]+|[0-9]+|[^\W\d_]+\.?|\S")
