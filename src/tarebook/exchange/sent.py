"""A recipe of ours as the lines of schema.org's recipeIngredient, which read back the same.

The name of each food is the plainest one of the table under which the line, read by our own
reader, gives back the same food and the same amount.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from fractions import Fraction

from tarebook.exchange.formed import formed
from tarebook.exchange.line import IngredientLine, read_line
from tarebook.exchange.vocabulary import singular
from tarebook.figures.foods import food
from tarebook.findings import FoodUnknown
from tarebook.quantities import Amount
from tarebook.recipe.model import Ingredient, Part, Recipe, ScaleBy
from tarebook.recipe.write import plain_number

__all__ = ["recipe_lines"]

_PURPOSE = {Part.MARINADE: "", Part.RUB: "for the rub", Part.MIXED_IN: "mixed into the meat"}


def recipe_lines(recipe: Recipe, factor: Fraction = Fraction(1)) -> list[str]:
    """Return the ingredient lines of a recipe, the meat first.

    Args:
        recipe: as read.
        factor: today's meat over the recipe's [-].

    Example:
        A line reads ``3 Tbsp brown sugar, packed``.
    """
    meat = recipe.meat
    weight = meat.amount if factor == 1 else meat.amount.times(factor)
    thick = f"{meat.thickness_written} thick" if meat.thickness_written else ""
    lines = [_line(weight, meat.food, thick)]
    return [*lines, *(_ingredient(one, factor) for one in recipe.ingredients)]


def _ingredient(one: Ingredient, factor: Fraction) -> str:
    grows = factor != 1 and one.scale is not ScaleBy.FIXED
    amount = one.amount.times(factor) if grows else one.amount
    remarks = [_PURPOSE[one.part], one.note, one.bottle.name if one.bottle else ""]
    if one.strength_percent is not None:
        remarks.insert(0, f"{plain_number(one.strength_percent)} % sodium nitrite")
    return _line(amount._replace(form=one.form), one.food, *remarks)


def _line(amount: Amount, key: str, *remarks: str) -> str:
    """Return the first way of saying it that reads back the same, with remarks if they do."""
    bare = amount._replace(form=())
    tail = f", {' '.join(amount.form)}" if amount.form else ""
    told = [remark for remark in remarks if remark]
    for lead in ("", "note: "):  # a remark of form words alone would be read as a form
        notes = "".join(f" ({lead}{one})" for one in told)
        for name in _names(key, {amount.unit, *amount.form}):
            text = f"{bare} {name}{tail}" if amount.low else f"{name}, {bare}{tail}"
            if _same(read_line(text + notes), amount, key):
                return text + notes
    return f"{bare} {key.replace('-', ' ')}{tail}"


def _names(key: str, said: set[str]) -> Iterator[str]:
    """Yield what a food is called: its printed name turned round, plain names of it, its key.

    Names that say unit or form again come last: no two cloves of crushed garlic clove, crushed.
    """
    one = food(key)
    plain = re.sub(r" \([^()]*\)", "", one.name)
    first, _, behind = plain.partition(", ")
    names = [f"{behind} {first}".strip(), *one.aliases, key.replace("-", " "), key]
    plainly = (name for name in names if not {",", "("} & set(name) and " or " not in name)
    yield from sorted(dict.fromkeys(plainly), key=lambda name: _holds(name, said))


def _holds(name: str, said: set[str]) -> bool:
    return not said.isdisjoint((*name.split(), *map(singular, name.split())))


def _same(line: IngredientLine, amount: Amount, key: str) -> bool:
    if line.amount is None or len(line.foods) != 1:
        return False
    try:
        found = food(line.foods[0]).key
    except FoodUnknown:
        return False
    return found == key and formed(line.amount, line.note)[0] == amount
