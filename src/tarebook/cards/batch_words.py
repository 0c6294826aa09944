"""What an entry of the batch book says, in the same words wherever it is shown."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from tarebook.cards.lines import Line, clean, wrap
from tarebook.quantities.words import format_mass_g
from tarebook.records.entry import IN, NEXT_TIME, OF_A_NOTE, Entry, Kind
from tarebook.records.moment import Moment

COLUMNS = 80
_DAYS = ("Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun")
_MONTHS = ("Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec")
_PLACES = {Kind.SOAK: "the soak", Kind.HEAT: "the heat", Kind.DRY: "the dryer"}
_FREEZING_F, _F_PER_C = 32, 1.8


def entry_words(entry: Entry, about: Entry | None = None) -> str:
    """Return what an entry says, with its remark; fit for a terminal.

    Args:
        entry: which.
        about: the entry that it strikes, replaces or settles, to be told too.
    """
    words = _said(entry)
    if about is not None:
        lead = "" if entry.kind in (Kind.STRIKE, *OF_A_NOTE) else f", in place of {about.number}"
        words += f"{lead} ({_said(about)})"
    if entry.note and entry.kind is not Kind.NOTE:
        words += f"; {entry.note}"
    return clean(words)


def moment_words(moment: Moment, *, year: bool = False) -> str:
    """Return a moment as the kitchen's clock showed it: ``Wed 25 Nov 18:00``."""
    return f"{day_words(moment, year=year)} {moment.local:%H:%M}"


def day_words(moment: Moment, *, year: bool = False) -> str:
    """Return a day: ``Wed 25 Nov``, or with its year."""
    return f"{_DAYS[moment.local.weekday()]} {date_words(moment, year=year)}"


def date_words(moment: Moment, *, year: bool = True) -> str:
    """Return a date: ``25 Nov 2026``, or without its year."""
    at = moment.local
    return f"{at.day} {_MONTHS[at.month - 1]}{f' {at.year}' if year else ''}"


def hours_words(hours: float) -> str:
    """Return a length of time: ``12 h 5 min``.

    Example:
        >>> hours_words(12.0833), hours_words(0.5), hours_words(6)
        ('12 h 5 min', '30 min', '6 h')
    """
    whole, minutes = divmod(round(hours * 60), 60)
    parts = [f"{whole:,} h" if whole else "", f"{minutes} min" if minutes or not whole else ""]
    return " ".join(part for part in parts if part)


def weight_words(entry: Entry) -> str:
    """Return a weight as written, and in grams where it was written otherwise."""
    if entry.value is None:
        return "not weighed"
    grams = format_mass_g(entry.value)
    same = entry.written.replace(" ", "").rstrip(".").lower() == grams.replace(" ", "")
    return grams if same else f"{entry.written} ({grams})"


def entry_line(entry: Entry, title: str, about: Entry | None = None) -> Iterator[Line]:
    """Yield what is told once an entry is kept: its number, what, when, and of which batch.

    Args:
        entry, about: as in :func:`entry_words`.
        title: of the recipe.
    """
    lead = f"{entry.batch}.{entry.number}  "
    words = f"{entry_words(entry, about)}, {moment_words(entry.happened)}, {title}"
    return (Line(t) for t in wrap(words, COLUMNS, first=lead, rest=" " * len(lead)))


def counted(count: int, one: str, many: str) -> str:
    """Return a count with its noun: ``1 batch``, ``12 batches``."""
    return f"{count:,} {one if count == 1 else many}"


def runs(numbers: Sequence[int]) -> str:
    """Return numbers with runs of them drawn together: ``1-4, 7``."""
    found: list[list[int]] = []
    for number in numbers:
        if found and number == found[-1][-1] + 1:
            found[-1].append(number)
        else:
            found.append([number])
    return ", ".join(str(run[0]) if len(run) == 1 else f"{run[0]}-{run[-1]}" for run in found)


def _said(entry: Entry) -> str:
    if entry.kind is Kind.START:
        return f"started, meat {weight_words(entry)}"
    if entry.kind is Kind.WEIGH:
        return f"{entry.what} {weight_words(entry)}"
    if entry.kind is Kind.TEMP:
        return f"{entry.what} at {_temperature(entry)}"
    if entry.kind is Kind.NOTE:
        return f"note{' for next time' if entry.what == NEXT_TIME else ''}: {entry.note}"
    if entry.kind in _PLACES:
        way = "into" if entry.what == IN else "out of"
        return f"{way} {_PLACES[entry.kind]}"
    return {
        Kind.TURN: "turned",
        Kind.FINISH: "batch finished",
        Kind.STRIKE: f"strikes entry {entry.about}",
        Kind.TAKEN: f"takes up note {entry.about}",
        Kind.DROPPED: f"drops note {entry.about}",
    }[entry.kind]


def _temperature(entry: Entry) -> str:
    """Return a temperature as written, and in the other scale."""
    fahrenheit = float(entry.value or 0)
    if "c" in entry.written.lower().removesuffix("fahrenheit")[-7:]:
        return f"{entry.written} ({fahrenheit:.0f} °F)"
    return f"{entry.written} ({(fahrenheit - _FREEZING_F) / _F_PER_C:.0f} °C)"
