"""The default draws: each distribution, and the same sequence for the same name."""

from __future__ import annotations

from math import exp, log
from statistics import NormalDist

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy import stats

from tarebook.nutrition.draws import (
    Fixed,
    LogNormal,
    LogPert,
    Pert,
    Uniform,
    column,
    percentile,
    strata,
)


@given(st.floats(-5, 5), st.floats(0.01, 5), st.floats(0, 1))
def test_pert_meets_the_beta_distribution(low: float, width: float, mode: float) -> None:
    """A bounded judgement has the quantiles of its beta distribution."""
    mode = round(mode, 3)
    likely = low + mode * width
    found = strata(Pert(low, likely, low + width), 50)
    beta = stats.beta(1 + 4 * mode, 1 + 4 * (1 - mode))

    expected = [low + width * beta.ppf((i + 0.5) / 50) for i in range(50)]

    assert found == pytest.approx(expected, abs=5e-3 * width)


def test_log_pert_stays_within_its_ends() -> None:
    """A factor known to within bounds never leaves them."""
    found = strata(LogPert(1e-10, 1.9e-10, 4e-10), 200)

    assert 1e-10 < found[0] < found[100] < found[-1] < 4e-10


def test_log_normal_meets_the_normal_distribution() -> None:
    """A factor of 6 % has 5 and 95 % points of the log-normal."""
    values = list(strata(LogNormal(0.06), 1000))
    z = NormalDist().inv_cdf(0.95)

    assert percentile(values, 0.95) == pytest.approx(exp(z * log(1.0036) ** 0.5), rel=1e-3)
    assert percentile(values, 0.5) == pytest.approx(1.0, rel=1e-3)


def test_same_name_gives_the_same_draws() -> None:
    """Two variants that share an input share its draws; another name has another order."""
    first = column("gain", Pert(-0.03, 0.02, 0.07), 100)

    assert column("gain", Pert(-0.03, 0.02, 0.07), 100) == first
    assert column("film", Pert(-0.03, 0.02, 0.07), 100) != first
    assert sorted(column("film", Pert(-0.03, 0.02, 0.07), 100)) == sorted(first)


def test_every_slice_is_visited_once() -> None:
    """A column is an order of its slices: none twice, none left out."""
    assert sorted(column("heat-case", Uniform(), 7)) == [(i + 0.5) / 7 for i in range(7)]


def test_fixed_input_does_not_move() -> None:
    """What is known exactly is the same in every draw."""
    assert column("thickness", Fixed(6.35), 3) == (6.35, 6.35, 6.35)


def test_percentile_lies_between_slices() -> None:
    """Percentiles are read between the middles of the slices, and end at the ends."""
    assert percentile([1.0, 2.0, 3.0, 4.0], 0.5) == 2.5
    assert percentile([1.0, 2.0, 3.0, 4.0], 0.0) == 1.0
    assert percentile([1.0, 2.0, 3.0, 4.0], 1.0) == 4.0
