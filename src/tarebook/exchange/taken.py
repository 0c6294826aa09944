"""A Recipe of schema.org as plain values: title, words about it, lines, steps, notes.

Wrong types are passed over where the rest still makes a recipe, and said.
"""

from __future__ import annotations

import re
import unicodedata
from html import unescape
from typing import Any

from tarebook.exchange.page import Json
from tarebook.findings import FileUnreadable
from tarebook.recipe.fields import LONGEST_LINE, LONGEST_TEXT, MOST_TEXTS
from tarebook.recipe.ingredients import MOST_INGREDIENTS
from tarebook.tuples import NamedTuple

__all__ = ["Taken", "take"]

_MOST_DEPTH = 8
_BREAKS = r"(?i)<\s*/?\s*(?:br|p|li|ol|ul|div|h[1-6])\b[^<>]{0,200}>|[\r\n]+"


class Taken(NamedTuple):
    """What a Recipe says that a recipe of ours can hold.

    Attributes:
        title, about: its name and description, or empty.
        lines: its ingredient lines, as they stand.
        steps, notes: what to do, and what to know.
        passed_over: what could not be taken, in words.
    """

    title: str
    about: str
    lines: tuple[str, ...]
    steps: tuple[str, ...]
    notes: tuple[str, ...]
    passed_over: tuple[str, ...] = ()


def take(recipe: Json, file: str) -> Taken:
    """Return what a Recipe says.

    Args:
        recipe: as it was found.
        file: what to call the file in messages.

    Raises:
        FileUnreadable: it has more lines or steps than a recipe can have.
    """
    passed: list[str] = []
    lines = _texts(
        recipe.get("recipeIngredient", recipe.get("ingredients")), "recipeIngredient", passed
    )
    steps: list[str] = []
    notes = [f"Yield: {one}" for one in _texts(recipe.get("recipeYield"), "recipeYield", passed)]
    _instructions(recipe.get("recipeInstructions"), steps, notes, passed, 0)
    for many, most, what in (
        (lines, MOST_INGREDIENTS, "ingredient lines"),
        (steps, MOST_TEXTS, "steps"),
        (notes, MOST_TEXTS, "notes"),
    ):
        if len(many) > most:
            raise FileUnreadable(f'"{file}" has {len(many):,} {what}, more than {most}')
    title = _texts(recipe.get("name", recipe.get("headline")), "name", passed)
    about = _texts(recipe.get("description"), "description", passed)
    return Taken(
        title=_short(" ".join(title), LONGEST_LINE),
        about=_short(" ".join(about), LONGEST_LINE),
        lines=tuple(lines),
        steps=tuple(steps),
        notes=tuple(dict.fromkeys(notes)),
        passed_over=tuple(dict.fromkeys(passed)),
    )


def _texts(value: Any, what: str, passed: list[str]) -> list[str]:
    """Return a text, or each of a list of them, line by line; anything else is passed over."""
    found: list[str] = []
    for one in value if isinstance(value, list) else [value]:
        if isinstance(one, dict):
            one = next((one[key] for key in ("@value", "text", "name") if key in one), one)
        if isinstance(one, str):
            found += _lines_of(one)
        elif isinstance(one, int | float) and not isinstance(one, bool):
            found.append(str(one))
        elif one is not None:
            passed.append(f"{what} holds what is no text")
    return found


def _lines_of(text: str) -> list[str]:
    return [line for part in re.split(_BREAKS, text) for line in _pieces(_plain(part))]


def _plain(text: str) -> str:
    """Return a text without tags, entities, marks that steer a terminal, and doubled blanks."""
    text = re.sub(r"(?i)</?(?:b|i|u|a|em|strong|span|small|sup|sub)\b[^<>]{0,500}>", "", text)
    text = unescape(re.sub(r"<[^<>]{0,500}>", " ", text))
    text = unicodedata.normalize("NFC", text)
    kept = (letter if letter.isprintable() else " " for letter in text)
    return " ".join("".join(kept).split())


def _pieces(text: str) -> list[str]:
    """Return a text in pieces that a recipe of ours can hold, parted at sentences."""
    pieces = []
    while len(text) > LONGEST_TEXT:
        at = text.rfind(". ", 0, LONGEST_TEXT) + 1 or text.rfind(" ", 0, LONGEST_TEXT)
        at = at if at > 0 else LONGEST_TEXT
        pieces.append(text[:at].strip())
        text = text[at:].strip()
    return [piece for piece in (*pieces, text) if piece]


def _short(text: str, most: int) -> str:
    return text if len(text) <= most else text[: most - 3].rstrip() + "..."


def _instructions(
    value: Any, steps: list[str], notes: list[str], passed: list[str], depth: int
) -> None:
    """Gather steps and tips from a text, a list, steps and sections, in their order."""
    if depth > _MOST_DEPTH:
        passed.append("recipeInstructions are nested too deeply")
    elif isinstance(value, str):
        steps += _lines_of(value)
    elif isinstance(value, list):
        for one in value:
            _instructions(one, steps, notes, passed, depth + 1)
    elif isinstance(value, dict):
        _one_instruction(value, steps, notes, passed, depth)
    elif value is not None:
        passed.append("recipeInstructions hold what is no text")


def _one_instruction(
    value: Json, steps: list[str], notes: list[str], passed: list[str], depth: int
) -> None:
    kinds = value.get("@type")
    tip = "HowToTip" in (kinds if isinstance(kinds, list) else [kinds])
    into = notes if tip else steps
    inner = value.get("itemListElement", value.get("steps"))
    name = _texts(value.get("name"), "recipeInstructions", passed)
    if inner is not None:
        gathered: list[str] = []
        _instructions(inner, gathered, notes, passed, depth + 1)
        steps += [f"{name[0]}: {gathered[0]}", *gathered[1:]] if name and gathered else gathered
        return
    text = _texts(value.get("text"), "recipeInstructions", passed)
    if text and name and tip:
        text = [f"{name[0]}: {text[0]}", *text[1:]]
    into += text or name
    if not text and not name:
        passed.append("a step of recipeInstructions has no text")
