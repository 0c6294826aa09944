"""Soaking, used marinade and raw juices: how long, how cold, and what touches what."""

from __future__ import annotations

from tarebook.findings import Finding
from tarebook.recipe.model import HeatStep, MeatForm
from tarebook.safety.case import Animal, Case
from tarebook.safety.rulebook import degrees, limit

_HOURS_PER_DAY = 24


def check_soak(case: Case) -> tuple[Finding, ...]:
    """Warn of a soak over the cautious limit, more gravely over every published one."""
    soak = case.recipe.soak
    hours = soak.hours[2]
    cautious = limit("soak-day", "soak")
    if not (case.is_flesh and case.soaked and soak.stated) or hours <= cautious:
        return ()
    outer = _outer_days(case)
    code, says = "soak-over", f"{hours:g} hours in the marinade is over the cautious {cautious:g}"
    if outer is None:
        says += ", and no longer limit is held for it"
    elif hours <= outer * _HOURS_PER_DAY:
        says += f"; USDA's outer limit is {outer:g} days"
    else:
        code = "soak-far-over"
        says += f" and over USDA's outer limit of {outer:g} days"
    do = f"soak {cautious:g} hours at most, and freeze meat that must wait"
    cites = "soak-outer" if code == "soak-far-over" else "soak-day"
    return (case.warn(code, says, do, cites=cites, path="soak.hours"),)


def cold_soak(case: Case) -> tuple[Finding, ...]:
    """Say how cold and how long meat may lie in its marinade."""
    if not case.soaked or not case.is_flesh:
        return ()
    outer = _outer_days(case)
    do = (
        f"{outer:g} days is USDA's outer limit for this kind of meat"
        if outer
        else "no longer limit is held for it"
    )
    return (
        case.warn(
            "cold-soak",
            f"soak in the refrigerator at {degrees('cold-store', 'refrigerator')} or below, "
            f"{limit('soak-day', 'soak'):g} hours at most",
            do,
            cites="soak-day",
        ),
    )


def used_marinade(case: Case) -> tuple[Finding, ...]:
    """Say what becomes of marinade that raw meat has lain in."""
    if not case.soaked or not case.is_flesh:
        return ()
    boiled = case.recipe.heat is HeatStep.BOILED_DOWN
    do_first = "boil the marinade through" if boiled else "throw used marinade away"
    return (
        case.warn(
            "used-marinade",
            f"{do_first}: raw {_raw(case)} has lain in it",
            "set a clean part aside at the start; used marinade goes on food only once boiled",
            cites="marinade-boiled" if boiled else "marinade-discarded",
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


def _outer_days(case: Case) -> float | None:
    """Return USDA's outer limit for this kind of meat [days], or None where it gives none."""
    if not case.is_meat or case.ground:
        return None
    cubed = case.recipe.meat.form is MeatForm.PIECES
    quantity = "poultry-or-cubes" if cubed or case.animal is Animal.POULTRY else "red-meat"
    return limit("soak-outer", quantity)
