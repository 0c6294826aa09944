"""Clock times in words."""

from __future__ import annotations

from datetime import tzinfo

from tarebook.clocks.zones import clock

_DAYS = ("Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday")
_MONTHS = (
    "January", "February", "March", "April", "May", "June", "July", "August", "September",
    "October", "November", "December",
)  # fmt: skip


def said_at(minute: int, zone: tzinfo) -> str:
    """Return a moment with its day: ``Saturday 28 November, 18:00``."""
    at = clock(minute, zone)
    return f"{_DAYS[at.weekday()]} {at.day} {_MONTHS[at.month - 1]}, {at:%H:%M}"


def said_day(minute: int, zone: tzinfo) -> str:
    """Return a day: ``Saturday 28 November 2026``."""
    at = clock(minute, zone)
    return f"{_DAYS[at.weekday()]} {at.day} {_MONTHS[at.month - 1]} {at.year}"


def said_time(minute: int, zone: tzinfo) -> str:
    """Return a clock time: ``18:00``."""
    return f"{clock(minute, zone):%H:%M}"
