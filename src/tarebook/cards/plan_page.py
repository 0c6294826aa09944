"""What ``plan`` prints: the days with their clock times, what was counted, and what to mind."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import groupby
from typing import Any

from tarebook.cards.lines import Line, Style, clean, pad, wrap
from tarebook.cards.sheet import caution_lines
from tarebook.figures.foods import food
from tarebook.figures.sources import sources
from tarebook.figures.task_times import task_times
from tarebook.kitchen.profile import CM2_PER_FT2
from tarebook.plan.cold import warm_of
from tarebook.plan.conflicts import Said
from tarebook.plan.heat import COSTS
from tarebook.plan.jobs import Job
from tarebook.plan.make import Plan
from tarebook.plan.steps import Step, hours_words
from tarebook.plan.words import said_at, said_day, said_time
from tarebook.plan.zones import clock
from tarebook.quantities.words import format_mass_g, format_pounds
from tarebook.safety import Caution, cautions
from tarebook.safety.rulebook import citations, degrees, limit

COLUMNS = 80
ESTIMATES = (
    "Lengths of work are estimates: common practice, no source. A batch is done when a cooled "
    "strip bends, cracks and does not break, and by its weight; never by the clock."
)
_CODES = frozenset(
    {
        "heat-missing", "oven-after", "bear-and-wild-pork", "mushroom-poison", "no-rule",
        "ground-soaked", "heat", "ground", "ground-fat", "dryer-cool", "oven-after-short", "dryer",
        "thickness-over", "soak-far-over", "soak-over", "finish-moist", "cure-handling",
        "pork-freezing", "fish-freezing", "deer-testing", "heat-first", "cold-soak", "cold-hold",
        "used-marinade", "dryer-mild", "gut-shot", "poultry", "raw-splash", "thickness-blank",
    }
)  # fmt: skip
_WHAT, _LONG = 50, 9


def plan_page(plan: Plan, *, zone_name: str) -> Iterator[Line]:
    """Yield a plan, 80 columns.

    Args:
        plan: as made.
        zone_name: what to call its clock.
    """
    yield from _title(plan, zone_name)
    if plan.conflicts:
        yield Line()
        yield Line("Not as asked", Style.HEAD)
        for one in plan.conflicts:
            yield from _item(one.sentence, Style.WARN)
    yield from _days(plan)
    yield Line()
    yield Line("Counted with", Style.HEAD)
    for at, job in enumerate(plan.jobs):
        yield from _counted(plan, at, job)
    yield Line()
    yield Line("Good to know", Style.HEAD)
    for one in plan.notes:
        yield from _item(one.sentence)
    for text in _sources(plan):
        yield from _item(text)
    found = plan_cautions(plan)
    if found:
        yield from caution_lines(found, COLUMNS)


def plan_cautions(plan: Plan) -> tuple[Caution, ...]:
    """Return what the safety rules say of the days of these recipes, each once, gravest first."""
    found = [one for job in plan.jobs for one in cautions(job.case) if one.code in _CODES]
    return tuple({(one.code, one.text): one for one in found}.values())


def plan_data(plan: Plan, *, zone_name: str) -> dict[str, Any]:
    """Return a plan as plain data."""
    return {
        "zone": zone_name,
        "begin": _iso(plan, plan.span.start),
        "ready": _iso(plan, plan.span.end),
        "ready_wanted": None if plan.wish.ready is None else _iso(plan, plan.wish.ready),
        "start_wanted": None if plan.wish.start is None else _iso(plan, plan.wish.start),
        "drying_hours": plan.wish.by,
        "recipes": [_job_data(plan, at, job) for at, job in enumerate(plan.jobs)],
        "steps": [_step_data(plan, one) for one in plan.steps],
        "conflicts": [_said_data(one) for one in plan.conflicts],
        "notes": [_said_data(one) for one in plan.notes],
        "cautions": [one._asdict() for one in plan_cautions(plan)],
    }


def letters(at: int) -> str:
    """Return the letter of a recipe: A, B, C ..."""
    return chr(ord("A") + at) if at < 26 else f"{at + 1}"


def mark_of(plan: Plan, one: Step) -> str:
    """Return which recipe and load a step is for, where there are several: ``B2``, ``load 2``."""
    many = len(plan.jobs[one.job].loads) > 1
    if len(plan.jobs) > 1:
        return letters(one.job) + (str(one.load) if many and one.load else "")
    return f"load {one.load}" if many and one.load else ""


def time_sources(plan: Plan) -> tuple[str, ...]:
    """Return the ids of the published sources of the lengths that a plan uses."""
    kinds = {one.kind for one in plan.steps}
    found = []
    for kind in kinds:
        try:
            found += [one.source for one in task_times(kind) if one.code == "P"]
        except KeyError:
            continue  # soaking, drying, waiting: no work
    return tuple(sorted(set(found)))


def _title(plan: Plan, zone_name: str) -> Iterator[Line]:
    several = len(plan.jobs) > 1
    for at, job in enumerate(plan.jobs):
        lead = f"{letters(at)}  " if several else ""
        yield Line(lead + clean(job.recipe.title), Style.TITLE)
        thick = job.recipe.meat.thickness_written
        name = food(job.recipe.meat.food).name
        yield Line(
            f"{' ' * len(lead)}{format_pounds(job.meat_g)} ({format_mass_g(job.meat_g)}) of "
            f"{name}{f', {thick}' if thick else ''}{', frozen' if job.frozen else ''}"
        )
    first, last = plan.span
    yield from _wrapped(
        f"Begin {said_at(first, plan.zone)}; all packed by {said_at(last, plan.zone)} "
        f"({zone_name})."
    )


def _days(plan: Plan) -> Iterator[Line]:
    for day, steps in groupby(plan.steps, key=lambda one: said_day(one.start, plan.zone)):
        yield Line()
        yield Line(day.upper(), Style.HEAD)
        for one in steps:
            yield from _step_lines(plan, one)


def _step_lines(plan: Plan, one: Step) -> Iterator[Line]:
    mark = mark_of(plan, one)
    what = f"{mark}: {one.what}" if mark else one.what
    first, *more = wrap(clean(what), _WHAT)
    length = hours_words(one.end - one.start)
    until = "" if one.attended else f" to {_until(plan, one)}"
    yield Line(
        f"{said_time(one.start, plan.zone)}  {pad(first, _WHAT)} "
        f"{length:>8}{'  you' if one.attended else until}",
        Style.PLAIN if one.attended else Style.QUIET,
    )
    for text in more:
        yield Line(f"       {text}")
    for note in _notes(plan, one):
        for text in wrap(note, COLUMNS, first="         ", rest="         "):
            yield Line(text, Style.QUIET)


def _until(plan: Plan, one: Step) -> str:
    start, end = clock(one.start, plan.zone), clock(one.end, plan.zone)
    day = "" if start.date() == end.date() else f"{end:%a} "
    return f"{day}{end:%H:%M}"


def _notes(plan: Plan, one: Step) -> Iterator[str]:
    if one.note:
        yield one.note
    if one.kind == "dry":
        hours = plan.jobs[one.job].hours
        spans = [_about(h) for h in (hours.low_h, hours.likely_h, hours.high_h)]
        likely = one.start + round(hours.likely_h * 60)
        yield (
            f"low {spans[0]}, likely {spans[1]} ({said_time(likely, plan.zone)}), high {spans[2]}"
        )


def _about(hours: float) -> str:
    """Return hours to ten minutes: nobody knows them better."""
    return hours_words(round(hours * 6) * 10)


def _counted(plan: Plan, at: int, job: Job) -> Iterator[Line]:
    lead = f"{letters(at)}: " if len(plan.jobs) > 1 else ""
    yield from _item(lead + _trays_words(plan, job))
    hours = job.hours
    bodies = dict.fromkeys(
        sources()[one].publisher or sources()[one].title for one in hours.sources
    )
    by = f" [{'; '.join(bodies)}]" if bodies else ""
    yield from _item(
        f"{lead}Drying: low {_about(hours.low_h)}, likely {_about(hours.likely_h)}, high "
        f"{_about(hours.high_h)}: "
        f"{hours.why}{by}. Room, load and dryer are in none of these."
    )
    yield from _item(f"{lead}{_heat_words(job)}")
    if job.case.is_flesh:
        yield from _item(f"{lead}{_cold_words(plan, at, job)}")


def _trays_words(plan: Plan, job: Job) -> str:
    area = f"{job.needed_cm2 / CM2_PER_FT2:.1f} sq ft ({job.needed_cm2:,.0f} cm²)"
    thick = job.recipe.meat.thickness_written or "1/4 in, since none is stated"
    rule = f"Trays: {area} at {thick}, by 1 sq ft a pound at 1/4 in (own working value)"
    if plan.dryer.tray_cm2 is None:
        return f"{rule}."
    each = plan.dryer.tray_cm2
    needed = sum(load.trays for load in job.loads)
    loads = " + ".join(f"{load.trays} ({format_pounds(load.meat_g)})" for load in job.loads)
    count = "1 load" if len(job.loads) == 1 else f"{len(job.loads)} loads"
    name = "racks" if plan.dryer.oven else "trays"
    return f"{rule}; {needed} {name} of {each / CM2_PER_FT2:.2f} sq ft, {count}: {loads}."


def _heat_words(job: Job) -> str:
    choice = job.choice
    cost = COSTS.get(choice.step)
    said = f"Heat step: {choice.step.value}, {choice.why}."
    if cost:
        said += f" Strips: {cost} (common practice, no source)."
    if choice.others:
        rest = "; ".join(f"{one.value} ({COSTS[one]})" for one in choice.others)
        said += f" May be had instead, with --heat: {rest}."
    return said


def _cold_words(plan: Plan, at: int, job: Job) -> str:
    warm = warm_of(job, at, plan.placed)
    between = degrees("out-of-cold", "warm").replace(" to ", " and ")
    passing = degrees("come-up", "warm").replace(" to ", " and ")
    said = (
        f"Between {between}, counted as if all of it lay out: "
        f"{warm.board_min} min at the board and {warm.hands_min} min in hand, of "
        f"{limit('out-of-cold', 'out') * 60:g} in all, "
        f"{limit('out-of-cold', 'out-hot-day') * 60:g} where it is above "
        f"{degrees('out-of-cold', 'hot-day')} [{citations('out-of-cold')}]."
    )
    if warm.heating_min:
        said += f" Then up to {warm.heating_min} min while it is heated, a few pieces at a time."
    if job.batch.raw:
        said += (
            " In the dryer, raw, it stays below the air's heat as long as it is wet: how long it "
            f"lies between {passing} nobody can tell from here, and "
            f"{limit('come-up', 'time'):g} hours in all is the limit [{citations('come-up')}]."
        )
    return said


def _sources(plan: Plan) -> Iterator[str]:
    yield ESTIMATES
    found = time_sources(plan)
    if found:
        yield "Published lengths: " + "; ".join(_named(one) for one in found) + "."


def _named(source: str) -> str:
    found = sources()[source]
    publisher = f"{found.publisher}: " if found.publisher else ""
    return f"{publisher}{found.title}"


def _job_data(plan: Plan, at: int, job: Job) -> dict[str, Any]:
    warm = warm_of(job, at, plan.placed)
    return {
        "title": job.recipe.title,
        "meat_g": round(job.meat_g, 2),
        "frozen": job.frozen,
        "heat_step": job.choice.step.value,
        "heat_step_why": job.choice.why,
        "air_f": list(job.air_f),
        "hours": {
            "low": round(job.hours.low_h, 3),
            "likely": round(job.hours.likely_h, 3),
            "high": round(job.hours.high_h, 3),
            "why": job.hours.why,
            "sources": list(job.hours.sources),
        },
        "tray_area_cm2": round(job.needed_cm2, 1),
        "loads": [{"meat_g": round(one.meat_g, 2), "trays": one.trays} for one in job.loads],
        "out_of_cold_min": warm.out_min if job.case.is_flesh else None,
        "held_cold_min": warm.held_min,
    }


def _step_data(plan: Plan, one: Step) -> dict[str, Any]:
    return {
        "kind": one.kind,
        "recipe": one.job,
        "load": one.load or None,
        "start": _iso(plan, one.start),
        "end": _iso(plan, one.end),
        "minutes": one.end - one.start,
        "attended": one.attended,
        "what": one.what,
        "note": one.note,
    }


def _said_data(one: Said) -> dict[str, Any]:
    return {"text": one.text, "do": one.do, "cites": one.cites.split("; ") if one.cites else []}


def _iso(plan: Plan, minute: int) -> str:
    return clock(minute, plan.zone).isoformat(timespec="minutes")


def _item(text: str, style: Style = Style.PLAIN) -> Iterator[Line]:
    return (Line(one, style) for one in wrap(text, COLUMNS, first="- ", rest="  "))


def _wrapped(text: str) -> Iterator[Line]:
    return (Line(one) for one in wrap(text, COLUMNS))
