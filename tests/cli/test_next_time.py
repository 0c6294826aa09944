"""Notes for next time, where a recipe comes up again."""

from __future__ import annotations

import json
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

Tarebook = Callable[..., Any]
SCALE = ("scale", "juniper-venison", "--meat", "6lb")
PLAN = ("plan", "juniper-venison", "--meat", "6lb", "--now", "2026-11-25 09:00")
NOTE = "less pepper"


@pytest.fixture
def noted(tarebook: Tarebook) -> None:
    """A batch with a note for next time."""
    tarebook("batch", "start", "juniper-venison", "--meat", "6lb")
    tarebook("batch", "note", NOTE, "--next-time")


@pytest.mark.parametrize(
    "again", [SCALE, ("batch", "start", "juniper-venison")], ids=lambda a: a[0]
)
@pytest.mark.usefixtures("noted")
def test_shown_until_it_is_settled(tarebook: Tarebook, again: tuple[str, ...]) -> None:
    """With its number and how it comes off; taken up or dropped, it is not shown again."""
    out = tarebook(*again).out

    assert "\nFor next time\n1.2     less pepper (2" in out
    assert "tarebook batch take 1.2." in out and "tarebook\nbatch drop 1.2." in out
    tarebook("batch", "drop", "1.2")
    assert "For next time" not in tarebook(*again).out
    tarebook("batch", "undo", "1.3")
    assert NOTE in tarebook(*again).out
    tarebook("batch", "take", "1.2")
    assert NOTE not in tarebook(*again).out


@pytest.mark.usefixtures("noted")
def test_of_that_recipe_only(tarebook: Tarebook) -> None:
    """Another recipe shows nothing."""
    done = tarebook("scale", "cabin-rub-elk")

    assert "For next time" not in done.out
    assert "next time" not in done.err


@pytest.mark.usefixtures("noted")
def test_a_plan_of_two_recipes_says_of_which(tarebook: Tarebook) -> None:
    """Each recipe once, by its title, where there are several."""
    twice = tarebook("plan", "juniper-venison", "juniper-venison", *PLAN[4:]).out
    both = tarebook("plan", "juniper-venison", "cabin-rub-elk", *PLAN[4:]).out

    assert 1 == twice.count("less pepper")
    assert "\nFor next time\n" in twice
    assert 1 == both.count("less pepper")
    tarebook("batch", "start", "cabin-rub-elk")
    tarebook("batch", "note", "more salt", "--next-time")
    noted = tarebook("plan", "juniper-venison", "cabin-rub-elk", *PLAN[4:]).out
    assert "For next time, Juniper venison strips\n1.2 " in noted
    assert "\n2.2     more salt" in noted


@pytest.mark.usefixtures("noted")
def test_beside_what_goes_into_a_file(tarebook: Tarebook, tmp_path: Path) -> None:
    """Where standard output is no page, the note goes to standard error."""
    for asked in (
        [*SCALE, "--as", "csv"],
        [*SCALE, "-o", str(tmp_path / "sheet.txt")],
        [*PLAN, "--as", "ics"],
        [*PLAN, "-o", str(tmp_path / "plan.txt")],
        ["batch", "start", "juniper-venison", "--json"],
    ):
        done = tarebook(*asked)

        assert NOTE not in done.out
        assert "1.2     less pepper (2" in done.err


@pytest.mark.usefixtures("noted")
def test_a_key_of_the_data(tarebook: Tarebook) -> None:
    """``next_time`` lists them; without any it is empty."""
    found = json.loads(tarebook(*SCALE, "--json").out)["next_time"]

    assert [(1, 2, NOTE)] == [(one["batch"], one["entry"], one["text"]) for one in found]
    assert [] == json.loads(tarebook("scale", "cabin-rub-elk", "--json").out)["next_time"]
    dried = json.loads(tarebook("drying", "juniper-venison", "--json").out)["next_time"]
    (planned,) = json.loads(tarebook(*PLAN, "--json").out)["recipes"]
    assert found == dried == planned["next_time"]


def test_a_book_that_cannot_be_read_stops_nothing(tarebook: Tarebook, own_home: Path) -> None:
    """It is told of, and the command goes on."""
    own_home.mkdir()
    (own_home / "book.sqlite3").write_bytes(b"dear diary")
    done = tarebook("scale", "juniper-venison")

    assert 0 == done.status
    assert "Juniper venison" in done.out
    assert 1 == done.err.count("is no batch book")


@pytest.fixture
def two(tmp_path: Path, recipe_text: Callable[..., str]) -> tuple[str, str]:
    """Two recipes of one file name, in two folders."""
    for folder, title in (("venison", "Lake venison"), ("turkey", "Lake turkey")):
        (tmp_path / folder).mkdir()
        (tmp_path / folder / "strips.toml").write_text(recipe_text(title=title), "utf-8")
    first, second = (str(tmp_path / one / "strips.toml") for one in ("venison", "turkey"))
    return first, second


def test_two_recipes_of_one_file_name(tarebook: Tarebook, two: tuple[str, str]) -> None:
    """In two folders under two titles, each has its own notes; which is which is told."""
    first, second = two
    tarebook("batch", "start", first)
    tarebook("batch", "note", NOTE, "--next-time")
    scaled = tarebook("scale", second)

    assert NOTE not in scaled.out
    assert 'that of "Lake venison", another title' in scaled.err
    started = tarebook("batch", "start", second)
    assert "it goes by strips-lake-turkey in the book" in started.err
    assert "--renamed" in started.err
    assert NOTE in tarebook("scale", first).out
    assert ("", "") == (tarebook("scale", second).err, tarebook("scale", first).err)


def test_a_recipe_under_a_new_title(
    tarebook: Tarebook, tmp_path: Path, recipe_text: Callable[..., str]
) -> None:
    """Told to be the same, it has the notes of the old title too."""
    path = tmp_path / "strips.toml"
    path.write_text(recipe_text(title="Lake venison"), "utf-8")
    tarebook("batch", "start", str(path))
    tarebook("batch", "note", NOTE, "--next-time")
    path.write_text(recipe_text(title="Lake venison, mild"), "utf-8")

    assert NOTE in tarebook("batch", "start", str(path), "--renamed").out
    done = tarebook("scale", str(path))
    assert NOTE in done.out
    assert "" == done.err


def test_asked_for_by_path_or_by_name(tarebook: Tarebook, two: tuple[str, str]) -> None:
    """A path is of the recipe in that file; a bare name, of what goes by it in the book."""
    first, second = two
    for path in two:
        tarebook("batch", "start", path)
        tarebook("batch", "note", NOTE, "--next-time")

    def listed(recipe: str) -> list[int]:
        found = json.loads(tarebook("batch", "list", "--recipe", recipe, "--json").out)
        return [one["batch"] for one in found]

    assert [[1], [2]] == [listed(first), listed(second)]
    assert [[1], [2]] == [listed("strips"), listed("strips-lake-turkey")]
    assert "2.2 " in tarebook("batch", "next", second).out
    assert 2 == tarebook("batch", "list", "--recipe", " ").status


def test_a_note_is_taken_up_in_its_own_recipe(
    tarebook: Tarebook, two: tuple[str, str], own_home: Path
) -> None:
    """Where another recipe has the name by now, the file is asked for, and nothing written."""
    first, second = two
    tarebook("batch", "start", first)
    tarebook("batch", "note", NOTE, "--next-time")
    (own_home / "recipes").mkdir()
    (own_home / "recipes" / "strips.toml").write_bytes(Path(second).read_bytes())
    done = tarebook("batch", "take", "1.2")

    assert 2 == done.status
    assert "--recipe FILE names the recipe" in done.err
    taken = tarebook("batch", "take", "1.2", "--recipe", first)
    assert 0 == taken.status
    assert "reads as it did in batch 1" in taken.err and "undo 1.3 takes it back" in taken.err


def test_a_changed_recipe_keeps_its_earlier_wordings(
    tarebook: Tarebook, tmp_path: Path, recipe_text: Callable[..., str]
) -> None:
    """From a note to the change to the next batch: both wordings stay, whole, with what changed."""
    path = tmp_path / "lake.toml"
    before = recipe_text(marinade={"soy-sauce": "1 cup"})
    after = recipe_text(marinade={"soy-sauce": "3/4 cup"})
    path.write_text(before, "utf-8")
    tarebook("batch", "start", str(path))
    tarebook("batch", "note", "less salt", "--next-time")
    path.write_text(after, "utf-8")
    tarebook("batch", "take", "1.2", "--recipe", str(path))
    tarebook("batch", "start", str(path))
    page = tarebook("batch", "wordings", str(path)).out
    data = json.loads(tarebook("batch", "wordings", "lake", "--json").out)

    assert "lake, 2 wordings" in page
    assert '; batch 2; with "less salt" of 1.2' in page
    assert '- "soy-sauce" = "1 cup"' in page and '+ "soy-sauce" = "3/4 cup"' in page
    assert [before, after] == [one["recipe_text"] for one in data]
    assert [[1], [2]] == [one["batches"] for one in data]
    whole = [tarebook("batch", "wordings", "lake", "--whole", n).out for n in ("1", "2")]
    assert [before, after] == whole
    assert before == tarebook("batch", "show", "1", "--recipe").out
    assert 2 == tarebook("batch", "wordings", "lake", "--whole", "3").status
    assert 2 == tarebook("batch", "wordings", "elk").status


@pytest.mark.parametrize("asked", [SCALE, PLAN, ("drying", "juniper-venison")], ids=lambda a: a[0])
def test_without_a_book_no_database_is_loaded(asked: tuple[str, ...], own_home: Path) -> None:
    """A cook who keeps no book waits for none, and finds none begun."""
    code = (
        "import sys\n"
        "from tarebook.cli.main import run\n"
        "try:\n    run(sys.argv[1:])\nexcept SystemExit:\n    pass\n"
        "print('sqlite3' in sys.modules, file=sys.stderr)\n"
    )
    done = subprocess.run(
        [sys.executable, "-c", code, *asked], capture_output=True, text=True, check=True
    )

    assert done.stdout
    assert "False" == done.stderr.splitlines()[-1]
    assert not own_home.exists()


def test_another_kitchens_recipe_of_the_same_name(
    tarebook: Tarebook, two: tuple[str, str], tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """It is told as it is taken in, once."""
    first, second = two
    tarebook("batch", "start", second)
    file = str(tmp_path / "book.toml")
    tarebook("batch", "export", "-o", file)
    monkeypatch.setenv("TAREBOOK_HOME", str(tmp_path / "elsewhere"))
    tarebook("batch", "start", first)
    done = tarebook("batch", "import", file)

    assert 0 == done.status
    assert '"Lake turkey" goes by strips, as "Lake venison" does here' in done.err
    assert "" == tarebook("batch", "import", file).err
