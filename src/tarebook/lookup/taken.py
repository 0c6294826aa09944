"""A food of the table as a bottle of the cook's own, with its source, number and date."""

from __future__ import annotations

from datetime import date
from fractions import Fraction
from typing import Any

from tarebook.figures.foods import food, normalised
from tarebook.findings import AmountError, AskedWrongly
from tarebook.lookup.amounts import FIELDS, spoken, unit_of
from tarebook.lookup.answers import TableFood
from tarebook.recipe.bottle import FOODDATA, as_taken
from tarebook.recipe.bottles import can_name
from tarebook.recipe.model import Bottle, Panel
from tarebook.recipe.panel import read_serving

_HUNDRED = Fraction(100)
_LONGEST_NAME = 80
_WHOLE = ("mg", "kcal")  # figures of these stand in the table without decimals, mostly
_STEPS = tuple(Fraction(step) for step in ("5", "1", "0.5", "0.1", "0.05", "0.01"))
_FINEST = Fraction(1, 10_000)


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


def not_known(found: TableFood) -> tuple[str, ...]:
    """Return the figures that a bottle of this food takes from the food it is like, in words."""
    return tuple(spoken(field) for field in FIELDS if found.figures[field] is None)


def _panel(found: TableFood) -> Panel:
    volume_ml, mass_g, size = _serving(found)
    figures: dict[str, Any] = {
        field: None if figure is None else as_printed(figure, size, unit_of(field))
        for field, figure in found.figures.items()
    }
    return Panel(serving_ml=volume_ml, serving_g=mass_g, **figures)


def as_printed(figure: Fraction, size: Fraction, unit: str) -> Fraction:
    """Return what a label prints of a serving, from the table's figure per 100 g or mL.

    The table works a label's figure out for 100 and rounds it, so that 5 g in 17 g become 29.41.
    The roundest figure that this can have come from is taken back.

    Args:
        figure: per 100 g or 100 mL.
        size: of the serving, in the same.
        unit: of the figure.

    Example:
        >>> as_printed(Fraction("29.41"), Fraction(17), "g")
        Fraction(5, 1)
    """
    if size == _HUNDRED:
        return figure
    share = figure * size / 100
    whole = unit in _WHOLE and figure.denominator == 1
    off = Fraction(1, 2 if whole else 200) * size / 100
    for step in _STEPS:
        nearest = round(share / step) * step
        if abs(nearest - share) <= off:
            return nearest
    return Fraction(round(share / _FINEST)) * _FINEST


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
