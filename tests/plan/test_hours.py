"""How long a load dries."""

from __future__ import annotations

import pytest

from tarebook.figures.sources import sources
from tarebook.plan.hours import conditions, own_hours, published_hours, recipe_hours

QUARTER = conditions(6.35, (145.0, 145.0))


def test_the_cooks_own_batch_give_or_take_a_quarter() -> None:
    """Six hours in this dryer are 4.5 to 7.5 the next time; a range keeps its own ends."""
    found = own_hours(6, 6)

    assert (4.5, 6, 7.5) == pytest.approx((found.low_h, found.likely_h, found.high_h))
    wide = own_hours(4, 9)
    assert (4, 6, 9) == pytest.approx((wide.low_h, wide.likely_h, wide.high_h))


def test_a_recipes_hours_to_a_factor_of_two() -> None:
    """What a recipe states is the middle; a dryer not tried may take twice as long, or half."""
    found = recipe_hours(4, 9, QUARTER, QUARTER)

    assert (3, 6, 12) == pytest.approx((found.low_h, found.likely_h, found.high_h))
    assert "4-9 h" in found.why and () == found.sources


def test_another_heat_is_carried_over() -> None:
    """At 160 in place of 145 degF the likely hours are 0.771 of the recipe's (Ea 30 kJ/mol)."""
    found = recipe_hours(6, 6, QUARTER, conditions(6.35, (160.0, 160.0)))

    assert 0.771 == pytest.approx(found.likely_h / 6, abs=5e-4)
    assert "carried over" in found.why


def test_published_hours_name_who_says_so() -> None:
    """Where nobody says, others' times are taken, no nearer than a factor of two, with sources."""
    found = published_hours(QUARTER)

    assert found.low_h <= found.likely_h / 2 and found.high_h >= 2 * found.likely_h
    assert found.sources and set(found.sources) <= set(sources())


def test_at_least() -> None:
    """Hours are lifted to what a heat step asks for, and why is told."""
    found = recipe_hours(4, 9, QUARTER, QUARTER).at_least(4, "somebody asks for")

    assert (4, 6, 12) == pytest.approx((found.low_h, found.likely_h, found.high_h))
    assert found.why.endswith("at least 4 h, which somebody asks for")
    assert found == found.at_least(3, "nobody asks for")


def test_conditions_are_kept_to_what_can_be_reckoned() -> None:
    """A piece of 8 cm counts as 5 cm, the thickest that can be reckoned; unstated as 1/4 in."""
    assert (50.0, 6.35) == (
        conditions(80, (150, 150)).thickness_mm,
        conditions(None, (150, 150)).thickness_mm,
    )
