"""All of the cook's own bottles together: read, faulty ones told, and set aside."""

from __future__ import annotations

from pathlib import Path

import pytest

from tarebook.findings import FileUnreadable, FileUnwritable
from tarebook.recipe.bottles import own_bottle, own_foods
from tarebook.recipe.own_bottles import every_bottle, set_aside


@pytest.fixture
def folder(own_home: Path) -> Path:
    """Three bottles, one of them faulty."""
    foods = own_home / "foods"
    foods.mkdir(parents=True)
    for name, like in (("reed-honey", "honey"), ("lakeside-soy", "shoyu"), ("bad", "xyzzy")):
        (foods / f"{name}.toml").write_text(f'like = "{like}"\n')
    return foods


def test_without_bottles_there_is_nothing() -> None:
    """No folder is no fault."""
    assert ((), ()) == every_bottle()


def test_faulty_ones_hide_no_others(folder: Path) -> None:
    """The good ones in order; of the others every fault, with file and line."""
    (folder / "wide.toml").mkdir()
    bottles, findings = every_bottle()

    assert ["lakeside-soy", "reed-honey"] == [one.key for one in bottles]
    first, second = map(str, findings)
    assert first.startswith(f'{folder / "bad.toml"}:1: error: no food is called "xyzzy" (like)')
    assert f"{folder / 'wide.toml'}: error: " in second and "is a folder" in second


def test_one_is_set_aside(folder: Path) -> None:
    """Its file is moved as it is; recipes know it no more."""
    text = (folder / "lakeside-soy.toml").read_text()
    place = set_aside("Lakeside soy")

    assert folder / "removed" / "lakeside-soy.toml" == place
    assert text == place.read_text()
    assert own_bottle("lakeside-soy") is None
    assert ("bad", "reed-honey") == own_foods()


def test_a_faulty_one_can_go_too(folder: Path) -> None:
    """What cannot be read need not be read to be moved."""
    assert set_aside("bad").exists()
    assert ("lakeside-soy", "reed-honey") == own_foods()


def test_what_was_set_aside_before_stays(folder: Path) -> None:
    """The second of a name gets a number; nothing is written over."""
    first = set_aside("reed-honey")
    (folder / "reed-honey.toml").write_text('like = "maple-syrup"\n')
    second = set_aside("reed-honey")

    assert folder / "removed" / "reed-honey-2.toml" == second
    assert ('like = "honey"\n', 'like = "maple-syrup"\n') == (
        first.read_text(),
        second.read_text(),
    )


@pytest.mark.parametrize("name", ["lakside-soy", "../lakeside-soy", "", "x" * 200])
def test_what_is_not_there_is_told(name: str, folder: Path) -> None:
    """With a bottle that may be meant; a path is never followed."""
    with pytest.raises(FileUnreadable, match="no bottle of your own is called") as told:
        set_aside(name)

    assert ('did you mean "lakeside-soy"' in str(told.value)) == ("soy" in name)


def test_a_folder_that_cannot_be_made_is_told(folder: Path) -> None:
    """A file stands in its place: the bottle stays where it is."""
    (folder / "removed").write_text("in the way")
    with pytest.raises(FileUnwritable, match="cannot be moved"):
        set_aside("reed-honey")

    assert own_bottle("reed-honey") is not None
