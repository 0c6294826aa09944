"""Water activity of a finished batch: an estimate with a band, and nothing more.

At one common water activity every part of the meat holds its own water: salt, each sugar, and
the rest of the dry matter. Their sum is the water of the batch; so from the water the activity
follows, and from the activity the water. Sources: ``stokes-robinson-1966`` for the solutes and
``lang-steinberg-1980`` for adding the solids.

The product of the activities that each part would make alone in all of the water is the usual
shortcut. It is not used: it lets every part have the water that the others hold, and reads 0.05
to 0.06 above the middle of every measured dried meat it was tried on.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import isfinite

from tarebook.drying.water_held import (
    FRUCTOSE,
    GLUCOSE,
    HIGHEST_ACTIVITY,
    LOWEST_ACTIVITY,
    SUCROSE,
    Gab,
    salt_water_held,
    solids_water_held,
    sugar_water_held,
)
from tarebook.tuples import NamedTuple
from tarebook.uptake.maths import Number, each

# Bisecting 0.5 this often leaves 5e-10.
_HALVINGS = 30


class DryMatter(NamedTuple):
    """What is not water in a finished batch [g], by how it holds water.

    Attributes:
        salt_g: salt, as sodium chloride.
        sucrose_g, glucose_g, fructose_g: each sugar.
        other_g: every other solid but fat: fat holds no water, and is left out.
    """

    salt_g: Number
    sucrose_g: Number
    glucose_g: Number
    fructose_g: Number
    other_g: Number


@dataclass(frozen=True, slots=True, kw_only=True)
class Band:
    """Where the water activity of a batch is likely to lie: an estimate, never pass or fail.

    Attributes:
        low, likely, high: water activity [-]. ``low`` is 0 where the batch is drier than the
            equations reach, ``high`` is 1 where it is wetter.
    """

    low: float
    likely: float
    high: float

    def __str__(self) -> str:
        """Return the band in hundredths, finer than which nothing is known, as an estimate."""
        if self.low <= 0:
            return f"below about {self.high:.2f} (an estimate)"
        if self.high >= 1:
            return f"above about {self.low:.2f} (an estimate)"
        return f"about {self.low:.2f} to {self.high:.2f} (an estimate)"


def water_held(dry: DryMatter, *, activity: Number, gab: Gab) -> Number:
    """Return the water that a batch holds at a given water activity.

    Args:
        dry: its dry matter [g]; numbers, or columns of draws.
        activity: water activity [-], 0.50 to 0.9995; a number or a column.
        gab: constants of the meat solids.

    Returns:
        Water [g]; it rises with the activity.

    Raises:
        ValueError: the activity is outside 0.50 to 0.9995, or the constants mean nothing.

    Example:
        >>> batch = DryMatter(salt_g=30, sucrose_g=48, glucose_g=0, fructose_g=0, other_g=340)
        >>> round(water_held(batch, activity=0.75, gab=Gab(monolayer=0.062, c=12, k=0.93)), 2)
        165.21
    """
    return (
        dry.salt_g * each(salt_water_held, activity)
        + dry.sucrose_g * each(_by_sucrose, activity)
        + dry.glucose_g * each(_by_glucose, activity)
        + dry.fructose_g * each(_by_fructose, activity)
        + dry.other_g * each(_by_solids, activity, gab.monolayer, gab.c, gab.k)
    )


def water_activity(dry: DryMatter, *, water_g: float, gab: Gab) -> float:
    """Return the water activity of a batch with one set of constants.

    Args:
        dry: its dry matter [g], each part zero or more, and some of it above zero.
        water_g: water left in it [g], zero or more.
        gab: constants of the meat solids.

    Returns:
        Water activity [-], 0.50 to 0.9995; either end stands for all beyond it. Where the water
        is known, wrong by 0.03 or so from the equations alone.

    Raises:
        ValueError: a weight is below zero or not a number, or there is no dry matter.

    Example:
        >>> batch = DryMatter(salt_g=5, sucrose_g=5, glucose_g=0, fructose_g=0, other_g=55)
        >>> round(water_activity(batch, water_g=30, gab=Gab(monolayer=0.062, c=12, k=0.93)), 4)
        0.7872
    """
    _refuse_nonsense(dry, water_g)
    low, high = LOWEST_ACTIVITY, HIGHEST_ACTIVITY
    if water_held(dry, activity=low, gab=gab) >= water_g:
        return low
    if water_held(dry, activity=high, gab=gab) <= water_g:
        return high
    for _ in range(_HALVINGS):
        middle = (low + high) / 2
        if water_held(dry, activity=middle, gab=gab) < water_g:
            low = middle
        else:
            high = middle
    return (low + high) / 2


def band(dry: DryMatter, *, water_g: float, gab: tuple[Gab, Gab, Gab], half_width: float) -> Band:
    """Return where the water activity of a batch is likely to lie.

    Args:
        dry: its dry matter [g], each part zero or more, and some of it above zero.
        water_g: water left in it [g], zero or more.
        gab: constants of the meat solids, low, likely and high; solids that hold more leave
            less to the rest, so the low ones give the highest activity.
        half_width: least distance of either edge from the likely value [-]; 0.05 is usual. What
            is known of the water comes on top.

    Returns:
        The band: an estimate, of a batch that dried evenly. No strip does, and its thick end is
        the wettest. It is no test of anything.

    Raises:
        ValueError: a weight is below zero or not a number, there is no dry matter, or the half
            width is not above zero.
    """
    if not 0 < half_width < 1:
        raise ValueError("the half width of the band lies between 0 and 1")
    found = [water_activity(dry, water_g=water_g, gab=constants) for constants in gab]
    likely = found[1]
    return Band(
        low=0.0 if likely <= LOWEST_ACTIVITY else min(likely - half_width, *found),
        likely=likely,
        high=1.0 if likely >= HIGHEST_ACTIVITY else min(1.0, max(likely + half_width, *found)),
    )


def finished_at_water_activity(
    *, solids_g: Number, dry: DryMatter, activity: Number, gab: Gab
) -> Number:
    """Return the finished weight at which a batch comes to a given water activity.

    Args:
        solids_g: all solids, fat too [g].
        dry: those that hold water [g]; numbers, or columns of draws.
        activity: the cook's target [-], 0.50 to 0.9995.
        gab: constants of the meat solids.

    Returns:
        Finished weight [g]: the solids and the water they hold.

    Raises:
        ValueError: the target is outside 0.50 to 0.9995, or the constants mean nothing.
    """
    return solids_g + water_held(dry, activity=activity, gab=gab)


def _by_sucrose(activity: float) -> float:
    return sugar_water_held(SUCROSE, activity)


def _by_glucose(activity: float) -> float:
    return sugar_water_held(GLUCOSE, activity)


def _by_fructose(activity: float) -> float:
    return sugar_water_held(FRUCTOSE, activity)


def _by_solids(activity: float, monolayer: float, c: float, k: float) -> float:
    return solids_water_held(activity, Gab(monolayer, c, k))


def _refuse_nonsense(dry: DryMatter, water_g: float) -> None:
    weights = (*dry, water_g)
    if not all(isfinite(weight) and weight >= 0 for weight in weights):
        raise ValueError("no part of a batch can weigh less than nothing")
    if not any(dry):
        raise ValueError("a batch without dry matter is water")
