"""When a soak is turned."""

from __future__ import annotations

from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tarebook.plan.tasks import Span
from tarebook.plan.turns import turn_times, wanted_turns

NIGHT = Span(22 * 60, 30 * 60)


@pytest.mark.parametrize(
    ("begin", "hours", "times"),
    [
        (8, 12, (12, 16)),
        (8, 2, (9,)),
        (16, 12, (20, 21 + 55 / 60)),
        (20, 12, (21 + 55 / 60, 30)),
        (22, 12, (30,)),
        (23, 6, ()),
        (12, 24, (20, 30)),
        (19, 12, (21 + 55 / 60,)),
    ],
)
def test_turnings_keep_out_of_the_night(begin: int, hours: int, times: tuple[float, ...]) -> None:
    """At thirds by day; moved to the edge of the night, and left out where that is too near."""
    soak = Span(begin * 60, (begin + hours) * 60)

    assert tuple(round(time * 60) for time in times) == turn_times(soak, 5, [NIGHT])


@given(st.integers(0, 24 * 60), st.integers(60, 24 * 60), st.integers(1, 12))
def test_no_turning_by_night_nor_twice(begin: int, length: int, night_h: int) -> None:
    """Whatever the soak and the night: all in the soak, none by night, none beside another."""
    soak = Span(begin, begin + length)
    nights = [Span(at, at + night_h * 60) for at in (22 * 60 - 1440, 22 * 60, 22 * 60 + 1440)]
    found = turn_times(soak, 5, nights)

    assert len(found) <= len(wanted_turns(soak))
    assert all(soak.start < start and start + 5 <= soak.end for start in found)
    assert not any(one.meets(Span(start, start + 5)) for start in found for one in nights)
    assert all(after - before >= 5 for before, after in pairwise(found))


def test_without_a_night_the_wanted_times_stand() -> None:
    """Nothing is moved where nothing is in the way."""
    soak = Span(0, 12 * 60)

    assert wanted_turns(soak) == turn_times(soak, 5, []) == (4 * 60, 8 * 60)
