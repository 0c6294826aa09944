"""The meat as it meets its marinade: its water, how fast and how far solutes go, what clings."""

from __future__ import annotations

from collections.abc import Mapping

from tarebook.figures.working import value
from tarebook.nutrition.facts import Facts
from tarebook.uptake.maths import Maths, Number
from tarebook.uptake.soak import Bath, Strip, temperature_factor

QUARTER_INCH_M = 0.00635
"""Thickness for which the film shares of the working values hold [m]."""


def water_fraction(facts: Facts, x: Mapping[str, Number]) -> Number:
    """Return the water in the raw meat [g per g]: what its solids leave."""
    stated = facts.meat.get("water_g") or 0.0
    return 1 - (1 - stated / 100) * x["raw-solids"]


def strip_in_bath(
    facts: Facts, bath: Bath, water: Number, x: Mapping[str, Number], maths: Maths
) -> Strip:
    """Return the meat as it meets a marinade; arguments as of ``model.batch``.

    Args:
        bath: the dissolved part of the marinade.
        water: what is in the raw meat [g].
    """
    thickness_m = x["thickness"] * x["thickness-factor"] / 1000
    half_m_squared = thickness_m * thickness_m / 4
    pace = x["hours"] * 3600 / half_m_squared * soak_pace(facts, x)
    return Strip(
        mass_g=facts.meat_mass_g,
        water_g=water,
        salt_reach=x["salt-reach"],
        other_reach=x["other-reach"],
        salt_tau=x["salt-diffusivity"] * pace,
        sucrose_tau=x["sucrose-diffusivity"] * pace,
        hexose_tau=x["hexose-diffusivity"] * pace,
        free_share=x["free-share"],
        gain_g=_gain(bath, x, maths) * facts.meat_mass_g,
        film_g=x["film"] * facts.meat_mass_g * film_area_factor(thickness_m),
        other_uptake=x["other-uptake"],
    )


def strip_without_bath(facts: Facts, water: Number, x: Mapping[str, Number]) -> Strip:
    """Return the meat where there is no marinade: nothing travels, and nothing clings."""
    return Strip(
        mass_g=facts.meat_mass_g,
        water_g=water,
        salt_reach=x["salt-reach"],
        other_reach=x["other-reach"],
        salt_tau=0.0,
        sucrose_tau=0.0,
        hexose_tau=0.0,
        free_share=1.0,
        gain_g=0.0,
        film_g=0.0,
        other_uptake=1.0,
    )


def soak_pace(facts: Facts, x: Mapping[str, Number]) -> Number:
    """Return how much faster solutes travel at the recipe's temperature than at the table's [-]."""
    if facts.soak_c is None:
        return 1.0
    energy = value("diffusivity-activation").likely
    return temperature_factor(x["soak-temperature"], activation_kj=energy)


def film_area_factor(thickness_m: Number) -> Number:
    """Return surface per mass against that of a 1/4 in strip, edges counted.

    Args:
        thickness_m: thickness of a strip [m], above zero.

    Returns:
        Ratio of areas [-].
    """
    edges = 1000 / value("strip-width-mm").likely
    return (1 / thickness_m + edges) / (1 / QUARTER_INCH_M + edges)


def _gain(bath: Bath, x: Mapping[str, Number], maths: Maths) -> Number:
    """Return the net water gain as a fraction of the raw meat.

    A weak brine swells meat; one with hardly any salt does not, nor does a strong marinade.
    """
    brine = bath.salt_g / bath.mass_g / value("weak-brine-salt").low
    salt = _ramp(bath.salt_g / bath.mass_g, "strong-brine-salt", maths)
    sugar = _ramp((bath.sucrose_g + bath.hexose_g) / bath.mass_g, "strong-brine-sugar", maths)
    weak = maths.smaller(brine, 1.0) * (1 - maths.larger(salt, sugar))
    return x["gain-weak"] * weak + x["gain"] * (1 - weak)


def _ramp(at: Number, key: str, maths: Maths) -> Number:
    ends = value(key)
    rise = (at - ends.low) / (ends.high - ends.low)
    return maths.larger(maths.smaller(rise, 1.0), 0.0)
