"""The soak against a worked example, its limits, and the conservation of mass."""

from __future__ import annotations

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
