"""A thermometer's log file to readings, with everything that was odd about it."""

from __future__ import annotations

import csv
from collections.abc import Iterator, Sequence
from datetime import datetime
from itertools import pairwise

from tarebook.findings import AskedWrongly, FileUnreadable, Finding, Place, Severity
from tarebook.probe.columns import Columns, TemperatureColumn, columns_of, reading_of
from tarebook.probe.times import Moment, TimeFault, TimeReader, time_reader
from tarebook.tuples import NamedTuple

MOST_BYTES = 50_000_000
"""Longest log that is read: a reading a second for a week is some 20 MB."""

_SAMPLE = 60
_DELIMITERS = ",;\t|"
_MOST_BAD_SHOWN = 5
_GAP_TIMES, _GAP_AT_LEAST_S = 5.0, 300.0
_SPIKE_F, _SPIKE_WITHIN_S = 15.0, 600.0
_COLDEST_F, _HOTTEST_F = -60.0, 1000.0
_CLOCK_CHANGE_S, _HOUR_S = (3300.0, 3900.0), 3600.0


class Reading(NamedTuple):
    """One reading.

    Attributes:
        seconds: since the first reading [s].
        temperature_f: [degF].
        spike: whether it jumps away from both neighbours and back; then nothing is told by it.
    """

    seconds: float
    temperature_f: float
    spike: bool = False


class Gap(NamedTuple):
    """A stretch without readings: from and to, since the first reading [s]."""

    start: float
    end: float


class Log(NamedTuple):
    """One column of a log.

    Attributes:
        name: the column's heading.
        place: ``meat``, ``air``, or empty where nobody said.
        readings: in order of time.
        gaps: stretches of more than five usual steps, and of 5 min at least.
        start: when the first reading was taken by the clock, if the log says.
        findings: what was odd: rows that could not be read, out of order, spikes, gaps.
    """

    name: str
    place: str
    readings: tuple[Reading, ...]
    gaps: tuple[Gap, ...]
    start: datetime | None
    findings: tuple[Finding, ...]


def read_log(
    data: bytes,
    *,
    file: str,
    column: str = "",
    scale: str = "",
    place: str = "",
    day_first: bool | None = None,
) -> Log:
    """Return one column of a log.

    Args:
        data: the file, rows of cells parted by commas, semicolons, tabs or bars.
        file: its name, for findings.
        column: heading (or part of one) of the column wanted; needed where there are several.
        scale: ``f`` or ``c`` where the file does not say.
        place: ``meat`` or ``air`` where the heading does not say, or says wrongly.
        day_first: whether 3/4 is 3 April.

    Returns:
        Its readings in order of time, with what was odd.

    Raises:
        FileUnreadable: the file is no log.
        AskedWrongly: it does not say which column is meant, or in what scale.
    """
    rows = _rows(_decoded(data, file), file)
    if len(rows) < 2:
        raise FileUnreadable(f"{file}: no log: it needs rows of times and temperatures")
    columns = columns_of([cells for _, cells in rows[:_SAMPLE]])
    body = rows[1:] if columns.has_heading else rows
    wanted = _wanted(columns, column, file)
    read_time, notes = _times(columns, body, file, day_first)
    scale = scale or wanted.scale
    if not scale:
        raise AskedWrongly(
            f'{file}: neither "{wanted.name[:40]}" nor its cells say °F or °C; '
            "add --scale f or --scale c"
        )
    found = _Found(file)
    for note in notes:
        found.note(None, "time-read", note)
    timed = list(found.read(body, columns.time, wanted.at, read_time, scale))
    if len(timed) < 2:
        raise FileUnreadable(
            f"{file}: fewer than two rows could be read as a time and a temperature"
        )
    found.tell_bad()
    timed = found.in_order(timed)
    if len(timed) < 2:
        raise FileUnreadable(f"{file}: all rows that could be read are of one moment")
    start, first = timed[0][0].clock, timed[0][0].seconds
    readings = found.without_spikes(
        [Reading(moment.seconds - first, value) for moment, value, _ in timed]
    )
    gaps = _gaps(readings)
    found.tell_gaps(gaps)
    return Log(
        name=wanted.name,
        place=place or wanted.place,
        readings=tuple(readings),
        gaps=gaps,
        start=start,
        findings=tuple(sorted(found.findings, key=lambda one: one.place.line or 0)),
    )


_Timed = tuple[Moment, float, int]


class _Found:
    """What was odd about a file, gathered on the way through it."""

    def __init__(self, file: str) -> None:
        self.file = file
        self.findings: list[Finding] = []
        self._bad: list[int] = []

    def note(self, line: int | None, code: str, text: str) -> None:
        self.findings.append(Finding(Place(self.file, line), Severity.NOTE, code, text))

    def warn(self, line: int | None, code: str, text: str) -> None:
        self.findings.append(Finding(Place(self.file, line), Severity.WARNING, code, text))

    def read(
        self,
        body: Sequence[tuple[int, list[str]]],
        time: tuple[int, ...],
        index: int,
        read_time: TimeReader,
        scale: str,
    ) -> Iterator[_Timed]:
        """Yield each row that has a time and a temperature."""
        for line, cells in body:
            if len(cells) <= max(*time, index) or not cells[index].strip():
                self._bad.append(line)
                continue
            reading = reading_of(cells[index])
            if reading is None:
                self._bad.append(line)
                continue
            try:
                moment = read_time(" ".join(cells[i].strip() for i in time))
            except (TimeFault, OverflowError, OSError):
                self._bad.append(line)
                continue
            value, named = reading
            value_f = value if (named or scale) == "f" else value * 1.8 + 32
            if not _COLDEST_F <= value_f <= _HOTTEST_F:
                self._bad.append(line)
                continue
            yield moment, value_f, line

    def tell_bad(self) -> None:
        """Tell how many rows could not be read, and where the first of them are."""
        if not self._bad:
            return
        shown = ", ".join(str(line) for line in self._bad[:_MOST_BAD_SHOWN])
        more = ", ..." if len(self._bad) > _MOST_BAD_SHOWN else ""
        rows = "row was" if len(self._bad) == 1 else "rows were"
        text = (
            f"{len(self._bad):,} {rows} passed over, no time or no temperature: line {shown}{more}"
        )
        self.warn(self._bad[0], "rows-unread", text)

    def in_order(self, timed: list[_Timed]) -> list[_Timed]:
        """Return rows in order of time; one step back of an hour is a clock put back."""
        back = [i for i in range(1, len(timed)) if timed[i][0].seconds < timed[i - 1][0].seconds]
        if not back:
            return self._once(timed)
        step = timed[back[0] - 1][0].seconds - timed[back[0]][0].seconds
        clock = timed[0][0].clock
        naive = clock is not None and clock.tzinfo is None
        if len(back) == 1 and naive and step <= _HOUR_S:
            usual = _usual_step([one[0].seconds for one in timed])
            if _CLOCK_CHANGE_S[0] <= step + usual <= _CLOCK_CHANGE_S[1]:
                line = timed[back[0]][2]
                self.note(
                    line, "clock-back", "the clock goes back an hour here: read as one put back"
                )
                return self._once(
                    timed[: back[0]]
                    + [
                        (moment._replace(seconds=moment.seconds + _HOUR_S), value, at)
                        for moment, value, at in timed[back[0] :]
                    ]
                )
        rows = "row stands" if len(back) == 1 else "rows stand"
        line = timed[back[0]][2]
        self.warn(line, "out-of-order", f"{len(back):,} {rows} before an earlier one: put in order")
        return self._once(sorted(timed, key=lambda one: one[0].seconds))

    def _once(self, timed: list[_Timed]) -> list[_Timed]:
        """Return one row for each time: the cooler, so that no heat is told that one denies."""
        kept: list[_Timed] = []
        twice = 0
        for one in timed:
            if kept and one[0].seconds == kept[-1][0].seconds:
                twice += 1
                if one[1] < kept[-1][1]:
                    kept[-1] = one
            else:
                kept.append(one)
        if twice:
            rows = "row has" if twice == 1 else "rows have"
            self.note(
                None, "same-time", f"{twice:,} {rows} the time of another: the cooler was kept"
            )
        return kept

    def without_spikes(self, readings: list[Reading]) -> list[Reading]:
        """Return readings with each lone jump marked, and tell of them."""
        marked = list(readings)
        spikes = [i for i in range(1, len(readings) - 1) if _spikes(readings, i)]
        for i in spikes:
            marked[i] = readings[i]._replace(spike=True)
        if spikes:
            words = "1 reading jumps" if len(spikes) == 1 else f"{len(spikes):,} readings jump"
            worst = max(spikes, key=lambda i: abs(_jump(readings, i)))
            text = (
                f"{words} by more than {_SPIKE_F:g} °F and back, as where a probe is moved: "
                f"passed over; the widest reads {readings[worst].temperature_f:.0f} °F"
            )
            self.warn(None, "spike", text)
        return marked

    def tell_gaps(self, gaps: Sequence[Gap]) -> None:
        """Tell how many stretches have no reading, and the longest."""
        if not gaps:
            return
        longest = max(gap.end - gap.start for gap in gaps) / 60
        words = "1 gap" if len(gaps) == 1 else f"{len(gaps):,} gaps"
        text = f"{words} in the readings, the longest {longest:,.0f} min: nothing is told of them"
        self.warn(None, "gap", text)


def _decoded(data: bytes, file: str) -> str:
    """Return the text of a log: UTF-8 or UTF-16 with its mark, else the old western letters."""
    if len(data) > MOST_BYTES:
        raise FileUnreadable(f"{file}: a log of more than {MOST_BYTES // 1_000_000} MB is not read")
    if data.startswith((b"\xff\xfe", b"\xfe\xff")):
        return data.decode("utf-16", "replace")
    if b"\0" in data[:4096]:
        raise FileUnreadable(f"{file}: no log: it is not text")
    try:
        return data.decode("utf-8-sig")
    except UnicodeDecodeError:
        return data.decode("latin-1")


def _rows(text: str, file: str) -> list[tuple[int, list[str]]]:
    """Return each row that is not empty, with its line number."""
    lines = _lines(text.lstrip("\ufeff"))
    sample = [line for line in lines[:_SAMPLE] if line.strip()]
    delimiter = max(_DELIMITERS, key=lambda mark: _evenness(sample, mark))
    cleaned = (line.replace("\0", "") for line in lines)
    try:
        reader = csv.reader(cleaned, delimiter=delimiter)
        return [(reader.line_num, row) for row in reader if any(cell.strip() for cell in row)]
    except csv.Error as fault:
        raise FileUnreadable(f"{file}: no log: its rows have no cells: {fault}") from None


def _lines(text: str) -> list[str]:
    """Return lines as an editor counts them; a stray mark of another kind of end parts none."""
    text = text.replace("\r\n", "\n")
    if "\n" not in text:
        text = text.replace("\r", "\n")
    return text.replace("\r", " ").split("\n")


def _evenness(lines: Sequence[str], mark: str) -> tuple[int, int]:
    """Return how many rows share the commonest number of a mark; a decimal comma does not win."""
    counts = [line.count(mark) for line in lines]
    filled = [count for count in counts if count]
    if not filled:
        return 0, 0
    commonest = max(set(filled), key=filled.count)
    weight = 0 if mark == "," and any(";" in line or "\t" in line for line in lines) else 1
    return filled.count(commonest) * weight, commonest


def _wanted(columns: Columns, column: str, file: str) -> TemperatureColumn:
    found = columns.temperatures
    if not columns.time:
        raise FileUnreadable(f"{file}: no column reads as a time")
    if not found:
        raise FileUnreadable(f"{file}: no column reads as a temperature")
    if column:
        same = [one for one in found if column.lower() == one.name.lower()]
        like = same or [one for one in found if column.lower() in one.name.lower()]
        if len(like) == 1:
            return like[0]
    if len(found) == 1 and not column:
        return found[0]
    names = ", ".join(f'"{one.name[:40]}"' for one in found)
    lead = (
        f'no one column is called "{column[:40]}"' if column else "several columns of temperature"
    )
    raise AskedWrongly(f"{file}: {lead}: choose one with --column: {names}")


def _times(
    columns: Columns,
    body: Sequence[tuple[int, list[str]]],
    file: str,
    day_first: bool | None,
) -> tuple[TimeReader, tuple[str, ...]]:
    cells = [
        " ".join(row[i].strip() for i in columns.time)
        for _, row in body
        if len(row) > max(columns.time) and row[columns.time[0]].strip()
    ]
    for place, sample in enumerate(cells[:_SAMPLE]):
        try:
            return time_reader([sample, *cells[place:]], unit=columns.unit, day_first=day_first)
        except (TimeFault, OverflowError, OSError):
            continue
    raise FileUnreadable(f"{file}: no row has a time that can be read")


def _usual_step(seconds: Sequence[float]) -> float:
    steps = sorted(b - a for a, b in pairwise(seconds) if b > a)
    return steps[len(steps) // 2] if steps else 0.0


def _gaps(readings: Sequence[Reading]) -> tuple[Gap, ...]:
    usual = _usual_step([one.seconds for one in readings])
    longest = max(_GAP_TIMES * usual, _GAP_AT_LEAST_S)
    return tuple(
        Gap(a.seconds, b.seconds) for a, b in pairwise(readings) if b.seconds - a.seconds > longest
    )


def _spikes(readings: Sequence[Reading], i: int) -> bool:
    before, here, after = readings[i - 1 : i + 2]
    near = after.seconds - before.seconds <= _SPIKE_WITHIN_S
    return near and abs(_jump(readings, i)) > _SPIKE_F and _comes_back(before, here, after)


def _jump(readings: Sequence[Reading], i: int) -> float:
    before, here, after = readings[i - 1 : i + 2]
    return here.temperature_f - (before.temperature_f + after.temperature_f) / 2


def _comes_back(before: Reading, here: Reading, after: Reading) -> bool:
    up, down = here.temperature_f - before.temperature_f, here.temperature_f - after.temperature_f
    return up * down > 0 and min(abs(up), abs(down)) > _SPIKE_F
