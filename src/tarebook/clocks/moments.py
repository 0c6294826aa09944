"""A moment as a cook says it: ``Saturday 18:00``, ``tomorrow 7am``, ``2026-11-28 18:00``."""

from __future__ import annotations

from datetime import date, datetime, timedelta

from tarebook.clocks.zones import comes_twice, exists
from tarebook.findings import AskedWrongly

_DAYS = ("monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday")
_MONTHS = (
    "january", "february", "march", "april", "may", "june", "july", "august", "september",
    "october", "november", "december",
)  # fmt: skip
_NAMED_HOURS = {"noon": (12, 0), "midnight": (0, 0)}
_SHORTEST = 3
_LONGEST = 60
_AHEAD = timedelta(minutes=15)  # the clock on the kitchen wall may be ahead of the machine's
_HINTS = {
    False: "write Saturday 18:00, tomorrow 7am, or 2026-11-28 18:00",
    True: "write 18:00, yesterday 7am, Saturday 18:00, or 2026-11-25 18:00",
}  # whether what happened is told


def read_moment(text: str, now: datetime, *, past: bool = False) -> tuple[datetime, str]:
    """Return a moment, and a note where the clock shows it twice.

    Args:
        text: a day and a time; a day of the week means the next time that it comes, today
            included; a time alone, the next time that the clock shows it.
        now: what the clock shows, with its zone.
        past: whether something that happened is told: then the last time is meant, not the next,
            and ``yesterday`` is a day as well.

    Returns:
        The moment in the zone of ``now``; and a sentence, or nothing.

    Raises:
        AskedWrongly: no time is said, or the day or the time does not exist.

    Example:
        >>> now = datetime(2026, 11, 25, 9, 0).astimezone()
        >>> f"{read_moment('Saturday 6pm', now)[0]:%Y-%m-%d %H:%M}"
        '2026-11-28 18:00'
    """
    words = _iso_apart(text).replace(",", " ").lower().split()
    if len(text) > _LONGEST or not words:
        raise AskedWrongly(f'"{text[:40]}" is no day and time; {_HINTS[past]}')
    hour, minute, rest = _time(words, text, past)
    days = _day(rest, text, now, past)
    found = _at(days[0], hour, minute, now)
    if len(days) > 1 and (found > now + _AHEAD if past else found < now):
        found = _at(days[1], hour, minute, now)
    if not exists(found):
        raise AskedWrongly(
            f"{found:%H:%M} on {found:%d %B %Y} is no time: the clocks go forward then"
        )
    if comes_twice(found):
        return (
            found,
            f"{found:%H:%M} comes twice that night, as the clocks go back: the first is meant",
        )
    return found, ""


def read_clock_span(text: str) -> tuple[tuple[int, int], tuple[int, int]]:
    """Return two clock times: ``22:00-06:00``, ``10pm-6am``.

    Raises:
        AskedWrongly: they are not two times, or twice the same.

    Example:
        >>> read_clock_span("10pm-6am")
        ((22, 0), (6, 0))
    """
    first, dash, last = text.replace("–", "-").replace(" to ", "-").partition("-")
    if not dash:
        raise AskedWrongly(f'"{text[:40]}" is not from one time to another, as in 22:00-06:00')
    ends = (_whole_time(first, text), _whole_time(last, text))
    if ends[0] == ends[1]:
        raise AskedWrongly(f'"{text[:40]}" begins and ends at the same time')
    return ends


def _iso_apart(text: str) -> str:
    """Return a date and a time that a T joins with a blank between them."""
    day, joined, hour = text.strip().partition("T")
    return f"{day} {hour}" if joined and day[-2:].isdigit() and hour[:2].isdigit() else text


def _whole_time(part: str, text: str) -> tuple[int, int]:
    hour, minute, rest = _time(part.lower().split(), text)
    if rest:
        raise AskedWrongly(f'"{text[:40]}" is not from one time to another, as in 22:00-06:00')
    return hour, minute


def _at(day: date, hour: int, minute: int, now: datetime) -> datetime:
    return datetime(day.year, day.month, day.day, hour, minute, tzinfo=now.tzinfo)


def _time(words: list[str], text: str, past: bool = False) -> tuple[int, int, list[str]]:
    """Return hour, minute and the other words."""
    joined = " ".join(words).replace(" am", "am").replace(" pm", "pm").split()
    joined = [word for word in joined if word != "at"]
    for place, word in enumerate(joined):
        found = _NAMED_HOURS.get(word) or _clock_time(word)
        if found is not None:
            return *found, joined[:place] + joined[place + 1 :]
    raise AskedWrongly(f'"{text[:40]}" does not say the time of day; {_HINTS[past]}')


def _clock_time(word: str) -> tuple[int, int] | None:
    half = word[-2:] if word[-2:] in ("am", "pm") else ""
    body = word.removesuffix(half) if half else word
    hours, colon, minutes = body.partition(":")
    if not word.isascii() or not (half or colon) or not hours.isdigit() or len(hours) > 2:
        return None
    if colon and not (minutes.isdigit() and len(minutes) == 2):
        return None
    hour, minute = int(hours), int(minutes or 0)
    if half:
        if not 1 <= hour <= 12:
            return None
        hour = hour % 12 + (12 if half == "pm" else 0)
    return (hour, minute) if hour < 24 and minute < 60 else None


def _day(words: list[str], text: str, now: datetime, past: bool) -> tuple[date, ...]:
    """Return the day that is meant, and the one to take instead where that is on the wrong side."""
    today, way = now.date(), -1 if past else 1
    if not words:
        return today, today + timedelta(days=way)
    if words == ["today"]:
        return (today,)
    if words == ["yesterday" if past else "tomorrow"]:
        return (today + timedelta(days=way),)
    if words == ["tomorrow" if past else "yesterday"]:
        raise AskedWrongly(f'"{text[:40]}" is {"still to come" if past else "past"}')
    if len(words) == 1:
        weekday = _named(words[0], _DAYS)
        if weekday is not None:
            day = today + timedelta(days=way * (way * (weekday - today.weekday()) % 7))
            return day, day + timedelta(days=7 * way)
    found = _date(words, today, past)
    if found is None:
        raise AskedWrongly(f'"{text[:40]}" is no day I can read; {_HINTS[past]}')
    return (found,)


def _date(words: list[str], today: date, past: bool) -> date | None:
    words = [word for word in words if _named(word, _DAYS) is None]
    if len(words) == 1:
        try:
            return date.fromisoformat(words[0])
        except ValueError:
            return None
    month = next(
        (_named(word, _MONTHS) for word in words if _named(word, _MONTHS) is not None), None
    )
    numbers = [int(word) for word in words if word.isdecimal() and len(word) <= 4]
    if month is None or len(numbers) + 1 != len(words) or not 1 <= len(numbers) <= 2:
        return None
    day = next((one for one in numbers if one <= 31), 0)
    year = next((one for one in numbers if one > 31), None)
    try:
        found = date(year or today.year, month + 1, day)
        if year is not None or not (found > today if past else found < today):
            return found
        return found.replace(year=today.year + (-1 if past else 1))
    except ValueError:
        return None


def _named(word: str, names: tuple[str, ...]) -> int | None:
    """Return the place of a name that a word stands for, whole or its first letters."""
    word = word.rstrip(".")
    if len(word) < _SHORTEST:
        return None
    return next((place for place, name in enumerate(names) if name.startswith(word)), None)
