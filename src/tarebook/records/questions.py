"""What looks like a slip in an entry. It is kept as written; only a question is asked.

Nothing here knows more than arithmetic and the order of the days.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from fractions import Fraction

from tarebook.records.entry import IN, MEAT, OUT, Entry, Kind
from tarebook.records.moment import hours_between
from tarebook.records.standing import Standing

_LIGHTER: Mapping[str, tuple[str, ...]] = {
    "finished": ("raw", "soaked"),
    "packed": ("raw", "soaked", "finished"),
}
"""Things that cannot weigh more than those that they were made of."""

_SPAN = {Kind.SOAK: "soak", Kind.HEAT: "heat", Kind.DRY: "dry"}
_MOST_SOAKED = 2
_LEAST_FINISHED = Fraction(1, 20)
_RAW_APART = Fraction(1, 4)
_TOWELS_MOST = 1
_BOILING_F = 212
_SHORTEST_H, _LONGEST_H = 1, 24  # in the dryer: shorter was undone, longer was forgotten
_EARLY_H = 1
_AHEAD_H = 0.25


def questions(entry: Entry, before: Standing, now_standing: Standing) -> tuple[str, ...]:
    """Return what a friend looking over the cook's shoulder would ask.

    Args:
        entry: as it was just written.
        before: what the batch came to without it.
        now_standing: what it comes to with it.
    """
    asked = list(_of_time(entry, now_standing))
    if entry.kind is Kind.START and entry.value is None:
        asked.append("its meat was not weighed: tarebook batch weigh raw 6lb tells it")
    if entry.kind is Kind.WEIGH:
        asked += _of_weight(entry, before, now_standing)
    if entry.kind is Kind.TEMP and entry.what == MEAT and (entry.value or 0) > _BOILING_F:
        asked.append("hotter than boiling water: was it the air, --where air?")
    if entry.kind in _SPAN:
        asked += _of_span(entry, before, now_standing)
    if entry.kind is Kind.FINISH and "finished" not in now_standing.weights:
        asked.append(
            "what it weighs is not told yet: tarebook batch weigh finished WEIGHT "
            f"--batch {entry.batch}"
        )
    return tuple(asked)


def _of_time(entry: Entry, standing: Standing) -> Iterator[str]:
    if hours_between(entry.recorded, entry.happened) > _AHEAD_H:
        yield "that time is still to come"
    start = standing.start
    if start is None or start.number == entry.number:
        return
    early_h = hours_between(entry.happened, start.happened)
    if early_h > _EARLY_H:
        yield f"that is {early_h:.0f} h before the batch was started"


def _of_weight(entry: Entry, before: Standing, standing: Standing) -> Iterator[str]:
    grams, thing = entry.value or Fraction(0), entry.what
    for other in _LIGHTER.get(thing, ()):
        most = standing.weight_g(other)
        if most is not None and grams > most:
            yield f"{thing} is heavier than {other} was"
            break
    for heavier, made_of in _LIGHTER.items():
        least = standing.weight_g(heavier)
        if thing in made_of and least is not None and least > grams:
            yield f"{thing} is lighter than {heavier} is"
            break
    yield from _of_raw(grams, thing, standing)
    earlier = before.weights.get(thing)
    if earlier is not None and entry.about is None:
        yield (
            f"{thing} was weighed before (entry {earlier.number}): the later weight counts. "
            'Several bowls go in one entry, as in "2 lb + 14 oz"'
        )


def _of_raw(grams: Fraction, thing: str, standing: Standing) -> Iterator[str]:
    """Yield what is odd beside the raw weight."""
    start = standing.start
    said = None if start is None else start.value
    raw = standing.weight_g("raw")
    if thing == "raw":
        if said is not None and abs(grams - said) > said * _RAW_APART:
            yield "far from the weight the batch was started with"
    elif raw is not None:
        if thing == "soaked" and grams > raw * _MOST_SOAKED:
            yield "more than twice the raw weight"
        elif thing == "soaked" and grams < raw:
            yield "lighter than raw: a rub draws water out, a marinade seldom does"
        elif thing in ("finished", "packed") and grams < raw * _LEAST_FINISHED:
            yield "less than a twentieth of the raw weight: grams and ounces, or one bag of many?"
        elif thing == "towels" and grams > raw * _TOWELS_MOST:
            yield "more liquid on the towels than there was meat"


def _of_span(entry: Entry, before: Standing, standing: Standing) -> Iterator[str]:
    earlier, span = (getattr(one, _SPAN[entry.kind]) for one in (before, standing))
    loads = entry.kind is Kind.DRY  # which go in one after the other
    still_in = earlier.start is not None and earlier.end is None
    if entry.what == IN and still_in and not loads and entry.about is None:
        yield f"it was in already: tarebook batch {entry.kind} out tells when it came out"
    if entry.what == OUT and span.start is None:
        yield f"when it went in is not told: tarebook batch {entry.kind} in --at TIME"
    elif span.start is not None and span.end is not None and span.end < span.start:
        yield "out is before in"
    elif loads and span.hours is not None and not _SHORTEST_H <= span.hours <= _LONGEST_H:
        yield (
            f"that makes {_length(span.hours)} in the dryer, and the next batch is planned by it: "
            "--at says when it was"
        )


def _length(hours: float) -> str:
    return f"{hours:.0f} h" if hours >= 1 else f"{60 * hours:.0f} min"
