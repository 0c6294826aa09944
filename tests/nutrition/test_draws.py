"""The default draws: each distribution, and the same sequence for the same name."""

from __future__ import annotations

from fractions import Fraction
from math import exp, log
from statistics import NormalDist

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy import stats

from tarebook.nutrition import facts_of
from tarebook.nutrition.assumptions import assumptions
from tarebook.nutrition.draws import (
    JUDGEMENTS,
    KEPT,
    ORDERS,
    STANDING,
    Fixed,
    LogNormal,
    LogPert,
    Pert,
    Uniform,
    column,
    orthogonal_order,
    percentile,
    strata,
)
from tarebook.nutrition.make_draws import made_judgements, made_orders
from tarebook.quantities.drawer import choose_drawer
from tarebook.recipe.load import load_recipe, shipped_recipes
from tarebook.scaling import scale_by_factor


@given(st.floats(-5, 5), st.floats(0.01, 5), st.floats(0, 1))
def test_pert_meets_the_beta_distribution(low: float, width: float, mode: float) -> None:
    """A bounded judgement has the quantiles of its beta distribution."""
    mode = round(mode, 3)
    likely = low + mode * width
    found = strata(Pert(low, likely, low + width), 50)
    beta = stats.beta(1 + 4 * mode, 1 + 4 * (1 - mode))

    expected = [low + width * beta.ppf((i + 0.5) / 50) for i in range(50)]

    assert found == pytest.approx(expected, abs=5e-3 * width)


def test_the_files_are_what_is_made() -> None:
    """Orders and judgements beside the module are, byte for byte, what their making gives."""
    assert made_orders() == ORDERS.read_bytes()
    assert KEPT * len(STANDING) == len(made_orders())
    assert made_judgements() == JUDGEMENTS.read_bytes()
    assert 8 * (KEPT + 1) * 10 <= len(made_judgements())


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


@pytest.mark.parametrize("n", [8, 64, 256, 512])
def test_no_column_of_the_design_is_correlated_with_another(n: int) -> None:
    """Each a permutation; every product of two about their middles is exactly zero."""
    columns = [orthogonal_order(place, n) for place in range(min(n // 2, 40))]
    centred = [[2 * one - (n - 1) for one in order] for order in columns]

    assert all(list(range(n)) == sorted(order) for order in columns)
    for at, first in enumerate(centred):
        for second in centred[:at]:
            assert 0 == sum(a * b for a, b in zip(first, second, strict=True))


def test_every_standing_input_has_its_own_column() -> None:
    """Two inputs in one order would be one doubt counted twice."""
    orders = {column(name, Uniform(), 256) for name in STANDING}

    assert len(STANDING) == len(orders)


def test_every_input_of_every_batch_is_standing_or_an_ingredients() -> None:
    """A new input gets a column too."""
    for name in shipped_recipes():
        scaled = scale_by_factor(load_recipe(name)[0], Fraction(1), choose_drawer("basic"))
        known = facts_of(scaled, finished_g=500.0, soaked_g=1200.0, leftover_g=100.0)
        loose = {one for one in assumptions(known) if ":" not in one}
        assert loose <= set(STANDING)
