"""Laws of drying against computed tables and against each other."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tarebook.drying.curve import (
    moisture_ratio,
    page_hours,
    page_ratio,
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


def test_page_meets_the_computed_values() -> None:
    """Pace 0.25, power 1.1: after 4 h 0.317049 is left, and 0.157 after 6.173517 h."""
    assert page_ratio(hours=4, rate=0.25, power=1.1) == pytest.approx(0.317049, abs=5e-7)
    assert page_hours(ratio=0.157, rate=0.25, power=1.1) == pytest.approx(6.173517, abs=5e-7)


@given(RATIOS, st.floats(0.01, 5), st.floats(0.5, 2))
def test_page_goes_there_and_back(ratio: float, rate: float, power: float) -> None:
    """The hours to a moisture ratio give that ratio back."""
    hours = page_hours(ratio=ratio, rate=rate, power=power)

    assert page_ratio(hours=hours, rate=rate, power=power) == pytest.approx(ratio, rel=1e-9)


@given(RATIOS, RATIOS)
def test_drier_takes_longer(one: float, other: float) -> None:
    """To be drier takes no less time, in a slab and by the law of Lewis."""
    drier, moister = sorted((one, other))

    assert slab_tau(moister) <= slab_tau(drier) + 1e-12
    assert _lewis_hours(moister) <= _lewis_hours(drier)


def _lewis_hours(ratio: float) -> float:
    return page_hours(ratio=ratio, rate=0.3, power=1)


def test_slab_of_twice_the_thickness_takes_four_times_as_long() -> None:
    """Where travel inside sets the pace, time goes with the square of the thickness."""
    thin = slab_hours(ratio=0.2, thickness_mm=5, diffusivity_m2_s=3e-10)
    thick = slab_hours(ratio=0.2, thickness_mm=10, diffusivity_m2_s=3e-10)

    assert thick == pytest.approx(4 * thin, rel=1e-12)


def test_nothing_has_left_at_the_start() -> None:
    """A moisture ratio of one is reached at once."""
    assert slab_tau(1) == pytest.approx(0, abs=1e-12)
    assert page_hours(ratio=1, rate=0.3, power=1.2) == 0
    assert page_ratio(hours=0, rate=0.3, power=1.2) == 1


@pytest.mark.parametrize("ratio", [0, -0.1, 1.01, float("nan")])
def test_ratio_that_cannot_be_is_refused(ratio: float) -> None:
    """Drier than balance, or wetter than the start, is refused."""
    with pytest.raises(ValueError, match="moisture ratio"):
        slab_tau(ratio)
    with pytest.raises(ValueError, match="moisture ratio"):
        page_hours(ratio=ratio, rate=0.3, power=1)


def test_pace_that_cannot_be_is_refused() -> None:
    """No pace, no thickness, time before the start and water that comes back are refused."""
    with pytest.raises(ValueError, match="pace"):
        page_ratio(hours=1, rate=0, power=1)
    with pytest.raises(ValueError, match="pace"):
        page_hours(ratio=0.5, rate=-1, power=1)
    with pytest.raises(ValueError, match="count from zero"):
        page_ratio(hours=-1, rate=0.3, power=1)
    with pytest.raises(ValueError, match="thickness"):
        slab_hours(ratio=0.5, thickness_mm=0, diffusivity_m2_s=1e-10)
    for now, start, balance in ((3, 2, 0.1), (0.05, 2, 0.1), (0.1, 0.1, 0.1), (1, 2, -0.1)):
        with pytest.raises(ValueError, match="never past it"):
            moisture_ratio(now=now, start=start, balance=balance)
