"""Heat: the step before drying or, for thin strips of some meats, after it."""

from __future__ import annotations

from tarebook.findings import Finding
from tarebook.recipe.model import HeatStep
from tarebook.safety.case import Animal, Case
from tarebook.safety.rulebook import degrees, limit, span

_AIR_SAID_BY = "oven-after; oven-after-minnesota; boil-or-oven-nchfp"


def check_heat_stated(case: Case) -> tuple[Finding, ...]:
    """Warn where meat is dried and the recipe says no heat step."""
    if not case.is_meat or case.recipe.heat is not HeatStep.UNSTATED:
        return ()
    first = HeatStep.SIMMERED if case.soaked and not case.ground else HeatStep.STEAMED
    return (
        case.warn(
            "heat-missing",
            "no heat step is stated, and drying alone has left bacteria alive in published trials",
            "heat the meat, and write how under [heat]; the most cautious is "
            f'step = "{first.value}"',
            cites="drying-alone-1996",
            path="heat.step",
        ),
    )


def check_oven_after(case: Case) -> tuple[Finding, ...]:
    """Warn where the oven after drying is chosen for meat that it is not published for."""
    reason = case.oven_after_refusal
    if not case.is_flesh or case.recipe.heat is not HeatStep.OVEN_AFTER or not reason:
        return ()
    cites = "oven-after" if case.not_for_oven_after else _AIR_SAID_BY
    return (
        case.warn(
            "oven-after",
            not_published(case),
            f"heat it to {case.inside} inside{held_words(case)}, in wet heat, before it dries",
            cites=f"{cites}; {case.inside_rule[0]}",
            path="heat.step",
        ),
    )


def not_published(case: Case) -> str:
    """Return what the oven after drying is published for, and what of this batch it is not."""
    says = (
        "the oven after drying is published for whole-muscle strips up to 1/4 in (6 mm), dried at "
        f"{degrees('oven-after', 'dryer-air')}; not for {case.oven_after_refusal}"
    )
    if case.not_for_oven_after:
        return says
    other = degrees("boil-or-oven-nchfp", "dryer-air")
    return f"{says} (Minnesota: hotter too; NCHFP and Kansas: {other})"


def held_words(case: Case) -> str:
    """Return how long it is held at its heat, for fish; nothing for meat."""
    held = limit("fish-smoked", "time")
    return f" for {held:g} minutes" if case.animal is Animal.FISH else ""


def heat(case: Case) -> tuple[Finding, ...]:
    """Say how hot meat must get inside, and whether the oven after drying may do instead."""
    if not case.is_meat:
        return ()
    first = case.inside_rule[0]
    cites = f"{first}; oven-after"
    if case.oven_after_refusal:
        do = f"an oven after drying is not published for {case.oven_after_refusal}"
    else:
        do, cites = _oven_instead(), f"{cites}; oven-after-minnesota; dryer-145"
    if case.animal in (Animal.BEAR, Animal.WILD_PORK):
        cites += "; heat-before"
    kind = "poultry" if case.animal is Animal.POULTRY else "meat"
    return (
        case.warn(
            "heat",
            f"bring the {kind} to {case.inside} inside, in wet heat, before it dries",
            do,
            cites=cites,
        ),
    )


def heat_first(case: Case) -> tuple[Finding, ...]:
    """Say, where the oven after drying was chosen, why heating first is preferred."""
    if case.recipe.heat is not HeatStep.OVEN_AFTER or not case.heat_holds:
        return ()
    return (
        case.warn(
            "heat-first",
            "heating before drying is preferred: once dried, bacteria stand more heat",
            f"where you can, steam or roast it to {case.inside} inside first",
            cites="heat-first-michigan",
        ),
    )


def check_oven_hours(case: Case) -> tuple[Finding, ...]:
    """Warn where meat dries for less time than the oven after drying is published with."""
    hours = case.recipe.drying.hours
    if hours is None or not dried_too_short(case):
        return ()
    return (
        case.warn(
            "oven-after-short",
            f"{hours[0]:g} hours of drying are under the {least_oven_hours():g} that the oven "
            "after drying is published with",
            "dry at least that long before the oven; Wisconsin allows "
            f"{limit('oven-after', 'drying-time'):g} hours, and prefers "
            f"{limit('oven-after', 'drying-time-preferred'):g}",
            cites="oven-after-minnesota; dryer-145; oven-after",
            path="drying.hours",
        ),
    )


def dried_too_short(case: Case) -> bool:
    """Return whether hours are stated and too few for the oven after drying, where it may be."""
    hours = case.recipe.drying.hours
    after = case.is_meat and case.recipe.heat is HeatStep.OVEN_AFTER
    after = after and not case.oven_after_refusal
    return after and hours is not None and hours[0] < least_oven_hours()


def least_oven_hours() -> float:
    """Return how long meat dries at least before the oven [h], the most cautious of three bodies.

    Source:
        Rules ``oven-after-minnesota`` and ``dryer-145``: 6 hours; ``oven-after`` 4, better 6.
    """
    return limit("oven-after-minnesota", "drying-time")


def poultry(case: Case) -> tuple[Finding, ...]:
    """Say that drying raw poultry is advised against."""
    if case.animal is not Animal.POULTRY:
        return ()
    return (
        case.note(
            "poultry",
            "drying raw poultry is advised against, for texture and flavour",
            f"cook it to {case.inside} first",
            cites="raw-poultry",
        ),
    )


def bear_and_wild_pork(case: Case) -> tuple[Finding, ...]:
    """Say that nothing but heat deals with the parasites of bear and wild pork."""
    if case.animal not in (Animal.BEAR, Animal.WILD_PORK):
        return ()
    return (
        case.warn(
            "bear-and-wild-pork",
            "freezing, curing, drying and smoking may leave parasites of bear and wild pork alive",
            "heat it before it dries, in wet heat: the thickest of every lot to "
            f"{case.inside} inside",
            cites="game-freezing; game-165",
        ),
    )


def no_rule(case: Case) -> tuple[Finding, ...]:
    """Say plainly where no published rule on drying such food is held."""
    if case.is_meat:
        return ()
    if case.animal is Animal.FISH:
        smoked = degrees("fish-smoked", "fish-inside")
        do = (
            f"the nearest held is for smoked fish: {smoked} inside for 30 minutes, then kept below "
            f"{degrees('fish-smoked-michigan', 'refrigerator')}, "
            f"{span('fish-smoked', 'refrigerator')[0]:g} weeks by its cautious end"
        )
        cites = "fish-none-held; fish-smoked; fish-smoked-michigan"
    else:
        do = (
            f"keep it cold, {days_as_cooked():g} days as cooked food is (from memory), or freeze it"
        )
        cites = "mushroom-none-held" if case.animal is Animal.MUSHROOM else "other-none-held"
    return (
        case.warn(
            "no-rule",
            f"no published rule for drying {case.animal.value} at home is held here",
            do,
            cites=cites,
        ),
    )


def _oven_instead() -> str:
    return (
        f"or dry strips up to 1/4 in at {degrees('oven-after', 'dryer-air')} for "
        f"{least_oven_hours():g} hours at least (Wisconsin: "
        f"{limit('oven-after', 'drying-time'):g}), then 10 minutes in a preheated "
        f"{degrees('oven-after', 'oven-air')} oven, to "
        f"{degrees('oven-after', 'meat-inside')} inside"
    )


def days_as_cooked() -> float:
    """Return how long cooked food is kept cold [days], the shorter end, from memory."""
    return span("cooked-cold", "refrigerator")[0]
