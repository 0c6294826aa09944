"""Heat: the step that kills, before drying or, for thin strips of some meats, after it."""

from __future__ import annotations

from tarebook.findings import Finding
from tarebook.recipe.model import HeatStep
from tarebook.safety.case import Animal, Case
from tarebook.safety.rulebook import degrees, limit


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
    reason = case.not_for_oven_after
    if not case.is_meat or case.recipe.heat is not HeatStep.OVEN_AFTER or not reason:
        return ()
    return (
        case.warn(
            "oven-after",
            "the oven after drying is published for whole-muscle strips up to 1/4 in (6 mm), "
            f"not for {reason}",
            f"heat it to {case.inside} inside, in wet heat, before it dries",
            cites=f"oven-after; {case.inside_rule[0]}",
            path="heat.step",
        ),
    )


def heat(case: Case) -> tuple[Finding, ...]:
    """Say how hot meat must get inside, and whether the oven after drying may do instead."""
    if not case.is_meat:
        return ()
    first = case.inside_rule[0]
    if case.not_for_oven_after:
        do, cites = "an oven after drying does not replace this here", first
    else:
        do, cites = _oven_instead(), f"{first}; oven-after"
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
            f"{hours[0]:g} hours of drying are under the {limit('oven-after', 'drying-time'):g} "
            "that the oven after drying is published with",
            f"dry at least that long, {limit('oven-after', 'drying-time-preferred'):g} hours "
            "by preference, before the oven",
            cites="oven-after",
            path="drying.hours",
        ),
    )


def dried_too_short(case: Case) -> bool:
    """Return whether hours are stated and too few for the oven after drying."""
    hours = case.recipe.drying.hours
    after = case.is_meat and case.recipe.heat is HeatStep.OVEN_AFTER
    return after and hours is not None and hours[0] < limit("oven-after", "drying-time")


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
            f"heat every piece to {case.inside} inside before it dries",
            cites="game-freezing; game-165",
        ),
    )


def no_rule(case: Case) -> tuple[Finding, ...]:
    """Say plainly where no published rule on drying such food is held."""
    if case.is_meat:
        return ()
    if case.animal is Animal.FISH:
        smoked = degrees("fish-smoked", "fish-inside")
        do = f"the nearest held is for smoked fish: {smoked} inside for 30 minutes, then kept cold"
        cites = "fish-none-held; fish-smoked"
    else:
        do = "keep it cold and eat it soon"
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
        f"or dry strips up to 1/4 in (6 mm) at {degrees('oven-after', 'dryer-air')}, then "
        f"10 minutes in a preheated {degrees('oven-after', 'oven-air')} oven, until "
        f"{degrees('oven-after', 'meat-inside')} inside"
    )
