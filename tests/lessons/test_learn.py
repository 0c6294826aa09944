"""What a kitchen's batches teach covers the truth as often as it says."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from math import exp, log
from random import Random

import pytest
from scipy import stats

from tarebook.lessons.learn import learn, own_mean, spread_of, student_95
from tarebook.nutrition import Facts, estimate, facts_of
from tarebook.quantities.drawer import choose_drawer
from tarebook.recipe.load import load_recipe
from tarebook.scaling import scale_by_factor

KITCHENS = 400


def kitchens(n: int, chance: Random) -> Iterator[tuple[float, list[float], float]]:
    """Yield invented kitchens: the true yield, those of n batches, and that of the next.

    A kitchen's own spread is about 4 %, and no two kitchens have the same.
    """
    for _ in range(KITCHENS):
        true, spread = log(0.42) + chance.gauss(0, 0.056), 0.04 * exp(chance.gauss(0, 0.25))
        batches = [exp(chance.gauss(true, spread)) for _ in range(n)]
        yield exp(true), batches, exp(chance.gauss(true, spread))


@pytest.mark.parametrize("n", [1, 3, 10])
def test_the_kitchens_own_yield_covers_the_truth(n: int) -> None:
    """Its 90 % range holds the true yield of 85 to 95 kitchens in a hundred, and noise."""
    held = [
        low <= true <= high
        for true, batches, _ in kitchens(n, Random(n))
        for low, _, high in [own_mean(batches)]
    ]

    assert 0.85 <= sum(held) / KITCHENS <= 0.955


def lake() -> Facts:
    """Return the facts of a recipe whose yield the model puts where the kitchens' is."""
    recipe, _ = load_recipe("juniper-venison")
    return facts_of(scale_by_factor(recipe, Fraction(1), choose_drawer("basic")))


@pytest.mark.slow
@pytest.mark.parametrize("n", [1, 3, 10])
def test_the_next_forecast_covers_the_next_batch(n: int) -> None:
    """The model's forecast, moved by n batches: 85 to 95 in a hundred of the next ones."""
    known, held, told = lake(), 0, 0
    for _, batches, following in kitchens(n, Random(100 + n)):
        found = estimate(known._replace(own_yield=learn(batches))).yield_fraction
        held += found.low <= following <= found.high
        told += 1

    assert 0.84 <= held / told <= 0.955


def test_more_batches_move_the_forecast_further() -> None:
    """From the model's own toward the kitchen's, and never past it."""
    known = lake()
    model = estimate(known).yield_fraction.likely
    kitchen = 0.36
    moved = [
        estimate(known._replace(own_yield=learn([kitchen] * n))).yield_fraction.likely
        for n in (1, 3, 10)
    ]

    assert model > moved[0] > moved[1] > moved[2] > kitchen


def test_own_batches_narrow_the_weight_and_leave_sodium_as_sure_as_it_was() -> None:
    """Shrink is told better; what of the salt was kept is not, and nothing claims so."""
    known = lake()
    before, after = estimate(known), estimate(known._replace(own_yield=learn([0.42] * 50)))
    sodium = [one.per_ounce["sodium_mg"] for one in (before, after)]

    widths = [one.finished_g.high / one.finished_g.low for one in (before, after)]
    assert widths[1] < widths[0]
    assert sodium[0] is not None and sodium[1] is not None
    assert sodium[1].high / sodium[1].low < 1.03 * sodium[0].high / sodium[0].low


def test_no_batch_teaches_nothing() -> None:
    """None, not a guess."""
    assert learn([]) is None and learn([0.0, -1.0]) is None


def test_batches_of_another_recipe_tell_less() -> None:
    """Their doubt is wider."""
    same, other = learn([0.4, 0.41]), learn([0.4, 0.41], same_recipe=False)

    assert same is not None and other is not None
    assert other.doubt > same.doubt


def test_a_few_batches_do_not_decide_the_spread() -> None:
    """Two batches alike by luck leave the usual chance; fifty decide for themselves."""
    assert spread_of([log(0.42)] * 2) > 0.03
    assert spread_of([log(0.42)] * 50) < 0.02


@pytest.mark.published
@pytest.mark.parametrize("freedom", [3, 4, 8, 12, 30, 200])
def test_students_points_are_those_of_a_statistics_library(freedom: float) -> None:
    """Within 0.5 % from three degrees of freedom up, 0.05 % from eight. Source: scipy.stats.t."""
    near = 5e-3 if freedom < 8 else 5e-4

    assert student_95(freedom) == pytest.approx(float(stats.t.ppf(0.95, freedom)), rel=near)
