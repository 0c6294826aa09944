"""The table of uptake fractions: what it holds, and how near the series its readings are."""

from __future__ import annotations

import sys
from array import array
from math import inf

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from tarebook.uptake import table
from tarebook.uptake.arrays import arrays
from tarebook.uptake.crank import roots, uptake_fraction
from tarebook.uptake.make_table import made
from tarebook.uptake.table import BATHS, FILE, MANY, TIMES, WHOLE, uptake_fractions

WITHIN = 1e-4

# Baths from a hundredth of the water that the meat holds to ten thousand times it; the last two lie
# where a search found the readings farthest off.
RATIOS = [0.01, *np.geomspace(0.01, 1e4, 83), 100.0, 0.0397, 17.1]
TIMES_OF_SOAK = np.unique([*np.geomspace(1e-3, 50, 1200), *np.linspace(1e-3, 2, 400), 50.0])


def series(taus: np.ndarray, alpha: float) -> np.ndarray:
    """Return the fraction by 400 terms of the series, from roots alone: nothing of the table."""
    q = np.array(roots(alpha, count=400))
    weights = 2 * alpha * (1 + alpha) / (1 + alpha + (alpha * q) ** 2)
    return 1 - np.exp(-np.outer(taus, q * q)) @ weights


def read(taus: list[float], alphas: list[float]) -> list[float]:
    """Return fractions out of the table, which only many draws at once are read from."""
    times = MANY // len(taus) + 1
    return uptake_fractions(taus * times, alphas * times)[: len(taus)]


def test_a_few_are_exact() -> None:
    """Fewer than the table pays for are worked out one by one, to the last digit."""
    taus, alphas = [0.05, 0.3, 1.1], [0.2, 0.9, 17.0]
    exact = [uptake_fraction(*one) for one in zip(taus, alphas, strict=True)]

    assert exact == uptake_fractions(taus, alphas)
    assert exact != read(taus, alphas)


def test_the_file_is_what_is_made() -> None:
    """The table beside the module is, byte for byte, what its making gives."""
    assert made() == FILE.read_bytes()
    assert 2 * (BATHS + 1) * (TIMES + 1) == len(made())


@pytest.mark.parametrize("alpha", RATIOS)
def test_every_reading_is_within_a_ten_thousandth_of_the_series(alpha: float) -> None:
    """1,600 times from 0.001 to 50 in each bath, first and last included."""
    found = uptake_fractions(list(TIMES_OF_SOAK), [alpha] * len(TIMES_OF_SOAK))

    assert float(np.abs(np.array(found) - series(TIMES_OF_SOAK, alpha)).max()) <= WITHIN


@given(
    st.floats(0, 1e-2) | st.floats(0, 60),
    st.floats(1e-9, 1e-2) | st.floats(1e-2, 1e2) | st.floats(1e2, 1e12),
)
def test_no_bath_and_no_time_is_left_out(tau: float, alpha: float) -> None:
    """The first instant, a drop on a roast, a strip in a lake: as near as all others."""
    assert read([tau], [alpha]) == pytest.approx([uptake_fraction(tau, alpha)], abs=WITHIN)


@pytest.mark.parametrize(
    ("tau", "alpha", "fraction"),
    [(0.0, 1.0, 0.0), (0.0, inf, 0.0), (0.0, 0.0, 1.0), (1.0, 0.0, 1.0), (inf, 2.0, 1.0)],
)
def test_at_the_ends_it_is_exact(tau: float, alpha: float, fraction: float) -> None:
    """Nothing at no time, all after all time, and all at once where there is no bath."""
    assert [fraction] == read([tau], [alpha])


@given(st.lists(st.tuples(st.floats(0, 50), st.floats(0, 1e6)), min_size=1, max_size=40))
def test_arrays_read_what_lists_read(draws: list[tuple[float, float]]) -> None:
    """One table, two kinds of number, one answer."""
    taus, alphas = [tau for tau, _ in draws], [max(alpha, 1e-9) for _, alpha in draws]
    found = arrays().uptake(np.array(taus), np.array(alphas))

    assert read(taus, alphas) == pytest.approx(list(found), abs=1e-12)


@given(st.floats(1e-6, 20), st.floats(1e-3, 1e3), st.floats(1.0, 10))
def test_what_is_read_rises_with_time(tau: float, alpha: float, later: float) -> None:
    """A longer soak brings a strip no less far, read from the table too."""
    earlier, after = read([tau, tau * later], [alpha, alpha])

    assert 0 <= earlier <= after + 1e-12 <= 1 + 1e-9


@given(st.floats(1.0, 5.0), st.floats(1e-3, 1e3), st.floats(0.5, 15), st.floats(0.2, 48))
def test_what_is_read_falls_with_thickness(
    thicker: float, alpha: float, thickness_mm: float, hours: float
) -> None:
    """The same hours bring a thicker strip no farther."""
    taus = [
        1.9e-10 * hours * 3600 / (one / 2000) ** 2 for one in (thickness_mm, thickness_mm * thicker)
    ]
    thin, thick = read(taus, [alpha, alpha])

    assert thick <= thin + 1e-12


def test_the_table_pays_from_its_number_on() -> None:
    """One draw fewer than that is worked out exactly, that many are read."""
    exact = uptake_fraction(0.3, 0.9)

    assert [exact] * (MANY - 1) == uptake_fractions([0.3] * (MANY - 1), [0.9] * (MANY - 1))
    assert exact not in uptake_fractions([0.3] * MANY, [0.9] * MANY)


@pytest.mark.parametrize("order", ["little", "big"])
def test_the_file_reads_alike_whichever_byte_comes_first(
    order: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    """On a machine of the other kind, which is played here, the file holds the same fractions."""
    monkeypatch.setattr(sys, "byteorder", order)
    found = table._whole_table.__wrapped__()
    monkeypatch.undo()
    if sys.byteorder != order:
        found.byteswap()  # what such a machine would hold, as this one reads it

    held = FILE.read_bytes()
    expected = [low + 256 * high for low, high in zip(held[::2], held[1::2], strict=True)]
    assert array("H", expected) == found


@pytest.mark.parametrize("many", [2, MANY])
def test_times_and_baths_of_two_lengths_are_refused(many: int) -> None:
    """A time without its bath is never left out in silence, of few draws or of many."""
    with pytest.raises(ValueError, match="shorter"):
        uptake_fractions([0.3] * (many + 1), [0.9] * many)


@pytest.mark.parametrize("bath", [0, 1, 64, BATHS, BATHS + 1])
def test_a_row_is_its_bath_from_no_time_to_all_time(bath: int) -> None:
    """It begins with nothing, ends with all, and has one more behind for times beyond."""
    row = table._row(bath)

    assert TIMES + 2 == len(row)
    assert (0, WHOLE, WHOLE) == (row[0], row[TIMES], row[TIMES + 1])


@pytest.mark.parametrize("odd", [0.0, inf])
def test_one_bath_that_the_table_has_not_makes_all_of_them_exact(odd: float) -> None:
    """A bath without water, or without an end, among many others is worked out by the series."""
    alphas = [odd, *np.geomspace(0.1, 9.0, MANY)]
    taus = [0.3] * len(alphas)

    assert [uptake_fraction(0.3, one) for one in alphas] == uptake_fractions(taus, alphas)
