"""A plan as a cook reads it: every step in words, with what is done in between."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from itertools import pairwise
from math import ceil

from tarebook.figures.task_times import minutes
from tarebook.plan.cold import AT_THE_BOARD, warm_of
from tarebook.plan.jobs import Job, whole_minutes
from tarebook.plan.place import GRID
from tarebook.plan.step_words import air_note, test_words, turn_words, words_of
from tarebook.plan.tasks import HANDS_ON, WASHED, Placed, Span
from tarebook.plan.turns import turn_times
from tarebook.safety.rulebook import air_words, degrees
from tarebook.tuples import NamedTuple

_SHORTEST_WAIT = 30
_MOST_TESTS = 6
RAW_KINDS = frozenset(
    {"trim", "slice", "knead", "form", "steep", "rub", "drain", "wash", "simmer", "steam",
     "boil-down", "load", "clean"}
)  # fmt: skip
"""Work in which raw meat, or what it touched, is in hand."""
HEATED = frozenset({"simmer", "steam", "boil-down"})
"""Work in which meat gets its heat before it dries."""
_RUBBED = {"steep": "rub", "soak": "rest"}


class Step(NamedTuple):
    """One line of a plan.

    Attributes:
        kind: what, as ``task-times.csv`` calls it; ``wait`` is meat kept cold.
        job: which recipe, counted from 0.
        load: which load of it, counted from 1; 0 where it is for all of it.
        start, end: when [min].
        attended: whether somebody has to be there all the time.
        what: in words, short.
        note: what to mind, or nothing.
    """

    kind: str
    job: int
    load: int
    start: int
    end: int
    attended: bool
    what: str
    note: str = ""

    @property
    def span(self) -> Span:
        """From its start to its end."""
        return Span(self.start, self.end)


def steps_of(
    jobs: Sequence[Job],
    placed: Sequence[Placed],
    nights: Sequence[Span] = (),
    quiet: Sequence[Span] = (),
    *,
    way_out: str = "",
) -> tuple[Step, ...]:
    """Return a plan in words, in order: what was placed, and what is done in between.

    Args:
        jobs: the recipes.
        placed: the plan.
        nights: spans in which nobody turns or tests anything.
        quiet: spans in which nobody gets up to turn a soak.
        way_out: how to plan without a watch by night; nothing where there is no way.
    """
    found = [_in_lots(_step(one, jobs[one.batch]), jobs, placed) for one in placed]
    found = [_watched(one, jobs[one.job], quiet, way_out) for one in found]
    clean = (*finished_spans(placed), *heated_spans(placed))
    turns: list[Step] = []
    for at, job in enumerate(jobs):
        own = [one for one in placed if one.batch == at]
        found += _waits(at, job, own)
        for one in own:
            if one.kind == "soak" and job.case.soaked:
                turns += _turns(one, merged((*quiet, *(clean if job.case.is_flesh else ()))))
    raw = (*raw_spans(jobs, placed), *(one.span for one in turns if jobs[one.job].case.is_flesh))
    for one in placed:
        if one.kind == "dry":
            away = (*raw, *_of_others(one, placed)) if jobs[one.batch].batch.raw else raw
            found += _looked_at(one, jobs[one.batch], nights, away)
    found += [*turns, *_preheats(jobs, placed)]
    return tuple(sorted(found, key=lambda one: (one.start, one.end, one.job, one.load)))


def hours_words(length: float) -> str:
    """Return minutes as hours and minutes.

    Example:
        >>> hours_words(45), hours_words(60), hours_words(705)
        ('45 min', '1 h', '11 h 45')
    """
    whole = round(length)
    if whole < 60:
        return f"{whole} min"
    return f"{whole // 60} h {whole % 60:02d}" if whole % 60 else f"{whole // 60} h"


def _step(one: Placed, job: Job) -> Step:
    kind = one.kind
    if not job.case.soaked:
        kind = _RUBBED.get(kind, kind)
    what, note = words_of(kind, one, job)
    return Step(
        kind=kind,
        job=one.batch,
        load=one.load,
        start=one.start,
        end=one.end,
        attended=one.attended,
        what=what,
        note=note,
    )


def _in_lots(step: Step, jobs: Sequence[Job], placed: Sequence[Placed]) -> Step:
    """Return a step; at the board in lots, where all of it would be out of the cold too long."""
    job = jobs[step.job]
    if step.kind not in AT_THE_BOARD or not job.case.is_flesh:
        return step
    warm = warm_of(job, step.job, placed)
    if not warm.too_long:
        return step
    lots = f"in {warm.lots} lots, each out of the refrigerator for an hour at most"
    return step._replace(note="; ".join(filter(None, (lots, step.note))))


def _watched(step: Step, job: Job, quiet: Sequence[Span], way_out: str) -> Step:
    """Return a step; an open oven that is on by night says what that asks of the cook."""
    if step.kind != "dry" or not job.propped or not any(map(step.span.meets, quiet)):
        return step
    watch = "here that is at night too: stay up with it"
    if way_out:
        watch += f", or plan with {way_out}"
    return step._replace(note=f"{watch}; {step.note}")


def _waits(at: int, job: Job, own: Sequence[Placed]) -> Iterator[Step]:
    """Yield where meat waits in the cold between two steps."""
    prep = [one for one in own if one.load == 0 and one.kind != "mix"]
    roads = [prep]
    for load in range(1, len(job.loads) + 1):
        mine = [one for one in own if one.load == load and one.start < _hot(own, load)]
        roads.append([*prep[-1:], *mine])
    for road in roads:
        for before, after in pairwise(road):
            if after.start - before.end >= _SHORTEST_WAIT:
                yield _wait(at, after.load, before.end, after.start)


def _hot(own: Sequence[Placed], load: int) -> int:
    """Return when a load begins to dry."""
    return next(one.start for one in own if one.load == load and one.kind == "dry")


def _wait(at: int, load: int, start: int, end: int) -> Step:
    cold = degrees("cold-store", "refrigerator")
    return Step(
        "wait", at, load, start, end, False, "Waits, covered", f"refrigerator, {cold} or below"
    )


def _turns(soak: Placed, closed: Sequence[Span]) -> Iterator[Step]:
    """Yield when the bag is turned: never by night.

    Nor while strips are heated, or finished ones lie open: nobody touches what is wet with raw
    juices then.
    """
    each = whole_minutes(minutes("turn"))
    for start in turn_times(soak.span, each, closed):
        yield Step(
            "turn",
            soak.batch,
            soak.load,
            start,
            start + each,
            True,
            "Turn it in its marinade",
            "the bag closed; hands washed after",
        )


def _looked_at(
    dry: Placed, job: Job, nights: Sequence[Span], raw: Sequence[Span]
) -> Iterator[Step]:
    """Yield when trays are turned, and from the low hours on when a piece is tested.

    Nothing heated or dried is touched from when raw meat is taken in hand until all is washed, and
    nothing comes off the trays untested: the last test stands at the end, whatever the hours.
    """
    rotate, test = (whole_minutes(minutes(kind)) for kind in ("rotate", "test"))
    first = min(dry.start + whole_minutes(job.hours.low_h * 60), dry.end)
    every = int(minutes("rotate-every"))
    for wanted in range(dry.start + every, first, every):
        start = _after_raw(wanted, rotate, raw)
        worth = start == wanted or start + every / 2 <= min(wanted + every, first)
        if worth and not _asleep(start, rotate, nights):
            yield _event("rotate", dry, start, rotate, *turn_words(job))
    last = dry.end - test
    if _asleep(last, test, (*nights, *raw)):
        last = dry.end
    every = _between_tests(dry.end - first)
    likely = dry.start + round(job.hours.likely_h * 60)
    name, note = test_words(job)
    ahead = True
    for wanted in _tests(first, likely, dry.end, every):
        start = _after_raw(wanted, test, raw)
        if start + every / 2 <= last and not _asleep(start, test, nights):
            what = name + (_likely_words(start - likely) if ahead else "")
            yield _event("test", dry, start, test, what, note)
            ahead = start < likely
    yield _event(
        "test", dry, last, test, f"{name}: off only what passes",
        f"{note}; what does not pass goes on drying and is tried again, whatever the clock says",
    )  # fmt: skip


def _tests(first: int, likely: int, end: int, every: int) -> Iterator[int]:
    """Yield when a piece is tested: evenly from the low hours to the likely ones, and on."""
    parts = max(round((likely - first) / every), 1)
    if first < likely:
        yield from (
            first + round((likely - first) * at / parts / GRID) * GRID for at in range(parts)
        )
    yield from range(max(first, likely), end, every)


def _likely_words(after: int) -> str:
    """Return what is said at a test, so many minutes after the likely hours; before them nothing.

    The first at or after them says it: by night, or beside raw work, nobody tests to the minute.
    """
    if after < 0:
        return ""
    return ": likely by now" if after else ": likely about now"


def _after_raw(start: int, length: int, raw: Sequence[Span]) -> int:
    """Return the time itself, or when the raw work that it falls into is washed away."""
    while met := next((one for one in raw if one.meets(Span(start, start + length))), None):
        start = met.end
    return start


def raw_spans(jobs: Sequence[Job], placed: Iterable[Placed]) -> tuple[Span, ...]:
    """Return when raw meat, or what it touched, is in hand: till the end of the wash after it."""
    flesh = [one for one in placed if jobs[one.batch].case.is_flesh]
    begun: dict[tuple[int, int], int] = {}
    found = [Span(one.start, one.start + HANDS_ON) for one in flesh if one.kind == "part-freeze"]
    for one in sorted(flesh, key=lambda each: each.span):
        if one.kind in RAW_KINDS:
            since = begun.setdefault((one.batch, one.load), one.start)
            found.append(Span(since, one.end))
        if one.kind in WASHED:
            begun.pop((one.batch, one.load), None)
    return merged(found)


def heated_spans(placed: Sequence[Placed]) -> tuple[Span, ...]:
    """Return from the first piece of each load in the heat until the last is on its tray."""
    laid = {(one.batch, one.load): one.end for one in placed if one.kind == "load"}
    return tuple(Span(one.start, laid[one.batch, one.load]) for one in placed if one.kind in HEATED)


def finished_spans(placed: Iterable[Placed]) -> tuple[Span, ...]:
    """Return from the last test of each load, before it comes off, until it is packed."""
    return tuple(_finished(placed).values())


def _of_others(load: Placed, placed: Iterable[Placed]) -> Iterator[Span]:
    """Yield when strips of other loads than one come off, until they are packed."""
    for whose, span in _finished(placed).items():
        if whose != (load.batch, load.load):
            yield span


def _finished(placed: Iterable[Placed]) -> dict[tuple[int, int], Span]:
    """Return the same by batch and load."""
    test = whole_minutes(minutes("test"))
    listed = list(placed)
    packed = {(one.batch, one.load): one.end for one in listed if one.kind == "pack"}
    return {
        (one.batch, one.load): Span(one.start - test, packed[one.batch, one.load])
        for one in listed
        if one.kind == "unload"
    }


def merged(spans: Iterable[Span]) -> tuple[Span, ...]:
    """Return spans in order, those that meet or follow each other at once as one."""
    found: list[Span] = []
    for one in sorted(spans):
        if found and one.start <= found[-1].end:
            found[-1] = Span(found[-1].start, max(found[-1].end, one.end))
        else:
            found.append(one)
    return tuple(found)


def _between_tests(length: int) -> int:
    every = int(minutes("test-every"))
    return max(every, ceil(length / _MOST_TESTS / 30) * 30)


def _event(kind: str, dry: Placed, start: int, length: int, what: str, note: str = "") -> Step:
    return Step(kind, dry.batch, dry.load, start, start + length, True, what, note)


def _asleep(start: int, length: int, nights: Sequence[Span]) -> bool:
    return any(one.meets(Span(start, start + length)) for one in nights)


def _preheats(jobs: Sequence[Job], placed: Iterable[Placed]) -> Iterator[Step]:
    """Yield when the dryer is switched on: before each time it has stood idle."""
    ahead = whole_minutes(minutes("preheat"))
    drying = sorted((one for one in placed if one.kind == "dry"), key=lambda one: one.start)
    hot_until: int | None = None
    for one in drying:
        if hot_until is None or one.start - hot_until > ahead:
            job = jobs[one.batch]
            yield Step(
                "preheat", one.batch, one.load, one.start - ahead, one.start, False,
                f"{'Oven' if job.oven else 'Dryer'} on, at {air_words(job.air_f)}",
                air_note(job),
            )  # fmt: skip
        hot_until = max(hot_until or one.end, one.end)
