"""The JSON Schema of the recipe format, for editors that complete and check while one types.

Made from the same table of keys that the reader follows. Draft 7, the newest that editors' TOML
plugins handle well. It knows less than the reader: amounts are read only there, and a food may
go by any of its names.

    python -m tarebook.recipe.schema

writes ``reference/recipe.schema.json`` anew.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import Any

from tarebook.figures.foods import food, food_keys
from tarebook.recipe import keys
from tarebook.recipe.fields import LONGEST_LINE, LONGEST_TEXT, MOST_HOURS, MOST_TEXTS
from tarebook.recipe.ingredients import MOST_INGREDIENTS
from tarebook.recipe.keys import Key, Takes
from tarebook.recipe.model import FinishBy
from tarebook.where import folder

FILE = "recipe.schema.json"

Schema = dict[str, Any]


def schema() -> Schema:
    """Return the schema as JSON values, in a settled order."""
    return {
        "$schema": "http://json-schema.org/draft-07/schema#",
        "title": "A tarebook recipe",
        "description": "What is dried, what goes on it, and how: for one weight of meat.",
        **_table(keys.TOP, extra=_sections(), needed=["meat"]),
        "definitions": _definitions(),
    }


def schema_text() -> str:
    """Return the schema as the text of its file."""
    import json

    return json.dumps(schema(), indent=1, ensure_ascii=False) + "\n"


def write_schema() -> None:
    """Write the schema into the reference folder of this checkout."""
    (folder("reference") / FILE).write_text(schema_text(), encoding="utf-8")


def _sections() -> Schema:
    sections: Schema = {
        name: {"description": keys.SAYS_OF_SECTION[name], **_table(known)}
        for name, known in keys.SECTIONS.items()
    }
    sections["drying"]["not"] = {"anyOf": _finishes_twice()}
    parts = {
        part: {"description": says, "allOf": [_ref("part")]} for part, says in keys.PARTS.items()
    }
    return {**sections, **parts}


def _finishes_twice() -> list[Schema]:
    names = [by.value for by in FinishBy]
    return [
        {"required": [one, other]}
        for place, one in enumerate(names)
        for other in names[place + 1 :]
    ]


def _table(
    known: Mapping[str, Key], *, extra: Schema | None = None, needed: list[str] | None = None
) -> Schema:
    required = [key.name for key in known.values() if key.needed] + (needed or [])
    return {
        "type": "object",
        "properties": {**{key.name: _key(key) for key in known.values()}, **(extra or {})},
        "additionalProperties": False,
        **({"required": required} if required else {}),
    }


def _key(key: Key) -> Schema:
    import tomllib

    example = tomllib.loads(f"example = {key.example}")["example"]
    return {"description": key.says, **_FORMS[key.takes](key), "examples": [example]}


def _definitions() -> Schema:
    return {
        "amount": _amount(keys.INGREDIENT["amount"]),
        "food": _food(keys.INGREDIENT["food"]),
        "ingredient": {
            "anyOf": [_ref("amount"), _table(keys.INGREDIENT)],
        },
        "cure": _cure(),
        "part": _part(),
    }


def _part() -> Schema:
    return {
        "type": "object",
        "maxProperties": MOST_INGREDIENTS,
        "properties": {key: _ingredient(key) for key in food_keys()},
        "additionalProperties": _ref("ingredient"),
    }


def _ingredient(key: str) -> Schema:
    found = food(key)
    if found.curing and found.nitrate_percent:
        return {"description": f"{found.name}: {found.advice}", "not": {}}
    shape = "cure" if found.curing else "ingredient"
    return {"description": found.name, "allOf": [_ref(shape)]}


def _cure() -> Schema:
    """A curing salt is weighed, states its strength, and scales with the meat alone."""
    table = _table(keys.INGREDIENT)
    table["properties"]["scale"] = {"enum": ["with meat"]}
    return {**table, "required": ["amount", "strength"]}


def _ref(name: str) -> Schema:
    return {"$ref": f"#/definitions/{name}"}


_NOT_EMPTY: Schema = {"type": "string", "pattern": r"\S"}
_NUMBER = r"[0-9¼-¾⅐-⅞]"


def _text(most: int) -> Callable[[Key], Schema]:
    return lambda key: {**_NOT_EMPTY, "maxLength": most}


def _pattern(pattern: str) -> Callable[[Key], Schema]:
    return lambda key: {"type": "string", "pattern": pattern}


def _texts(key: Key) -> Schema:
    return {"type": "array", "items": _text(LONGEST_TEXT)(key), "maxItems": MOST_TEXTS}


def _choice(key: Key) -> Schema:
    return {"enum": list(key.words)}


def _flag(key: Key) -> Schema:
    return {"type": "boolean"}


def _food(key: Key) -> Schema:
    return {"type": "string", "anyOf": [{"enum": list(food_keys())}, _NOT_EMPTY]}


def _dried(key: Key) -> Schema:
    names = [name for name in food_keys() if food(name).species_group]
    return {"type": "string", "anyOf": [{"enum": names}, _NOT_EMPTY]}


def _amount(key: Key) -> Schema:
    # To taste, a pinch, or anything with a number: the reader knows the rest.
    return {"type": "string", "pattern": rf"{_NUMBER}|[Tt]o taste|^\s*an? "}


def _number_or(pattern: str, most: int) -> Callable[[Key], Schema]:
    number = {"type": "number", "exclusiveMinimum": 0, "maximum": most}
    return lambda key: {"anyOf": [number, {"type": "string", "pattern": pattern}]}


def _panel(key: Key) -> Schema:
    return _table(keys.PANEL)


_FORMS: Mapping[Takes, Callable[[Key], Schema]] = {
    Takes.LINE: _text(LONGEST_LINE),
    Takes.TEXT: _text(LONGEST_TEXT),
    Takes.TEXTS: _texts,
    Takes.CHOICE: _choice,
    Takes.FLAG: _flag,
    Takes.FOOD: lambda key: _ref_to_food(),
    Takes.DRIED: _dried,
    Takes.WEIGHT: _pattern(_NUMBER),
    Takes.LENGTH: _pattern(_NUMBER),
    Takes.AMOUNT: lambda key: {"allOf": [_ref("amount")]},
    Takes.FORM: _pattern(r"[A-Za-z]"),
    Takes.STRENGTH: _pattern(rf"{_NUMBER}\s*(%|per ?cent)"),
    Takes.PERCENT: _pattern(rf"{_NUMBER}\s*(%|per ?cent)"),
    Takes.RATIO: _number_or(_NUMBER, 5),
    Takes.ACTIVITY: _number_or(_NUMBER, 1),
    Takes.HOURS: _number_or(_NUMBER, MOST_HOURS),
    Takes.TEMPERATURE: _pattern(rf"{_NUMBER}.*[FfCc]"),
    Takes.COLD: _pattern(rf"{_NUMBER}.*[FfCc]"),
    Takes.SERVING: _pattern(_NUMBER),
    Takes.MICROGRAMS: _pattern(rf"{_NUMBER}\s*(mc|u|m)g"),
    Takes.MILLIGRAMS: _pattern(rf"{_NUMBER}\s*m?c?g"),
    Takes.GRAMS: _pattern(rf"{_NUMBER}\s*m?g"),
    Takes.KILOCALORIES: _pattern(rf"{_NUMBER}\s*k?[Cc]al"),
    Takes.PANEL: _panel,
    Takes.PRICE: lambda key: {"type": "number", "minimum": 0},
}


def _ref_to_food() -> Schema:
    return {"allOf": [_ref("food")]}


if __name__ == "__main__":
    write_schema()
