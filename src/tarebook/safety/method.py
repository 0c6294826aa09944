"""The lines of soak, heat and dryer on a card, as the rules let them stand.

A card's front is all that a cook props up: what a rule stands against is said there too, beside
what the recipe says, and a heat step that is not published for such food is never printed as the
one to take.
"""

from __future__ import annotations

from tarebook.recipe.model import HeatStep
from tarebook.safety.case import Case
from tarebook.safety.dryer import BENDS
from tarebook.safety.heat import dried_too_short, held_words, least_oven_hours
from tarebook.safety.rulebook import air_words, both_scales, degrees, limit
from tarebook.safety.soak import soaks_warm

_DIAL = 0.05  # [degF] what the way from Celsius may take off


def soak_mark(case: Case) -> str:
    """Return what is wrong with the soak as written, in brackets; nothing where nothing is."""
    most = limit("soak-day", "soak")
    told = []
    if case.ground and case.is_meat:
        told.append("ground meat is not soaked: mix it in")
    elif case.is_flesh and case.recipe.soak.stated and case.recipe.soak.hours[2] > most:
        told.append(f"too long: {most:g} h at most")
    if soaks_warm(case):
        told.append("too warm: in the refrigerator, at " + degrees("cold-store", "refrigerator"))
    if case.recipe.soak.used_before:
        told.append("in a fresh marinade, not one used before")
    return f" ({'; '.join(told)})" if told else ""


def heat_line(case: Case) -> str:
    """Return the heat step of a card with what it must reach; empty where nothing asks for one.

    Returns:
        The recipe's own step where it is published for such food; the one to take, and why not
        the recipe's own, where it is not.
    """
    step, to = case.recipe.heat, f"{case.inside} inside{held_words(case)}"
    if not case.is_flesh:
        return "" if step is HeatStep.UNSTATED else f"Heat: {step.value}."
    if step is HeatStep.UNSTATED:
        return f"Heat: none stated. Before it dries, in wet heat, to {to}."
    if step is not HeatStep.OVEN_AFTER:
        return f"Heat: {step.value}{_boil(step)}, to {to}."
    if case.oven_after_refusal:
        return (
            f"Heat: before it dries, in wet heat, to {to}; not the oven after drying, which is not "
            f"published for {case.oven_after_refusal}."
        )
    oven, minutes = degrees("oven-after", "oven-air"), limit("oven-after", "oven-time")
    return f"Heat: {step.value}, {minutes:g} minutes at {oven}, to {to}; raw till then: not tasted."


def dryer_mark(case: Case) -> str:
    """Return what is wrong with the air as written, in brackets; nothing where nothing is."""
    stated, air = case.recipe.drying.temperature_f, case.air_f
    if stated is None or air is None or not case.is_flesh:
        return ""
    asked = degrees("dryer-145", "dryer-air")
    if air[0] > stated[1]:
        if case.dryer_top_f is not None:
            return f" (the dryer here: {air_words(air)} at its lowest)"
        return (
            f" (the oven here: {air_words(air)} at its lowest, so its door is propped, by a "
            "thermometer on the rack; with a gas oven, or children near, it stays shut, and dries "
            "sooner)"
        )
    if stated[0] >= limit("dryer-145", "dryer-air") - _DIAL > air[1]:
        return f" (the dryer here reaches {both_scales(air[1])} only; {asked} or more is asked)"
    if stated[0] < limit("dryer-145", "dryer-air") - _DIAL:
        return f" ({asked} or more is the cautious figure)"
    return ""


def hours_mark(case: Case) -> str:
    """Return how long it dries at least before the oven, where the recipe says less or nothing."""
    least = f"{least_oven_hours():g} h at least"
    if case.recipe.drying.hours is None:
        after = case.is_meat and case.recipe.heat is HeatStep.OVEN_AFTER
        return f", {least}" if after and not case.oven_after_refusal else ""
    return f" ({least})" if dried_too_short(case) else ""


NOBODY_CHECKED = (
    "nobody has checked them. Where they ask for less heat, less cold or more time than stands "
    "here, do what stands here"
)
"""What is said of a recipe's own words, wherever they are printed or named."""


def steps_head(case: Case) -> str:
    """Return what stands above the recipe's own steps; nothing where it has none.

    They are free words: no program reads them all, and a cook who trusts the card must know it.
    """
    if not case.recipe.steps:
        return ""
    if not for_another_heat(case):
        return f"The recipe's own words: {NOBODY_CHECKED}."
    own = case.recipe.steps_heat or HeatStep.UNSTATED
    written = "no heat step" if own is HeatStep.UNSTATED else f"another heat step ({own.value})"
    kept = ", and the marinade is kept for it" if case.recipe.heat is HeatStep.BOILED_DOWN else ""
    over = f"heat and hours above stand over them{kept}"
    return f"The recipe's own words, written for {written}; {over}. Also, {NOBODY_CHECKED}."


def for_another_heat(case: Case) -> bool:
    """Return whether the recipe's own steps were written for another heat step than today's."""
    own = case.recipe.steps_heat
    return own is not None and own is not case.recipe.heat


def until_words(case: Case) -> str:
    """Return when strips of meat are dry enough; nothing for what no rule is held for."""
    return f", until {BENDS}" if case.is_meat else ""


def _boil(step: HeatStep) -> str:
    """Return how long strips boil in their marinade, as two bodies publish it."""
    if step is not HeatStep.SIMMERED:
        return ""
    return f", {limit('marinade-as-bath', 'boil-time'):g} minutes at the boil"
