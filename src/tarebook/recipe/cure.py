"""How a curing salt must be written: weighed, its strength stated, growing with the meat.

How much of it there may be is a rule of ``safety``; here is only what makes that rule answerable.
"""

from __future__ import annotations

from fractions import Fraction

from tarebook.figures.foods import Food
from tarebook.quantities.amount import Amount, AmountKind
from tarebook.quantities.units import Dimension, dimension
from tarebook.recipe.model import ScaleBy
from tarebook.toml.fault import Faults, shown
from tarebook.toml.locate import KeyPath

STRONGEST_PERCENT = 10
"""Working value of ours: the strongest home cure known to us has 6.25 %. Anything above is a slip
of the pen or a pure chemical, which has no place in a kitchen."""


def check_cure(
    food: Food,
    amount: Amount,
    scale: ScaleBy,
    strength_percent: Fraction | None,
    path: KeyPath,
    faults: Faults,
) -> None:
    """Add every fault in how an ingredient is written, if it is a curing salt or has a strength.

    Args:
        food: what it is.
        amount: how much, as written.
        scale: how it is to grow.
        strength_percent: stated sodium nitrite [g per 100 g], or None.
        path: where the ingredient stands.
        faults: where to add what is wrong.
    """
    if not food.curing:
        _check_no_strength(food, strength_percent, path, faults)
        return
    _check_nitrate(food, path, faults)
    _check_weighed(amount, path, faults)
    _check_strength(food, strength_percent, path, faults)
    if scale is not ScaleBy.MEAT:
        faults.error(
            "cure-scale",
            "a curing salt grows with the meat and in no other way",
            hint="leave scale out",
            path=(*path, "scale"),
        )


def _check_no_strength(
    food: Food, strength_percent: Fraction | None, path: KeyPath, faults: Faults
) -> None:
    if strength_percent is not None:
        faults.error(
            "cure-strength",
            f"{food.key} is no curing salt and has no strength",
            hint="leave strength out, or name the curing salt with food = ...",
            path=(*path, "strength"),
        )


def _check_nitrate(food: Food, path: KeyPath, faults: Faults) -> None:
    if food.nitrate_percent:
        faults.error(
            "cure-nitrate",
            f"{food.key} holds nitrate, which is for dry cures of many weeks",
            hint="for meat dried within days use a cure with nitrite alone, such as curing-salt-1",
            path=path,
        )


def _check_weighed(amount: Amount, path: KeyPath, faults: Faults) -> None:
    weighed = amount.kind is AmountKind.MEASURED and dimension(amount.unit) is Dimension.MASS
    if not weighed:
        faults.error(
            "cure-by-weight",
            f"{shown(amount.text)} of a curing salt: spoons of it differ too much",
            hint='weigh it, as in amount = "2.8 g"',
            path=path,
        )
    elif amount.is_range:
        faults.error(
            "cure-by-weight",
            f"{shown(amount.text)} of a curing salt: it takes one weight, not a range",
            hint='as in amount = "2.8 g"',
            path=path,
        )


def _check_strength(
    food: Food, strength_percent: Fraction | None, path: KeyPath, faults: Faults
) -> None:
    if strength_percent is None:
        faults.error(
            "cure-strength",
            "the strength of a curing salt is missing; packs differ twelvefold",
            hint='copy it from the pack: { amount = "2.8 g", strength = "6.25 %" }',
            path=path,
        )
    elif food.nitrite_percent is not None and strength_percent != food.nitrite_percent:
        faults.error(
            "cure-strength",
            f"{food.key} holds {_percent(food.nitrite_percent)} sodium nitrite, "
            f"not {_percent(strength_percent)}",
            hint='for a cure of another strength write food = "curing-salt"',
            path=(*path, "strength"),
        )
    elif strength_percent > STRONGEST_PERCENT:
        faults.error(
            "cure-strength",
            f"{_percent(strength_percent)} sodium nitrite is no kitchen cure",
            hint='read the pack again; the usual ones have "6.25 %" or less',
            path=(*path, "strength"),
        )


def _percent(value: Fraction) -> str:
    return f"{float(value):g} %"
