"""The soak against a worked example, its limits, and the conservation of mass."""

from __future__ import annotations

from math import inf, pi, sqrt

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tarebook.uptake import (
    PLAIN,
    Bath,
    Lost,
    Strip,
    heated_in_marinade,
    heated_with_drip_lost,
    rubbed,
    soak,
    uptake_fraction_unlimited,
)
from tarebook.uptake.soak import mixed_uptake

MEAT_G, WATER = 1360.0, 0.73
BOWL = Bath(water_g=258.0, salt_g=35.0815, sucrose_g=64.0, hexose_g=0.0, other_g=42.9185)
SODIUM_G = 13.8


def strip(**changes: float) -> Strip:
    """Return the worked example's meat: 6 mm strips, 12 h, with any change."""
    usual = {
        "mass_g": MEAT_G,
        "water_g": WATER * MEAT_G,
        "salt_reach": 0.92,
        "other_reach": 0.82,
        "salt_tau": 0.912,
        "sucrose_tau": 0.31008,
        "hexose_tau": 0.31008,
        "free_share": 1.0,
        "gain_g": 27.2,
        "film_g": 10.88,
        "other_uptake": 0.6,
    }
    return Strip(**(usual | changes))


def tau(diffusivity: float) -> float:
    """Return the dimensionless time of a 6 mm strip after 12 h."""
    return diffusivity * 1e-10 * 12 * 3600 / 0.003**2


def test_worked_example_is_met() -> None:
    """The worked example, 400 g of marinade on 1360 g of meat, is met within 0.1 %."""
    found = soak(BOWL, strip(), PLAIN)

    assert found.kept.salt * 35.0815 == pytest.approx(28.4060, rel=1e-3)
    assert found.kept.sucrose * 64 == pytest.approx(47.6445, rel=1e-3)
    assert found.kept.other * 42.9185 == pytest.approx(19.8403, rel=1e-3)
    assert found.meat_g == pytest.approx(1492.098, rel=1e-3)
    assert found.leftover_g == pytest.approx(267.902, rel=1e-3)
    assert found.kept.salt * SODIUM_G == pytest.approx(11.1741, rel=1e-3)


@pytest.mark.parametrize(
    ("reach", "paces", "bath", "film", "gain", "other", "salt", "sugar", "meat", "sodium"),
    [
        ((0.8, 0.65), (1.0, 0.3), "unlimited", 0.002, -0.03, 0.4, 0.54161, 0.29139, 1364.07, 367.3),
        ((0.92, 0.82), (1.9, 0.62), "limited", 0.008, 0.02, 0.6, 0.8097, 0.74055, 1491.74, 531.60),
        ((1.0, 1.0), (4.0, 1.5), "limited", 0.020, 0.07, 0.9, 0.88894, 0.88635, 1601.87, 580.16),
    ],
    ids=["low", "likely", "high"],
)  # fmt: skip
def test_three_point_table_is_met(
    reach: tuple[float, float],
    paces: tuple[float, float],
    bath: str,
    film: float,
    gain: float,
    other: float,
    salt: float,
    sugar: float,
    meat: float,
    sodium: float,
) -> None:
    """Low, likely and high settings are met within 0.1 %, each with its own diffusivities."""
    maths = PLAIN
    if bath == "unlimited":
        maths = PLAIN._replace(uptake=lambda time, alpha: uptake_fraction_unlimited(time))
    meat_in = strip(
        salt_reach=reach[0],
        other_reach=reach[1],
        salt_tau=tau(paces[0]),
        sucrose_tau=tau(paces[1]),
        hexose_tau=tau(paces[1]),
        film_g=film * MEAT_G,
        gain_g=gain * MEAT_G,
        other_uptake=other,
    )

    found = soak(BOWL, meat_in, maths)

    assert found.kept.salt == pytest.approx(salt, rel=1e-3)
    assert found.kept.sucrose == pytest.approx(sugar, rel=1e-3)
    assert found.meat_g == pytest.approx(meat, rel=1e-3)
    kept_mg = 1000 * (0.99 * SODIUM_G * found.kept.salt + 0.58e-3 * MEAT_G)
    assert kept_mg / 632 * 28.349523 == pytest.approx(sodium, rel=1e-3)


@pytest.mark.parametrize(
    ("outside", "inside", "solute", "share"),
    [
        (258, 913.376, 35.0815, 0.779746),
        (500, 500, 10, 0.5),
        (1000, 730, 60, 0.421965),
        (120, 900, 25, 0.882353),
    ],
)
def test_balance_parts_solute_by_water(
    outside: float, inside: float, solute: float, share: float
) -> None:
    """After long enough, a solute stands as the waters do, to six digits."""
    bath = Bath(outside, solute, 0.0, 0.0, 0.0)
    long = strip(water_g=inside, salt_reach=1.0, salt_tau=50.0, gain_g=0.0, film_g=0.0)

    assert soak(bath, long, PLAIN).kept.salt == pytest.approx(share, rel=1e-5)


# Sodium per ounce of the worked example heated in its marinade, liquid poured away, at three
# losses of juice: what an independent recomputation gave ("about"), and how far we are from it.
HEATED = [(0.20, 430, 0.10), (0.30, 352, 0.08), (0.38, 290, 0.08)]


@pytest.mark.parametrize(("juice", "sodium", "within"), HEATED)
def test_heating_in_the_marinade_costs_sodium(juice: float, sodium: float, within: float) -> None:
    """Heated in its marinade the meat keeps the less, the more juice it loses."""
    found = heated_in_marinade(BOWL, strip(), Lost(juice * MEAT_G, 0.0), PLAIN)
    kept_g = 0.99 * SODIUM_G * found.kept.salt + 0.58e-3 * MEAT_G * found.own_kept
    solids = MEAT_G * 0.27 * 0.99 + 0.99 * (
        found.kept.salt * 35.0815 + found.kept.sucrose * 64 + found.kept.other * 42.9185
    )
    finished = solids + 0.58 * 0.22 * MEAT_G

    assert kept_g * 1000 / finished * 28.349523 == pytest.approx(sodium, rel=within)


def test_drip_takes_its_share() -> None:
    """Steamed meat keeps of every solute what it keeps of its water."""
    soaked = soak(BOWL, strip(), PLAIN)

    found = heated_with_drip_lost(soaked, 0.25 * soaked.water_g, PLAIN)

    assert found.kept.salt == pytest.approx(0.75 * soaked.kept.salt)
    assert found.own_kept == pytest.approx(0.75 * soaked.own_kept)


def test_rub_loses_only_what_runs_off() -> None:
    """A rub whose liquid is kept loses nothing; a purge carries salt at the meat's strength."""
    assert rubbed(strip(), 0.0, PLAIN).kept.salt == 1.0
    assert rubbed(strip(), 45.6688, PLAIN).kept.salt == pytest.approx(0.95)


def test_small_bowl_is_not_overdrawn() -> None:
    """A spoonful on a kilo: no share over one, and no water that was not there."""
    found = soak(Bath(5.0, 3.0, 2.0, 0.0, 1.0), strip(film_g=80.0, gain_g=95.0), PLAIN)

    assert found.kept.salt <= 1.0
    assert found.leftover_g >= 0.0
    assert found.meat_g <= MEAT_G + 11.0 + 1e-9


baths = st.builds(
    Bath,
    st.floats(1, 5000),
    st.floats(0, 500),
    st.floats(0, 500),
    st.floats(0, 500),
    st.floats(0, 500),
)


@given(baths, st.floats(1e-4, 5), st.floats(1.0, 20))
def test_meat_never_keeps_more_than_was_in_the_bowl(bath: Bath, pace: float, longer: float) -> None:
    """Every share lies in 0 to 1, and a longer soak keeps no less salt."""
    shorter = soak(bath, strip(salt_tau=pace, film_g=0.0), PLAIN)
    further = soak(bath, strip(salt_tau=pace * longer, film_g=0.0), PLAIN)

    assert all(0 <= share <= 1 for share in shorter.kept)
    assert further.kept.salt >= shorter.kept.salt - 1e-6


@given(baths)
def test_soak_conserves_mass(bath: Bath) -> None:
    """Meat and leftover together weigh what meat and marinade did."""
    found = soak(bath, strip(), PLAIN)

    assert found.meat_g + found.leftover_g == pytest.approx(MEAT_G + bath.mass_g)


# Meat and bath of round numbers: 1000 g with 700 of water, of which solutes reach 500 and 400.
ROUND = {
    "mass_g": 1000.0,
    "water_g": 700.0,
    "salt_reach": 5 / 7,
    "other_reach": 4 / 7,
    "gain_g": 0.0,
    "film_g": 0.0,
}
ROUND_BATH = Bath(water_g=500.0, salt_g=40.0, sucrose_g=30.0, hexose_g=20.0, other_g=10.0)


def test_a_bath_weighs_what_is_in_it() -> None:
    """Water, salt, both kinds of sugar and the rest."""
    assert 600.0 == ROUND_BATH.mass_g


def test_strips_in_pairs_are_as_thick_as_two() -> None:
    """In a bath without end, and a short time, a strip of double thickness is half as far."""
    free = mixed_uptake(0.04, inf, 1.0, PLAIN)
    paired = mixed_uptake(0.04, inf, 0.0, PLAIN)
    mixed = mixed_uptake(0.04, inf, 0.75, PLAIN)

    assert free == pytest.approx(2 * sqrt(0.04 / pi), abs=1e-8)
    assert paired == pytest.approx(free / 2, abs=1e-8)
    assert mixed == pytest.approx(0.75 * free + 0.25 * paired, rel=1e-12)


def test_balance_by_hand() -> None:
    """After long enough salt stands 500 in to 500 out, and larger molecules 400 in to 500 out."""
    long = strip(**ROUND, salt_tau=50.0, sucrose_tau=50.0, hexose_tau=50.0, other_uptake=0.5)

    found = soak(ROUND_BATH, long, PLAIN)

    assert found.kept == pytest.approx((1 / 2, 4 / 9, 4 / 9, 2 / 9), rel=1e-9)
    assert (found.own_kept, found.own_solubles_kept) == pytest.approx((1 / 2, 4 / 9), rel=1e-9)
    gained = 40 / 2 + 30 * 4 / 9 + 20 * 4 / 9 + 10 * 2 / 9
    assert found.meat_g == pytest.approx(1000 + gained, rel=1e-12)
    assert found.leftover_g == pytest.approx(600 - gained, rel=1e-12)
    assert (700.0, 0.0) == (found.water_g, found.film_share)


def test_water_drawn_in_brings_what_is_dissolved_in_it() -> None:
    """With 100 g of water gone in, 600 of 1000 g of reached water are inside: so is the salt."""
    wet = strip(**(ROUND | {"gain_g": 100.0}), salt_tau=50.0)

    found = soak(ROUND_BATH, wet, PLAIN)

    assert found.kept.salt == pytest.approx(0.6, rel=1e-9)
    assert 800.0 == found.water_g


def test_the_film_holds_its_share_of_the_leftover() -> None:
    """A film of a tenth of the liquid left adds a tenth of all that did not go in."""
    dry = strip(**ROUND, salt_tau=50.0, sucrose_tau=50.0, hexose_tau=50.0)
    bare = soak(ROUND_BATH, dry, PLAIN)

    found = soak(ROUND_BATH, dry._replace(film_g=bare.leftover_g / 10), PLAIN)

    assert found.film_share == pytest.approx(0.1)
    assert found.kept == pytest.approx(tuple(one + (1 - one) / 10 for one in bare.kept))
    assert found.meat_g == pytest.approx(bare.meat_g + bare.leftover_g / 10)
    assert found.leftover_g == pytest.approx(0.9 * bare.leftover_g)


def test_heated_to_balance_by_hand() -> None:
    """100 g of juice out and 200 boiled off: 600 g of water in, 400 out, each share by hand."""
    found = heated_in_marinade(ROUND_BATH, strip(**ROUND), Lost(100.0, 200.0), PLAIN)

    salt_in, other_in = 600 * 5 / 7, 600 * 4 / 7
    salt, other = salt_in / (salt_in + 400), other_in / (other_in + 400)
    assert found.kept == pytest.approx((salt, other, other, other))
    assert (found.own_kept, found.own_solubles_kept) == pytest.approx((salt, other))
    assert found.water_g == pytest.approx(600)
    assert found.meat_g == pytest.approx(900 + 40 * salt + 60 * other)
    assert found.leftover_g == pytest.approx(400 + 40 * (1 - salt) + 60 * (1 - other))


def test_water_gained_before_the_heat_is_in_the_balance() -> None:
    """100 g drawn in and 100 g pressed out: 700 g of water in the meat, 500 in the pot."""
    wet = strip(**(ROUND | {"gain_g": 100.0}))

    found = heated_in_marinade(ROUND_BATH, wet, Lost(100.0, 0.0), PLAIN)

    assert found.water_g == pytest.approx(700)
    assert found.kept.salt == pytest.approx(1 / 2)


def test_boiled_dry_all_of_it_is_kept() -> None:
    """Where no liquid is left nothing can be poured away."""
    found = heated_in_marinade(ROUND_BATH, strip(**ROUND), Lost(100.0, 900.0), PLAIN)

    assert found.kept == (1.0, 1.0, 1.0, 1.0)
    assert found.leftover_g == pytest.approx(0.0)


def test_heat_never_presses_out_the_last_water() -> None:
    """However much juice is said to be lost, a twentieth of the meat's water stays."""
    boiled = heated_in_marinade(ROUND_BATH, strip(**ROUND), Lost(2000.0, 0.0), PLAIN)
    steamed = heated_with_drip_lost(soak(ROUND_BATH, strip(**ROUND), PLAIN), 2000.0, PLAIN)

    assert boiled.water_g == pytest.approx(35)
    assert steamed.water_g == pytest.approx(35)


@given(st.floats(0, 600), st.floats(0, 400), st.floats(-50, 100), st.floats(0, 60))
def test_heating_conserves_mass(juice: float, boiled: float, gain: float, film: float) -> None:
    """Meat, leftover and what boiled off weigh what meat and marinade did."""
    meat = strip(**(ROUND | {"gain_g": gain, "film_g": film}))

    found = heated_in_marinade(ROUND_BATH, meat, Lost(juice, boiled), PLAIN)

    assert found.meat_g + found.leftover_g + boiled == pytest.approx(1600)


def test_drip_is_taken_off_once_from_everything() -> None:
    """A quarter of the water steamed out: shares to three quarters, weights less the drip."""
    soaked = soak(ROUND_BATH, strip(**ROUND), PLAIN)

    found = heated_with_drip_lost(soaked, 175.0, PLAIN)

    assert found.kept == pytest.approx(tuple(0.75 * one for one in soaked.kept))
    assert found.own_kept == pytest.approx(0.75 * soaked.own_kept)
    assert found.own_solubles_kept == pytest.approx(0.75 * soaked.own_solubles_kept)
    assert (525.0, soaked.meat_g - 175) == (found.water_g, found.meat_g)
    assert (soaked.leftover_g, soaked.film_share) == (found.leftover_g, found.film_share)


def test_purge_by_hand() -> None:
    """100 g run off: a fifth of the water that salt reaches, a quarter of what sugar does."""
    found = rubbed(strip(**ROUND), 100.0, PLAIN)

    assert found.kept == pytest.approx((0.8, 0.75, 0.75, 0.75))
    assert (found.own_kept, found.own_solubles_kept) == pytest.approx((0.8, 0.75))
    assert (900.0, 600.0, 100.0) == (found.meat_g, found.water_g, found.leftover_g)
    assert 1.0 == found.film_share


def test_a_purge_takes_no_more_than_all() -> None:
    """More liquid than the solutes reach carries all of them off, and no more."""
    assert (0.0,) * 4 == rubbed(strip(**ROUND), 600.0, PLAIN).kept
