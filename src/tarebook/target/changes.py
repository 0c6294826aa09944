"""What a cook can honestly change, each from nothing (0) to its most (1). Curing salt never is.

A change takes a recipe and a share and gives the changed recipe; it tells in words what it is.
"""

from __future__ import annotations

from collections.abc import Callable
from fractions import Fraction

from tarebook.figures.foods import food
from tarebook.figures.lower_sodium import lower_sodium
from tarebook.figures.nutrients import values
from tarebook.figures.working import value
from tarebook.nutrition.makeup import makeup
from tarebook.quantities.amount import AmountKind
from tarebook.quantities.units import Dimension, dimension, factor
from tarebook.recipe.model import Bottle, HeatStep, Ingredient, Part, Recipe, Surface
from tarebook.tuples import NamedTuple

LOW_SODIUM = "low-sodium"
_SALTY_MG = 400  # [mg per 100 g]: what is watered down for its salt, and not for nothing
_SWEET_G = 10  # [g per 100 g]


class Change(NamedTuple):
    """One thing to change.

    Attributes:
        key: short and stable.
        words: what it is, in a cook's words.
        figures: which figures it can lower.
        applies: whether a recipe has anything for it to work on.
        apply: the recipe with a share of the change, from 0 (as written) to 1 (its most).
        all_or_nothing: whether only 0 and 1 mean anything.
        whole_words: what the most of it is, where that has words of its own.
    """

    key: str
    words: str
    figures: frozenset[str]
    applies: Callable[[Recipe], bool]
    apply: Callable[[Recipe, Fraction], Recipe]
    all_or_nothing: bool = False
    whole_words: str = ""

    def words_at(self, share: Fraction) -> str:
        """Return what a share of it is, in a cook's words."""
        return self.whole_words if share == 1 and self.whole_words else self.words


SODIUM = frozenset({"sodium_mg"})
SUGARS = frozenset({"sugars_g", "added_sugars_g"})
_BOTH = SODIUM | SUGARS


def _measurable(one: Ingredient) -> bool:
    return one.amount.kind is AmountKind.MEASURED and not food(one.food).curing


def _less(one: Ingredient, share: Fraction) -> Ingredient:
    return one._replace(amount=one.amount.times(1 - share))


def _blendable(one: Ingredient) -> bool:
    """Whether a sauce has a kind with less salt: less than its own bottle, where it is one."""
    other = lower_sodium().get(one.food)
    if other is None or not _measurable(one):
        return False
    return one.panel is None or makeup(other).sodium_mg < makeup(one.food, one.panel).sodium_mg


def _blend(recipe: Recipe, share: Fraction) -> Recipe:
    """Return part of each salty sauce exchanged for the one with less salt, cup for cup."""
    return each_changed(
        recipe, _blendable, lambda one: parted(one, lower_sodium()[one.food], share)
    )


def parted(
    one: Ingredient, other: str, share: Fraction, *, bottle: Bottle | None = None
) -> tuple[Ingredient, ...]:
    """Return an ingredient as what stays of it, and what takes the place of the rest.

    Args:
        one: what is there.
        other: key of the food that comes.
        share: of it that is exchanged, from 0 to 1 [-].
        bottle: of the cook's own that comes, or None for the food of the tables.
    """
    if share == 0:
        return (one,)
    amount = one.amount.times(share)._replace(form=())
    comes = one._replace(
        name=other if bottle is None else bottle.key,
        food=other,
        amount=amount,
        form=(),
        panel=None if bottle is None else bottle.panel,
        note="",
        path="",
        bottle=bottle,
    )
    return (comes,) if share == 1 else (_less(one, share), comes)


def _waterable(one: Ingredient) -> bool:
    item = food(one.food)
    sodium = values(item.key)["sodium_mg"] or 0.0
    in_marinade = one.part is Part.MARINADE and _measurable(one)
    return in_marinade and item.poured and item.kind != "salt" and sodium >= _SALTY_MG


def _water(recipe: Recipe, share: Fraction) -> Recipe:
    """Return part of each salty liquid exchanged for water, cup for cup."""
    most = Fraction(value("target-most-water").high)
    return each_changed(recipe, _waterable, lambda one: parted(one, "water", share * most))


def _is_salt(one: Ingredient) -> bool:
    item = food(one.food)
    sodium = values(item.key)["sodium_mg"] or 0.0
    return _measurable(one) and item.kind == "salt" and sodium > 0


def _less_salt(recipe: Recipe, share: Fraction) -> Recipe:
    return each_changed(recipe, _is_salt, lambda one: () if share == 1 else (_less(one, share),))


def _is_sweet(one: Ingredient) -> bool:
    item = food(one.food)
    sugars = values(item.key)["sugars_g"] or 0.0
    return _measurable(one) and item.kind == "sweetener" and sugars >= _SWEET_G


def _less_sweet(recipe: Recipe, share: Fraction) -> Recipe:
    return each_changed(recipe, _is_sweet, lambda one: () if share == 1 else (_less(one, share),))


def _soaks(recipe: Recipe) -> bool:
    """Whether the soak decides what is taken up: not where all is boiled down or simmered in."""
    soaked = any(one.part is Part.MARINADE for one in recipe.ingredients)
    steps = (HeatStep.SIMMERED, HeatStep.BOILED_DOWN)
    return soaked and recipe.heat not in steps and recipe.soak.poured_away


def _can_be_shorter(recipe: Recipe) -> bool:
    return _soaks(recipe) and recipe.soak.hours[1] > value("target-least-hours").likely


def _shorter(recipe: Recipe, share: Fraction) -> Recipe:
    """Return a shorter soak; its spread shrinks with it."""
    likely = recipe.soak.hours[1]
    least = value("target-least-hours").likely
    by = (likely - float(share) * (likely - least)) / likely
    low, middle, high = (one * by for one in recipe.soak.hours)
    soak = recipe.soak._replace(
        hours=(low, middle, high), hours_written=f"{middle:.3g}", stated=True
    )
    return recipe._replace(soak=soak)


def _can_be_patted(recipe: Recipe) -> bool:
    return _soaks(recipe) and recipe.soak.surface is not Surface.PATTED


def _patted(recipe: Recipe, share: Fraction) -> Recipe:
    soak = recipe.soak._replace(surface=Surface.PATTED)
    return recipe if share == 0 else recipe._replace(soak=soak)


def _has_marinade(recipe: Recipe) -> bool:
    return any(one.part is Part.MARINADE and _measurable(one) for one in recipe.ingredients)


def _less_marinade(recipe: Recipe, share: Fraction) -> Recipe:
    """Return less of the whole marinade for the same meat; curing salt goes by the meat."""
    most = 1 - Fraction(value("target-least-marinade").likely)
    return each_changed(
        recipe,
        lambda one: one.part is Part.MARINADE and _measurable(one),
        lambda one: (_less(one, share * most),),
    )


def each_changed(
    recipe: Recipe,
    wanted: Callable[[Ingredient], bool],
    becomes: Callable[[Ingredient], tuple[Ingredient, ...]],
) -> Recipe:
    """Return a recipe with some ingredients changed; lines of one food are one to measure.

    Args:
        recipe: as it is.
        wanted: whether an ingredient is to be changed.
        becomes: what takes its place: nothing, one or several.
    """
    changed: list[Ingredient] = []
    for one in recipe.ingredients:
        for new in becomes(one) if wanted(one) else (one,):
            _put(changed, new)
    return recipe._replace(ingredients=tuple(changed))


def _put(changed: list[Ingredient], new: Ingredient) -> None:
    """Add an ingredient; water for one sauce and water for another are one line to measure."""
    for place, one in enumerate(changed):
        both_written = one.path and new.path
        same = one.known_as == new.known_as and one.part is new.part and not both_written
        added = _sum(one, new) if same else None
        if added is not None:
            changed[place] = added
            return
    changed.append(new)


def _sum(one: Ingredient, new: Ingredient) -> Ingredient | None:
    """Return two lines of a food as one, or None where their amounts do not add up."""
    a, b = one.amount, new.amount
    alike = one.panel == new.panel and one.form == new.form and one.scale is new.scale
    if not alike or a.low is None or a.high is None or b.low is None or b.high is None:
        return None
    if dimension(a.unit) is not dimension(b.unit) or dimension(a.unit) is Dimension.COUNT:
        return None
    by = factor(b.unit, a.unit)
    return one._replace(amount=a._replace(low=a.low + b.low * by, high=a.high + b.high * by))


def _any(wanted: Callable[[Ingredient], bool]) -> Callable[[Recipe], bool]:
    return lambda recipe: any(wanted(one) for one in recipe.ingredients)


CHANGES: tuple[Change, ...] = (
    Change(LOW_SODIUM, "part of the sauce as its lower-sodium kind", SODIUM, _any(_blendable),
           _blend, whole_words="all of the sauce as its lower-sodium kind"),
    Change("water", "part of the salty liquids as water, or as stock without salt", _BOTH,
           _any(_waterable), _water),
    Change("less-salt", "less of the salt itself", SODIUM, _any(_is_salt), _less_salt),
    Change("less-sweet", "less of what sweetens", SUGARS, _any(_is_sweet), _less_sweet),
    Change("patted", "strips patted dry after the soak", _BOTH, _can_be_patted, _patted, True),
    Change("shorter", "a shorter soak", _BOTH, _can_be_shorter, _shorter),
    Change("less-marinade", "more meat to the same marinade, or less marinade to the same meat",
           _BOTH, _has_marinade, _less_marinade),
)  # fmt: skip
"""Every change there is, the mildest to the recipe's taste first."""


def both(first: Change, second: Change) -> Change:
    """Return a change that does all of the first and a share of the second."""
    return Change(
        key=f"{first.key}+{second.key}",
        words=f"{first.whole_words or first.words + ' (the most of it)'}, and {second.words}",
        figures=first.figures | second.figures,
        applies=lambda recipe: (
            first.applies(recipe) and second.applies(first.apply(recipe, Fraction(1)))
        ),
        apply=lambda recipe, share: second.apply(first.apply(recipe, Fraction(1)), share),
        all_or_nothing=second.all_or_nothing,
    )
