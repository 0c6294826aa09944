"""Styled lines, wrapping and columns that count what a terminal shows."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from enum import StrEnum
from functools import lru_cache
from unicodedata import category, combining, east_asian_width

from tarebook.tuples import NamedTuple


class Style(StrEnum):
    """What a line is; a terminal may paint it, a pipe leaves it plain."""

    PLAIN = "plain"
    TITLE = "title"
    HEAD = "head"
    WARN = "warn"
    QUIET = "quiet"


class Line(NamedTuple):
    """One line of output."""

    text: str = ""
    style: Style = Style.PLAIN


def plain_text(lines: Iterable[Line]) -> str:
    """Return lines as text with nothing painted, each ending in a line feed.

    Args:
        lines: as the pages of this room yield them.
    """
    return "".join(line.text.rstrip() + "\n" for line in lines)


_HELD = "\0"  # in place of a blank that no line ends at; clean text has none


def clean(text: str) -> str:
    """Return text fit for a terminal: control and direction-changing characters become spaces.

    A recipe is somebody else's text; it may not move the cursor or turn the line around.
    """
    if text.isascii() and text.isprintable():
        return text
    return "".join(map(_fit, text))


def width(text: str) -> int:
    """Return how many columns a terminal gives a text."""
    if text.isascii():
        return len(text)
    return sum(map(_columns, text))


def pad(text: str, columns: int) -> str:
    """Return a text filled with spaces on the right to a width; longer text is left whole."""
    return text + " " * max(columns - width(text), 0)


def wrap(text: str, columns: int, *, first: str = "", rest: str = "") -> Iterator[str]:
    """Yield a text in lines of at most ``columns``, cutting words only where one is too long.

    Args:
        text: one paragraph.
        columns: width of a line, prefix included.
        first, rest: prefix of the first line and of those after it.
    """
    held = _held(text)
    if held.replace("°", "").isascii() and first.isascii() and rest.isascii():
        yield from _wrapped_plainly(held, columns, first, rest)
        return
    prefix, line, used = first, "", 0
    for word in (one.replace(_HELD, " ") for one in held.split(" ")):
        wide, room = width(word), max(columns - width(prefix), 1)
        if line and used + 1 + wide > room:
            yield prefix + line
            prefix, line, used = rest, "", 0
            room = max(columns - width(prefix), 1)
        while not line and wide > room:
            head, word = _cut(word, room)
            yield prefix + head
            prefix, wide = rest, width(word)
            room = max(columns - width(prefix), 1)
        line, used = (f"{line} {word}", used + 1 + wide) if line else (word, wide)
    if line:
        yield prefix + line


def _held(text: str) -> str:
    """Return words with one blank between; a degree sign stays with its number by another mark."""
    return " ".join(clean(text).replace(" °", f"{_HELD}°").split())


def _wrapped_plainly(text: str, columns: int, first: str, rest: str) -> Iterator[str]:
    """Yield the same lines of letters that are all one column wide, cut where a line must end."""
    prefix = first
    while text:
        room = max(columns - len(prefix), 1)
        end = len(text) if len(text) <= room else text.rfind(" ", 0, room + 1)
        cut = end if end > 0 else room
        yield prefix + text[:cut].replace(_HELD, " ")
        text, prefix = text[cut:].lstrip(" "), rest


def row(cells: Sequence[str], widths: Sequence[int], *, right: Iterable[int] = ()) -> str:
    """Return cells in columns, those named in ``right`` flush right, two spaces between."""
    flush = frozenset(right)
    shown = []
    for place, (cell, columns) in enumerate(zip(cells, widths, strict=True)):
        gap = " " * max(columns - width(cell), 0)
        shown.append(gap + cell if place in flush else cell + gap)
    return "  ".join(shown).rstrip()


def table(
    rows: Sequence[Sequence[str]], widths: Sequence[int], *, right: Iterable[int] = ()
) -> Iterator[str]:
    """Yield rows whose cells wrap inside their own columns; nothing is ever cut off."""
    for cells in rows:
        wrapped = [
            list(wrap(cell, columns)) or [""] for cell, columns in zip(cells, widths, strict=True)
        ]
        for place in range(max(len(cell) for cell in wrapped)):
            yield row(
                [cell[place] if place < len(cell) else "" for cell in wrapped],
                widths,
                right=right,
            )


@lru_cache(maxsize=4096)
def _fit(c: str) -> str:
    return " " if category(c) in ("Cc", "Cf", "Cs", "Zl", "Zp") else c


@lru_cache(maxsize=4096)
def _columns(c: str) -> int:
    if combining(c) or category(c) in ("Mn", "Me", "Cf"):
        return 0
    return 2 if east_asian_width(c) in ("W", "F") else 1


def _cut(word: str, room: int) -> tuple[str, str]:
    used = 0
    for place, c in enumerate(word):
        used += _columns(c)
        if used > room and place:
            return word[:place], word[place:]
    return word, ""
