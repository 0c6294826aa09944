"""What does not go as asked, or is at odds with published advice, with what to do instead."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from datetime import tzinfo

from tarebook.figures.foods import food
from tarebook.findings import Finding
from tarebook.kitchen.keys import BY_PATH
from tarebook.plan.cold import longest_held_min, warm_of
from tarebook.plan.jobs import Job, hot_enough, thickness_of
from tarebook.plan.steps import Step, hours_words
from tarebook.plan.tasks import Placed, Span
from tarebook.plan.trays import Dryer
from tarebook.plan.words import said_at
from tarebook.quantities.words import format_pounds
from tarebook.recipe.model import HeatStep, MeatForm
from tarebook.safety.case import Animal, Case
from tarebook.safety.cure import check_cure_food, check_cure_nitrate
from tarebook.safety.dryer import check_finish
from tarebook.safety.game import freezing_rule
from tarebook.safety.ground import check_ground_lean
from tarebook.safety.heat import held_words
from tarebook.safety.rulebook import (
    air_words,
    both_scales,
    citations,
    degrees,
    limit,
)
from tarebook.safety.soak import soaks_warm
from tarebook.safety.steps import check_steps
from tarebook.tuples import NamedTuple

AT_ODDS = "At odds with published advice"
"""What is grave: the plan as it stands is not as any body publishes."""
_CM2_PER_FT2 = 929.0304
_OVEN_INSTEAD = (
    "dry in an oven or another dryer: tarebook kitchen set dryer.trays 0 plans for the oven"
)
_AIR = ("preheat", "dry")


class Said(NamedTuple):
    """Something to say of a plan.

    Attributes:
        text: what is so, a clause without capital or stop.
        do: what to do instead, likewise, or nothing.
        cites: ids of the rules it stands on, joined by ``; ``, or nothing.
        grave: whether the plan as it stands is at odds with published advice.
        kinds: the kinds of step that it is about.
        job: which recipe it is about, or None for all.
    """

    text: str
    do: str = ""
    cites: str = ""
    grave: bool = False
    kinds: tuple[str, ...] = ()
    job: int | None = None

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
            *_hours_conflicts(job),
            *_freezing_conflicts(job),
            *_dryer_conflicts(job, dryer),
            *_soak_conflicts(job),
            *_cut_conflicts(job),
            *_step_conflicts(job),
            *_rule_conflicts(job),
            *_cure_conflicts(job),
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


def _heat_conflicts(job: Job) -> Iterator[Said]:
    if job.choice.refused:
        yield Said(
            f"the recipe says {job.recipe.heat.value}, but {job.choice.refused}",
            f"planned here: {job.choice.step.value}, to {job.case.inside} inside"
            f"{held_words(job.case)}",
            kinds=("simmer", "steam", "boil-down"),
        )


def _hours_conflicts(job: Job) -> Iterator[Said]:
    """Yield where the recipe's own oven step comes after fewer hours than are published."""
    written, planned = job.recipe.drying.hours, job.case.recipe.drying.hours
    if job.recipe.heat is HeatStep.OVEN_AFTER and written and planned and written != planned:
        low, high = (f"{end:g}" for end in planned)
        yield Said(
            f"the recipe dries {written[0]:g} h at the least before the oven; planned here are "
            f"{low} h or more",
            f'write hours = "{low if low == high else f"{low}-{high}"}" under [drying], so that '
            "card and labels say it too",
            "oven-after-minnesota; dryer-145",
            kinds=("dry",),
        )


def _freezing_conflicts(job: Job) -> Iterator[Said]:
    rule = freezing_rule(job.case)
    if rule:
        yield Said(
            f"this plan takes for granted that the {job.case.animal.value} has been frozen for "
            f"{limit(rule, 'time'):g} days at {degrees(rule, 'freezer')} or below",
            "if it has not, freeze it first and plan anew",
            rule,
            kinds=("thaw", "trim"),
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


def _cut_conflicts(job: Job) -> Iterator[Said]:
    """Yield meat that the recipe cuts thicker than any times are published for."""
    if job.thickness_mm < thickness_of(job.recipe):
        yield Said(
            f"the recipe cuts {job.recipe.meat.thickness_written or 'thicker'}; planned here at "
            "1/4 in (6 mm), the thickest that times are published for",
            "cut it to that; for what is thicker these hours and minutes do not hold",
            "thickness-quarter-inch",
            kinds=("slice", "form"),
        )
    if job.case.is_meat and job.recipe.meat.form is MeatForm.PIECES:
        yield Said(
            "the recipe dries pieces, and all that is published is for strips and ground meat",
            'cut strips, and write form = "strips"',
            "thickness-quarter-inch",
            grave=True,
            kinds=("slice",),
        )


def _soak_conflicts(job: Job) -> Iterator[Said]:
    hours, soak = limit("soak-day", "soak"), job.recipe.soak
    if job.soak_capped:
        yield Said(
            f"the recipe soaks for {soak.hours_written or 'longer'} h; planned here is "
            f"the cautious limit, {hours:g} h",
            "freeze meat that must wait longer",
            "soak-day",
            kinds=("soak",),
        )
    if job.case.soaked and soak.temperature_f and soaks_warm(job.case._replace(recipe=job.recipe)):
        yield Said(
            f"the recipe soaks at {air_words(soak.temperature_f)}; planned here in the "
            f"refrigerator, at {degrees('cold-store', 'refrigerator')} or below",
            f"throw away what lay warmer for over {limit('out-of-cold', 'out'):g} hours in all",
            "thaw-cold; out-of-cold",
            kinds=("soak",),
        )
    if job.case.soaked and soak.used_before:
        yield Said(
            "the recipe's marinade has been used before; planned here is a fresh one",
            "throw the used one away",
            "marinade-discarded",
            kinds=("mix", "steep"),
        )
    if job.case.ground and job.case.soaked:
        yield Said(
            "ground meat is not soaked, so the marinade is kneaded in here",
            "write it under [mixed-in]",
            "ground-meat",
            kinds=("knead",),
        )
    if job.bowls_told and job.bowl_ml and job.bowl is None:
        yield Said(
            f"a load with its marinade takes about {job.bowl_ml / 1000:.1f} L, more than any bowl "
            "or bag you told of",
            "part it between two",
        )


def _step_conflicts(job: Job) -> Iterator[Said]:
    """Yield the recipe's own steps that speak of danger; the days here do not follow them."""
    for found in check_steps(job.case):
        yield Said(
            f"the recipe's own {found.message}; not followed here",
            found.hint,
            found.cites,
            kinds=("thaw", "soak", "rest"),
        )


def _rule_conflicts(job: Job) -> Iterator[Said]:
    """Yield what a rule stands against and no plan can mend: meat, finish and curing salt."""
    for check, kinds in _UNMENDED:
        for found in check(job.case):
            yield Said(found.message, found.hint, found.cites, grave=True, kinds=kinds)


_UNMENDED: tuple[tuple[Callable[[Case], tuple[Finding, ...]], tuple[str, ...]], ...] = (
    (check_ground_lean, ("knead",)),
    (check_finish, ("dry", "test")),
    (check_cure_food, ("mix", "steep", "rub")),
    (check_cure_nitrate, ("mix", "steep", "rub", "knead")),
)


def _cure_conflicts(job: Job) -> Iterator[Said]:
    """Yield where the card's one dose of curing salt is weighed for each load instead."""
    if job.cured_by_load:
        yield Said(
            f"the card weighs the curing salt once, for all of the meat; for {len(job.loads)} "
            "loads it is weighed for each, since a bowl with it in cannot be parted by eye",
            "weigh what stands at each load, for that load's meat as the scale shows it, and none "
            "for all of it",
            "cure-guard",
            kinds=("mix", "steep", "soak"),
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
