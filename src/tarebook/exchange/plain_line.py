"""An ingredient line as it was pasted, in plain characters.

Entities, tags, odd blanks, pasted fractions, list marks and prices are all the same to the reader
once they are through here. Nothing is understood yet.
"""

from __future__ import annotations

import re
import unicodedata
from html import unescape

from tarebook.tuples import NamedTuple

__all__ = ["PlainLine", "plain_line"]

_FRACTIONS = {
    "¼": "1/4", "½": "1/2", "¾": "3/4", "⅐": "1/7", "⅑": "1/9", "⅒": "1/10", "⅓": "1/3",
    "⅔": "2/3", "⅕": "1/5", "⅖": "2/5", "⅗": "3/5", "⅘": "4/5", "⅙": "1/6", "⅚": "5/6",
    "⅛": "1/8", "⅜": "3/8", "⅝": "5/8", "⅞": "7/8",
}  # fmt: skip
_FROM = str.maketrans(
    {mark: f" {text} " for mark, text in _FRACTIONS.items()}
    | dict.fromkeys("\u00ad\u200b\u200c\u200d\u2060\ufeff™®©¹²³⁴⁵⁶⁷⁸⁹⁰†‡", "")
    | dict.fromkeys("⁄∕／", "/")
    | dict.fromkeys("‐‑‒−﹣－", "-")
    | dict.fromkeys("’‘ʼ´`′", "'")
    | dict.fromkeys("“”„″«»", '"')
    | {"×": "x", "✕": "x", "✖": "x", "—": " – ", "―": " – ", "＋": "+", "·": " ", "•": " "}
)
_MONEY = (
    r"[$€£]\s?\d+(?:[.,]\d{1,3})?(?:\s?(?:/|per|a|each|an)\s?[a-z]+)?"
    r"|\b\d+[.,]\d\d\s?(?:€|£|\$|EUR|USD|SEK|kr\b)"
)


class PlainLine(NamedTuple):
    """A line in plain characters.

    Attributes:
        text: the line, with single blanks, list marks and prices gone.
        asides: what was taken out of it and is worth a note (prices).
        ends_in_colon: whether it ended in a colon, as headings do.
    """

    text: str
    asides: tuple[str, ...]
    ends_in_colon: bool


def plain_line(text: str) -> PlainLine:
    """Return a line of a page or a note in plain characters.

    Args:
        text: as pasted; a few hundred characters at most.

    Example:
        >>> plain_line("• 1&frac14; cups&nbsp;tamari").text
        '1 1/4 cups tamari'
    """
    text = unescape(unescape(text))
    text = re.sub(r"<[^<>]{0,200}>", " ", text)
    text = _plain_characters(text)
    asides = tuple(found.strip() for found in re.findall(_MONEY, text, re.IGNORECASE))
    if asides:
        text = re.sub(rf"[-–(@]?\s?(?:{_MONEY})\s?\)?", " ", text, flags=re.IGNORECASE)
    text = _without_marks(text)
    text = _joined_numbers(text)
    ends_in_colon = text.rstrip(" .,;-–").endswith(":")
    return PlainLine(
        text=" ".join(text.split()).strip(" ,;:-–=|/").rstrip("."),
        asides=asides,
        ends_in_colon=ends_in_colon,
    )


def _plain_characters(text: str) -> str:
    text = unicodedata.normalize("NFKC", text.translate(_FROM)).translate(_FROM)
    return "".join(" " if _is_odd(letter) else letter for letter in text)


def _is_odd(letter: str) -> bool:
    if letter.isascii():
        return letter < " " or letter == "\x7f"
    return letter != "°" and unicodedata.category(letter) in (
        "So", "Sk", "Cc", "Cf", "Cn", "Co", "Cs", "Zl", "Zp", "Zs",
    )  # fmt: skip


def _without_marks(text: str) -> str:
    """Take off what stands before and behind a line in a list, and marks of footnotes."""
    text = re.sub(r"(\d) ?\* ?(?=\d)", r"\1 x ", text)
    text = re.sub(r"[*§_]|\[\d{1,2}\]", " ", text)
    text = re.sub(r"^\s*(?:[-–>+‣◦→|.,;:]+(?![\d])|[-–+>‣]|\[ ?[xX]? ?\]|\( ?\)|\s)+", "", text)
    text = re.sub(r"^\d{1,2}[.)]\s+(?=[^\s])(?!(?:c|oz|lb|T|t|g)\b)", "", text)
    text = re.sub(r"\.{2,}|(?: \.){2,}", " : ", text)
    return re.sub(r"\s?(?:->|=>|→|\||--+)\s?", " : ", text)


def _joined_numbers(text: str) -> str:
    """Undo hyphens that only tie a number to its unit, or two numbers to a range."""
    text = re.sub(r"(\d)- ?(to|or)[- ](?=\d)", r"\1 \2 ", text)
    text = re.sub(r"(\d)[-–](?=[^\W\d_])", r"\1 ", text)
    text = re.sub(r"(?i)\b(fl|fluid)[-. ]{1,2}(?=oz|ounce)", "fl ", text)
    return re.sub(r"(?i)(?<=\d)(x)(?=[\d\s])", r" \1 ", text)
