"""Takes what another book exported into this one: all of it or nothing, and nothing twice."""

from __future__ import annotations

import sqlite3
from contextlib import suppress

from tarebook.findings import Finding, RecordFaulty
from tarebook.records.as_csv import from_csv
from tarebook.records.as_toml import from_toml
from tarebook.records.carry import Bundle, Carried, add_fault
from tarebook.records.entry import Batch, Entry
from tarebook.records.find import read_batch
from tarebook.records.keep import insert_batch, insert_entry, keep_wording, restate
from tarebook.toml.fault import Faults, TooManyErrors
from tarebook.toml.locate import Lines
from tarebook.tuples import NamedTuple


class Brought(NamedTuple):
    """What came of bringing a file in.

    Attributes:
        batches: how many it holds.
        new_batches: how many of them the book did not have.
        entries, new_entries: the same of entries.
        renumbered: batches whose number was taken: the number they had, and the one they got.
    """

    batches: int = 0
    new_batches: int = 0
    entries: int = 0
    new_entries: int = 0
    renumbered: tuple[tuple[int, int], ...] = ()


class Carrier(NamedTuple):
    """A file that was read: what it carries, and how to say that something of it does not fit."""

    bundle: Bundle
    file: str
    lines: Lines | None


def read_file(data: bytes, *, file: str) -> Carrier:
    """Return what an exported file carries.

    Args:
        data: its bytes.
        file: its name, for the findings; ``.csv`` and ``.toml`` tell its form.

    Raises:
        RecordFaulty: it has errors; carries all of them, with their lines.
    """
    faults, lines = Faults(), None
    bundle = Bundle((), {})
    with suppress(TooManyErrors):
        text = _text(data, faults)
        if text is not None and _is_csv(text, file):
            bundle = from_csv(text, faults)
        elif text is not None:
            lines = Lines(text)
            bundle = from_toml(text, faults)
    if any(one.code == "syntax" for one in faults.found):
        lines = None  # keys have lines only in what is TOML
    _refuse(faults, file, lines)
    return Carrier(bundle, file, lines)


def bring(db: sqlite3.Connection, carrier: Carrier) -> Brought:
    """Bring what a file carries into the book, within the transaction that is open.

    What the book has already is passed over. A batch whose number is taken gets the next free one.

    Args:
        db: the book.
        carrier: the file, as read.

    Raises:
        RecordFaulty: the book has one of its entries otherwise.
    """
    faults, done = Faults(), Brought()
    bundle = carrier.bundle
    highest = max((batch.number for batch in bundle.batches), default=0)
    for batch in bundle.batches:
        done = _bring_batch(db, batch, bundle, highest, done, faults)
    _refuse(faults, carrier.file, carrier.lines)
    return done


def _bring_batch(
    db: sqlite3.Connection,
    batch: Carried,
    bundle: Bundle,
    highest: int,
    done: Brought,
    faults: Faults,
) -> Brought:
    row = db.execute("SELECT batch_id, number FROM batches WHERE uid = ?", [batch.uid]).fetchone()
    renumbered = done.renumbered
    if row is None:
        number = _free_number(db, batch.number, highest)
        batch_id = insert_batch(
            db,
            number=number,
            uid=batch.uid,
            recipe=batch.recipe,
            title=batch.title,
            recipe_id=keep_wording(db, bundle.wordings[batch.wording]),
        )
        known: tuple[Entry, ...] = ()
        if number != batch.number:
            renumbered = (*renumbered, (batch.number, number))
    else:
        batch_id, number = row
        here = read_batch(db, number)
        _compare_batch(batch, here, faults)
        known = here.entries
    new = _bring_entries(db, batch_id, batch, known, bundle, faults)
    if new:
        restate(db, batch_id)
    return Brought(
        batches=done.batches + 1,
        new_batches=done.new_batches + (row is None),
        entries=done.entries + len(batch.entries),
        new_entries=done.new_entries + new,
        renumbered=renumbered,
    )


def _bring_entries(
    db: sqlite3.Connection,
    batch_id: int,
    batch: Carried,
    known: tuple[Entry, ...],
    bundle: Bundle,
    faults: Faults,
) -> int:
    """Insert the entries that the book lacks; return how many."""
    here = {one.uid: one for one in known}
    uids = {one.number: one.uid for one in known}
    numbers: dict[int, int] = {}  # in the file, and in the book
    new = 0
    for entry, raw in zip(batch.entries, batch.places[1:], strict=True):
        about = None if entry.about is None else numbers[entry.about]
        old = here.get(entry.uid)
        if old is not None:
            numbers[entry.number] = old.number
            if old._replace(batch=0, number=0) != entry._replace(batch=0, number=0, about=about):
                add_fault(
                    faults,
                    raw,
                    "",
                    f"entry {entry.uid} stands in the book otherwise, as {old.batch}.{old.number}",
                    hint="entries are never changed; tarebook batch edit puts one right",
                )
            continue
        number = entry.number
        if number in uids or (about is not None and number <= about):
            number = max(uids) + 1
        numbers[entry.number], uids[number] = number, entry.uid
        if entry.wording is not None:
            keep_wording(db, bundle.wordings[entry.wording])
        try:
            insert_entry(db, batch_id, entry._replace(number=number, about=about), brought=True)
        except sqlite3.IntegrityError:
            add_fault(faults, raw, "uid", f"uid {entry.uid} is that of another batch's entry")
        new += 1
    return new


def _compare_batch(batch: Carried, here: Batch, faults: Faults) -> None:
    for key in ("recipe", "title", "wording"):
        if getattr(batch, key) != getattr(here, key):
            add_fault(
                faults, batch.places[0], key, f"batch {here.number} of the book has another {key}"
            )


def _free_number(db: sqlite3.Connection, wanted: int, highest: int) -> int:
    """Return the number a batch had, or the next that neither the book nor the file has."""
    taken = db.execute("SELECT 1 FROM batches WHERE number = ?", [wanted]).fetchone()
    if taken is None:
        return wanted
    (last,) = db.execute("SELECT max(number) FROM batches").fetchone()
    return max(int(last), highest) + 1


def _text(data: bytes, faults: Faults) -> str | None:
    if data.startswith(b"SQLite format 3"):
        faults.error(
            "book", "that is a backup, and no export", hint="tarebook batch restore takes it"
        )
        return None
    try:
        return data.decode("utf-8-sig")
    except UnicodeDecodeError as fault:
        line = data.count(b"\n", 0, fault.start) + 1
        faults.error("encoding", "that is not UTF-8 text", hint="save it as UTF-8", line=line)
        return None


def _is_csv(text: str, file: str) -> bool:
    name = file.lower()
    if name.endswith((".csv", ".toml")):
        return name.endswith(".csv")
    head = text.lstrip().partition("\n")[0]
    return "batch_uid" in head


def _refuse(faults: Faults, file: str, lines: Lines | None) -> None:
    if faults.errors:
        found: tuple[Finding, ...] = faults.findings(file, lines)
        raise RecordFaulty(found)
