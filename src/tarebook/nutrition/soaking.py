"""How far the meat has come toward balance with its marinade, hour by hour."""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Mapping
from functools import cache

from tarebook.figures.working import value
from tarebook.nutrition.assumptions import assumptions
from tarebook.nutrition.bowl import Contents, contents
from tarebook.nutrition.draws import column
from tarebook.nutrition.estimate import DRAWS
from tarebook.nutrition.facts import Facts
from tarebook.nutrition.range import Range, range_of, range_of_ways
from tarebook.nutrition.strip import soak_pace, water_fraction
from tarebook.nutrition.ways import values, ways_of
from tarebook.recipe.model import Part
from tarebook.tuples import NamedTuple
from tarebook.uptake.maths import COLUMNS, Column, Maths, Number
from tarebook.uptake.soak import mixed_uptake

HOURS = (2, 4, 8, 12, 24, 48)
"""Soaks that are told of [h]."""

FURTHER_H = 12
"""How many more hours are weighed against what they still bring [h]."""

LITTLE_GAIN = 0.02
"""Share of the final uptake below which so many more hours no longer matter [-]."""

_SECONDS_PER_HOUR = 3600
_DROPLET_G = 1e-6

Draws = Mapping[str, Column]


class Soaking(NamedTuple):
    """The meat after so many hours.

    Attributes:
        hours: in the marinade [h].
        salt: how far salt has come of its own final uptake [-].
        sugar: the same of the marinade's sugars [-], or None where it has none that is known of.
        salt_kept: share of the marinade's salt on the tray after such a soak [-], by the recipe's
            own surface and heat step, as the estimate reckons it.
    """

    hours: int
    salt: Range
    sugar: Range | None
    salt_kept: Range


class SoakingTimes(NamedTuple):
    """What a longer soak brings at one thickness.

    Attributes:
        thickness_mm: low, likely and high thickness of a piece [mm].
        stated: whether the recipe states it; if not, it is a working range.
        after: the meat after each of ``HOURS``.
        enough_hours: first whole hour from which twelve more bring salt less than 2 % of its
            final uptake, likely [h].
    """

    thickness_mm: tuple[float, float, float]
    stated: bool
    after: tuple[Soaking, ...]
    enough_hours: int


def soaking_times(facts: Facts) -> SoakingTimes | None:
    """Return what a longer soak brings at the recipe's thickness.

    Args:
        facts: what is known of the batch.

    Returns:
        The times, or None where no marinade has a known weight and water in it.
    """
    if not facts.has(Part.MARINADE):
        return None
    x = _draws(facts)
    bowl = contents(facts, Part.MARINADE, x)
    if isinstance(bowl.water, float) or max(bowl.water) <= 0:
        return None
    return SoakingTimes(
        thickness_mm=_thickness_mm(facts),
        stated=facts.thickness_mm is not None,
        after=tuple(_after(facts, bowl, x, hours) for hours in HOURS),
        enough_hours=_enough_hours(facts, bowl, x),
    )


def salt_toward_balance(facts: Facts, hours: int) -> Range:
    """Return how far salt has come of its final uptake after so many hours.

    Args:
        facts: what is known of a batch with a marinade.
        hours: in the marinade [h].

    Returns:
        Fraction of the final uptake [-].
    """
    x = _draws(facts)
    return range_of(_salt(facts, contents(facts, Part.MARINADE, x), x, hours), "")


def half_as_thick(facts: Facts) -> Facts:
    """Return the same batch cut half as thick; half the working range where none is stated."""
    low, likely, high = _thickness_mm(facts)
    return facts._replace(thickness_mm=(low / 2, likely / 2, high / 2))


def toward_balance(
    *,
    hours: Number,
    thickness_mm: Number,
    diffusivity_m2_per_s: Number,
    alpha: Number,
    free_share: Number,
    maths: Maths,
) -> Number:
    """Return how much of what the meat will ever take up has gone in so far.

    Args:
        hours: in the marinade [h].
        thickness_mm: thickness of a strip, wet on both faces [mm].
        diffusivity_m2_per_s: of the solute in the meat [m2/s].
        alpha: water of the bowl over the water of the meat that the solute can reach [-].
        free_share: part of the strips that is not stuck to a neighbour [-].
        maths: operations for this kind of number.

    Returns:
        Fraction of the final uptake [-], 0 to 1.

    Source:
        Crank 1975, eq. 4.37, source id "crank-1975".
    """
    half_m = thickness_mm / 2000
    tau = diffusivity_m2_per_s * hours * _SECONDS_PER_HOUR / (half_m * half_m)
    return mixed_uptake(tau, alpha, free_share, maths)


def _thickness_mm(facts: Facts) -> tuple[float, float, float]:
    if facts.thickness_mm is not None:
        return facts.thickness_mm
    usual = value("default-thickness-mm")
    return usual.low, usual.likely, usual.high


def _draws(facts: Facts) -> Draws:
    inputs = assumptions(facts)
    return {name: Column(column(name, one.distribution, DRAWS)) for name, one in inputs.items()}


def _after(facts: Facts, bowl: Contents, x: Draws, hours: int) -> Soaking:
    sugar = _sugar(facts, bowl, x, hours)
    return Soaking(
        hours=hours,
        salt=range_of(_salt(facts, bowl, x, hours), ""),
        sugar=None if sugar is None else range_of(sugar, ""),
        salt_kept=_salt_kept(facts, hours),
    )


def _salt(facts: Facts, bowl: Contents, x: Draws, hours: int) -> list[float]:
    return list(_pace(facts, bowl, x, hours, "salt-diffusivity", "salt-reach"))


def _sugar(facts: Facts, bowl: Contents, x: Draws, hours: int) -> list[float] | None:
    """Return the pace of all sugars: each kind counts by its grams in the bowl."""
    grams = bowl.sucrose + bowl.hexose
    if not isinstance(grams, Column) or min(grams) <= 0:
        return None
    sucrose = _pace(facts, bowl, x, hours, "sucrose-diffusivity", "other-reach")
    hexose = _pace(facts, bowl, x, hours, "hexose-diffusivity", "other-reach")
    return list((bowl.sucrose * sucrose + bowl.hexose * hexose) / grams)


def _pace(
    facts: Facts, bowl: Contents, x: Draws, hours: int, diffusivity: str, reach: str
) -> Number:
    inside_g = x[reach] * water_fraction(facts, x) * facts.meat_mass_g
    return toward_balance(
        hours=hours,
        thickness_mm=x["thickness"] * x["thickness-factor"],
        diffusivity_m2_per_s=x[diffusivity] * soak_pace(facts, x),
        alpha=COLUMNS.larger(bowl.water, _DROPLET_G) / inside_g,
        free_share=x["free-share"],
        maths=COLUMNS,
    )


def _salt_kept(facts: Facts, hours: int) -> Range:
    """Return the share kept of the whole road, model doubt included, for a soak of such hours."""
    # A short soak is a hard case of the model: its doubt is drawn anew for each length.
    soaked = facts._replace(hours=(float(hours),) * 3)
    ways = ways_of(soaked, assumptions(soaked), _draws(soaked), COLUMNS)
    shares = [(how_likely, values(done.marinade_kept.salt, 1)) for how_likely, done in ways]
    return range_of_ways(shares, "", by_moments=True)


def _enough_hours(facts: Facts, bowl: Contents, x: Draws) -> int:
    @cache
    def likely(hours: int) -> float:
        return range_of(_salt(facts, bowl, x, hours), "").likely

    def little(hours: int) -> bool:
        return likely(hours + FURTHER_H) - likely(hours) < LITTLE_GAIN

    # What an hour brings only ever falls, so that halving the interval finds the first; and that
    # many further steps of more than a little would come to more than all there is.
    return bisect_left(range(round(FURTHER_H / LITTLE_GAIN)), True, key=little)
