"""The whole plan: when everything is done, what overlaps, and what does not go as asked."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from datetime import tzinfo

from tarebook.findings import AskedWrongly
from tarebook.plan.cold import held_min, longest_held_min, warm_of
from tarebook.plan.conflicts import Said, conflicts_of, night_conflict
from tarebook.plan.jobs import Job
from tarebook.plan.nights import USUAL, Window, window_words
from tarebook.plan.nights import nights as nights_between
from tarebook.plan.notes import notes_of
from tarebook.plan.parted import first_loads, thawed_by_load
from tarebook.plan.place import GRID, HORIZON, place_back, place_from
from tarebook.plan.steps import Step, steps_of
from tarebook.plan.tasks import Placed, Span
from tarebook.plan.trays import Dryer
from tarebook.plan.words import said_at
from tarebook.tuples import NamedTuple

_WORTH_A_WORD = 60


class Wish(NamedTuple):
    """What is asked of a plan.

    Attributes:
        now: this minute.
        ready: the minute by which all must be packed, or None.
        start: the first minute in which anything may be done, or None; now where neither is given.
        nights: clock times between which nobody is to be needed, or None.
        by: which drying hours it is planned with.
    """

    now: int
    ready: int | None = None
    start: int | None = None
    nights: Window | None = None
    by: str = "high"


class Plan(NamedTuple):
    """A plan.

    Attributes:
        jobs: the recipes.
        dryer: what they dry on.
        wish: what was asked.
        zone: of its clock times.
        placed: every task with its time.
        steps: the same in words, with what is done in between.
        conflicts: what does not go as asked, with what to do instead.
        notes: what is good to know.
    """

    jobs: tuple[Job, ...]
    dryer: Dryer
    wish: Wish
    zone: tzinfo
    placed: tuple[Placed, ...]
    steps: tuple[Step, ...]
    conflicts: tuple[Said, ...]
    notes: tuple[Said, ...]

    @property
    def span(self) -> Span:
        """From the first thing to do to the last."""
        return Span(self.placed[0].start, max(one.end for one in self.placed))


def make_plan(jobs: Sequence[Job], dryer: Dryer, wish: Wish, zone: tzinfo) -> Plan:
    """Return the plan for one or several recipes on one dryer.

    Args:
        jobs: the recipes at today's weights.
        dryer: what they dry on.
        wish: when, and what is to be avoided.
        zone: of the clock.

    Returns:
        The plan that was asked for; where it cannot be had, the nearest to it, and why.
    """
    placer = _Placer(jobs, dryer, wish, zone)
    placed, conflicts = placer.place()
    for parted in (_by_load, *[_within_limit] * max(len(job.loads) for job in jobs)):
        otherwise = parted(jobs, placed)
        if otherwise != tuple(jobs):
            jobs = otherwise
            placer = _Placer(jobs, dryer, wish, zone)
            placed, conflicts = placer.place()
    plan = Plan(
        jobs=tuple(jobs),
        dryer=dryer,
        wish=wish,
        zone=zone,
        placed=placed,
        steps=steps_of(
            jobs,
            placed,
            placer.nights if placer.awake else (),
            placer.quiet,
            way_out="" if wish.nights else f"--no-nights {window_words(placer.night, '-')}",
        ),
        conflicts=(),
        notes=(),
    )
    found = (*conflicts, *conflicts_of(plan.jobs, dryer, placed, plan.steps))
    begun = placer.said_of_the_ends(placed)
    notes = notes_of(
        plan.jobs, placed, plan.steps, wish.by, zone, placer.quiet,
        night=placer.night, nights_asked=bool(wish.nights),
    )  # fmt: skip
    return plan._replace(conflicts=found, notes=(*begun, *notes))


def _by_load(jobs: Sequence[Job], placed: Sequence[Placed]) -> tuple[Job, ...]:
    """Return the jobs; one that would wait raw for too long is thawed load by load instead."""
    return tuple(
        thawed_by_load(job)
        if job.frozen
        and job.case.is_flesh
        and len(job.loads) > 1
        and not job.case.ground
        and warm_of(job, at, placed).held_min > longest_held_min(job)
        else job
        for at, job in enumerate(jobs)
    )


def _within_limit(jobs: Sequence[Job], placed: Sequence[Placed]) -> tuple[Job, ...]:
    """Return the jobs; one whose last loads would wait raw for too long goes without them."""
    found = []
    for at, job in enumerate(jobs):
        loads = range(1, len(job.loads) + 1)
        in_time = sum(held_min(job, at, placed, one) <= longest_held_min(job) for one in loads)
        too_long = job.case.is_flesh and len(loads) > 1 and in_time < len(loads)
        found.append(first_loads(job, max(in_time, 1)) if too_long else job)
    return tuple(found)


class _Placer:
    """Tries what was asked, and what is nearest to it where that cannot be had."""

    def __init__(self, jobs: Sequence[Job], dryer: Dryer, wish: Wish, zone: tzinfo) -> None:
        self.jobs = jobs
        self.batches = [job.batch for job in jobs]
        most = max(portion.trays for batch in self.batches for portion in batch.portions)
        self.trays = max(dryer.trays or most, most)
        self.wish = wish
        self.zone = zone
        self.nights = self._spans(wish.nights) if wish.nights else []
        self.awake = bool(self.nights)
        self.by_night = False

    @property
    def night(self) -> Window:
        """The night in which nobody gets up to turn a soak: the cook's own, or the usual one."""
        return self.wish.nights if self.wish.nights and self.awake else USUAL

    @property
    def quiet(self) -> list[Span]:
        """The same, as spans."""
        return self._spans(self.night)

    @property
    def start(self) -> int:
        """The first minute in which anything may be done, on the grid."""
        asked = self.wish.start if self.wish.start is not None else self.wish.now
        return -(-asked // GRID) * GRID

    def place(self) -> tuple[tuple[Placed, ...], list[Said]]:
        """Return the plan, and what does not go as asked."""
        conflicts: list[Said] = []
        if self.wish.ready is not None:
            placed = self._first(lambda: self.back(self.wish.ready or 0), conflicts)
            if placed[0].start >= self.wish.now:
                return placed, conflicts
            conflicts.append(self._too_soon(placed))
            soonest = self._first(lambda: self.forward(self.wish.now), conflicts)
            conflicts[-1] = conflicts[-1]._replace(do=self._earliest(soonest))
            return soonest, conflicts
        placed = self._first(lambda: self.forward(self.start), conflicts)
        conflicts += self._said_of_nights(placed)
        if self.wish.start is not None and self.wish.start < self.wish.now - GRID:
            conflicts.append(
                Said(f"the start, {self._at(self.wish.start)}, is past", "say a later --start")
            )
        return placed, conflicts

    def said_of_the_ends(self, placed: Sequence[Placed]) -> list[Said]:
        """Return why a plan begins later, or ends sooner, than was asked."""
        first, last = placed[0].start, max(one.end for one in placed)
        if self.wish.ready is None and first - self.start >= _WORTH_A_WORD:
            when = "now"
            if self.wish.start is not None:
                when = f"at the hour asked, {self._at(self.wish.start)}"
            return [
                Said(f"nothing is won by beginning {when}: it would end no sooner, {self._since()}")
            ]
        if self.wish.ready is not None and _WORTH_A_WORD <= self.wish.ready - last:
            asked = self._at(self.wish.ready)
            return [Said(f"it is ready before the hour asked, {asked}, to keep out of the night")]
        return []

    def back(self, ready: int, *, free: bool = False) -> tuple[Placed, ...] | None:
        """Return the plan that ends by a minute."""
        return place_back(
            self.batches,
            ready=ready,
            trays=self.trays,
            nights=() if free or not self.awake else self.nights,
            dry_by_night=self.by_night,
        )

    def forward(self, start: int, *, free: bool = False) -> tuple[Placed, ...] | None:
        """Return the plan that begins no sooner than a minute, and ends soonest."""
        found = place_from(
            self.batches,
            start=-(-start // GRID) * GRID,
            trays=self.trays,
            nights=() if free or not self.awake else self.nights,
            dry_by_night=self.by_night,
        )
        return None if found is None else found[0]

    def _first(
        self, plan: Callable[[], tuple[Placed, ...] | None], conflicts: list[Said]
    ) -> tuple[Placed, ...]:
        """Return a plan, giving up first the dryer's rest by night, then the cook's."""
        found = plan()
        if found is None and self.awake:
            self.by_night = True
            found = plan()
            conflicts.append(
                Said(
                    "soak, heat and drying find no room between the nights you named, so "
                    + (
                        "the oven, its door propped, runs through them here, and somebody has to "
                        "stay up with it"
                        if any(job.propped for job in self.jobs)
                        else "the dryer runs through them here, and nobody looks at it then"
                    ),
                    "plan with --by likely, cut thinner, dry less at once, or begin it earlier",
                )
            )
        if found is None and self.awake:
            self.awake = False
            found = plan()
            conflicts[-1] = Said(
                "no plan keeps out of the nights you named, so this one does not",
                "name a shorter night, or dry less at once",
            )
        if found is None:
            raise AskedWrongly("that is more than two weeks of drying; plan less at once")
        return found

    def _earliest(self, soonest: Sequence[Placed]) -> str:
        """Return when the plan that follows ends, and why it does not begin at once."""
        first, last = soonest[0].start, max(one.end for one in soonest)
        if first - self.wish.now < _WORTH_A_WORD:
            return f"begun now, the earliest is {self._at(last)}: that plan follows"
        said = (
            f"the earliest is {self._at(last)}: that plan follows, and begins {self._at(first)}; "
            f"begun sooner it would end no sooner, {self._since()}"
        )
        free = self.forward(self.wish.now, free=True) if self.awake and self.nights else None
        ends = last if free is None else max(one.end for one in free)
        if ends < last:
            said += f"; without --no-nights it could be ready {self._at(ends)}"
        return said

    def _since(self) -> str:
        """Return why an earlier start than the plan's would win nothing."""
        if not (self.awake and self.nights):
            return "since one dryer and one pair of hands do all of it"
        rests = "" if self.by_night else ", and the dryer rests"
        return f"since nobody is needed between {window_words(self.night)}{rests}"

    def _too_soon(self, placed: Sequence[Placed]) -> Said:
        return Said(
            f"to be ready by {self._at(self.wish.ready or 0)} it would have had to begin "
            f"{self._at(placed[0].start)}, which is past",
            "",
        )

    def _said_of_nights(self, placed: Sequence[Placed]) -> list[Said]:
        if not (self.awake and self.nights):
            return []
        naive = self.forward(self.start, free=True)
        if naive is None:
            return []
        found = night_conflict(
            naive, placed, self.nights, self.jobs, self.zone,
            sooner=lambda ready: self.back(ready), now=self.wish.now,
        )  # fmt: skip
        return [found] if found else []

    def _spans(self, window: Window) -> list[Span]:
        """Return every such night around the plan."""
        middle = self.wish.ready if self.wish.ready is not None else self.start
        since, until = middle - 2 * HORIZON, middle + 3 * HORIZON
        return list(nights_between(*window, self.zone, since=since, until=until))

    def _at(self, minute: int) -> str:
        return said_at(minute, self.zone)
