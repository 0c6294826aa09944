"""Shell completion of recipe and food names."""

from __future__ import annotations


def recipes(incomplete: str) -> list[str]:
    """Return recipes by name, and recipe files here or in the folder typed, that begin as typed."""
    from pathlib import Path

    from tarebook.recipe.load import own_names, shipped_recipes

    known = sorted({*own_names(), *shipped_recipes()})
    names = [name for name in known if name.startswith(incomplete)]
    here = Path(incomplete) if incomplete.endswith("/") else Path(incomplete).parent
    files = [str(path) for path in sorted(here.glob("*.toml"))]
    return names + [name for name in files if name.startswith(incomplete)]


def foods(incomplete: str) -> list[str]:
    """Return foods whose key begins as typed, the cook's own among them."""
    from tarebook.figures.foods import food_keys
    from tarebook.recipe.bottles import own_foods

    known = dict.fromkeys((*own_foods(), *food_keys()))
    return [key for key in known if key.startswith(incomplete.lower())]


def bottles(incomplete: str) -> list[str]:
    """Return the cook's own bottles that begin as typed."""
    from tarebook.recipe.bottles import own_foods

    return [key for key in own_foods() if key.startswith(incomplete.lower())]


def drawers(incomplete: str) -> list[str]:
    """Return measuring sets that begin as typed."""
    return [name for name in ("basic", "full", "metric") if name.startswith(incomplete)]


def card_forms(incomplete: str) -> list[str]:
    """Return what a card can be that begins as typed."""
    forms = ("html", "json-ld", "markdown", "pdf", "svg", "text")
    return [name for name in forms if name.startswith(incomplete)]


def card_sizes(incomplete: str) -> list[str]:
    """Return card sizes that begin as typed."""
    from tarebook.paper.sizes import size_names

    return [name for name in size_names() if name.startswith(incomplete.casefold())]
