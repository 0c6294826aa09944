"""What recipes need, food by food, less what is in the house, in units a shop sells by."""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction

from tarebook.figures.foods import Food, food
from tarebook.figures.measures import density
from tarebook.quantities.amount import Amount
from tarebook.quantities.units import Dimension, dimension, factor
from tarebook.quantities.words import format_mass_g, format_pounds
from tarebook.recipe.bottles import Known
from tarebook.recipe.model import Pack
from tarebook.scaling import ScaledRecipe
from tarebook.scaling.volume_and_mass import mass_of
from tarebook.shopping.pantry import Pantry
from tarebook.tuples import NamedTuple

_ML_PER_FL_OZ = factor("fluid_ounce", "milliliter")


class Need(NamedTuple):
    """What is needed of one food, and what of it to buy.

    Attributes:
        food: which; a bottle of the cook's own under its own name.
        names: what the recipes call it.
        mass_g: needed in all [g], or None where nobody knows what it weighs.
        measures: what the recipes measure, one text each.
        have_g: in the house [g]; None where that cannot be compared.
        buy_g: still to get [g], zero or more; None where it cannot be told.
        packs: how many packs to buy, where the cook says how it is sold.
        pack: how it is sold, by the cook's list or the bottle itself.
        pack_g: what one pack holds [g], or None where it is not known.
        buy: what to ask for, in words; empty where nothing is to be bought.
        note: why it could not be told, or that the house holds enough.
    """

    food: Food
    names: tuple[str, ...]
    mass_g: Fraction | None
    measures: tuple[str, ...]
    have_g: Fraction | None
    buy_g: Fraction | None
    packs: int | None
    pack: Pack | None
    buy: str
    note: str = ""
    pack_g: Fraction | None = None


def needs_of(
    scaled: Iterable[ScaledRecipe], pantry: Pantry, *, trim: Fraction = Fraction(0)
) -> tuple[Need, ...]:
    """Return what to buy for recipes at their sizes.

    Args:
        scaled: recipes for today's meat.
        pantry: what is in the house, and how things are sold.
        trim: part of the meat as bought that is cut away [-], from 0 to below 1.

    Returns:
        One need a food, the meat first, then in the order of the recipes.
    """
    wanted: dict[str, _Wanted] = {}
    recipes = list(scaled)
    for one in recipes:
        item = food(one.recipe.meat.food)
        bought = one.meat_mass_g / (1 - trim)
        text = format_pounds(bought) + (" as bought" if trim else "")
        _add(wanted, Known(item, None), one.recipe.meat.food, bought, text)
    for one in recipes:
        for line in one.ingredients:
            mass = None if line.mass is None else line.mass.middle_g
            known = Known(line.food, line.ingredient.bottle)
            _add(wanted, known, line.ingredient.name, mass, line.measure.text)
    return tuple(_need(one, pantry) for one in wanted.values())


class _Wanted(NamedTuple):
    """A food on its way to a need."""

    known: Known
    names: list[str]
    masses: list[Fraction | None]
    measures: list[str]


def _add(
    wanted: dict[str, _Wanted], known: Known, name: str, mass_g: Fraction | None, measure: str
) -> None:
    one = wanted.setdefault(known.shown.key, _Wanted(known, [], [], []))
    one.names.append(name)
    one.masses.append(mass_g)
    one.measures.append(measure)


def _need(one: _Wanted, pantry: Pantry) -> Need:
    known = [mass for mass in one.masses if mass is not None]
    mass_g = sum(known, Fraction(0)) if len(known) == len(one.masses) else None
    shown, bottle = one.known.shown, one.known.bottle
    held = pantry.have.get(shown.key)
    have_g = _grams(held, one.known)
    pack = pantry.packs.get(shown.key) or (None if bottle is None else bottle.pack)
    need = Need(
        food=shown,
        names=tuple(dict.fromkeys(one.names)),
        mass_g=mass_g,
        measures=tuple(one.measures),
        have_g=have_g,
        buy_g=None,
        packs=None,
        pack=pack,
        buy="",
        pack_g=None if pack is None else _grams(pack.size, one.known),
    )
    if mass_g is None:
        return need._replace(buy=" + ".join(one.measures), note="what it weighs is not known")
    if held is not None and have_g is None:
        note = f"{held} in the house cannot be compared: give its weight"
        return _bought(need, one.known, mass_g, note)
    missing = max(mass_g - (have_g or 0), Fraction(0))
    if not missing:
        return need._replace(buy_g=Fraction(0), note="in the house")
    return _bought(need, one.known, missing, "")


def _bought(need: Need, known: Known, missing_g: Fraction, note: str) -> Need:
    """Return a need with what to ask for."""
    if need.pack is not None and need.pack_g:
        count = -(-missing_g // need.pack_g)
        words = f"{count} x {need.pack.size}"
        return need._replace(buy_g=missing_g, packs=int(count), buy=words, note=note)
    if need.pack is not None:
        note = note or f"a pack of {need.pack.size} has no known weight"
    return need._replace(buy_g=missing_g, buy=_loose(known, missing_g), note=note)


def _loose(item: Known, mass_g: Fraction) -> str:
    """Return an amount as a shelf has it: fluid ounces of what is poured, else weight."""
    fluid = _fluid_ml(item, mass_g)
    if fluid is not None:
        ounces = fluid / _ML_PER_FL_OZ
        return f"{float(ounces):.1f} fl oz ({float(fluid):,.0f} mL)"
    return f"{format_pounds(mass_g)} ({format_mass_g(mass_g)})"


def _fluid_ml(item: Known, mass_g: Fraction) -> Fraction | None:
    """Return the volume of what is sold by volume [mL]; None for what is sold by weight."""
    if not item.food.poured:
        return None
    own = item.g_per_ml
    if own is not None:
        return mass_g / own
    found = density(item.food.key)
    return None if found is None else mass_g / found.g_per_ml


def _grams(amount: Amount | None, item: Known) -> Fraction | None:
    if amount is None:
        return None
    if dimension(amount.unit) is Dimension.COUNT and not amount.unit:
        return None
    found = mass_of(amount, item.food, g_per_ml=item.g_per_ml)
    return None if found is None else found.middle_g
