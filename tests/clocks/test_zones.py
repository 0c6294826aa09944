"""Clocks, and the true time between two of their times."""

from __future__ import annotations

import time
from datetime import UTC, datetime, timedelta
from zoneinfo import ZoneInfo

import pytest

from tarebook.clocks.zones import (
    SystemZone,
    clock,
    comes_twice,
    exists,
    minute_of,
    zone_of,
)
from tarebook.findings import AskedWrongly

CHICAGO = ZoneInfo("America/Chicago")


def test_across_the_change_of_clocks() -> None:
    """From 22:00 to 10:00 are 13 hours in the night that clocks go back, 11 as they go forward."""
    lengths = [
        minute_of(datetime(2026, *after, 10, tzinfo=CHICAGO))
        - minute_of(datetime(2026, *before, 22, tzinfo=CHICAGO))
        for before, after in (((10, 31), (11, 1)), ((3, 7), (3, 8)), ((6, 1), (6, 2)))
    ]

    assert [13 * 60, 11 * 60, 12 * 60] == lengths


def test_minutes_and_back() -> None:
    """A minute is what it was read from, in summer and winter."""
    for month in range(1, 13):
        at = datetime(2026, month, 9, 17, 45, tzinfo=CHICAGO)
        assert at == clock(minute_of(at), CHICAGO)
        assert f"{at:%H:%M}" == f"{clock(minute_of(at), CHICAGO):%H:%M}"


def test_hours_that_are_not_and_that_are_twice() -> None:
    """The clock never shows 02:30 as it goes forward, and shows 01:30 twice as it goes back."""
    assert not exists(datetime(2026, 3, 8, 2, 30, tzinfo=CHICAGO))
    assert not comes_twice(datetime(2026, 3, 8, 2, 30, tzinfo=CHICAGO))
    assert comes_twice(datetime(2026, 11, 1, 1, 30, tzinfo=CHICAGO))
    assert exists(datetime(2026, 11, 1, 1, 30, tzinfo=CHICAGO))
    assert not comes_twice(datetime(2026, 6, 1, 1, 30, tzinfo=CHICAGO))


def test_zones_by_name() -> None:
    """A zone is asked for by name; one that does not exist is refused."""
    assert "Europe/Helsinki" == zone_of("Europe/Helsinki")[1]
    for name in ("Lake/Cabin", "", "../etc/passwd", "America", "x" * 500):
        with pytest.raises(AskedWrongly):
            zone_of(name or "?")


def test_the_zone_of_the_machine(monkeypatch: pytest.MonkeyPatch) -> None:
    """TZ names it where it is set; where it is a rule and no name, the system is asked."""
    monkeypatch.setenv("TZ", "Europe/Helsinki")
    assert "Europe/Helsinki" == zone_of()[1]
    monkeypatch.setenv("TZ", "CST6CDT,M3.2.0,M11.1.0")
    assert isinstance(zone_of()[0], SystemZone)


@pytest.mark.skipif(not hasattr(time, "tzset"), reason="the clock cannot be set")
def test_the_system_clock_agrees_with_the_tables(monkeypatch: pytest.MonkeyPatch) -> None:
    """Asked moment by moment, the system's clock is that of the zone it is set to."""
    monkeypatch.setenv("TZ", "America/Chicago")
    time.tzset()
    try:
        own = SystemZone()
        at = datetime(2026, 1, 1, tzinfo=UTC)
        while at < datetime(2027, 1, 1, tzinfo=UTC):
            ours, theirs = at.astimezone(own), at.astimezone(CHICAGO)
            assert theirs.replace(tzinfo=None) == ours.replace(tzinfo=None)
            assert theirs.utcoffset() == ours.utcoffset()
            assert minute_of(theirs) == minute_of(ours)
            at += timedelta(hours=1)
    finally:
        monkeypatch.undo()
        time.tzset()
