"""The default draws agree with thousands, whatever the kind of number."""

from __future__ import annotations

import subprocess
import sys
from fractions import Fraction
from random import Random

import pytest

from tarebook.nutrition import Facts, Range, estimate, facts_of
from tarebook.nutrition.assumptions import assumptions
from tarebook.nutrition.draws import column
from tarebook.nutrition.estimate import DRAWS
from tarebook.nutrition.many import array_columns, arrays
from tarebook.nutrition.model import FIGURES, batch
from tarebook.quantities.drawer import choose_drawer
from tarebook.recipe.load import load_recipe, shipped_recipes
from tarebook.recipe.model import HeatStep, Part, Surface
from tarebook.scaling import scale_by_factor
from tarebook.uptake.maths import COLUMNS, Column

REFERENCE = 20_000
WITHIN = 0.02
WEIGHTS = ("finished_g", "yield_fraction", "moisture_fraction", "salt_kept_fraction")
OF_SUGARS = {"sugars_g", "added_sugars_g", "carbohydrate_g"}
MAIN = ("sodium_mg", "sugars_g", "added_sugars_g", "protein_g", "energy_kcal")


def facts(name: str) -> Facts:
    """Return the facts of a shipped recipe at its own size."""
    return facts_of(scale_by_factor(load_recipe(name)[0], Fraction(1), choose_drawer("basic")))


def pairs(known: Facts) -> list[tuple[Range, Range, float]]:
    """Return every range that is shown, by default and by the percentiles of many draws.

    Each with what it may be off beside its two per cent.
    """
    shown, many = estimate(known), estimate(known, draws=REFERENCE)
    batch_g = leeway_g(known)
    ounce_g = batch_g * shown.ounce.grams / shown.finished_g.likely
    found: list[tuple[Range | None, Range | None, float]] = [
        (one.get(figure), other.get(figure), leeway if figure in OF_SUGARS else 1e-9)
        for one, other, leeway in (
            (shown.per_ounce, many.per_ounce, ounce_g),
            (shown.per_batch, many.per_batch, batch_g),
        )
        for figure in FIGURES
    ]
    found += [(getattr(shown, one), getattr(many, one), 1e-9) for one in WEIGHTS]
    return [
        (ours, theirs, leeway)
        for ours, theirs, leeway in found
        if ours is not None and theirs is not None
    ]


def leeway_g(known: Facts) -> float:
    """Return a twentieth of the most that sugars which nobody states could come to [g].

    Where there are hardly any others, their sum is as far from log-normal as they are: from none
    to that, all alike.
    """
    unstated = (line for line in known.lines if line.makeup.sugars_bounded)
    return 1e-9 + sum(
        0.05 * 2 * line.mass_g * (line.makeup.sucrose + line.makeup.hexose) for line in unstated
    )


@pytest.mark.parametrize("name", shipped_recipes())
@pytest.mark.parametrize("step", HeatStep)
def test_in_arrays_the_default_draws_give_the_very_same(name: str, step: HeatStep) -> None:
    """Every range, every draw and the ceiling, to the last bit, however the meat is heated."""
    known = facts(name)._replace(heat=step)
    one, other = estimate(known), estimate(known, in_arrays=True)

    for figure in FIGURES:
        assert one.per_ounce[figure] == other.per_ounce[figure]
        assert one.per_batch[figure] == other.per_batch[figure]
        assert one.draws[figure] == other.draws[figure]
    for weight in (*WEIGHTS, "ceiling_sodium_mg_per_oz"):
        assert getattr(one, weight) == getattr(other, weight)


@pytest.mark.parametrize("name", shipped_recipes())
def test_in_arrays_weights_from_the_scale_count_the_same(name: str) -> None:
    """With strips and batch weighed too; strips only where there is a soak."""
    known = facts(name)
    likely_g = estimate(known).finished_g.likely
    soaked_g = known.meat_mass_g * 1.02 if known.has(Part.MARINADE) else None
    weighed = known._replace(soaked_g=soaked_g, finished_g=likely_g * 1.05)
    one, other = estimate(weighed), estimate(weighed, in_arrays=True)

    assert [one.per_ounce[figure] for figure in FIGURES] == [
        other.per_ounce[figure] for figure in FIGURES
    ]


@pytest.mark.parametrize("name", shipped_recipes())
def test_the_default_range_agrees_with_twenty_thousand_draws(name: str) -> None:
    """Every range shown, at 5, 50 and 95 %, within 2 %, on every shipped recipe as it stands."""
    found = pairs(facts(name))

    assert len(found) >= 2 * len(FIGURES) + 3
    for ours, theirs, leeway in found:
        assert ours[:3] == pytest.approx(theirs[:3], rel=WITHIN, abs=leeway)


@pytest.mark.slow
@pytest.mark.parametrize("name", shipped_recipes())
@pytest.mark.parametrize("step", HeatStep)
@pytest.mark.parametrize("finished", [False, True])
def test_so_it_does_however_it_is_heated(name: str, step: HeatStep, finished: bool) -> None:
    """The same with every heat step, weighed or not; within 2.5 % where the step is not stated."""
    known = facts(name)._replace(heat=step)
    if finished:
        known = known.weighed(estimate(known).finished_g.likely)
    within = 0.025 if step is HeatStep.UNSTATED else WITHIN
    for ours, theirs, leeway in pairs(known):
        assert ours[:3] == pytest.approx(theirs[:3], rel=within, abs=leeway)


@pytest.mark.slow
@pytest.mark.parametrize("seed", range(30))
def test_so_it_does_on_bowls_that_it_was_not_made_for(seed: int) -> None:
    """Sodium, sugars, protein, energy and weight of 30 bowls thrown together, within 2.5 %.

    Or half a milligram: a bowl of spices alone has few sugars to be off in.
    """
    known = thrown_together(Random(seed))
    shown, many = estimate(known), estimate(known, draws=REFERENCE)
    leeway = 5e-4 + leeway_g(known) * shown.ounce.grams / shown.finished_g.likely
    found = [
        (shown.per_ounce[one], many.per_ounce[one], leeway if one in OF_SUGARS else 5e-4)
        for one in MAIN
    ]
    for ours, theirs, off in (*found, (shown.finished_g, many.finished_g, 5e-4)):
        assert ours is not None and theirs is not None
        assert ours[:3] == pytest.approx(theirs[:3], rel=0.025, abs=off)


def thrown_together(chance: Random) -> Facts:
    """Return a shipped recipe with a bowl, a soak and a heat step that are none of its own."""
    all_known = [facts(name) for name in shipped_recipes()]
    shelf = [line for one in all_known for line in one.lines if line.part is Part.MARINADE]
    known = chance.choice([one for one in all_known if one.has(Part.MARINADE)])
    bowl = {
        line.name: line._replace(mass_g=line.mass_g * chance.uniform(0.3, 3))
        for line in chance.sample(shelf, chance.randint(2, 10))
    }
    hours = chance.choice([1.0, 2.0, 4.0, 8.0, 12.0, 24.0])
    return known._replace(
        lines=tuple(bowl.values()),
        hours=(0.8 * hours, hours, 1.3 * hours),
        thickness_mm=(chance.choice([3.0, 5.0, 6.35, 8.0, 10.0]),) * 3,
        heat=chance.choice(list(HeatStep)),
        surface=chance.choice(list(Surface)),
    )


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
