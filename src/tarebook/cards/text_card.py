"""The recipe card as text, 60 columns: to print, to tape inside a cupboard door."""

from __future__ import annotations

from collections.abc import Iterator

from tarebook.cards.figures import NAMES, NO_TOTAL, NOT_KNOWN, digits, nothing_known, span
from tarebook.cards.lines import Line, Style, table, wrap
from tarebook.cards.sheet import (
    allergens_lines,
    caution_lines,
    finished_words,
    grams_words,
    ingredient_name,
    measure_words,
)
from tarebook.cards.worksheet import Worksheet
from tarebook.figures.daily_values import daily_values
from tarebook.figures.foods import food
from tarebook.nutrition.rounding import percent_daily_value, round_label
from tarebook.quantities.words import format_mass_g, format_pounds
from tarebook.recipe.model import HeatStep, Part

COLUMNS = 60
NOT_A_LABEL = "Home estimate, not a retail label."
_PARTS = {Part.MARINADE: "Marinade", Part.RUB: "Rub", Part.MIXED_IN: "Mixed in"}


def text_card(sheet: Worksheet) -> Iterator[Line]:
    """Yield the card: what to measure, the steps, the figures, and what to mind."""
    yield from _title(sheet)
    for part in Part:
        yield from _part(sheet, part)
    yield from _cure(sheet)
    yield from _method(sheet)
    yield from _figures(sheet)
    yield Line()
    yield from allergens_lines(sheet, COLUMNS)
    yield from caution_lines(sheet.cautions, COLUMNS)
    yield Line()
    yield Line(NOT_A_LABEL, Style.HEAD)


def _title(sheet: Worksheet) -> Iterator[Line]:
    for text in wrap(sheet.recipe.title.upper(), COLUMNS):
        yield Line(text, Style.TITLE)
    yield Line("=" * COLUMNS)
    mass = sheet.scaled.meat_mass_g
    meat = food(sheet.recipe.meat.food).name
    yield from _say(f"For {format_pounds(mass)} ({format_mass_g(mass)}) of {meat}")
    if sheet.recipe.about:
        yield from _say(sheet.recipe.about)


def _part(sheet: Worksheet, part: Part) -> Iterator[Line]:
    items = [one for one in sheet.scaled.ingredients if one.ingredient.part is part]
    if not items:
        return
    yield Line()
    yield Line(_PARTS[part], Style.HEAD)
    rows = [(ingredient_name(one), measure_words(one), grams_words(one)) for one in items]
    yield from (Line(text) for text in table(rows, (20, 26, 10), right=(2,)))
    for one in items:
        if one.ingredient.note:
            yield from _say(f"{ingredient_name(one)}: {one.ingredient.note}")


def _cure(sheet: Worksheet) -> Iterator[Line]:
    if sheet.cure is not None:
        yield Line()
        for text in sheet.cure.lines():
            yield from _say(text)


def _method(sheet: Worksheet) -> Iterator[Line]:
    recipe = sheet.recipe
    yield Line()
    yield Line("Method", Style.HEAD)
    if any(one.part is Part.MARINADE for one in recipe.ingredients):
        low, _, high = recipe.soak.hours
        hours = f"{low:g}" if low == high else f"{low:g} to {high:g}"
        stated = hours if recipe.soak.stated else "not stated"
        yield from _say(f"Soak: {stated} h in the refrigerator, then {recipe.soak.surface.value}.")
    if recipe.heat is not HeatStep.UNSTATED:
        yield from _say(f"Heat: {recipe.heat.value}.")
    if recipe.drying.temperature_f:
        yield from _say(f"Dry: {_temperature(recipe.drying.temperature_f)}{_hours(sheet)}.")
    for number, step in enumerate(recipe.steps, 1):
        lead = f"{number}. "
        yield from (Line(text) for text in wrap(step, COLUMNS, first=lead, rest=" " * len(lead)))
    for note in recipe.notes:
        yield from (Line(text) for text in wrap(note, COLUMNS, first="Note: ", rest="  "))


def _temperature(ends: tuple[float, float]) -> str:
    fahrenheit = "-".join(dict.fromkeys(f"{end:.0f}" for end in ends))
    celsius = "-".join(dict.fromkeys(f"{(end - 32) / 1.8:.0f}" for end in ends))
    return f"{fahrenheit} °F ({celsius} °C)"


def _hours(sheet: Worksheet) -> str:
    hours = sheet.recipe.drying.hours
    if hours is None:
        return ""
    return f", {'-'.join(dict.fromkeys(f'{end:g}' for end in hours))} h"


def _figures(sheet: Worksheet) -> Iterator[Line]:
    found = sheet.estimate
    yield Line()
    yield Line("Home estimate for one finished ounce", Style.HEAD)
    yield Line(f"({found.ounce.words}; likely value rounded as labels round)")
    rows = []
    for figure, value in found.per_ounce.items():
        if value is None:
            rows.append((NAMES[figure], NO_TOTAL, "", ""))
            continue
        if nothing_known(value):
            rows.append((NAMES[figure], NOT_KNOWN, "", ""))
            continue
        if value.at_least:
            # What is missing cannot be rounded away: the floor stands unrounded, with no share.
            floor = f"≥ {digits(value.low, value.unit)} {value.unit}"
            rows.append((NAMES[figure], floor, "", ""))
            continue
        rounded = f"{round_label(figure, value.likely)} {value.unit}"
        rows.append((NAMES[figure], rounded, _share_of_day(figure, value.likely), span(value)))
    rows.append((NAMES["trans_g"], NOT_KNOWN, "", ""))
    yield from (Line(text) for text in table(rows, (16, 18, 8, 14), right=(1, 2)))
    if found.ceiling_sodium_mg_per_oz is not None:
        yield from _say(
            f"Sodium, everything counted: at most about {found.ceiling_sodium_mg_per_oz:,.0f} mg."
        )
    yield from _say(finished_words(found))
    if found.no_sodium_total:
        yield from _say(
            f"No sodium total: {', '.join(found.no_sodium_total)} has no weight: weigh it."
        )


def _say(text: str) -> Iterator[Line]:
    return (Line(one) for one in wrap(text, COLUMNS))


def _share_of_day(figure: str, amount: float) -> str:
    daily = daily_values().get(figure)
    # A share of protein needs its quality, which nobody has stated here.
    if daily is None or daily.amount is None or figure == "protein_g":
        return ""
    return f"{percent_daily_value(figure, amount, daily.amount)} % DV"
