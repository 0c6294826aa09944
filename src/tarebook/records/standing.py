"""What still stands of a batch's entries, and what they come to.

Nothing in the book is ever changed. An entry is over once a later one strikes it or stands in its
place, and stands again once that later one is struck itself. So the whole history decides, read
from its end.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from fractions import Fraction

from tarebook.records.entry import IN, NEXT_TIME, OF_A_NOTE, OUT, THINGS, Entry, Kind, share
from tarebook.records.moment import Moment, hours_between
from tarebook.tuples import NamedTuple


class Span(NamedTuple):
    """From in to out: of the soak, the heat step or the dryer; None was not entered."""

    start: Moment | None = None
    end: Moment | None = None

    @property
    def hours(self) -> float | None:
        """How long it was [h], where both ends were entered in their order."""
        if self.start is None or self.end is None or self.end < self.start:
            return None
        return hours_between(self.start, self.end)


class Standing(NamedTuple):
    """What the entries of a batch come to, after all corrections.

    Attributes:
        start: the entry that started it, or None where the batch as a whole was struck.
        finish: the entry that finished it, or None while it is in hand.
        weights: of each thing weighed, the entry that counts: the later of two.
        soak, heat, dry: from in to out.
        temperatures: in the order they were taken.
        open_notes: notes for next time that were neither taken up nor dropped.
    """

    start: Entry | None
    finish: Entry | None
    weights: Mapping[str, Entry]
    soak: Span
    heat: Span
    dry: Span
    temperatures: tuple[Entry, ...]
    open_notes: tuple[Entry, ...]

    def weight_g(self, thing: str) -> Fraction | None:
        """Return what was weighed [g], exact, or None; raw is the meat of the start if need be."""
        found = self.weights.get(thing)
        if found is None and thing == THINGS[0]:
            found = self.start
        return None if found is None else found.value

    @property
    def yield_fraction(self) -> float | None:
        """Finished over raw weight [-]."""
        finished, raw = self.weight_g("finished"), self.weight_g("raw")
        return share(*(None if one is None else float(one) for one in (finished, raw)))


def ended_by(entries: Sequence[Entry]) -> dict[int, Entry]:
    """Return, for each entry that no longer stands, the one that struck or replaced it.

    Args:
        entries: all of one batch.
    """
    ended: dict[int, Entry] = {}
    # An entry is always about an earlier one: from the end, each is decided before it is asked.
    for one in sorted(entries, key=_number, reverse=True):
        corrects = one.about is not None and one.kind not in OF_A_NOTE
        if corrects and one.number not in ended and one.about is not None:
            ended.setdefault(one.about, one)
    return ended


def standing_of(entries: Sequence[Entry]) -> Standing:
    """Return what all entries of one batch come to."""
    ended = ended_by(entries)
    place = _places(entries)
    live = sorted(
        (one for one in entries if one.number not in ended and one.kind is not Kind.STRIKE),
        key=lambda one: place[one.number],
    )
    over = {place[one.about] for one in live if one.kind in OF_A_NOTE and one.about}
    return Standing(
        start=_last(live, lambda one: one.kind is Kind.START),
        finish=_last(live, lambda one: one.kind is Kind.FINISH),
        weights={one.what: one for one in live if one.kind is Kind.WEIGH},
        soak=_span(live, Kind.SOAK),
        heat=_span(live, Kind.HEAT),
        dry=_span(live, Kind.DRY),
        temperatures=tuple(
            sorted((one for one in live if one.kind is Kind.TEMP), key=lambda one: one.happened)
        ),
        open_notes=tuple(
            one
            for one in live
            if one.kind is Kind.NOTE and one.what == NEXT_TIME and place[one.number] not in over
        ),
    )


def _places(entries: Sequence[Entry]) -> dict[int, int]:
    """Return where each entry belongs: one that replaces another takes its place.

    So a weight corrected late does not outdo one that was entered after it.
    """
    places: dict[int, int] = {}
    for one in sorted(entries, key=_number):
        replaces = one.about is not None and one.kind not in (*OF_A_NOTE, Kind.STRIKE)
        places[one.number] = places[one.about] if replaces and one.about else one.number
    return places


def _span(live: Sequence[Entry], kind: Kind) -> Span:
    return Span(*(_when(live, kind, way) for way in (IN, OUT)))


def _when(live: Sequence[Entry], kind: Kind, way: str) -> Moment | None:
    """Return when it went in first, or came out last: loads follow each other."""
    found = [one.happened for one in live if one.kind is kind and one.what == way]
    return (min if way == IN else max)(found, default=None)


def _last(live: Sequence[Entry], chosen: Callable[[Entry], bool]) -> Entry | None:
    return next((one for one in reversed(live) if chosen(one)), None)


def _number(one: Entry) -> int:
    return one.number
