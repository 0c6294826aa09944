"""Opening the book: what is told as written is on the disk, and what is faulty stays untouched."""

from __future__ import annotations

import os
import shutil
import sqlite3
import subprocess
import sys
import tempfile
from collections.abc import Callable, Iterator
from contextlib import closing, contextmanager
from pathlib import Path

import pytest

from tarebook.findings import AskedWrongly, FileUnreadable, FileUnwritable
from tarebook.records import store
from tarebook.records.backup import backup
from tarebook.records.find import entries_of, how_many, rows
from tarebook.records.keep import add_entry
from tarebook.records.place import book_file, is_there
from tarebook.records.schema import VERSION
from tarebook.records.store import reading, writing

Start = Callable[..., object]


def entries_in(path: Path) -> int:
    """Return how many entries a book holds, as SQLite itself reads it."""
    with closing(sqlite3.connect(path)) as db:
        assert [("ok",)] == db.execute("PRAGMA integrity_check").fetchall()
        return int(db.execute("SELECT count(*) FROM entries").fetchone()[0])


def test_reading_makes_no_book(own_home: Path) -> None:
    """Whoever only looks finds an empty book, and leaves nothing behind."""
    with reading() as db:
        assert 0 == how_many(db)
    assert not own_home.exists()


def test_writing_makes_one(own_home: Path, start: Start) -> None:
    """The first entry makes folder and book; one file, and nothing beside it."""
    start()

    assert ["book.sqlite3"] == [path.name for path in own_home.iterdir()]
    assert is_there() and book_file() == own_home / "book.sqlite3"


def test_an_empty_file_is_no_book_yet(own_home: Path, start: Start) -> None:
    """What was killed before its first byte is begun anew."""
    own_home.mkdir()
    book_file().touch()
    with reading() as db:
        assert () == rows(db)
    start()
    assert 1 == entries_in(book_file())


def test_how_a_book_is_written(start: Start) -> None:
    """It waits for the disk, has no log beside it, checks links, and waits for others."""
    start()
    with writing() as db:
        found = {
            name: db.execute(f"PRAGMA {name}").fetchone()[0]
            for name in ("synchronous", "journal_mode", "foreign_keys", "busy_timeout")
        }

    extra = 3
    assert {
        "synchronous": extra, "journal_mode": "delete", "foreign_keys": 1, "busy_timeout": 30_000
    } == found  # fmt: skip


def test_all_or_nothing(start: Start, draft: Callable[..., object]) -> None:
    """Where the work inside fails, nothing of it is kept."""
    start()
    with pytest.raises(RuntimeError), writing() as db:
        add_entry(db, 1, draft("turn"))  # type: ignore[arg-type]
        raise RuntimeError("no")

    assert 1 == entries_in(book_file())


@pytest.mark.parametrize(
    ("table", "change"),
    [
        ("entries", "UPDATE entries SET note = 'x'"),
        ("entries", "DELETE FROM entries"),
        ("batches", "UPDATE batches SET title = 'x'"),
        ("batches", "DELETE FROM batches"),
        ("recipes", "UPDATE recipes SET text = 'x'"),
        ("recipes", "DELETE FROM recipes"),
        ("entries", "INSERT OR REPLACE INTO entries SELECT * FROM entries"),
    ],
)
def test_what_stands_is_never_changed(table: str, change: str, start: Start) -> None:
    """The book itself refuses every change and every removal, whichever program asks."""
    start()
    with closing(sqlite3.connect(book_file())) as db:
        db.execute("PRAGMA recursive_triggers = ON")
        before = db.execute(f"SELECT * FROM {table}").fetchall()
        with pytest.raises(sqlite3.IntegrityError, match=r"never changed|constraint"):
            db.execute(change)
        assert before == db.execute(f"SELECT * FROM {table}").fetchall()


def test_a_newer_book(start: Start) -> None:
    """A book of a version to come is neither read nor touched."""
    start()
    with closing(sqlite3.connect(book_file())) as db:
        db.execute(f"PRAGMA user_version = {VERSION + 1}")
    before = book_file().read_bytes()

    for way in (reading, writing):
        with pytest.raises(FileUnreadable, match="written by a newer tarebook"), way():
            pass
    assert before == book_file().read_bytes()


def test_another_programs_database(own_home: Path) -> None:
    """A database that is no batch book is left alone."""
    own_home.mkdir()
    with closing(sqlite3.connect(book_file())) as db:
        db.execute("CREATE TABLE songs (title)")
    before = book_file().read_bytes()

    for way in (reading, writing):
        with pytest.raises(FileUnreadable, match="belongs to another program"), way():
            pass
    assert before == book_file().read_bytes()


@pytest.mark.parametrize(
    "data", [b"dear diary\n" * 500, b"x", b"\0" * 200, b"SQLite format 3\0" + b"\xff" * 999]
)
def test_no_database_at_all(data: bytes, own_home: Path) -> None:
    """A file that is something else is told as such, and left as it is."""
    own_home.mkdir()
    book_file().write_bytes(data)

    for way in (reading, writing):
        with pytest.raises(FileUnreadable, match=r"is no batch book|is damaged"), way():
            pass
    assert data == book_file().read_bytes()


def test_a_damaged_book(start: Start, add: Callable[..., object]) -> None:
    """Where pages are gone it is said, with what to do, and the file stays as it is."""
    start()
    for _ in range(200):
        add("note", note="turned the bags, and looked at every one of them" * 5)
    data = bytearray(book_file().read_bytes())
    data[8192:] = b"\xa5" * (len(data) - 8192)
    book_file().write_bytes(data)

    with pytest.raises(FileUnreadable, match=r"is damaged .* batch restore FILE"), reading() as db:
        entries_of(db, 1)
    with pytest.raises(FileUnreadable, match="is damaged"):
        add("turn")
    assert bytes(data) == book_file().read_bytes()


def test_a_table_that_is_gone(start: Start) -> None:
    """A book without one of its tables is damaged too."""
    start()
    with closing(sqlite3.connect(book_file())) as db:
        db.execute("DROP TABLE open_notes")

    with pytest.raises(FileUnreadable, match="is damaged"):
        start()


def test_a_folder_in_its_place(own_home: Path, start: Start) -> None:
    """A folder where the book should be is a fault in a sentence."""
    (own_home / "book.sqlite3").mkdir(parents=True)

    with pytest.raises(FileUnwritable):
        start()


def test_a_file_in_place_of_the_home(own_home: Path, start: Start) -> None:
    """A file where the folder should be is a fault in a sentence."""
    own_home.write_text("x", encoding="utf-8")

    with pytest.raises(FileUnwritable):
        start()


def test_a_full_book(
    start: Start, add: Callable[..., object], monkeypatch: pytest.MonkeyPatch
) -> None:
    """Where the disk has no room the entry is refused, and all that was there is there."""
    start()
    pages = book_file().stat().st_size // 4096
    connect = store._connect

    def full(file: Path | str, mode: str = "") -> sqlite3.Connection:
        db = connect(file, mode)
        db.execute(f"PRAGMA max_page_count = {pages}")
        return db

    before = book_file().read_bytes()
    with monkeypatch.context() as patch:
        patch.setattr(store, "_connect", full)
        with pytest.raises(FileUnwritable, match="the disk is full; nothing was changed"):
            for _ in range(50):
                add("note", note="x" * 4000)
    assert len(before) == len(book_file().read_bytes())
    kept = entries_in(book_file())
    add("note", note="there is room again")
    assert kept + 1 == entries_in(book_file())


FILLER = """
import resource, sys
from tarebook.records.keep import add_entry
from tarebook.records.entry import Draft, Kind
from tarebook.records.moment import Moment
from tarebook.records.store import writing
from tarebook.findings import TarebookError

limit = int(sys.argv[1])
resource.setrlimit(resource.RLIMIT_FSIZE, (limit, limit))
told = 0
try:
    for _ in range(100):
        with writing() as db:
            at = Moment(0, 0)
            add_entry(db, 1, Draft(kind=Kind.NOTE, happened=at, recorded=at, note="x" * 4000))
        told += 1
except TarebookError as fault:
    print(told, type(fault).__name__, fault)
"""


@pytest.mark.skipif(os.name == "nt", reason="limits of a process")
def test_a_disk_without_room(start: Start, own_home: Path) -> None:
    """Where no file may grow, each entry that was told is there, and the book is whole."""
    start()
    limit = book_file().stat().st_size + 40_000
    done = subprocess.run(
        [sys.executable, "-c", FILLER, str(limit)], capture_output=True, text=True, timeout=60
    )

    told, kind, *_ = done.stdout.split(" ")
    assert "FileUnwritable" == kind, done.stderr
    assert "full" in done.stdout and "nothing was changed" in done.stdout
    assert int(told) + 1 == entries_in(book_file())


@contextmanager
def as_nobody() -> Iterator[None]:
    """Root may write everywhere; somebody who is not may not."""
    if os.geteuid():
        yield
        return
    os.seteuid(65534)
    try:
        yield
    finally:
        os.seteuid(0)


@pytest.fixture
def open_folder() -> Iterator[Path]:
    """A folder that others may look into."""
    folder = Path(tempfile.mkdtemp())
    folder.chmod(0o755)
    yield folder
    for path in (folder, *folder.rglob("*")):
        path.chmod(0o755)
    shutil.rmtree(folder)


@pytest.mark.skipif(os.name == "nt", reason="permissions")
def test_a_read_only_folder(
    start: Start, open_folder: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Who may not write may still read, is told so, and leaves the book as it is."""
    monkeypatch.setenv("TAREBOOK_HOME", str(open_folder))
    start()
    before = book_file().read_bytes()
    book_file().chmod(0o444)
    open_folder.chmod(0o555)
    with as_nobody():
        with reading() as db:
            assert 1 == how_many(db)
        with pytest.raises(FileUnwritable, match="may not be written: see who owns it"):
            start()

    assert before == book_file().read_bytes()
    assert [book_file()] == list(open_folder.iterdir())


def test_another_holds_the_book(start: Start, monkeypatch: pytest.MonkeyPatch) -> None:
    """Who waits too long for another is told so; nothing is written."""
    start()
    monkeypatch.setattr(store, "WAIT_MS", 50)
    with closing(sqlite3.connect(book_file(), isolation_level=None)) as other:
        other.execute("BEGIN EXCLUSIVE")
        with pytest.raises(FileUnwritable, match="held by another program"), writing():
            pass
    with writing():
        pass


def test_a_fault_of_ours_is_not_put_on_the_disk(start: Start) -> None:
    """A broken rule of the tables is no fault of the file, and is not told as one."""
    start()
    with pytest.raises(sqlite3.IntegrityError), writing() as db:
        db.execute("INSERT INTO recipes (digest, text) SELECT digest, text FROM recipes")


def test_text_that_is_no_text(start: Start) -> None:
    """Bytes that are no letters, where letters should be, are damage."""
    start()
    with closing(sqlite3.connect(book_file())) as db:
        db.execute("DROP TRIGGER entries_UPDATE")
        db.execute("UPDATE entries SET note = CAST(x'ff41' AS TEXT)")
        db.commit()

    with pytest.raises(FileUnreadable, match="is damaged"), reading() as db:
        entries_of(db, 1)


def test_an_entry_of_no_known_kind(start: Start) -> None:
    """What an entry of a damaged book says and cannot be understood is told with its number."""
    start()
    with closing(sqlite3.connect(book_file())) as db:
        db.execute("DROP TRIGGER entries_UPDATE")
        db.execute("UPDATE entries SET kind = 'song'")
        db.commit()

    with (
        pytest.raises(FileUnreadable, match=r"entry 1\.1 .* cannot be understood"),
        reading() as db,
    ):
        entries_of(db, 1)


def test_a_batch_without_its_start(start: Start, add: Callable[..., object]) -> None:
    """In a damaged book a batch may lack its start: nothing more is written in it."""
    start()
    with closing(sqlite3.connect(book_file())) as db:
        db.execute("DROP TRIGGER entries_UPDATE")
        db.execute("UPDATE entries SET kind = 'turn'")
        db.commit()

    with pytest.raises(FileUnreadable, match="batch 1 has no start: the book is damaged"):
        add("turn")


def test_no_such_batch(start: Start) -> None:
    """A batch that is not there, and a number that none has, are the asker's slips."""
    for number in (1, 0, -1, 10**30):
        with pytest.raises(AskedWrongly, match="there is no batch"), reading() as db:
            entries_of(db, number)
    start()
    with pytest.raises(AskedWrongly, match="there is no batch 2; the last is 1"), reading() as db:
        entries_of(db, 2)


HALF = """
import os
from tarebook.records.entry import Draft, Kind
from tarebook.records.keep import add_entry
from tarebook.records.moment import Moment
from tarebook.records.store import writing

with writing() as db:
    db.execute("PRAGMA cache_size = 2")
    for _ in range(300):
        at = Moment(0, 0)
        add_entry(db, 1, Draft(kind=Kind.NOTE, happened=at, recorded=at, note="x" * 1000))
    os._exit(9)
"""


@pytest.mark.parametrize("first", ["read", "written", "backed up"])
def test_half_of_a_writing_is_undone(first: str, start: Start, tmp_path: Path) -> None:
    """A writer that dies with half of it in the file leaves the book as it was before."""
    start()
    before = book_file().read_bytes()
    done = subprocess.run([sys.executable, "-c", HALF], capture_output=True, timeout=60)
    assert (9, b"") == (done.returncode, done.stderr)
    assert before != book_file().read_bytes()
    assert book_file().with_name("book.sqlite3-journal").exists()

    if first == "written":
        start()
    elif first == "backed up":
        assert 1 == entries_in(backup(tmp_path / "kept.sqlite3"))
    with reading() as db:
        assert 1 == len(entries_of(db, 1))
    assert (2 if first == "written" else 1) == entries_in(book_file())


def test_a_new_book_that_lost_its_power(own_home: Path, start: Callable[..., object]) -> None:
    """Half of a first page with its journal beside it is taken back, and a book begun anew."""
    own_home.mkdir()
    book = book_file()
    with closing(sqlite3.connect(book, isolation_level=None)) as db:
        db.execute("PRAGMA journal_mode = PERSIST")
        db.execute("BEGIN IMMEDIATE")
        db.execute("CREATE TABLE t (a)")
        db.execute("PRAGMA cache_spill = 1")
        db.execute("INSERT INTO t VALUES (zeroblob(20000000))")  # more than is held in memory
        torn = own_home / "torn"
        shutil.copy(book, torn)
        shutil.copy(f"{book}-journal", f"{torn}-journal")
    torn.replace(book)
    Path(f"{torn}-journal").replace(f"{book}-journal")
    with book.open("r+b") as file:
        file.write(bytes(512))

    start()
    with reading() as db:
        assert [1] == [one.number for one in rows(db)]
