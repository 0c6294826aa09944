"""Steps from one version of the book to the next."""

from __future__ import annotations

import sqlite3
from collections.abc import Callable
from contextlib import closing
from pathlib import Path

import pytest

from tarebook.findings import FileUnreadable, FileUnwritable
from tarebook.records import copies, schema, store
from tarebook.records.backup import check, schema_of
from tarebook.records.find import open_notes, read_batch, rows
from tarebook.records.keep import digest_of
from tarebook.records.place import book_file
from tarebook.records.schema import APPLICATION_ID, VERSION, bring_up_to, version_of
from tarebook.records.store import reading, writing

FIRST_ROWS = """
INSERT INTO batches VALUES (1, 1, '00000000000000b1', 'lake', 'Lake strips', 1);
INSERT INTO entries VALUES (1, '00000000000000e1', 1, 1, 'start', 'meat', '2500 g', '2500',
    1795629600, -360, 1795629600, -360, '', NULL, NULL, 0);
INSERT INTO entries VALUES (2, '00000000000000e2', 1, 2, 'note', 'next-time', '', NULL,
    1795629600, -360, 1795629600, -360, 'less pepper', NULL, NULL, 0);
INSERT INTO entries VALUES (3, '00000000000000e3', 1, 3, 'note', 'next-time', '', NULL,
    1795629600, -360, 1795629600, -360, 'more smoke', NULL, NULL, 0);
INSERT INTO entries VALUES (4, '00000000000000e4', 1, 4, 'strike', '', '', NULL,
    1795629600, -360, 1795629600, -360, '', 3, NULL, 0);
"""


@pytest.fixture
def old_book(own_home: Path) -> Path:
    """A book of version 1, as that version wrote it."""
    own_home.mkdir()
    with closing(sqlite3.connect(book_file(), isolation_level=None)) as db:
        db.execute("BEGIN")
        bring_up_to(db, 1)
        db.execute("INSERT INTO recipes VALUES (1, ?, 'text')", [digest_of("text")])
        for statement in FIRST_ROWS.split(";\n"):
            db.execute(statement)
        db.execute("COMMIT")
    return book_file()


def test_an_old_book_is_brought_up_to_date(old_book: Path) -> None:
    """Whoever opens it finds every entry, and the notes for next time by their recipe."""
    with reading() as db:
        batch = read_batch(db, 1)
        notes = open_notes(db, "lake")
        (row,) = rows(db)
        assert VERSION == version_of(db)

    assert ["start", "note", "note", "strike"] == [one.kind for one in batch.entries]
    assert ["less pepper"] == [note.note for note, _ in notes]
    assert 2500.0 == row.raw_g
    assert () == check().faults


def test_a_copy_is_made_before(old_book: Path) -> None:
    """The book as it was lies beside it, of its old version and whole; a second one beside that."""
    for name in ("book-before-version-2.sqlite3", "book-before-version-2-2.sqlite3"):
        old = old_book.read_bytes()
        with writing():
            pass
        copy = old_book.parent / "backups" / name
        with closing(sqlite3.connect(copy)) as db:
            assert 1 == version_of(db)
            assert [("ok",)] == db.execute("PRAGMA integrity_check").fetchall()
            assert 4 == db.execute("SELECT count(*) FROM entries").fetchone()[0]
        old_book.write_bytes(old)


def test_a_new_book_needs_no_copy(start: Callable[..., object], own_home: Path) -> None:
    """There is nothing to copy of a book that is just made."""
    start()

    assert ["book.sqlite3"] == [path.name for path in own_home.iterdir()]


def test_a_step_that_fails_leaves_the_old_book(
    old_book: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """All of the steps or none: the book is as it was, and opens again once it can."""
    before = old_book.read_bytes()

    def fails(db: sqlite3.Connection) -> None:
        db.execute("DROP TABLE standing")
        raise sqlite3.OperationalError("no")

    with monkeypatch.context() as patch:
        patch.setattr(schema, "MIGRATIONS", (*schema.MIGRATIONS[:1], fails))
        with pytest.raises(FileUnreadable), writing():
            pass
    assert before == old_book.read_bytes()
    with reading() as db:
        assert 4 == len(read_batch(db, 1).entries)


def test_without_a_copy_no_step(old_book: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Where the copy cannot be made, the book is not touched."""
    before = old_book.read_bytes()

    def no_room(source: Path, what: str) -> Path:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(store, "copy_before", no_room)
    with pytest.raises(FileUnwritable, match="no space left on device"), reading():
        pass
    assert before == old_book.read_bytes()


def test_a_damaged_old_book_gets_no_step(old_book: Path) -> None:
    """A copy that could not be read would be none: nothing is done."""
    data = bytearray(old_book.read_bytes())
    data[-4096 * 3 :] = b"\xa5" * (4096 * 3)
    old_book.write_bytes(data)

    with pytest.raises(FileUnreadable, match="damaged"), writing():
        pass
    assert bytes(data) == old_book.read_bytes()
    assert [] == [path.name for path in (old_book.parent / "backups").iterdir()]


def test_step_by_step_is_the_same_as_at_once() -> None:
    """A book brought up from the first version has the very tables of a new one."""
    made = []
    for roads in ((VERSION,), range(1, VERSION + 1)):
        with closing(sqlite3.connect(":memory:", isolation_level=None)) as db:
            for version in roads:
                bring_up_to(db, version)
            made.append(schema_of(db))
            assert APPLICATION_ID == db.execute("PRAGMA application_id").fetchone()[0]

    assert made[0] == made[1]


def test_every_table_is_strict(start: Callable[..., object]) -> None:
    """A number where a text belongs is refused by the book itself."""
    start()
    with closing(sqlite3.connect(book_file())) as db:
        tables = db.execute("SELECT name, strict FROM pragma_table_list WHERE schema = 'main'")
        loose = {name for name, strict in tables if not strict and not name.startswith("sqlite_")}
        assert set() == loose
        with pytest.raises(sqlite3.IntegrityError, match="cannot store TEXT"):
            db.execute("INSERT INTO standing (batch_id, struck) VALUES (9, 'no')")


def test_copies_stay_apart(tmp_path: Path) -> None:
    """A name is free only where nothing has it."""
    book = tmp_path / "book.sqlite3"
    first = copies.free_name(book, "x")
    first.parent.mkdir()
    first.touch()

    assert "book-x.sqlite3" == first.name
    assert "book-x-2.sqlite3" == copies.free_name(book, "x").name
