"""One food for another in a recipe: volume for volume, by mass, or at a ratio."""

from __future__ import annotations

from fractions import Fraction

from tarebook.figures.foods import Food, food, normalised
from tarebook.figures.measures import density
from tarebook.findings import AskedWrongly, nearest
from tarebook.quantities.amount import Amount
from tarebook.quantities.units import Dimension, dimension, factor
from tarebook.recipe.bottles import Known, known_food
from tarebook.recipe.model import Ingredient, Recipe
from tarebook.scaling.by_meat_weight import bottle_density
from tarebook.scaling.volume_and_mass import mass_of
from tarebook.tuples import NamedTuple

MEAT = "meat"
"""The word that stands for the meat itself in a swap."""


class Swap(NamedTuple):
    """What goes out, what comes in, how much of it, and by which measure.

    Attributes:
        old: name or food of the ingredient, or ``meat``.
        new: food that takes its place, a bottle of the cook's own as well.
        ratio: new over old [-].
        by_mass: gram for gram rather than volume for volume.
    """

    old: str
    new: str
    ratio: Fraction = Fraction(1)
    by_mass: bool = False

    @property
    def words(self) -> str:
        """How an output names it."""
        times = "" if self.ratio == 1 else f" x {float(self.ratio):g}"
        return f"{self.new}{times} for {self.old}{' by weight' if self.by_mass else ''}"


def swap(recipe: Recipe, what: Swap) -> Recipe:
    """Return a recipe with one food in another's place.

    Args:
        recipe: as read.
        what: the swap.

    Returns:
        The changed recipe; a swapped ingredient loses its own bottle's panel, and has that of
        the bottle that takes its place.

    Raises:
        AskedWrongly: the recipe has no such ingredient, curing salt is on either side, or the
            volumes cannot be matched.
        FoodUnknown: the new food is neither in the tables nor a bottle of the cook's own.
    """
    new = known_food(what.new)
    if _is_meat(recipe, what.old):
        return _swap_meat(recipe, new.food, what)
    hits = _named(recipe, what.old)
    if not hits:
        names = [one.name for one in recipe.ingredients]
        near = nearest(what.old, names)
        hint = f"; did you mean {' or '.join(near)}?" if near else f" (it has {', '.join(names)})"
        raise AskedWrongly(f"--swap: the recipe has no {what.old}{hint}")
    if new.food.curing or any(food(one.food).curing for one in hits):
        raise AskedWrongly("--swap: curing salt is never swapped for anything, nor anything for it")
    changed = tuple(_swapped(one, new, what) if one in hits else one for one in recipe.ingredients)
    return recipe._replace(ingredients=changed)


def _named(recipe: Recipe, name: str) -> list[Ingredient]:
    """Return the ingredients of that food; a name that the recipe itself gives stands for one."""
    word = name.strip().lower()
    own = [one for one in recipe.ingredients if one.name.lower() == word != one.food]
    return own or [one for one in recipe.ingredients if _matches(one, name)]


def _is_meat(recipe: Recipe, name: str) -> bool:
    if name.strip().lower() == MEAT:
        return True
    return not any(_matches(one, name) for one in recipe.ingredients) and (
        _key(name) == recipe.meat.food
    )


def _swap_meat(recipe: Recipe, new: Food, what: Swap) -> Recipe:
    if what.ratio != 1:
        raise AskedWrongly("--swap: the meat keeps its weight; leave out the ratio")
    if not new.species_group:
        raise AskedWrongly(f"--swap: {new.key} is no meat, fish or mushroom")
    return recipe._replace(meat=recipe.meat._replace(food=new.key, wild=new.wild))


def _matches(one: Ingredient, name: str) -> bool:
    if one.bottle is not None and normalised(name) == one.bottle.key:
        return True
    return name.strip().lower() == one.name.lower() or _key(name) == one.food


def _key(name: str) -> str | None:
    try:
        return food(name).key
    except LookupError:
        return None


def _swapped(one: Ingredient, new: Known, what: Swap) -> Ingredient:
    return one._replace(
        name=new.shown.key,
        food=new.food.key,
        amount=_amount(one, new, what).times(what.ratio),
        panel=None if new.bottle is None else new.bottle.panel,
        form=(),
        bottle=new.bottle,
    )


def _amount(one: Ingredient, new: Known, what: Swap) -> Amount:
    """Return the old amount as an amount of the new food."""
    old = food(one.food)
    kind = dimension(one.amount.unit) if one.amount.low is not None else None
    if kind is None or kind is Dimension.COUNT:
        return one.amount._replace(form=())
    if what.by_mass:
        mass = mass_of(one.amount, old, one.form, g_per_ml=bottle_density(one.panel))
        if mass is None:
            raise AskedWrongly(f"--swap: nobody has stated what {one.amount} of {old.name} weighs")
        return one.amount._replace(low=mass.low_g, high=mass.high_g, unit="gram", form=())
    if kind is Dimension.MASS:
        return _by_density(one, old, new)
    return one.amount._replace(form=())


def _by_density(one: Ingredient, old: Food, new: Known) -> Amount:
    """Return a weighed amount's volume in the new food, as a weight again."""
    before = bottle_density(one.panel) or _table_density(old.key, one.form)
    after = new.g_per_ml or _table_density(new.food.key)
    if before is None or after is None:
        raise AskedWrongly(
            f"--swap: {one.name} is given by weight, and one of the two has no known density; "
            "add --swap-by mass"
        )
    assert one.amount.low is not None and one.amount.high is not None
    grams = factor(one.amount.unit, "gram") * after / before
    return one.amount._replace(
        low=one.amount.low * grams,
        high=one.amount.high * grams,
        unit="gram",
        form=(),
    )


def _table_density(key: str, form: tuple[str, ...] = ()) -> Fraction | None:
    known = density(key, form)
    return None if known is None else known.g_per_ml
