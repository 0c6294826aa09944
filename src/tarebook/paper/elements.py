"""HTML from a builder that escapes: no text of a recipe can become markup.

Text is ``str`` and is always escaped; markup is a :class:`Markup` and comes only from here. There
is no way to turn one into the other, so nothing has to be remembered where a page is written.
"""

from __future__ import annotations

import json
import re
from collections.abc import Iterable, Mapping
from html import escape

from tarebook.cards.lines import clean
from tarebook.tuples import NamedTuple

_LINKED_DATA = "application/ld+json"

_EMPTY = frozenset({"meta", "line", "circle"})
_IN_A_LINE = frozenset({"span", "a", "b", "bdi", "time", "td", "th", "svg", "line", "circle"})
_UNFIT = "\N{REPLACEMENT CHARACTER}"
_UNIT_APART = r"(?<=\d) (?=°|%|(?:g|mg|µg|kcal|lb|oz|mm|in|h)\b)"
_IN_SCRIPT = str.maketrans({"<": "\\u003c", ">": "\\u003e", "&": "\\u0026"})


class Markup(NamedTuple):
    """A piece of finished HTML."""

    source: str


Inside = str | Markup


def element(name: str, /, *inside: Inside, **attributes: str) -> Markup:
    """Return an element with what it holds.

    Args:
        name: of the element; ours, never a recipe's.
        inside: text, which is escaped, and finished markup, which is not.
        attributes: their values are escaped too. ``class_`` is written ``class``, and
            ``aria_label`` ``aria-label``.

    Returns:
        The element. ``meta``, ``line`` and ``circle`` hold nothing and close themselves.

    Example:
        >>> element("p", "salt & <b>", element("b", "sugar"), title='"').source
        '<p title="&quot;">salt &amp; &lt;b&gt;<b>sugar</b></p>\\n'
    """
    shown = "".join(
        f' {key.rstrip("_").replace("_", "-")}="{escape(fit(value))}"'
        for key, value in attributes.items()
    )
    end = "" if name in _IN_A_LINE else "\n"
    if name in _EMPTY:
        return Markup(f"<{name}{shown}/>{end}")
    return Markup(f"<{name}{shown}>{_source(inside)}</{name}>{end}")


def page(*inside: Markup) -> str:
    """Return a whole HTML document in English that holds these elements."""
    return "<!DOCTYPE html>\n" + element("html", *inside, lang="en").source


def style(css: str) -> Markup:
    """Return a style sheet of our own; a recipe never gets in here.

    Raises:
        ValueError: it would end its own element.
    """
    if "</" in css or "<!--" in css:
        raise ValueError("a style sheet cannot hold markup")
    return Markup(f"<style>{css}</style>\n")


def data_block(data: Mapping[str, object]) -> Markup:
    """Return linked data that readers may collect; no text in it can end or comment it out."""
    written = json.dumps(_fit_all(data), ensure_ascii=False, indent=1).translate(_IN_SCRIPT)
    return Markup(f'<script type="{_LINKED_DATA}">\n{written}\n</script>\n')


def fit(text: str) -> str:
    """Return text without what HTML cannot hold and without marks that turn the line around."""
    text = clean(text)
    if text.isascii():
        return text
    return "".join(_UNFIT if _is_no_character(ord(c)) else c for c in text)


def _source(inside: Iterable[Inside]) -> str:
    return "".join(
        one.source if isinstance(one, Markup) else escape(_set(fit(one)), quote=False)
        for one in inside
    )


def _set(text: str) -> str:
    """Return text whose numbers keep their unit at the end of a line."""
    return re.sub(_UNIT_APART, "\N{NO-BREAK SPACE}", text)


def _fit_all(data: object) -> object:
    if isinstance(data, str):
        return fit(data)
    if isinstance(data, Mapping):
        return {key: _fit_all(value) for key, value in data.items()}
    if isinstance(data, list):
        return [_fit_all(one) for one in data]
    return data


def _is_no_character(point: int) -> bool:
    """Whether Unicode sets a code point aside for never being a character."""
    return point & 0xFFFE == 0xFFFE or 0xFDD0 <= point <= 0xFDEF
