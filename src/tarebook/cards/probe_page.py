"""What ``probe`` prints: a log drawn, and when a temperature was reached and held."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from datetime import timedelta
from typing import Any

from tarebook.cards.lines import Line, Style, clean, row, wrap
from tarebook.probe import THRESHOLDS_F, Log, Reached, Reading, reached
from tarebook.safety.rulebook import rule

COLUMNS = 80
NO_VERDICT = (
    "Readings and their times only. Nothing here says that the heat was enough: that depends on "
    "where the tip was, on how moist the heat was, and on the thickest strip."
)
_PLACES = {
    "meat": "The probe was in the meat.",
    "air": "The probe was in the air: it tells nothing of the inside of the meat.",
    "": "Nobody said whether the probe was in the meat or in the air: add --in meat or --in air.",
}
_RULES = {"meat": ("heat-before",), "air": ("dryer-145",), "": ("heat-before", "dryer-145")}
_HIGH, _WIDE = 12, 68


def probe_page(log: Log) -> Iterator[Line]:
    """Yield the page of one column of a log, 80 columns."""
    yield Line(clean(log.name), Style.TITLE)
    yield from _say(_PLACES[log.place], Style.PLAIN if log.place else Style.WARN)
    yield from _say(_summary(log))
    yield Line()
    yield from (Line(text) for text in _chart(log))
    yield Line()
    heads = ("reached", "first read at", "held longest", "in all")
    widths = (18, 24, 16, 12)
    yield Line(row(heads, widths), Style.HEAD)
    for one in (reached(log, threshold) for threshold in THRESHOLDS_F):
        yield Line(row((_both(one.threshold_f), *_cells(log, one)), widths))
    yield Line()
    for name in _RULES[log.place]:
        found = rule(name)
        says = found.statement.replace("degF", "°F").replace("degC", "°C")
        yield from _say(f"{says} [{found.citation}]", Style.QUIET)
    yield from _say(NO_VERDICT)


def probe_data(log: Log) -> dict[str, Any]:
    """Return the same as plain data."""
    return {
        "column": log.name,
        "place": log.place or None,
        "started": None if log.start is None else log.start.isoformat(),
        "readings": len(log.readings),
        "seconds": log.readings[-1].seconds,
        "lowest_f": min(one.temperature_f for one in _sound(log)),
        "highest_f": max(one.temperature_f for one in _sound(log)),
        "gaps": [{"from_s": gap.start, "to_s": gap.end} for gap in log.gaps],
        "spikes": sum(one.spike for one in log.readings),
        "reached": [
            {
                "threshold_f": one.threshold_f,
                "first_s": one.first,
                "longest_s": one.longest_s,
                "total_s": one.total_s,
            }
            for one in (reached(log, threshold) for threshold in THRESHOLDS_F)
        ],
        "findings": [str(one) for one in log.findings],
    }


def _summary(log: Log) -> str:
    sound = _sound(log)
    low = min(one.temperature_f for one in sound)
    high = max(one.temperature_f for one in sound)
    begun = "" if log.start is None else f" from {log.start:%Y-%m-%d %H:%M}"
    return (
        f"{len(log.readings):,} readings over {_hours(log.readings[-1].seconds)}{begun}, "
        f"{_both(low)} to {_both(high)}."
    )


def _cells(log: Log, found: Reached) -> tuple[str, str, str]:
    if found.first is None:
        return "never", "", ""
    when = f"{_hours(found.first)} in"
    if log.start is not None:
        when += f" ({log.start + timedelta(seconds=found.first):%H:%M})"
    return when, _hours(found.longest_s), _hours(found.total_s)


def _hours(seconds: float) -> str:
    minutes = int(seconds // 60)
    if minutes < 1:
        return f"{seconds:.0f} s"
    return f"{minutes} min" if minutes < 60 else f"{minutes // 60} h {minutes % 60:02d} min"


def _both(fahrenheit: float) -> str:
    return f"{fahrenheit:.0f} °F ({(fahrenheit - 32) / 1.8:.0f} °C)"


def _sound(log: Log) -> list[Reading]:
    return [one for one in log.readings if not one.spike] or list(log.readings)


def _chart(log: Log) -> list[str]:
    """Return the log drawn with characters, a column a stretch of time, thresholds dotted."""
    columns = _stretches(log)
    known = [value for value in columns if value is not None]
    top = max(*known, THRESHOLDS_F[-1] + 5)
    bottom = min(*known, THRESHOLDS_F[0] - 25)
    step = (top - bottom) / _HIGH
    lines = []
    for level in range(_HIGH, -1, -1):
        at = bottom + level * step
        named = next((one for one in THRESHOLDS_F if abs(one - at) <= step / 2), None)
        blank = "·" if named is not None else " "
        drawn = "".join(_mark(value, at, step, blank) for value in columns)
        label = f"{named:.0f} °F" if named is not None else ""
        lines.append(f"{label:>7} │{drawn}".rstrip())
    lines.append(" " * 8 + "└" + "─" * _WIDE)
    end = _hours(log.readings[-1].seconds)
    return [*lines, " " * 9 + "0" + end.rjust(_WIDE - 1)]


def _mark(value: float | None, at: float, step: float, blank: str) -> str:
    if value is None:
        return blank
    return "•" if abs(value - at) <= step / 2 else blank


def _stretches(log: Log) -> Sequence[float | None]:
    """Return the last sound reading of each column's stretch of time; None in a gap."""
    length = log.readings[-1].seconds or 1.0
    found: list[float | None] = [None] * _WIDE
    for one in log.readings:
        if not one.spike:
            found[min(int(one.seconds / length * _WIDE), _WIDE - 1)] = one.temperature_f
    in_gap = [
        any(gap.start < (i + 0.5) * length / _WIDE < gap.end for gap in log.gaps)
        for i in range(_WIDE)
    ]
    for i in range(1, _WIDE):
        if found[i] is None and not in_gap[i]:
            found[i] = found[i - 1]  # readings farther apart than a column is wide
    return found


def _say(text: str, style: Style = Style.PLAIN) -> Iterator[Line]:
    return (Line(one, style) for one in wrap(text, COLUMNS))
