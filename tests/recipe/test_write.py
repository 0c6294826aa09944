"""Writing a recipe: clean TOML that reads back as the same recipe."""

from __future__ import annotations

import tomllib
from fractions import Fraction
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from tarebook.quantities.amount import parse_amount
from tarebook.recipe import (
    Drying,
    Finish,
    FinishBy,
    HeatStep,
    Ingredient,
    Meat,
    MeatForm,
    Panel,
    Part,
    Recipe,
    ScaleBy,
    Soak,
    Surface,
    load_recipe,
    read_recipe,
    shipped_recipes,
)
from tarebook.recipe.write import SCHEMA, plain_number, schema_beside, to_toml
from tarebook.where import folder


@pytest.mark.parametrize("name", shipped_recipes())
def test_shipped_recipes_survive(name: str) -> None:
    """Read, write, read is the same recipe, with and without the lines to uncomment."""
    recipe, _ = load_recipe(name)
    for hints in (False, True):
        again, findings = read_recipe(to_toml(recipe, hints=hints), file=recipe.file)
        assert recipe == again, [str(finding) for finding in findings]


def test_what_it_looks_like() -> None:
    """The schema first, then sections with a word on each, nothing that was not said."""
    recipe, _ = read_recipe(
        'title = "Elk \\"best\\""\n[rub]\n"dark one" = { food = "honey", amount = "1 Tbsp", '
        'scale = "whole" }\nsalt-table = "1 tsp"\n[meat]\nfood = "elk"\namount = "1 lb"\n'
        '[soak]\nhours = 12\npoured-away = false\n[method]\nsteps = ["Rub.", "Dry."]\n',
        file="x",
    )
    assert recipe is not None
    expected = """\
#:schema ../reference/recipe.schema.json
title = "Elk \\"best\\""

# What is dried, and the weight that the amounts are for.
[meat]
food = "elk"
amount = "1 lb"

# What is rubbed onto the meat and stays on it.
[rub]
"dark one" = { food = "honey", amount = "1 Tbsp", scale = "whole" }
salt-table = "1 tsp"

# How long the meat lies in its marinade, and its surface after.
[soak]
hours = 12
poured-away = false

# Steps and notes for the card.
[method]
steps = [
    "Rub.",
    "Dry.",
]
"""
    assert expected == to_toml(recipe)
    assert "#:schema own.json\n" == to_toml(recipe, schema="own.json").splitlines(True)[0]


def test_hints_show_every_key_that_was_left_out() -> None:
    """A new recipe shows what else could be said, as lines to uncomment, each of them right."""
    recipe, _ = read_recipe(
        'title = "x"\n[rub]\nsalt-table = "1 tsp"\n[meat]\nfood = "elk"\namount = "1 lb"\n',
        file="x",
    )
    assert recipe is not None
    text = to_toml(recipe, hints=True)
    for written in ("thickness", "wild", "surface", "step", "temperature", "yield", "notes"):
        assert f"\n# {written} = " in text
    for row in text.splitlines():
        if row.startswith("# ") and " = " in row:
            assert tomllib.loads(row.removeprefix("# "))


@pytest.mark.parametrize(
    ("value", "expected"),
    [
        (Fraction(0), "0"),
        (Fraction(10), "10"),
        (Fraction(25, 4), "6.25"),
        (Fraction(1, 200), "0.005"),
        (Fraction(3, 10), "0.3"),
        (Fraction(1200), "1200"),
        (Fraction(1, 3), "1/3"),
        (Fraction(5, 3), "1 2/3"),
    ],
)
def test_plain_number(value: Fraction, expected: str) -> None:
    """A number is written as a decimal where that is exact, otherwise as a fraction."""
    assert expected == plain_number(value)


AMOUNTS = [
    "3/4 cup", "1 1/2 tsp", "½ cup packed", "2-3 Tbsp", "a pinch", "to taste", "2 cloves, minced",
    "1 cup + 2 Tbsp", "2.5 kg", "1 lb 4 oz", "3 T", "2 oz", "1 medium", "0.125 L", "1/3 cup",
]  # fmt: skip
FOODS = ["soy-sauce", "brown-sugar", "garlic", "water", "black-pepper", "shoyu", "maple-syrup"]
WORDS = st.text(
    st.characters(exclude_categories=["C", "Z"], include_characters=" \"\\'#="), min_size=1
).filter(str.strip)
SPANS = st.sampled_from(["8-12", "12", "0.5", "1/2 - 3/4", "8 to 12 hours"])
FIGURES = st.fractions(0, 5000, max_denominator=60)


@st.composite
def panels(draw: st.DrawFn) -> Panel:
    """Draw the panel of a bottle with at least a serving and one figure."""
    volume = draw(st.none() | st.fractions(Fraction(1, 4), 480, max_denominator=12))
    mass = draw(st.fractions(Fraction(1, 4), 480, max_denominator=12))
    # No part outweighs its serving: a panel that says so is refused.
    parts = FIGURES.map(lambda figure: figure * mass / 25_000)
    figures = draw(st.lists(st.none() | parts, min_size=7, max_size=7))
    sugars = figures[0]
    added = None if sugars is None or figures[1] is None else min(sugars, figures[1])
    less = draw(st.booleans())
    return Panel(
        serving_ml=volume,
        serving_g=mass,
        sodium_mg=draw(parts),
        sugars_g=sugars,
        added_sugars_g=added,
        energy_kcal=figures[2],
        fat_g=figures[3],
        carbohydrate_g=figures[4],
        protein_g=figures[5],
        potassium_mg=figures[6],
        fiber_g=Fraction(1) if less else None,
        under=("fiber_g",) if less else (),
    )


@st.composite
def ingredients(draw: st.DrawFn, name: str, part: Part) -> str:
    """Draw one ingredient line as text, its panel and note left to the builder below."""
    values = {"food": draw(st.sampled_from(FOODS)), "amount": draw(st.sampled_from(AMOUNTS))}
    if draw(st.booleans()):
        values["scale"] = draw(st.sampled_from(list(ScaleBy))).value
    if draw(st.booleans()):
        values["form"] = draw(st.sampled_from(["packed", "minced, fresh", "whole"]))
    if draw(st.booleans()):
        values["note"] = draw(WORDS)[:200].strip() or "x"
    inside = ", ".join(f"{key} = {_quoted(value)}" for key, value in values.items())
    return f"{_quoted(name)} = {{ {inside} }}"


@st.composite
def recipe_texts(draw: st.DrawFn) -> str:
    """Draw the text of a recipe with all that the format can say."""
    rows = [f"title = {_quoted(draw(WORDS)[:200].strip() or 'x')}"]
    rows += [f"about = {_quoted(draw(WORDS))}"] * draw(st.integers(0, 1))
    rows += [f'cup = "{draw(st.sampled_from(["us", "metric", "label"]))}"']
    rows += ["[meat]", f'food = "{draw(st.sampled_from(["deer", "bison", "salmon-chum"]))}"']
    rows += [f'amount = "{draw(st.sampled_from(["2 1/2 lb", "6 lb 4 oz", "2.7kg"]))}"']
    if draw(st.booleans()):
        rows += [f'thickness = "{draw(st.sampled_from(["1/4 in", "5-7 mm", "0.6 cm"]))}"']
    rows += [f'form = "{draw(st.sampled_from(list(MeatForm))).value}"']
    rows += [f"wild = {draw(st.sampled_from(['true', 'false']))}"] * draw(st.integers(0, 1))
    for part in draw(st.permutations(list(Part))):
        names = draw(st.lists(WORDS.map(lambda word: word[:200].strip() or "x"), unique=True))
        rows += [f"[{part.value}]", *(draw(ingredients(name, part)) for name in names[:4])]
    if draw(st.booleans()):
        rows += ["[soak]", f"hours = {_quoted(draw(SPANS))}"]
        rows += [f'surface = "{draw(st.sampled_from(list(Surface))).value}"']
        rows += [f"poured-away = {draw(st.sampled_from(['true', 'false']))}"]
    if draw(st.booleans()):
        heat = draw(st.sampled_from([step for step in HeatStep if step != HeatStep.UNSTATED]))
        rows += ["[heat]", f'step = "{heat.value}"']
    rows += ["[drying]", f"hours = {draw(st.sampled_from(['6', '0.25', '5.5']))}"]
    rows += [f'temperature = "{draw(st.sampled_from(["155 F", "60-70 °C", "62.5 C"]))}"']
    finish = [
        "",
        "moisture-to-protein = 0.58",
        'moisture = "25 %"',
        'yield = "1/3 %"',
        "water-activity = 0.8",
    ]
    rows += [draw(st.sampled_from(finish))]
    rows += ["[method]", f"steps = [{', '.join(map(_quoted, draw(st.lists(WORDS))))}]"]
    return "\n".join(rows) + "\n"


def _quoted(text: str) -> str:
    return '"' + text.replace("\\", "\\\\").replace('"', '\\"') + '"'


@settings(deadline=None, max_examples=60, suppress_health_check=[HealthCheck.too_slow])
@given(recipe_texts())
def test_read_write_read_is_the_same(text: str) -> None:
    """Whatever a recipe says, writing it and reading that again says the same."""
    recipe, findings = read_recipe(text, file="x")
    assert recipe is not None, [str(finding) for finding in findings]
    again, findings = read_recipe(to_toml(recipe), file="x")
    assert recipe == again, [str(finding) for finding in findings]


@settings(deadline=None)
@given(panels())
def test_panels_survive(panel: Panel) -> None:
    """A panel's figures are written exactly, thirds and all."""
    honey = Ingredient(
        name="honey",
        food="honey",
        amount=parse_amount("1 Tbsp"),
        panel=panel,
        path="marinade.honey",
    )
    recipe = _recipe(ingredients=(honey,))
    again, findings = read_recipe(to_toml(recipe), file="x")
    assert recipe == again, [str(finding) for finding in findings]


def test_values_made_in_code_need_no_words() -> None:
    """A recipe that was never written is written from its numbers alone."""
    recipe = _recipe(
        meat=Meat(
            food="elk",
            amount=parse_amount("1 lb").times(Fraction(7, 3)),
            mass_g=Fraction("1058.382216") + Fraction(2, 3) / 10**6,
            thickness_mm=(5.0, 6.5, 8.0),
        ),
        soak=Soak(hours=(8.0, 10.0, 12.0), stated=True),
        drying=Drying(
            temperature_f=(145.4, 158.0),
            hours=(5.0, 5.0),
            finish=Finish(by=FinishBy.YIELD, value=(0.38, 0.42, 0.46)),
        ),
    )
    again, findings = read_recipe(to_toml(recipe), file="x")
    assert again is not None, [str(finding) for finding in findings]
    assert recipe.meat.thickness_mm == again.meat.thickness_mm
    assert parse_amount("2 1/3 lb") == again.meat.amount
    assert recipe.soak.hours == again.soak.hours
    assert recipe.drying.temperature_f == again.drying.temperature_f
    assert recipe.drying.hours == again.drying.hours
    assert again.drying.finish is not None
    assert pytest.approx((0.38, 0.42, 0.46)) == again.drying.finish.value


def _recipe(**values: object) -> Recipe:
    meat = Meat(food="elk", amount=parse_amount("1 kg"), mass_g=Fraction(1000), wild=True)
    return Recipe(**{"title": "x", "meat": meat, "ingredients": (), "file": "x", **values})  # type: ignore[arg-type]


def test_the_schema_is_named_from_inside_the_project_alone(tmp_path: Path) -> None:
    """By the way from the file to it; elsewhere there is no such way that would last."""
    recipes = folder("recipes")

    assert SCHEMA == schema_beside(recipes / "new.toml")
    assert "reference/recipe.schema.json" == schema_beside(recipes.parent / "new.toml")
    assert "" == schema_beside(tmp_path / "new.toml")


def test_without_a_schema_the_title_comes_first() -> None:
    """No empty line of a schema either."""
    recipe, _ = load_recipe("juniper-venison")

    assert to_toml(recipe, schema="").startswith("title = ")
