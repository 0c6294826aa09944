"""Notes for next time, as other commands ask for them."""

from __future__ import annotations

import subprocess
import sys
from collections.abc import Callable
from pathlib import Path

import pytest

from tarebook.findings import FileUnreadable
from tarebook.records import Known, NextTime, next_time, recipe_key
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


@pytest.mark.parametrize(
    ("which", "key"),
    [
        ("juniper-venison", "juniper-venison"),
        ("recipes/juniper-venison.toml", "juniper-venison"),
        ("/home/ours/Juniper Venison.toml", "juniper-venison"),
        ("réno.toml", "réno"),
        ("x" * 300, "x" * 100),
        ("...", "recipe"),
    ],
)
def test_one_name_for_a_recipe(which: str, key: str) -> None:
    """By name or by path it is the same recipe."""
    assert key == recipe_key(which)


def test_a_recipe_from_a_pipe_goes_by_its_title() -> None:
    """What has no name goes by its title, whether it is asked for or was opened."""
    assert "lake-strips-no-2" == recipe_key("-", "Lake strips, no. 2")
    assert "lake-strips-no-2" == recipe_key("<standard input>", "Lake strips, no. 2")
