"""Where the days are not as the recipe says, and what no plan can mend, with what to do instead."""

from __future__ import annotations

from collections.abc import Callable, Iterator

from tarebook.findings import Finding
from tarebook.plan.jobs import Job, thickness_of
from tarebook.plan.said import Said
from tarebook.recipe.model import HeatStep, MeatForm
from tarebook.safety.case import Case
from tarebook.safety.cure import check_cure_food, check_cure_nitrate
from tarebook.safety.dryer import check_finish
from tarebook.safety.game import freezing_rule
from tarebook.safety.ground import check_ground_lean
from tarebook.safety.heat import held_words
from tarebook.safety.rulebook import air_words, degrees, limit
from tarebook.safety.soak import soaks_warm
from tarebook.safety.steps import check_steps

_UNMENDED: tuple[tuple[Callable[[Case], tuple[Finding, ...]], tuple[str, ...]], ...] = (
    (check_ground_lean, ("knead",)),
    (check_finish, ("dry", "test")),
    (check_cure_food, ("mix", "steep", "rub")),
    (check_cure_nitrate, ("mix", "steep", "rub", "knead")),
)


def recipe_conflicts(job: Job) -> Iterator[Said]:
    """Yield what of a recipe is planned otherwise than it says, and what stays at odds."""
    yield from _heat_conflicts(job)
    yield from _hours_conflicts(job)
    yield from _freezing_conflicts(job)
    yield from _soak_conflicts(job)
    yield from _cut_conflicts(job)
    yield from _step_conflicts(job)
    yield from _rule_conflicts(job)
    yield from _cure_conflicts(job)


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


def _cure_conflicts(job: Job) -> Iterator[Said]:
    """Yield where the card's one dose of curing salt is weighed for each load instead, or not."""
    for load in job.uncured:
        yield Said(
            f"the card has curing salt, and load {load} goes without: "
            f"{job.shares[load - 1].left_out}",
            "where all of it is to be cured, dry as much as makes loads of a like size, and weigh "
            "on a scale that shows 0.1 g",
            "cure-scale-step",
            kinds=("steep", "rub"),
        )
    if len(job.uncured) < len(job.shares) and job.cured_by_load:
        yield Said(
            f"the card weighs the curing salt once, for all of the meat; for {len(job.loads)} "
            "loads it is weighed for each, since a bowl with it in cannot be parted by eye",
            "weigh what stands at each load, for that load's meat as the scale shows it, and none "
            "for all of it",
            "cure-guard",
            kinds=("mix", "steep", "soak"),
        )
