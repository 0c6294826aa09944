"""When a temperature was first read, and how long every reading was at or above it."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tarebook.probe import Gap, Log, Reading, reached


def log(*readings: tuple[float, float], gaps: tuple[Gap, ...] = ()) -> Log:
    """Return a log of minutes and degrees Fahrenheit."""
    return Log("meat", "meat", tuple(Reading(60 * m, f) for m, f in readings), gaps, None, ())


def test_first_is_the_first_reading_at_the_figure() -> None:
    """At it counts; just below does not."""
    found = reached(log((0, 140), (1, 159.9), (2, 160), (3, 161)), 160)

    assert 120.0 == found.first


def test_held_counts_only_between_readings_that_are_both_there() -> None:
    """Half a minute before the first is not guessed at."""
    found = reached(log((0, 150), (1, 160), (2, 162), (3, 150), (4, 161), (6, 161)), 160)

    assert (120.0, 180.0) == (found.longest_s, found.total_s)


def test_never_reached() -> None:
    """Then there is no first, and nothing is held."""
    assert (160, None, 0.0, 0.0) == reached(log((0, 150), (1, 155)), 160)


def test_a_gap_is_not_held() -> None:
    """Nobody read anything, so nothing is told."""
    found = reached(log((0, 160), (1, 160), (60, 160), (61, 160), gaps=(Gap(60, 3600),)), 160)

    assert (60.0, 120.0) == (found.longest_s, found.total_s)


def test_a_gap_that_ends_at_a_spike_is_not_held_either() -> None:
    """The jump is passed over, the gap before it is not bridged."""
    readings = (Reading(0, 160), Reading(3600, 250, spike=True), Reading(3660, 160))
    found = reached(Log("m", "meat", readings, (Gap(0, 3600),), None, ()), 160)

    assert 0.0 == found.total_s


def test_a_spike_neither_reaches_nor_breaks() -> None:
    """A jump up is not the first reading; a drop down does not end the holding."""
    up = (Reading(0, 150), Reading(60, 200, spike=True), Reading(120, 150))
    down = (Reading(0, 160), Reading(60, 30, spike=True), Reading(120, 160))

    assert reached(Log("m", "meat", up, (), None, ()), 160).first is None
    assert 120.0 == reached(Log("m", "meat", down, (), None, ()), 160).longest_s


@given(st.lists(st.floats(100, 200), min_size=2, max_size=60), st.floats(110, 190))
def test_never_more_than_the_whole_log(temperatures: list[float], threshold: float) -> None:
    """Longest within all, all within the log; a higher figure is never held longer."""
    found = log(*enumerate(temperatures))
    one, higher = reached(found, threshold), reached(found, threshold + 5)

    assert one.longest_s <= one.total_s <= found.readings[-1].seconds
    assert higher.total_s <= one.total_s
    assert (one.first is None) == (max(temperatures) < threshold)


@pytest.mark.parametrize("threshold", [145.0, 160.0, 165.0])
def test_reached_at_once_and_for_all_of_it(threshold: float) -> None:
    """An oven's air at 275 °F for an hour."""
    found = reached(log(*((m, 275.0) for m in range(61))), threshold)

    assert (0.0, 3600.0, 3600.0) == found[1:]
