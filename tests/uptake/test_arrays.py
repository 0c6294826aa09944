"""Arrays that are to give what columns give do so to the last bit."""

from __future__ import annotations

from random import Random

import numpy as np
import pytest

from tarebook.uptake.arrays import arrays_like_columns
from tarebook.uptake.maths import COLUMNS, Column
from tarebook.uptake.table import MANY

NUMBERS = Random(7)
TAUS = [0.0, 1e-12, 1e9, *(10 ** NUMBERS.uniform(-6, 3) for _ in range(500))]
BATHS = {
    "of all sizes": [10 ** NUMBERS.uniform(-9, 9) for _ in TAUS],
    "hardly any and nearly all": [1e-300, 1e300, *(1.0 for _ in TAUS[2:])],
    "none": [0.0 for _ in TAUS],
    "without end": [float("inf") for _ in TAUS],
}


@pytest.mark.parametrize("bath", BATHS)
@pytest.mark.parametrize("many", [MANY - 1, len(TAUS)])
def test_uptake_is_the_same_to_the_last_bit(bath: str, many: int) -> None:
    """Short times and long ones, baths of no water and of water without end, few draws and many."""
    taus, alphas = TAUS[:many], BATHS[bath][:many]

    found = arrays_like_columns().uptake(np.array(taus), np.array(alphas))

    assert list(COLUMNS.uptake(Column(taus), Column(alphas))) == found.tolist()


def test_one_bath_for_all_draws_is_the_same_too() -> None:
    """A plain number beside draws stands for as many alike, as it does in columns."""
    found = arrays_like_columns().uptake(np.array(TAUS[:20]), 1.5)

    assert list(COLUMNS.uptake(Column(TAUS[:20]), 1.5)) == found.tolist()


@pytest.mark.parametrize("what", ["smaller", "larger"])
def test_smaller_and_larger_are_the_same(what: str) -> None:
    """Of two rows of draws, and of draws and a number."""
    some, others = TAUS, [one / 2 + 0.1 for one in reversed(TAUS)]
    for other, column in ((np.array(others), Column(others)), (0.5, 0.5)):
        found = getattr(arrays_like_columns(), what)(np.array(some), other)

        assert list(getattr(COLUMNS, what)(Column(some), column)) == found.tolist()
