"""A recipe as it is made with a heat step: hours, notes, and whose steps they are."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from tarebook.recipe.model import HeatStep, Recipe
from tarebook.safety import Case, keep_by
from tarebook.safety.heated import as_heated
from tarebook.safety.method import NOBODY_CHECKED, hours_mark, steps_head

Batch = Callable[..., Recipe]


def heated(recipe: Recipe, step: HeatStep) -> Recipe:
    """Return a recipe as it is made with a heat step."""
    return as_heated(Case.of(recipe), step)


@pytest.mark.parametrize(
    ("written", "raised"),
    [((5.0, 7.0), (6.0, 7.0)), ((3.0, 5.0), (6.0, 6.0)), ((6.0, 8.0), (6.0, 8.0)), (None, None)],
)
def test_hours_before_the_oven(
    batch: Batch, written: tuple[float, float] | None, raised: tuple[float, float] | None
) -> None:
    """Fewer than the published hours are raised to them and told; others stay as written."""
    found = heated(batch(drying_hours=written), HeatStep.OVEN_AFTER)

    assert raised == found.drying.hours
    assert (written != raised) is any("6 h at least before the oven" in one for one in found.notes)


@pytest.mark.parametrize("step", [HeatStep.SIMMERED, HeatStep.STEAMED])
def test_hours_of_heated_meat_stay(batch: Batch, step: HeatStep) -> None:
    """No hours are raised where the heat comes first, nor for what is no meat."""
    assert (3.0, 5.0) == heated(batch(drying_hours=(3.0, 5.0)), step).drying.hours
    mushrooms = batch("mushroom-shiitake", drying_hours=(3.0, 5.0))
    assert (3.0, 5.0) == heated(mushrooms, HeatStep.OVEN_AFTER).drying.hours


def test_raised_hours_are_judged_by(batch: Batch) -> None:
    """A batch with raised hours has its days; the same as written has none."""
    short = batch(heat=HeatStep.OVEN_AFTER, drying_hours=(5.0, 7.0))

    assert () == keep_by(Case.of(short)).limits
    assert 3 == len(keep_by(Case.of(heated(short, HeatStep.OVEN_AFTER))).limits)


def test_steps_written_for_another_heat_step(batch: Batch) -> None:
    """They are told to be; steps for the heat step that is taken are told to be the cook's own."""
    recipe = batch()._replace(steps=("Simmer it.",))
    other = heated(recipe, HeatStep.OVEN_AFTER)

    assert "another heat step (simmered in its marinade)" in steps_head(Case.of(other))
    same = steps_head(Case.of(heated(recipe, HeatStep.SIMMERED)))
    assert "another heat step" not in same and NOBODY_CHECKED in same
    assert same == steps_head(Case.of(recipe)) and "" == steps_head(Case.of(batch()))
    assert NOBODY_CHECKED in steps_head(Case.of(other))
    boiled = steps_head(Case.of(heated(recipe, HeatStep.BOILED_DOWN)))
    assert "the marinade is kept for it" in boiled and "is kept" not in steps_head(Case.of(other))
    unstated = recipe._replace(heat=HeatStep.UNSTATED)
    assert "written for no heat step" in steps_head(Case.of(heated(unstated, HeatStep.STEAMED)))


def test_unstated_hours_before_the_oven_are_told(batch: Batch) -> None:
    """A card whose recipe states no hours says the least before the oven; heated meat has none."""
    assert ", 6 h at least" == hours_mark(Case.of(batch(heat=HeatStep.OVEN_AFTER)))
    assert "" == hours_mark(Case.of(batch()))
    assert "" == hours_mark(Case.of(batch("turkey-breast", heat=HeatStep.OVEN_AFTER)))
