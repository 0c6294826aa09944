"""Finds the Recipe in a JSON-LD file, or in a saved page that holds one.

Nothing is fetched: a page is read as a file. What is hostile or broken is refused in words, with
the place: too large, too deep, two values for one key, marks that no text holds.
"""

from __future__ import annotations

import json
from collections.abc import Iterator
from typing import Any, NoReturn

from tarebook.findings import FileUnreadable

__all__ = ["MOST_BYTES", "Json", "find_recipe"]

MOST_BYTES = 5_000_000
"""A larger file is refused [bytes]."""
_MOST_DEPTH = 30
_MOST_VALUES = 200_000
_MOST_BLOCKS = 200
_KIND = "application/ld+json"

Json = dict[str, Any]


class _Refused(Exception):
    """A block of JSON cannot be taken; its text says why."""


def find_recipe(data: bytes, file: str) -> tuple[Json, int]:
    """Return the first Recipe of a file, and how many others it holds.

    Args:
        data: a JSON-LD file, or an HTML page with blocks of it.
        file: what to call it in messages.

    Raises:
        FileUnreadable: it is too large, is neither, or holds no Recipe.
    """
    if len(data) > MOST_BYTES:
        raise FileUnreadable(f'"{file}" has more than {MOST_BYTES:,} bytes; no recipe needs them')
    text = _text(data, file)
    is_page = text.lstrip()[:1] == "<"
    blocks = list(_blocks(text)) if is_page else [text]
    if not blocks:
        raise FileUnreadable(f'"{file}" is a page without any {_KIND} block')
    found: list[Json] = []
    faults: list[str] = []
    for block in blocks:
        try:
            found += _recipes(_parsed(block))
        except _Refused as fault:
            faults.append(str(fault))
    if found:
        return found[0], len(found) - 1
    if faults:
        raise FileUnreadable(f'"{file}" cannot be read as JSON: {faults[0]}')
    raise FileUnreadable(f'"{file}" holds no Recipe of schema.org')


def _text(data: bytes, file: str) -> str:
    wide = data.startswith((b"\xff\xfe", b"\xfe\xff"))
    try:
        return data.decode("utf-16" if wide else "utf-8-sig")
    except UnicodeDecodeError as fault:
        raise FileUnreadable(f'"{file}" is no text in UTF-8 (byte {fault.start + 1})') from None


def _blocks(page: str) -> Iterator[str]:
    """Yield what stands in the script elements that hold linked data."""
    low, at = page.lower(), 0
    if len(low) != len(page):  # a letter that has no small one of its own length
        low = page
    for _ in range(_MOST_BLOCKS):
        start = low.find("<script", at)
        opened = low.find(">", start) + 1 if start >= 0 else 0
        if not opened:
            return
        closed = low.find("</script", opened)
        closed = len(page) if closed < 0 else closed
        if _KIND in low[start:opened]:
            yield _bare(page[opened:closed])
        at = closed


def _bare(block: str) -> str:
    """Return a block without the marks that once hid scripts from old readers."""
    block = block.strip()
    for start, end in (("<!--", "-->"), ("//<![CDATA[", "//]]>"), ("<![CDATA[", "]]>")):
        if block.startswith(start):
            block = block.removeprefix(start).removesuffix(end).strip()
    return block


def _parsed(text: str) -> Any:
    try:
        return json.loads(text, object_pairs_hook=_without_doubles, parse_constant=_no_number)
    except RecursionError:
        raise _Refused("it is nested too deeply") from None
    except json.JSONDecodeError as fault:
        raise _Refused(f"line {fault.lineno}, column {fault.colno}: {_words(fault.msg)}") from None
    except ValueError:
        raise _Refused("it holds a number too long to be one") from None


_MESSAGES = {
    "Invalid control character at": "a control character stands in a text",
    "Extra data": "more follows behind its end",
    "Expecting value": "a value is missing",
    "Unterminated string starting at": "a text has no end",
}


def _words(message: str) -> str:
    return _MESSAGES.get(message, message[:1].lower() + message[1:])


def _without_doubles(pairs: list[tuple[str, Any]]) -> Json:
    made = dict(pairs)
    if len(made) < len(pairs):
        names = [name for name, _ in pairs]
        twice = next(name for name in made if names.count(name) > 1)
        raise _Refused(f'"{twice[:40]}" is told twice in one place')
    return made


def _no_number(name: str) -> NoReturn:
    raise _Refused(f"{name} is no number")


def _recipes(value: Any) -> list[Json]:
    """Return every Recipe in a value, outermost and first ones first."""
    found: list[Json] = []
    todo: list[tuple[Any, int]] = [(value, 0)]
    for seen in range(_MOST_VALUES + 1):
        if not todo:
            return found
        here, depth = todo.pop()
        if depth > _MOST_DEPTH:
            raise _Refused("it is nested too deeply")
        if seen == _MOST_VALUES:
            break
        if isinstance(here, dict):
            if _is_recipe(here.get("@type")):
                found.append(here)
                continue
            todo += [(one, depth + 1) for one in reversed(here.values())]
        elif isinstance(here, list):
            todo += [(one, depth + 1) for one in reversed(here)]
    raise _Refused(f"it holds more than {_MOST_VALUES:,} values")


def _is_recipe(kind: Any) -> bool:
    kinds = kind if isinstance(kind, list) else [kind]
    return any(isinstance(one, str) and _last(one) == "Recipe" for one in kinds)


def _last(kind: str) -> str:
    return kind.rpartition("/")[2].rpartition(":")[2]
