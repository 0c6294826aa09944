"""Copies of the book: whole, looked through, and never over one that is there unless asked."""

from __future__ import annotations

import os
import sqlite3
from contextlib import closing, suppress
from pathlib import Path

from tarebook.findings import FileUnreadable

FOLDER = "backups"


def copy_book(source: Path, target: Path) -> None:
    """Copy a book as it stands at one moment, whole or not at all.

    Others may go on writing in it meanwhile. The copy is read through before it gets its name.

    Args:
        source: the book.
        target: the copy; what was there is replaced.

    Raises:
        sqlite3.Error, OSError: it cannot be read or written.
        FileUnreadable: the book is damaged, so that no whole copy can be made.
    """
    make_folder(target.parent)
    beside = target.with_name(f".{target.name[:100]}.{os.getpid()}.new")
    try:
        beside.unlink(missing_ok=True)
        with (
            closing(sqlite3.connect(f"{source.absolute().as_uri()}?mode=ro", uri=True)) as old,
            closing(sqlite3.connect(beside)) as new,
        ):
            new.execute("PRAGMA journal_mode = OFF")  # until it has its name it may be lost
            old.backup(new)
            faults = integrity_faults(new)
        if faults:
            raise FileUnreadable(f"the book is damaged, so no copy was made: {faults[0]}")
        to_disk(beside)
        beside.replace(target)
        to_disk(target.parent)
    except BaseException:
        with suppress(OSError):
            beside.unlink()
        raise


def copy_before(source: Path, what: str) -> Path:
    """Copy a book to the folder of backups beside it, under a name that is not taken.

    Args:
        source: the book.
        what: before what, for the name: ``before-version-2``.

    Returns:
        The copy.
    """
    target = free_name(source, what)
    copy_book(source, target)
    return target


def free_name(source: Path, what: str) -> Path:
    """Return a name in the folder of backups that nothing has yet."""
    folder = source.parent / FOLDER
    for count in range(1, 100_000):
        tail = "" if count == 1 else f"-{count}"
        target = folder / f"{source.stem}-{what}{tail}{source.suffix}"
        if not target.exists():
            return target
    raise FileUnreadable(f'there are too many backups in "{folder}": move some elsewhere')


def integrity_faults(db: sqlite3.Connection) -> tuple[str, ...]:
    """Return what SQLite's own check finds wrong; nothing where all is well."""
    try:
        rows = db.execute("PRAGMA integrity_check(20)").fetchall()
    except sqlite3.DatabaseError as fault:
        return (str(fault),)
    return tuple(str(row[0]) for row in rows if row[0] != "ok")


def make_folder(folder: Path) -> None:
    """Make a folder and those above it, and wait until their names are on the disk.

    Otherwise a power cut could take a whole new folder, with all that was written in it since.
    """
    new = [one for one in (folder, *folder.parents) if not one.exists()]
    folder.mkdir(parents=True, exist_ok=True)
    for one in new:
        to_disk(one.parent)


def to_disk(path: Path) -> None:
    """Wait until a file, or the names in a folder, are on the disk."""
    is_folder = path.is_dir()
    if is_folder and os.name == "nt":  # a folder cannot be opened there
        return
    descriptor = os.open(path, os.O_RDONLY if is_folder else os.O_RDWR)
    try:
        os.fsync(descriptor)
    finally:
        os.close(descriptor)
