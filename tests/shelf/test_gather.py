"""Recipes are worked out once, and never told from what is stale."""

from __future__ import annotations

import shutil
import sqlite3
import sys
from pathlib import Path

import pytest

from tarebook.findings import FileUnreadable
from tarebook.recipe.load import shipped_recipes
from tarebook.shelf import kept
from tarebook.shelf.gather import gather
from tarebook.shelf.rows import Row
from tarebook.where import cache, folder


@pytest.fixture
def shelf(tmp_path: Path) -> Path:
    """A folder of the shipped recipes."""
    return Path(shutil.copytree(folder("recipes"), tmp_path / "recipes"))


@pytest.fixture
def worked_out(monkeypatch: pytest.MonkeyPatch) -> list[str]:
    """The names of recipes that are really worked out, as it happens."""
    names: list[str] = []
    module = sys.modules["tarebook.shelf.gather"]
    true = module.row_of

    def noted(name: str, data: bytes, *, file: str) -> Row:
        names.append(name)
        found: Row = true(name, data, file=file)
        return found

    monkeypatch.setattr(module, "row_of", noted)
    return names


def test_without_folders_the_houses_own_and_the_shipped(own_home: Path) -> None:
    """Own recipes stand among the shipped ones, by name."""
    own = own_home / "recipes"
    own.mkdir(parents=True)
    shutil.copy(folder("recipes") / "juniper-venison.toml", own / "grandmothers.toml")

    assert sorted([*shipped_recipes(), "grandmothers"]) == [one.name for one in gather()]


def test_a_second_time_nothing_is_worked_out(shelf: Path, worked_out: list[str]) -> None:
    """And the rows are the same to the last digit."""
    first = gather([shelf])
    count = len(worked_out)

    assert first == gather([shelf])
    assert len(shipped_recipes()) == count == len(worked_out)


def test_a_changed_recipe_is_worked_out_again(shelf: Path, worked_out: list[str]) -> None:
    """That one alone, and its row is the new one."""
    before = {one.name: one for one in gather([shelf])}
    path = shelf / "juniper-venison.toml"
    path.write_text(path.read_text("utf-8").replace('soy-sauce = "1/2 cup"', 'soy-sauce = "1 cup"'))
    worked_out.clear()
    after = {one.name: one for one in gather([shelf])}

    assert [str(path)] == worked_out
    assert before[str(path)].sodium_mg != after[str(path)].sodium_mg


@pytest.mark.parametrize("what", ["tables", "bottles", "program"])
def test_nothing_kept_outlives_what_it_rests_on(
    what: str, shelf: Path, worked_out: list[str], monkeypatch: pytest.MonkeyPatch,
    own_home: Path, tmp_path: Path,
) -> None:  # fmt: skip
    """A table, a bottle or the program itself changes: all is worked out again."""
    gather([shelf])
    worked_out.clear()
    if what == "tables":
        copy = Path(shutil.copytree(folder("reference"), tmp_path / "reference"))
        (copy / "nutrients.csv").write_text(
            (copy / "nutrients.csv").read_text("utf-8") + "\n", "utf-8"
        )
        monkeypatch.setattr(kept, "folder", lambda _: copy)
    elif what == "bottles":
        (own_home / "foods").mkdir(parents=True)
        (own_home / "foods" / "lake-soy.toml").write_text("x = 1", "utf-8")
    else:
        monkeypatch.setattr(kept.sys, "version", "another")
    gather([shelf])

    assert len(shipped_recipes()) == len(worked_out)


@pytest.mark.parametrize("damage", [b"", b"no database", None])
def test_a_damaged_file_costs_time_and_nothing_else(shelf: Path, damage: bytes | None) -> None:
    """Whatever became of what was kept, the rows come out the same."""
    first = gather([shelf])
    path = cache() / "shelf.sqlite3"
    if damage is None:
        with sqlite3.connect(path) as opened:
            opened.execute("DROP TABLE kept")
    else:
        path.write_bytes(damage)

    assert first == gather([shelf])


def test_a_house_that_cannot_be_written_is_listed_all_the_same(shelf: Path, own_home: Path) -> None:
    """A file where the folder should be: nothing is kept, all is told."""
    own_home.write_text("not a folder", "utf-8")

    assert len(shipped_recipes()) == len(gather([shelf]))


def test_a_long_wait_is_told_once(shelf: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """With how many recipes must be worked out; a short one is not."""
    told: list[int] = []
    gather([shelf], tell=told.append)
    assert [] == told
    (cache() / "shelf.sqlite3").unlink()
    monkeypatch.setattr(sys.modules["tarebook.shelf.gather"], "_AT_ONCE", 2)
    gather([shelf], tell=told.append)

    assert [len(shipped_recipes())] == told


def test_err_a_folder_without_recipes(tmp_path: Path) -> None:
    """It is said, and nothing is listed."""
    with pytest.raises(FileUnreadable, match=r"there is no \.toml file"):
        gather([tmp_path])
