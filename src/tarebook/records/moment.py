"""When something happened: an instant, and what the clock in the kitchen was ahead of UTC then.

Both are kept, so that a page shows what the cook's clock showed, and so that hours between two
entries are right across a change of the clocks.
"""

from __future__ import annotations

from datetime import UTC, datetime, timedelta, timezone

from tarebook.findings import AskedWrongly
from tarebook.tuples import NamedTuple

_EPOCH = datetime(1970, 1, 1, tzinfo=UTC)
_SECOND, _MINUTE = timedelta(seconds=1), timedelta(minutes=1)
_NO_TIME = "is no moment with its zone, as in 2026-11-25T18:00:00-06:00"


class Moment(NamedTuple):
    """An instant on a clock; the earlier of two comes first.

    Attributes:
        utc_s: seconds since 1970 began in UTC [s].
        offset_min: how far the clock was ahead of UTC [min].
    """

    utc_s: int
    offset_min: int

    @property
    def local(self) -> datetime:
        """What the clock showed, with its offset."""
        zone = timezone(self.offset_min * _MINUTE)
        return (_EPOCH + self.utc_s * _SECOND).astimezone(zone)

    def __str__(self) -> str:
        """Return the moment as it is exchanged: ``2026-11-25T18:00:00-06:00``."""
        return self.local.isoformat()


def moment_of(at: datetime) -> Moment:
    """Return a moment of a clock, to the second.

    Args:
        at: with its zone.

    Raises:
        AskedWrongly: it has no zone, or lies at the very edge of the calendar.

    Example:
        >>> print(moment_of(datetime(2026, 11, 26, tzinfo=UTC)))
        2026-11-26T00:00:00+00:00
    """
    ahead = at.utcoffset()
    if ahead is None:
        raise AskedWrongly(f'"{at.isoformat()}" {_NO_TIME}')
    try:
        found = Moment((at - _EPOCH) // _SECOND, ahead // _MINUTE)
        _ = found.local
    except OverflowError:
        raise AskedWrongly(f'"{at.isoformat()}" {_NO_TIME}') from None
    return found


def read_moment(text: str) -> Moment:
    """Return the moment that such a text stands for; the other way of ``str``.

    Raises:
        AskedWrongly: it is no moment, or its zone is not told.

    Example:
        >>> str(read_moment("2026-11-25T18:00:00-06:00"))
        '2026-11-25T18:00:00-06:00'
    """
    try:
        return moment_of(datetime.fromisoformat(text[:40].strip()))
    except ValueError:
        raise AskedWrongly(f'"{text[:40]}" {_NO_TIME}') from None


def hours_between(start: Moment, end: Moment) -> float:
    """Return how long it is from one moment to another [h]; below zero if the end is earlier."""
    return (end.utc_s - start.utc_s) / 3600
