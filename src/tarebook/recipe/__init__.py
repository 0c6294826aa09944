"""Recipes: from a file a cook wrote to frozen values, with everything wrong said at once.

The road of a file, in order (what any TOML file needs is in the room ``toml``):

- ``load``: finds it, by path, by the name of the cook's own or a shipped one, or piped in.
- ``fields``, ``key_faults``: typed getters; tables with fixed keys, and what is said of others.
- ``spans``, ``panel``: hours, temperatures and percentages; the panel of a bottle.
- ``bottle``, ``bottles``: a food of the cook's own from its pack, and where its file lies.
- ``ingredients``, ``cure``: the lines of a marinade, rub or mix; how curing salt must be written.
- ``read``: puts it all together into a ``Recipe``.

And beside the road:

- ``model``: what a recipe is, once read.
- ``keys``: every key the format has; the reader and the schema follow it.
- ``write``, ``write_bottle``: a recipe as clean, commented TOML; a bottle, kept in its folder.
- ``tidy``: a file set down in the order of the format, every remark kept.
- ``questions``, ``bottle_questions``: the questions that start a new recipe; those of a bottle.
- ``own_bottles``, ``named_in``: all bottles, and setting one aside; which recipes name a food.
- ``schema``: the JSON Schema for editors, ``python -m tarebook.recipe.schema``.

The last of these are imported by those who need them, so that scaling does not wait for them.
"""

from tarebook.recipe.load import (
    find_recipes,
    load_recipe,
    recipe_bytes,
    shipped_recipes,
)
from tarebook.recipe.model import (
    Bottle,
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
)
from tarebook.recipe.read import read_recipe

__all__ = [
    "Bottle",
    "Drying",
    "Finish",
    "FinishBy",
    "HeatStep",
    "Ingredient",
    "Meat",
    "MeatForm",
    "Panel",
    "Part",
    "Recipe",
    "ScaleBy",
    "Soak",
    "Surface",
    "find_recipes",
    "load_recipe",
    "read_recipe",
    "recipe_bytes",
    "shipped_recipes",
]
