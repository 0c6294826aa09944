"""Which unit stands at a place of a line, misspelled ones too."""

from __future__ import annotations

import re
from functools import cache, lru_cache

from tarebook.exchange.numbers import low_at
from tarebook.exchange.tokens import Token
from tarebook.exchange.vocabulary import EXACT_UNITS, known
from tarebook.quantities import Dimension, dimension, read_unit
from tarebook.tuples import NamedTuple

__all__ = ["LENGTH", "TIME", "UNSIZED_KIND", "UnitWord", "unit_at"]

LENGTH, TIME, UNSIZED_KIND = "length", "time", "unsized"
_BEFORE = ("fl", "fluid", "us", "u.s", "metric", "label", "american")
_NOT_OURS = ("imperial", "imp", "uk", "british")
_KINDS = {
    Dimension.MASS: "mass",
    Dimension.VOLUME: "volume",
    Dimension.COUNT: "count",
    Dimension.LENGTH: LENGTH,
    Dimension.TIME: TIME,
}
_TIMES = ("day", "days", "week", "weeks", "overnight", "servings", "people", "persons", "calories")


class UnitWord(NamedTuple):
    """A unit at a place of a line.

    Attributes:
        name: our name of it (``tablespoon``); empty for what we have no unit for.
        times: how many of our unit one of it is.
        kind: mass, volume, count, length, time or unsized.
        at: place of the next token.
    """

    name: str
    times: int
    kind: str
    at: int


def unit_at(tokens: list[Token], at: int, *, named: bool = False) -> UnitWord | None:
    """Return the unit that stands at a place, or None.

    Args:
        tokens: the tokens of a line.
        at: where to look.
        named: the food's name was told already, so that ``2 breasts`` is a count and no name.
    """
    if at >= len(tokens):
        return None
    token = tokens[at]
    if token.kind == "mark":
        return _mark(token.text, at)
    if token.kind != "word":
        return None
    pair = token.low, low_at(tokens, at + 1)[:5].rstrip("s")
    if pair in (("knife", "tip"), ("dessert", "spoon"), ("desert", "spoon"), ("shot", "glas")):
        return UnitWord("", 1, UNSIZED_KIND, at + 2)
    found = _several_words(tokens, at) or _one_word(token, at)
    if found is None:
        found = _misspelled(token, at) if _word_follows(tokens, at + 1) else None
    return found if found and _may_be_unit(tokens, at, found, named=named) else None


def _mark(text: str, at: int) -> UnitWord | None:
    if text in ('"', "#"):
        return UnitWord(
            "inch" if text == '"' else "pound", 1, LENGTH if text == '"' else "mass", at + 1
        )
    return UnitWord("", 1, TIME, at + 1) if text == "°" else None


def _several_words(tokens: list[Token], at: int) -> UnitWord | None:
    first = tokens[at].low
    if first in _NOT_OURS and (unit := _one_word_at(tokens, at + 1)):
        same = unit.kind == "mass"
        return unit._replace(name=unit.name if same else "", kind="mass" if same else UNSIZED_KIND)
    if first in _BEFORE and at + 1 < len(tokens) and tokens[at + 1].kind == "word":
        words = [tokens[at].low, tokens[at + 1].low]
        if words[1] in ("fl", "fluid") and at + 2 < len(tokens):
            words.append(tokens[at + 2].low)
        skipped = words[0] in ("us", "u.s", "american")
        name = read_unit(" ".join(words[skipped:]))
        if name:
            return UnitWord(name, 1, _KINDS[dimension(name)], at + len(words))
    return None


def _one_word_at(tokens: list[Token], at: int) -> UnitWord | None:
    if at < len(tokens) and tokens[at].kind == "word":
        return _several_words(tokens, at) or _one_word(tokens[at], at)
    return None


def _one_word(token: Token, at: int) -> UnitWord | None:
    low = token.low
    if low in EXACT_UNITS:
        printed, times = EXACT_UNITS[low]
        unit = read_unit(printed)
        assert unit is not None
        return UnitWord(unit, times, _KINDS[dimension(unit)], at + 1)
    unit = read_unit(token.text)
    if unit and unit != "half" and dimension(unit) in _KINDS and low != "in":
        return UnitWord(unit, 1, _KINDS[dimension(unit)], at + 1)
    if low == "in" or low.startswith("inch"):
        return UnitWord("inch", 1, LENGTH, at + 1) if token.text != "IN" else None
    if low in _TIMES:
        return UnitWord("", 1, TIME, at + 1)
    return UnitWord("", 1, UNSIZED_KIND, at + 1) if low in known("unsized") else None


def _misspelled(token: Token, at: int) -> UnitWord | None:
    name = _slip_of(token.low)
    return UnitWord(name, 1, _KINDS[dimension(name)], at + 1) if name else None


@lru_cache(maxsize=512)
def _slip_of(word: str) -> str:
    """Return the unit a misspelled word is meant for, or nothing.

    ``t``, then only letters of the abbreviation in any order, is a spoon, with or without its end
    written out; ``p`` to ``d`` with only letters of a pound between is one; a long word may have
    one slip (two from nine letters up) and starts with the right letter.
    """
    if re.fullmatch(r"t[bslp]{2,6}n?s?|t[abelsp]{1,8}oons?", word):
        return "tablespoon" if "b" in word or "l" in word else "teaspoon"
    if re.fullmatch(r"p[oun]{2,4}ds?", word):
        return "pound"
    if word in ("cpu", "cpus", "cusp", "ucp", "cuo", "cupa"):
        return "cup"
    if (
        not 4 <= len(word) <= 13
        or not word.isalpha()
        or word.endswith("d")
        or word in known("no-slip")
    ):
        return ""
    most = 2 if len(word) >= 9 else 1
    near = (
        one
        for spelling, one in _spelled().items()
        if word[0] == spelling[0] and _slips(word, spelling) <= most
    )
    found = next(near, "")
    return (read_unit(found) or "") if found else ""


@cache
def _spelled() -> dict[str, str]:
    """Return the units that may be misspelled, by their spelling, one and many."""
    many = {one: f"{one}es" if one.endswith("ch") else f"{one}s" for one in known("spelled")}
    return {word: one for one in sorted(known("spelled")) for word in (one, many[one])}


def _slips(one: str, other: str) -> int:
    """Return how many letters were left out, put in, changed or exchanged with the next."""
    if abs(len(one) - len(other)) > 2:
        return 9
    before: list[int] = []
    last = list(range(len(other) + 1))
    for i, letter in enumerate(one, start=1):
        here = [i]
        for j, wanted in enumerate(other, start=1):
            cost = min(last[j] + 1, here[j - 1] + 1, last[j - 1] + (letter != wanted))
            if i > 1 and j > 1 and letter == other[j - 2] and one[i - 2] == wanted:
                cost = min(cost, before[j - 2] + 1)
            here.append(cost)
        before, last = last, here
    return last[-1]


def _word_follows(tokens: list[Token], at: int) -> bool:
    """Return whether a word that can be of a name follows, past brackets and marks of size."""
    while at < len(tokens) and (tokens[at].kind == "bracket" or tokens[at].text == "."):
        at += 1
    return at < len(tokens) and tokens[at].kind == "word"


def _may_be_unit(tokens: list[Token], at: int, found: UnitWord, *, named: bool) -> bool:
    """Return whether a word that can be a unit is one here, and not the food itself."""
    if found.name in known("food-units"):
        return named and not _word_follows(tokens, found.at)
    if found.name in known("cut-units") or found.name == "clove":
        return named or _name_follows(tokens, found.at)
    if tokens[at].low == "in":  # a preposition, unless a number stands right before it
        return at > 0 and tokens[at - 1].kind == "number"
    return True


def _name_follows(tokens: list[Token], at: int) -> bool:
    if not _word_follows(tokens, at):
        return False
    while tokens[at].kind != "word":
        at += 1
    while low_at(tokens, at) in known("state"):
        at += 1
    word = low_at(tokens, at)
    return (
        bool(word)
        and word[0].isalpha()
        and word not in known("cut-off")
        and word not in ("and", "or", "in")
    )
