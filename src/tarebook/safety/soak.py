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
        says += f"; the {longest:g} days of USDA are for roasts of raised meat, not for this"
    elif hours <= outer * _HOURS_PER_DAY:
        says += f"; {_outer_words(case, outer)}"
    else:
        code = "soak-far-over"
        says += f" and over every published one: {_outer_words(case, outer)}"
    do = f"soak {cautious:g} hours at most, and freeze meat that must wait"
    return (case.warn(code, says, do, cites="soak-day; soak-outer", path="soak.hours"),)


def check_soak_warm(case: Case) -> tuple[Finding, ...]:
    """Warn of a soak that is stated to be warmer than a refrigerator."""
    stated = case.recipe.soak.temperature_f
    if stated is None or not soaks_warm(case):
        return ()
    most = limit("out-of-cold", "out")
    return (
        case.warn(
            "soak-warm",
            f"a soak at {both_scales(stated[1])} is warmer than the "
            f"{degrees('cold-store', 'refrigerator')} of a refrigerator, where germs grow slowly",
            "soak it in the refrigerator, never on the counter; throw away what lay warm for over "
            f"{most:g} hours in all",
            cites="cold-store; thaw-cold; out-of-cold",
            path="soak.temperature",
        ),
    )


def soaks_warm(case: Case) -> bool:
    """Return whether the soak is stated to be warmer than a refrigerator."""
    stated = case.recipe.soak.temperature_f
    most = limit("cold-store", "refrigerator") + _DIAL
    return case.soaked and stated is not None and stated[1] > most


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
    cites = "soak-day; thaw-cold; cold-store; raw-holding" + ("; soak-outer" if outer else "")
    cites += _OPENED if case.animal is Animal.FISH else ""
    return (
        case.warn(
            "cold-soak",
            f"{_thaw(case)} and soak in the refrigerator at "
            f"{degrees('cold-store', 'refrigerator')} or below, "
            f"{limit('soak-day', 'soak'):g} hours at most; raw, it lies there "
            f"{raw_days(case):g} days at most in all",
            do,
            cites=cites,
        ),
    )


def cold_hold(case: Case) -> tuple[Finding, ...]:
    """Say that rubbed flesh rests in the cold too, and what becomes of what runs off."""
    if case.soaked or not case.is_flesh:
        return ()
    rests = ", and rest it there while the rub works" if case.rubbed else ""
    do = "throw away liquid that runs off" if case.rubbed else "take out only what you work on"
    return (
        case.warn(
            "cold-hold",
            f"{_thaw(case)} and hold the {_raw(case)} in the refrigerator at "
            f"{degrees('cold-store', 'refrigerator')} or below{rests}; raw, it "
            f"lies there {raw_days(case):g} days at most in all",
            do,
            cites="cold-store; thaw-cold; raw-holding"
            + ("; marinade-discarded" if case.rubbed else "")
            + (_OPENED if case.animal is Animal.FISH else ""),
        ),
    )


_OPENED = "; fish-no-air"


def _thaw(case: Case) -> str:
    """Return how it is thawed: fish in an opened pack, since germs without air grow in the cold."""
    return "thaw in an opened pack" if case.animal is Animal.FISH else "thaw"


def raw_days(case: Case) -> float:
    """Return how long such flesh may lie raw in the refrigerator [days], by the cautious end.

    Source:
        Rule ``raw-holding``: 2 days for ground meat and poultry, 3 to 5 for cuts of red meat; none
        is held for fish, which takes the shorter.
    """
    short = case.ground or case.animal in (Animal.POULTRY, Animal.FISH)
    return limit("raw-holding", "ground-or-poultry" if short else "red-meat")


def used_marinade(case: Case) -> tuple[Finding, ...]:
    """Say what becomes of marinade that raw meat has lain in."""
    if not case.soaked:
        return ()
    boiled = case.recipe.heat is HeatStep.BOILED_DOWN or not case.recipe.soak.poured_away
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
            f"wash hands {limit('hand-wash', 'wash-time'):g} seconds before and after raw "
            f"{_raw(case)}, and wash and sanitise board, trays, sink and tongs before what is "
            "heated or dried",
            f"{_bleach('bleach-quart', 'teaspoon', 'quart')} of water (Wyoming: "
            f"{_bleach('bleach-gallon', 'tablespoons', 'gallon')}); plain, left wet, mixed with "
            "nothing else (from memory)",
            cites="raw-splash; hand-wash; bleach-quart; bleach-gallon; bleach-plain",
        ),
    )


def _bleach(rule: str, spoons: str, of: str) -> str:
    return f"{limit(rule, 'bleach'):g} {spoons} bleach to a {of}"


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
