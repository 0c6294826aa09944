"""Notes for next time, where a recipe comes up again."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from tarebook.cli.next_time import tell_next_time


def test_shown_with_how_they_come_off(
    tarebook: Callable[..., Any], capsys: pytest.CaptureFixture[str]
) -> None:
    """The open notes of this recipe, and how to take them up or strike them out."""
    tarebook("batch", "start", "juniper-venison", "--meat", "6lb")
    tarebook("batch", "note", "less", "pepper", "--next-time")
    capsys.readouterr()
    tell_next_time("juniper-venison")
    out, err = capsys.readouterr()

    assert "" == err
    assert out.startswith("For next time\n1.2     less pepper (2")
    assert "tarebook batch take 1.2." in out and "tarebook\nbatch drop 1.2." in out
    tell_next_time("cabin-rub-elk")
    assert ("", "") == capsys.readouterr()


def test_a_book_that_cannot_be_read_stops_nothing(
    own_home: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """It is told of, and the command goes on."""
    own_home.mkdir()
    (own_home / "book.sqlite3").write_bytes(b"dear diary")
    tell_next_time("juniper-venison")
    out, err = capsys.readouterr()

    assert "" == out
    assert err.startswith("note: ") and "is no batch book" in err
