"""Where in time everything goes: one dryer, one pair of hands, nights that may be asked for.

A pure function over plain minutes. It knows no food, no clock and no zone: minutes count from any
zero, and nights are spans of them. Everything is placed as late as it may be, from the end back, so
that raw meat waits least; no raw meat is in hand, nor what it touched unwashed, from when strips
come off the trays until they are packed; a start is kept by finding the end that leads to it.
Planning forward and back are therefore one and the same.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from operator import itemgetter

from tarebook.plan.tasks import WASHED, Batch, Placed, Portion, Span, Task
from tarebook.tuples import NamedTuple

GRID = 5
"""Times are tried in steps of so many minutes [min]."""
HORIZON = 14 * 24 * 60
"""How far back from its end a plan is looked for [min]."""
OVEN_WAIT = 60
"""How long dried strips may wait for the oven step [min]."""


def place_back(
    batches: Sequence[Batch],
    *,
    ready: int,
    trays: int,
    nights: Sequence[Span] = (),
    dry_by_night: bool = False,
) -> tuple[Placed, ...] | None:
    """Return a plan that ends by a given minute, everything as late as it may be.

    Args:
        batches: what is to be dried; no portion takes more trays than there are.
        ready: when all of it must be packed.
        trays: how many trays the dryer has.
        nights: spans in which nobody is to be needed.
        dry_by_night: whether the dryer may run through them all the same.

    Returns:
        Every task with its time, in order; None where none is found within two weeks.
    """
    day = _Day(batches, ready, trays, nights, dry_by_night)
    turns = sorted(
        (portion.trays < trays, at, load)
        for at, batch in enumerate(batches)
        for load, portion in enumerate(batch.portions, start=1)
    )
    for _, at, load in reversed(turns):  # what fills no whole dryer goes last, and together
        if not day.place_portion(at, load):
            return None
    for at in range(len(batches) - 1, -1, -1):
        if not day.place_prep(at):
            return None
    return tuple(sorted(day.placed, key=lambda one: (one.start, one.end, one.batch, one.load)))


def place_from(
    batches: Sequence[Batch],
    *,
    start: int,
    trays: int,
    nights: Sequence[Span] = (),
    dry_by_night: bool = False,
) -> tuple[tuple[Placed, ...], int] | None:
    """Return the plan that ends soonest of those that begin no sooner than a given minute.

    Args:
        batches, trays, nights, dry_by_night: as for :func:`place_back`.
        start: the first minute in which anything may be done.

    Returns:
        Every task with its time, and the minute by which all is packed; None where none is found.
    """

    def plan(ready: int) -> tuple[Placed, ...] | None:
        return place_back(
            batches, ready=ready, trays=trays, nights=nights, dry_by_night=dry_by_night
        )

    def begins(ready: int) -> bool:
        found = plan(ready)
        return found is not None and found[0].start >= start

    first = _length(place_back(batches, ready=0, trays=trays))
    if first is None:
        return None
    low, high = start + first - GRID, start + first
    while not begins(high):  # an end that is too soon, and one that is late enough
        low, high = high, high + max(2 * (high - low), GRID)
        if high > start + first + HORIZON:
            return None
    while high - low > GRID:
        middle = low + (high - low) // (2 * GRID) * GRID
        low, high = (low, middle) if begins(middle) else (middle, high)
    found = plan(high)
    return None if found is None else (found, high)


def _length(placed: tuple[Placed, ...] | None) -> int | None:
    return None if placed is None else -placed[0].start


class _Loaded(NamedTuple):
    span: Span
    trays: int
    air: tuple[float, float]
    raw: bool


class _Day:
    """What has been placed so far, and who and what is free."""

    def __init__(
        self,
        batches: Sequence[Batch],
        ready: int,
        trays: int,
        nights: Sequence[Span],
        dry_by_night: bool,
    ) -> None:
        self.batches = batches
        self.ready = ready
        self.trays = trays
        self.earliest = ready - HORIZON
        self.nights = [one for one in nights if one.end > self.earliest and one.start < ready]
        self.dry_by_night = dry_by_night
        self.placed: list[Placed] = []
        self.hands: list[Span] = []
        self.raw: list[Span] = []
        self.open: list[Span] = []
        self.dryer: list[_Loaded] = []

    def place_portion(self, at: int, load: int) -> bool:
        """Place one portion as late as it may be; False where it has no place."""
        batch = self.batches[at]
        portion = batch.portions[load - 1]
        tail = portion.unload + portion.oven + portion.cool + portion.pack
        out = self.ready - tail + GRID
        while (out := self._out_before(batch, portion, out - GRID)) > self.earliest:
            found = self._fits(batch, portion, out)
            if found is not None:
                self._keep(at, load, found)
                if batch.flesh:
                    self.open.append(_finished(found))
                    self.raw += _raw_work(found)
                for span, trays in self._taken(portion, out):
                    self.dryer.append(_Loaded(span, trays, batch.air, batch.raw))
                return True
        return False

    def _out_before(self, batch: Batch, portion: Portion, out: int) -> int:
        """Return the latest minute, no later than one, at which no single thing is in the way.

        What is in the way stays so until all of the portion's span lies before it: those minutes
        need not be tried one by one.
        """
        while out > self.earliest:
            back = max(self._in_the_way(batch, portion, out), default=0)
            if not back:
                break
            out -= -(-back // GRID) * GRID
        return out

    def _in_the_way(self, batch: Batch, portion: Portion, out: int) -> Iterator[int]:
        """Yield how much sooner each thing in the way asks a portion to be out [min]."""
        on = self._switched_on(portion, out)
        hands = self._at_work(portion, out)
        awake = [*hands, Span(on, on + 1 if self.dry_by_night else out)]
        for span in awake:
            yield from (span.end - one.start for one in self.nights if one.meets(span))
        for span in hands:
            yield from (span.end - one.start for one in self.hands if one.meets(span))
        yield from self._near_raw(batch, portion, out, hands)
        for span, trays in self._taken(portion, out):
            for one in self.dryer:
                if one.span.meets(span) and self._clash(batch, trays, one):
                    yield span.end - one.span.start

    def _near_raw(
        self, batch: Batch, portion: Portion, out: int, hands: Sequence[Span]
    ) -> Iterator[int]:
        """Yield how much sooner raw work beside finished strips asks a portion to be out [min]."""
        if not batch.flesh:
            return
        yield from (hands[0].end - one.start for one in self.open if one.meets(hands[0]))
        tail = portion.unload + portion.oven + portion.cool + portion.pack
        finished = Span(out, out + tail)
        yield from (finished.end - one.start for one in self.raw if one.meets(finished))

    def _switched_on(self, portion: Portion, out: int) -> int:
        """Return when the first hand is laid on a portion, or the dryer switched on for it."""
        begun = out - portion.dry
        return min(begun - sum(task.minutes for task in portion.front), begun - portion.preheat)

    def _at_work(self, portion: Portion, out: int) -> list[Span]:
        """Return when somebody has to be there before and after a portion dries."""
        begun = out - portion.dry
        front = begun - sum(task.minutes for task in portion.front)
        return [Span(front, begun + portion.clean), Span(out, out + portion.unload)]

    def place_prep(self, at: int) -> bool:
        """Place what is done once for a batch, as late as it may be."""
        batch = self.batches[at]
        own = [one for one in self.placed if one.batch == at]
        found = self._chains(batch.prep, min(one.start for one in own), ())
        if found is None:
            return False
        self._keep(at, 0, found)
        self.raw += _raw_work(found)
        if not batch.mix:
            return True
        steeped = [one.start for one in own if one.kind == "steep"]
        mixed = self._before(min(steeped, default=min(one.start for one in own)), batch.mix)
        if mixed is None:
            return False
        self._keep(at, 0, [(Task("mix", batch.mix), mixed)])
        return True

    def _fits(self, batch: Batch, portion: Portion, out: int) -> list[tuple[Task, Span]] | None:
        """Return everything of a portion that leaves the dryer at a minute, if it all fits."""
        begun = out - portion.dry
        front = begun - sum(task.minutes for task in portion.front)
        taken = self._taken(portion, out)
        at_work = self._at_work(portion, out)
        room = all(self._trays_for(batch, trays, span) for span, trays in taken)
        if not room or not all(map(self._free, at_work)):
            return None
        on = self._switched_on(portion, out)
        if self._by_night(Span(on, on + 1)):
            return None
        tail = self._tail(portion, out, at_work)
        steep = self._steep(batch, front, at_work)
        if tail is None or steep is None:
            return None
        at_work += _busy(steep)
        lead = self._chains(portion.lead, steep[0][1].start if steep else front, at_work)
        if lead is None:
            return None
        found = [*lead, *steep, *_in_a_row(portion.front, front)]
        found.append((Task("dry", portion.dry, attended=False), Span(begun, out)))
        if portion.clean:
            found.append((Task("clean", portion.clean), Span(begun, begun + portion.clean)))
        found += tail
        return None if self._raw_near(batch, found) else found

    def _raw_near(self, batch: Batch, found: Sequence[tuple[Task, Span]]) -> bool:
        """Whether raw work would meet finished strips that lie open, of this portion or another."""
        finished = _finished(found)
        if batch.flesh and any(map(finished.meets, self.raw)):
            return True
        return any(one.meets(span) for span in _raw_work(found) for one in self.open)

    def _tail(
        self, portion: Portion, out: int, at_work: list[Span]
    ) -> list[tuple[Task, Span]] | None:
        """Return what follows drying: trays emptied, oven, cooling, packing."""
        at = out + portion.unload
        found = [(Task("unload", portion.unload), Span(out, at))]
        if portion.oven:
            latest = at + portion.oven + (0 if portion.in_oven else OVEN_WAIT)
            heated = self._after(at, portion.oven, latest, at_work)
            if heated is None:
                return None
            found.append((Task("oven", portion.oven), heated))
            at_work.append(heated)
            at = heated.end
        found.append((Task("cool", portion.cool, attended=False), Span(at, at + portion.cool)))
        packed = self._after(at + portion.cool, portion.pack, self.ready, at_work)
        if packed is None:
            return None
        at_work.append(packed)
        return [*found, (Task("pack", portion.pack), packed)]

    def _steep(
        self, batch: Batch, front: int, at_work: Sequence[Span]
    ) -> list[tuple[Task, Span]] | None:
        """Return when a portion goes into its marinade: near the wanted time, in its range."""
        if not batch.steep:
            return []
        least, wanted, most = batch.soak
        for off in _outwards(wanted, least, most):
            end = front - off
            span = Span(end - batch.steep, end + batch.wash)
            if batch.flesh and any(map(span.meets, self.open)):
                continue
            if self._free(span) and not any(map(span.meets, at_work)):
                return list(_steeped(batch, Span(end, front)))
        return None

    def _chains(
        self, tasks: Sequence[Task], limit: int, at_work: Sequence[Span]
    ) -> list[tuple[Task, Span]] | None:
        """Return tasks in their order, each as late as it may be, those that are tied together."""
        left, found = list(tasks), []
        while left:
            chain = [left.pop()]
            while left and left[-1].tied:
                chain.insert(0, left.pop())
            begin = self._chain_before(chain, limit, at_work)
            if begin is None:
                return None
            found += list(_in_a_row(chain, begin))
            limit = begin
        return found

    def _chain_before(
        self, chain: Sequence[Task], limit: int, at_work: Sequence[Span]
    ) -> int | None:
        """Return the latest start of tasks in a row that end by a minute; no start by night."""
        length = sum(task.minutes for task in chain)
        for begin in range(limit - length, self.earliest, -GRID):
            spans = list(_in_a_row(chain, begin))
            busy = list(_busy(spans))
            free = all(self._free(span) and not any(map(span.meets, at_work)) for span in busy)
            raw = _busy((task, span) for task, span in spans if task.raw)
            if any(one.meets(span) for span in raw for one in self.open):
                continue
            if free and not self._by_night(Span(begin, begin + 1)):
                return begin
        return None

    def _before(self, limit: int, minutes: int) -> Span | None:
        starts = range(limit - minutes, self.earliest, -GRID)
        return self._first_free(minutes, starts, ())

    def _after(
        self, earliest: int, minutes: int, latest: int, at_work: Sequence[Span]
    ) -> Span | None:
        return self._first_free(minutes, range(earliest, latest - minutes + 1, GRID), at_work)

    def _first_free(
        self, minutes: int, starts: Iterable[int], at_work: Sequence[Span]
    ) -> Span | None:
        for start in starts:
            span = Span(start, start + minutes)
            if self._free(span) and not any(map(span.meets, at_work)):
                return span
        return None

    def _free(self, span: Span) -> bool:
        """Whether somebody can be there, awake and with no other work."""
        return not self._by_night(span) and not any(map(span.meets, self.hands))

    def _by_night(self, span: Span) -> bool:
        return any(map(span.meets, self.nights))

    def _taken(self, portion: Portion, out: int) -> list[tuple[Span, int]]:
        """Return when a portion takes how many trays; in the oven's own step, all of them."""
        emptied = out + portion.unload
        found = [(Span(out - portion.dry, emptied), portion.trays)]
        if portion.in_oven and portion.oven:
            found.append((Span(emptied, emptied + portion.oven), self.trays))
        return found

    def _trays_for(self, batch: Batch, trays: int, span: Span) -> bool:
        """Whether the dryer has room for it all the while, and air that suits all in it."""
        beside = [one for one in self.dryer if one.span.meets(span)]
        moments = {span.start, *(max(one.span.start, span.start) for one in beside)}
        return self._alike(batch, beside) and all(
            trays + sum(one.trays for one in beside if one.span.start <= at < one.span.end)
            <= self.trays
            for at in moments
        )

    def _clash(self, batch: Batch, trays: int, other: _Loaded) -> bool:
        """Whether trays of a batch can never be in the dryer together with another load."""
        return trays + other.trays > self.trays or not self._alike(batch, [other])

    @staticmethod
    def _alike(batch: Batch, others: Sequence[_Loaded]) -> bool:
        """Whether one air suits all of them, and all are raw or none is."""
        low = max([batch.air[0], *(one.air[0] for one in others)])
        high = min([batch.air[1], *(one.air[1] for one in others)])
        return low <= high and all(one.raw == batch.raw for one in others)

    def _keep(self, at: int, load: int, found: Iterable[tuple[Task, Span]]) -> None:
        for task, span in found:
            one = Placed(task.kind, at, load, span.start, span.end, task.attended)
            self.placed.append(one)
            self.hands += _busy([(task, span)])


def _steeped(batch: Batch, soak: Span) -> Iterator[tuple[Task, Span]]:
    """Yield a portion going into its marinade, the washing up after it, and its soak."""
    begin = soak.start - batch.steep
    yield Task("steep", batch.steep, raw=batch.flesh), Span(begin, soak.start)
    if batch.wash:
        end = soak.start + batch.wash
        yield Task("wash", batch.wash, raw=True), Span(soak.start, end)
    yield Task("soak", soak.end - soak.start, attended=False), soak


def _finished(found: Iterable[tuple[Task, Span]]) -> Span:
    """Return from when a portion's finished strips are in hand until they are packed."""
    spans = {task.kind: span for task, span in found}
    return Span(spans["unload"].start, spans["pack"].end)


def _raw_work(found: Iterable[tuple[Task, Span]]) -> Iterator[Span]:
    """Yield when raw meat is in hand: from the first touch to the washing up after it is one."""
    at = end = None
    for task, span in sorted(found, key=itemgetter(1)):
        if task.kind in WASHED:
            yield Span(span.start if at is None else at, span.end)
            at = None
        elif task.raw and task.attended:
            at, end = span.start if at is None else at, span.end
        elif task.raw:
            yield from _busy([(task, span)])
    if at is not None and end is not None:
        yield Span(at, end)


def _busy(found: Iterable[tuple[Task, Span]]) -> Iterator[Span]:
    """Yield when somebody has hands on tasks: all the while, or as they are begun."""
    for task, span in found:
        held = task.by_hand(span)
        if held is not None:
            yield held


def _in_a_row(tasks: Sequence[Task], begin: int) -> Iterator[tuple[Task, Span]]:
    for task in tasks:
        yield task, Span(begin, begin + task.minutes)
        begin += task.minutes


def _outwards(wanted: int, least: int, most: int) -> Iterator[int]:
    """Yield the wanted value, then those around it, within a range."""
    yield wanted
    for off in range(GRID, max(wanted - least, most - wanted) + GRID, GRID):
        if wanted - off >= least:
            yield wanted - off
        if wanted + off <= most:
            yield wanted + off
