"""The JSON Schema: in step with the reader, and of one mind with it on what can be checked."""

from __future__ import annotations

import json
import tomllib
from typing import Any

import pytest
from jsonschema import Draft7Validator

from tarebook.figures.foods import food_keys
from tarebook.recipe import find_recipes, keys, read_recipe
from tarebook.recipe.schema import FILE, schema, schema_text
from tarebook.where import folder

BASE = """\
title = "Strips"
[meat]
food = "deer"
amount = "1 kg"
[rub]
salt-table = "1 tsp"
"""


@pytest.fixture(scope="module")
def validator() -> Draft7Validator:
    """Give a validator of the schema that is shipped."""
    shipped = json.loads((folder("reference") / FILE).read_text(encoding="utf-8"))
    Draft7Validator.check_schema(shipped)
    return Draft7Validator(shipped)


def test_shipped_file_is_in_step() -> None:
    """The shipped file is what the code makes; after a change run ``python -m
    tarebook.recipe.schema``."""
    kept = (folder("reference") / FILE).read_text(encoding="utf-8")
    assert schema_text() == kept, "write it anew: python -m tarebook.recipe.schema"


def test_it_knows_every_key_and_every_food() -> None:
    """An editor can complete every key of the format and every food of the table."""
    made = schema()
    assert {*keys.TOP, *keys.SECTIONS, *keys.PARTS} == set(made["properties"])
    for name, known in keys.SECTIONS.items():
        assert set(known) == set(made["properties"][name]["properties"])
    assert set(food_keys()) == set(made["definitions"]["part"]["properties"])
    assert list(food_keys()) == made["definitions"]["food"]["anyOf"][0]["enum"]


@pytest.mark.parametrize("path", find_recipes(folder("recipes")), ids=lambda path: path.stem)
def test_shipped_recipes_are_valid(path: Any, validator: Draft7Validator) -> None:
    """Every recipe that is shipped names the schema at its top and passes it."""
    text = path.read_text(encoding="utf-8")
    assert text.startswith(f"#:schema ../reference/{FILE}\n")
    assert [] == [error.message for error in validator.iter_errors(tomllib.loads(text))]


GOOD = [
    ("", ""),
    ('"1 tsp"', '"to taste"'),
    ('"1 tsp"', '"½ cup packed"'),
    ('"1 tsp"', '"a pinch"'),
    ('"1 tsp"', '{ amount = "1 tsp", scale = "whole", form = "fine", note = "n" }'),
    (
        '"1 tsp"',
        '{ amount = "1 tsp", panel = { serving = "1 tsp", sodium = "1.2 g", energy = "0 kcal" } }',
    ),
    ("salt-table", '"Green Onions"'),
    ('salt-table = "1 tsp"', 'x = { food = "Soy Sauce", amount = "1 cup" }'),
    (
        'salt-table = "1 tsp"',
        'curing-salt-1 = { amount = "2.8 g", strength = "6.25 %", scale = "with meat" }',
    ),
    ("[rub]", '[soak]\nhours = 12\nsurface = "patted"\npoured-away = false\n[rub]'),
    ("[rub]", '[soak]\nhours = "8-12"\n[heat]\nstep = "oven after drying"\n[rub]'),
    ("[rub]", '[drying]\ntemperature = "68 °C"\nhours = 0.5\nmoisture = "20-30 %"\n[rub]'),
    ("[rub]", '[drying]\nmoisture-to-protein = 0.58\n[method]\nsteps = []\nnotes = ["n"]\n[rub]'),
    ("[rub]", "[mixed-in]\n[marinade]\n[rub]"),
    ('"deer"', '"Venison"'),
    ('"1 kg"', '"1 kg"\nthickness = "5-7 mm"\nform = "ground"\nwild = true'),
    ('"Strips"', '"Strips"\nabout = "So."\ncup = "metric"'),
]

BAD = [
    ('title = "Strips"', ""),
    ('title = "Strips"', "title = 3"),
    ('title = "Strips"', 'title = " "'),
    ('title = "Strips"', f'title = "{"x" * 201}"'),
    ('title = "Strips"', 'title = "x"\ntitel = "x"'),
    ('title = "Strips"', 'title = "x"\ncup = "imperial"'),
    ('food = "deer"', ""),
    ('food = "deer"', "food = 3"),
    ('amount = "1 kg"', "amount = 1"),
    ('amount = "1 kg"', 'amount = "some"'),
    ('amount = "1 kg"', 'amount = "1 kg"\nform = "strip"'),
    ('amount = "1 kg"', 'amount = "1 kg"\nwild = "yes"'),
    ('amount = "1 kg"', 'amount = "1 kg"\nthickness = 6'),
    ('"1 tsp"', "1"),
    ('"1 tsp"', "true"),
    ('"1 tsp"', '"some"'),
    ('"1 tsp"', '{ food = "salt-table" }'),
    ('"1 tsp"', '{ amount = "1 tsp", scale = "double" }'),
    ('"1 tsp"', '{ amount = "1 tsp", scael = "fixed" }'),
    ('"1 tsp"', '{ amount = "1 tsp", panel = { sodium = "5 mg" } }'),
    ('"1 tsp"', '{ amount = "1 tsp", panel = { serving = "1 tsp", sodium = 5 } }'),
    ('"1 tsp"', '{ amount = "1 tsp", panel = { serving = "1 tsp", sodium = "5 oz" } }'),
    ("[rub]", "[[rub]]"),
    ('salt-table = "1 tsp"', 'curing-salt-1 = "1 tsp"'),
    ('salt-table = "1 tsp"', 'curing-salt-1 = { amount = "2.8 g" }'),
    (
        'salt-table = "1 tsp"',
        'curing-salt-1 = { amount = "2.8 g", strength = "6.25 %", scale = "fixed" }',
    ),
    ('salt-table = "1 tsp"', 'curing-salt-2 = { amount = "2.8 g", strength = "6.25 %" }'),
    ("[rub]", "[soak]\nhours = 0\n[rub]"),
    ("[rub]", '[soak]\nhours = "overnight"\n[rub]'),
    ("[rub]", '[soak]\nsurface = "dry"\n[rub]'),
    ("[rub]", '[heat]\nstep = "simmer"\n[rub]'),
    ("[rub]", "[drying]\ntemperature = 155\n[rub]"),
    ("[rub]", '[drying]\ntemperature = "155"\n[rub]'),
    ("[rub]", "[drying]\nmoisture = 0.25\n[rub]"),
    ("[rub]", '[drying]\nmoisture = "25 %"\nyield = "40 %"\n[rub]'),
    ("[rub]", '[method]\nsteps = "Dry."\n[rub]'),
    ("[rub]", "[method]\nsteps = [3]\n[rub]"),
    ("[rub]", "[sauce]\nx = 1\n[rub]"),
]


@pytest.mark.parametrize(("was", "put"), GOOD)
def test_what_the_reader_takes_is_valid(was: str, put: str, validator: Draft7Validator) -> None:
    """An editor marks nothing that the reader takes."""
    text = BASE.replace(was, put) if was else BASE
    recipe, findings = read_recipe(text, file="x")
    assert recipe is not None, [str(finding) for finding in findings]
    assert [] == [error.message for error in validator.iter_errors(tomllib.loads(text))]


@pytest.mark.parametrize(("was", "put"), BAD)
def test_what_is_not_valid_the_reader_refuses(
    was: str, put: str, validator: Draft7Validator
) -> None:
    """What an editor marks, the reader refuses, too: both follow the same table of keys."""
    text = BASE.replace(was, put)
    assert not validator.is_valid(tomllib.loads(text))
    recipe, _ = read_recipe(text, file="x")
    assert recipe is None
