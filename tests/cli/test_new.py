"""tarebook new."""

from __future__ import annotations

import json
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from tarebook.recipe.load import load_recipe
from tarebook.recipe.model import HeatStep, Surface
from tarebook.where import folder

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


def test_the_file_is_commented(tarebook: Tarebook, tmp_path: Path) -> None:
    """What was left unsaid stands there to uncomment."""
    file = tmp_path / "porch.toml"
    tarebook("new", str(file), typed=typed())
    text = file.read_text(encoding="utf-8")

    assert "# What the meat lies in" in text
    assert "# poured-away = true" in text


def test_the_file_names_no_path_of_this_machine(tarebook: Tarebook, tmp_path: Path) -> None:
    """A family's file is dead on no other machine: outside the project no schema is named."""
    file = tmp_path / "porch.toml"
    tarebook("new", str(file), typed=typed())
    text = file.read_text(encoding="utf-8")

    assert 'title = "Porch strips"' == text.splitlines()[0]
    assert str(folder("reference").parent) not in text and str(tmp_path) not in text


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
        ("food", "1 cup soy sauce", '"1 cup soy sauce" is an ingredient, and not what is asked'),
        ("food", "3 lbs", '"3 lbs" is a weight, and not what is asked'),
        ("amount", "1/4 in", '"1/4 in" is a length, and not what is asked'),
        ("thickness", "1 heaping tsp", '"1 heaping tsp" is a measure, and not what is asked'),
        ("hours", "155 F", '"155 F" is a temperature, and not what is asked'),
        ("hours", "155", "is it a temperature? If hours are meant, write 155 h"),
        ("hours", "40-49", "write 40-49 h"),
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


def test_a_wrong_slot_gets_no_help_of_another(tarebook: Tarebook, tmp_path: Path) -> None:
    """An ingredient in place of the meat is no game, one in place of a thickness no pinch."""
    wrong = {"food": ["1 cup soy sauce", "venison"], "thickness": ["1 heaping tsp", "1/4 in"]}
    err = tarebook("new", str(tmp_path / "porch.toml"), typed=typed(**wrong)).err

    assert "bear" not in err and "to taste" not in err


def test_long_drying_can_be_meant(tarebook: Tarebook, tmp_path: Path) -> None:
    """Two days are asked nothing, and hours said to be hours are taken."""
    for hours in ("48", "72 h"):
        file = tmp_path / f"porch-{hours}.toml"
        status, _, err = tarebook("new", str(file), typed=typed(hours=[hours]))
        assert (0, False) == (status, "is it a temperature" in err)


def test_a_screen_has_eighty_columns(
    tarebook: Tarebook, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Long questions and faults are broken between words there, and only there."""
    wrong = typed(thickness=["1 heaping tsp", "1/4 in"], heat=["baked", "steamed or roasted first"])
    piped = tarebook("new", str(tmp_path / "piped.toml"), typed=wrong).err
    monkeypatch.setattr("sys.stderr.isatty", lambda: True)
    shown = tarebook("new", str(tmp_path / "shown.toml"), typed=wrong).err

    assert 80 < max(map(len, piped.splitlines()))
    assert 80 >= max(len(line.removeprefix("> ")) for line in shown.splitlines())
    assert piped.split() == shown.split()


def test_back_returns_to_the_question_before(tarebook: Tarebook, tmp_path: Path) -> None:
    """The answer is given anew; what was answered before is shown."""
    file = tmp_path / "porch.toml"
    _, _, err = tarebook("new", str(file), typed=typed(amount=["5 lb", "Back", "2 1/2 lb"]))

    assert "answered before: 5 lb" in err
    assert "2 1/2 lb" == load_recipe(file)[0].meat.amount.text


def test_back_takes_the_last_line_away_first(tarebook: Tarebook, tmp_path: Path) -> None:
    """Then it returns; the lines of a list that was left stand, and more can be added."""
    file = tmp_path / "porch.toml"
    marinade = ["1 cup honey", "back", "2 Tbsp honey", ""]
    rub = ["back", "3/4 cup soy sauce", "", "1 tsp black-pepper", ""]
    _, _, err = tarebook("new", str(file), typed=typed(marinade=marinade, rub=rub))

    assert "taken back: 1 cup honey" in err and "so far: 2 Tbsp honey" in err
    assert [("honey", "2 Tbsp"), ("soy-sauce", "3/4 cup"), ("black-pepper", "1 tsp")] == [
        (one.name.replace(" ", "-"), one.amount.text) for one in load_recipe(file)[0].ingredients
    ]


def test_back_at_the_first_question_stays(tarebook: Tarebook, tmp_path: Path) -> None:
    """There is nothing before it."""
    status, _, err = tarebook(
        "new", str(tmp_path / "porch.toml"), typed=typed(title=["back", "Porch strips"])
    )

    assert 0 == status
    assert "this is the first question" in err


def test_a_bottle_of_the_house_can_be_named(
    tarebook: Tarebook, tmp_path: Path, own_home: Path
) -> None:
    """On one line with its amount, as any food."""
    bottle = own_home / "foods" / "cove-soy.toml"
    bottle.parent.mkdir(parents=True)
    bottle.write_text('like = "soy-sauce"\n[panel]\nserving = "15 mL"\nsodium = "500 mg"\n')
    file = tmp_path / "porch.toml"
    tarebook("new", str(file), typed=typed(marinade=["3/4 cup cove-soy", ""]))
    first = load_recipe(file)[0].ingredients[0]

    assert ("cove-soy", "3/4 cup") == (first.name, first.amount.text)
    assert first.bottle is not None


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
