"""What a plan was counted with: trays, drying hours, the heat step, time out of the cold."""

from __future__ import annotations

from collections.abc import Iterator

from tarebook.figures.sources import sources
from tarebook.kitchen.profile import CM2_PER_FT2
from tarebook.plan.cold import longest_held_min, warm_of
from tarebook.plan.heat import COSTS, WORDS
from tarebook.plan.jobs import Job
from tarebook.plan.make import Plan
from tarebook.plan.steps import hours_words
from tarebook.plan.words import said_at
from tarebook.quantities.words import format_pounds
from tarebook.safety.rulebook import air_words, both_scales, citations, degrees, limit, span
from tarebook.safety.soak import raw_days

_ASKED_AS = {step: word for word, step in WORDS.items()}


def counted(plan: Plan, at: int, job: Job) -> Iterator[str]:
    """Yield what one recipe of a plan was counted with, a paragraph each."""
    yield _trays_words(plan, job)
    hours = job.hours
    bodies = dict.fromkeys(
        sources()[one].publisher or sources()[one].title for one in hours.sources
    )
    by = f" [{'; '.join(bodies)}]" if bodies else ""
    yield (
        f"Drying: low {about(hours.low_h)}, likely {about(hours.likely_h)}, high "
        f"{about(hours.high_h)}: {hours.why}{by}. Room, load and dryer are in none of these."
    )
    yield _heat_words(job)
    if job.case.is_flesh:
        yield _cold_words(plan, at, job)


def _trays_words(plan: Plan, job: Job) -> str:
    area = f"{job.needed_cm2 / CM2_PER_FT2:.1f} sq ft ({job.needed_cm2:,.0f} cm²)"
    thick = job.case.recipe.meat.thickness_written or "1/4 in, since none is stated"
    rule = f"Trays: {area} at {thick}, by 1 sq ft a pound at 1/4 in (own working value)"
    if plan.dryer.tray_cm2 is None:
        return f"{rule}."
    name = "racks" if plan.dryer.oven else "trays"
    needed = sum(load.trays for load in job.loads)
    loads = " + ".join(f"{load.trays} ({format_pounds(load.meat_g)})" for load in job.loads)
    count = "1 load" if len(job.loads) == 1 else f"{len(job.loads)} loads"
    each = plan.dryer.tray_cm2 / CM2_PER_FT2
    return f"{rule}; {needed} {name} of {each:.2f} sq ft, {count}: {loads}."


def _heat_words(job: Job) -> str:
    choice = job.choice
    cost = COSTS.get(choice.step)
    said = f"Heat step: {choice.step.value}, {choice.why}."
    if cost:
        said += f" Strips: {cost} (common practice, no source)."
    if choice.step is not job.recipe.heat and choice.step in _ASKED_AS:
        said += (
            f" Card and labels: print them with --heat {_ASKED_AS[choice.step]}, so that their "
            "figures are for it."
        )
    if choice.others:
        rest = "; ".join(f"{one.value} ({COSTS[one]})" for one in choice.others)
        said += f" May be had instead, with --heat: {rest}."
    return said


def _cold_words(plan: Plan, at: int, job: Job) -> str:
    warm = warm_of(job, at, plan.placed)
    between, passing = (
        degrees(rule, "warm").replace(" to ", " and ") for rule in ("out-of-cold", "come-up")
    )
    in_hand = "pressed and cut" if job.case.ground else "put in its marinade, drained or laid out"
    said = (
        f"Between {between}, counted as if all of it lay out: {warm.board_min} min at the board "
        f"and {warm.hands_min} min {in_hand}, of "
        f"{limit('out-of-cold', 'out') * 60:g} in all, "
        f"{limit('out-of-cold', 'out-hot-day') * 60:g} where it is above "
        f"{degrees('out-of-cold', 'hot-day')} [{citations('out-of-cold')}]."
    )
    if job.case.ground:
        said += (
            " Meat that you grind yourself is out for longer: grind it cold, and count that too."
        )
    if warm.heating_min:
        hot = both_scales(span("out-of-cold", "warm")[1])
        said += (
            f" From the first piece heated to the last on its tray {warm.heating_min} min: kept "
            f"above {hot} on the stove till then, or counted with the others."
        )
    cool_f = span("out-of-cold", "warm")[1]
    if job.air_f[0] < cool_f:
        dry = max(one.end - one.start for one in plan.placed if one.kind == "dry")
        said += (
            f" In the dryer, at {air_words(job.air_f)}, it lies between them for "
            f"{hours_words(dry)} more: FSIS gives that for meat that has been heated, and for no "
            "other."
        )
    if job.batch.raw:
        said += (
            " In the dryer, raw, it stays below the air's heat as long as it is wet: how long it "
            f"lies between {passing} nobody can tell from here, and "
            f"{limit('come-up', 'time'):g} hours in all is the limit [{citations('come-up')}]: "
            "heat it first, if you can."
        )
    if not job.frozen and warm.held_min <= longest_held_min(job):
        days = raw_days(job.case)
        since = said_at(warm.heated_at - round(days * 24 * 60), plan.zone)
        said += (
            f" Bought or thawed: not before {since}, since raw it keeps {days:g} days "
            f"[{citations('raw-holding')}]."
        )
    return said


def about(hours: float) -> str:
    """Return hours in words."""
    return hours_words(hours * 60)
