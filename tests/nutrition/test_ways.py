"""Where the heat step is not stated, each way is worked out, and each draw has its own."""

from __future__ import annotations

from fractions import Fraction

import pytest

from tarebook.nutrition import Facts, estimate, facts_of
from tarebook.nutrition.assumptions import assumptions
from tarebook.nutrition.draws import column
from tarebook.nutrition.estimate import DRAWS
from tarebook.nutrition.model import batch
from tarebook.nutrition.ways import picker, values, ways_of
from tarebook.quantities.drawer import choose_drawer
from tarebook.recipe.load import load_recipe
from tarebook.recipe.model import HeatStep
from tarebook.scaling import scale_by_factor
from tarebook.uptake.maths import COLUMNS, Column


@pytest.fixture
def unstated() -> Facts:
    """A shipped recipe that no longer says how it is heated."""
    recipe = load_recipe("juniper-venison")[0]
    known = facts_of(scale_by_factor(recipe, Fraction(1), choose_drawer("basic")))
    return known._replace(heat=HeatStep.UNSTATED)


def drawn(known: Facts) -> dict[str, Column]:
    """Return the default draws."""
    inputs = assumptions(known)
    return {name: Column(column(name, one.distribution, DRAWS)) for name, one in inputs.items()}


def test_a_stated_step_is_one_way(unstated: Facts) -> None:
    """Nothing is mixed where the recipe says how."""
    stated = unstated._replace(heat=HeatStep.STEAMED)
    ways = ways_of(stated, assumptions(stated), drawn(stated), COLUMNS)

    assert [1.0] == [how_likely for how_likely, _ in ways]


def test_three_ways_add_up(unstated: Facts) -> None:
    """Simmered, steamed, and oven after drying: each as if it were stated."""
    x = drawn(unstated)
    ways = ways_of(unstated, assumptions(unstated), x, COLUMNS)
    steps = (HeatStep.SIMMERED, HeatStep.STEAMED, HeatStep.OVEN_AFTER)

    assert pytest.approx(1.0) == sum(how_likely for how_likely, _ in ways)
    for step, (_, done) in zip(steps, ways, strict=True):
        alone = batch(unstated._replace(heat=step), x, COLUMNS)
        assert list(alone.figures["sodium_mg"]) == list(done.figures["sodium_mg"])


def test_a_draw_has_the_way_that_its_own_input_says(unstated: Facts) -> None:
    """Picked from three, the draws are those of the model that chooses within."""
    x = drawn(unstated)
    ways = ways_of(unstated, assumptions(unstated), x, COLUMNS)
    picked = picker(ways, x)([values(done.figures["sodium_mg"], DRAWS) for _, done in ways])

    assert picked == pytest.approx(list(batch(unstated, x, COLUMNS).figures["sodium_mg"]))
    assert picked != values(ways[0][1].figures["sodium_mg"], DRAWS)


def test_the_range_spans_the_ways(unstated: Facts) -> None:
    """Not stated is less sure than any of the three, and lies among them."""
    whole = estimate(unstated).per_ounce["sodium_mg"]
    each = [
        estimate(unstated._replace(heat=step)).per_ounce["sodium_mg"]
        for step in (HeatStep.SIMMERED, HeatStep.STEAMED, HeatStep.OVEN_AFTER)
    ]

    assert whole is not None
    assert min(one.low for one in each if one) < whole.low
    assert whole.high < max(one.high for one in each if one)
    assert min(one.likely for one in each if one) < whole.likely
    assert whole.likely < max(one.likely for one in each if one)


def test_a_pinned_step_is_one_way(unstated: Facts) -> None:
    """As if the recipe had said it."""
    pinned = estimate(unstated, pinned={"heat-case": 0.999}).per_ounce["sodium_mg"]
    stated = estimate(unstated._replace(heat=HeatStep.OVEN_AFTER)).per_ounce["sodium_mg"]

    assert pinned is not None and stated is not None
    assert pinned[:3] == pytest.approx(stated[:3])
