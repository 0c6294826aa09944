"""When something happened."""

from __future__ import annotations

from datetime import UTC, datetime
from zoneinfo import ZoneInfo

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tarebook.findings import AskedWrongly
from tarebook.records.moment import Moment, hours_between, moment_of, read_moment

LAKE = ZoneInfo("America/Chicago")


def test_the_clock_is_kept_beside_the_instant() -> None:
    """What the kitchen's clock showed is told again, wherever the book is opened."""
    found = moment_of(datetime(2026, 11, 25, 18, 0, 30, tzinfo=LAKE))

    assert "2026-11-25T18:00:30-06:00" == str(found)
    assert -360 == found.offset_min


def test_hours_across_a_change_of_the_clocks() -> None:
    """A night in which clocks go back is an hour longer than it looks; forward, shorter."""
    evening, morning = (moment_of(datetime(2026, 10, 31, 18, tzinfo=LAKE)),
                        moment_of(datetime(2026, 11, 1, 6, tzinfo=LAKE)))  # fmt: skip
    assert 13.0 == hours_between(evening, morning)

    evening, morning = (moment_of(datetime(2026, 3, 7, 18, tzinfo=LAKE)),
                        moment_of(datetime(2026, 3, 8, 6, tzinfo=LAKE)))  # fmt: skip
    assert 11.0 == hours_between(evening, morning)


def test_the_hour_that_comes_twice() -> None:
    """Both hours of that night are kept apart."""
    one, two = (moment_of(datetime(2026, 11, 1, 1, 30, tzinfo=LAKE, fold=fold)) for fold in (0, 1))

    assert 1.0 == hours_between(one, two)
    assert one.local.hour == two.local.hour


@given(st.integers(-62_000_000_000, 253_000_000_000), st.integers(-14 * 60, 14 * 60))
def test_there_and_back(second: int, offset: int) -> None:
    """Every moment is read as it was written."""
    found = Moment(second, offset)

    assert found == read_moment(str(found))


@pytest.mark.parametrize(
    "text", ["", "yesterday", "2026-11-25", "2026-11-25T18:00:00", "2026-13-01T00:00:00Z", "x" * 99]
)
def test_no_moment(text: str) -> None:
    """A moment without its zone, and what is none at all, is refused."""
    with pytest.raises(AskedWrongly, match="no moment with its zone"):
        read_moment(text)


def test_the_edge_of_the_calendar() -> None:
    """A moment whose clock would show no year is refused, not kept broken."""
    with pytest.raises(AskedWrongly):
        moment_of(datetime(9999, 12, 31, 23, 59, tzinfo=UTC).replace(tzinfo=ZoneInfo("Etc/GMT+12")))
