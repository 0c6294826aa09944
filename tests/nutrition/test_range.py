"""Low, likely and high of a figure, and when a difference is smaller than its doubt."""

from __future__ import annotations

import pytest

from tarebook.nutrition.range import Range, range_of


def test_a_range_is_5_50_and_95_percent_of_the_draws() -> None:
    """Of a hundred even draws, in any order, low, likely and high stand at 5, 50 and 95."""
    draws = [float((37 * i) % 100) + 0.5 for i in range(100)]

    found = range_of(draws, "mg")

    assert (found.low, found.likely, found.high) == pytest.approx((5.0, 50.0, 95.0))
    assert found.unit == "mg"


def test_one_draw_is_its_own_range() -> None:
    """A figure known exactly has no width."""
    assert range_of([7.0, 7.0], "g") == Range(7.0, 7.0, 7.0, "g")


def test_a_missing_share_means_at_least() -> None:
    """With a name missing the figure can only be higher; with none it is what it is."""
    assert range_of([1.0], "g", missing=("hot-sauce",)).at_least
    assert not range_of([1.0], "g").at_least


@pytest.mark.parametrize(
    ("low", "high", "includes"),
    [(-1.0, 2.0, True), (0.0, 2.0, True), (-2.0, 0.0, True), (0.1, 2.0, False), (-2, -0.1, False)],
)
def test_a_range_that_reaches_zero_includes_it(low: float, high: float, includes: bool) -> None:
    """Touching zero counts as including it."""
    assert Range(low, (low + high) / 2, high, "mg").includes_zero() is includes


def test_rough_is_kept() -> None:
    """A figure on a rougher rule is marked so."""
    assert range_of([1.0], "g", rough=True).rough
    assert not range_of([1.0], "g").rough
