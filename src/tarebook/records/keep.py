"""Writes in the book: each of these within one transaction, and what it returns is kept by its end.

All take a connection from ``store.writing``; whoever shows what was written shows it after that
block is left.
"""

from __future__ import annotations

import os
import sqlite3
from hashlib import sha256

from tarebook.findings import AskedWrongly, FileUnreadable
from tarebook.records.entry import (
    LONGEST_TEXT,
    NEXT_TIME,
    OF_A_NOTE,
    THINGS,
    Draft,
    Entry,
    Kind,
)
from tarebook.records.find import batch_of, entries_of, last_batch_touched
from tarebook.records.moment import Moment
from tarebook.records.standing import Standing, ended_by, standing_of
from tarebook.records.values import exact_text

MOST_ENTRIES = 10_000
"""How many entries a batch may have: more come from a program that went wrong."""


def start_batch(
    db: sqlite3.Connection, *, recipe: str, title: str, recipe_text: str, draft: Draft
) -> Entry:
    """Begin a batch with the next free number, and keep its recipe whole as it is today.

    Args:
        db: the book.
        recipe: the name that the recipe goes by.
        title: the recipe's title.
        recipe_text: all of its file.
        draft: the first entry, of kind ``START``.

    Returns:
        The entry as it stands in the book, with the number of its batch.
    """
    (last,) = db.execute("SELECT coalesce(max(number), 0) FROM batches").fetchone()
    batch_id = insert_batch(
        db,
        number=last + 1,
        uid=new_uid(),
        recipe=recipe,
        title=title,
        recipe_id=keep_wording(db, recipe_text),
    )
    return _add(db, batch_id, last + 1, draft)


def add_entry(db: sqlite3.Connection, batch: int, draft: Draft) -> Entry:
    """Add an entry to a batch.

    Args:
        db: the book.
        batch: number of the batch.
        draft: what to enter.

    Returns:
        The entry as it stands in the book, with its number.

    Raises:
        AskedWrongly: there is no such batch, or it was struck as a whole.
    """
    batch_id, number = batch_of(db, batch)
    entries = entries_of(db, number)
    standing = standing_of(entries)
    if draft.kind is not Kind.STRIKE:
        _refuse_if_struck(number, entries)
    if draft.kind is Kind.FINISH and standing.finish is not None and draft.about is None:
        raise AskedWrongly(
            f"batch {number} is finished already; tarebook batch edit "
            f"{number}.{standing.finish.number} --at TIME says otherwise when"
        )
    if draft.kind is Kind.WEIGH and draft.what == THINGS[0] and draft.about is None:
        _refuse_raw_after_soak(number, draft, standing)
    return _add(db, batch_id, number, draft)


def strike(
    db: sqlite3.Connection,
    batch: int | None = None,
    entry: int | None = None,
    *,
    at: Moment,
    note: str = "",
) -> tuple[Entry, Entry]:
    """Strike an entry: the last one that stands, unless another is named.

    Striking what struck or replaced another makes that other stand again.

    Args:
        db: the book.
        batch: number of the batch; the one written in last if none is said.
        entry: number of the entry; the last that stands and strikes nothing, if none is said.
        at: now.
        note: why.

    Returns:
        The entry that is struck, and the one that strikes it.

    Raises:
        AskedWrongly: there is no such entry, or it does not stand any more.
    """
    number = last_batch_touched(db) if batch is None else batch
    entries = entries_of(db, number)
    if entry is None:
        struck = _last_standing(number, entries)
    else:
        struck = standing_entry(number, entries, entry)
    draft = Draft(kind=Kind.STRIKE, happened=at, recorded=at, note=note, about=struck.number)
    return struck, add_entry(db, number, draft)


def replace(
    db: sqlite3.Connection, batch: int, entry: int, changes: dict[str, object], *, at: Moment
) -> tuple[Entry, Entry]:
    """Put an entry in the place of another, which stays to be seen.

    Args:
        db: the book.
        batch, entry: numbers of the entry to replace.
        changes: fields of :class:`Draft` that are to be other than they were.
        at: now.

    Returns:
        The entry that is replaced, and the one in its place.

    Raises:
        AskedWrongly: there is no such entry, it does not stand, or nothing would change.
    """
    old = standing_entry(batch, entries_of(db, batch), entry)
    if old.kind in (Kind.STRIKE, *OF_A_NOTE):
        raise AskedWrongly(
            f"entry {batch}.{entry} holds nothing to change; tarebook batch undo {batch}.{entry} "
            "takes it back"
        )
    fields = {name: getattr(old, name) for name in Draft._fields}
    draft = Draft(**{**fields, **changes, "recorded": at, "about": old.number})  # type: ignore[arg-type]
    if draft._replace(recorded=old.recorded, about=old.about) == Draft(**fields):
        raise AskedWrongly(f"entry {batch}.{entry} says just that already")
    return old, add_entry(db, batch, draft)


def settle_note(
    db: sqlite3.Connection,
    batch: int,
    entry: int,
    kind: Kind,
    *,
    at: Moment,
    note: str = "",
    recipe_text: str | None = None,
) -> tuple[Entry, Entry]:
    """Take up a note for next time, or drop it: it stands, but is not shown again.

    Args:
        db: the book.
        batch, entry: numbers of the note.
        kind: ``TAKEN`` or ``DROPPED``.
        at: now.
        note: a remark.
        recipe_text: of a note taken up, the recipe as it is now, to be kept beside what it was.

    Returns:
        The note, and the entry that settles it.

    Raises:
        AskedWrongly: that entry is no open note for next time.
    """
    entries = entries_of(db, batch)
    found = standing_entry(batch, entries, entry)
    if found.kind is not Kind.NOTE or found.what != NEXT_TIME:
        raise AskedWrongly(f"entry {batch}.{entry} is no note for next time")
    if found not in standing_of(entries).open_notes:
        raise AskedWrongly(f"the note {batch}.{entry} is settled already")
    wording = None if recipe_text is None else digest_of(recipe_text)
    if recipe_text is not None:
        keep_wording(db, recipe_text)
    draft = Draft(
        kind=kind, happened=at, recorded=at, note=note, about=found.number, wording=wording
    )
    return found, add_entry(db, batch, draft)


def standing_entry(batch: int, entries: tuple[Entry, ...], number: int) -> Entry:
    """Return an entry by its number, if it stands.

    Raises:
        AskedWrongly: there is none, or it was struck or replaced.
    """
    found = next((one for one in entries if one.number == number), None)
    if found is None:
        raise AskedWrongly(f"batch {batch} has no entry {number}; its last is {entries[-1].number}")
    over = ended_by(entries).get(number)
    if over is not None:
        did = "struck" if over.kind is Kind.STRIKE else "replaced"
        raise AskedWrongly(f"entry {batch}.{number} was {did} by {batch}.{over.number} already")
    return found


def digest_of(recipe_text: str) -> str:
    """Return the digest that names a wording of a recipe."""
    return sha256(recipe_text.encode("utf-8")).hexdigest()


def new_uid() -> str:
    """Return a name that no other entry of any book has."""
    return os.urandom(8).hex()


def keep_wording(db: sqlite3.Connection, recipe_text: str) -> int:
    """Keep a recipe as it is written; the same wording is kept once."""
    digest = digest_of(recipe_text)
    db.execute(
        "INSERT INTO recipes (digest, text) VALUES (?, ?) ON CONFLICT DO NOTHING",
        [digest, recipe_text],
    )
    (found,) = db.execute("SELECT recipe_id FROM recipes WHERE digest = ?", [digest]).fetchone()
    return int(found)


def insert_batch(
    db: sqlite3.Connection, *, number: int, uid: str, recipe: str, title: str, recipe_id: int
) -> int:
    """Insert a batch without entries."""
    row = [number, uid, _text(recipe), _text(title), recipe_id]
    db.execute(
        "INSERT INTO batches (number, uid, recipe, title, recipe_id) VALUES (?, ?, ?, ?, ?)", row
    )
    (batch_id,) = db.execute("SELECT batch_id FROM batches WHERE number = ?", [number]).fetchone()
    return int(batch_id)


def insert_entry(
    db: sqlite3.Connection, batch_id: int, entry: Entry, *, brought: bool = False
) -> None:
    """Insert an entry as it is; ``brought`` is one that was written in another book."""
    db.execute(
        "INSERT INTO entries (uid, batch_id, number, kind, what, written, value, happened_s, "
        "happened_offset_min, recorded_s, recorded_offset_min, note, about, recipe_id, brought) "
        "VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, "
        "(SELECT recipe_id FROM recipes WHERE digest = ?), ?)",
        [
            entry.uid, batch_id, entry.number, entry.kind.value, entry.what, _text(entry.written),
            None if entry.value is None else exact_text(entry.value),
            *entry.happened, *entry.recorded, _text(entry.note), entry.about, entry.wording,
            int(brought),
        ],
    )  # fmt: skip


def restate(db: sqlite3.Connection, batch_id: int) -> None:
    """Reckon anew what the entries of a batch come to."""
    number, recipe = db.execute(
        "SELECT number, recipe FROM batches WHERE batch_id = ?", [batch_id]
    ).fetchone()
    entries = entries_of(db, number)
    row = standing_row(entries)
    marks = ", ".join("?" * (len(row) + 1))
    db.execute(f"INSERT OR REPLACE INTO standing VALUES ({marks})", [batch_id, *row])
    db.execute("DELETE FROM open_notes WHERE batch_id = ?", [batch_id])
    for note in standing_of(entries).open_notes:
        db.execute(
            "INSERT INTO open_notes SELECT entry_id, batch_id, ? FROM entries "
            "WHERE batch_id = ? AND number = ?",
            [recipe, batch_id, note.number],
        )


def restate_all(db: sqlite3.Connection) -> None:
    """Reckon anew what the entries of every batch come to."""
    for (batch_id,) in db.execute("SELECT batch_id FROM batches").fetchall():
        restate(db, batch_id)


def standing_row(entries: tuple[Entry, ...]) -> list[object]:
    """Return the row of ``standing`` that the entries of a batch come to."""
    found = standing_of(entries)
    weights = (found.weight_g(thing) for thing in THINGS)
    return [
        *(found.start.happened if found.start else (None, None)),
        *(found.finish.happened if found.finish else (None, None)),
        int(found.start is None),
        *(None if one is None else float(one) for one in weights),
        found.soak.hours,
        found.heat.hours,
        found.dry.hours,
    ]


def _add(db: sqlite3.Connection, batch_id: int, batch: int, draft: Draft) -> Entry:
    (last,) = db.execute(
        "SELECT coalesce(max(number), 0) FROM entries WHERE batch_id = ?", [batch_id]
    ).fetchone()
    if last >= MOST_ENTRIES:
        raise AskedWrongly(f"batch {batch} has {last:,} entries: that is no batch any more")
    entry = Entry(uid=new_uid(), batch=batch, number=last + 1, **draft._asdict())
    insert_entry(db, batch_id, entry)
    restate(db, batch_id)
    return entry


def _last_standing(batch: int, entries: tuple[Entry, ...]) -> Entry:
    """Return the last entry to take back; strikes are passed over, so that undo goes on back."""
    _refuse_if_struck(batch, entries)
    ended = ended_by(entries)
    for one in reversed(entries):
        if one.number not in ended and one.kind is not Kind.STRIKE:
            return one
    raise AskedWrongly(f"batch {batch} has nothing left to take back")


def _refuse_raw_after_soak(number: int, draft: Draft, standing: Standing) -> None:
    """Refuse a second raw weight of meat that is no longer raw: it is of what came out."""
    told = standing.weights.get(THINGS[0], standing.start)
    soaked = standing.weights.get("soaked")
    outs = [standing.soak.end, None if soaked is None else soaked.happened]
    out = min((one for one in outs if one is not None), default=None)
    if told is None or told.value is None or out is None or draft.happened < out:
        return
    raise AskedWrongly(
        f"batch {number} is out of its soak, and its raw meat was {told.written}. What came out is "
        f"told by  tarebook batch weigh soaked {draft.written}; if the raw weight was wrong: "
        f'tarebook batch edit {number}.{told.number} "{draft.written}"'
    )


def _refuse_if_struck(batch: int, entries: tuple[Entry, ...]) -> None:
    """Refuse a batch that was struck as a whole, and tell how to bring it back."""
    if standing_of(entries).start is not None:
        return
    ended = ended_by(entries)
    begun = [one for one in entries if one.kind is Kind.START]
    if not begun:
        raise FileUnreadable(f"batch {batch} has no start: the book is damaged")
    by = ended[begun[-1].number]
    raise AskedWrongly(
        f"batch {batch} was struck as a whole; tarebook batch undo {batch}.{by.number} brings it "
        "back"
    )


def _text(text: str) -> str:
    """Return a text that can be kept.

    Raises:
        AskedWrongly: it is no text, or longer than a remark is.
    """
    if len(text) > LONGEST_TEXT:
        raise AskedWrongly(f"that is {len(text):,} letters; at most {LONGEST_TEXT:,} are kept")
    try:
        text.encode("utf-8")
    except UnicodeEncodeError:
        raise AskedWrongly("that holds bytes that are no letters of any kind (UTF-8)") from None
    return text
