"""Recipes are worked out once, and never told from what is stale."""

from __future__ import annotations

import os
import shutil
import sqlite3
import sys
from collections.abc import Sequence
from contextlib import closing
from pathlib import Path
from typing import Any

import pytest

from tarebook.findings import FileUnreadable
from tarebook.lessons.learn import learn
from tarebook.nutrition.facts import OwnYield
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
    module = sys.modules["tarebook.shelf.many"]
    true = module.row_of

    def noted(name: str, data: bytes, **more: Any) -> Row:
        names.append(name)
        found: Row = true(name, data, **more)
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


@pytest.mark.parametrize("what", ["tables", "set", "python", "program"])
def test_nothing_kept_outlives_what_it_rests_on(
    what: str, shelf: Path, worked_out: list[str], monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    """A table, the measuring set, Python or the program itself changes: all is worked out again."""
    gather([shelf])
    worked_out.clear()
    drawer = "basic"
    if what == "tables":
        copy = Path(shutil.copytree(folder("reference"), tmp_path / "reference"))
        (copy / "nutrients.csv").write_text(
            (copy / "nutrients.csv").read_text("utf-8") + "\n", "utf-8"
        )
        monkeypatch.setattr(kept, "folder", lambda _: copy)
    elif what == "set":
        drawer = "metric"
    elif what == "python":
        monkeypatch.setattr(kept.sys, "version", "another")
    else:
        package = Path(kept.__file__).parents[1]
        copy = Path(shutil.copytree(package, tmp_path / "package"))
        table = copy / "uptake" / "table.u16"  # no code, and figures rest on it
        table.write_bytes(table.read_bytes()[:-1] + b"\0")
        monkeypatch.setattr(kept, "__file__", str(copy / "shelf" / "kept.py"))
    gather([shelf], drawer=drawer)

    assert len(shipped_recipes()) == len(worked_out)


@pytest.mark.parametrize(
    "damage",
    [
        b"",
        b"no database",
        "DROP TABLE kept_rows",
        "UPDATE kept_rows SET row = '[]'",
        "UPDATE kept_rows SET row = '{'",
        "UPDATE kept_rows SET row = '[null, \"\"]'",
    ],
)
def test_a_damaged_file_costs_time_and_nothing_else(shelf: Path, damage: bytes | str) -> None:
    """Whatever became of what was kept, the rows come out the same."""
    first = gather([shelf])
    path = cache() / "shelf.sqlite3"
    if isinstance(damage, str):
        with closing(sqlite3.connect(path)) as opened, opened:
            opened.execute(damage)
    else:
        path.write_bytes(damage)

    assert first == gather([shelf])


def test_a_house_that_cannot_be_written_is_listed_all_the_same(shelf: Path, own_home: Path) -> None:
    """A file where the folder should be: nothing is kept, all is told."""
    own_home.write_text("not a folder", "utf-8")

    assert len(shipped_recipes()) == len(gather([shelf]))


def _in_twos(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(sys.modules["tarebook.shelf.gather"], "_AT_ONCE", 2)


def test_how_far_it_is_is_told_again_and_again(
    shelf: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """How many of how many are worked out, heap by heap; nothing where all were kept."""
    told: list[tuple[int, int]] = []
    _in_twos(monkeypatch)
    gather([shelf], tell=lambda done, of: told.append((done, of)))

    many = len(shipped_recipes())
    assert [(done, many) for done in (*range(2, many, 2), many)] == told
    gather([shelf], tell=lambda done, of: told.append((done, of)))
    assert (many, many) == told[-1] and len(told) == (many + 1) // 2


def test_what_was_worked_out_before_ctrl_c_is_kept(
    shelf: Path, monkeypatch: pytest.MonkeyPatch, worked_out: list[str]
) -> None:
    """Stopped after the second heap, the next time begins with the third."""
    _in_twos(monkeypatch)

    def stopped(done: int, of: int) -> None:
        if done == 4:
            raise KeyboardInterrupt

    with pytest.raises(KeyboardInterrupt):
        gather([shelf], tell=stopped)
    assert 4 == len(worked_out)
    gather([shelf])
    assert len(shipped_recipes()) == len(worked_out) == len({*worked_out})


def test_err_a_folder_without_recipes(tmp_path: Path) -> None:
    """It is said, and nothing is listed."""
    with pytest.raises(FileUnreadable, match=r"there is no \.toml file"):
        gather([tmp_path])


BOTTLE = 'like = "soy-sauce"\n[panel]\nserving = "1 Tbsp (17 g)"\nsodium = "{} mg"\n'


def test_a_bottle_changes_what_names_it_and_nothing_else(
    shelf: Path, worked_out: list[str], own_home: Path
) -> None:
    """A new one, another figure on it, none any more: each time only recipes that name it."""
    own = own_home / "foods" / "soy-sauce.toml"
    own.parent.mkdir(parents=True)
    naming = [str(path) for path in sorted(shelf.iterdir()) if "\nsoy-sauce =" in path.read_text()]
    first = gather([shelf])
    seen = [first]
    for text in (BOTTLE.format(575), BOTTLE.format(875), BOTTLE.format(575)):
        worked_out.clear()
        own.write_text(text, "utf-8")
        seen.append(gather([shelf]))
        assert naming == worked_out
    own.unlink()
    assert first == gather([shelf])
    assert 0 < len(naming) < len(shipped_recipes())
    changed = [(a.name, a != b) for a, b in zip(seen[1], seen[2], strict=True)]
    assert naming == [name for name, differs in changed if differs]


def test_a_bottle_may_be_named_behind_food(shelf: Path, own_home: Path) -> None:
    """A recipe that names it only behind ``food =``, in another spelling, is worked out anew."""
    path = shelf / "own.toml"
    path.write_text(
        'title = "x"\n[meat]\nfood = "deer"\namount = "1 kg"\n[marinade]\n'
        'dark = { food = "Lake  Soy", amount = "1 cup" }\n',
        "utf-8",
    )
    assert gather([path])[0].fault
    own = own_home / "foods" / "lake-soy.toml"
    own.parent.mkdir(parents=True)
    own.write_text(BOTTLE.format(575), "utf-8")
    little = gather([path])[0]
    own.write_text(BOTTLE.format(1575), "utf-8")
    much = gather([path])[0]

    assert little.sodium_mg and much.sodium_mg
    assert little.sodium_mg[2] < much.sodium_mg[0]
    own.write_text("like = 3", "utf-8")
    assert gather([path])[0].fault


def test_an_edit_in_place_is_seen(shelf: Path) -> None:
    """Same name, same size, same time of change: what stands in the file counts."""
    path = shelf / "juniper-venison.toml"
    state = path.stat()
    before = gather([path])[0]
    path.write_text(path.read_text("utf-8").replace('"1/2 cup"', '"3/4 cup"'), "utf-8")
    os.utime(path, ns=(state.st_atime_ns, state.st_mtime_ns))

    assert (state.st_size, state.st_mtime_ns) == (path.stat().st_size, path.stat().st_mtime_ns)
    after = gather([path])[0]
    assert before.sodium_mg and after.sodium_mg and after.sodium_mg[0] > before.sodium_mg[0]


def test_what_own_batches_say_is_part_of_it(shelf: Path, worked_out: list[str]) -> None:
    """A recipe whose batches say something new is worked out again, and by what they say."""
    file = str(shelf / "juniper-venison.toml")
    before = {row.name: row for row in gather([shelf])}
    asked = []

    def own_yields(recipes: Sequence[tuple[str, bytes]]) -> dict[str, OwnYield]:
        asked.extend(name for name, _ in recipes)
        said = learn([0.30, 0.31])
        assert said is not None
        return {file: said}

    worked_out.clear()
    after = {row.name: row for row in gather([shelf], own_yields=own_yields)}
    assert ([file], len(shipped_recipes())) == (worked_out, len(asked))
    assert [file] == [name for name, row in after.items() if row != before[name]]
    worked_out.clear()
    assert after == {row.name: row for row in gather([shelf], own_yields=own_yields)}
    assert before == {row.name: row for row in gather([shelf])}
    assert [] == worked_out


def test_a_file_beside_is_not_taken_for_a_recipe(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Whatever lies in the folder one happens to stand in, the list is of the house."""
    (tmp_path / "juniper-venison").write_text("nothing", "utf-8")
    monkeypatch.chdir(tmp_path)

    assert [] == [one.name for one in gather() if one.fault]
