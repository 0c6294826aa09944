"""Backups, bringing one back, and looking the book through."""

from __future__ import annotations

import random
import sqlite3
import threading
from collections.abc import Callable
from contextlib import closing, suppress
from pathlib import Path

import pytest

from tarebook.findings import AskedWrongly, FileUnreadable, FileUnwritable
from tarebook.records import backup as backups
from tarebook.records.backup import Restored, backup, check, restore
from tarebook.records.entry import Entry
from tarebook.records.find import how_many, read_batch, rows
from tarebook.records.place import book_file
from tarebook.records.schema import VERSION, bring_up_to, version_of
from tarebook.records.store import reading

Start = Callable[..., Entry]
Add = Callable[..., Entry]


def batches_in(file: Path) -> int:
    """Return how many batches a book holds, read by SQLite itself."""
    with closing(sqlite3.connect(file)) as db:
        assert [("ok",)] == db.execute("PRAGMA integrity_check").fetchall()
        return int(db.execute("SELECT count(*) FROM batches").fetchone()[0])


def spoil(file: Path, at: int = 4096 * 2) -> None:
    """Write over all of a book from some byte on."""
    data = bytearray(file.read_bytes())
    data[at:] = b"\xa5" * (len(data) - at)
    file.write_bytes(data)


def test_a_backup_is_the_whole_book(start: Start, tmp_path: Path) -> None:
    """A copy that stands alone; to a file, into a folder, and over an older one."""
    start()
    (tmp_path / "stick").mkdir()
    file = tmp_path / "kept.sqlite3"
    for target, made in ((file, file), (tmp_path / "stick", tmp_path / "stick" / "book.sqlite3")):
        assert made == backup(target)
        assert 1 == batches_in(made)
    start()
    backup(file)
    assert 2 == batches_in(file)
    assert ["kept.sqlite3"] == [path.name for path in tmp_path.iterdir() if "kept" in path.name]


def test_no_backup(start: Start, tmp_path: Path) -> None:
    """Of no book, over the book itself, over something else: nothing is written."""
    recipe = tmp_path / "lake.toml"
    recipe.write_text("title = 'x'", encoding="utf-8")
    with pytest.raises(AskedWrongly, match="no batch book yet"):
        backup(tmp_path / "kept.sqlite3")
    start()
    with pytest.raises(AskedWrongly, match="is the book itself"):
        backup(book_file())
    with pytest.raises(AskedWrongly, match="is no batch book: a backup is not written over it"):
        backup(recipe)
    with pytest.raises(FileUnwritable):
        backup(recipe / "kept.sqlite3")
    assert "title = 'x'" == recipe.read_text(encoding="utf-8")


def test_no_backup_of_a_damaged_book(start: Start, tmp_path: Path) -> None:
    """A copy that could not be read would be none."""
    start()
    file = backup(tmp_path / "kept.sqlite3")
    spoil(book_file())
    before = file.read_bytes()
    with pytest.raises(FileUnreadable, match="damaged"):
        backup(file)
    assert before == file.read_bytes()


def test_restore(start: Start, add: Add, tmp_path: Path, own_home: Path) -> None:
    """The book is as it was at the backup; what it was meanwhile lies beside it."""
    start()
    add("weigh", what="finished", value=900)
    file = backup(tmp_path / "kept.sqlite3")
    start()
    add("note", note="lost?")
    done = restore(file)

    kept = own_home / "backups" / "book-before-restore.sqlite3"
    assert Restored(1, 2, kept) == done
    assert (1, 2) == (batches_in(book_file()), batches_in(kept))
    with reading() as db:
        assert 900.0 == rows(db)[0].finished_g
        assert 2 == len(read_batch(db, 1).entries)
    assert () == check().faults
    assert 2 == start().batch  # and it goes on
    with pytest.raises(sqlite3.IntegrityError), closing(sqlite3.connect(book_file())) as db:
        db.execute("DELETE FROM entries")


def test_restore_where_there_is_no_book(start: Start, tmp_path: Path, own_home: Path) -> None:
    """On a new machine the backup becomes the book."""
    start()
    file = backup(tmp_path / "kept.sqlite3")
    book_file().unlink()

    assert Restored(1, None, None) == restore(file)
    assert ["book.sqlite3"] == [path.name for path in own_home.iterdir()]


def test_ctrl_c_in_a_restore_leaves_nothing_half(
    start: Start, tmp_path: Path, own_home: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Stopped before the copy has its place, the damaged book is as it was, and no part is left."""
    start()
    kept = backup(tmp_path / "kept.sqlite3")
    spoil(book_file())
    damaged = book_file().read_bytes()

    def stopped(_: Path) -> Path:
        raise KeyboardInterrupt

    monkeypatch.setattr(backups, "_set_aside", stopped)
    with pytest.raises(KeyboardInterrupt):
        restore(kept)

    assert damaged == book_file().read_bytes()
    assert ["book.sqlite3"] == sorted(one.name for one in own_home.iterdir())


def test_restore_of_no_bytes_touches_nothing(start: Start, tmp_path: Path, own_home: Path) -> None:
    """An empty file is no backup: that is said of it, and not of the book."""
    start()
    empty = tmp_path / "empty.sqlite3"
    empty.touch()

    with pytest.raises(FileUnreadable, match=r'"[^"]*empty.sqlite3" is empty'):
        restore(empty)

    assert 1 == batches_in(book_file())
    assert ["book.sqlite3"] == sorted(one.name for one in own_home.iterdir())


def test_restore_where_the_book_is_a_folder(start: Start, tmp_path: Path) -> None:
    """A folder in place of the book is told as one."""
    start()
    kept = backup(tmp_path / "kept.sqlite3")
    book_file().unlink()
    book_file().mkdir()

    with pytest.raises(FileUnwritable, match=r"book.sqlite3.* is a directory"):
        restore(kept)


def test_restore_over_a_damaged_book(start: Start, tmp_path: Path, own_home: Path) -> None:
    """A damaged book is set aside as it is."""
    start()
    file = backup(tmp_path / "kept.sqlite3")
    spoil(book_file())
    damaged = book_file().read_bytes()
    done = restore(file)

    kept = own_home / "backups" / "book-damaged.sqlite3"
    assert Restored(1, None, kept) == done
    assert damaged == kept.read_bytes()
    assert 1 == batches_in(book_file())


def test_restore_over_what_is_no_book(start: Start, tmp_path: Path) -> None:
    """What is no database is set aside, its journal with it: that would spoil the new book."""
    start()
    file = backup(tmp_path / "kept.sqlite3")
    book_file().write_bytes(b"dear diary")
    journal = book_file().with_name("book.sqlite3-journal")
    journal.write_bytes(b"what was left")
    done = restore(file)

    assert done.kept is not None and b"dear diary" == done.kept.read_bytes()
    assert not journal.exists()
    assert b"what was left" == done.kept.with_name("book-damaged.sqlite3-journal").read_bytes()
    assert 1 == batches_in(book_file())


def test_no_restore(start: Start, tmp_path: Path) -> None:
    """What is no backup, damaged, newer, or the book itself is refused; the book is as it was."""
    start()
    file = backup(tmp_path / "kept.sqlite3")
    before = book_file().read_bytes()
    other, newer, gone = tmp_path / "other", tmp_path / "newer.sqlite3", tmp_path / "gone"
    other.write_text("title = 'x'", encoding="utf-8")
    newer.write_bytes(file.read_bytes())
    with closing(sqlite3.connect(newer)) as db:
        db.execute(f"PRAGMA user_version = {VERSION + 1}")
    spoil(file)
    for one, says in (
        (other, "is no batch book"),
        (gone, "there is no book"),
        (newer, "written by a newer tarebook"),
        (file, "is damaged"),
    ):
        with pytest.raises(FileUnreadable, match=says):
            restore(one)
    with pytest.raises(AskedWrongly, match="is the book itself"):
        restore(book_file())
    assert before == book_file().read_bytes()


def test_restore_over_what_is_not_ours(start: Start, tmp_path: Path) -> None:
    """Another program's file, or a newer book, is not taken for damaged: it is left where it is."""
    start()
    file = backup(tmp_path / "kept.sqlite3")
    with closing(sqlite3.connect(book_file())) as db:
        db.execute("PRAGMA application_id = 7")
    before = book_file().read_bytes()
    with pytest.raises(FileUnreadable, match=r"another program.*Move it elsewhere, then restore"):
        restore(file)
    assert before == book_file().read_bytes()


def test_a_backup_with_other_tables(start: Start, tmp_path: Path) -> None:
    """A backup that was tampered with is no backup."""
    start()
    file = backup(tmp_path / "kept.sqlite3")
    with closing(sqlite3.connect(file)) as db:
        db.execute("CREATE TRIGGER evil AFTER INSERT ON entries BEGIN SELECT 1; END")
    with pytest.raises(FileUnreadable, match="its tables are not those of a batch book"):
        restore(file)


def test_an_old_backup_is_brought_up_to_date(start: Start, tmp_path: Path) -> None:
    """A backup of an earlier version becomes a book of this one."""
    start()
    old = tmp_path / "old.sqlite3"
    with closing(sqlite3.connect(old, isolation_level=None)) as db:
        db.execute("BEGIN")
        bring_up_to(db, 1)
        db.execute("INSERT INTO recipes VALUES (1, ?, 'x')", [backups.digest_of("x")])
        db.execute("INSERT INTO batches VALUES (1, 7, '00000000000000b1', 'elk', 'Elk', 1)")
        db.execute(
            "INSERT INTO entries VALUES (1, '00000000000000e1', 1, 1, 'start', 'meat', '', NULL, "
            "0, 0, 0, 0, '', NULL, NULL, 0)"
        )
        db.execute("COMMIT")
    restore(old)

    with reading() as db:
        assert (VERSION, [7]) == (version_of(db), [row.number for row in rows(db)])
    assert () == check().faults


def test_a_restore_that_fails(
    start: Start, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Where something goes wrong midway the book is as it was."""
    start()
    file = backup(tmp_path / "kept.sqlite3")
    start()

    def fails(db: sqlite3.Connection) -> None:
        raise sqlite3.OperationalError("disk I/O error")

    with monkeypatch.context() as patch:
        patch.setattr(backups, "restate_all", fails)
        with pytest.raises(FileUnreadable):
            restore(file)
    assert 2 == batches_in(book_file())


def test_no_entry_falls_between(start: Start, add: Add, tmp_path: Path) -> None:
    """Who writes during a restore is in the book after it or in the copy beside it."""
    start()
    file = backup(tmp_path / "kept.sqlite3")
    told: list[str] = []

    def write() -> None:
        for _ in range(15):
            told.append(add("turn").uid)

    writer = threading.Thread(target=write)
    writer.start()
    for _ in range(5):
        restore(file)
    writer.join()
    found: set[str] = set()
    for book in (book_file(), *(book_file().parent / "backups").iterdir()):
        with closing(sqlite3.connect(book)) as db:
            found |= {uid for (uid,) in db.execute("SELECT uid FROM entries")}
    assert [] == [uid for uid in told if uid not in found]


def test_check_counts(start: Start, add: Add) -> None:
    """Of a book without faults, how much there is."""
    assert (0, 0, 0, ()) == check()[:4]
    start()
    add("turn")
    assert (1, 2, 1, ()) == check()[:4]


def changed(*statements: str) -> None:
    """Change the book as another program might, past its triggers."""
    with closing(sqlite3.connect(book_file())) as db:
        triggers = db.execute("SELECT name, sql FROM sqlite_schema WHERE type = 'trigger'")
        kept = dict(triggers.fetchall())
        for name in kept:
            db.execute(f"DROP TRIGGER {name}")
        for statement in statements:
            db.execute(statement)
        for sql in kept.values():
            db.execute(sql)
        db.commit()


@pytest.mark.parametrize(
    ("statement", "says"),
    [
        ("UPDATE recipes SET text = 'x'", "is not as it was when it was kept"),
        ("DELETE FROM recipes", "points to nothing in recipes"),
        ("DROP INDEX in_hand", "changed by another program"),
        ("UPDATE entries SET kind = 'turn' WHERE kind = 'start'", "batch 1 has no start"),
        ("DELETE FROM standing", "what batch 1 comes to is not what its entries say"),
        ("UPDATE standing SET raw_g = 1", "what batch 1 comes to"),
        ("DELETE FROM open_notes", "what batch 1 comes to"),
    ],
)
def test_check_finds(statement: str, says: str, start: Start, add: Add) -> None:
    """Whatever another program did to the book is found."""
    start()
    add("note", what="next-time", note="less pepper")
    changed(statement)

    assert any(says in one for one in check().faults)


def test_check_finds_damage(start: Start, add: Add) -> None:
    """Pages that are gone are found."""
    start()
    for _ in range(50):
        add("note", note="x" * 2000)
    spoil(book_file(), book_file().stat().st_size - 4096 * 3)

    found = check()
    assert len(found.faults) > 0 and not found.mendable


def test_sums_are_mended(start: Start, add: Add) -> None:
    """What is reckoned from the entries can be reckoned anew; no entry is touched."""
    start()
    add("note", what="next-time", note="less pepper")
    changed("DELETE FROM standing", "DELETE FROM open_notes")
    assert check().mendable

    assert () == check(mend=True).faults
    with reading() as db:
        assert (1, 2500.0) == (how_many(db), rows(db)[0].raw_g)


def test_what_is_wrong_with_entries_is_not_mended(start: Start) -> None:
    """Nobody mends what somebody changed in the entries themselves."""
    start()
    changed("UPDATE recipes SET text = 'x'")

    assert len(check(mend=True).faults) > 0


def test_damage_anywhere(start: Start, add: Add, tmp_path: Path) -> None:
    """Wherever a book is hurt: it is used, or told to be damaged; and a backup comes back."""
    start()
    add("weigh", what="finished", value=900)
    add("note", what="next-time", note="less pepper")
    kept = backup(tmp_path / "kept.sqlite3")
    whole = kept.read_bytes()
    chance = random.Random(20_261_125)

    def look() -> None:
        with reading() as db:
            rows(db)
            read_batch(db, 1)

    for _ in range(60):
        hurt = bytearray(whole)
        for _ in range(chance.randint(1, 5)):
            at = chance.randrange(chance.choice((100, len(hurt))))
            hurt[at : at + 4] = chance.randbytes(chance.choice((1, 4, 300)))
        for way in (look, lambda: add("turn"), check, lambda: backup(tmp_path / "out.sqlite3")):
            book_file().write_bytes(hurt)
            with suppress(FileUnreadable, FileUnwritable, AskedWrongly):
                way()
        book_file().write_bytes(hurt)
        with suppress(FileUnreadable):  # of a newer version or another program, by its looks
            restore(kept)
            look()
            assert () == check().faults
            assert 1 == batches_in(book_file())
