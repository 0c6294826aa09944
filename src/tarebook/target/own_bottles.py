"""The cook's own bottles as a change: what stands in the house and holds less than the sauce."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from fractions import Fraction

from tarebook.figures.foods import food
from tarebook.figures.lower_sodium import lower_sodium
from tarebook.figures.spoken import spoken
from tarebook.nutrition.makeup import Makeup, makeup
from tarebook.quantities.amount import AmountKind
from tarebook.recipe.bottles import find_bottles
from tarebook.recipe.model import Bottle, Ingredient, Recipe
from tarebook.target.changes import SODIUM, SUGARS, Change, each_changed, parted

KEY = "own-bottle"
_Held = Callable[[Makeup], float]


def own_bottle_change(recipe: Recipe, figure: str) -> Change | None:
    """Return the change to bottles of the cook's own, or None where none of them holds less.

    A bottle takes the place of a food that it is like, or of one of the same kind with more or less
    salt, cup for cup. It must print the figure: a borrowed one is no reason to open it.

    Args:
        recipe: what is to be changed.
        figure: ``sodium_mg``, ``sugars_g`` or ``added_sugars_g``.
    """
    held = _sodium if figure == "sodium_mg" else _sugars
    shelf = _least_of_each_kind(figure, held)

    def instead(one: Ingredient) -> Bottle | None:
        bottle = shelf.get(_kind(one.food)) if _exchangeable(one) else None
        if bottle is None or held(_made(bottle)) >= held(makeup(one.food, one.panel)):
            return None
        return bottle

    def becomes(one: Ingredient, share: Fraction) -> tuple[Ingredient, ...]:
        bottle = instead(one)
        return (one,) if bottle is None else parted(one, bottle.like, share, bottle=bottle)

    def wanted(one: Ingredient) -> bool:
        return instead(one) is not None

    pairs = {spoken(one.name): instead(one) for one in recipe.ingredients}
    words = [f"the {name} as your own {spoken(own.key)}" for name, own in pairs.items() if own]
    if not words:
        return None
    return Change(
        key=KEY,
        words=f"part of {', of '.join(words)}",
        whole_words=f"all of {', of '.join(words)}",
        figures=SODIUM if figure == "sodium_mg" else SUGARS,
        applies=lambda changed: any(map(wanted, changed.ingredients)),
        apply=lambda changed, share: each_changed(changed, wanted, lambda one: becomes(one, share)),
    )


def _least_of_each_kind(figure: str, held: _Held) -> Mapping[str, Bottle]:
    """Return, for each kind of food, the bottle that prints a figure and holds least of it."""
    found: dict[str, Bottle] = {}
    for one in find_bottles(""):
        before = found.get(_kind(one.like))
        if _prints(one, figure) and (before is None or held(_made(one)) < held(_made(before))):
            found[_kind(one.like)] = one
    return found


def _exchangeable(one: Ingredient) -> bool:
    return one.amount.kind is AmountKind.MEASURED and not food(one.food).curing


def _kind(key: str) -> str:
    """Return what a food and its kind with less salt are both called."""
    return lower_sodium().get(key, key)


def _made(bottle: Bottle) -> Makeup:
    return makeup(bottle.like, bottle.panel)


def _prints(bottle: Bottle, figure: str) -> bool:
    """Whether a bottle's own panel prints the figure; for added sugars, the total will do."""
    if bottle.panel is None:
        return False
    printed = bottle.panel.sodium_mg if figure == "sodium_mg" else bottle.panel.sugars_g
    return printed is not None


def _sodium(made: Makeup) -> float:
    return made.sodium_mg


def _sugars(made: Makeup) -> float:
    return made.sucrose + made.hexose
