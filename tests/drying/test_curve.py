"""A slab that dries against a computed table, its own scaling, and its limits."""

from __future__ import annotations

from math import log, pi

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tarebook.drying.curve import (
    moisture_ratio,
    slab_hours,
    slab_tau,
)

RATIOS = st.floats(0.001, 0.999)


@pytest.mark.parametrize(
    ("ratio", "tau", "hours"),
    [
        (0.25, 0.47673, (13.35, 6.67, 4.45, 2.38)),
        (0.20, 0.56716, (15.88, 7.94, 5.29, 2.84)),
        (0.157, 0.66527, (18.63, 9.31, 6.21, 3.33)),
        (0.10, 0.84809, (23.75, 11.87, 7.92, 4.24)),
    ],
)
def test_slab_meets_the_computed_table(
    ratio: float, tau: float, hours: tuple[float, float, float, float]
) -> None:
    """A 6.35 mm strip takes the hours of the table, at four diffusivities of water."""
    found = [
        slab_hours(ratio=ratio, thickness_mm=6.35, diffusivity_m2_s=at)
        for at in (1e-10, 2e-10, 3e-10, 5.6e-10)
    ]

    assert slab_tau(ratio) == pytest.approx(tau, abs=1e-5)
    assert found == pytest.approx(list(hours), abs=0.0051)


# Diffusivity of water in beef that dries [m2/s], as printed.
DIFFUSIVITIES = [
    ("hot air, 30 to 40 degC", 1.60e-10, 2.28e-10, "muga-2021"),
    ("infrared and air, 30 to 40 degC", 4.56e-10, 13.7e-10, "muga-2021"),
    ("cabinet, 30 to 60 degC", 0.423e-10, 5.59e-10, "beef-cabinet-2018"),
]


@pytest.mark.published
@pytest.mark.parametrize(("how", "low", "high", "source"), DIFFUSIVITIES)
def test_published_diffusivities_allow_published_hours(
    how: str, low: float, high: float, source: str
) -> None:
    """From 73 % to 33 % moisture, printed diffusivities give hours that meet the printed ones."""
    shortest = slab_hours(ratio=0.157, thickness_mm=6.35, diffusivity_m2_s=high)
    longest = slab_hours(ratio=0.157, thickness_mm=6.35, diffusivity_m2_s=low)

    assert shortest <= 12 and longest >= 4, (how, source)


def test_moisture_ratio_of_the_usual_finish() -> None:
    """From 73 % to 33 % moisture with 0.08 g per g for ever is a moisture ratio of 0.157."""
    found = moisture_ratio(now=33 / 67, start=73 / 27, balance=0.08)

    assert found == pytest.approx(0.157, abs=5e-4)


@given(RATIOS, RATIOS)
def test_drier_takes_longer(one: float, other: float) -> None:
    """To be drier takes no less time."""
    drier, moister = sorted((one, other))

    assert slab_tau(moister) <= slab_tau(drier) + 1e-12


def test_slab_of_twice_the_thickness_takes_four_times_as_long() -> None:
    """Where travel inside sets the pace, time goes with the square of the thickness."""
    thin = slab_hours(ratio=0.2, thickness_mm=5, diffusivity_m2_s=3e-10)
    thick = slab_hours(ratio=0.2, thickness_mm=10, diffusivity_m2_s=3e-10)

    assert thick == pytest.approx(4 * thin, rel=1e-12)


def test_nothing_has_left_at_the_start() -> None:
    """A moisture ratio of one is reached at once."""
    assert slab_tau(1) == pytest.approx(0, abs=1e-12)


@pytest.mark.parametrize("ratio", [0, -0.1, 1.01, float("nan")])
def test_ratio_that_cannot_be_is_refused(ratio: float) -> None:
    """Drier than balance, or wetter than the start, is refused."""
    with pytest.raises(ValueError, match="moisture ratio"):
        slab_tau(ratio)


def test_slab_that_cannot_be_is_refused() -> None:
    """No thickness, water that does not travel and water that comes back are refused."""
    for thickness_mm, diffusivity in ((0, 1e-10), (-6, 1e-10), (6, 0), (6, -1e-10)):
        with pytest.raises(ValueError, match="thickness and diffusivity"):
            slab_hours(ratio=0.5, thickness_mm=thickness_mm, diffusivity_m2_s=diffusivity)
    for now, start, balance in ((3, 2, 0.1), (0.05, 2, 0.1), (0.1, 0.1, 0.1), (1, 2, -0.1)):
        with pytest.raises(ValueError, match="never past it"):
            moisture_ratio(now=now, start=start, balance=balance)


@pytest.mark.parametrize(
    ("ratio", "tau"),
    [
        (0.9, pi / 400),  # nothing has come from the middle yet: 1 - 2 sqrt(tau / pi)
        (0.8, pi / 100),
        (0.01, 4 / pi**2 * log(800 / pi**2)),  # all but the slowest term is gone
        (1e-6, 4 / pi**2 * log(8e6 / pi**2)),
    ],
)
def test_slab_begins_and_ends_by_its_closed_forms(ratio: float, tau: float) -> None:
    """First the square root of time, at the end one exponential: both solved by hand."""
    assert slab_tau(ratio) == pytest.approx(tau, rel=1e-6)


def test_slab_hours_by_hand() -> None:
    """Half of 8 mm at 4e-10 m2/s has a tau of one after 40,000 s; 0.8 mm, after 400."""
    found = slab_hours(ratio=0.9, thickness_mm=8, diffusivity_m2_s=4e-10)

    assert found == pytest.approx(pi / 400 * 40_000 / 3600, rel=1e-6)
    thin = slab_hours(ratio=0.9, thickness_mm=0.8, diffusivity_m2_s=4e-10)
    assert thin == pytest.approx(found / 100, rel=1e-12)


def test_a_moisture_ratio_by_hand() -> None:
    """Of the 2 g that can leave 0.5 are there; at the start all, at balance none."""
    assert 0.25 == moisture_ratio(now=1.5, start=3, balance=1)
    assert 1 == moisture_ratio(now=3, start=3, balance=0)
    assert 0 == moisture_ratio(now=1, start=3, balance=1)
