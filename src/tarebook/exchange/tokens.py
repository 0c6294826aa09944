"""A plain line as tokens: numbers, words, marks, and brackets with what is in them."""

from __future__ import annotations

import re

from tarebook.exchange.vocabulary import NUMBER_WORDS, PARTS
from tarebook.quantities import read_unit
from tarebook.tuples import NamedTuple

__all__ = ["OPENS", "Token", "said", "tokens_of"]

_TOKEN = (
    r"\d+/\d+|\d+(?:[.,]\d+)?|\.\d+"
    r"|[^\W\d_](?:\.[^\W\d_](?![^\W\d_]))+\.?"
    r"|[^\W\d_]+(?:[-'&][^\W\d_]+)*(?:'(?=\s|$))?\.?"
    r"|[^\s\w]|_"
)
OPENS, _CLOSES = "([{", ")]}"


class Token(NamedTuple):
    """One number, word, mark or bracket.

    Attributes:
        text: as it stands; of a bracket, what is in it.
        kind: ``number``, ``word``, ``mark`` or ``bracket``.
        blank: whether a blank stands before it.
    """

    text: str
    kind: str
    blank: bool

    @property
    def low(self) -> str:
        """The text in small letters, without the point of an abbreviation."""
        return self.text.lower().rstrip(".") if self.kind == "word" else self.text


def tokens_of(text: str) -> list[Token]:
    """Return the tokens of a plain line; a bracket that never closes ends with the line.

    Example:
        >>> [token.text for token in tokens_of("1 (15 oz.) can half-cup low-salt")]
        ['1', '15 oz.', 'can', 'half', 'cup', 'low-salt']
    """
    found: list[Token] = []
    depth, start, blank = 0, 0, False
    end = 0
    for match in re.finditer(_TOKEN, text):
        here = match.group()
        if here in OPENS:
            if not depth:
                start, blank = match.end(), match.start() > end
            depth += 1
        elif here in _CLOSES:
            if depth == 1:
                found.append(Token(text[start : match.start()].strip(), "bracket", blank))
            depth = max(0, depth - 1)
        elif not depth:
            found += _parted(here, match.start() > end)
        end = match.end()
    if depth:
        found.append(Token(text[start:].strip(), "bracket", blank))
    return found


def said(tokens: list[Token]) -> str:
    """Return tokens as text again."""
    out = ""
    for token in tokens:
        text = f"({token.text})" if token.kind == "bracket" else token.text
        out += f" {text}" if token.blank and out else text
    return out.strip(" ,;:")


def _parted(text: str, blank: bool) -> list[Token]:
    """Return one token, or those of ``half-cup`` and ``three-quarter``, which are two words."""
    if text[0].isdigit() or (text[0] == "." and len(text) > 1):
        return [Token(text, "number", blank)]
    if not text[0].isalpha():
        return [Token(text, "mark", blank)]
    first, *others = text.split("-")
    if others and _counts(first) and all(_counts(word) or _measures(word) for word in others):
        return [Token(first, "word", blank), *(Token(word, "word", True) for word in others)]
    return [Token(text, "word", blank)]


def _counts(word: str) -> bool:
    low = word.lower()
    return low in NUMBER_WORDS or low in PARTS or low in ("a", "to", "or")


def _measures(word: str) -> bool:
    return read_unit(word) is not None
