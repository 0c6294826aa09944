"""The whole recipe for today's meat."""

from __future__ import annotations

from fractions import Fraction

from tarebook.figures.foods import Food, food
from tarebook.findings import QuantityError
from tarebook.quantities.amount import Amount
from tarebook.quantities.drawer import Drawer
from tarebook.quantities.units import Dimension, dimension, factor
from tarebook.recipe.model import Ingredient, Panel, Recipe, ScaleBy
from tarebook.scaling.measuring import Measure, measure_amount
from tarebook.scaling.volume_and_mass import Mass, mass_of
from tarebook.tuples import NamedTuple

_LARGEST_FACTOR = 10_000
_CURE_STEP_G = Fraction(1, 10)


class ScaledIngredient(NamedTuple):
    """One ingredient for today's meat.

    Attributes:
        ingredient: as the recipe has it.
        food: its food.
        measure: what to take.
        mass: what will really be measured, as grams; None where not known.
    """

    ingredient: Ingredient
    food: Food
    measure: Measure
    mass: Mass | None


class ScaledRecipe(NamedTuple):
    """A recipe for today's meat.

    Attributes:
        recipe: as written; its hours, temperatures and thickness hold as they are.
        factor: today's meat over the recipe's [-], exact.
        meat_mass_g: today's trimmed raw meat [g], exact.
        ingredients: in the recipe's order.
    """

    recipe: Recipe
    factor: Fraction
    meat_mass_g: Fraction
    ingredients: tuple[ScaledIngredient, ...]


def scale_to_meat(recipe: Recipe, meat_mass_g: Fraction, drawer: Drawer) -> ScaledRecipe:
    """Return the recipe for a weight of trimmed raw meat.

    Args:
        recipe: as read.
        meat_mass_g: today's meat, trimmed and raw [g], above zero.
        drawer: the spoons and cups in the house.

    Returns:
        Every ingredient scaled, measured and weighed.

    Raises:
        QuantityError: the weight is not above zero, or absurdly far from the recipe's.
    """
    if meat_mass_g <= 0:
        raise QuantityError("the meat must weigh more than nothing")
    return scale_by_factor(recipe, meat_mass_g / recipe.meat.mass_g, drawer)


def scale_by_factor(recipe: Recipe, by: Fraction, drawer: Drawer) -> ScaledRecipe:
    """Return a recipe for so many times its meat.

    Args:
        recipe: as read.
        by: today's meat over the recipe's [-], above zero.
        drawer: the spoons and cups in the house.

    Raises:
        QuantityError: the factor is not above zero, or outside what can be scaled.
    """
    if by <= 0:
        raise QuantityError("the factor must be above zero")
    if not Fraction(1, _LARGEST_FACTOR) <= by <= _LARGEST_FACTOR:
        raise QuantityError(
            f"that is {float(by):.3g} times the recipe's meat; "
            f"between 1/{_LARGEST_FACTOR} and {_LARGEST_FACTOR} times can be scaled"
        )
    return ScaledRecipe(
        recipe=recipe,
        factor=by,
        meat_mass_g=recipe.meat.mass_g * by,
        ingredients=tuple(_scaled(one, by, drawer) for one in recipe.ingredients),
    )


def trimmed(bought_g: Fraction, trim: Fraction) -> Fraction:
    """Return what is left of bought meat after trimming [g].

    Args:
        bought_g: weight as bought [g], above zero.
        trim: part cut away [-], 0 up to but not including 1.

    Raises:
        QuantityError: either is outside its range.
    """
    if bought_g <= 0:
        raise QuantityError("the bought meat must weigh more than nothing")
    if not 0 <= trim < 1:
        raise QuantityError("the trim must be 0 % or more, and under 100 %")
    return bought_g * (1 - trim)


def _scaled(ingredient: Ingredient, by: Fraction, drawer: Drawer) -> ScaledIngredient:
    item = food(ingredient.food)
    exact = _scaled_amount(ingredient, by)
    if item.curing:
        return _scaled_cure(ingredient, item, exact)
    measure = measure_amount(exact, item, drawer)
    mass = mass_of(exact, item, ingredient.form, g_per_ml=bottle_density(ingredient.panel))
    return ScaledIngredient(
        ingredient=ingredient,
        food=item,
        measure=measure,
        mass=None if mass is None else _measured(mass, measure),
    )


def _measured(mass: Mass, measure: Measure) -> Mass:
    """Return what will be measured: the scoops, or the scale where the scoops miss too far.

    A spoon that misses is shown beside the grams; whether the cook takes it adds to the doubt.
    """
    if measure.within:
        return mass.times(measure.taken)
    missed = min(abs(float(measure.error)), 1.0) / 2
    return mass._replace(doubt=(mass.doubt**2 + missed**2) ** 0.5)


def bottle_density(panel: Panel | None) -> Fraction | None:
    """Return the density a bottle's own panel states by volume and weight [g/mL], or None."""
    return None if panel is None else panel.g_per_ml


def _scaled_amount(ingredient: Ingredient, by: Fraction) -> Amount:
    match ingredient.scale:
        case ScaleBy.FIXED:
            return ingredient.amount
        case ScaleBy.WHOLE:
            return _whole(ingredient.amount.times(by))
        case _:
            return ingredient.amount.times(by)


def _whole(amount: Amount) -> Amount:
    if amount.low is None or amount.high is None:
        return amount
    low, high = (Fraction(max(1, round(end))) for end in (amount.low, amount.high))
    return amount._replace(low=low, high=high)


def _scaled_cure(ingredient: Ingredient, item: Food, exact: Amount) -> ScaledIngredient:
    """Return a curing salt in grams, rounded down to a tenth; never a spoon."""
    if exact.low is None or exact.high is None or dimension(exact.unit) is not Dimension.MASS:
        raise QuantityError(f"{ingredient.name} must be given by weight")
    grams = exact.high * factor(exact.unit, "gram")
    rounded = grams // _CURE_STEP_G * _CURE_STEP_G
    if rounded == 0:
        raise QuantityError(
            f"{ingredient.name} comes to {float(grams):.2g} g: under 0.1 g no kitchen scale weighs "
            "it; make a larger batch, or leave the cure out"
        )
    weighed = Amount(low=rounded, high=rounded, unit="gram")
    return ScaledIngredient(
        ingredient=ingredient,
        food=item,
        measure=Measure(
            text=f"{float(rounded):.1f} g, weighed",
            exact=exact,
            taken=rounded / grams if grams else Fraction(1),
        ),
        mass=mass_of(weighed, item),
    )
