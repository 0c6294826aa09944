"""tarebook batch undo, edit: a mistake is struck or replaced, and stays to be seen."""

from __future__ import annotations

from typing import TYPE_CHECKING, Annotated, Any

import typer

from tarebook.cli import asking
from tarebook.cli.batch_asking import At, BatchNumber, Note
from tarebook.findings import AskedWrongly

if TYPE_CHECKING:
    from tarebook.records.entry import Entry


def undo(
    entry: Annotated[
        str | None,
        typer.Argument(
            metavar="[ENTRY]", help="Which entry, as 7 or 12.7; else the last.", show_default=False
        ),
    ] = None,
    batch: BatchNumber = None,
    note: Note = None,
    as_json: asking.AsJson = False,
) -> None:
    """Strike the last entry, or the one named.

    An undo is an entry too: named by its number, it is taken back itself.

    Example: tarebook batch undo
    """
    from tarebook.cli.batch_asking import batch_in_hand, clock_now, read_entry, tell
    from tarebook.cli.talk import write
    from tarebook.records.find import read_batch
    from tarebook.records.keep import strike
    from tarebook.records.moment import moment_of
    from tarebook.records.store import writing

    at = moment_of(clock_now())
    from_batch, number = (batch, None) if entry is None else read_entry(entry, batch)
    with writing(begun=True) as db:
        if number is not None:
            from_batch = batch_in_hand(db, from_batch, or_latest=True)
        struck, by = strike(db, from_batch, number, at=at, note=note or "")
        title = read_batch(db, by.batch).title
    tell(by, title, as_json=as_json, about=struck)
    if not as_json:
        write(f"tarebook batch undo {by.batch}.{by.number} takes this back\n")


def edit(
    entry: Annotated[
        str, typer.Argument(metavar="ENTRY", help="Which entry: 7, 12.7.", show_default=False)
    ],
    words: Annotated[
        list[str] | None,
        typer.Argument(
            metavar="[WORDS]...",
            help="The weight, the degrees or the text as it should be.",
            show_default=False,
        ),
    ] = None,
    what: Annotated[
        str | None,
        typer.Option("--what", metavar="WHAT", help="What it was: raw, finished ...; in or out."),
    ] = None,
    where: Annotated[
        str | None, typer.Option("--where", metavar="PLACE", help="Of a temperature: meat or air.")
    ] = None,
    at: At = None,
    note: Note = None,
    batch: BatchNumber = None,
    as_json: asking.AsJson = False,
) -> None:
    """Put an entry right.

    A new one stands in its place; the old one stays to be seen.

    Example: tarebook batch edit 2 6 lb 8 oz
    """
    from tarebook.cli.batch_asking import (
        asked_of,
        batch_in_hand,
        clock_now,
        read_at,
        read_entry,
        tell,
    )
    from tarebook.records.find import entries_of, read_batch
    from tarebook.records.keep import replace, standing_entry
    from tarebook.records.moment import moment_of
    from tarebook.records.store import writing

    now = clock_now()
    from_batch, number = read_entry(entry, batch)
    changes: dict[str, Any] = {}
    if at is not None:
        changes["happened"] = read_at(at, now)
    with writing(begun=True) as db:
        from_batch = batch_in_hand(db, from_batch, or_latest=True)
        entries = entries_of(db, from_batch)
        old = standing_entry(from_batch, entries, number)
        changes |= _changes(old, " ".join(words or []).strip(), what, where, note)
        if not changes:
            raise AskedWrongly("say what to change: a weight, a text, --at, --what or --note")
        old, new = replace(db, from_batch, number, changes, at=moment_of(now))
        found = read_batch(db, from_batch)
    asked = asked_of(new, entries, found)
    tell(new, found.title, as_json=as_json, about=old, asked=asked)


def _changes(
    old: Entry, text: str, what: str | None, where: str | None, note: str | None
) -> dict[str, Any]:
    """Return what is to be other than it was."""
    from tarebook.records.entry import MEASURED, Kind

    changes: dict[str, Any] = {}
    if what is not None or where is not None:
        changes["what"] = _what(old, what, where)
    if note is not None:
        changes["note"] = note
    if not text:
        return changes | (_read_again(old, changes) if "what" in changes else {})
    if old.kind is Kind.NOTE:
        if note is not None:
            raise AskedWrongly("a note has one text: say it once")
        return changes | {"note": text}
    if old.kind not in (*MEASURED, Kind.START):
        raise AskedWrongly(f"entry {old.batch}.{old.number} has no value: --at or --note change it")
    return changes | _value(old.kind, text, changes.get("what", old.what))


def _value(kind: Any, text: str, what: str) -> dict[str, Any]:
    from tarebook.cli.batch_enter import read_thing, read_weighed
    from tarebook.cli.talk import asked
    from tarebook.records.entry import Kind
    from tarebook.records.values import read_temperature

    if kind is Kind.TEMP:
        return {"written": text, "value": asked(read_temperature, text, "")}
    first, _, rest = text.partition(" ")
    if kind is Kind.WEIGH and rest and (thing := read_thing(first)) is not None:
        return {"what": thing, "written": rest, "value": read_weighed(rest, thing)}
    return {"written": text, "value": read_weighed(text, what)}


def _what(old: Entry, what: str | None, where: str | None) -> str:
    from tarebook.cli.batch_enter import read_thing, read_where
    from tarebook.records.entry import WHAT, Kind

    if old.kind is Kind.TEMP:
        return read_where(where or what or "")
    known = WHAT.get(old.kind, ())
    if where is not None or len(known) < 2:
        raise AskedWrongly(
            f"entry {old.batch}.{old.number} is no temperature, nor is it of a thing"
        )
    text = (what or "").strip().lower()
    found = read_thing(text) if old.kind is Kind.WEIGH else text
    if found not in known:
        words = ", ".join(one or '""' for one in known)
        raise AskedWrongly(f'--what: "{text[:20]}" is none of {words}')
    return str(found)


def _read_again(old: Entry, changes: dict[str, Any]) -> dict[str, Any]:
    """Return the value read anew for another thing: nothing at all is no weight of most."""
    from tarebook.records.entry import Kind

    return _value(old.kind, old.written, changes["what"]) if old.kind is Kind.WEIGH else {}
