"""The default draws agree with thousands, whatever the kind of number."""

from __future__ import annotations

import subprocess
import sys
from fractions import Fraction

import pytest

from tarebook.nutrition import Facts, estimate, facts_of
from tarebook.nutrition.assumptions import assumptions
from tarebook.nutrition.draws import column
from tarebook.nutrition.estimate import DRAWS
from tarebook.nutrition.many import array_columns, arrays
from tarebook.nutrition.model import FIGURES, batch
from tarebook.quantities.drawer import choose_drawer
from tarebook.recipe.load import load_recipe, shipped_recipes
from tarebook.recipe.model import HeatStep
from tarebook.scaling import scale_by_factor
from tarebook.uptake.maths import COLUMNS, Column

REFERENCE = 20_000
WITHIN = 0.02


def facts(name: str) -> Facts:
    """Return the facts of a shipped recipe at its own size."""
    return facts_of(scale_by_factor(load_recipe(name)[0], Fraction(1), choose_drawer("basic")))


@pytest.mark.parametrize("name", shipped_recipes())
def test_the_default_range_agrees_with_twenty_thousand_draws(name: str) -> None:
    """Every figure and the weight, at 5, 50 and 95 %, within 2 %, on every shipped recipe."""
    shown, many = estimate(facts(name)), estimate(facts(name), draws=REFERENCE)
    pairs = [(shown.per_ounce[one], many.per_ounce[one]) for one in FIGURES]
    pairs += [(shown.finished_g, many.finished_g), (shown.yield_fraction, many.yield_fraction)]
    for ours, theirs in pairs:
        assert ours is not None and theirs is not None
        assert ours[:3] == pytest.approx(theirs[:3], rel=WITHIN, abs=1e-9)


@pytest.mark.slow
@pytest.mark.parametrize("name", shipped_recipes())
@pytest.mark.parametrize("step", [HeatStep.SIMMERED, HeatStep.STEAMED, HeatStep.OVEN_AFTER])
@pytest.mark.parametrize("finished", [False, True])
def test_so_it_does_on_variants_that_it_was_not_made_for(
    name: str, step: HeatStep, finished: bool
) -> None:
    """Sodium, sugars and weight within 2.5 % however it is heated, weighed or not."""
    known = facts(name)._replace(heat=step)
    if finished:
        known = known.weighed(estimate(known).finished_g.likely)
    shown, many = estimate(known), estimate(known, draws=REFERENCE)
    for figure in ("sodium_mg", "sugars_g", "added_sugars_g"):
        ours, theirs = shown.per_ounce[figure], many.per_ounce[figure]
        assert ours is not None and theirs is not None
        assert ours[:3] == pytest.approx(theirs[:3], rel=0.025, abs=1e-9)


@pytest.mark.parametrize("name", shipped_recipes())
def test_arrays_and_columns_are_one_model(name: str) -> None:
    """Given the same draws, both kinds of number give the same batch."""
    known = facts(name)
    inputs = assumptions(known)
    plain = {one: column(one, each.distribution, DRAWS) for one, each in inputs.items()}
    import numpy as np

    columns = batch(known, {one: Column(each) for one, each in plain.items()}, COLUMNS)
    arrayed = batch(known, {one: np.array(each) for one, each in plain.items()}, arrays())
    for figure in FIGURES:
        theirs = np.broadcast_to(arrayed.figures[figure], (DRAWS,))
        ours = columns.figures[figure]
        listed = list(ours) if isinstance(ours, Column) else [float(ours)] * DRAWS
        assert listed == pytest.approx(list(theirs), rel=1e-7, abs=1e-9)


def test_each_array_visits_every_slice_once() -> None:
    """Stratified as the default draws are; a name has one order."""
    inputs = assumptions(facts("juniper-venison"))
    first, again = (array_columns(inputs, 1000) for _ in range(2))

    for name, one in inputs.items():
        assert list(first[name]) == list(again[name])
        spread = column(name, one.distribution, 1000)
        near = 2e-3 * (max(spread) - min(spread)) + 1e-12
        assert sorted(first[name])[5:-5] == pytest.approx(sorted(spread)[5:-5], abs=near)


def test_the_default_needs_no_numpy() -> None:
    """A cook's estimate loads no large library."""
    code = (
        "import sys\n"
        "from fractions import Fraction\n"
        "from tarebook.nutrition import estimate, facts_of\n"
        "from tarebook.quantities.drawer import choose_drawer\n"
        "from tarebook.recipe.load import load_recipe\n"
        "from tarebook.scaling import scale_by_factor\n"
        "recipe, _ = load_recipe('juniper-venison')\n"
        "scaled = scale_by_factor(recipe, Fraction(1), choose_drawer('basic'))\n"
        "list(estimate(facts_of(scaled)).per_ounce.values())\n"
        "print('numpy' in sys.modules)"
    )
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)

    assert "False\n" == done.stdout
