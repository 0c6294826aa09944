"""How long a load dries."""

from __future__ import annotations

import pytest

from tarebook.figures.sources import sources
from tarebook.findings import QuantityError
from tarebook.plan.hours import (
    carried_hours,
    conditions,
    own_hours,
    published_hours,
    recipe_hours,
)

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


def test_hours_are_told_to_ten_minutes() -> None:
    """What is told is what is reckoned with, so that sums of a row come out; never nothing."""
    found = recipe_hours(6, 8, QUARTER, QUARTER).as_told()

    assert (210, 420, 830) == pytest.approx(
        (found.low_h * 60, found.likely_h * 60, found.high_h * 60)
    )
    assert found == found.as_told()
    assert 10 == pytest.approx(own_hours(0.05, 0.05).as_told().low_h * 60)


def test_conditions_are_kept_to_what_can_be_reckoned() -> None:
    """A piece of 8 cm counts as 5 cm, the thickest that can be reckoned; unstated as 1/4 in."""
    assert (50.0, 6.35) == (
        conditions(80, (150, 150)).thickness_mm,
        conditions(None, (150, 150)).thickness_mm,
    )


@pytest.mark.parametrize("air_f", [30.0, 300.0])
def test_err_air_that_no_hours_are_told_of(air_f: float) -> None:
    """Frost and a hot oven are the asker's slip, in both scales."""
    with pytest.raises(QuantityError, match=rf"air of {air_f:.0f} °F .*was it the other scale"):
        conditions(6.35, (air_f, air_f))


def test_a_batch_like_the_last_one_has_no_corners() -> None:
    """Nothing is carried over: a quarter either way, from one batch to the next."""
    found = carried_hours(6, QUARTER, QUARTER)

    assert (4.5, 6, 7.5) == pytest.approx((found.low_h, found.likely_h, found.high_h))
    assert found.corners_h is None
    assert "your own batch of 6 h, and at least 25%" in found.why


def test_the_last_batch_is_carried_over_with_its_corners() -> None:
    """Seven hours of 5 mm at 160 degF, cut to 6.5 mm at 145: far, so a factor of two stays."""
    found = carried_hours(7, conditions(5, (160, 160)), conditions(6.5, (145, 145)))

    assert found.corners_h is not None
    assert (10.636, 17.473) == pytest.approx((found.corners_h[0], found.corners_h[3]), abs=1e-3)
    assert found.likely_h == pytest.approx(13.456, abs=1e-3)
    assert (found.likely_h / 2, found.likely_h * 2) == pytest.approx((found.low_h, found.high_h))
    assert "a factor of 2 either way stays" in found.why


def test_a_recipe_carried_far_keeps_its_corners() -> None:
    """Three times as thick is three to nine times as long, and no doubt is lost on the way."""
    found = recipe_hours(4, 9, conditions(4, (145, 145)), conditions(12, (145, 145)))

    assert found.low_h <= 4 * 3 and found.high_h >= 9 * 9
    assert found.likely_h == pytest.approx(6 * 3**1.5)
