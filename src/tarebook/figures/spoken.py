"""What a cook calls a food that a recipe names by its key in the tables."""

from __future__ import annotations

from functools import cache

from tarebook.figures.foods import Food, food, normalised
from tarebook.findings import FoodUnknown

__all__ = ["spoken"]


@cache
def spoken(name: str) -> str:
    """Return a name as a cook says it: ``oil-olive`` is olive oil, ``ginger-ground`` ground ginger.

    Args:
        name: as a recipe has it: a key of the foods, another name of one, or the cook's own words.

    Returns:
        A key of the tables in words, in the order they are said in; any other name as it is
        written, a single word of it with blanks for its hyphens.

    Example:
        >>> spoken("vinegar-cider"), spoken("soy-sauce"), spoken("grandmother's mix")
        ('cider vinegar', 'soy sauce', "grandmother's mix")
    """
    written = name if " " in name else name.replace("-", " ").strip()
    try:
        found = food(name)
    except FoodUnknown:
        return written
    said = _said(found, written) if normalised(name) == found.key else written
    # "Low" is a claim with a limit of its own (21 CFR 101.61); a sauce with less salt is not low.
    return said.replace("low sodium", "lower-sodium")


def _said(found: Food, written: str) -> str:
    """Return the printed name as one says it, with all that tells it from a food like it."""
    name = _without_aside(found.name)
    head, *kinds = (part.strip() for part in name.split(","))
    if normalised(head) == found.key:
        return head
    key = found.key.split("-")
    if _in_order(key, _words(head)):
        return written
    told = [kind for kind in kinds if set(_words(kind)) <= set(key)]
    rest = set(key) - {word for part in (head, *told) for word in _words(part)}
    return name if rest and len(told) < len(kinds) else " ".join((*told, head))


def _without_aside(name: str) -> str:
    before, opened, after = name.partition(" (")
    return before + after.partition(")")[2] if opened else name


def _words(text: str) -> list[str]:
    return normalised(text).split("-")


def _in_order(words: list[str], among: list[str]) -> bool:
    """Whether some words stand in that order among others."""
    rest = iter(among)
    return all(word in rest for word in words)
