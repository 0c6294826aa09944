"""tarebook tidy, as it is typed."""

from __future__ import annotations

import json
import os
import shutil
import stat
import sys
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from tarebook.where import folder

Tarebook = Callable[..., Any]

GOOD = (folder("recipes") / "juniper-venison.toml").read_text("utf-8")
MESSY = GOOD.replace("soy-sauce =", "  soy-sauce    =").replace('"1/2 cup"', '"½ cup"')
FAULTY = GOOD.replace("cup", "cpu")


@pytest.fixture
def strips(tmp_path: Path) -> Path:
    """An untidy recipe in a file."""
    path = tmp_path / "strips.toml"
    path.write_text(MESSY, "utf-8")
    return path


def test_it_is_written_once(tarebook: Tarebook, strips: Path) -> None:
    """The first time it is tidied; the second time there is nothing to do, nor to write."""
    assert (0, f"{strips}: tidied\n", "") == tarebook("tidy", str(strips))
    assert GOOD == strips.read_text("utf-8")
    before = strips.stat()
    assert (0, f"{strips}: tidy\n", "") == tarebook("tidy", str(strips))
    assert (before.st_mtime_ns, before.st_ino) == (strips.stat().st_mtime_ns, strips.stat().st_ino)


def test_check_writes_nothing(tarebook: Tarebook, strips: Path) -> None:
    """It tells by its exit status whether there is anything to do."""
    assert (1, f"{strips}: not tidy\n", "") == tarebook("tidy", "--check", str(strips))
    assert MESSY == strips.read_text("utf-8")
    assert (0, "juniper-venison: tidy\n", "") == tarebook("tidy", "--check", "juniper-venison")


def test_show_writes_nothing(tarebook: Tarebook, strips: Path) -> None:
    """It shows the lines that would change, before and after, and nothing of a tidy recipe."""
    status, out, err = tarebook("tidy", "--show", str(strips), "cabin-rub-elk")

    assert (0, "") == (status, err)
    assert '-  soy-sauce    = "½ cup"\n+soy-sauce = "1/2 cup"\n' in out
    assert "elk" not in out and "honey" not in out
    assert MESSY == strips.read_text("utf-8")


def test_a_pipe_goes_in_and_out(tarebook: Tarebook) -> None:
    """Standard input comes out tidy; with --check nothing but word of it comes out."""
    assert (0, GOOD, "") == tarebook("tidy", "-", typed=MESSY)
    assert (1, "-: not tidy\n", "") == tarebook("tidy", "-", "--check", typed=MESSY)
    assert 2 == tarebook("tidy", "-", "juniper-venison", typed=MESSY).status


def test_a_faulty_one_stops_no_other(tarebook: Tarebook, strips: Path) -> None:
    """Its findings are told with their lines, it stays as it is, and the rest are tidied."""
    bad = strips.with_name("bad.toml")
    bad.write_text(FAULTY, "utf-8")
    status, out, err = tarebook("tidy", str(bad), str(strips), "nowhere.toml")

    assert (1, f"{strips}: tidied\n") == (status, out)
    assert f'{bad}:12: error: amount "1/2 cpu" has no unit I know' in err
    assert 'there is no recipe "nowhere.toml"' in err
    assert FAULTY == bad.read_text("utf-8")


def test_a_folder_and_a_name(tarebook: Tarebook, strips: Path, own_home: Path) -> None:
    """All recipes of a folder; a recipe of the cook's own by its name."""
    (own_home / "recipes").mkdir(parents=True)
    own = own_home / "recipes" / "lake-strips.toml"
    own.write_text(MESSY, "utf-8")
    shutil.copy(strips, strips.with_name("more.toml"))
    status, out, _ = tarebook("tidy", str(strips.parent), "lake-strips")

    assert 0 == status
    assert [strips.with_name("more.toml"), strips] == [
        Path(line.removesuffix(": tidied")) for line in out.splitlines() if str(own) not in line
    ][:2]
    assert GOOD == own.read_text("utf-8")


def test_a_recipe_that_comes_with_tarebook_is_not_written(
    tarebook: Tarebook, monkeypatch: pytest.MonkeyPatch
) -> None:
    """By its name it is shown and checked, never changed."""
    module = sys.modules["tarebook.recipe.tidy"]
    monkeypatch.setattr(module, "tidied", lambda data, *, file: data + b"# more\n")
    before = (folder("recipes") / "juniper-venison.toml").read_bytes()
    status, out, err = tarebook("tidy", "juniper-venison")

    assert (1, "") == (status, out)
    assert "juniper-venison comes with tarebook and is left as it is" in err
    assert before == (folder("recipes") / "juniper-venison.toml").read_bytes()


@pytest.mark.skipif(os.name == "nt", reason="modes and links of this system")
def test_mode_and_link_stay(tarebook: Tarebook, strips: Path, tmp_path: Path) -> None:
    """Who may read it stays; through a link the file behind it is written, and the link stays."""
    strips.chmod(0o640)
    link = tmp_path / "link.toml"
    link.symlink_to(strips.name)

    assert 0 == tarebook("tidy", str(link)).status
    assert link.is_symlink()
    assert (GOOD, 0o640) == (strips.read_text("utf-8"), stat.S_IMODE(strips.stat().st_mode))


def test_a_file_that_cannot_be_written(
    tarebook: Tarebook, strips: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """It is told, the file is whole and as it was, and nothing is left lying beside it."""

    def full(_: int) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(os, "fsync", full)
    status, out, err = tarebook("tidy", str(strips))

    assert (1, "") == (status, out)
    assert "cannot be written: no space left on device" in err
    assert (MESSY, [strips]) == (strips.read_text("utf-8"), [*strips.parent.glob("*strips*")])


def test_data(tarebook: Tarebook, strips: Path) -> None:
    """One entry a file: whether it is tidy, was written, and what is wrong with it."""
    bad = strips.with_name("bad.toml")
    bad.write_text(FAULTY, "utf-8")
    found = json.loads(tarebook("tidy", str(strips), str(bad), "--json").out)

    assert [(False, True, False), (None, False, True)] == [
        (one["tidy"], one["written"], one["fault"] is not None) for one in found
    ]
    assert [(True, False)] == [
        (one["tidy"], one["written"])
        for one in json.loads(tarebook("tidy", str(strips), "--json").out)
    ]


def test_what_would_steer_a_terminal_is_not_shown(tarebook: Tarebook, tmp_path: Path) -> None:
    """A change is shown without marks that move the cursor or turn the line around."""
    path = tmp_path / "odd.toml"
    path.write_text(MESSY.replace("# the weight", "# \u202ethe weight"), "utf-8")

    assert "\u202e" not in tarebook("tidy", "--show", str(path)).out


def test_what_is_saved_meanwhile_stays(
    tarebook: Tarebook, strips: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Somebody saves the file from an editor between its reading and its writing: that counts."""
    module = sys.modules["tarebook.recipe.tidy"]
    true = module.tidied

    def saved(data: bytes, *, file: str) -> bytes:
        strips.write_text(MESSY + "# one more\n", "utf-8")
        found: bytes = true(data, file=file)
        return found

    monkeypatch.setattr(module, "tidied", saved)
    status, out, err = tarebook("tidy", str(strips))

    assert (1, "") == (status, out)
    assert "was changed meanwhile and is left as it is" in err
    assert MESSY + "# one more\n" == strips.read_text("utf-8")


def test_own_bottles_and_the_kitchen_are_tidied_too(tarebook: Tarebook, own_home: Path) -> None:
    """A bottle by its name, the kitchen by its file, and both with the folder; remarks stay."""
    bottle, kitchen = own_home / "foods" / "cove-soy.toml", own_home / "kitchen.toml"
    bottle.parent.mkdir(parents=True)
    bottle.write_text('like="soy-sauce" # from the cove\n[panel]\nserving = "1 Tbsp"\n', "utf-8")
    kitchen.write_text("[dryer]\ntrays=4 # one is lost\n", "utf-8")

    assert (1, f"{bottle}: not tidy\n", "") == tarebook("tidy", "--check", str(bottle))
    assert (1, f"{bottle}: not tidy\n", "") == tarebook("tidy", "--check", "cove-soy")
    assert (0, "") == tarebook("tidy", str(own_home))[::2]
    assert bottle.read_text("utf-8").startswith('like = "soy-sauce"  # from the cove\n')
    assert "[dryer]\ntrays = 4  # one is lost\n" == kitchen.read_text("utf-8")
    assert 0 == tarebook("tidy", "--check", str(own_home)).status


def test_a_faulty_kitchen_is_told_as_one(tarebook: Tarebook, own_home: Path) -> None:
    """Not as a recipe without a title."""
    own_home.mkdir()
    file = own_home / "kitchen.toml"
    file.write_text("[dryer]\ntrays = 'many'\n", "utf-8")
    status, _, err = tarebook("tidy", str(file))

    assert 1 == status
    assert "kitchen.toml:2: error: " in err and "title" not in err
