"""Backups of the book, bringing one back, and looking the book through."""

from __future__ import annotations

import sqlite3
from contextlib import closing
from pathlib import Path

from tarebook.files import holds, named
from tarebook.findings import AskedWrongly, FileUnreadable, FileUnwritable
from tarebook.records.copies import (
    copy_before,
    copy_book,
    free_name,
    integrity_faults,
    make_folder,
)
from tarebook.records.find import entries_of, how_many
from tarebook.records.keep import digest_of, restate_all, standing_row
from tarebook.records.place import book_file, is_there
from tarebook.records.schema import VERSION, bring_up_to, version_of
from tarebook.records.standing import standing_of
from tarebook.records.store import checked_book, is_database, opened, reading, told, writing
from tarebook.tuples import NamedTuple

_COPIED = ("recipes", "batches", "entries")
_COUNTED = ("batches", "entries", "recipes")
_MOST_FAULTS = 20


class Checked(NamedTuple):
    """What looking a book through found.

    Attributes:
        batches, entries, wordings: how many there are.
        faults: what is wrong; nothing where all is well.
        mendable: whether all of it is in what can be reckoned anew.
    """

    batches: int
    entries: int
    wordings: int
    faults: tuple[str, ...] = ()
    mendable: bool = False


class Restored(NamedTuple):
    """What bringing back a backup did.

    Attributes:
        batches: how many the book has now.
        before: how many it had; None where there was none, or it could not be read.
        kept: where the book as it was lies now, or None where there was none.
    """

    batches: int
    before: int | None
    kept: Path | None


def backup(target: Path) -> Path:
    """Copy the book to a file, whole or not at all, and read the copy through.

    Args:
        target: a file, or a folder for a file named after the book.

    Returns:
        The copy.

    Raises:
        AskedWrongly: there is no book yet, or the file is there and is no backup of one.
        FileUnreadable, FileUnwritable: the book is damaged, the folder is read-only ...
    """
    book = book_file()
    if not is_there(book):
        raise AskedWrongly("there is no batch book yet to back up")
    checked_book(book, own=True)
    file = target / book.name if holds(target.is_dir) else target
    if holds(file.exists):
        if holds(lambda: file.samefile(book)):
            raise AskedWrongly(f"{named(file)} is the book itself; name another file")
        _refuse_other_file(file)
    with told(file, "written"):
        copy_book(book, file)
    return file


def restore(file: Path) -> Restored:
    """Make a backup the book again; the book as it was is kept beside it.

    Args:
        file: a backup.

    Raises:
        FileUnreadable: the file is no backup, or is damaged; the book is as it was.
        FileUnwritable: the book cannot be written.
    """
    book = book_file()
    checked_book(file)
    if not is_there(file):
        raise FileUnreadable(f"{named(file)} is empty, and no backup of a book")
    if holds(lambda: file.samefile(book)):
        raise AskedWrongly(f"{named(file)} is the book itself")
    with told(file, "read"), closing(opened(file)) as db:
        _refuse_faulty(db, file)
    if not is_there(book):
        with told(book, "written"):
            copy_book(file, book)
        return Restored(_count(book), None, None)
    with told(book, "read"):
        damaged = _is_damaged(book)
    if damaged:
        with told(book, "written"):
            kept = _replaced(book, file)
        return Restored(_count(book), None, kept)
    return _poured(file, book)


def check(*, mend: bool = False) -> Checked:
    """Look the whole book through: the file, the links in it, and all that is reckoned from it.

    Args:
        mend: whether to reckon anew what can be, where only that is wrong.

    Raises:
        FileUnreadable: there is no telling what the file is.
    """
    with reading() as db:
        found = _checked(db)
    if mend and found.mendable:
        with writing() as db:
            restate_all(db)
        return check()
    return found


def schema_of(db: sqlite3.Connection) -> set[str]:
    """Return every statement that the tables of a book are made by."""
    rows = db.execute("SELECT sql FROM main.sqlite_schema WHERE sql IS NOT NULL")
    return {str(sql) for (sql,) in rows}


def _poured(file: Path, book: Path) -> Restored:
    """Replace what the book holds by what a backup holds, in one transaction.

    The lock is held from the copy of the old to the last row of the new, so that no entry that
    somebody writes meanwhile falls between.
    """
    with told(book, "written"), closing(sqlite3.connect(book, isolation_level=None)) as db:
        db.execute("PRAGMA busy_timeout = 30000")
        db.execute("PRAGMA synchronous = EXTRA")
        db.execute("PRAGMA foreign_keys = OFF")  # rows come before those they point to
        db.execute("ATTACH ? AS kept", [str(file)])
        db.execute("BEGIN IMMEDIATE")
        before = how_many(db)
        copied = copy_before(book, "before-restore")
        (version,) = db.execute("PRAGMA kept.user_version").fetchone()
        _empty(db)
        bring_up_to(db, version)
        for table in _COPIED:
            db.execute(f"INSERT INTO main.{table} SELECT * FROM kept.{table}")
        bring_up_to(db, VERSION)
        restate_all(db)
        after = how_many(db)
        db.execute("COMMIT")
    return Restored(after, before, copied)


def _empty(db: sqlite3.Connection) -> None:
    """Drop every table and trigger of the book, within the transaction."""
    for kind in ("trigger", "table"):
        names = db.execute("SELECT name FROM main.sqlite_schema WHERE type = ?", [kind]).fetchall()
        for (name,) in names:
            db.execute(f'DROP {kind} main."{name}"')
    db.execute("PRAGMA main.user_version = 0")


def _is_damaged(book: Path) -> bool:
    """Whether the book cannot be read on; one of another program or a newer version is refused."""
    if not is_database(book):
        return True
    try:
        checked_book(book, own=True)
        with closing(opened(book)) as db:
            return bool(integrity_faults(db)) or schema_of(db) != _schema(version_of(db))
    except sqlite3.DatabaseError:
        return True
    except FileUnreadable as fault:
        if isinstance(fault.__cause__, (sqlite3.DatabaseError, UnicodeDecodeError)):
            return True
        raise FileUnreadable(f"{fault}. Move it elsewhere, then restore again") from None


def _replaced(book: Path, file: Path) -> Path:
    """Set a damaged book aside and put a copy of a backup in its place."""
    fresh = book.with_name(f"{book.name}.restored")
    try:
        copy_book(file, fresh)
        kept = _set_aside(book)
        fresh.replace(book)
    except BaseException:  # Ctrl-C too: the backup is whole, and restore can be asked for again
        fresh.unlink(missing_ok=True)
        raise
    return kept


def _set_aside(book: Path) -> Path:
    """Rename a damaged book, its journal first: left behind, it would spoil the next book."""
    kept = free_name(book, "damaged")
    make_folder(kept.parent)
    for tail in ("-journal", "-wal", "-shm", ""):
        part = book.with_name(book.name + tail)
        if part.exists():
            part.rename(kept.with_name(kept.name + tail))
    return kept


def _refuse_faulty(db: sqlite3.Connection, file: Path) -> None:
    faults = integrity_faults(db)
    if not faults and schema_of(db) != _schema(version_of(db)):
        faults = ("its tables are not those of a batch book",)
    if not faults:
        faults = _broken_links(db)
    if faults:
        raise FileUnreadable(f"the backup {named(file)} is damaged: {faults[0]}; nothing was done")


def _refuse_other_file(file: Path) -> None:
    """Refuse to write a backup over what is none."""
    try:
        checked_book(file)
    except (FileUnreadable, FileUnwritable):
        raise AskedWrongly(
            f"{named(file)} is there and is no batch book: a backup is not written over it"
        ) from None


def _schema(version: int) -> set[str]:
    with closing(sqlite3.connect(":memory:", isolation_level=None)) as db:
        bring_up_to(db, version)
        return schema_of(db)


def _count(book: Path) -> int:
    with reading(book) as db:
        return how_many(db)


def _checked(db: sqlite3.Connection) -> Checked:
    faults = integrity_faults(db)
    if faults:
        return Checked(0, 0, 0, faults)
    batches, entries, wordings = (
        db.execute(f"SELECT count(*) FROM {name}").fetchone()[0] for name in _COUNTED
    )
    faults = (
        *_broken_links(db), *_other_tables(db), *_changed_recipes(db), *_without_start(db)
    )  # fmt: skip
    derived = () if faults else _wrong_sums(db)
    shown = (*faults, *derived)[:_MOST_FAULTS]
    return Checked(batches, entries, wordings, shown, bool(derived))


def _broken_links(db: sqlite3.Connection) -> tuple[str, ...]:
    rows = db.execute("PRAGMA foreign_key_check").fetchall()
    return tuple(f"row {row[1]} of {row[0]} points to nothing in {row[2]}" for row in rows)


def _other_tables(db: sqlite3.Connection) -> tuple[str, ...]:
    same = schema_of(db) == _schema(VERSION)
    return () if same else ("its tables or triggers were changed by another program",)


def _changed_recipes(db: sqlite3.Connection) -> tuple[str, ...]:
    return tuple(
        f"the recipe {digest[:12]} is not as it was when it was kept"
        for digest, text in db.execute("SELECT digest, text FROM recipes")
        if digest_of(text) != digest
    )


def _without_start(db: sqlite3.Connection) -> tuple[str, ...]:
    rows = db.execute(
        "SELECT number FROM batches b WHERE NOT EXISTS "
        "(SELECT 1 FROM entries e WHERE e.batch_id = b.batch_id AND e.kind = 'start')"
    )
    return tuple(f"batch {number} has no start" for (number,) in rows)


def _wrong_sums(db: sqlite3.Connection) -> tuple[str, ...]:
    """Return the batches whose sums are not what their entries come to."""
    wrong = []
    for batch_id, number in db.execute("SELECT batch_id, number FROM batches").fetchall():
        entries = entries_of(db, number)
        row = db.execute("SELECT * FROM standing WHERE batch_id = ?", [batch_id]).fetchone()
        notes = db.execute(
            "SELECT e.number FROM open_notes n JOIN entries e USING (entry_id) "
            "WHERE n.batch_id = ? ORDER BY e.number",
            [batch_id],
        ).fetchall()
        open_notes = sorted(one.number for one in standing_of(entries).open_notes)
        if [*(row or ())] != [batch_id, *standing_row(entries)] or [
            n for (n,) in notes
        ] != open_notes:
            wrong.append(f"what batch {number} comes to is not what its entries say")
    return tuple(wrong)
