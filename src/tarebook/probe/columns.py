"""Which column of a log is the time, which are temperatures, and in what scale."""

from __future__ import annotations

import re
from collections.abc import Sequence

from tarebook.probe.times import TimeFault, time_reader
from tarebook.tuples import NamedTuple

_TIME_WORDS = ("timestamp", "datetime", "time", "date", "elapsed", "when", "clock", "minutes",
               "seconds", "hours")  # fmt: skip
_NOT_TEMPERATURE = ("humid", "rh", "%", "battery", "volt", "rssi", "alarm", "set point", "setpoint",
                    "target", "number", "index", "count", "fan", "signal", "weight")  # fmt: skip
_PLACES = {
    "meat": ("meat", "food", "internal", "inside", "core", "strip"),
    "air": ("air", "ambient", "oven", "chamber", "dryer", "smoker", "cabinet", "pit", "room"),
}
# Blanks are few, or never given back: a cell of blanks would take minutes.
_SCALE = re.compile(r"(?:°|deg(?:rees)?[ _.]*+|[(\[_ ,/])\s{0,9}+(f|c)(?:ahrenheit|elsius)?\b|"
                    r"\b(fahrenheit|celsius)\b|[a-z](F|C)$")  # fmt: skip
_READING = re.compile(
    r"\s*+([-+]?\d{1,6}(?:[.,]\d{1,6})?)\s*+(?:°|deg(?:rees)?\.?)?\s*+(f|c)?(?:ahrenheit|elsius)?"
    r"\s*+$",
    re.I,
)
_UNITS = {"millisecond": "ms", "second": "s", "sec": "s", "minute": "min", "min": "min",
          "hour": "h", "hr": "h"}  # fmt: skip


class TemperatureColumn(NamedTuple):
    """A column of temperatures.

    Attributes:
        at: its place in a row, from 0.
        name: its heading, or ``column 2``.
        scale: ``f``, ``c``, or empty where neither heading nor cells say.
        place: ``meat`` or ``air`` by its heading, or empty.
    """

    at: int
    name: str
    scale: str
    place: str


class Columns(NamedTuple):
    """The columns of a log.

    Attributes:
        time: places in a row that together make the time: one, or a day and a clock.
        unit: what a bare number of time is: ``ms``, ``s``, ``min``, ``h``, or empty.
        temperatures: every column of temperatures, from the left.
        has_heading: whether the first row names the columns.
    """

    time: tuple[int, ...]
    unit: str
    temperatures: tuple[TemperatureColumn, ...]
    has_heading: bool


def columns_of(rows: Sequence[Sequence[str]]) -> Columns:
    """Return which columns hold what.

    Args:
        rows: the first rows of a log, the heading among them if there is one.

    Returns:
        The columns; without temperatures or without a time where none could be told.
    """
    heading = _is_heading(rows[0])
    names = [cell.strip() for cell in rows[0]] if heading else []
    body = rows[1:] if heading else rows
    width = max((len(row) for row in rows), default=0)
    names += [f"column {i + 1}" for i in range(len(names), width)]
    time = _time_columns(names, body)
    temperatures = tuple(
        TemperatureColumn(i, names[i], _scale(names[i], body, i), _place(names[i]))
        for i in range(width)
        if i not in time and _is_temperature(names[i], body, i)
    )
    return Columns(time, _time_unit(names[time[0]]) if time else "", temperatures, heading)


def reading_of(cell: str) -> tuple[float, str] | None:
    """Return a cell's temperature and the scale it names (``f``, ``c`` or empty), or None."""
    found = _READING.match(cell)
    if not found:
        return None
    return float(found[1].replace(",", ".")), (found[2] or "").lower()


def _is_heading(row: Sequence[str]) -> bool:
    filled = [cell for cell in row if cell.strip()]
    return not any(reading_of(cell) or _reads_as_time(cell) for cell in filled)


def _reads_as_time(cell: str) -> bool:
    try:
        time_reader([cell])[0](cell)
    except (TimeFault, OverflowError, OSError):
        return False
    return True


def _time_columns(names: Sequence[str], body: Sequence[Sequence[str]]) -> tuple[int, ...]:
    """Return the columns of time: a date and a clock together, or the one that reads as time."""
    likely = [i for i in range(len(names)) if _readable(body, i)]
    named = [i for i in likely if any(word in names[i].lower() for word in _TIME_WORDS)]
    dates = [i for i in named or likely if _only_day(body, i)]
    clocks = [i for i in named or likely if i not in dates and _has_colon(body, i)]
    if dates and clocks and not _has_day(body, clocks[0]):
        return dates[0], clocks[0]
    for group in (named, [i for i in likely if _has_colon(body, i)], likely):
        if group:
            return (group[0],)
    return ()


def _cells(body: Sequence[Sequence[str]], index: int) -> list[str]:
    return [row[index] for row in body if index < len(row) and row[index].strip()]


def _readable(body: Sequence[Sequence[str]], index: int) -> bool:
    cells = _cells(body, index)
    return bool(cells) and sum(map(_reads_as_time, cells)) * 2 > len(cells)


def _has_colon(body: Sequence[Sequence[str]], index: int) -> bool:
    return any(":" in cell for cell in _cells(body, index))


def _has_day(body: Sequence[Sequence[str]], index: int) -> bool:
    return any(re.match(r"\s*\d{1,4}[-/.]\d{1,2}[-/.]", cell) for cell in _cells(body, index))


def _only_day(body: Sequence[Sequence[str]], index: int) -> bool:
    return _has_day(body, index) and not _has_colon(body, index)


def _is_temperature(name: str, body: Sequence[Sequence[str]], index: int) -> bool:
    if any(word in name.lower() for word in _NOT_TEMPERATURE):
        return False
    cells = _cells(body, index)
    return bool(cells) and sum(reading_of(cell) is not None for cell in cells) * 2 > len(cells)


def _scale(name: str, body: Sequence[Sequence[str]], index: int) -> str:
    found = _SCALE.search(name) or _SCALE.search(name.lower())
    if found:
        return next(part for part in found.groups() if part)[0].lower()
    if re.search(r"(?:^|[^a-z])(f|c)$", name.strip().lower()):
        return name.strip()[-1].lower()
    scales = {read[1] for read in map(reading_of, _cells(body, index)) if read}
    return scales.pop() if len(scales) == 1 else ""


def _place(name: str) -> str:
    words = name.lower()
    for place in ("air", "meat"):
        if any(re.search(rf"(?:^|[^a-z]){word}", words) for word in _PLACES[place]):
            return place
    return ""


def _time_unit(name: str) -> str:
    words = re.findall(r"[a-z]+", name.lower())
    for word in words:
        for start, unit in _UNITS.items():
            if word in (start, f"{start}s", unit):
                return unit
    return ""
