"""Notes for next time, as other commands ask for them."""

from __future__ import annotations

import subprocess
import sys
from collections.abc import Callable
from pathlib import Path

import pytest

from tarebook.findings import FileUnreadable
from tarebook.records import Known, NextTime, next_time
from tarebook.records.place import book_file

ASK = """
import sys
from tarebook.records import next_time
found = next_time(sys.argv[1], "Lake strips")
print(found == ((), ""), "sqlite3" in sys.modules)
"""


def test_without_a_book_nothing_is_loaded(own_home: Path) -> None:
    """Who keeps no book waits for none: no database is loaded, no folder made."""
    done = subprocess.run(
        [sys.executable, "-c", ASK, "lake"], capture_output=True, text=True, check=True
    )

    assert "True False\n" == done.stdout
    assert not own_home.exists()


def test_the_notes_of_a_recipe(start: Callable[..., object], add: Callable[..., object]) -> None:
    """The oldest first, those of this recipe only, with where they stand."""
    start("lake")
    start("bison")
    add("note", batch=1, what="next-time", note="less pepper")
    add("note", batch=2, what="next-time", note="more salt")
    add("note", batch=1, note="turned the bags")

    shown = (NextTime(1, 2, "less pepper", "2026-11-25"),)
    assert Known(shown) == next_time("lake", "Lake strips")
    assert Known(shown) == next_time("ours/lake.toml", "Lake strips")
    assert Known() == next_time("elk", "Lake strips")


def test_a_book_that_cannot_be_read(own_home: Path) -> None:
    """A damaged book is told, not passed over: a note might be in it."""
    own_home.mkdir()
    book_file().write_bytes(b"x" * 5000)

    with pytest.raises(FileUnreadable):
        next_time("lake", "Lake strips")
