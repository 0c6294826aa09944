"""The file in which answers are kept, so that a question need not be asked twice.

It is the library's, and may be lost or damaged at any time: a damaged one is set aside, one that
cannot be opened is done without, and either is said.
"""

from __future__ import annotations

import sqlite3
from contextlib import closing
from pathlib import Path
from typing import Any

from tarebook.files import holds, named

FRESH_DAYS = 30
_WAIT_MS = 2_000
_DAMAGED = (sqlite3.SQLITE_CORRUPT, sqlite3.SQLITE_NOTADB)
# The library would write a header of another spelling in clear; ours never reaches it anyway.
_SECRET = ("api_key", "X-Api-Key", "x-api-key", "X-API-Key", "Authorization", "Cookie")


class Unusable(Exception):
    """The file cannot be used just now; carries why."""


def set_aside_if_damaged(file: Path) -> str:
    """Move a file out of the way that is no whole file of answers.

    Args:
        file: where answers are kept; it may not be there.

    Returns:
        What to tell the cook; nothing where all is well.

    Raises:
        Unusable: it cannot be read, or not be moved.
    """
    if not holds(file.exists) or _is_sound(file):
        return ""
    aside = file.with_name(f"{file.stem}.damaged{file.suffix}")
    try:
        file.replace(aside)
    except OSError as fault:
        raise Unusable(f"{named(file)} is damaged, and in the way: {fault.strerror}") from None
    return f"the kept answers were damaged; they were set aside as {named(aside)}"


def open_session(file: Path) -> Any:
    """Return a session of the library that keeps answers in a file; the file is made.

    Raises:
        Unusable: the folder or the file cannot be written.
    """
    from datetime import timedelta

    from requests_cache import CachedSession
    from requests_cache.backends.sqlite import SQLiteCache

    _quiet()
    try:
        file.parent.mkdir(parents=True, exist_ok=True)
        return CachedSession(
            # JSON, and not the library's own choice: reading that one runs what is in it.
            # Without waiting for the disk: what a power cut spoils is set aside, and asked anew.
            backend=SQLiteCache(file, serializer="json", busy_timeout=_WAIT_MS, fast_save=True),
            expire_after=timedelta(days=FRESH_DAYS),
            allowable_methods=("GET",),
            allowable_codes=(200,),
            ignored_parameters=_SECRET,
        )
    except (OSError, sqlite3.Error) as fault:
        raise Unusable(f"{named(file)} cannot be written: {_reason(fault)}") from None


def _is_sound(file: Path) -> bool:
    try:
        # Not read-only: what a crash left half written could not be taken back then.
        with closing(sqlite3.connect(f"{file.resolve().as_uri()}?mode=rw", uri=True)) as book:
            book.execute(f"PRAGMA busy_timeout={_WAIT_MS}")
            if book.execute("PRAGMA quick_check(1)").fetchone() != ("ok",):
                return False
            return _has_columns(book)
    except sqlite3.Error as fault:
        if (getattr(fault, "sqlite_errorcode", 0) & 0xFF) in _DAMAGED:
            return False
        raise Unusable(f"{named(file)} cannot be read: {_reason(fault)}") from None


def _has_columns(book: sqlite3.Connection) -> bool:
    """Whether its table is the library's; a file without one is a new file."""
    columns = {row[1] for row in book.execute("PRAGMA table_info(responses)")}
    return not columns or {"key", "value", "expires"} <= columns


def _reason(fault: Exception) -> str:
    return str(getattr(fault, "strerror", None) or fault).lower()


def _quiet() -> None:
    """Keep the library from writing of its own accord: we say what there is to say."""
    import logging

    for name in ("requests_cache", "urllib3"):
        logging.getLogger(name).setLevel(logging.CRITICAL + 1)
