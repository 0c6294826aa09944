"""What does not go as asked, with what to do instead; and what is good to know of a plan."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from datetime import timedelta, tzinfo

from tarebook.clocks.zones import clock
from tarebook.figures.foods import food
from tarebook.figures.working import value
from tarebook.kitchen.keys import BY_PATH
from tarebook.plan.cold import longest_held_min, warm_of
from tarebook.plan.jobs import Job
from tarebook.plan.steps import Step, hours_words
from tarebook.plan.tasks import Placed, Span
from tarebook.plan.trays import Dryer
from tarebook.plan.words import said_at, said_time
from tarebook.recipe.model import HeatStep
from tarebook.safety.case import Animal
from tarebook.safety.rulebook import (
    air_words,
    both_scales,
    citations,
    degrees,
    foods_of,
    limit,
)
from tarebook.tuples import NamedTuple

_LATE, _EARLY = 23, 6
_BOILING_F, _M_PER_FT, _HIGH_M = 212, 0.3048, 600
_CM2_PER_FT2 = 929.0304
_LONG_WORK = ("trim", "slice", "knead", "drain", "simmer", "steam", "boil-down", "form", "load")


class Said(NamedTuple):
    """Something to say of a plan.

    Attributes:
        text: what is so, a clause without capital or stop.
        do: what to do instead, likewise, or nothing.
        cites: ids of the rules it stands on, joined by ``; ``, or nothing.
    """

    text: str
    do: str = ""
    cites: str = ""

    @property
    def sentence(self) -> str:
        """All of it: what is so, what to do, and who says so."""
        parts = [f"{one[0].upper()}{one[1:]}." for one in (self.text, self.do) if one]
        source = f" [{citations(self.cites)}]" if self.cites else ""
        return " ".join(parts) + source


def conflicts_of(
    jobs: Sequence[Job], dryer: Dryer, placed: Sequence[Placed], steps: Sequence[Step]
) -> tuple[Said, ...]:
    """Return everything that is at odds with a rule or cannot be as the recipe says."""
    found: list[Said] = []
    found += _trays_conflicts(jobs, dryer)
    for at, job in enumerate(jobs):
        lead = f"{job.recipe.title}: " if len(jobs) > 1 else ""
        for one in (
            *_heat_conflicts(job),
            *_freezing_conflicts(job),
            *_dryer_conflicts(job, dryer),
            *_soak_conflicts(job),
            *_cold_conflicts(job, at, placed),
        ):
            found.append(one._replace(text=lead + one.text))
    return tuple(dict.fromkeys(found))


def night_conflict(
    naive: Sequence[Placed],
    placed: Sequence[Placed],
    nights: Sequence[Span],
    jobs: Sequence[Job],
    zone: tzinfo,
    *,
    sooner: Callable[[int], tuple[Placed, ...] | None],
    now: int,
) -> Said | None:
    """Return what would have fallen into a night, and when to begin instead.

    Args:
        naive: the plan that minds no night.
        placed: the plan that does.
        nights: the nights.
        jobs: the recipes.
        zone: of the clock.
        sooner: returns the plan that ends by a minute.
        now: this minute.
    """
    found = _first_by_night(naive, nights)
    if found is None:
        return None
    one, night = found
    name = _load_name(one, jobs)
    what = f"{name} would end in the night, {said_at(one.end, zone)}"
    if one.kind != "dry":
        what = f"{name} would need you in the night, {said_at(one.start, zone)}"
    other = sooner(night.start)
    wait = f"this plan waits and ends {said_at(max(each.end for each in placed), zone)}"
    if other is not None and other[0].start >= now:
        return Said(what, f"start by {said_at(other[0].start, zone)}, instead; otherwise {wait}")
    return Said(what, wait)


def notes_of(
    jobs: Sequence[Job],
    placed: Sequence[Placed],
    steps: Sequence[Step],
    by: str,
    zone: tzinfo,
    *,
    nights_asked: bool,
) -> tuple[Said, ...]:
    """Return what is good to know of a plan: hours, clocks, nights, and what overlaps."""
    found = [
        Said(
            f"planned with the {by} drying hours"
            + ("; a batch that is done sooner goes on to its next step" if by == "high" else "")
        )
    ]
    found += _height_notes(jobs)
    found += _clock_notes(placed, zone)
    if not nights_asked:
        found += _night_notes(steps, zone)
    found += _overlap_notes(jobs, placed, zone)
    return tuple(found)


def _trays_conflicts(jobs: Sequence[Job], dryer: Dryer) -> Iterator[Said]:
    place = "oven" if dryer.oven else "dryer"
    needed = sum(job.needed_cm2 for job in jobs)
    area = f"about {needed / _CM2_PER_FT2:.1f} sq ft ({needed:,.0f} cm²)"
    if dryer.oven:
        count, size = "oven.racks", "oven.rack"
    else:
        count, size = "dryer.trays", "dryer.tray"
    if dryer.tray_cm2 is None or dryer.trays is None:
        unknown = [
            key for key, known in ((count, dryer.trays), (size, dryer.tray_cm2)) if not known
        ]
        yield Said(
            f"how much the {place} holds is not known, so each recipe is planned as one load; it "
            f"takes {area} of tray",
            f'tell it once: tarebook kitchen set {unknown[0]} "{BY_PATH[unknown[0]].example}"',
        )


def _heat_conflicts(job: Job) -> Iterator[Said]:
    if job.choice.refused:
        yield Said(
            f"the recipe says {job.recipe.heat.value}, but {job.choice.refused}",
            f"planned here: {job.choice.step.value}, to {job.case.inside} inside",
        )


def _freezing_conflicts(job: Job) -> Iterator[Said]:
    rules = {Animal.PORK: "pork-freezing", Animal.FISH: "fish-freezing"}
    rule = rules.get(job.case.animal)
    if rule and not (rule == "fish-freezing" and job.case.food.key in foods_of(f"{rule}-exempt")):
        yield Said(
            f"this plan takes for granted that the {job.case.animal.value} has been frozen for "
            f"{limit(rule, 'time'):g} days at {degrees(rule, 'freezer')} or below",
            "if it has not, freeze it first and plan anew",
            rule,
        )


def _dryer_conflicts(job: Job, dryer: Dryer) -> Iterator[Said]:
    least = limit("dryer-145", "dryer-air")
    if job.case.is_meat and dryer.adjustable is False:
        yield Said(
            "the dryer's heat cannot be set, and such a dryer is not recommended for meat",
            "dry in an oven or another dryer",
            "fixed-dryer",
        )
    elif job.case.is_meat and dryer.heat_f is not None and dryer.heat_f[1] < least:
        yield Said(
            f"the dryer goes no hotter than {both_scales(dryer.heat_f[1])}, and "
            f"{degrees('dryer-145', 'dryer-air')} is asked for meat",
            "dry in an oven or another dryer",
            "fixed-dryer; dryer-145",
        )
    if job.air_f != job.wanted_f and (
        job.air_f[1] < job.wanted_f[0] or job.air_f[0] > job.wanted_f[1]
    ):
        hotter = job.air_f[0] > job.wanted_f[1]
        yield Said(
            f"the {'oven' if dryer.oven else 'dryer'} is set to {air_words(job.air_f)}, the recipe "
            f"asks for {air_words(job.wanted_f)}",
            "hotter, the outside may harden before the inside is dry (common practice, no source): "
            "prop the door a little, and look sooner"
            if hotter
            else "cooler, it takes longer than planned with",
        )


def _soak_conflicts(job: Job) -> Iterator[Said]:
    hours = limit("soak-day", "soak")
    if job.soak_capped:
        yield Said(
            f"the recipe soaks for {job.recipe.soak.hours_written or 'longer'} h; planned here is "
            f"the cautious limit, {hours:g} h",
            "freeze meat that must wait longer",
            "soak-day",
        )
    if job.case.ground and job.case.soaked:
        yield Said(
            "ground meat is not soaked, so the marinade is kneaded in here",
            "write it under [mixed-in]",
            "ground-meat",
        )
    if job.bowls_told and job.bowl_ml and job.bowl is None:
        yield Said(
            f"a load with its marinade takes about {job.bowl_ml / 1000:.1f} L, more than any bowl "
            "or bag you told of",
            "part it between two",
        )


def _cold_conflicts(job: Job, at: int, placed: Sequence[Placed]) -> Iterator[Said]:
    if not job.case.is_flesh:
        return
    warm = warm_of(job, at, placed)
    most = limit("out-of-cold", "out") * 60
    if warm.out_min > most:
        yield Said(
            f"trimming, slicing and handling take {hours_words(warm.out_min)}; if the meat lay out "
            f"all that while it would be over the {most / 60:g} hours between "
            f"{degrees('out-of-cold', 'warm').replace(' to ', ' and ')} that are allowed in all",
            f"work in {warm.lots} lots, each out of the refrigerator for an hour at most",
            "out-of-cold",
        )
    held = longest_held_min(job)
    if warm.held_min > held:
        yield Said(
            f"raw meat would wait {hours_words(warm.held_min)} in the refrigerator, and "
            f"{held // 1440} days is the cautious limit for {_held_as(job)}",
            "dry less at once, and freeze the rest until its own day",
            "raw-holding",
        )


def _held_as(job: Job) -> str:
    """Return what the limit of waiting is for; no own one is held for fish."""
    if job.case.animal is Animal.FISH:
        return "poultry, and none is held for fish"
    return food(job.recipe.meat.food).name


def _first_by_night(naive: Sequence[Placed], nights: Sequence[Span]) -> tuple[Placed, Span] | None:
    """Return the first load that ends drying by night, or else the first work that falls in one."""
    for one in naive:
        night = next((night for night in nights if night.start < one.end <= night.end), None)
        if one.kind == "dry" and night is not None:
            return one, night
    for one in naive:
        night = next((night for night in nights if night.meets(one.span)), None)
        if night is not None and one.attended:
            return one, night
    return None


def _load_name(one: Placed, jobs: Sequence[Job]) -> str:
    job = jobs[one.batch]
    title = f" of {job.recipe.title}" if len(jobs) > 1 else ""
    if len(job.loads) == 1 or not one.load:
        return f"the batch{title}"
    return f"{_ordinal(one.load)} load{title}"


def _ordinal(number: int) -> str:
    words = ("first", "second", "third", "fourth", "fifth", "sixth")
    return f"the {words[number - 1]}" if number <= len(words) else f"number {number}: the"


def _clock_notes(placed: Sequence[Placed], zone: tzinfo) -> Iterator[Said]:
    first, last = placed[0].start, max(one.end for one in placed)
    offsets = {minute: _offset(minute, zone) for minute in range(first, last + 1, 30)}
    before = offsets[first]
    for minute, offset in offsets.items():
        if offset != before:
            ahead = "forward" if offset > before else "back"
            yield Said(
                f"the clocks go {ahead} on {said_at(minute, zone).partition(',')[0]}; every length "
                "here is true time, whatever the clock says"
            )
            before = offset


def _height_notes(jobs: Sequence[Job]) -> Iterator[Said]:
    """Yield how hot water boils where the kitchen stands, if it is high and meat is boiled."""
    boiled = (HeatStep.SIMMERED, HeatStep.BOILED_DOWN)
    height_m = next((job.altitude_m for job in jobs if job.choice.step in boiled), None)
    if height_m is None or height_m < _HIGH_M:
        return
    boils_f = _BOILING_F - value("boiling-height").likely * height_m / _M_PER_FT / 1000
    yield Said(
        f"water boils at about {both_scales(boils_f)} at the height of this house (from memory)",
        "go by the thermometer in the thickest piece, not by the minutes",
    )


def _offset(minute: int, zone: tzinfo) -> timedelta:
    return clock(minute, zone).utcoffset() or timedelta(0)


def _night_notes(steps: Sequence[Step], zone: tzinfo) -> Iterator[Said]:
    late = [
        one for one in steps if one.attended and not _EARLY <= clock(one.start, zone).hour < _LATE
    ]
    if late:
        yield Said(
            f"{len(late)} of these steps fall between {_LATE}:00 and 0{_EARLY}:00; the first is "
            f"{said_at(late[0].start, zone)}",
            "add --no-nights 22:00-06:00 to keep out of the night",
        )


def _overlap_notes(jobs: Sequence[Job], placed: Sequence[Placed], zone: tzinfo) -> Iterator[Said]:
    """Yield what is done while another load dries, and what dries side by side."""
    drying = [one for one in placed if one.kind == "dry"]
    for place, one in enumerate(drying):
        for other in drying[place + 1 :]:
            if one.span.meets(other.span):
                start, end = max(one.start, other.start), min(one.end, other.end)
                yield Said(
                    f"{_load_name(one, jobs)} and {_load_name(other, jobs)} share the dryer from "
                    f"{said_time(start, zone)} to {said_at(end, zone)}",
                    "trays put in later go below those that are further on"
                    if one.start != other.start
                    else "",
                )
    for one in drying:
        work = [
            other
            for other in placed
            if other.kind in _LONG_WORK
            and (other.batch, other.load) != (one.batch, one.load)
            and other.span.meets(one.span)
        ]
        if work:
            first, last = min(each.start for each in work), max(each.end for each in work)
            names = dict.fromkeys(_load_name(each, jobs) for each in work)
            yield Said(
                f"while {_load_name(one, jobs)} dries you get {' and '.join(names)} ready, "
                f"{said_time(first, zone)} to {said_at(last, zone)}"
            )
