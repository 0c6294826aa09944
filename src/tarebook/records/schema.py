"""The tables of the book, and how a book of an earlier version is brought up to date.

``recipes``, ``batches`` and ``entries`` only ever grow: triggers refuse every change and every
removal, whoever asks. ``standing`` and ``open_notes`` are reckoned from them, one batch at a time,
within the writing of each entry; they are there to be quick and can be made anew.
"""

from __future__ import annotations

import sqlite3
from collections.abc import Callable

APPLICATION_ID = 0x74617262
"""Marks a file as a batch book: ``tarb``."""

_FIRST = """
CREATE TABLE recipes (
    recipe_id INTEGER PRIMARY KEY,
    digest TEXT NOT NULL UNIQUE,
    text TEXT NOT NULL
) STRICT;

CREATE TABLE batches (
    batch_id INTEGER PRIMARY KEY,
    number INTEGER NOT NULL UNIQUE CHECK (number > 0),
    uid TEXT NOT NULL UNIQUE,
    recipe TEXT NOT NULL,
    title TEXT NOT NULL,
    recipe_id INTEGER NOT NULL REFERENCES recipes
) STRICT;
CREATE INDEX batches_of_a_recipe ON batches (recipe, number);

CREATE TABLE entries (
    entry_id INTEGER PRIMARY KEY,
    uid TEXT NOT NULL UNIQUE,
    batch_id INTEGER NOT NULL REFERENCES batches,
    number INTEGER NOT NULL CHECK (number > 0),
    kind TEXT NOT NULL,
    what TEXT NOT NULL,
    written TEXT NOT NULL,
    value TEXT,
    happened_s INTEGER NOT NULL,
    happened_offset_min INTEGER NOT NULL,
    recorded_s INTEGER NOT NULL,
    recorded_offset_min INTEGER NOT NULL,
    note TEXT NOT NULL,
    about INTEGER CHECK (about < number),
    recipe_id INTEGER REFERENCES recipes,
    brought INTEGER NOT NULL CHECK (brought IN (0, 1)),
    UNIQUE (batch_id, number),
    FOREIGN KEY (batch_id, about) REFERENCES entries (batch_id, number)
) STRICT;

CREATE TABLE standing (
    batch_id INTEGER PRIMARY KEY REFERENCES batches,
    started_s INTEGER,
    started_offset_min INTEGER,
    finished_s INTEGER,
    finished_offset_min INTEGER,
    struck INTEGER NOT NULL,
    raw_g REAL,
    soaked_g REAL,
    leftover_g REAL,
    towels_g REAL,
    finished_g REAL,
    packed_g REAL,
    soak_h REAL,
    heat_h REAL,
    dry_h REAL
) STRICT;
CREATE INDEX in_hand ON standing (batch_id) WHERE finished_s IS NULL AND struck = 0;
"""

_STAYS = """
CREATE TRIGGER {table}_{what} BEFORE {what} ON {table}
BEGIN SELECT RAISE(ABORT, 'what stands in the book is never changed'); END;
"""

_OPEN_NOTES = """
CREATE TABLE open_notes (
    entry_id INTEGER PRIMARY KEY REFERENCES entries,
    batch_id INTEGER NOT NULL REFERENCES batches,
    recipe TEXT NOT NULL
) STRICT;
CREATE INDEX open_notes_of_a_batch ON open_notes (batch_id);
CREATE INDEX open_notes_of_a_recipe ON open_notes (recipe, entry_id);
"""


def _book(db: sqlite3.Connection) -> None:
    """1: recipes as they were, batches, entries, and what they come to."""
    _run(db, _FIRST)
    for table in ("recipes", "batches", "entries"):
        for what in ("UPDATE", "DELETE"):
            db.execute(_STAYS.format(table=table, what=what))


def _open_notes(db: sqlite3.Connection) -> None:
    """2: notes for next time are found by recipe without reading every batch of it."""
    _run(db, _OPEN_NOTES)


MIGRATIONS: tuple[Callable[[sqlite3.Connection], None], ...] = (_book, _open_notes)
"""The step to each version from the one before; a new book takes all of them."""

VERSION = len(MIGRATIONS)


def version_of(db: sqlite3.Connection) -> int:
    """Return which version a book is of; 0 is one that holds nothing yet."""
    (version,) = db.execute("PRAGMA user_version").fetchone()
    return int(version)


def bring_up_to(db: sqlite3.Connection, version: int = VERSION) -> None:
    """Bring a book up to a version, within the transaction that is open.

    Args:
        db: a book of that version or an earlier one; inside a transaction.
        version: which; the present one if none is said.
    """
    for step in MIGRATIONS[version_of(db) : version]:
        step(db)
    if version == VERSION:
        from tarebook.records.keep import restate_all  # which writes tables of this version

        restate_all(db)
    db.execute(f"PRAGMA application_id = {APPLICATION_ID}")
    db.execute(f"PRAGMA user_version = {version:d}")


def _run(db: sqlite3.Connection, script: str) -> None:
    """Run statements one by one: ``executescript`` would end the transaction."""
    for statement in script.split(";\n"):
        if statement.strip():
            db.execute(statement)
