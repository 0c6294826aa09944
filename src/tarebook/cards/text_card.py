"""The recipe card as text, 60 columns: to print, to tape inside a cupboard door."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from tarebook.cards.content import FIGURES_HEAD, Content, Group, content
from tarebook.cards.lines import Line, Style, table, wrap
from tarebook.cards.sheet import caution_lines
from tarebook.cards.worksheet import Worksheet

COLUMNS = 60


def text_card(sheet: Worksheet) -> Iterator[Line]:
    """Yield the card: what to measure, the steps, the figures, and what to mind.

    Args:
        sheet: the recipe at today's size, as ``worksheet`` makes it.
    """
    card = content(sheet)
    for text in wrap(card.title.upper(), COLUMNS):
        yield Line(text, Style.TITLE)
    yield Line("=" * COLUMNS)
    yield from _say((card.size, card.about))
    for group in card.groups:
        yield from _group(group)
    if card.cure:
        yield Line()
        yield from _say(card.cure)
    yield from _method(card)
    yield from _figures(card)
    yield Line()
    for text in card.allergens:
        yield from (Line(one) for one in wrap(text, COLUMNS, rest="  "))
    yield from caution_lines(card.cautions, COLUMNS)
    yield Line()
    yield Line(card.foot, Style.HEAD)


def _group(group: Group) -> Iterator[Line]:
    yield Line()
    yield Line(group.heading, Style.HEAD)
    rows = [(one.name, one.measure, one.weighs) for one in group.items]
    yield from (Line(text) for text in table(rows, (20, 26, 10), right=(2,)))
    yield from _say(f"{one.name}: {one.note}" for one in group.items if one.note)


def _method(card: Content) -> Iterator[Line]:
    yield Line()
    yield Line("Method", Style.HEAD)
    yield from _say(card.conditions)
    for number, step in enumerate(card.steps, 1):
        lead = f"{number}. "
        yield from (Line(text) for text in wrap(step, COLUMNS, first=lead, rest=" " * len(lead)))
    for note in card.notes:
        yield from (Line(text) for text in wrap(note, COLUMNS, first="Note: ", rest="  "))


def _figures(card: Content) -> Iterator[Line]:
    yield Line()
    yield Line(FIGURES_HEAD, Style.HEAD)
    yield from _say([f"({card.figures_foot})"])
    rows = [(one.name, one.amount, one.share, one.span) for one in card.figures]
    yield from (Line(text) for text in table(rows, (14, 17, 8, 15), right=(1, 2)))
    yield from _say(card.beneath)


def _say(texts: Iterable[str]) -> Iterator[Line]:
    return (Line(one) for text in texts for one in wrap(text, COLUMNS))
