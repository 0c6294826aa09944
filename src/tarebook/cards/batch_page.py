"""What ``batch show``, ``list`` and ``next`` print of the batch book."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from typing import Any

from tarebook.cards.batch_words import (
    COLUMNS,
    counted,
    day_words,
    entry_words,
    hours_words,
    moment_words,
    runs,
    weight_words,
)
from tarebook.cards.figures import percent
from tarebook.cards.lines import Line, Style, clean, row, table, wrap
from tarebook.cards.next_notes import open_note, settle_lines
from tarebook.quantities.words import format_mass_g
from tarebook.records.entry import OF_A_NOTE, THINGS, Batch, Entry, Kind, Row, share
from tarebook.records.moment import Moment, hours_between
from tarebook.records.standing import Standing, ended_by, standing_of

_LEAD = 14  # mark, entry number and clock time
_WEIGHED = (10, 26, 10, 14)
_LISTED = (7, 15, 25, 9, 9, 5)
_LATE_H = 1.0


def batch_page(batch: Batch) -> Iterator[Line]:
    """Yield a batch as a page, 80 columns: every entry, those struck or replaced marked."""
    standing = standing_of(batch.entries)
    yield from _wrapped(f"Batch {batch.number}: {batch.title}", Style.TITLE)
    yield from _wrapped(_state(batch, standing), Style.QUIET)
    yield Line()
    yield from _entries(batch)
    weighed = list(_weighed(standing))
    if weighed:
        yield Line()
        yield Line("What was weighed", Style.HEAD)
        yield from weighed
    yield from _spans(standing)
    if standing.open_notes:
        yield Line()
        yield Line("For next time", Style.HEAD)
        yield from _open(standing.open_notes)


def batch_data(batch: Batch) -> dict[str, Any]:
    """Return the same as plain data, the whole recipe with it."""
    standing, ended = standing_of(batch.entries), ended_by(batch.entries)
    weights = {thing: standing.weight_g(thing) for thing in THINGS}
    return {
        "batch": batch.number,
        "uid": batch.uid,
        "recipe": batch.recipe,
        "title": batch.title,
        "started": _iso(standing.start.happened if standing.start else None),
        "finished": _iso(standing.finish.happened if standing.finish else None),
        "struck": standing.start is None,
        **{f"{thing}_g": None if g is None else float(g) for thing, g in weights.items()},
        "yield_fraction": standing.yield_fraction,
        "soak_h": standing.soak.hours,
        "heat_h": standing.heat.hours,
        "dry_h": standing.dry.hours,
        "entries": [entry_data(one, ended) for one in batch.entries],
        "recipe_sha256": batch.wording,
        "recipe_text": batch.recipe_text,
    }


def entry_data(entry: Entry, ended: Mapping[int, Entry] | None = None) -> dict[str, Any]:
    """Return an entry as plain data.

    Args:
        entry: which.
        ended: what struck or replaced which, of its batch.
    """
    over = (ended or {}).get(entry.number)
    value = None if entry.value is None else float(entry.value)
    return {
        "batch": entry.batch,
        "entry": entry.number,
        "uid": entry.uid,
        "kind": entry.kind.value,
        "what": entry.what or None,
        "written": entry.written or None,
        "mass_g": None if entry.kind is Kind.TEMP else value,
        "temperature_f": value if entry.kind is Kind.TEMP else None,
        "happened": _iso(entry.happened),
        "recorded": _iso(entry.recorded),
        "note": entry.note or None,
        "about": entry.about,
        "ended_by": None if over is None else over.number,
        "recipe_sha256": entry.wording,
    }


def list_page(rows: Iterable[Row], *, of: int) -> Iterator[Line]:
    """Yield batches, the newest first, 80 columns.

    Args:
        rows: those to show.
        of: how many there are in all.
    """
    heads = ("batch", "started", "recipe", "raw", "finished", "yield")
    yield Line(row(heads, _LISTED, right=(0, 3, 4, 5)), Style.HEAD)
    shown = 0
    for one in rows:
        shown += 1
        style = Style.QUIET if one.struck else Style.PLAIN
        for text in table([_cells(one)], _LISTED, right=(0, 3, 4, 5)):
            yield Line(text, style)
    yield Line()
    count = counted(of, "batch", "batches")
    more = f"{shown:,} of {count}, the newest first; --all lists every one."
    yield from _wrapped(more if shown < of else f"{count}.", Style.QUIET)


def row_data(one: Row) -> dict[str, Any]:
    """Return one of them as plain data."""
    return {
        "batch": one.number,
        "recipe": one.recipe,
        "title": one.title,
        "started": _iso(one.started),
        "finished": _iso(one.finished),
        "struck": one.struck,
        **{f"{thing}_g": getattr(one, f"{thing}_g") for thing in THINGS},
        "yield_fraction": one.yield_fraction,
        "soak_h": one.soak_h,
        "heat_h": one.heat_h,
        "dry_h": one.dry_h,
    }


def next_page(notes: Sequence[tuple[Entry, str]]) -> Iterator[Line]:
    """Yield notes for next time, recipe by recipe, 80 columns.

    Args:
        notes: each with the name of its recipe.
    """
    if not notes:
        yield Line("No notes for next time.")
        yield from _wrapped('tarebook batch note "less pepper" --next-time writes one.')
        return
    recipe = None
    for note, name in notes:
        if name != recipe:
            yield from _wrapped(name, Style.HEAD)
            recipe = name
        yield from _open([note])
    yield from settle_lines(notes[0][0].batch, notes[0][0].number)


def next_data(notes: Sequence[tuple[Entry, str]]) -> list[dict[str, Any]]:
    """Return the same as plain data."""
    return [
        {
            "recipe": name,
            "batch": note.batch,
            "entry": note.number,
            "note": note.note,
            "happened": _iso(note.happened),
        }
        for note, name in notes
    ]


def _entries(batch: Batch) -> Iterator[Line]:
    """Yield every entry in the order in which things happened, under its day."""
    ended, day = ended_by(batch.entries), ""
    for one in sorted(batch.entries, key=lambda entry: (entry.happened, entry.number)):
        if (today := day_words(one.happened, year=True)) != day:
            day = today
            yield Line(f"{'':{_LEAD}}{day}", Style.HEAD)
        over = ended.get(one.number)
        mark = "x" if over else " "
        lead = f"{mark} {one.number:>4}  {one.happened.local:%H:%M} ".ljust(_LEAD)
        style = Style.QUIET if over or one.kind is Kind.STRIKE else Style.PLAIN
        words = f"{entry_words(one)}{_fate(one, over, batch)}"
        yield from (Line(t, style) for t in wrap(words, COLUMNS, first=lead, rest=" " * _LEAD))
    late = [
        one.number for one in batch.entries if hours_between(one.happened, one.recorded) >= _LATE_H
    ]
    if late:
        yield from _wrapped(f"Written down an hour or more later: {runs(late)}.", Style.QUIET)


def _fate(entry: Entry, over: Entry | None, batch: Batch) -> str:
    """Return what became of an entry, in brackets."""
    said = []
    if entry.about is not None and entry.kind not in (Kind.STRIKE, *OF_A_NOTE):
        said.append(f"in place of {entry.about}")
    if over is not None:
        said.append(f"{'struck' if over.kind is Kind.STRIKE else 'replaced'} by {over.number}")
    if entry.kind is Kind.TAKEN:
        same = entry.wording == batch.wording
        said.append("the recipe reads as it did" if same else "the recipe was changed")
    return f" ({'; '.join(said)})" if said else ""


def _weighed(standing: Standing) -> Iterator[Line]:
    """Yield the weights that count, each with its share of the raw meat; what lacks is named."""
    raw, missing = standing.weight_g("raw"), []
    for thing in THINGS:
        entry = standing.weights.get(thing)
        if thing == "raw" and entry is None and raw is not None:
            entry = standing.start
        if entry is None or entry.value is None:
            missing.append(thing)
            continue
        part = share(float(entry.value), None if raw is None else float(raw))
        of_raw = "" if part is None or thing == "raw" else f"{percent(part)} of raw"
        written = weight_words(entry).partition(" (")[0]
        cells = (thing, clean(written), format_mass_g(entry.value), of_raw)
        yield from (Line(text) for text in table([cells], _WEIGHED, right=(2, 3)))
    if len(missing) < len(THINGS):
        yield from _wrapped(f"Not weighed: {', '.join(missing)}.", Style.QUIET) if missing else ()


def _spans(standing: Standing) -> Iterator[Line]:
    """Yield how long things took."""
    named = (("soaked", standing.soak), ("heated", standing.heat), ("dried", standing.dry))
    said = [f"{name} {hours_words(span.hours)}" for name, span in named if span.hours is not None]
    if said:
        yield from _wrapped(f"{'; '.join(said)}.".capitalize())


def _open(notes: Sequence[Entry]) -> Iterator[Line]:
    for one in notes:
        yield from open_note(one.batch, one.number, one.note, day_words(one.happened, year=True))


def _state(batch: Batch, standing: Standing) -> str:
    if standing.start is None:
        return f"{batch.recipe}; struck as a whole"
    started = f"{batch.recipe}; started {moment_words(standing.start.happened, year=True)}"
    if standing.finish is None:
        return f"{started}; in hand"
    return f"{started}; finished {moment_words(standing.finish.happened, year=True)}"


def _cells(one: Row) -> tuple[str, ...]:
    if one.struck:
        return (str(one.number), "struck", clean(one.title), "", "", "")
    made = one.yield_fraction
    ready = "in hand" if one.finished is None else "?"
    return (
        str(one.number),
        "" if one.started is None else day_words(one.started, year=True),
        clean(one.title),
        "?" if one.raw_g is None else format_mass_g(one.raw_g),
        ready if one.finished_g is None else format_mass_g(one.finished_g),
        "" if made is None else percent(made),
    )


def _iso(moment: Moment | None) -> str | None:
    return None if moment is None else str(moment)


def _wrapped(text: str, style: Style = Style.PLAIN) -> Iterator[Line]:
    return (Line(one, style) for one in wrap(text, COLUMNS))
