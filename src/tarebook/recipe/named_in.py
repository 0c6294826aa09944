"""Which of the cook's own recipes name a food, told from their text alone."""

from __future__ import annotations

from collections.abc import Mapping

from tarebook.figures.foods import normalised
from tarebook.files import read_bytes
from tarebook.findings import FileUnreadable
from tarebook.recipe import keys
from tarebook.recipe.load import SUFFIX, own_names, own_recipes
from tarebook.toml.text import MOST_BYTES


def recipes_naming(food: str) -> tuple[str, ...]:
    """Return the names of the cook's own recipes that have a food among their ingredients.

    Args:
        food: its name; a bottle's, or another.

    Returns:
        In alphabetical order. A file that is no TOML is among them if the name stands in it.
    """
    sought = normalised(food)
    return tuple(name for name in own_names() if _names(name, sought))


def _names(recipe: str, sought: str) -> bool:
    import tomllib

    try:
        data = read_bytes(own_recipes() / f"{recipe}{SUFFIX}", most=MOST_BYTES, what="recipe")
    except FileUnreadable:
        return False
    text = data.decode("utf-8-sig", "replace")
    if sought not in normalised(text):  # quick: most recipes name something else
        return False
    try:
        document = tomllib.loads(text.replace("\r\n", "\n"))
    except tomllib.TOMLDecodeError:
        return True
    return any(normalised(name) == sought for name in foods_of(document))


def foods_of(document: Mapping[str, object]) -> list[str]:
    """Return what each ingredient is: the food that its line states, or its own name."""
    found = []
    for part in keys.PARTS:
        table = document.get(part)
        for name, value in table.items() if isinstance(table, dict) else ():
            stated = value.get("food", name) if isinstance(value, dict) else name
            found.append(stated if isinstance(stated, str) else name)
    return found
