"""The time of a row, as thermometers and phones write it."""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence
from datetime import datetime, timedelta

from tarebook.tuples import NamedTuple

_CLOCK = re.compile(r"(\d{1,3}):(\d{2})(?::(\d{2})(?:[.,](\d{1,6}))?)?\s*([ap])?\.?m?\.?$", re.I)
_DAY = re.compile(r"(\d{1,4})([-/.])(\d{1,2})\2(\d{1,4})$")
_NUMBER = re.compile(r"-?\d{1,15}(?:\.\d{1,9})?$")
_DAY_SECONDS = 86_400.0
_EPOCH_FROM, _EPOCH_MS_FROM = 1e9, 1e12
_UNIT_SECONDS = {"ms": 0.001, "s": 1.0, "min": 60.0, "h": 3600.0}


class TimeFault(ValueError):
    """The text is no time."""


class Moment(NamedTuple):
    """A time of a row.

    Attributes:
        seconds: from a start that all rows of a log share [s].
        clock: the same by the clock, where the log has one.
    """

    seconds: float
    clock: datetime | None


TimeReader = Callable[[str], Moment]


def time_reader(
    samples: Sequence[str], *, unit: str = "", day_first: bool | None = None
) -> tuple[TimeReader, tuple[str, ...]]:
    """Return how to read a column of times, and what was taken for granted.

    Args:
        samples: cells of the column, more than none.
        unit: what its heading says a bare number is: ``ms``, ``s``, ``min``, ``h``, or empty.
        day_first: whether 3/4 is 3 April; looked for in the samples where it is None.

    Returns:
        The reader, which raises TimeFault for a cell it cannot read, and notes for the cook.

    Raises:
        TimeFault: the samples are no times.
    """
    first = samples[0].strip()
    if _NUMBER.match(first):
        return _number_reader(samples, unit)
    if _CLOCK.match(first):
        return _clock_reader(), ()
    order, notes = _day_order(samples, day_first)
    _dated(first, order)
    return (lambda text: _dated(text, order)), notes


def _number_reader(samples: Sequence[str], unit: str) -> tuple[TimeReader, tuple[str, ...]]:
    def epoch(text: str) -> Moment:
        seconds = _number(text) / scale
        try:
            return Moment(seconds, datetime.fromtimestamp(seconds).astimezone())
        except (ValueError, OverflowError, OSError):  # a year that no calendar has
            raise TimeFault(text) from None

    def elapsed(text: str) -> Moment:
        return Moment(_number(text) * each, None)

    value = _number(samples[0])
    if value >= _EPOCH_FROM:
        scale = 1000.0 if value >= _EPOCH_MS_FROM else 1.0
        return epoch, ()
    each = _UNIT_SECONDS.get(unit, 1.0)
    note = () if unit else ("times without a unit were taken for seconds",)
    return elapsed, note


def _number(text: str) -> float:
    bare = text.strip()
    if not _NUMBER.match(bare):
        raise TimeFault(text)
    return float(bare)


def _clock_reader() -> TimeReader:
    """Return a reader of clock times without a day; going back by half a day is the next day."""
    last, days = -1.0, 0

    def read(text: str) -> Moment:
        nonlocal last, days
        seconds = _clock_seconds(text)
        if seconds < last - _DAY_SECONDS / 2:
            days += 1
        last = seconds
        return Moment(days * _DAY_SECONDS + seconds, None)

    return read


def _clock_seconds(text: str) -> float:
    found = _CLOCK.match(text.strip())
    if not found:
        raise TimeFault(text)
    hour, minute, second, part, half = found.groups()
    hours = int(hour)
    if half:
        if not 1 <= hours <= 12:
            raise TimeFault(text)
        hours = hours % 12 + (12 if half.lower() == "p" else 0)
    if int(minute) > 59 or int(second or 0) > 59:
        raise TimeFault(text)
    return hours * 3600.0 + int(minute) * 60 + int(second or 0) + float(f"0.{part or 0}")


def _day_order(samples: Sequence[str], day_first: bool | None) -> tuple[str, tuple[str, ...]]:
    """Return whether a day with slashes has its month first; years first tell themselves."""
    if day_first is not None:
        return ("day" if day_first else "month"), ()
    for text in samples:
        found = _DAY.match(text.strip().split("T")[0].split(" ")[0])
        if not found or len(found[1]) == 4:
            continue
        if int(found[1]) > 12:
            return "day", ()
        if int(found[3]) > 12:
            return "month", ()
        if found[2] == ".":
            return "day", ()
    slashed = any(_DAY.match(text.strip().split(" ")[0].split("T")[0]) for text in samples)
    plain = slashed and len(samples[0].strip().split(" ")[0].split("-")[0]) != 4
    note = ("days such as 3/4 were read with the month first; say --day-first if not",)
    return "month", note if plain else ()


def _dated(text: str, order: str) -> Moment:
    body = text.strip()
    moment = _iso(body)
    if moment is None:
        day, _, clock = body.replace(",", " ").replace("T", " ", 1).partition(" ")
        seconds = _clock_seconds(clock) if clock.strip() else 0.0
        moment = _day(day, order) + timedelta(seconds=seconds)
    # A local time is compared by its own clock; one with a zone, by the world's.
    start = datetime(2000, 1, 1, tzinfo=moment.tzinfo)
    if moment.tzinfo is not None:
        from datetime import UTC

        start = datetime(2000, 1, 1, tzinfo=UTC)
    return Moment((moment - start).total_seconds(), moment)


def _iso(text: str) -> datetime | None:
    try:
        return datetime.fromisoformat(text)
    except ValueError:
        return None


def _day(text: str, order: str) -> datetime:
    found = _DAY.match(text)
    if not found:
        raise TimeFault(text)
    first, second, third = int(found[1]), int(found[3]), int(found[4])
    if len(found[1]) == 4:
        year, month, day = first, second, third
    else:
        year = third if third >= 100 else 2000 + third
        month, day = (second, first) if order == "day" else (first, second)
    try:
        return datetime(year, month, day)
    except ValueError:
        raise TimeFault(text) from None
