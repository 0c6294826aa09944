"""What is good to know of a plan: hours, clocks, nights, and what overlaps."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from datetime import timedelta, tzinfo

from tarebook.clocks.zones import clock
from tarebook.figures.working import value
from tarebook.kitchen.keys import BY_PATH
from tarebook.plan.conflicts import Said, load_name
from tarebook.plan.jobs import Job
from tarebook.plan.nights import Window, window_words
from tarebook.plan.steps import Step, hours_words
from tarebook.plan.tasks import Placed, Span
from tarebook.plan.turns import wanted_turns
from tarebook.plan.words import said_at, said_time
from tarebook.recipe.model import HeatStep
from tarebook.safety.method import NOBODY_CHECKED
from tarebook.safety.rulebook import both_scales, degrees
from tarebook.safety.steps import check_steps

_BOILING_F, _M_PER_FT, _HIGH_M = 212, 0.3048, 600
_LONG_WORK = ("trim", "slice", "knead", "drain", "simmer", "steam", "boil-down", "form", "load")


def notes_of(
    jobs: Sequence[Job],
    placed: Sequence[Placed],
    steps: Sequence[Step],
    by: str,
    zone: tzinfo,
    quiet: Sequence[Span],
    *,
    night: Window,
    nights_asked: bool,
) -> tuple[Said, ...]:
    """Return what is good to know of a plan: hours, clocks, nights, and what overlaps."""
    found = [
        Said(
            f"planned with the {by} drying hours"
            + (
                "; a batch that is dry enough sooner goes on to its next step"
                if by == "high"
                else "; what is not dry by then goes on, and all that follows moves back"
            )
        )
    ]
    if any(job.case.is_flesh and not job.oven and not job.air_known for job in jobs):
        found.append(
            Said(
                "how hot the dryer gets is not known, and for meat it must hold "
                f"{degrees('fixed-dryer', 'dryer-air')} or more",
                'tell it once: tarebook kitchen set dryer.temperature "'
                f'{BY_PATH["dryer.temperature"].example}"',
                "fixed-dryer",
            )
        )
    if any(job.recipe.steps for job in jobs):
        found.append(Said(f"the recipe's own steps are on its card; {_own_steps(jobs)}"))
    found += _cure_notes(jobs, placed)
    found += _height_notes(jobs)
    found += _clock_notes(placed, zone)
    found += _turn_notes(jobs, placed, steps, quiet, night)
    if not nights_asked:
        found += _night_notes(steps, zone, quiet, night)
    found += _overlap_notes(jobs, placed, zone)
    return tuple(found)


def _own_steps(jobs: Sequence[Job]) -> str:
    """Return how far a cook goes by the recipe's own steps."""
    told = NOBODY_CHECKED
    if any(job.case.recipe.steps_heat for job in jobs):
        told += "; what they say of heat and hours is for another heat step"
    if any(check_steps(job.case) for job in jobs):
        told += "; those named above are not to be followed"
    return told


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


def _cure_notes(jobs: Sequence[Job], placed: Sequence[Placed]) -> Iterator[Said]:
    """Yield how long each load lies with its curing salt, where that is not the same for all."""
    for at, job in enumerate(jobs):
        soaks = [
            one
            for one in placed
            if (one.kind, one.batch) == ("soak", at) and one.load not in job.uncured
        ]
        if job.cured_by_load and len({one.end - one.start for one in soaks}) > 1:
            told = ", ".join(
                f"{load_name(one, jobs)} {hours_words(one.end - one.start)}" for one in soaks
            )
            yield Said(
                f"with its curing salt lies {told}: as near to each other as the day leaves room"
            )


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


def _turn_notes(
    jobs: Sequence[Job],
    placed: Sequence[Placed],
    steps: Sequence[Step],
    quiet: Sequence[Span],
    night: Window,
) -> Iterator[Said]:
    """Yield what became of the turnings of a soak that would have fallen into the night."""
    late = left = 0
    for one in placed:
        if one.kind == "soak" and jobs[one.batch].case.soaked:
            wanted = wanted_turns(one.span)
            done = [
                each for each in steps
                if (each.kind, each.job, each.load) == ("turn", one.batch, one.load)
            ]  # fmt: skip
            asleep = sum(any(map(Span(at, at + 1).meets, quiet)) for at in wanted)
            late += asleep
            left += min(len(wanted) - len(done), asleep)
    if late:
        told = {"moved to evening or morning": late - left, "left out": left}
        yield Said(
            f"{late} turning{'s' if late > 1 else ''} of a soak would fall between "
            f"{window_words(night)}, and nobody gets up for that: "
            + ", ".join(f"{count} {what}" for what, count in told.items() if count)
        )


def _night_notes(
    steps: Sequence[Step], zone: tzinfo, quiet: Sequence[Span], night: Window
) -> Iterator[Said]:
    """Yield how much of the work falls into the night, where nobody asked to be left alone."""
    late = [one for one in steps if one.attended and any(map(one.span.meets, quiet))]
    if late:
        first = f'"{late[0].what}", {said_at(late[0].start, zone)}'
        many = len(late) > 1
        yield Said(
            (
                f"{len(late)} of these steps fall between"
                if many
                else "1 of these steps falls between"
            )
            + f" {window_words(night)}; {'the first' if many else 'it'} is {first}",
            f"add --no-nights {window_words(night, '-')} to keep out of the night",
        )


def _overlap_notes(jobs: Sequence[Job], placed: Sequence[Placed], zone: tzinfo) -> Iterator[Said]:
    """Yield what is done while another load dries, and what dries side by side."""
    drying = [one for one in placed if one.kind == "dry"]
    for place, one in enumerate(drying):
        for other in drying[place + 1 :]:
            if one.span.meets(other.span):
                start, end = max(one.start, other.start), min(one.end, other.end)
                yield Said(
                    f"{load_name(one, jobs)} and {load_name(other, jobs)} share the dryer from "
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
            names = dict.fromkeys(load_name(each, jobs) for each in work)
            yield Said(
                f"while {load_name(one, jobs)} dries you get {' and '.join(names)} ready, "
                f"{said_time(first, zone)} to {said_at(last, zone)}"
            )
