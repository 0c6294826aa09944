"""Ranges drawn with characters."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tarebook.cards.bars import axis, bar, bars, scale_end
from tarebook.nutrition.range import Range


def found(low: float, likely: float, high: float, unit: str = "mg") -> Range:
    """Return a range."""
    return Range(low=low, likely=likely, high=high, unit=unit)


@pytest.mark.parametrize(
    ("highest", "end"),
    [(0, 1), (0.04, 0.05), (0.9, 1), (1, 2), (364, 500), (499, 1000), (980, 1000), (995, 1000)],
)
def test_the_axis_ends_at_a_round_number(highest: float, end: float) -> None:
    """The axis starts at zero and ends at a round number a little above the highest value."""
    assert end == pytest.approx(scale_end(highest))


def test_a_bar_shows_low_likely_and_high() -> None:
    """Ends at low and high, a dot at the likely value, zero at the left edge."""
    assert "     [--o----]" == bar(found(25, 40, 65), 100, 21, plain=True)
    assert "     ├──●────┤" == bar(found(25, 40, 65), 100, 21)


@pytest.mark.parametrize("same", [0.0, 50.0, 100.0])
def test_a_range_of_one_value_is_a_dot(same: float) -> None:
    """A range without width is one dot in its place."""
    drawn = bar(found(same, same, same), 100, 21, plain=True)

    assert "o" == drawn.strip()
    assert same / 100 * 20 == drawn.index("o")


@given(
    st.lists(st.floats(0, 1e6, allow_subnormal=False), min_size=3, max_size=3).map(sorted),
    st.integers(10, 90),
)
def test_a_bar_never_leaves_its_axis(ends: list[float], columns: int) -> None:
    """Whatever the values, a bar fits its columns and has its dot."""
    drawn = bar(found(*ends), scale_end(ends[2]), columns)

    assert len(drawn) <= columns
    assert 1 == drawn.count("●")


def test_overlapping_ranges_look_overlapping() -> None:
    """Two ranges on one axis overlap on the screen just where their values do."""
    first, second, foot = bars(
        [("A", found(20, 40, 60)), ("B", found(50, 70, 90))], 21, name_columns=2
    )

    assert second.index("├") < first.index("┤")
    assert foot.endswith("100 mg") and foot.strip().startswith("0")
    assert len(foot) == 2 + 1 + 21


def test_ranges_apart_look_apart() -> None:
    """Ranges that do not meet leave a gap."""
    first, second, _ = bars(
        [("A", found(10, 15, 20)), ("B", found(50, 70, 90))], 41, name_columns=2
    )

    assert first.index("┤") < second.index("├") - 1


def test_a_side_without_a_total_says_so() -> None:
    """No bar is drawn where there is no total; with none at all nothing is drawn."""
    drawn = bars([("A", found(1, 2, 3)), ("B", None)], 20, name_columns=2)

    assert "B  no total" == drawn[1]
    assert [] == bars([("A", None), ("B", None)], 20, name_columns=2)


def test_a_range_that_can_only_be_higher_is_marked() -> None:
    """A bar of what is known may not pass for all there is."""
    part = Range(low=1, likely=2, high=3, unit="mg", missing=("sauce",))
    first, second, _ = bars([("A", found(1, 2, 3)), ("B", part)], 20, name_columns=2)

    assert ("A ", "B≥") == (first[:2], second[:2])
    assert first[2:] == second[2:]


def test_the_axis_names_its_unit() -> None:
    """Zero at the left, the end and its unit at the right."""
    assert "0     500 mg" == axis(500, 12, "mg")
