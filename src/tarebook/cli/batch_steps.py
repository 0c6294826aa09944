"""tarebook batch turn, soak, heat, dry, finish: what is told by its name alone."""

from __future__ import annotations

from typing import Annotated

import typer

from tarebook.cli import asking
from tarebook.cli.batch_asking import At, BatchNumber, Note
from tarebook.cli.batch_enter import enter
from tarebook.findings import AskedWrongly

_WAYS = {"in": "in", "into": "in", "start": "in", "on": "in",
         "out": "out", "end": "out", "stop": "out", "off": "out", "done": "out"}  # fmt: skip
InOrOut = Annotated[str, typer.Argument(metavar="[in|out]", help="Into it, or out of it.")]


def turn(
    batch: BatchNumber = None, at: At = None, note: Note = None, as_json: asking.AsJson = False
) -> None:
    """Write down that the meat was turned.

    Example: tarebook batch turn --at "20 min ago"
    """
    from tarebook.records.entry import Kind

    enter(batch, at, note, as_json, kind=Kind.TURN)


def soak(
    way: InOrOut = "in",
    batch: BatchNumber = None,
    at: At = None,
    note: Note = None,
    as_json: asking.AsJson = False,
) -> None:
    """Write down that the meat went into its marinade, or out.

    Example: tarebook batch soak out
    """
    from tarebook.records.entry import Kind

    enter(batch, at, note, as_json, kind=Kind.SOAK, what=_way(way))


def heat(
    way: InOrOut = "in",
    batch: BatchNumber = None,
    at: At = None,
    note: Note = None,
    as_json: asking.AsJson = False,
) -> None:
    """Write down that the heat step began, or ended.

    Example: tarebook batch heat in
    """
    from tarebook.records.entry import Kind

    enter(batch, at, note, as_json, kind=Kind.HEAT, what=_way(way))


def dry(
    way: InOrOut = "in",
    batch: BatchNumber = None,
    at: At = None,
    note: Note = None,
    as_json: asking.AsJson = False,
) -> None:
    """Write down that the trays went into the dryer, or out.

    Example: tarebook batch dry in --note "five trays"
    """
    from tarebook.records.entry import Kind

    enter(batch, at, note, as_json, kind=Kind.DRY, what=_way(way))


def finish(
    batch: BatchNumber = None, at: At = None, note: Note = None, as_json: asking.AsJson = False
) -> None:
    """Write down that the batch is done.

    Example: tarebook batch finish
    """
    from tarebook.records.entry import Kind

    enter(batch, at, note, as_json, kind=Kind.FINISH)


def _way(text: str) -> str:
    found = _WAYS.get(text.strip().lower())
    if found is None:
        raise AskedWrongly(f'"{text[:20]}": say in or out')
    return found
