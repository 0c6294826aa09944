"""How much water a gram of salt, of sugar or of meat solids holds at a given water activity.

Water activity is the share of water's own tendency to evaporate that is left: 1 for pure water.
Each part is known alone, at 25 degC, from published equations; ``water_activity`` adds them up.
What is asked for is the water at an activity. The equations of salt and sugars were published the
other way round, as are the tables that they are held against: so ``salt_activity`` and
``sugar_activity`` stand here too.
"""

from __future__ import annotations

from collections.abc import Callable
from math import exp

from tarebook.tuples import NamedTuple
from tarebook.uptake.maths import Number

WATER_G_PER_MOL = 18.01528

LOWEST_ACTIVITY = 0.50
"""Least water activity reckoned here [-]: below it no equation of this file was fitted."""
HIGHEST_ACTIVITY = 0.9995
"""Greatest [-]: above it the water held runs away to no limit."""

MOST_SALT_PERCENT = 48.0
"""Strongest brine, far beyond saturation, that the fit of Tang covers [% by weight]."""

# Water activity of a brine by powers of its weight per cent, source "tang-1997" (from memory).
_TANG = (1.0, -6.366e-3, 8.624e-5, -1.158e-5, 1.518e-7)

# Newton's method settles every inverse here in 3 to 7 steps; the tests prove the round trip.
_STEPS = 30
_SETTLED = 1e-13


class Sugar(NamedTuple):
    """A sugar in solution: its molar mass [g/mol] and its Norrish constant [-]."""

    g_per_mol: float
    norrish: float


# Constants from memory, source "norrish-1966".
SUCROSE = Sugar(342.297, -6.47)
GLUCOSE = Sugar(180.156, -2.25)
FRUCTOSE = Sugar(180.156, -2.15)


class Gab(NamedTuple):
    """How meat solids hold water: the three constants of the GAB equation.

    Attributes:
        monolayer: water in the first layer [g per g of solids free of fat, salt and sugar].
        c: how much more firmly the first layer is held than those above it [-].
        k: how the layers above it compare with free water [-], at most 1.
    """

    monolayer: Number
    c: Number
    k: Number


def salt_activity(salt_percent: float) -> float:
    """Return the water activity of a brine, even one too strong to exist in a jar.

    In drying meat salt stays dissolved far beyond saturation, as it does in fine droplets, on
    which the equation was measured.

    Args:
        salt_percent: salt in the brine [% by weight], 0 to 48.

    Returns:
        Water activity at 25 degC [-]; within 0.0014 of the osmotic table where both reach.

    Raises:
        ValueError: outside 0 to 48 %.

    Source:
        Tang, Tridico and Fung 1997, source id "tang-1997".

    Example:
        >>> round(salt_activity(26.4), 4)
        0.7527
    """
    if not 0 <= salt_percent <= MOST_SALT_PERCENT:
        raise ValueError(f"a brine of {salt_percent:g} % salt: from 0 to {MOST_SALT_PERCENT:g} %")
    return _tang(salt_percent)


def salt_water_held(activity: float) -> float:
    """Return the water that a gram of salt holds.

    Args:
        activity: water activity [-], 0.50 to 0.9995.

    Returns:
        Water [g per g salt].

    Raises:
        ValueError: the activity is outside 0.50 to 0.9995.

    Source:
        Tang, Tridico and Fung 1997, source id "tang-1997", turned round.

    Example:
        >>> round(salt_water_held(0.85), 4)
        4.2503
    """
    check_activity(activity)
    percent = _newton(100 * (1 - activity), lambda x: (_tang(x) - activity) / _tang_slope(x))
    return (100 - percent) / percent


def sugar_activity(sugar: Sugar, sugar_per_water: float) -> float:
    """Return the water activity of a plain syrup.

    Args:
        sugar: which sugar.
        sugar_per_water: sugar dissolved [g per g water], zero or more.

    Returns:
        Water activity at 25 degC [-].

    Raises:
        ValueError: less than no sugar.

    Source:
        Norrish 1966, source id "norrish-1966"; form as in "baeza-2010".

    Example:
        >>> round(sugar_activity(SUCROSE, 1.0), 5)
        0.93476
    """
    if not sugar_per_water >= 0:
        raise ValueError("a syrup cannot hold less than no sugar")
    moles = sugar_per_water / sugar.g_per_mol
    fraction = moles / (moles + 1 / WATER_G_PER_MOL)
    return _norrish(sugar, fraction)


def sugar_water_held(sugar: Sugar, activity: float) -> float:
    """Return the water that a gram of sugar holds, all of it dissolved.

    Args:
        sugar: which sugar.
        activity: water activity [-], 0.50 to 0.9995.

    Returns:
        Water [g per g sugar]. A published table ("sloan-labuza-1975") has less: sucrose by a
        fifteenth at 0.90 and by a third at 0.60, fructose by a quarter at 0.90. Where 5 % of a
        dried batch is sugar, that makes less than 0.01 of water activity.

    Raises:
        ValueError: the activity is outside 0.50 to 0.9995.

    Source:
        Norrish 1966, source id "norrish-1966", turned round.
    """
    check_activity(activity)

    def step(fraction: float) -> float:
        here = _norrish(sugar, fraction)
        slope = here * (2 * sugar.norrish * fraction - 1 / (1 - fraction))
        return (here - activity) / slope

    # Started at the ideal solution's fraction, which the true one never exceeds.
    fraction = _newton(1 - activity, step)
    return (1 - fraction) / fraction * WATER_G_PER_MOL / sugar.g_per_mol


def solids_water_held(activity: float, gab: Gab) -> float:
    """Return the water that a gram of meat solids holds.

    Args:
        activity: water activity [-], 0.50 to 0.9995.
        gab: constants of the meat; published fits for beef exist, ours are working values.

    Returns:
        Water [g per g solids, free of fat, salt and sugar].

    Raises:
        ValueError: the activity is outside 0.50 to 0.9995, a constant is not above zero, or
            ``k`` is above 1.

    Source:
        Guggenheim, Anderson and de Boer's equation; that it fits lean beef best, source id
        "trujillo-2003".

    Example:
        >>> round(solids_water_held(0.8, Gab(monolayer=0.062, c=12, k=0.93)), 5)
        0.23544
    """
    check_activity(activity)
    if not (gab.monolayer > 0 and gab.c > 0 and 0 < gab.k <= 1):
        raise ValueError("GAB constants are above zero, and k is at most 1")
    free = gab.k * activity
    return float(gab.monolayer * gab.c * free / ((1 - free) * (1 - free + gab.c * free)))


def check_activity(activity: float) -> None:
    """Refuse a water activity that these equations do not reach.

    Raises:
        ValueError: outside 0.50 to 0.9995, or not a number.
    """
    if not LOWEST_ACTIVITY <= activity <= HIGHEST_ACTIVITY:
        raise ValueError(
            f"a water activity of {activity:g}: it can be reckoned from"
            f" {LOWEST_ACTIVITY:g} to {HIGHEST_ACTIVITY:g}"
        )


def _tang(x: float) -> float:
    a, b, c, d, e = _TANG
    return a + x * (b + x * (c + x * (d + x * e)))


def _tang_slope(x: float) -> float:
    _, b, c, d, e = _TANG
    return b + x * (2 * c + x * (3 * d + x * 4 * e))


def _norrish(sugar: Sugar, fraction: float) -> float:
    return (1 - fraction) * exp(sugar.norrish * fraction * fraction)


def _newton(start: float, step: Callable[[float], float]) -> float:
    """Walk from a start until the step, the miss over the slope, is nothing."""
    at = start
    for _ in range(_STEPS):
        by = step(at)
        at -= by
        if abs(by) < _SETTLED:
            return at
    raise ArithmeticError(f"no root found from {start}")  # no input that is let in leads here
