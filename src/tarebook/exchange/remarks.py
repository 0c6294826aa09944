"""Lines of a list that name no ingredient: headings, yields, steps, tools, remarks."""

from __future__ import annotations

import re

from tarebook.exchange.numbers import quantity_at
from tarebook.exchange.tokens import Token
from tarebook.exchange.unit_words import TIME, unit_at
from tarebook.exchange.vocabulary import known

__all__ = ["is_remark"]

_TIMED = (
    r"(?i)\b(?:hours?|hrs?|minutes?|mins?|overnight|days?|weeks?|months?)\b|\d ?°|°[CF]\b"
    r"|\b\d{2,3} ?(?:degrees|deg)\b|\b\d{3} ?F\b"
)


def is_remark(text: str, tokens: list[Token], *, ends_in_colon: bool, amount: bool) -> bool:
    """Return whether a line names no ingredient.

    Args:
        text: the plain line.
        tokens: its tokens.
        ends_in_colon: whether it ended in a colon.
        amount: whether an amount of food stands in front, which few remarks have.
    """
    words = [token.low for token in tokens if token.kind == "word"]
    if not words or "://" in text or "www." in text:
        return True
    if _times(tokens):
        return True
    if _is_tool(words, tokens):
        return True
    if words[:2] in (["a", "note"], ["a", "word"], ["a", "tip"]):
        return True
    if amount:
        return False
    return (
        ends_in_colon
        or _is_heading(words, tokens)
        or _starts_remark(words, tokens)
        or _is_step(text, words, tokens)
        or bool(known("sentence") & set(words))
    )


def _times(tokens: list[Token]) -> bool:
    """Return whether a time or a temperature stands in front: ``12 hours in the cold``."""
    quantity = quantity_at(tokens, 0)
    unit = unit_at(tokens, quantity.at) if quantity else None
    if quantity and tokens[0].kind == "number" and quantity.at < len(tokens):
        here = tokens[quantity.at]
        if here.text in ("F", "°", "°F") or here.low in (
            "servings",
            "people",
            "minutes",
            "degrees",
        ):
            return True
    return unit is not None and unit.kind == TIME


def _is_tool(words: list[str], tokens: list[Token]) -> bool:
    first_part = []
    for token in tokens:
        if token.text in (",", ";", ":", "–") or token.low in ("for", "or", "to", "with"):
            break
        if token.kind == "word":
            first_part.append(token.low)
    if not first_part:
        return False
    last = first_part[-1]
    if last in ("bag", "bags", "sheet", "sheets", "wrap", "paper"):
        return bool(known("bag-kinds") & set(first_part[:-1])) and "rice" not in first_part
    return last in known("tools") and not (
        {"brush", "press", "string"} & {last} and len(first_part) > 2
    )


def _is_heading(words: list[str], tokens: list[Token]) -> bool:
    if all(word in known("sections") for word in words):
        return True
    outside = []
    for at, token in enumerate(tokens):
        if token.kind == "bracket" or token.text in (",", ";", ":", "–", "-"):
            if any(later.kind == "number" for later in tokens[at:]):
                return False
            break
        outside.append(token.low)
    if outside and all(
        word in known("sections") or word.isdigit() or word == "#" for word in outside
    ):
        return True
    if outside[:1] == ["for"] or outside[:2] == ["to", "serve"]:
        return True
    return bool(outside) and outside[-1] in known("section-nouns")


def _starts_remark(words: list[str], tokens: list[Token]) -> bool:
    first = words[0]
    if tokens[0].kind != "word" or first not in known("not-starts"):
        return False
    if first in ("cooking", "drying", "prep", "preparation", "active"):
        later = {*words[1:2]} & {"time", "times", "temperature", "temp", "hours", "min", "minutes"}
        return bool(later)
    if first in known("starts-of-foods"):
        return len(words) > 1 and first not in ("all", "each", "optional")
    return True


def _is_step(text: str, words: list[str], tokens: list[Token]) -> bool:
    first = words[0]
    if first not in known("steps") or tokens[0].kind != "word" or len(words) < 2:
        return False
    if first in known("steps-or-foods"):
        if {"the", "them", "it", "all", "until"} & set(words[1:3]):
            return True
        return bool(re.search(_TIMED, text)) or bool(
            {"until", "into", "the", "them", "it", "in", "all", "on"} & set(words[1:])
            and len(words) > 3
            and not any(token.kind == "number" for token in tokens)
        )
    return not (len(tokens) > 1 and tokens[1].text in (",", ":"))
