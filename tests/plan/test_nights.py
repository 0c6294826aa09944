"""Nights follow the clock, across its changes."""

from __future__ import annotations

from datetime import datetime
from zoneinfo import ZoneInfo

from tarebook.clocks.zones import clock, minute_of
from tarebook.plan.nights import nights

CHICAGO = ZoneInfo("America/Chicago")


def test_nights_follow_the_clock() -> None:
    """A night from 22:00 to 06:00 lasts 9 hours as clocks go back, and still ends at 06:00."""
    since = minute_of(datetime(2026, 10, 30, 12, tzinfo=CHICAGO))
    found = list(nights((22, 0), (6, 0), CHICAGO, since=since, until=since + 3 * 1440))

    assert [480, 540, 480] == [night.end - night.start for night in found]
    assert {"22:00", "06:00"} == {
        f"{clock(minute, CHICAGO):%H:%M}" for night in found for minute in night
    }


def test_a_night_within_one_day() -> None:
    """A rest from 01:00 to 05:00 begins and ends on one day."""
    since = minute_of(datetime(2026, 6, 1, 12, tzinfo=CHICAGO))
    (one,) = nights((1, 0), (5, 0), CHICAGO, since=since, until=since + 1440)

    assert 4 * 60 == one.end - one.start
