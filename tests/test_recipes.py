"""The demo recipes, from file to card."""

from __future__ import annotations

import json
from collections.abc import Callable
from pathlib import Path

import pytest

from tarebook.cards.lines import plain_text, width
from tarebook.cards.sheet import sheet
from tarebook.cards.text_card import text_card
from tarebook.cards.worksheet import worksheet
from tarebook.figures.foods import food
from tarebook.findings import Severity
from tarebook.recipe.load import load_recipe, recipe_bytes, shipped_recipes
from tarebook.recipe.model import HeatStep, MeatForm, Part, Recipe
from tarebook.recipe.write import to_toml
from tarebook.safety import check
from tarebook.where import folder

EVERY_RECIPE = pytest.mark.parametrize("name", shipped_recipes())


def loaded(name: str) -> Recipe:
    """Return a shipped recipe."""
    return load_recipe(name)[0]


def foods(recipe: Recipe) -> set[str]:
    """Return the foods of its ingredients."""
    return {one.food for one in recipe.ingredients}


def parts(recipe: Recipe) -> set[Part]:
    """Return the parts that its ingredients go into."""
    return {one.part for one in recipe.ingredients}


def test_there_are_eight() -> None:
    """Eight recipes are shipped."""
    assert 8 == len(shipped_recipes())


@EVERY_RECIPE
def test_a_recipe_goes_from_file_to_card(name: str) -> None:
    """Read without a finding, scaled, estimated, and printed as sheet, card and all its figures."""
    recipe, findings = load_recipe(name)
    done = worksheet(recipe, meat_mass_g=3 * recipe.meat.mass_g)
    page, card = plain_text(sheet(done)), plain_text(text_card(done))

    assert () == findings
    assert recipe.title in page and recipe.title.upper() in " ".join(card.split())
    assert all(value is not None for value in done.estimate.per_ounce.values())
    assert done.estimate.ceiling_sodium_mg_per_oz is not None
    assert all(one.mass is not None for one in done.scaled.ingredients)
    assert max(map(width, page.splitlines())) <= 80
    assert max(map(width, card.splitlines())) <= 60


@EVERY_RECIPE
def test_no_rule_finds_fault(name: str) -> None:
    """Our own recipes keep the rules that we hold others to."""
    found = [one for one in check(loaded(name)) if one.severity is not Severity.NOTE]

    assert [] == [str(one) for one in found]


@EVERY_RECIPE
def test_the_schema_is_named_at_the_top(name: str) -> None:
    """An editor finds the schema from the first line, relative to the file."""
    data, _ = recipe_bytes(name)
    first = data.decode().splitlines()[0]

    assert "#:schema ../reference/recipe.schema.json" == first
    schema = folder("recipes") / first.removeprefix("#:schema ")
    assert "object" == json.loads(schema.read_text(encoding="utf-8"))["type"]


@EVERY_RECIPE
def test_a_recipe_is_worth_cooking(name: str) -> None:
    """Each says in a sentence what it is, has steps, a heat step, and the amounts of a family."""
    recipe = loaded(name)

    assert recipe.about and len(recipe.steps) >= 3
    assert recipe.heat is not HeatStep.UNSTATED
    assert recipe.drying.temperature_f is not None
    assert recipe.meat.thickness_mm is not None
    assert 400 < recipe.meat.mass_g < 3000


@EVERY_RECIPE
def test_written_anew_it_is_the_same(name: str, tmp_path: Path) -> None:
    """A shipped recipe written by us reads back as itself."""
    recipe = loaded(name)
    path = tmp_path / "again.toml"
    path.write_text(to_toml(recipe), encoding="utf-8")
    again = load_recipe(path)[0]

    assert (recipe.title, recipe.meat, recipe.soak, recipe.heat, recipe.drying, recipe.steps) == (
        again.title,
        again.meat,
        again.soak,
        again.heat,
        again.drying,
        again.steps,
    )
    assert [(one.food, one.amount, one.part) for one in recipe.ingredients] == [
        (one.food, one.amount, one.part) for one in again.ingredients
    ]


KINDS: dict[str, Callable[[Recipe], bool]] = {
    "a wet soy marinade": lambda one: "soy-sauce" in foods(one) and parts(one) == {Part.MARINADE},
    "a brine": lambda one: "water" in foods(one) and "brine" in one.title,
    "a dry rub": lambda one: parts(one) == {Part.RUB},
    "ground and formed": lambda one: (
        one.meat.form is MeatForm.GROUND and parts(one) == {Part.MIXED_IN}
    ),
    "fish": lambda one: food(one.meat.food).kind == "fish",
    "poultry": lambda one: food(one.meat.food).species_group == "poultry",
    "mushrooms": lambda one: food(one.meat.food).species_group == "mushroom",
    "fruit, vinegar and curing salt by weight": lambda one: (
        any("juice" in key for key in foods(one))
        and any("vinegar" in key for key in foods(one))
        and any(
            food(each.food).curing and each.amount.unit == "gram" and each.strength_percent
            for each in one.ingredients
        )
    ),
}


@pytest.mark.parametrize("kind", KINDS)
def test_every_kind_is_there(kind: str) -> None:
    """The eight differ in kind; each kind has a recipe."""
    assert any(KINDS[kind](loaded(name)) for name in shipped_recipes())


def test_only_one_holds_curing_salt() -> None:
    """Curing salt is the exception, and it stays well within the limit."""
    cured = [name for name in shipped_recipes() if worksheet(loaded(name)).cure is not None]

    assert ["cranberry-moose"] == cured
    report = worksheet(loaded("cranberry-moose")).cure
    assert report is not None and report.guard_ppm < 150
