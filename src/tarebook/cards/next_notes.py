"""Notes for next time as they stand under a recipe that comes up again.

Little is loaded for them: whoever scales a recipe waits for no page of a batch.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from tarebook.cards.lines import Line, Style, wrap
from tarebook.records.next_time import NextTime

COLUMNS = 80


def next_lines(notes: Sequence[NextTime], *, title: str = "") -> Iterator[Line]:
    """Yield the notes for next time of a recipe, and how they come off again, 80 columns.

    Args:
        notes: one or more.
        title: of the recipe, where others stand beside it.
    """
    yield from _wrapped(f"For next time, {title}" if title else "For next time", Style.HEAD)
    for one in notes:
        yield from open_note(one.batch, one.entry, one.text, one.day)
    yield from settle_lines(notes[0].batch, notes[0].entry)


def open_note(batch: int, entry: int, text: str, day: str) -> Iterator[Line]:
    """Yield a note with its number and its day."""
    lead = f"{batch}.{entry}".ljust(8)
    return (Line(t) for t in wrap(f"{text} ({day})", COLUMNS, first=lead, rest=" " * 8))


def settle_lines(batch: int, entry: int) -> Iterator[Line]:
    """Yield how a note comes off the list again."""
    name = f"{batch}.{entry}"
    return _wrapped(
        f"In the recipe by now: tarebook batch take {name}. Not wanted any more: "
        f"tarebook batch drop {name}.",
        Style.QUIET,
    )


def _wrapped(text: str, style: Style) -> Iterator[Line]:
    return (Line(one, style) for one in wrap(text, COLUMNS))
