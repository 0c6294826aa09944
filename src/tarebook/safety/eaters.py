"""Who eats it and what the figures are worth: salt, potassium, alcohol, allergens, estimates."""

from __future__ import annotations

from tarebook.findings import Finding
from tarebook.quantities.units import Dimension, dimension
from tarebook.recipe.model import Ingredient
from tarebook.safety.case import Case
from tarebook.safety.dryer import BENDS
from tarebook.safety.rulebook import foods_of, limit


def check_salt_crystal(case: Case) -> tuple[Finding, ...]:
    """Note a spoon of salt whose crystal is not said."""
    return tuple(
        case.note(
            "salt-crystal",
            f"a spoon of {one.name} weighs up to twice as much of one crystal as of another",
            "weigh it, or name its kind",
            cites="salt-crystals",
            path=one.path,
        )
        for one, item in zip(case.recipe.ingredients, case.foods, strict=True)
        if item.crystal_unknown and _by_volume(one)
    )


def salt_by_spoon(case: Case) -> tuple[Finding, ...]:
    """Say that salt is better weighed, where it is not and its crystal is known."""
    if not any(_by_volume(one) for one in case.holds("salt-crystals")):
        return ()
    return (
        case.note(
            "salt-by-spoon",
            "spoons of salt differ up to twofold in weight from crystal to crystal",
            "take the kind the recipe names, or weigh it",
            cites="salt-crystals",
        ),
    )


def much_sodium(case: Case) -> tuple[Finding, ...]:
    """Say so where an ounce holds much of a day's sodium."""
    if case.sodium_mg_per_oz is None:
        return ()
    day = limit("sodium-daily-value", "sodium")
    share = case.sodium_mg_per_oz / day * 100
    if share < limit("high-sodium", "daily-value-share"):
        return ()
    return (
        case.note(
            "much-sodium",
            f"an ounce may hold {share:.0f} % of the {day:,.0f} mg sodium of a day's reference",
            "people on a diet low in salt ask their clinician",
            cites="high-sodium; sodium-daily-value",
        ),
    )


def potassium(case: Case) -> tuple[Finding, ...]:
    """Say whom potassium chloride can harm."""
    if not case.holds("potassium-chloride"):
        return ()
    return (
        case.warn(
            "potassium",
            "potassium chloride can harm people with kidney disease or on some medicines",
            "they ask a clinician before they eat it",
            cites="potassium-chloride",
        ),
    )


def alcohol(case: Case) -> tuple[Finding, ...]:
    """Say that heating leaves some of the alcohol."""
    if not case.holds("alcohol"):
        return ()
    return (
        case.note(
            "alcohol",
            "heating drives off most of the alcohol, not all of it",
            "leave it out for those who take none",
            cites="alcohol",
        ),
    )


def enhanced_meat(case: Case) -> tuple[Finding, ...]:
    """Say what meat with added solution means for the sodium."""
    if case.food.key not in foods_of("enhanced-meat"):
        return ()
    return (
        case.note(
            "enhanced-meat",
            "meat with added solution holds two to three times the sodium of plain meat",
            "go by the figure on its pack",
            cites="enhanced-meat",
        ),
    )


def allergens(case: Case) -> tuple[Finding, ...]:
    """Say how far allergens are known."""
    return (
        case.note(
            "allergens",
            "allergens are told here by the kind of food only",
            "read every pack",
            cites="allergens",
        ),
    )


def estimate(case: Case) -> tuple[Finding, ...]:
    """Say that all figures are estimates."""
    return (
        case.note(
            "estimate",
            "sodium, sugars and all other figures are estimates: nobody knows how much of the "
            "marinade stays",
            "go by low to high, and put the finished batch on the scale",
            cites="estimate",
        ),
    )


def higher_risk(case: Case) -> tuple[Finding, ...]:
    """Say who falls ill more easily."""
    return (
        case.note(
            "higher-risk",
            "people who are pregnant, under 5, over 65 or weak in immunity fall ill more easily",
            "think twice before serving it to them, and serve none of a batch that missed a step",
            cites="higher-risk",
        ),
    )


def home_card(case: Case) -> tuple[Finding, ...]:
    """Say what the paper is and what stands over it."""
    return (
        case.note(
            "home-card",
            "this is a home estimate, not a retail label; selling needs a licence and inspection",
            "local codes and licensed practice stand over it; its figures come from stored copies, "
            "so check the current official text",
            cites="not-retail; stored-copies",
        ),
    )


def scaling(case: Case) -> tuple[Finding, ...]:
    """Say what scaling leaves alone."""
    if case.factor == 1:
        return ()
    return (
        case.note(
            "scaling",
            "only amounts were scaled, never hours, temperatures or thickness",
            f"a fuller dryer dries more slowly: go by a piece, not by the clock{_bends(case)}",
            cites="scaling",
        ),
    )


def _bends(case: Case) -> str:
    return f", until {BENDS}" if case.is_meat else ""


def _by_volume(one: Ingredient) -> bool:
    return bool(one.amount.unit) and dimension(one.amount.unit) is Dimension.VOLUME
