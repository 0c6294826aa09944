"""A power cut at any instant loses nothing that was told as kept, and the disk played is one."""

from __future__ import annotations

import importlib.util
import os
import random
import shutil
import subprocess
from functools import cache
from pathlib import Path
from types import ModuleType

import pytest

SCRIPT = Path(__file__).with_name("power.py")


@cache
def power() -> ModuleType:
    """Return the script."""
    spec = importlib.util.spec_from_file_location("power", SCRIPT)
    assert spec is not None and spec.loader is not None
    found = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(found)
    return found


def traces() -> bool:
    """Whether this machine lets calls be noted."""
    if shutil.which("strace") is None:
        return False
    return subprocess.run(["strace", "-o", os.devnull, "true"], capture_output=True).returncode == 0


@pytest.mark.skipif(not traces(), reason="no strace")
def test_a_short_slice(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """A hundred cuts: no entry lost, no book damaged, and each can be written in again."""
    monkeypatch.setenv("TAREBOOK_HOME", str(tmp_path))
    found = power().power(tmp_path, 100, entries=8, seed=os.getpid())

    assert (100, 0, 0) == (found.cuts, found.lost, found.corrupt)
    assert found.told > 0 and found.unsynced > 0


def left(calls: list[tuple[str, str, bytes, int]], into: Path) -> set[bytes | None]:
    """Return all that a cut left of a file, over many."""
    found: set[bytes | None] = set()
    for seed in range(200):
        disk = power().Disk("/top")
        for call in calls:
            disk.do(power().Call(*call))
        here = into / str(seed)
        here.mkdir()
        disk.cut(random.Random(seed), here)
        file = here / "top" / "book"
        found.add(file.read_bytes() if file.exists() else None)
    return found


MADE = [("create", "/top/book", b"", 0), ("sync", "/top", b"", 0)]
ONE, TWO = b"a" * 512, b"b" * 512


def test_what_was_synced_stays(tmp_path: Path) -> None:
    """A file that was synced, with its name, is there whole after every cut."""
    calls = [*MADE, ("write", "/top/book", ONE, 0), ("sync", "/top/book", b"", 0)]

    assert {ONE} == left(calls, tmp_path)


def test_what_was_not_may_be_missing(tmp_path: Path) -> None:
    """A write may be there, or not, or by half; a name that was not synced may be missing."""
    later = [*MADE, ("write", "/top/book", ONE + TWO, 0)]
    found = left(later, tmp_path)

    assert {b"", ONE, ONE + TWO, bytes(512) + TWO} <= found
    (tmp_path / "name").mkdir()
    assert None in left([MADE[0], ("sync", "/top/book", b"", 0)], tmp_path / "name")


def test_a_removal_that_was_not_synced_may_come_back(tmp_path: Path) -> None:
    """That is why the book waits for its folder too: a journal that comes back undoes an entry."""
    calls = [
        *MADE,
        ("write", "/top/book", ONE, 0),
        ("sync", "/top/book", b"", 0),
        ("unlink", "/top/book", b"", 0),
    ]
    assert {ONE, None} == left(calls, tmp_path)
    (tmp_path / "synced").mkdir()
    assert {None} == left([*calls, ("sync", "/top", b"", 0)], tmp_path / "synced")
