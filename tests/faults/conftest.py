"""One furnished house for all cells, copied for each."""

from __future__ import annotations

import os
import shutil
import sys
import tempfile
import time
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from functools import cache
from pathlib import Path

import pytest

sys.path.insert(0, str(Path(__file__).parent))

from fault_box import FINE, Box, Opened, Usual, copied, open_to_all, run_here
from fault_calls import Road, call_of, named_in_examples, typed_for
from fault_interrupt import Watch

from tarebook.where import folder

TESTS = Path(__file__).parents[1]
ZONE = "America/Chicago"
# Thousands of entries wait for their disk; of what a power cut leaves nothing is tried here.
MEMORY = next((one for one in ("/dev/shm",) if os.access(one, os.W_OK | os.X_OK)), None)
PANTRY = '[have]\nbrown-sugar = "1 lb"\n'
BOTTLES = (
    "cove-soy --like soy-sauce --serving 17g",
    "soy-sauce --like soy-sauce --serving 17g --sodium 900mg",
    "brown-sugar --like brown-sugar --serving 4g --sugars 4g",
)
ENTRIES = (
    "start juniper-venison --meat 6lb",
    "weigh raw 6 lb 1 oz",
    "note less pepper --next-time",
    "weigh finished 2 lb 3 oz",
    "export -o book.toml",
    "backup kept.sqlite3",
)


@pytest.fixture(scope="session")
def furnished(keep_answers: Callable[[], None]) -> Iterator[Path]:
    """A house in which every command's example works."""
    top = Path(tempfile.mkdtemp(prefix="house-", dir=MEMORY))
    home, work, had = top / "home", top / "work", Path.cwd()
    (home / "recipes").mkdir(parents=True)
    (work / "recipes").mkdir(parents=True)
    for name in ("juniper-venison", "woodland-mushrooms"):
        shutil.copy(folder("recipes") / f"{name}.toml", work / "recipes")
    for file in named_in_examples(TESTS):
        shutil.copy(file, work)
    recipe = (folder("recipes") / "juniper-venison.toml").read_text(encoding="utf-8")
    # Under names that come with tarebook, so that every example reads the cook's own.
    (home / "recipes" / "juniper-venison.toml").write_text(recipe, encoding="utf-8")
    (home / "pantry.toml").write_text(PANTRY, encoding="utf-8")
    with pytest.MonkeyPatch.context() as patched:
        patched.setenv("TAREBOOK_HOME", str(home))
        patched.setenv("TZ", ZONE)
        patched.chdir(work)
        keep_answers()
        for words in (
            *(["foods", "add", *line.split()] for line in BOTTLES),
            ["kitchen", "set", "dryer.trays", "4"],
            ["list"],
            *(["batch", *line.split()] for line in ENTRIES),
        ):
            done = run_here(words)
            assert (FINE, "") == (done.status, done.fault), (words, done)
    assert Path.cwd() == had
    open_to_all(top)
    yield top
    shutil.rmtree(top)


@pytest.fixture(scope="session")
def usual(furnished: Path) -> Callable[[Road], Usual]:
    """What a command does when nothing is wrong; each is run once."""
    opened = Opened()

    @cache
    def look(road: Road) -> Usual:
        with house(furnished) as box, pytest.MonkeyPatch.context() as patched:
            settle_in(box, patched)
            box.settle()
            with opened.below(box.top) as found:
                done = box.run(call_of(road), typed=typed_for(road))
            changed, calls = box.touched(), Watch("call")
            box.run(call_of(road), typed=typed_for(road), watch=calls)
            return Usual(done, tuple(found), changed, calls.count)

    return look


@pytest.fixture
def box(furnished: Path, monkeypatch: pytest.MonkeyPatch) -> Iterator[Box]:
    """A copy of the house, and the working folder in it."""
    with house(furnished) as found:
        settle_in(found, monkeypatch)
        yield found
        os.chdir("/")


@contextmanager
def house(furnished: Path) -> Iterator[Box]:
    """A copy of the house, gone at the end."""
    top = Path(tempfile.mkdtemp(prefix="cell-", dir=MEMORY))
    top.chmod(0o755)
    try:
        yield copied(furnished, top / "house")
    finally:
        shutil.rmtree(top)


def settle_in(box: Box, patched: pytest.MonkeyPatch) -> None:
    """Make a box the home and the working folder."""
    patched.setenv("TAREBOOK_HOME", str(box.home))
    patched.setenv("TZ", ZONE)
    for name in ("SOURCE_DATE_EPOCH", "PYTHONIOENCODING", "TAREBOOK_FDC_KEY"):
        patched.delenv(name, raising=False)
    patched.chdir(box.work)
    time.tzset()
