"""Opens the book and closes it: what is told as written is on the disk by then.

One file, one machine. A rollback journal and not a write-ahead log, so that the book is always one
file to copy; ``synchronous=EXTRA``, which is ``FULL`` and also waits for the folder to be on the
disk, so that an entry outlasts a power cut as well as a crash. Whoever writes takes the lock at
once and others wait for it, so that nothing read before is stale when it is written.
"""

from __future__ import annotations

import sqlite3
from collections.abc import Iterator
from contextlib import closing, contextmanager, suppress
from pathlib import Path

from tarebook.files import holds, named
from tarebook.findings import FileUnreadable, FileUnwritable
from tarebook.records.copies import copy_before, make_folder
from tarebook.records.place import book_file, is_there
from tarebook.records.schema import APPLICATION_ID, VERSION, bring_up_to, version_of

WAIT_MS = 30_000
"""How long to wait for another that writes [ms]; an entry takes some hundredths of a second."""

_DAMAGED = (
    "the book {} is damaged ({}); nothing was written. tarebook batch restore FILE brings back a "
    "backup"
)
_ANOTHER_PROGRAM = "is no batch book: it belongs to another program"
_MAGIC = b"SQLite format 3\0"
_NO_BOOK = "is no batch book"


@contextmanager
def reading(path: Path | None = None) -> Iterator[sqlite3.Connection]:
    """Open the book to read it, as it stands at one moment; without a book, an empty one.

    Args:
        path: of the book; the cook's own where none is given.

    Raises:
        FileUnreadable: it is damaged, of a newer version, or no batch book.
        FileUnwritable: it is of an earlier version and cannot be brought up to date.
    """
    file = path or book_file()
    if not is_there(file):
        with closing(_connect(":memory:")) as db:
            bring_up_to(db)
            yield db
        return
    with told(file, "read"), closing(_database(file, "rw")) as db:
        if _checked(db, file) < VERSION:
            with writing(file):
                pass
        db.execute("BEGIN")
        yield db


@contextmanager
def writing(path: Path | None = None, *, begun: bool = False) -> Iterator[sqlite3.Connection]:
    """Open the book to write in it; all that is written inside is kept at the end, or nothing.

    Once the block is left without an exception, everything is on the disk.

    Args:
        path: another book than the cook's own.
        begun: whether there must be a book for it. Where there is none an empty one is shown, in
            which there is nothing to add to, and no file is made.

    Raises:
        FileUnreadable: it is damaged, of a newer version, or no batch book.
        FileUnwritable: the folder is read-only, the disk is full, another is writing for long.
    """
    file = path or book_file()
    if begun and not is_there(file):
        with reading(file) as db:
            yield db
        raise AssertionError("written in a book that is not there")
    with told(file, "written"):
        make_folder(file.parent)
        with closing(_database(file, "rwc")) as db:
            db.execute("BEGIN IMMEDIATE")
            try:
                version = _checked(db, file)
                if version < VERSION:
                    if version:
                        copy_before(file, f"before-version-{VERSION}")
                    bring_up_to(db)
                yield db
                db.execute("COMMIT")
            except BaseException:
                with suppress(sqlite3.Error):  # after some faults there is none left
                    db.execute("ROLLBACK")
                raise


def is_database(file: Path) -> bool:
    """Whether a file begins as a database does."""
    with file.open("rb") as begun:
        return begun.read(len(_MAGIC)) == _MAGIC


def opened(file: Path) -> sqlite3.Connection:
    """Return a connection that only reads a file, which must exist.

    Raises:
        sqlite3.Error: it cannot be opened, or is no database.
    """
    return _database(file, "ro")


def checked_book(file: Path, *, own: bool = False) -> int:
    """Return the version of a file that is to be a book.

    Args:
        file: which.
        own: whether it is the book in use: then what a killed writer left half done is undone.

    Raises:
        FileUnreadable: it is none, is damaged, or of a newer version.
    """
    if not holds(file.is_file):
        raise FileUnreadable(f"there is no book {named(file)}")
    with told(file, "read"), closing(_database(file, "rw" if own else "ro")) as db:
        return _checked(db, file)


@contextmanager
def told(file: Path, done: str) -> Iterator[None]:
    """Turn the database's faults into sentences."""
    try:
        yield
    except sqlite3.DatabaseError as fault:
        said = _fault(fault, file, done)
        if said is None:
            raise
        raise said from fault
    except UnicodeDecodeError as fault:  # the database's own complaint quotes what is damaged
        raise FileUnreadable(_DAMAGED.format(named(file), "its tables")) from fault
    except (FileUnreadable, FileUnwritable):
        raise
    except OSError as fault:
        reason = (fault.strerror or str(fault)).lower()
        raise FileUnwritable(f"the book {named(file)} cannot be {done}: {reason}") from None


def _fault(
    fault: sqlite3.DatabaseError, file: Path, done: str
) -> FileUnreadable | FileUnwritable | None:
    """Return what to say of a fault; nothing of one that is ours and not the disk's."""
    text_is_broken = isinstance(fault, sqlite3.OperationalError)  # the only one without a code
    code = getattr(fault, "sqlite_errorcode", sqlite3.SQLITE_CORRUPT if text_is_broken else 0)
    book, kind = f"the book {named(file)}", code & 0xFF
    if kind == sqlite3.SQLITE_NOTADB:
        return FileUnreadable(f"{named(file)} {_NO_BOOK}; nothing was touched")
    if kind in (sqlite3.SQLITE_CORRUPT, sqlite3.SQLITE_ERROR):
        return FileUnreadable(_DAMAGED.format(named(file), fault))
    if kind in (sqlite3.SQLITE_BUSY, sqlite3.SQLITE_LOCKED):
        return FileUnwritable(
            f"{book} has been held by another program for {WAIT_MS // 1000} seconds; "
            "nothing was written"
        )
    if kind == sqlite3.SQLITE_FULL:
        return FileUnwritable(f"{book} cannot be {done}: the disk is full; nothing was changed")
    if code == sqlite3.SQLITE_READONLY_ROLLBACK:
        return FileUnwritable(
            f"{book} was being written when the machine stopped, and may not be put in order "
            "where it lies: copy its whole folder to where you may write"
        )
    if kind in (sqlite3.SQLITE_READONLY, sqlite3.SQLITE_CANTOPEN, sqlite3.SQLITE_PERM):
        return FileUnwritable(
            f"{book} may not be {done}: see who owns it and its folder; nothing was changed"
        )
    if kind == sqlite3.SQLITE_IOERR:
        return FileUnwritable(
            f"{book} cannot be {done}: the disk failed or is full; nothing was changed"
        )
    return None


def _database(file: Path, mode: str) -> sqlite3.Connection:
    """Connect to a file, unless it holds something else: a very short one SQLite would write over.

    A power cut may leave the first pages of a new book in part; the journal beside it tells SQLite
    how to take them back.

    Raises:
        FileUnreadable: it is no database.
    """
    begun = is_there(file.with_name(f"{file.name}-journal"))
    if holds(file.is_file) and is_there(file) and not begun and not is_database(file):
        raise FileUnreadable(f"{named(file)} {_NO_BOOK}; nothing was touched")
    return _connect(file, mode)


def _connect(file: Path | str, mode: str = "") -> sqlite3.Connection:
    target = f"{file.absolute().as_uri()}?mode={mode}" if isinstance(file, Path) else file
    db = sqlite3.connect(target, uri=isinstance(file, Path), isolation_level=None)
    try:
        db.execute(f"PRAGMA busy_timeout = {WAIT_MS}")
        db.execute("PRAGMA foreign_keys = ON")
        db.execute("PRAGMA synchronous = EXTRA")
        db.execute("PRAGMA trusted_schema = OFF")  # a book may come from elsewhere
    except BaseException:
        db.close()
        raise
    return db


def _checked(db: sqlite3.Connection, file: Path) -> int:
    """Return a book's version; refuse what is no book, or one from the future."""
    (application,) = db.execute("PRAGMA application_id").fetchone()
    version = version_of(db)
    if application != APPLICATION_ID:
        (tables,) = db.execute("SELECT count(*) FROM sqlite_schema").fetchone()
        if application or version or tables:
            raise FileUnreadable(f"{named(file)} {_ANOTHER_PROGRAM}; nothing was touched")
    if version > VERSION:
        raise FileUnreadable(
            f"the book {named(file)} was written by a newer tarebook (version {version} of the "
            f"book; this one knows {VERSION}): bring tarebook up to date; nothing was touched"
        )
    return version
