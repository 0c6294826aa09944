"""Shares of each solute that end in or on the meat.

Equations after the mass balance of a soak: a solute shares itself between the water outside and
the water inside that it can reach, in proportion to water; how far it has come is Crank's
fraction; a film of the leftover stays on the surface, at the leftover's strength.

All masses in grams. ``Number`` is a float, or an array with one entry a draw.
"""

from __future__ import annotations

from math import exp

from tarebook.tuples import NamedTuple
from tarebook.uptake.maths import Maths, Number, each


class Bath(NamedTuple):
    """The dissolved part of a marinade: no oil, pulp or spice grains, which stay outside it.

    ``water_g`` counts alcohol and acetic acid too: they dissolve, and leave in drying.
    """

    water_g: Number
    salt_g: Number
    sucrose_g: Number
    hexose_g: Number
    other_g: Number

    @property
    def mass_g(self) -> Number:
        """Mass of the whole dissolved part [g]."""
        return self.water_g + self.salt_g + self.sucrose_g + self.hexose_g + self.other_g


class Strip(NamedTuple):
    """The meat as it meets the bath, and how fast each solute travels in it.

    Attributes:
        mass_g: raw meat [g].
        water_g: water in it [g].
        salt_reach, other_reach: part of that water open to salt, and to larger molecules [-].
        salt_tau, sucrose_tau, hexose_tau: D t / (L/2)**2 of each [-].
        free_share: part of the surface that meets moving liquid [-]; the rest lies stuck to its
            neighbour and behaves like a strip of double thickness.
        gain_g: net water drawn in [g]; negative where the bath draws water out.
        film_g: liquid that stays on the surface [g].
        other_uptake: pace of the other dissolved matter against that of hexoses [-].
    """

    mass_g: Number
    water_g: Number
    salt_reach: Number
    other_reach: Number
    salt_tau: Number
    sucrose_tau: Number
    hexose_tau: Number
    free_share: Number
    gain_g: Number
    film_g: Number
    other_uptake: Number


class Kept(NamedTuple):
    """Share of each solute of the bath that is kept in or on the meat [-], 0 to 1."""

    salt: Number
    sucrose: Number
    hexose: Number
    other: Number


class Soaked(NamedTuple):
    """What a soak leaves.

    Attributes:
        kept: shares kept, film included.
        film_share: share of the leftover liquid that stays on the surface [-].
        own_kept: share of the meat's own salts still in it [-].
        own_solubles_kept: the same of its own larger solubles [-].
        meat_g: meat after the soak, film included [g].
        water_g: water in the meat, film left out [g].
        leftover_g: liquid left in the bowl [g].
    """

    kept: Kept
    film_share: Number
    own_kept: Number
    own_solubles_kept: Number
    meat_g: Number
    water_g: Number
    leftover_g: Number


class Lost(NamedTuple):
    """Juice that cooking presses out of the meat [g], and water boiled off with it [g]."""

    juice_g: Number
    boiled_off_g: Number


GAS_CONSTANT = 8.314462618e-3
"""Molar gas constant, exact since the SI of 2019 [kJ/(mol K)]."""

_TABLE_C = 5.0  # temperature that the diffusivities are given for [degC]


def temperature_factor(soak_c: Number, *, activation_kj: float) -> Number:
    """Return how much faster solutes travel than in the soak that the table is for.

    Args:
        soak_c: temperature of the soak [degC], above -273.15; a number, or a column of draws.
        activation_kj: apparent activation energy [kJ/mol].

    Returns:
        Factor of a diffusivity [-]; 1 at 5 degC.

    Source:
        Arrhenius's law, with the energy that temperature over viscosity of water has at 2 to 10
        degC: working value ``diffusivity-activation``. At 20 degC it reads 3 % high.
    """
    warmth = 1 / (_TABLE_C + 273.15) - 1 / (soak_c + 273.15)
    return each(exp, activation_kj / GAS_CONSTANT * warmth)


def mixed_uptake(tau: Number, alpha: Number, free_share: Number, maths: Maths) -> Number:
    """Return the uptake fraction of strips of which some lie stuck together in pairs.

    Args:
        tau: dimensionless time of a single strip [-].
        alpha: water outside over reachable water inside [-].
        free_share: part of the strips that lies free [-], 0 to 1.
        maths: operations for this kind of number.

    Returns:
        Fraction of the final uptake [-]. Two strips stuck together are one of double thickness:
        a quarter of tau.
    """
    free = maths.uptake(tau, alpha)
    paired = maths.uptake(tau / 4, alpha)
    return free_share * free + (1 - free_share) * paired


def soak(bath: Bath, strip: Strip, maths: Maths) -> Soaked:
    """Return what the meat holds after lying in its marinade.

    Args:
        bath: the dissolved part of the marinade [g]; some free water.
        strip: the meat, with its paces.
        maths: operations for this kind of number.

    Returns:
        Shares kept, and the weights that the balance gives [g]. A small bowl is never
        overdrawn: the meat gains no more water than there is, the film is no more than the
        liquid left, and no share is above 1.
    """
    gain = maths.smaller(strip.gain_g, bath.water_g)
    salt_in, salt_pace, salt_alpha = _taken(
        bath.water_g, strip.salt_reach * strip.water_g, gain, strip.salt_tau, strip, maths
    )
    reach = strip.other_reach * strip.water_g
    sucrose_in, _, _ = _taken(bath.water_g, reach, gain, strip.sucrose_tau, strip, maths)
    hexose_in, hexose_pace, alpha = _taken(
        bath.water_g, reach, gain, strip.hexose_tau, strip, maths
    )
    other_in = strip.other_uptake * hexose_in
    diffused = Kept(salt_in, sucrose_in, hexose_in, other_in)
    dissolved = _dissolved(bath, diffused)
    liquid = bath.mass_g - gain - dissolved
    film, share = _film(strip.film_g, liquid, maths)
    return Soaked(
        kept=_with_film(diffused, share),
        film_share=share,
        own_kept=1 - salt_pace * salt_alpha / (1 + salt_alpha),
        own_solubles_kept=1 - hexose_pace * alpha / (1 + alpha),
        meat_g=strip.mass_g + gain + dissolved + film,
        water_g=strip.water_g + gain,
        leftover_g=liquid - film,
    )


def heated_in_marinade(bath: Bath, strip: Strip, lost: Lost, maths: Maths) -> Soaked:
    """Return what the meat holds after it was brought to heat in its own marinade.

    Args:
        bath: the dissolved part of the marinade [g].
        strip: the meat; its paces do not matter, since heat carries every solute to balance.
        lost: juice pressed out into the liquid, and water boiled off [g].
        maths: operations for this kind of number.

    Returns:
        As :func:`soak`: balance between the water still in the meat and all the liquid outside.
    """
    gain = maths.smaller(strip.gain_g, bath.water_g)
    inside = maths.larger(strip.water_g + gain - lost.juice_g, 0.05 * strip.water_g)
    outside = maths.larger(bath.water_g - gain + lost.juice_g - lost.boiled_off_g, 0.0)
    salt = _balance(strip.salt_reach * inside, outside)
    sugar = _balance(strip.other_reach * inside, outside)
    diffused = Kept(salt, sugar, sugar, sugar)
    dissolved = _dissolved(bath, diffused)
    liquid = outside + bath.mass_g - bath.water_g - dissolved
    film, share = _film(strip.film_g, liquid, maths)
    return Soaked(
        kept=_with_film(diffused, share),
        film_share=share,
        own_kept=salt,
        own_solubles_kept=sugar,
        meat_g=strip.mass_g + gain - lost.juice_g + dissolved + film,
        water_g=inside,
        leftover_g=liquid - film,
    )


def heated_with_drip_lost(soaked: Soaked, juice_g: Number, maths: Maths) -> Soaked:
    """Return what is left when soaked meat is steamed or roasted and its drip thrown away.

    Args:
        soaked: the meat after its soak (or rub).
        juice_g: juice that drips off and is thrown away [g].
        maths: operations for this kind of number.

    Returns:
        Every share times the part of the meat's water that stays.
    """
    juice = maths.smaller(juice_g, 0.95 * soaked.water_g)
    stays = 1 - juice / soaked.water_g
    return soaked._replace(
        kept=Kept(*(share * stays for share in soaked.kept)),
        own_kept=soaked.own_kept * stays,
        own_solubles_kept=soaked.own_solubles_kept * stays,
        meat_g=soaked.meat_g - juice,
        water_g=soaked.water_g - juice,
    )


def rubbed(strip: Strip, purge_g: Number, maths: Maths) -> Soaked:
    """Return what meat keeps of a dry rub when the liquid it draws is not kept.

    Args:
        strip: the meat; only its mass, water and reaches matter.
        purge_g: liquid drawn out and thrown away [g]; zero if it is kept.
        maths: operations for this kind of number.

    Returns:
        As :func:`soak`. The purge carries solutes at the strength they have in the reachable
        water of the meat.
    """
    salt = 1 - maths.smaller(purge_g / (strip.salt_reach * strip.water_g), 1.0)
    sugar = 1 - maths.smaller(purge_g / (strip.other_reach * strip.water_g), 1.0)
    return Soaked(
        kept=Kept(salt, sugar, sugar, sugar),
        film_share=1.0,
        own_kept=salt,
        own_solubles_kept=sugar,
        meat_g=strip.mass_g - purge_g,
        water_g=strip.water_g - purge_g,
        leftover_g=purge_g,
    )


def _taken(
    outside_g: Number,
    reach_g: Number,
    gain_g: Number,
    tau: Number,
    strip: Strip,
    maths: Maths,
) -> tuple[Number, Number, Number]:
    """Return the share that moved in, how far toward balance, and Crank's alpha."""
    alpha = outside_g / reach_g
    pace = mixed_uptake(tau, alpha, strip.free_share, maths)
    share = pace * (reach_g + gain_g) / (outside_g + reach_g)
    return maths.larger(maths.smaller(share, 1.0), 0.0), pace, alpha


def _balance(inside_g: Number, outside_g: Number) -> Number:
    return inside_g / (inside_g + outside_g)


def _dissolved(bath: Bath, share: Kept) -> Number:
    return (
        share.salt * bath.salt_g
        + share.sucrose * bath.sucrose_g
        + share.hexose * bath.hexose_g
        + share.other * bath.other_g
    )


def _film(film_g: Number, liquid_g: Number, maths: Maths) -> tuple[Number, Number]:
    """Return the film [g], no more than there is, and its share of the liquid left."""
    liquid = maths.larger(liquid_g, 1e-9)
    film = maths.smaller(film_g, liquid)
    return film, film / liquid


def _with_film(diffused: Kept, share: Number) -> Kept:
    return Kept(*(inside + (1 - inside) * share for inside in diffused))
