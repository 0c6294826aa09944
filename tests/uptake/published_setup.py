"""The uptake and shrink formulae on whole arrays, in the set-up of an independent computation.

The tables beside this file (``retained_fractions.csv``, ``scenarios.csv``, ``tornado_*.csv``) were
computed apart from this package, with working values and random draws of their own. Their set-up
differs from ours and is rebuilt here, so that the formulae are checked and not the choices:

- strips that do not lie free are taken to lie in an unlimited bath (ours: stuck in pairs);
- solids leak as a plain share of the raw solids, and the meat's own sodium all stays;
- meat gains water as in a strong bath, whatever the bath; the film does not grow with area;
- one recipe: 1360 g of meat and 400 g of marinade, or that marinade in another amount.
"""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache
from typing import Any, NamedTuple
from zlib import crc32

import numpy as np
from scipy.interpolate import RectBivariateSpline
from scipy.stats import beta, norm

from tarebook.drying import finished_at_moisture_to_protein, solids
from tarebook.uptake import (
    Bath,
    Kept,
    Maths,
    Soaked,
    Strip,
    soak,
    uptake_fraction,
    uptake_fraction_unlimited,
)

DRAWS = 20_000
SEED = 20_140_610
MEAT_G = 1360.0
MARINADE_G = 400.0
SODIUM_IN_SALT = 0.39337
OUNCE_G = 28.349523

Array = Any
Inputs = Mapping[str, Array]

# Thickness is drawn as a factor on the middle one for the table of shares (0.75, 1, 1.33), and in
# millimetres for the scenarios.
STRIPS_MM = (4.5, 6.0, 8.0)
FILM = {"drained": (0.01, 0.035, 0.08), "patted": (0.002, 0.008, 0.02)}


class Dried(NamedTuple):
    """A finished batch: sodium [mg] and sugars [g] in an ounce, and what it weighs [g]."""

    sodium_mg_per_oz: Array
    sugars_g_per_oz: Array
    finished_g: Array


def inputs(
    *,
    hours: float = 12,
    thickness_mm: tuple[float, float, float] = STRIPS_MM,
    surface: str = "drained",
) -> dict[str, Array]:
    """Return draws of every uncertain input.

    Args:
        hours: stated hours in the marinade [h]; a tenth more or less is drawn.
        thickness_mm: low, likely and high thickness [mm].
        surface: ``drained`` or ``patted``.

    Returns:
        Arrays of ``DRAWS`` draws by name; a name has the same order of draws every time.
    """
    return {
        "sodium-figure": _log_normal("sodium-figure", 0.06),
        "sugar-figure": _log_normal("sugar-figure", 0.05),
        "marinade-measured": _log_normal("marinade-measured", 0.03),
        "raw-water": _pert("raw-water", 0.70, 0.73, 0.755),
        "raw-protein": _pert("raw-protein", 0.205, 0.22, 0.235),
        "own-sodium": _pert("own-sodium", 45, 58, 75),
        "salt-reach": _pert("salt-reach", 0.80, 0.92, 1.00),
        "sugar-reach": _pert("sugar-reach", 0.65, 0.82, 1.00),
        "salt-diffusivity": np.exp(_pert("salt-diffusivity", *np.log([1e-10, 1.9e-10, 4e-10]))),
        "sugar-to-salt-diffusivity": _pert("sugar-to-salt-diffusivity", 0.20, 0.34, 0.55),
        "film": _pert("film", *FILM[surface]),
        "water-gain": _pert("water-gain", -0.03, 0.02, 0.07),
        "thickness": _pert("thickness", *thickness_mm),
        "hours": _pert("hours", 0.9 * hours, hours, 1.1 * hours),
        "mixing": _pert("mixing", 0.2, 0.8, 1.0),
        "leak": _pert("leak", 0, 0.01, 0.03),
        "drip": _pert("drip", 0, 0.01, 0.05),
        "moisture-to-protein": _pert("moisture-to-protein", 0.35, 0.58, 0.80),
    }


def known_to(x: Inputs, **cv: float) -> dict[str, Array]:
    """Return the same draws with figures known to another relative standard deviation [-].

    Args:
        x: the draws.
        cv: by name of the input, with underscores.
    """
    names = {name.replace("_", "-"): spread for name, spread in cv.items()}
    return {**x, **{name: _log_normal(name, spread) for name, spread in names.items()}}


def medians(x: Inputs) -> dict[str, Array]:
    """Return every input at its median, as arrays of one."""
    return {name: np.array([np.median(values)]) for name, values in x.items()}


def marinade(x: Inputs, marinade_g: float = MARINADE_G) -> Bath:
    """Return the recipe's marinade, as well measured and labelled as the draws say.

    Args:
        x: the draws.
        marinade_g: how much of it is made [g].
    """
    times = marinade_g / MARINADE_G * x["marinade-measured"]
    salt, sugars = 35.0815 * times * x["sodium-figure"], 64 * times * x["sugar-figure"]
    return Bath(258 * times, salt, sugars, 0 * times, 42.9185 * times)


def soaked(x: Inputs, bath: Bath) -> Soaked:
    """Return the meat after its soak, with the other set-up's mixing of two baths."""
    pace = x["hours"] * 3600 / (x["thickness"] / 2000) ** 2
    sugar_tau = x["salt-diffusivity"] * x["sugar-to-salt-diffusivity"] * pace
    strip = Strip(
        mass_g=MEAT_G,
        water_g=x["raw-water"] * MEAT_G,
        salt_reach=x["salt-reach"],
        other_reach=x["sugar-reach"],
        salt_tau=x["salt-diffusivity"] * pace,
        sucrose_tau=sugar_tau,
        hexose_tau=sugar_tau,
        free_share=1.0,
        gain_g=x["water-gain"] * MEAT_G,
        film_g=x["film"] * MEAT_G,
        other_uptake=0.6,
    )
    return soak(bath, strip, _arrays(x["mixing"]))


def dried(x: Inputs, bath: Bath, kept: Kept, *, finished_g: Array | None = None) -> Dried:
    """Return the finished batch.

    Args:
        x: the draws.
        bath: the marinade [g].
        kept: shares of it kept [-].
        finished_g: weight on the scale [g], or None to take it from water over protein.
    """
    left = solids(
        raw_mass_g=MEAT_G,
        water_fraction=x["raw-water"],
        solubles_lost_g=x["leak"] * MEAT_G * (1 - x["raw-water"]),
        fat_drip_g=0.0,
        taken_g=kept.salt * bath.salt_g + kept.sucrose * bath.sucrose_g + kept.other * bath.other_g,
        drip_fraction=x["drip"],
    )
    if finished_g is None:
        finished_g = finished_at_moisture_to_protein(
            solids_g=left.total_g,
            protein_g=x["raw-protein"] * MEAT_G,
            ratio=x["moisture-to-protein"],
        )
    stays = (1 - x["drip"]) * OUNCE_G / finished_g
    own = x["own-sodium"] * MEAT_G / 100 * OUNCE_G / finished_g
    return Dried(
        kept.salt * bath.salt_g * SODIUM_IN_SALT * 1000 * stays + own,
        kept.sucrose * bath.sucrose_g * stays,
        finished_g,
    )


def with_weighed_gain(x: Inputs, gain_g: float, *, rounds: int = 30) -> dict[str, Array]:
    """Return the draws with the water gain that makes each draw gain what the scale says.

    Args:
        x: the draws.
        gain_g: meat after the soak less raw meat, on the scale [g].
        rounds: how often the gain is corrected; what is left shrinks in each.
    """
    found = dict(x)
    for _ in range(rounds):
        short = gain_g + MEAT_G - soaked(found, marinade(found)).meat_g
        found["water-gain"] = found["water-gain"] + short / MEAT_G
    return found


def percentiles(values: Array) -> list[float]:
    """Return the 5, 50 and 95 % points of draws."""
    return [float(one) for one in np.quantile(values, [0.05, 0.50, 0.95])]


def fraction(tau: Array, alpha: Array) -> Array:
    """Return Crank's uptake fraction for arrays, from a grid of :func:`uptake_fraction`.

    Args:
        tau: dimensionless time [-]; from 0.0005 to 60.
        alpha: water outside over reachable water inside [-]; from 0.05 to 19.
    """
    return np.minimum(_grid().ev(np.log(np.clip(tau, *_TAU)), np.log(alpha)), 1.0)


_TAU = (5e-4, 60.0)
_ALPHA = (0.05, 19.0)


@cache
def _grid() -> RectBivariateSpline:
    times = np.linspace(*np.log(_TAU), 240)
    baths = np.linspace(*np.log(_ALPHA), 60)
    exact = [
        [uptake_fraction(t, a) for a in np.exp(baths).tolist()] for t in np.exp(times).tolist()
    ]
    return RectBivariateSpline(times, baths, np.array(exact))


@cache
def _unlimited() -> tuple[Array, Array]:
    times = np.linspace(*np.log(_TAU), 2000)
    return times, np.array([uptake_fraction_unlimited(t) for t in np.exp(times).tolist()])


def _arrays(mixing: Array) -> Maths:
    def uptake(tau: Array, alpha: Array) -> Array:
        unlimited = np.interp(np.log(np.clip(tau, *_TAU)), *_unlimited())
        return mixing * fraction(tau, alpha) + (1 - mixing) * unlimited

    def choose(at: Array, edge: Array, below: Array, otherwise: Array) -> Array:
        return np.where(at < edge, below, otherwise)

    return Maths(np.minimum, np.maximum, choose, uptake)


@cache
def _beta(rise: float, fall: float) -> Array:
    return beta.ppf((np.arange(DRAWS) + 0.5) / DRAWS, rise, fall)


def _pert(name: str, low: float, likely: float, high: float) -> Array:
    place = round((likely - low) / (high - low), 6)
    return _shuffled(name, low + (high - low) * _beta(1 + 4 * place, 5 - 4 * place))


def _log_normal(name: str, cv: float) -> Array:
    normal = norm.ppf((np.arange(DRAWS) + 0.5) / DRAWS)
    return _shuffled(name, np.exp(np.sqrt(np.log(1 + cv * cv)) * normal))


def _shuffled(name: str, values: Array) -> Array:
    return np.random.default_rng((SEED, crc32(name.encode()))).permutation(values)
