"""What ``target`` prints: each change that reaches a figure, what to measure, and what it costs."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from typing import Any

from tarebook.cards.figures import NAMES, digits
from tarebook.cards.lines import Line, Style, clean, table, wrap
from tarebook.cards.words import grams_words, ingredient_name, listed, measure_words
from tarebook.cards.worksheet import allergens_of
from tarebook.figures.spoken import spoken
from tarebook.nutrition import unit_of
from tarebook.nutrition.range import Range
from tarebook.safety.ingoing import ingoing
from tarebook.scaling import ScaledIngredient, ScaledRecipe
from tarebook.target import (
    Answer,
    Answers,
    Goal,
    Option,
    marinade_g,
    marinade_ml,
    marinade_salt_percent,
)

COLUMNS = 80
HEAT_STAYS = (
    "No change here takes anything from the heat step, the drying or the cold; curing salt stays "
    "as it was for the meat. Less salt keeps less well: dry it as dry, and keep it as cold."
)
_WIDTHS = (25, 33, 13)
_SAME = 0.001


def target_page(title: str, found: Answers) -> Iterator[Line]:
    """Yield the page, 80 columns.

    Args:
        title: of the recipe.
        found: every change that was tried.
    """
    for text in wrap(title, COLUMNS):
        yield Line(text, Style.TITLE)
    goal = found.goal
    now = goal.range(found.now.estimate)
    if now is None:
        names = " and ".join(map(spoken, found.now.estimate.no_sodium_total))
        yield from _say(f"No {NAMES[goal.figure]} total: {names} has no weight. Weigh it.")
        return
    yield from _say(f"Wanted: {_wanted(goal)}. Now: {_three(now)}.")
    if now.missing:
        yield from _say(
            f"{NAMES[goal.figure].capitalize()} of {listed(now.missing)} is not known and comes "
            "on top of every figure here: leave room for it.",
            Style.WARN,
        )
    if found.met_already:
        yield from _say("It is there already: nothing needs to change.")
        return
    ways = [one for one in found.options if one.reaches]
    for number, option in enumerate(ways, 1):
        yield from _way(number, option, found)
    if not ways:
        yield Line()
        yield from _say("No honest change gets there.", Style.WARN)
    yield from _not_enough([one for one in found.options if not one.reaches], goal)
    yield Line()
    yield from _say(HEAT_STAYS)


def target_data(found: Answers) -> dict[str, Any]:
    """Return the same as plain data."""
    goal = found.goal
    now = goal.range(found.now.estimate)
    return {
        "figure": goal.figure,
        "limit": goal.limit,
        "per": goal.per,
        "held_against": "likely" if goal.likely else "high",
        "now": _answer(found.now, goal),
        "missing": [] if now is None else list(now.missing),
        "met_already": found.met_already,
        "options": [
            {
                "change": one.change.key,
                "words": one.change.words,
                "reaches": one.reaches,
                "exact": None if one.exact is None else _answer(one.exact, goal),
                "measured": None if one.scooped is None else _answer(one.scooped, goal),
                "at_most": _answer(one.most, goal),
            }
            for one in found.options
        ],
    }


def _wanted(goal: Goal) -> str:
    unit = unit_of(goal.figure)
    per = "in a finished ounce" if goal.per == "ounce" else "in the batch"
    which = "likely" if goal.likely else "high"
    return (
        f"{NAMES[goal.figure]} of at most {digits(goal.limit, unit)} {unit} {per}, "
        f"by the {which} estimate"
    )


def _three(found: Range) -> str:
    low, likely, high = (digits(one, found.unit) for one in (found.low, found.likely, found.high))
    lead = "at least " if found.at_least else ""
    return f"{lead}{likely} {found.unit} ({low} to {high})"


def _way(number: int, option: Option, found: Answers) -> Iterator[Line]:
    assert option.scooped is not None
    answer, goal = option.scooped, found.goal
    held = goal.range(answer.estimate)
    assert held is not None
    yield Line()
    yield from (
        Line(text, Style.HEAD)
        for text in wrap(
            option.change.words_at(answer.share), COLUMNS, first=f"{number}. ", rest="   "
        )
    )
    for cells in _measures(found.now.scaled, answer.scaled):
        yield from (Line(f"   {text}") for text in table([cells], _WIDTHS, right=(2,)))
    for text in _soak_words(found.now, answer):
        yield from _say(text, first="   ", rest="   ")
    for text in (*_new_allergens(found.now, answer), *_more_nitrite(found.now, answer)):
        yield from _say(text, Style.WARN, first="   ", rest="   ")
    told = f"{NAMES[goal.figure].capitalize()}: {_three(held)}."
    yield from _say(f"{told} {_costs(found.now, answer, goal)}", first="   ", rest="   ")
    if option.exact is not None and not option.change.all_or_nothing:
        exact = goal.range(option.exact.estimate)
        assert exact is not None
        grams = ", ".join(_in_grams(found.now.scaled, option.exact.scaled))
        if grams:
            text = f"Weighed instead: {grams}: {_three(exact)}."
            yield from _say(text, Style.QUIET, first="   ", rest="   ")


def _measures(before: ScaledRecipe, after: ScaledRecipe) -> Iterator[tuple[str, str, str]]:
    """Yield what is measured otherwise: changed, new and left out."""
    old = {one.ingredient.name: one for one in before.ingredients}
    new = {one.ingredient.name: one for one in after.ingredients}
    for name, one in new.items():
        if name not in old or _differs(old[name], one):
            yield ingredient_name(one), measure_words(one), grams_words(one)
    for name, one in old.items():
        if name not in new:
            yield ingredient_name(one), "leave it out", ""


def _differs(one: ScaledIngredient, other: ScaledIngredient) -> bool:
    return one.measure.text != other.measure.text


def _in_grams(before: ScaledRecipe, after: ScaledRecipe) -> Iterator[str]:
    """Yield what to weigh of everything that changes."""
    old = {one.ingredient.name: _exact_g(one) for one in before.ingredients}
    for one in after.ingredients:
        was, now = old.get(one.ingredient.name), _exact_g(one)
        if one.food.curing or now is None:
            continue
        if was is None or abs(now / was - 1) > _SAME:
            yield f"{ingredient_name(one)} {grams_words(one)}"


def _exact_g(one: ScaledIngredient) -> float | None:
    """Return what an ingredient weighs before it is rounded to scoops [g]."""
    if one.mass is None:
        return None
    return float(one.mass.middle_g / (one.measure.taken if one.measure.within else 1))


def _soak_words(now: Answer, then: Answer) -> Iterator[str]:
    before, after = now.scaled.recipe.soak, then.scaled.recipe.soak
    if before.hours != after.hours:
        yield f"Soak {after.hours[1]:.2g} h in place of {before.hours[1]:.2g} h."
    if before.surface is not after.surface:
        yield "Pat the strips dry after the soak."


def _new_allergens(now: Answer, then: Answer) -> Iterator[str]:
    """Yield what the change brings in that was in nothing before."""
    before = allergens_of(now.scaled.recipe).contains
    for what, names in allergens_of(then.scaled.recipe).contains.items():
        if what not in before:
            yield clean(f"New in it: {what}, by the {listed(names)}. Read the pack.")


def _more_nitrite(now: Answer, then: Answer) -> Iterator[str]:
    """Yield each published method whose figure goes up: the same curing salt in less liquid."""
    before = {one.cites: one.ppm for one in ingoing(now.scaled)}
    for one in ingoing(then.scaled):
        was = before.get(one.cites)
        if one.ppm is None or was is None or one.ppm <= was:
            continue
        yield (
            f"The curing salt is the same and what it is in weighs less: nitrite by published "
            f"method, {one.method}, goes up to {_ppm(one.ppm)} ppm (was {_ppm(was)}). All counted "
            "as absorbed it stays what it was."
        )


def _ppm(found: Fraction) -> str:
    return f"{float(found):,.1f}".removesuffix(".0")


def _costs(now: Answer, then: Answer, goal: Goal) -> str:
    """Return what else changes: the other figure, volume, saltiness and doubt."""
    other = "sugars_g" if goal.figure == "sodium_mg" else "sodium_mg"
    parts = []
    a, b = now.estimate.per_ounce[other], then.estimate.per_ounce[other]
    if a is not None and b is not None:
        unit = a.unit
        lead = "at least " if b.missing else ""
        parts.append(
            f"{NAMES[other]} {lead}{digits(b.likely, unit)} {unit} (was {digits(a.likely, unit)})"
        )
    parts += _marinade_words(now, then)
    before_doubt, after_doubt = _doubt(now, goal), _doubt(then, goal)
    parts.append(f"doubt ±{after_doubt:.0f} % (was ±{before_doubt:.0f})")
    text = "; ".join(parts)
    return f"{text[0].upper()}{text[1:]}."


def _marinade_words(now: Answer, then: Answer) -> Iterator[str]:
    """Yield the marinade: all of it by weight, and how much of that is salt and how much runs."""
    before, after = marinade_g(now), marinade_g(then)
    if not before or not after:
        return
    text = f"marinade {after:,.0f} g in all (was {before:,.0f})"
    salt = marinade_salt_percent(now), marinade_salt_percent(then)
    if None not in salt:
        text += f", {salt[1]:.1f} % of it salt (was {salt[0]:.1f})"
    liquid = marinade_ml(now.scaled), marinade_ml(then.scaled)
    if liquid[0] and liquid[1] is not None:
        text += f", {liquid[1]:,.0f} mL of it liquid (was {liquid[0]:,.0f})"
    yield text


def _doubt(answer: Answer, goal: Goal) -> float:
    held = goal.range(answer.estimate)
    if held is None or not held.likely:
        return 0.0
    return (held.high - held.low) / 2 / held.likely * 100


def _not_enough(options: list[Option], goal: Goal) -> Iterator[Line]:
    for one in options:
        held = goal.range(one.most.estimate)
        if held is None:
            continue
        text = (
            f"Not enough: {one.change.words_at(one.most.share)}: {_three(held)} at the most of it."
        )
        yield Line()
        yield from _say(text, Style.QUIET)


def _answer(answer: Answer, goal: Goal) -> dict[str, Any]:
    held = goal.range(answer.estimate)
    sugars, sodium = answer.estimate.per_ounce["sugars_g"], answer.estimate.per_ounce["sodium_mg"]
    return {
        "share": float(answer.share),
        "low": None if held is None else held.low,
        "likely": None if held is None else held.likely,
        "high": None if held is None else held.high,
        "sodium_mg_per_oz": None if sodium is None else sodium.likely,
        "sugars_g_per_oz": None if sugars is None else sugars.likely,
        "marinade_g": marinade_g(answer),
        "marinade_ml": marinade_ml(answer.scaled),
        "marinade_salt_percent": marinade_salt_percent(answer),
        "nitrite_ppm": {
            one.cites: None if one.ppm is None else float(one.ppm) for one in ingoing(answer.scaled)
        },
        "allergens": sorted(allergens_of(answer.scaled.recipe).contains),
        "soak_hours": answer.scaled.recipe.soak.hours[1],
        "surface": answer.scaled.recipe.soak.surface.value,
        "ingredients": [
            {
                "name": one.ingredient.name,
                "food": one.food.key,
                "measure": one.measure.text,
                "mass_g": None if one.mass is None else float(one.mass.middle_g),
            }
            for one in answer.scaled.ingredients
        ],
    }


def _say(
    text: str, style: Style = Style.PLAIN, *, first: str = "", rest: str = ""
) -> Iterator[Line]:
    return (Line(one, style) for one in wrap(clean(text), COLUMNS, first=first, rest=rest))
