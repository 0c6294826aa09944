"""The diffusion series against printed tables and against an independent solution."""

from __future__ import annotations

import csv
from math import cos, exp, inf, isclose, pi, sin, sqrt
from pathlib import Path

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.special import erfcx

from tarebook.uptake.crank import (
    roots,
    scaled_erfc,
    uptake_fraction,
    uptake_fraction_series,
    uptake_fraction_unlimited,
)

HERE = Path(__file__).parent

# Final fractional uptake, then q1, q2, q3 as printed in Crank 1975, Table 4.1 (four decimals).
CRANK_TABLE_4_1 = [
    ("0", "1.5708", "4.7124", "7.8540"),
    ("0.5", "2.0288", "4.9132", "7.9787"),
    ("0.9", "2.8363", "5.7172", "8.6587"),
    ("1.0", "3.1416", "6.2832", "9.4248"),
]


@pytest.mark.published
@pytest.mark.parametrize(("uptake", "q1", "q2", "q3"), CRANK_TABLE_4_1)
def test_roots_meet_the_printed_table(uptake: str, q1: str, q2: str, q3: str) -> None:
    """Roots agree with Crank 1975, Table 4.1, to its last digit (source crank-1975)."""
    final = float(uptake)
    alpha = inf if final == 0 else (1 - final) / final

    found = roots(alpha, count=3)

    assert all(
        abs(ours - float(printed)) <= 1.01e-4
        for ours, printed in zip(found, (q1, q2, q3), strict=True)
    )


def test_roots_meet_the_ten_decimal_table() -> None:
    """Roots agree with an independent bisection to ten decimals."""
    with (HERE / "crank_roots.csv").open(newline="") as file:
        rows = list(csv.DictReader(file))

    for row in rows:
        final = float(row["fractional_uptake"])
        found = roots(inf if final == 0 else (1 - final) / final, count=6)
        assert found == pytest.approx([float(row[f"q{n}"]) for n in range(1, 7)], abs=1e-10)
    assert len(rows) == 11


def test_fractions_meet_the_table_of_soaks() -> None:
    """All 270 rows of thickness, time and bath are met within their tolerance of 5e-4."""
    with (HERE / "uptake_fractions.csv").open(newline="") as file:
        rows = list(csv.DictReader(file))

    assert len(rows) == 270
    for row in rows:
        half = float(row["thickness_mm"]) / 2000
        seconds = float(row["time_h"]) * 3600
        for setting in ("low", "likely", "high"):
            tau = float(row[f"D_{setting}_m2_s"]) * seconds / half**2
            found = uptake_fraction(tau, float(row["alpha"]))
            assert found == pytest.approx(float(row[f"F_{setting}"]), abs=5e-4)


@pytest.mark.parametrize(
    ("tau", "unlimited", "four", "one", "small"),
    [
        (0.001, 0.03568248, 0.04429245, 0.06941156, 0.14124957),
        (0.01, 0.11283792, 0.13798020, 0.20708604, 0.37407124),
        (0.05, 0.25231325, 0.30040001, 0.41924647, 0.63875303),
        (0.2, 0.50408782, 0.57255208, 0.71162848, 0.87899181),
        (0.5, 0.76395033, 0.82369141, 0.91646666, 0.98151846),
        (1.0, 0.93125968, 0.95952250, 0.98933139, 0.99918473),
    ],
)
def test_fraction_meets_eight_decimals(
    tau: float, unlimited: float, four: float, one: float, small: float
) -> None:
    """Series and a finite-volume solution agreed on these to 2e-6; so do we."""
    found = [uptake_fraction(tau, alpha) for alpha in (inf, 4.0, 1.0, 0.3)]

    assert found == pytest.approx([unlimited, four, one, small], abs=2e-6)


@pytest.mark.parametrize("alpha", [0.003, 0.03, 0.3, 1.0, 3.0, 30.0, 1e4])
def test_short_and_long_forms_meet_the_full_series(alpha: float) -> None:
    """Where one form hands over to the other, both lie within 1e-6 of 4000 terms."""
    for tau in (0.001, 0.01, 0.0599, 0.0601, 0.2, 1.0):
        exact = uptake_fraction_series(tau, alpha, terms=4000)

        assert uptake_fraction(tau, alpha) == pytest.approx(exact, abs=1e-6)


@pytest.mark.parametrize("alpha", [0.3, 1.0, 4.0])
def test_fraction_meets_finite_volumes(alpha: float) -> None:
    """An independent numerical solution of the diffusion equation agrees within 5e-5."""
    cells = 100
    step = 1 / cells
    inside = np.zeros(cells)
    outside, time, dt = 1.0, 0.0, 0.2 * step * step
    marks = {0.05: 0.0, 0.2: 0.0, 0.5: 0.0}
    for mark in marks:
        while time < mark - dt / 2:
            flux = (outside - inside[0]) / (step / 2)
            between = np.diff(inside) / step
            inside[1:] -= dt / step * between
            inside[:-1] += dt / step * between
            inside[0] += dt / step * flux
            outside -= dt * flux / alpha
            time += dt
        marks[mark] = inside.mean() * (1 + alpha) / alpha

    for mark, independent in marks.items():
        assert uptake_fraction(mark, alpha) == pytest.approx(independent, abs=5e-5)


@given(
    st.floats(0, 1e6, allow_nan=False),
    st.floats(0, 1e12, allow_nan=False) | st.just(inf),
)
def test_fraction_is_a_fraction_everywhere(tau: float, alpha: float) -> None:
    """No time and no bath makes it overflow or leave 0 to 1."""
    assert 0.0 <= uptake_fraction(tau, alpha) <= 1.0


@given(st.floats(1e-6, 5), st.floats(1e-3, 1e3), st.floats(1.01, 4))
def test_fraction_rises_with_time(tau: float, alpha: float, later: float) -> None:
    """A longer soak never brings a strip less far."""
    assert uptake_fraction(tau * later, alpha) >= uptake_fraction(tau, alpha) - 1e-7


@given(st.floats(1e-6, 5), st.floats(1e-2, 1e3))
def test_smaller_bath_is_nearer_its_balance(tau: float, alpha: float) -> None:
    """At equal time a limited bath is never behind an unlimited one."""
    assert uptake_fraction(tau, alpha) >= uptake_fraction_unlimited(tau) - 1e-6


def turned_back(tau: float, alpha: float, *, points: int = 24) -> float:
    """Return the fraction from its Laplace transform, turned back by numbers.

    No root, no series in time and no erfc. The transform is solved by hand from the diffusion
    equation; the way back is that of Talbot with fixed points (Abate and Valko 2004).
    """
    reach = 2 * points / (5 * tau)
    angle = np.arange(1, points) * pi / points
    cot = 1 / np.tan(angle)
    s = np.concatenate([[reach + 0j], reach * angle * (cot + 1j)])
    weights = np.concatenate([[0.5 + 0j], 1 + 1j * angle * (1 + cot * cot) - 1j * cot])
    root = np.sqrt(s)
    inside = np.tanh(root) / root
    if alpha < inf:
        inside *= (1 + alpha) / (alpha + inside)
    return float(reach / points * (np.exp(s * tau) * weights * inside / s).real.sum())


@pytest.mark.parametrize("alpha", [0.001, 0.03, 0.3, 1.0, 4.0, 30.0, 1e4, 1e6, inf])
def test_fraction_meets_its_laplace_transform(alpha: float) -> None:
    """In short soaks and long ones, and where one form hands over, it is within 1e-8 of it."""
    taus = [*np.geomspace(1e-3, 5, 40).tolist(), 0.0599, 0.0601, 0.064, 0.068, 0.072, 0.076]

    for tau in taus:
        assert uptake_fraction(tau, alpha) == pytest.approx(turned_back(tau, alpha), abs=1e-8)


def test_one_term_by_hand() -> None:
    """In a bath as large as the reachable water, q is 2.0287578 (Crank's table: 2.0288)."""
    q = 2.028757838
    left = 4 / (2 + q * q) * exp(-q * q * 0.3)

    assert uptake_fraction_series(0.3, 1.0, terms=1) == pytest.approx(1 - left, abs=1e-9)
    assert uptake_fraction_series(0.3, 1.0, terms=2) < 1 - left - 1e-5


@given(st.floats(1e-3, 1e6), st.integers(1, 40))
def test_roots_solve_what_they_are_roots_of(alpha: float, count: int) -> None:
    """Every root meets sin q = -alpha q cos q, and lies in its own half turn, in order."""
    found = roots(alpha, count=count)

    assert count == len(found)
    for n, q in enumerate(found, 1):
        assert (n - 0.5) * pi <= q <= n * pi
        assert sin(q) + alpha * q * cos(q) == pytest.approx(0, abs=1e-11 * (1 + alpha * q))


@pytest.mark.parametrize("x", [0.0, 0.5, 3.0, 11.99, 12.0, 12.01, 13.0, 15.0, 30.0, 1e3, 1e150])
def test_scaled_erfc_meets_another_library(x: float) -> None:
    """To 2e-8 of itself, also where the plain product is near its end and beyond it."""
    assert isclose(scaled_erfc(x), float(erfcx(x)), rel_tol=2e-8)


def test_scaled_erfc_ends_as_one_over_x() -> None:
    """Far out it is 1 / (x sqrt(pi)), as the textbooks have it."""
    assert scaled_erfc(1e9) == pytest.approx(1 / (1e9 * sqrt(pi)), rel=1e-12)


@pytest.mark.parametrize("tau", [0.0, 1e-6, 0.01, 1.0, 1e6])
def test_without_water_outside_all_is_in(tau: float) -> None:
    """Where no bath is left there is nothing to wait for, at any time."""
    assert 1.0 == uptake_fraction(tau, 0.0)


@pytest.mark.parametrize("alpha", [1e-9, 1.0, 2e6, inf])
def test_at_the_first_instant_nothing_is_in(alpha: float) -> None:
    """In any bath at all, no time brings nothing, to the last digit."""
    assert 0.0 == uptake_fraction(0.0, alpha)
