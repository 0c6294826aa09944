"""The nights in which nobody wants to be needed, by the clock of the kitchen."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import datetime, timedelta, tzinfo

from tarebook.clocks.zones import clock, minute_of
from tarebook.plan.tasks import Span

Window = tuple[tuple[int, int], tuple[int, int]]
"""Clock times between which nobody wants to be needed."""
USUAL: Window = ((22, 0), (6, 0))
"""The night of a cook who named none: nobody gets up in it to turn a soak."""


def window_words(window: Window, between: str = " and ") -> str:
    """Return a night in words.

    Example:
        >>> window_words(USUAL), window_words(USUAL, "-")
        ('22:00 and 06:00', '22:00-06:00')
    """
    return between.join(f"{hour:02d}:{minute:02d}" for hour, minute in window)


def nights(
    begin: tuple[int, int], end: tuple[int, int], zone: tzinfo, *, since: int, until: int
) -> Iterator[Span]:
    """Yield every night between two minutes.

    Args:
        begin, end: hour and minute of the clock at which a night begins and ends; a night that
            ends at an earlier clock time than it begins ends on the next day.
        zone: of the clock.
        since, until: from and to which minute.
    """
    day = clock(since, zone).date() - timedelta(days=1)
    while True:
        over = timedelta(days=1 if end <= begin else 0)
        first = datetime(day.year, day.month, day.day, *begin, tzinfo=zone)
        last_day = day + over
        last = datetime(last_day.year, last_day.month, last_day.day, *end, tzinfo=zone)
        span = Span(minute_of(first), minute_of(last))
        if span.start >= until:
            return
        if span.end > since:
            yield span
        day += timedelta(days=1)
