"""The recipe card as Markdown: CommonMark, with tables as most readers know them.

Every text is escaped, so that a recipe makes no link, picture, heading or tag of its own. A word
that looks like an address is set as code: some readers would make a link of it, escaped or not.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Sequence

from tarebook.cards.content import FIGURES_HEAD, Content, Group, content
from tarebook.cards.lines import clean
from tarebook.cards.worksheet import Worksheet
from tarebook.paper.who_says_so import Noted, who_says_so

_SPECIAL = re.compile(r"([\\`*_\[\]{}<>&|~$^#=])")
_BESIDE_LETTER = re.compile(r"(?<=\w)([.:])(?=[^\W\d])|(?<=[^\W\d])([.:])(?=\w)")
_LEADING = re.compile(r"^(\d{1,9})([.)])|^([-+:])")
_ADDRESS = re.compile(r"://|@|(?i:\bwww\.)")
_TICKS = re.compile("`+")

_MEASURES = (("measure", True), ("ingredient", False), ("weighs", True))
_FIGURES = (("figure", False), ("likely", True), ("of a day", True), ("low to high", False))


def markdown_card(sheet: Worksheet) -> str:
    """Return a recipe card as Markdown.

    Args:
        sheet: the recipe at today's size.

    Returns:
        The text of a file; each paragraph is one line.
    """
    blocks = _blocks(content(sheet))
    return "\n\n".join(block for block in blocks if block) + "\n"


def escaped(text: str, *, in_table: bool = False) -> str:
    """Return a text on one line that Markdown shows as it is.

    Args:
        text: anything.
        in_table: whether it stands in a table, where a bar ends its cell even inside code.

    Example:
        >>> print(escaped("1. *salt* <b>, see http://a.b"))
        1\\. \\*salt\\* \\<b\\>, see `http://a.b`
    """
    words = " ".join(_word(one, in_table) for one in clean(text).split())
    return _LEADING.sub(r"\1\\\2\3", words)


def _word(word: str, in_table: bool) -> str:
    if _ADDRESS.search(word):
        return _code(word.replace("|", "\\|") if in_table else word)
    return _BESIDE_LETTER.sub(r"\\\g<0>", _SPECIAL.sub(r"\\\1", word))


def _code(word: str) -> str:
    longest = max((len(run) for run in _TICKS.findall(word)), default=0)
    fence = "`" * (longest + 1)
    space = " " if word.startswith("`") or word.endswith("`") else ""
    return f"{fence}{space}{word}{space}{fence}"


def _blocks(card: Content) -> Iterator[str]:
    noted, notes = who_says_so(card.cautions)
    yield f"# {escaped(card.title)}"
    yield f"**{escaped(card.size)}**"
    yield escaped(card.about)
    for group in card.groups:
        yield from _group(group)
    yield from map(escaped, card.cure)
    yield from _method(card)
    yield f"## {FIGURES_HEAD}"
    yield escaped(f"({card.figures_foot})")
    rows = [(one.name, one.amount, one.share, one.span) for one in card.figures]
    yield _table(_FIGURES, rows)
    yield from map(escaped, (*card.beneath, *card.allergens))
    yield "## Mind"
    yield _list(_caution(one) for one in noted)
    yield "## Who says so"
    yield _numbered(notes)
    yield f"**{escaped(card.foot)}**"


def _group(group: Group) -> Iterator[str]:
    yield f"## {escaped(group.heading)}"
    yield _table(_MEASURES, [(one.measure, one.name, one.weighs) for one in group.items])
    yield from (escaped(f"{one.name}: {one.note}") for one in group.items if one.note)


def _method(card: Content) -> Iterator[str]:
    yield "## Method"
    yield _list(map(escaped, card.conditions))
    yield _numbered(card.steps)
    yield from (f"Note: {escaped(note)}" for note in card.notes)


def _caution(one: Noted) -> str:
    numbers = ", ".join(map(str, one.numbers))
    return f"**{escaped(one.caution.title)}.** {escaped(one.caution.text)} ({numbers})"


def _list(items: Iterable[str]) -> str:
    return "\n".join(f"- {one}" for one in items)


def _numbered(texts: Iterable[str]) -> str:
    return "\n".join(f"{number}. {escaped(text)}" for number, text in enumerate(texts, 1))


def _table(heads: Sequence[tuple[str, bool]], rows: Iterable[Sequence[str]]) -> str:
    """Return a table; columns marked so are flush right."""
    lines = [[name for name, _ in heads], ["---:" if right else "---" for _, right in heads]]
    lines += [[escaped(one, in_table=True) for one in row] for row in rows]
    return "\n".join(f"| {' | '.join(line)} |" for line in lines)
