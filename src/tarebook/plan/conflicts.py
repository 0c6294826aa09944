"""What does not go as asked, or is at odds with published advice, with what to do instead."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from datetime import tzinfo

from tarebook.figures.foods import food
from tarebook.kitchen.keys import BY_PATH
from tarebook.plan.cold import longest_held_min, warm_of
from tarebook.plan.jobs import Job, hot_enough
from tarebook.plan.recipe_conflicts import recipe_conflicts
from tarebook.plan.said import AT_ODDS as AT_ODDS
from tarebook.plan.said import Said as Said
from tarebook.plan.steps import Step, hours_words
from tarebook.plan.tasks import Placed, Span
from tarebook.plan.trays import Dryer
from tarebook.plan.words import said_at
from tarebook.quantities.words import format_pounds
from tarebook.safety.case import Animal
from tarebook.safety.rulebook import (
    air_words,
    both_scales,
    degrees,
    limit,
)

_CM2_PER_FT2 = 929.0304
_OVEN_INSTEAD = (
    "dry in an oven or another dryer: tarebook kitchen set dryer.trays 0 plans for the oven"
)
_AIR = ("preheat", "dry")


def conflicts_of(
    jobs: Sequence[Job], dryer: Dryer, placed: Sequence[Placed], steps: Sequence[Step]
) -> tuple[Said, ...]:
    """Return everything that is at odds with a rule or cannot be as the recipe says."""
    found: list[Said] = []
    found += _trays_conflicts(jobs, dryer)
    for at, job in enumerate(jobs):
        lead = f"{job.recipe.title}: " if len(jobs) > 1 else ""
        for one in (
            *recipe_conflicts(job),
            *_dryer_conflicts(job, dryer),
            *_cold_conflicts(job, at, placed),
        ):
            found.append(one._replace(text=lead + one.text, job=at))
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
    name = load_name(one, jobs)
    what = f"{name} would end in the night, {said_at(one.end, zone)}"
    if one.kind != "dry":
        what = f"{name} would need you in the night, {said_at(one.start, zone)}"
    other = sooner(night.start)
    wait = f"this plan waits and ends {said_at(max(each.end for each in placed), zone)}"
    if other is not None and other[0].start >= now:
        return Said(what, f"start by {said_at(other[0].start, zone)}, instead; otherwise {wait}")
    return Said(what, wait)


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
            f'tell it once: tarebook kitchen set {unknown[0]} "{BY_PATH[unknown[0]].example}"'
            + (
                ""
                if dryer.oven
                else "; where there is no dryer, tarebook kitchen set dryer.trays 0"
            ),
        )
    if dryer.oven and dryer.heat_f is None:
        yield Said(
            "the oven's lowest setting is not known, and many do not go this low (common practice, "
            "no source)",
            f'tell it once: tarebook kitchen set oven.lowest "{BY_PATH["oven.lowest"].example}"',
            kinds=_AIR,
        )


def _dryer_conflicts(job: Job, dryer: Dryer) -> Iterator[Said]:
    least = limit("dryer-145", "dryer-air")
    if job.case.is_flesh and dryer.adjustable is False:
        yield Said(
            "the dryer's heat cannot be set, and such a dryer is not recommended for meat",
            _OVEN_INSTEAD,
            "fixed-dryer",
            grave=True,
            kinds=_AIR,
        )
    if job.case.is_flesh and dryer.heat_f is not None and dryer.heat_f[1] < least:
        yield Said(
            f"the dryer goes no hotter than {both_scales(dryer.heat_f[1])}, and "
            f"{degrees('dryer-145', 'dryer-air')} is asked for meat; FSIS gives "
            f"{degrees('dryer-after-heat', 'dryer-air')} for meat that has been heated, as here",
            _OVEN_INSTEAD,
            "fixed-dryer; dryer-145; dryer-after-heat",
            grave=True,
            kinds=_AIR,
        )
    yield from _air_conflicts(job, dryer)


def _air_conflicts(job: Job, dryer: Dryer) -> Iterator[Said]:
    """Yield where the air planned is not the recipe's, and what becomes of the hours."""
    asked = air_words(job.wanted_f)
    if job.propped:
        yield _propped(job)
        return
    planned = f"the {'oven' if dryer.oven else 'dryer'} is set to {air_words(job.air_f)}"
    if job.air_f[1] < job.wanted_f[0]:
        carried = "cooler, the hours here are carried over to it"
        yield Said(f"{planned}, the recipe asks for {asked}", carried, kinds=_AIR)
    elif job.air_f[0] > job.wanted_f[1] and job.air_f == hot_enough(job.case, job.wanted_f):
        yield Said(
            f"the recipe dries at {asked}; planned here at {air_words(job.air_f)}, the cautious "
            "figure",
            "write that under [drying], so that card and labels say it too",
            "dryer-145; oven-after",
            kinds=_AIR,
        )
    elif job.air_f[0] > job.wanted_f[1]:
        yield Said(
            f"{planned}, the recipe asks for {asked}; hotter, the outside may harden before the "
            "inside is dry (common practice, no source)",
            "look sooner, and cut a strip open; the hours here are carried over to it",
            kinds=_AIR,
        )


def _propped(job: Job) -> Said:
    """Return that the oven is held cooler than it can be set, and what if it cannot be."""
    least = f" and at {degrees('dryer-145', 'dryer-air')} or more" if job.case.is_flesh else ""
    return Said(
        f"the oven goes no cooler than {air_words(job.air_f)}, and the recipe asks for "
        f"{air_words(job.wanted_f)}; hotter, the outside may harden before the inside is dry "
        "(common practice, no source)",
        f"the hours here are for the door propped, so that it holds near {air_words(job.held_f)}"
        f"{least} by a thermometer on the rack; not for a gas oven, nor where children are near: "
        "what they do stands at the drying step, and it is ready sooner",
        "dryer-145" if job.case.is_flesh else "",
        kinds=_AIR,
    )


def _cold_conflicts(job: Job, at: int, placed: Sequence[Placed]) -> Iterator[Said]:
    if not job.case.is_flesh:
        return
    warm = warm_of(job, at, placed)
    most = limit("out-of-cold", "out") * 60
    if warm.too_long:
        yield Said(
            f"trimming, slicing and handling take {hours_words(warm.out_min)}; planned here is to "
            f"work in {warm.lots} lots, since meat that lay out all that while would be over the "
            f"{most / 60:g} hours between "
            f"{degrees('out-of-cold', 'warm').replace(' to ', ' and ')} that are allowed in all",
            "have each lot out of the refrigerator for an hour at most",
            "out-of-cold",
            kinds=("trim", "slice"),
        )
    if job.by_load:
        packs = max(load.meat_g for load in job.loads)
        yield Said(
            "thawed all at once, the last of it would wait raw for too long; so each load comes "
            "out of the freezer in its own time",
            f"that takes packs of {format_pounds(packs)} or less; a bigger block is thawed and "
            "dried by itself, as much as one dryer holds",
            "raw-holding",
            kinds=("thaw",),
        )
    held = longest_held_min(job)
    if job.left_g:
        yield _left_over(job, held)
    if warm.held_min > held:
        yield Said(
            f"raw meat would wait {hours_words(warm.held_min)} in the refrigerator, and "
            f"{held // 1440} days is the cautious limit for {_held_as(job)}",
            f"dry less at once; {_till_its_day(job)}",
            "raw-holding",
            grave=True,
            kinds=("wait",),
        )


def _left_over(job: Job, held: int) -> Said:
    """Return how much of it is planned, since the rest would wait raw for too long."""
    planned, asked = format_pounds(job.meat_g), format_pounds(job.meat_g + job.left_g)
    return Said(
        f"of the {asked} asked for, {planned} are planned: the rest would wait raw for longer than "
        f"{held // 1440} days, the cautious limit for {_held_as(job)}",
        f"{_till_its_day(job, format_pounds(job.left_g))}; print card and labels for {planned}",
        "raw-holding",
        kinds=("trim", "knead", "thaw"),
    )


def _till_its_day(job: Job, rest: str = "") -> str:
    """Return what becomes of meat that is too much for one plan."""
    other = f"the other {rest}" if rest else "the rest"
    if job.frozen:
        return f"leave {other} in the freezer till its own day"
    return f"freeze {other} at once, and dry it on a day of its own"


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


def load_name(one: Placed, jobs: Sequence[Job]) -> str:
    """Return what a load is called among others: the batch, or its number."""
    job = jobs[one.batch]
    title = f" of {job.recipe.title}" if len(jobs) > 1 else ""
    if len(job.loads) == 1 or not one.load:
        return f"the batch{title}"
    return f"{_ordinal(one.load)} load{title}"


def _ordinal(number: int) -> str:
    words = ("first", "second", "third", "fourth", "fifth", "sixth")
    return f"the {words[number - 1]}" if number <= len(words) else f"number {number}: the"
