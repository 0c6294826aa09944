"""What ``batch wordings`` prints: how a recipe was written, batch by batch, and what changed."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Any

from tarebook.cards.batch_words import COLUMNS, counted, day_words, runs
from tarebook.cards.lines import Line, Style, clean, wrap
from tarebook.records.wordings import Wording

_LEAD = 4
_MOST_CHANGES = 40
_MOST_NUMBERS = 20


def wordings_page(found: Sequence[Wording], name: str) -> Iterator[Line]:
    """Yield the wordings of a recipe, the earliest first, 80 columns.

    Args:
        found: those of the book.
        name: that the recipe goes by.
    """
    title = f"{name}, {counted(len(found), 'wording', 'wordings')}"
    yield from (Line(text, Style.TITLE) for text in wrap(title, COLUMNS))
    before: Wording | None = None
    for number, one in enumerate(found, start=1):
        lead = str(number).ljust(_LEAD)
        for text in wrap(_of(one), COLUMNS, first=lead, rest=" " * _LEAD):
            yield Line(text)
        if before is not None:
            yield from _changes(before.text, one.text)
        before = one
    yield Line()
    one_of = f"tarebook batch wordings {name} --whole 1 prints the first whole."
    yield from (Line(text, Style.QUIET) for text in wrap(one_of, COLUMNS))


def wordings_data(found: Sequence[Wording]) -> list[dict[str, Any]]:
    """Return the same as plain data, each recipe whole."""
    return [
        {
            "wording": number,
            "recipe_sha256": one.digest,
            "since": None if one.since is None else str(one.since),
            "batches": list(one.batches),
            "notes": [
                {"batch": note.batch, "entry": note.number, "text": note.note} for note in one.notes
            ],
            "recipe_text": one.text,
        }
        for number, one in enumerate(found, start=1)
    ]


def _of(one: Wording) -> str:
    """Return when a wording was used, and what it was changed for."""
    said = [] if one.since is None else [f"since {day_words(one.since, year=True)}"]
    said.append(_made(one.batches))
    said += [f'with "{note.note}" of {note.batch}.{note.number}' for note in one.notes]
    return "; ".join(said)


def _made(batches: Sequence[int]) -> str:
    """Return which batches were made: each by its number while they can be taken in at a glance."""
    if not batches:
        return "no batch yet"
    if len(batches) > _MOST_NUMBERS:
        return f"{len(batches):,} batches, {batches[0]} to {batches[-1]}"
    return f"batch{'es' if len(batches) > 1 else ''} {runs(batches)}"


def _changes(before: str, after: str) -> Iterator[Line]:
    """Yield the lines that went and those that came."""
    from difflib import unified_diff

    told = unified_diff(before.splitlines(), after.splitlines(), n=0, lineterm="")
    changed = [one for one in list(told)[2:] if one[:1] in "+-" and one[1:].strip()]
    for one in changed[:_MOST_CHANGES]:
        lead = f"{' ' * _LEAD}{one[0]} "
        for text in wrap(clean(one[1:].strip()), COLUMNS, first=lead, rest=" " * len(lead)):
            yield Line(text, Style.QUIET)
    if len(changed) > _MOST_CHANGES:
        rest = counted(len(changed) - _MOST_CHANGES, "line", "lines")
        yield Line(f"{' ' * _LEAD}and {rest} more", Style.QUIET)
