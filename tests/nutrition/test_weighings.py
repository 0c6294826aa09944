"""What the cook's own weights tell: narrower, never wider, and true where the truth is known."""

from __future__ import annotations

from collections.abc import Callable
from fractions import Fraction
from math import exp
from random import Random
from statistics import fmean, stdev

import pytest

from tarebook.cards.worksheet import worksheet
from tarebook.nutrition.weighings import Weighing, told
from tarebook.recipe.model import Recipe


def made(count: int, *, seed: int = 1) -> tuple[list[float], list[float], list[float]]:
    """Return a hidden figure, a weight that rises with it, and a scale's noise, as factors."""
    chance = Random(seed)
    hidden = [chance.gauss(0, 0.2) for _ in range(count)]
    weight = [h / 2 + chance.gauss(0, 0.05) for h in hidden]
    noise = [exp(chance.gauss(0, 0.005)) for _ in range(count)]
    return [100 * exp(h) for h in hidden], [1000 * exp(w) for w in weight], noise


def test_a_weight_moves_the_figure_toward_what_it_says() -> None:
    """A weight far above what was foretold means a figure above what was guessed."""
    figure, weight, noise = made(4000)

    found = told({"x": figure}, [Weighing("batch", [1100 * n for n in noise], weight)])["x"]

    # In the logarithm: slope = cov/var = 0.5*0.04 / (0.25*0.04 + 0.0025), times ln 1.1.
    expected = 100 * exp(0.02 / 0.0125 * 0.09531)
    assert fmean(found) == pytest.approx(expected, rel=0.03)


def test_a_weight_narrows_by_what_it_explains() -> None:
    """What is left of the doubt is what the weight does not explain."""
    figure, weight, noise = made(4000)

    found = told({"x": figure}, [Weighing("batch", [1000 * n for n in noise], weight)])["x"]

    left = (0.04 - 0.02**2 / 0.0125) ** 0.5
    assert stdev(found) / fmean(found) == pytest.approx(left, rel=0.06)


def test_the_same_weight_twice_is_not_two_weights() -> None:
    """Two readings that say the same do not break the sum."""
    figure, weight, noise = made(500)
    once = Weighing("batch", [1000 * n for n in noise], weight)

    found = told({"x": figure}, [once, once])["x"]

    assert stdev(found) <= stdev(figure)


def test_a_figure_that_is_zero_stays_zero() -> None:
    """Nothing is made out of nothing."""
    figure, weight, noise = made(50)
    zero = [0.0] * len(figure)

    assert told({"x": zero}, [Weighing("batch", noise, weight)])["x"] == zero


def test_a_weight_beyond_all_draws_says_no_more_than_the_farthest() -> None:
    """Twice as far out is no further; what was weighed itself follows the scale all the way."""
    figure, weight, _ = made(500)
    least = min(weight)
    out, further = ([Weighing("batch", [by * least] * 500, weight)] for by in (0.9, 0.5))

    assert told({"x": figure}, further) == told({"x": figure}, out)
    followed = told({"w": weight}, further, beyond=True)["w"]
    assert max(followed) == pytest.approx(0.5 * least)


def test_a_batch_lighter_than_thought_is_saltier(recipe_of: Callable[..., Recipe]) -> None:
    """Beyond the draws a lighter batch has lost more water: more sodium an ounce, never less."""
    recipe = recipe_of()
    guessed = worksheet(recipe, factor=Fraction(1)).estimate
    least = guessed.finished_g.low
    light, lighter = (
        worksheet(recipe, factor=Fraction(1), finished_g=by * least).estimate for by in (0.92, 0.84)
    )

    sodium = [one.per_ounce["sodium_mg"].likely for one in (light, lighter)]
    assert sodium[0] < sodium[1]
    assert light.salt_kept_fraction.likely < guessed.salt_kept_fraction.likely
