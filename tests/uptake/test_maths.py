"""One formula, three kinds of number: what holds of one holds of a column and of an array."""

from __future__ import annotations

from math import inf

import numpy as np
import pytest

from tarebook.uptake import COLUMNS, PLAIN, Column, Maths
from tarebook.uptake.arrays import arrays
from tarebook.uptake.maths import each, weighed_sum


def column(*values: float) -> Column:
    """Return a column of draws."""
    return Column(list(values))


def test_columns_reckon_entry_by_entry() -> None:
    """The four operations by hand, of two columns and of a column and a number on either side."""
    one, other = column(8.0, 6.0), column(2.0, 3.0)

    assert [10.0, 9.0] == list(one + other)
    assert [6.0, 3.0] == list(one - other)
    assert [16.0, 18.0] == list(one * other)
    assert [4.0, 2.0] == list(one / other)
    assert [9.0, 7.0] == list(one + 1) == list(1 + one)
    assert [7.0, 5.0] == list(one - 1)
    assert [-7.0, -5.0] == list(1 - one)
    assert [16.0, 12.0] == list(one * 2) == list(2 * one)
    assert [4.0, 3.0] == list(one / 2)
    assert [3.0, 4.0] == list(24 / one)
    assert 2 == len(one)


def test_a_function_goes_entry_by_entry() -> None:
    """Of columns, of arrays and of both with plain numbers, wherever the plain one stands."""
    assert 9.0 == each(pow, 3.0, 2.0)
    assert [9.0, 16.0] == list(each(pow, column(3.0, 4.0), 2.0))
    assert [8.0, 16.0] == list(each(pow, 2.0, column(3.0, 4.0)))
    assert [9.0, 64.0] == list(each(pow, column(3.0, 4.0), column(2.0, 3.0)))
    assert [9.0, 16.0] == list(each(pow, np.array([3.0, 4.0]), 2.0))
    assert [8.0, 16.0] == list(each(pow, 2.0, np.array([3.0, 4.0])))


def test_columns_of_two_lengths_are_refused() -> None:
    """Draws that do not belong together are never cut to the shorter."""
    short, long = column(1.0), column(1.0, 2.0)

    with pytest.raises(ValueError, match="shorter"):
        each(pow, long, short)
    with pytest.raises(ValueError, match="shorter"):
        weighed_sum([(1.0, long), (1.0, short)])


def test_a_weighed_sum_by_hand() -> None:
    """Numbers, columns, and both in either order; a weight of nothing brings nothing."""
    assert 0.0 == weighed_sum([])
    assert 34.0 == weighed_sum([(2.0, 5.0), (3.0, 8.0)])
    assert [2.0, 3.0] == list(weighed_sum([(0.5, column(4.0, 6.0))]))
    assert [32.0, 53.0] == list(weighed_sum([(0.5, column(4.0, 6.0)), (10.0, column(3.0, 5.0))]))
    assert [12.0, 13.0] == list(weighed_sum([(0.5, column(4.0, 6.0)), (2.0, 5.0)]))
    assert [12.0, 13.0] == list(weighed_sum([(2.0, 5.0), (0.5, column(4.0, 6.0))]))
    assert 10.0 == weighed_sum([(0.0, column(4.0, 6.0)), (2.0, 5.0)])


def choices(maths: Maths) -> list[float]:
    """Return what is chosen below an edge of two, at it and above it: 7 below, else 9."""
    if maths is PLAIN:
        return [maths.choose(at, 2.0, 7.0, 9.0) for at in (1.0, 2.0, 3.0)]
    at = column(1.0, 2.0, 3.0) if maths is COLUMNS else np.array([1.0, 2.0, 3.0])
    return list(maths.choose(at, 2.0, 7.0, 9.0))


@pytest.mark.parametrize("maths", [PLAIN, COLUMNS, arrays()], ids=["plain", "columns", "arrays"])
def test_what_stands_at_the_edge_is_not_below_it(maths: Maths) -> None:
    """Only what is less than the edge is below it, in every kind of number."""
    assert [7.0, 9.0, 9.0] == choices(maths)


def test_columns_choose_by_a_column_of_edges() -> None:
    """Every draw may have an edge of its own, and its own values either side."""
    found = COLUMNS.choose(2.0, column(1.0, 3.0), column(10.0, 20.0), column(30.0, 40.0))

    assert [30.0, 20.0] == list(found)


@pytest.mark.parametrize("maths", [COLUMNS, arrays()], ids=["columns", "arrays"])
def test_smaller_and_larger_by_hand(maths: Maths) -> None:
    """Of a column and a number, of two columns, and of a number and a column."""
    make = column if maths is COLUMNS else lambda *values: np.array(values)
    one, other = make(1.0, 5.0), make(4.0, 2.0)

    assert [1.0, 3.0] == list(maths.smaller(one, 3.0)) == list(maths.smaller(3.0, one))
    assert [3.0, 5.0] == list(maths.larger(one, 3.0)) == list(maths.larger(3.0, one))
    assert [1.0, 2.0] == list(maths.smaller(one, other))
    assert [4.0, 5.0] == list(maths.larger(one, other))


# Crank's fractions at tau 0.2 that a series and a finite-volume solution agreed on (alpha 1 and 4),
# and at tau 0.5 (alpha 1).
@pytest.mark.parametrize("maths", [COLUMNS, arrays()], ids=["columns", "arrays"])
def test_one_time_for_many_baths_and_one_bath_for_many_times(maths: Maths) -> None:
    """A plain number beside a column or an array stands for all of its draws."""
    make = column if maths is COLUMNS else lambda *values: np.array(values)
    baths = maths.uptake(0.2, make(1.0, 4.0))
    times = maths.uptake(make(0.2, 0.5), 1.0)

    assert list(baths) == pytest.approx([0.71162848, 0.57255208], abs=1e-4)
    assert list(times) == pytest.approx([0.71162848, 0.91646666], abs=1e-4)
    assert maths.uptake(0.2, 1.0) == pytest.approx(0.71162848, abs=2e-8)


def test_arrays_know_the_ends() -> None:
    """No time, all time, a bath without water and one without end, in arrays of draws."""
    found = arrays().uptake(
        np.array([0.0, inf, 1e300, 0.2, 0.2, inf]), np.array([1.0, 2.0, 4.0, 0.0, 1e300, 1e300])
    )

    assert list(found) == pytest.approx([0.0, 1.0, 1.0, 1.0, 0.50408782, 1.0], abs=1e-4)
