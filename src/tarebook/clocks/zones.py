"""Clocks: what time it is where the kitchen stands, and how long it is from one time to another.

A plan counts in minutes of elapsed time; a clock only names them. Across a change of the clocks a
soak of 12 hours is therefore 12 hours, whatever the two clock times look like.
"""

from __future__ import annotations

import os
import time
from datetime import UTC, datetime, timedelta, tzinfo
from pathlib import Path
from zoneinfo import ZoneInfo, ZoneInfoNotFoundError

from tarebook.findings import AskedWrongly

_EPOCH = datetime(1970, 1, 1, tzinfo=UTC)
_MINUTE = timedelta(minutes=1)
_LOCALTIME = Path("/etc/localtime")
_MARK = "zoneinfo/"


class SystemZone(tzinfo):
    """The clock of this machine, where the name of its zone cannot be found out.

    It asks the system for the offset at each moment, so that changes of the clocks are right.
    """

    def utcoffset(self, at: datetime | None) -> timedelta:
        """Return how far the clock is ahead of UTC at a clock time."""
        if at is None:
            return timedelta(0)
        parts = at.timetuple()
        stamps = sorted(time.mktime((*parts[:8], summer)) for summer in (0, 1))
        shown = [one for one in stamps if time.localtime(one)[:5] == parts[:5]]
        # Twice where clocks go back, never where they go forward.
        stamp = shown[-1 if at.fold else 0] if shown else time.mktime((*parts[:8], -1))
        return timedelta(seconds=time.localtime(stamp).tm_gmtoff)

    def dst(self, at: datetime | None) -> timedelta:
        """Return nothing: only the whole offset is asked for here."""
        return timedelta(0)

    def tzname(self, at: datetime | None) -> str:
        """Return what the system calls its zone."""
        return "local time"

    def fromutc(self, at: datetime) -> datetime:
        """Return the clock time at a moment given in UTC."""
        stamp = (at.replace(tzinfo=UTC) - _EPOCH).total_seconds()
        local = time.localtime(stamp)
        clock = datetime(*local[:6], tzinfo=self)
        again = clock.replace(fold=1)
        return again if again.utcoffset() == timedelta(seconds=local.tm_gmtoff) else clock


def zone_of(name: str | None = None) -> tuple[tzinfo, str]:
    """Return a time zone and what to call it.

    Args:
        name: as in ``America/Chicago``; the zone of this machine where none is given.

    Raises:
        AskedWrongly: there is no such zone.
    """
    wanted = name if name is not None else _system_name()
    if not wanted:
        return SystemZone(), "the clock of this machine"
    try:
        return ZoneInfo(wanted), wanted
    except (ZoneInfoNotFoundError, ValueError, OSError):
        if name is None:
            return SystemZone(), "the clock of this machine"
        raise AskedWrongly(
            f'"{name[:40]}" is no time zone I know; say one as in America/Chicago'
        ) from None


def minute_of(at: datetime) -> int:
    """Return a moment as whole minutes since 1970, UTC [min]; seconds are dropped."""
    return (at.astimezone(UTC) - _EPOCH) // _MINUTE


def clock(minute: int, zone: tzinfo) -> datetime:
    """Return what the clock shows at a minute."""
    return (_EPOCH + minute * _MINUTE).astimezone(zone)


def exists(at: datetime) -> bool:
    """Whether a clock ever shows this time: an hour is left out where clocks go forward."""
    back = at.astimezone(UTC).astimezone(at.tzinfo)
    return back.replace(tzinfo=None) == at.replace(tzinfo=None)


def comes_twice(at: datetime) -> bool:
    """Whether a clock shows this time twice: an hour comes again where clocks go back."""
    one, two = at.replace(fold=0), at.replace(fold=1)
    return exists(at) and one.utcoffset() != two.utcoffset()


def _system_name() -> str:
    """Return the name of this machine's zone, or nothing where it does not say."""
    said = os.environ.get("TZ", "").removeprefix(":")
    if said:
        return said if "/" in said or said in ("UTC", "GMT") else ""
    try:
        target = str(_LOCALTIME.resolve(strict=True))
    except OSError:
        return ""
    return target.partition(_MARK)[2] if _MARK in target else ""
