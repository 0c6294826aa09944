"""Many recipes at once come out as one after the other."""

from __future__ import annotations

import concurrent.futures
import os
import shutil
import signal
import subprocess
import sys
import time
from pathlib import Path
from typing import Any

import pytest

from tarebook.recipe.load import recipe_bytes, shipped_recipes
from tarebook.shelf import many
from tarebook.shelf.many import Wanted, rows_of, rows_of_many
from tarebook.where import folder

WANTED = [
    Wanted(name, f"{name}.toml", recipe_bytes(name)[0] if name != "bad" else b"title = 3")
    for name in (*shipped_recipes(), "bad")
]


def test_the_same_on_many_cores(monkeypatch: pytest.MonkeyPatch) -> None:
    """In the same order, to the last digit, a faulty one among them."""
    monkeypatch.setattr(many, "_A_TASK", 2)
    monkeypatch.setattr(many, "cores", lambda: 2)
    found = list(rows_of_many(WANTED, "metric", at_once=5))

    assert [5, len(WANTED) - 5] == [len(rows) for rows in found]
    assert rows_of(WANTED, "metric") == [row for rows in found for row in rows]


def test_rows_made_in_arrays_are_the_same() -> None:
    """So that it does not matter with how many others a recipe was worked out."""
    assert rows_of(WANTED, "metric") == rows_of(WANTED, "metric", in_arrays=True)


def test_where_no_process_can_be_had(monkeypatch: pytest.MonkeyPatch) -> None:
    """This one does it, from where the others stopped."""

    class Stopped(concurrent.futures.Executor):
        def __init__(self, *_: Any, **__: Any) -> None:
            self.calls = 0

        def map(self, *args: Any, **more: Any) -> Any:
            self.calls += 1
            if self.calls > 1:
                raise PermissionError("no more processes")
            return map(*args)

    monkeypatch.setattr(concurrent.futures, "ProcessPoolExecutor", Stopped)
    found = list(rows_of_many(WANTED, "basic", at_once=4))

    assert [4, 4, 1] == [len(rows) for rows in found]
    assert rows_of(WANTED, "basic") == [row for rows in found for row in rows]


@pytest.mark.slow
@pytest.mark.skipif(os.name == "nt", reason="signals of this system")
def test_stopped_in_the_middle(tmp_path: Path) -> None:
    """Ctrl-C ends all of it, quietly; what was done by then is kept."""
    recipes = tmp_path / "many"
    recipes.mkdir()
    text = (folder("recipes") / "juniper-venison.toml").read_text("utf-8")
    for number in range(1600):
        (recipes / f"r{number}.toml").write_text(text.replace("Juniper", f"J{number}"), "utf-8")
    home = tmp_path / "home"
    command = [sys.executable, "-m", "tarebook", "list", str(recipes)]
    env = {**os.environ, "TAREBOOK_HOME": str(home)}
    started = subprocess.Popen(
        command, env=env, stdout=subprocess.PIPE, stderr=subprocess.PIPE, start_new_session=True
    )
    kept = home / "cache" / "shelf.sqlite3"
    until = time.monotonic() + 60
    while not kept.exists() and time.monotonic() < until:
        time.sleep(0.05)
    os.killpg(started.pid, signal.SIGINT)
    out, err = started.communicate(timeout=60)

    assert (130, b"") == (started.returncode, out)
    assert b"" == err
    assert kept.stat().st_size > 0
    shutil.rmtree(recipes)
