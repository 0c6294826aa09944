"""Killed at any instant, a writer loses nothing that was told as kept."""

from __future__ import annotations

import importlib.util
import os
from pathlib import Path

import pytest

SCRIPT = Path(__file__).with_name("crash.py")


@pytest.mark.skipif(os.name == "nt", reason="signals")
def test_a_short_slice(own_home: Path) -> None:
    """Thirty writers killed: no entry lost, no book damaged, no backup broken."""
    spec = importlib.util.spec_from_file_location("crash", SCRIPT)
    assert spec is not None and spec.loader is not None
    crash = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(crash)
    own_home.mkdir()
    found = crash.crash(own_home, 30, seed=os.getpid())

    assert (30, 0, 0, 0) == (found.kills, found.lost, found.corrupt, found.backups_broken)
    assert found.told > 0 and found.midway > 0
