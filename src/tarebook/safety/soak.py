"""Soaking, used marinade and raw juices: how long, how cold, and what touches what."""

from __future__ import annotations

from tarebook.findings import Finding
from tarebook.recipe.model import HeatStep
from tarebook.safety.case import Animal, Case
from tarebook.safety.rulebook import both_scales, degrees, limit

_HOURS_PER_DAY = 24
_DIAL = 0.05  # [degF] what the way from Celsius may take off
_RAISED = ("beef", "veal", "pork", "bacon", "lamb")


def check_soak(case: Case) -> tuple[Finding, ...]:
    """Warn of a soak over the cautious limit, more gravely over every published one."""
    soak = case.recipe.soak
    hours = soak.hours[2]
    cautious = limit("soak-day", "soak")
    if not (case.is_flesh and case.soaked and soak.stated) or hours <= cautious:
        return ()
    outer = outer_days(case)
    code, says = "soak-over", f"{hours:g} hours in the marinade is over the cautious {cautious:g}"
    longest = limit("soak-outer", "red-meat")
    if outer is None and hours > longest * _HOURS_PER_DAY:
        code = "soak-far-over"
        says += f", and over the {longest:g} days that USDA gives for roasts of raised meat"
    elif outer is None:
        says += ", and no longer limit is held for it"
    elif hours <= outer * _HOURS_PER_DAY:
        says += f"; {_outer_words(case, outer)}"
    else:
        code = "soak-far-over"
        says += f" and over every published one: {_outer_words(case, outer)}"
    do = f"soak {cautious:g} hours at most, and freeze meat that must wait"
    usda = outer is not None or code == "soak-far-over"
    cites = "soak-day; soak-outer" if usda else "soak-day"
    return (case.warn(code, says, do, cites=cites, path="soak.hours"),)


def check_soak_warm(case: Case) -> tuple[Finding, ...]:
    """Warn of a soak that is stated to be warmer than a refrigerator."""
    stated = case.recipe.soak.temperature_f
    coldest_over = limit("cold-store", "refrigerator")
    if stated is None or not case.soaked or stated[1] <= coldest_over + _DIAL:
        return ()
    return (
        case.warn(
            "soak-warm",
            f"a soak at {both_scales(stated[1])} is warmer than the "
            f"{degrees('cold-store', 'refrigerator')} of a refrigerator, where germs grow slowly",
            "soak it in the refrigerator, never on the counter",
            cites="cold-store; out-of-cold",
            path="soak.temperature",
        ),
    )


def check_used_before(case: Case) -> tuple[Finding, ...]:
    """Refuse a marinade that raw meat has lain in before."""
    soak = case.recipe.soak
    if not soak.used_before or not case.soaked:
        return ()
    return (
        case.warn(
            "marinade-reused",
            f"{_lain(case)} lain in this marinade before, and what was in it grows in the next",
            "make a fresh one for every batch, and throw the used one away",
            cites="marinade-discarded",
            path="soak.used-before",
        ),
    )


def cold_soak(case: Case) -> tuple[Finding, ...]:
    """Say how cold and how long meat may lie in its marinade."""
    if not case.soaked:
        return ()
    if not case.is_flesh:
        return (_cold_soak_of_plants(case),)
    outer = outer_days(case)
    do = _outer_words(case, outer) if outer else "no longer limit is held for it"
    cites = "soak-day; cold-store; soak-outer" if outer else "soak-day; cold-store"
    return (
        case.warn(
            "cold-soak",
            f"soak in the refrigerator at {degrees('cold-store', 'refrigerator')} or below, "
            f"{limit('soak-day', 'soak'):g} hours at most",
            do,
            cites=cites,
        ),
    )


def cold_hold(case: Case) -> tuple[Finding, ...]:
    """Say that rubbed flesh rests in the cold too, and what becomes of what runs off."""
    if case.soaked or not case.rubbed or not case.is_flesh:
        return ()
    return (
        case.warn(
            "cold-hold",
            f"while the rub works, hold the {_raw(case)} in the refrigerator at "
            f"{degrees('cold-store', 'refrigerator')} or below",
            "throw away liquid that runs off",
            cites="cold-store; marinade-discarded",
        ),
    )


def used_marinade(case: Case) -> tuple[Finding, ...]:
    """Say what becomes of marinade that raw meat has lain in."""
    if not case.soaked:
        return ()
    boiled = case.recipe.heat is HeatStep.BOILED_DOWN
    do_first = "boil the marinade through" if boiled else "throw used marinade away"
    return (
        case.warn(
            "used-marinade",
            f"{do_first}: {_lain(case)} lain in it",
            "set a clean part aside at the start; used marinade goes on food only once boiled",
            cites="marinade-boiled" if boiled else "marinade-discarded; marinade-boiled",
        ),
    )


def raw_splash(case: Case) -> tuple[Finding, ...]:
    """Say how raw juices are kept from what is dried."""
    if not case.is_flesh:
        return ()
    return (
        case.note(
            "raw-splash",
            f"keep raw {_raw(case)} and its juices away from what is dried",
            "between them wash and sanitise board, trays and tongs: 1 teaspoon bleach to a quart "
            "of water",
            cites="raw-splash",
        ),
    )


def _raw(case: Case) -> str:
    return "fish" if case.animal is Animal.FISH else "meat"


def _lain(case: Case) -> str:
    if case.is_flesh:
        return f"raw {_raw(case)} has"
    return "mushrooms have" if case.animal is Animal.MUSHROOM else "food has"


def _outer_words(case: Case, days: float) -> str:
    if case.animal is Animal.POULTRY:
        return f"the outer limit of USDA is {days:g} days for poultry"
    return f"the outer limit of USDA is {days:g} days for cubed meat, which strips are nearest to"


def _cold_soak_of_plants(case: Case) -> Finding:
    return case.warn(
        "cold-soak",
        f"soak in the refrigerator at {degrees('cold-store', 'refrigerator')} or below",
        "no published limit of soaking time is held for it",
        cites="out-of-cold",
    )


def outer_days(case: Case) -> float | None:
    """Return USDA's outer limit for such meat [days], or None where it gives none.

    It gives 5 days for roasts, chops and steaks of raised red meat, and 2 for poultry and for cubed
    meat; strips are nearest to cubes. Of game it says nothing.
    """
    raised = case.animal in (Animal.MEAT, Animal.PORK) and case.food.key.startswith(_RAISED)
    if case.ground or not (raised or case.animal is Animal.POULTRY):
        return None
    return limit("soak-outer", "poultry-or-cubes")


def over_every_limit(case: Case) -> bool:
    """Return whether the stated soak is longer than any published limit for such food."""
    soak = case.recipe.soak
    if not (case.is_flesh and case.soaked and soak.stated):
        return False
    outer = outer_days(case)
    most = limit("soak-day", "soak") if outer is None else outer * _HOURS_PER_DAY
    return soak.hours[2] > most
