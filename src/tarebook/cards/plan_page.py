"""What ``plan`` prints: the days with their clock times, what was counted, and what to mind."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from tarebook.cards.lines import Line, Style, pad, wrap
from tarebook.cards.plan_content import (
    COUNTED,
    NOT_AS_ASKED,
    TO_KNOW,
    Head,
    PlanContent,
    Row,
    others,
    plan_content,
)
from tarebook.cards.sheet import caution_lines
from tarebook.plan.conflicts import AT_ODDS
from tarebook.plan.make import Plan

COLUMNS = 80
_WHAT = 50
_INDENT = " " * 9


def plan_page(plan: Plan, *, zone_name: str, short: bool = False) -> Iterator[Line]:
    """Yield a plan, 80 columns.

    Args:
        plan: as made.
        zone_name: what to call its clock.
        short: times, steps, conflicts and grave cautions only.
    """
    found = plan_content(plan, zone_name=zone_name, short=short)
    for head in found.heads:
        yield from _head(head)
    yield from (Line(text) for text in wrap(found.when, COLUMNS))
    yield from _listed(AT_ODDS, found.grave, Style.WARN)
    yield from _listed(NOT_AS_ASKED, found.conflicts, Style.WARN)
    yield from _days(found)
    yield from _listed(COUNTED, found.counted)
    yield from _listed(TO_KNOW, found.to_know)
    if found.cautions:
        named = tuple(one.named for one in found.cautions)
        yield from caution_lines(named, COLUMNS, cited=not found.short)
    if found.short:
        yield Line()
        for text in others(found):
            yield from (Line(one, Style.QUIET) for one in wrap(text, COLUMNS))


def _head(head: Head) -> Iterator[Line]:
    lead = f"{head.letter}  " if head.letter else ""
    indent = " " * len(lead)
    for text in wrap(head.title, COLUMNS, first=lead, rest=indent):
        yield Line(text, Style.TITLE)
    yield from (Line(text) for text in wrap(head.size, COLUMNS, first=indent, rest=indent))


def _days(found: PlanContent) -> Iterator[Line]:
    for day in found.days:
        yield Line()
        yield Line(day.name.upper(), Style.HEAD)
        for row in day.rows:
            yield from _row(row)


def _row(row: Row) -> Iterator[Line]:
    what = f"{row.mark}: {row.what}" if row.mark else row.what
    style = Style.PLAIN if row.attended else Style.QUIET
    first, *more = wrap(what, _WHAT)
    gap = "  " if row.attended else " "
    yield Line(f"{row.time}  {pad(first, _WHAT)} {row.length:>8}{gap}{row.until}", style)
    for text in more:
        yield Line(f"       {text}", style)
    for note in row.notes:
        for text in wrap(note, COLUMNS, first=_INDENT, rest=_INDENT):
            yield Line(text, Style.QUIET)


def _listed(heading: str, texts: Iterable[str], style: Style = Style.PLAIN) -> Iterator[Line]:
    listed = tuple(texts)
    if not listed:
        return
    yield Line()
    yield Line(heading, Style.HEAD)
    for text in listed:
        yield from (Line(one, style) for one in wrap(text, COLUMNS, first="- ", rest="  "))
