"""Finds in the book: batches, entries, lists; each question has its index."""

from __future__ import annotations

import sqlite3
from collections.abc import Iterable, Iterator, Sequence
from typing import Any

from tarebook.findings import AskedWrongly, FileUnreadable
from tarebook.records.entry import Batch, Entry, Kind, Row
from tarebook.records.moment import Moment
from tarebook.records.values import exact_value

_ENTRIES = """
SELECT e.uid, b.number, e.number, e.kind, e.happened_s, e.happened_offset_min, e.recorded_s,
    e.recorded_offset_min, e.what, e.written, e.value, e.note, e.about, r.digest
FROM entries e JOIN batches b USING (batch_id) LEFT JOIN recipes r ON r.recipe_id = e.recipe_id
"""
_ROWS = """
SELECT b.number, b.recipe, b.title, r.digest, s.started_s, s.started_offset_min, s.finished_s,
    s.finished_offset_min, s.struck, s.raw_g, s.soaked_g, s.leftover_g, s.towels_g, s.finished_g,
    s.packed_g, s.soak_h, s.heat_h, s.dry_h
FROM batches b JOIN standing s USING (batch_id) JOIN recipes r ON r.recipe_id = b.recipe_id
"""
_LARGEST = 2**63 - 1


def read_batch(db: sqlite3.Connection, number: int) -> Batch:
    """Return a batch with all its entries and its recipe.

    Args:
        db: the book, as ``store.reading`` opens it.
        number: of the batch.

    Raises:
        AskedWrongly: there is no such batch.
    """
    entries = entries_of(db, number)
    row = db.execute(
        "SELECT b.number, b.uid, b.recipe, b.title, r.digest, r.text "
        "FROM batches b JOIN recipes r USING (recipe_id) WHERE b.number = ?",
        [number],
    ).fetchone()
    found, uid, recipe, title, wording, recipe_text = row
    return Batch(found, uid, recipe, title, wording, recipe_text, entries)


def entries_of(db: sqlite3.Connection, number: int) -> tuple[Entry, ...]:
    """Return all entries of a batch, in the order of their numbers.

    Raises:
        AskedWrongly: there is no such batch.
    """
    batch_id, _ = batch_of(db, number)
    rows = db.execute(f"{_ENTRIES} WHERE e.batch_id = ? ORDER BY e.number", [batch_id])
    return tuple(_entry(row) for row in rows)


def batch_of(db: sqlite3.Connection, number: int) -> tuple[int, int]:
    """Return the id of a batch within the book, and its number.

    Raises:
        AskedWrongly: there is no such batch.
    """
    known = 0 < number <= _LARGEST
    row = (
        known
        and db.execute("SELECT batch_id, number FROM batches WHERE number = ?", [number]).fetchone()
    )
    if not row:
        (last,) = db.execute("SELECT max(number) FROM batches").fetchone()
        tail = f"the last is {last}" if last else "none is in the book yet"
        raise AskedWrongly(f"there is no batch {number}; {tail}")
    return int(row[0]), int(row[1])


def in_hand(db: sqlite3.Connection) -> tuple[int, ...]:
    """Return the batches that are neither finished nor struck, the latest first."""
    rows = db.execute(
        "SELECT number FROM batches WHERE batch_id IN (SELECT batch_id FROM standing "
        "WHERE finished_s IS NULL AND struck = 0) ORDER BY number DESC"
    )
    return tuple(int(number) for (number,) in rows)


def latest(db: sqlite3.Connection) -> int | None:
    """Return the latest batch that was not struck, or None."""
    row = db.execute(
        "SELECT number FROM batches b WHERE EXISTS (SELECT 1 FROM standing s "
        "WHERE s.batch_id = b.batch_id AND s.struck = 0) ORDER BY number DESC LIMIT 1"
    ).fetchone()
    return None if row is None else int(row[0])


def last_batch_touched(db: sqlite3.Connection) -> int:
    """Return the batch that was written in last; what came from another book does not count.

    Raises:
        AskedWrongly: nothing has been written.
    """
    row = db.execute(
        "SELECT b.number FROM entries e JOIN batches b USING (batch_id) "
        "WHERE e.brought = 0 ORDER BY e.entry_id DESC LIMIT 1"
    ).fetchone()
    if row is None:
        raise AskedWrongly("nothing has been written in this book yet")
    return int(row[0])


def rows(
    db: sqlite3.Connection, *, recipe: str | None = None, most: int | None = None
) -> tuple[Row, ...]:
    """Return what batches came to, the newest first.

    Args:
        db: the book.
        recipe: only those of the recipe that goes by this name.
        most: how many at most.
    """
    return tuple(each_row(db, recipe=recipe, most=most))


def each_row(
    db: sqlite3.Connection, *, recipe: str | None = None, most: int | None = None
) -> Iterator[Row]:
    """Yield the same one by one; the book must stay open until the last."""
    where, values = ("WHERE b.recipe = ?", [recipe]) if recipe is not None else ("", [])
    limit = -1 if most is None else most
    asked = f"{_ROWS} {where} ORDER BY b.number DESC LIMIT ?"
    return map(_row, db.execute(asked, [*values, limit]))


def how_many(db: sqlite3.Connection, *, recipe: str | None = None) -> int:
    """Return how many batches there are, of all recipes or of one."""
    if recipe is None:
        found = db.execute("SELECT count(*) FROM batches").fetchone()
    else:
        found = db.execute("SELECT count(*) FROM batches WHERE recipe = ?", [recipe]).fetchone()
    return int(found[0])


def recipes_known(db: sqlite3.Connection) -> tuple[str, ...]:
    """Return the names of all recipes that batches were made by, in alphabetical order."""
    return tuple(name for (name,) in db.execute("SELECT DISTINCT recipe FROM batches ORDER BY 1"))


def open_notes(db: sqlite3.Connection, recipe: str | None = None) -> tuple[tuple[Entry, str], ...]:
    """Return notes for next time that are neither taken up nor dropped, with their recipe's name.

    Args:
        db: the book.
        recipe: only those of the recipe that goes by this name.
    """
    where, values = ("WHERE n.recipe = ?", [recipe]) if recipe is not None else ("", [])
    ids = db.execute(f"SELECT n.entry_id, n.recipe FROM open_notes n {where}", values).fetchall()
    found = [
        (_entry(db.execute(f"{_ENTRIES} WHERE e.entry_id = ?", [one]).fetchone()), name)
        for one, name in ids
    ]
    return tuple(sorted(found, key=lambda pair: (pair[1], pair[0].batch, pair[0].number)))


def wordings(db: sqlite3.Connection, digests: Iterable[str]) -> dict[str, str]:
    """Return the recipes that go by these digests, whole."""
    found = {}
    for digest in digests:
        row = db.execute("SELECT text FROM recipes WHERE digest = ?", [digest]).fetchone()
        if row is not None:
            found[digest] = str(row[0])
    return found


def _entry(row: Sequence[Any]) -> Entry:
    (uid, batch, number, kind, happened_s, happened_min, recorded_s, recorded_min,
     what, written, value, note, about, wording) = row  # fmt: skip
    try:
        return Entry(
            uid=uid,
            batch=batch,
            number=number,
            kind=Kind(kind),
            happened=Moment(happened_s, happened_min),
            recorded=Moment(recorded_s, recorded_min),
            what=what,
            written=written,
            value=None if value is None else exact_value(value),
            note=note,
            about=about,
            wording=wording,
        )
    except ValueError as fault:
        raise FileUnreadable(
            f"entry {batch}.{number} of the batch book cannot be understood: {fault}"
        ) from None


def _row(row: Sequence[Any]) -> Row:
    number, recipe, title, wording, *times, struck = row[:9]
    started, finished = (
        None if second is None else Moment(second, offset)
        for second, offset in (times[:2], times[2:])
    )
    return Row(number, recipe, title, wording, started, finished, bool(struck), *row[9:])
