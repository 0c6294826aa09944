"""What a right answer is to a page, to an ingredient line, and to a file that is set down tidy."""

from __future__ import annotations

import tomllib
from itertools import count
from typing import Any

import remarks
from judged import findings_wrong

from tarebook.exchange.brought import bring
from tarebook.exchange.line import read_line
from tarebook.exchange.page import find_recipe
from tarebook.exchange.taken import Taken, take
from tarebook.quantities.amount import parse_amount
from tarebook.recipe import read_recipe
from tarebook.recipe.bottle import read_bottle
from tarebook.recipe.tidy import tidied

_READ_EVERY = 8  # reading looks for names near those of unknown foods, which takes most of the time
_pages = count()


def page_wrong(data: bytes) -> str:
    """Return what is wrong with the file of ours that a page makes."""
    found, _ = find_recipe(data, "page.html")
    taken = take(found, "page.html")
    brought = bring(taken, "page.html")
    wrong = _lost(taken, brought.text)
    if wrong or next(_pages) % _READ_EVERY:
        return wrong
    recipe, findings = read_recipe(brought.text, file="brought.toml")
    return findings_wrong(findings, brought.text.encode(), found=recipe is not None)


def _lost(taken: Taken, text: str) -> str:
    """Return what of a page is not in the file, or is there otherwise."""
    made = tomllib.loads(text)
    if made.get("title", "") != taken.title or made.get("about", "") != taken.about:
        return "another title, or other words about it"
    method = made.get("method", {})
    if [method.get("steps", []), method.get("notes", [])] != [[*taken.steps], [*taken.notes]]:
        return "other steps, or other notes"
    for line in taken.lines:
        read = read_line(line)
        if not (read.foods and read.amount) and line[:1000] not in text:
            return f"a line that was not read is not kept: {line!r}"
    return ""


def line_wrong(data: bytes) -> str:
    """Return what is wrong with how an ingredient line is read."""
    text = data.decode("utf-8", "replace")
    line = read_line(text)
    if line.text != text or line != read_line(text):
        return "a line that is another when it is read"
    if line.amount is not None and not line.foods:
        return "an amount of nothing"
    told = (*line.foods, line.note)
    if not all(one.isprintable() for one in told) or not all(map(str.strip, line.foods)):
        return f"a food or a note that no line can show: {told!r}"
    if line.amount is not None and parse_amount(str(line.amount)) != line.amount:
        return f"{line.amount} is written as it does not read"
    return ""


def tidy_wrong(data: bytes) -> str:
    """Return what of its promise is broken: the same meaning, every remark, and then no change."""
    after = tidied(data, file="fuzz.toml")
    before_text, after_text = (one.decode("utf-8-sig") for one in (data, after))
    if tidied(after, file="fuzz.toml") != after:
        return "what is tidy is changed again"
    if remarks.remarks(before_text) != remarks.remarks(after_text):
        return "remarks were lost, or made"
    if _meaning(data) != _meaning(after):
        return "another recipe, or another bottle"
    if _words(tomllib.loads(before_text)) != _words(tomllib.loads(after_text)):
        return "words of the cook were changed"
    return ""


def _meaning(data: bytes) -> object:
    recipe, _ = read_recipe(data, file="fuzz.toml")
    if recipe is None:
        return _bare(read_bottle(data, key="fuzz", file="fuzz.toml")[0])
    return _bare(recipe._replace(lines={}))


def _bare(value: Any) -> object:
    """Return a value without how its numbers were spelled: each stands beside as a number."""
    names = getattr(value, "_fields", None)
    if names is None:
        return [_bare(one) for one in value] if isinstance(value, tuple) else value
    kept = (name for name in names if name != "text" and not name.endswith("written"))
    return type(value).__name__, [(name, _bare(getattr(value, name))) for name in kept]


_WORDS = ("title", "about", "note", "steps", "notes", "food", "name")


def _words(document: Any) -> list[object]:
    """Return what a cook said in words, which nothing about a tidy file may change."""
    found: list[object] = []
    for key in sorted(document):
        value = document[key]
        if isinstance(value, dict):
            found += _words(value)
        elif key in _WORDS:
            found.append((key, value))
    return found
