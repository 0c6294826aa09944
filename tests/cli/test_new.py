"""tarebook new."""

from __future__ import annotations

import json
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from tarebook.recipe.load import load_recipe
from tarebook.recipe.model import HeatStep, Surface

Tarebook = Callable[..., Any]

# What is asked, and an answer; lists go on until an empty one.
ANSWERS = {
    "title": ["Porch strips"],
    "about": ["For the ice-fishing trip."],
    "food": ["venison"],
    "amount": ["2 1/2 lb"],
    "form": ["strips"],
    "thickness": ["1/4 in"],
    "marinade": ["3/4 cup soy sauce", "honey = 2 Tbsp", "3 cloves garlic, minced", ""],
    "rub": ["1 tsp black-pepper", ""],
    "soak": ["10-14"],
    "surface": ["patted"],
    "heat": ["steamed or roasted first"],
    "temperature": ["155 F"],
    "hours": ["5-8"],
    "steps": ["Slice.", "Soak.", ""],
    "notes": [""],
}


def typed(**changes: list[str]) -> str:
    """Return the answers as a cook types them, some of them changed."""
    return "".join(f"{line}\n" for lines in (ANSWERS | changes).values() for line in lines)


def test_answers_make_a_recipe(tarebook: Tarebook, tmp_path: Path) -> None:
    """Question by question a file is written, which reads back as what was answered."""
    file = tmp_path / "porch.toml"
    status, out, err = tarebook("new", str(file), typed=typed())
    recipe, _ = load_recipe(file)

    assert (0, f"{file} is written. Next: tarebook check {file}\n") == (status, out)
    assert "What do you call it?" in err
    assert "Porch strips" == recipe.title
    assert ("deer", "soy-sauce", "honey", "garlic", "black-pepper") == (
        recipe.meat.food,
        *(one.food for one in recipe.ingredients),
    )
    assert (10.0, 14.0) == (recipe.soak.hours[0], recipe.soak.hours[2])
    assert (Surface.PATTED, HeatStep.STEAMED) == (recipe.soak.surface, recipe.heat)
    assert ("Slice.", "Soak.") == recipe.steps


def test_the_file_is_commented_and_names_its_schema(tarebook: Tarebook, tmp_path: Path) -> None:
    """The schema is named at the top, and what was left unsaid stands there to uncomment."""
    file = tmp_path / "porch.toml"
    tarebook("new", str(file), typed=typed())
    text = file.read_text(encoding="utf-8")
    schema = text.splitlines()[0].removeprefix("#:schema ")

    assert "object" == json.loads(Path(schema).read_text(encoding="utf-8"))["type"]
    assert "# What the meat lies in" in text
    assert "# poured-away = true" in text


def test_the_new_recipe_passes_check_and_prints(tarebook: Tarebook, tmp_path: Path) -> None:
    """What new writes, check finds nothing wrong with, and card prints."""
    file = str(tmp_path / "porch.toml")
    tarebook("new", file, typed=typed())

    assert (0, "1 recipe checked, no errors\n", "") == tarebook("check", file)
    assert tarebook("card", file).out.startswith("PORCH STRIPS")


def test_only_what_is_needed(tarebook: Tarebook, tmp_path: Path) -> None:
    """Title, food and weight are enough; Enter passes over everything else."""
    file = tmp_path / "bare.toml"
    answers = "Bare strips\n\nelk\n2 lb\n" + "\n" * 12
    status, _, _ = tarebook("new", str(file), typed=answers)

    assert 0 == status
    assert () == load_recipe(file)[0].ingredients


def test_ground_meat_is_asked_what_is_mixed_in(tarebook: Tarebook, tmp_path: Path) -> None:
    """Ground meat has no marinade, rub or soak to ask for."""
    file = tmp_path / "sticks.toml"
    answers = "Sticks\n\nground venison\n3 lb\nground\n1/4 in\n4 tsp salt-table\n" + "\n" * 8
    _, _, err = tarebook("new", str(file), typed=answers)

    assert "What is mixed in?" in err and "marinade?" not in err and "soak?" not in err
    assert ["mixed-in"] == [one.part.value for one in load_recipe(file)[0].ingredients]


@pytest.mark.parametrize(
    ("key", "wrong", "says"),
    [
        ("title", "", "this one is needed"),
        ("food", "venisn", 'did you mean "deer"'),
        ("food", "soy sauce", "no meat, fish or mushroom"),
        ("amount", "2", "write 2 lb or 2 kg"),
        ("amount", "2 cups", "no weight"),
        ("form", "cubes", '"strips", "ground", "pieces"'),
        ("thickness", "1/4", "1/4 in"),
        ("marinade", "1 cup", "3/4 cup soy-sauce"),
        ("marinade", "soy-sauce = 1 cpu", 'did you mean "cup"'),
        ("marinade", "1 tsp curing-salt-1", "weigh it"),
        ("marinade", "2 g curing-salt-1", "strength"),
        ("soak", "overnight", "hours"),
        ("temperature", "155", "155 F"),
    ],
)
def test_a_mistake_is_told_and_asked_again(
    key: str, wrong: str, says: str, tarebook: Tarebook, tmp_path: Path
) -> None:
    """A slip costs one line: what is wrong is said, and the question comes again."""
    file = tmp_path / "porch.toml"
    status, _, err = tarebook("new", str(file), typed=typed(**{key: [wrong, *ANSWERS[key]]}))

    assert 0 == status
    assert says in err
    assert "Porch strips" == load_recipe(file)[0].title


def test_two_of_a_kind_are_both_written(tarebook: Tarebook, tmp_path: Path) -> None:
    """The same food typed twice is two ingredients; the first is not lost."""
    file = tmp_path / "porch.toml"
    twice = ["1 cup soy sauce", "1 Tbsp soy sauce", ""]
    tarebook("new", str(file), typed=typed(marinade=twice, rub=[""]))
    recipe, _ = load_recipe(file)

    assert ["1 cup", "1 Tbsp"] == [str(one.amount) for one in recipe.ingredients]
    assert {"soy-sauce"} == {one.food for one in recipe.ingredients}


def test_the_ending_is_added(tarebook: Tarebook, tmp_path: Path) -> None:
    """A name without its ending gets it."""
    tarebook("new", str(tmp_path / "porch"), typed=typed())

    assert (tmp_path / "porch.toml").exists()


def test_nothing_is_written_over(tarebook: Tarebook, tmp_path: Path) -> None:
    """A file that is there stays as it is, and nothing is asked."""
    file = tmp_path / "porch.toml"
    file.write_text("mine", encoding="utf-8")
    status, out, err = tarebook("new", str(file), typed=typed())

    assert (1, "", "mine") == (status, out, file.read_text(encoding="utf-8"))
    assert "there already" in err and "What do you call it" not in err


def test_a_missing_folder_is_told_before_anything_is_asked(
    tarebook: Tarebook, tmp_path: Path
) -> None:
    """No cook answers sixteen questions for nothing."""
    status, _, err = tarebook("new", str(tmp_path / "none" / "porch.toml"), typed=typed())

    assert 1 == status
    assert "no folder" in err and "What do you call it" not in err


def test_answers_that_end_too_soon_write_nothing(tarebook: Tarebook, tmp_path: Path) -> None:
    """Half a recipe is none."""
    file = tmp_path / "porch.toml"
    status, out, err = tarebook("new", str(file), typed="Porch strips\n\nvenison\n")

    assert (2, "") == (status, out)
    assert "nothing was written" in err and not file.exists()


def test_as_data(tarebook: Tarebook, tmp_path: Path) -> None:
    """Which file, of what title; the questions do not mix with it."""
    file = tmp_path / "porch.toml"
    out = tarebook("new", str(file), "--json", typed=typed()).out

    assert {"file": str(file), "title": "Porch strips"} == json.loads(out)
