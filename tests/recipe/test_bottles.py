"""Bottles are found by name, win over the tables, and cost nothing where there are none."""

from __future__ import annotations

import time
from collections.abc import Callable
from pathlib import Path

import pytest

from tarebook.findings import FoodUnknown, RecordFaulty
from tarebook.recipe import bottles
from tarebook.recipe.bottles import (
    bottle_file,
    can_name,
    find_bottles,
    known_food,
    own_bottle,
    own_foods,
)
from tarebook.recipe.model import Recipe
from tarebook.recipe.read import read_recipe
from tarebook.recipe.write import to_toml

RecipeText = Callable[..., str]
PANEL = '[panel]\nserving = "1 Tbsp (17 g)"\nsodium = "575 mg"\n'


def put(home: Path, name: str, text: str = f'like = "soy-sauce"\n{PANEL}') -> Path:
    """Write the file of a bottle."""
    file = home / "foods" / f"{name}.toml"
    file.parent.mkdir(parents=True, exist_ok=True)
    file.write_text(text, encoding="utf-8")
    return file


def read(text: str) -> Recipe:
    """Return the recipe of a text without errors."""
    recipe, findings = read_recipe(text, file="r")
    assert recipe is not None, [str(one) for one in findings]
    return recipe


def errors(text: str) -> list[str]:
    """Return what is wrong with a recipe."""
    recipe, findings = read_recipe(text, file="r")
    assert recipe is None
    return [str(one) for one in findings]


def test_without_a_folder_there_is_none() -> None:
    """A cook who keeps no bottles has only the tables."""
    assert (None, (), ()) == (own_bottle("soy-sauce"), own_foods(), find_bottles("soy"))
    assert known_food("shoyu").bottle is None


@pytest.mark.parametrize("name", ["lakeside-soy", "Lakeside Soy", "LAKESIDE_soy"])
def test_a_bottle_goes_by_its_name(name: str, own_home: Path) -> None:
    """Case, blanks, hyphens and underscores do not matter."""
    put(own_home, "lakeside-soy")
    found = known_food(name)

    assert ("soy-sauce", "lakeside-soy") == (found.food.key, found.shown.key)


@pytest.mark.parametrize("name", ["../soy", "a/b", "", " ", "x" * 61, "soy\0sauce", "a*b", ".."])
def test_a_name_leads_nowhere_else(name: str, own_home: Path) -> None:
    """Only letters, digits and hyphens make a file's name: no name leaves the folder."""
    put(own_home, "soy")
    put(own_home, "../soy")

    assert not can_name(name)
    assert own_bottle(name) is None


def test_the_names_are_listed(own_home: Path) -> None:
    """In order; what is no bottle's file is passed over."""
    for name in ("reed-honey", "lakeside-soy", "Not This", ".hidden"):
        put(own_home, name)
    (own_home / "foods" / "notes.txt").write_text("x")

    assert ("lakeside-soy", "reed-honey") == own_foods()
    assert own_home / "foods" / "reed-honey.toml" == bottle_file("Reed honey")


def test_a_recipe_names_a_bottle(own_home: Path, recipe_text: RecipeText) -> None:
    """By its own name, or as the food of a line; its panel stands in the line."""
    put(own_home, "lakeside-soy")
    for line in (
        {"lakeside-soy": "1/2 cup"},
        {"dark": '{ food = "Lakeside soy", amount = "1/2 cup" }'},
    ):
        (one,) = read(recipe_text(marinade=line)).ingredients
        assert one.bottle is not None and one.panel is not None
        assert ("soy-sauce", "lakeside-soy", 575) == (one.food, one.known_as, one.panel.sodium_mg)


def test_a_panel_in_the_recipe_wins(own_home: Path, recipe_text: RecipeText) -> None:
    """What stands in the line itself was meant for it."""
    put(own_home, "lakeside-soy")
    line = '{ amount = "1 cup", panel = { serving = "17 g", sodium = "900 mg" } }'
    (one,) = read(recipe_text(marinade={"lakeside-soy": line})).ingredients

    assert one.panel is not None and 900 == one.panel.sodium_mg
    assert one.bottle is not None


def test_a_bottle_wins_over_the_table(own_home: Path, recipe_text: RecipeText) -> None:
    """A bottle called soy-sauce is what soy-sauce means; like = "soy-sauce" means the table's."""
    put(own_home, "soy-sauce")
    (one,) = read(recipe_text(marinade={"soy-sauce": "1 cup"})).ingredients
    (alias,) = read(recipe_text(marinade={"shoyu": "1 cup"})).ingredients

    assert one.bottle is not None and "soy-sauce" == one.food
    assert alias.bottle is None


def test_a_recipe_with_a_bottle_is_written_back(own_home: Path, recipe_text: RecipeText) -> None:
    """The file names the bottle, and repeats nothing of it."""
    put(own_home, "lakeside-soy")
    lines = {"lakeside-soy": "1 cup", "dark": '{ food = "lakeside-soy", amount = "1 Tbsp" }'}
    recipe = read(recipe_text(marinade=lines))
    text = to_toml(recipe)

    assert 'lakeside-soy = "1 cup"' in text and "panel" not in text
    assert recipe.ingredients == read(text).ingredients


def test_a_missing_bottle_is_told(own_home: Path, recipe_text: RecipeText) -> None:
    """The message names the food, and the command that makes a bottle of it."""
    (only,) = errors(recipe_text(marinade={"xyzzy dust": "1 cup"}))
    (inner,) = errors(recipe_text(marinade={"x": '{ food = "xyzzy dust", amount = "1 cup" }'}))
    (near,) = errors(recipe_text(marinade={"lakeside-soy": "1 cup"}))

    add = "tarebook foods add xyzzy-dust keeps a bottle of your own"

    assert f'no food is called "xyzzy dust" (marinade."xyzzy dust"); {add}; or say' in only
    assert "tarebook foods add lakeside-soy keeps a bottle of your own; or say what it is" in near
    assert inner.endswith(add)


def test_a_near_miss_is_no_missing_bottle(own_home: Path, recipe_text: RecipeText) -> None:
    """A slip of the pen is answered with the food, or the bottle, that was meant."""
    put(own_home, "lakeside-soy")

    assert errors(recipe_text(marinade={"lakside-soy": "1 cup"}))[0].endswith(
        'did you mean "lakeside-soy"?'
    )
    assert "bottle" not in errors(recipe_text(marinade={"soy-sauc": "1 cup"}))[0]
    with pytest.raises(FoodUnknown, match="did you mean lakeside-soy"):
        known_food("lakside-soy")


def test_a_faulty_bottle_is_told_where_it_is_named(own_home: Path, recipe_text: RecipeText) -> None:
    """The recipe's line, and the first fault of the bottle with its own file and line."""
    file = put(own_home, "lakeside-soy", f'like = "xyzzy"\n{PANEL.replace("575", "many")}')
    (fault,) = errors(recipe_text(marinade={"lakeside-soy": "1 cup"}))

    assert fault.startswith('r:8: error: your own bottle "lakeside-soy" is faulty: ')
    assert f'{file}:1: error: no food is called "xyzzy"' in fault
    assert "tarebook foods own" in fault
    with pytest.raises(RecordFaulty) as raised:
        known_food("lakeside-soy")
    assert 2 == len(raised.value.findings)


def test_a_changed_bottle_is_read_again(own_home: Path) -> None:
    """What was read is kept only as long as the file stays as it is."""
    file = put(own_home, "lakeside-soy")
    before = own_bottle("lakeside-soy")
    file.write_text('like = "honey"\n')
    after = own_bottle("lakeside-soy")

    assert before is not None and after is not None
    assert ("soy-sauce", "honey") == (before.like, after.like)


def test_bottles_are_found_by_words(own_home: Path) -> None:
    """Of their name, or of what they are like; one with faults is passed over."""
    put(own_home, "lakeside-dark", 'name = "Dark of the lake"\nlike = "soy-sauce"')
    put(own_home, "reed-honey", 'like = "honey"')
    put(own_home, "broken-soy", "like = 3")

    assert ["lakeside-dark"] == [one.key for one in find_bottles("soy")]
    assert ["lakeside-dark"] == [one.key for one in find_bottles("DARK lake")]
    assert 2 == len(find_bottles(""))


def test_a_thousand_bottles_are_no_slower_than_one(
    own_home: Path, recipe_text: RecipeText, monkeypatch: pytest.MonkeyPatch
) -> None:
    """A recipe reads the files of the bottles that it names, and no other."""
    for number in range(1000):
        put(own_home, f"bottle-{number}")
    read_files = []
    whole = bottles.read_bytes
    monkeypatch.setattr(
        bottles, "read_bytes", lambda path, **how: (read_files.append(path), whole(path, **how))[1]
    )
    started = time.perf_counter()
    read(recipe_text(marinade={"bottle-7": "1 cup", "honey": "1 Tbsp", "garlic": "2 cloves"}))

    assert [str(own_home / "foods" / "bottle-7.toml")] == [str(one) for one in read_files]
    assert time.perf_counter() - started < 0.5
