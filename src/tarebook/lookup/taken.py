"""A food of the table as a bottle of the cook's own, with its source, number and date."""

from __future__ import annotations

from datetime import date
from fractions import Fraction
from typing import Any

from tarebook.figures.foods import food, normalised
from tarebook.findings import AmountError, AskedWrongly
from tarebook.lookup.amounts import FIELDS
from tarebook.lookup.answers import TableFood
from tarebook.recipe.bottle import FOODDATA, as_taken
from tarebook.recipe.bottles import can_name
from tarebook.recipe.model import Bottle, Panel
from tarebook.recipe.panel import read_serving

_HUNDRED = Fraction(100)
_LONGEST_NAME = 80
_STEP = 10_000  # a serving's figures are kept to a ten-thousandth of their unit


def refuse_name(name: str, like: str) -> None:
    """Refuse a name that no bottle can have, before anybody is asked for its figures.

    Args:
        name: what recipes are to call it.
        like: the food of the tables that it is a kind of.

    Raises:
        AskedWrongly: no bottle can go by that name, or be kept like that.
        FoodUnknown: no food is called what it is to be like.
    """
    if not can_name(name):
        raise AskedWrongly(f'"{name[:40]}" can name no bottle: letters, digits and hyphens')
    if food(like).curing:
        raise AskedWrongly("a curing salt is no bottle of your own; name it in the recipe")


def bottle_of(found: TableFood, *, name: str, like: str, day: date) -> Bottle:
    """Return a food of the table as a bottle.

    A food that was analysed or reckoned keeps its figures per 100 g. A label keeps them per
    serving, since that is what was rounded.

    Args:
        found: the food.
        name: what recipes are to call it.
        like: the food of the tables that it is a kind of; what is not known is taken from there.
        day: when the table was asked.

    Raises:
        AskedWrongly: there is no figure to keep, or as of :func:`refuse_name`.
        FoodUnknown: as of :func:`refuse_name`.
    """
    refuse_name(name, like)
    if all(figure is None for figure in found.figures.values()):
        raise AskedWrongly(f"number {found.fdc_id} has no figure that could be kept")
    return Bottle(
        key=normalised(name),
        name=found.description[:_LONGEST_NAME].strip(),
        like=food(like).key,
        panel=as_taken(_panel(found), FOODDATA),
        origin=FOODDATA,
        origin_id=str(found.fdc_id),
        origin_date=day.isoformat(),
    )


def _panel(found: TableFood) -> Panel:
    volume_ml, mass_g, size = _serving(found)
    figures: dict[str, Any] = {
        field: None if found.figures[field] is None else _share(found.figures[field], size)
        for field in FIELDS
    }
    return Panel(serving_ml=volume_ml, serving_g=mass_g, **figures)


def _share(figure: Fraction | None, size: Fraction) -> Fraction | None:
    if figure is None or size == _HUNDRED:
        return figure
    return Fraction(round(figure * size / 100 * _STEP), _STEP)


def _serving(found: TableFood) -> tuple[Fraction | None, Fraction | None, Fraction]:
    """Return a serving by measure [mL] and by weight [g], and how much of the figures it is."""
    serving = found.serving
    if serving is None:
        return (_HUNDRED, None, _HUNDRED) if found.per == "100 mL" else (None, _HUNDRED, _HUNDRED)
    if serving.unit == "mL":
        return serving.size, None, serving.size
    return _by_measure(serving.household), serving.size, serving.size


def _by_measure(household: str) -> Fraction | None:
    """Return the label measure that a serving is said in [mL], or None where it is none."""
    try:
        return read_serving(household)[0]
    except AmountError:
        return None
