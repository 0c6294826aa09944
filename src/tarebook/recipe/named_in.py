"""Which of the cook's own recipes name a food, told from their text alone."""

from __future__ import annotations

from collections.abc import Mapping

from tarebook.figures.foods import normalised
from tarebook.files import read_bytes
from tarebook.findings import FileUnreadable
from tarebook.recipe import keys
from tarebook.recipe.load import SUFFIX, own_names, own_recipes
from tarebook.toml.text import MOST_BYTES
from tarebook.tuples import NamedTuple


class Namers(NamedTuple):
    """Who of the cook's own recipes names a food, in alphabetical order.

    Attributes:
        recipes: those that have it among their ingredients; one that is no TOML if the name stands
            in it.
        unread: those that cannot be read, so that nobody knows.
    """

    recipes: tuple[str, ...]
    unread: tuple[str, ...]


def recipes_naming(food: str) -> Namers:
    """Return which of the cook's own recipes have a food among their ingredients.

    Args:
        food: its name; a bottle's, or another.
    """
    sought = normalised(food)
    texts = {name: _text(name) for name in own_names()}
    return Namers(
        tuple(name for name, text in texts.items() if text is not None and _names(text, sought)),
        tuple(name for name, text in texts.items() if text is None),
    )


def _text(recipe: str) -> str | None:
    """Return the text of a recipe, or None where it cannot be read."""
    try:
        data = read_bytes(own_recipes() / f"{recipe}{SUFFIX}", most=MOST_BYTES, what="recipe")
        return None if len(data) > MOST_BYTES else data.decode("utf-8-sig")
    except (FileUnreadable, UnicodeDecodeError):
        return None


def _names(text: str, sought: str) -> bool:
    import tomllib

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
