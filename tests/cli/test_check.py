"""tarebook check."""

from __future__ import annotations

import json
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

Tarebook = Callable[..., Any]
Written = Callable[..., str]

FINDING = {"file", "line", "path", "severity", "code", "message", "hint", "rule"}


def test_a_good_file_is_counted_and_nothing_else(written: Written, tarebook: Tarebook) -> None:
    """No fault, no word but the count."""
    assert (0, "1 recipe checked, no errors\n", "") == tarebook("check", written())


def test_all_faults_of_a_file_at_once_in_file_order(written: Written, tarebook: Tarebook) -> None:
    """Everything wrong is told in one go, by line, each with what to try."""
    path = written(meat="venisn", marinade={"soy-sauce": "1 cpu", "honey": "-1 cup"}, more="x = 1")
    status, out, _ = tarebook("check", path)
    *lines, last = out.splitlines()
    numbers = [int(line.removeprefix(f"{path}:").split(":")[0]) for line in lines]

    assert 1 == status
    assert 4 == len([line for line in lines if ": error: " in line])
    assert sorted(numbers) == numbers
    assert "1 recipe checked, 1 with errors" == last
    assert any('did you mean "deer"?' in line for line in lines)


def test_notes_and_warnings_exit_with_0(written: Written, tarebook: Tarebook) -> None:
    """How things were read, and what a rule finds, do not fail the file."""
    marinade = {"soy-sauce": "1 T", "water": "8 oz", "salt": "1 Tbsp"}
    status, out, _ = tarebook("check", written(marinade=marinade, soak="hours = 48"))

    assert 0 == status
    assert "T read as tablespoon" in out
    assert "oz read as weight" in out
    assert "a spoon of salt" in out
    assert ": warning: 48 hours in the marinade" in out
    assert out.endswith("1 recipe checked, no errors\n")


def test_the_safety_rules_are_held_too(written: Written, tarebook: Tarebook) -> None:
    """Too much curing salt is an error of check as well."""
    cure = '{ amount = "2.5 g", strength = "6.25 %" }'
    status, out, _ = tarebook("check", written(rub={"curing-salt-1": cure}))

    assert 1 == status
    assert ": error: " in out and "156.25 ppm" in out


def test_a_folder_is_checked_whole(
    written: Written, tarebook: Tarebook, tmp_path: Path, recipe_text: Callable[..., str]
) -> None:
    """Every recipe of a folder and of those below it; other files are left alone."""
    written("a.toml")
    below = tmp_path / "older"
    below.mkdir()
    (below / "b.toml").write_text(recipe_text(meat="venisn"), encoding="utf-8")
    (tmp_path / "notes.txt").write_text("no recipe", encoding="utf-8")
    status, out, _ = tarebook("check", str(tmp_path))

    assert 1 == status
    assert out.startswith(f"{below / 'b.toml'}:")
    assert out.endswith("2 recipes checked, 1 with errors\n")


@pytest.mark.parametrize("bad", ["missing.toml", "empty-folder", "dangling.toml"])
def test_one_file_that_cannot_be_read_stops_no_other(
    bad: str, written: Written, tarebook: Tarebook, tmp_path: Path
) -> None:
    """What cannot be read is an error in its place, and the rest is checked."""
    (tmp_path / "empty-folder").mkdir()
    (tmp_path / "dangling.toml").symlink_to(tmp_path / "nowhere")
    good = written("good.toml", marinade={"soy-sauce": "1 T"})
    status, out, err = tarebook("check", str(tmp_path / bad), good)
    first, second, last = out.splitlines()

    assert (1, "") == (status, err)
    assert first.startswith(f"{tmp_path / bad}: error: ")
    assert second.startswith(f"{good}:") and "T read as" in second
    assert "2 recipes checked, 1 with errors" == last


def test_findings_as_data(written: Written, tarebook: Tarebook) -> None:
    """Counts, and each finding with its stable keys."""
    path = written(marinade={"soy-sauce": "1 cpu", "water": "8 oz"})
    status, out, _ = tarebook("check", path, "--json")
    data = json.loads(out)

    assert 1 == status
    assert (1, 1) == (data["files"], data["files_with_errors"])
    assert all(FINDING <= set(one) for one in data["findings"])
    assert {"error", "note"} == {one["severity"] for one in data["findings"]}
    assert {path} == {one["file"] for one in data["findings"]}


def test_a_safety_finding_names_its_rule(written: Written, tarebook: Tarebook) -> None:
    """What stands on a published rule says which."""
    data = json.loads(tarebook("check", written(soak="hours = 48"), "--json").out)
    (found,) = (one for one in data["findings"] if one["severity"] == "warning")

    assert found["rule"]


def test_a_recipe_cannot_break_the_line(written: Written, tarebook: Tarebook) -> None:
    """Whatever a file holds, each finding stays on one line and free of escape codes."""
    path = written(title="a\\u001b[31m", marinade={"so\\ny": "1 cup"})
    out = tarebook("check", path).out

    assert "\x1b" not in out
    assert all(line.startswith((path, "1 recipe")) for line in out.splitlines())


ODD_PANEL = '{ amount = "1/4 cup", panel = { serving = "1 Tbsp (17 g)", sodium = "5750 mg" } }'
ASKED = "sodium 5,750 mg in 17 g; soy-sauce has 934 mg: is it 575 mg?"


def test_a_slip_in_a_panel_of_the_recipe_is_asked_back(
    written: Written, tarebook: Tarebook
) -> None:
    """A panel inside a recipe gets the questions of a bottle, at its own line."""
    path = written(marinade={"honey": "1 Tbsp", "soy-sauce": ODD_PANEL})
    line = Path(path).read_text(encoding="utf-8").split("soy-sauce")[0].count("\n") + 1
    status, out, _ = tarebook("check", path)

    assert 0 == status
    assert f"{path}:{line}: warning: {ASKED} (marinade.soy-sauce.panel)\n" in out


def test_a_slip_in_a_panel_is_told_wherever_the_recipe_is_opened(
    written: Written, tarebook: Tarebook
) -> None:
    """Whoever scales or prints it is asked too, beside the page."""
    path = written(marinade={"soy-sauce": ODD_PANEL})
    for command in ("scale", "card"):
        assert f"warning: {ASKED}" in tarebook(command, path).err


def test_a_bottle_is_not_asked_about_again(
    written: Written, tarebook: Tarebook, own_home: Path
) -> None:
    """What was confirmed when a bottle was added is not asked in every recipe that names it."""
    add = ("foods", "add", "strong", "--like", "soy-sauce", "--serving", "17 g")
    assert 0 == tarebook(*add, "--sodium", "5750 mg", "--yes").status

    assert (own_home / "foods" / "strong.toml").exists()
    assert "5,750 mg" not in tarebook("check", written(marinade={"strong": "1/4 cup"})).out


def test_a_figure_that_no_label_prints_is_a_note(written: Written, tarebook: Tarebook) -> None:
    """How it is taken is told where a recipe is checked, and not each time that it is scaled."""
    panel = '{ amount = "1/4 cup", panel = { serving = "1 Tbsp (17 g)", sodium = "945 mg" } }'
    path = written(marinade={"soy-sauce": panel})
    told = "sodium 945 mg is none that US labels round to; taken as 940 to 950 mg"

    assert f": note: {told} (marinade.soy-sauce.panel)" in tarebook("check", path).out
    assert told not in tarebook("scale", path).err


def test_the_size_of_a_can_is_told(written: Written, tarebook: Tarebook) -> None:
    """A can is sold in more sizes than one: which was taken is a note, at its line."""
    path = written(marinade={"soy-sauce": "1/2 cup", "beer": "1 can", "garlic": "2 cloves"})
    _, out, _ = tarebook("check", path)

    assert (
        ": note: one can of beer taken as 356 g (marinade.beer); where yours holds another weight "
        "or volume, write that\n"
    ) in out
    assert "clove" not in out
    assert "taken as" not in tarebook("check", written(marinade={"beer": "12 fl oz"})).out
