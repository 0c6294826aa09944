"""The words of a recipe card, in order, before anything decides how they look.

Text, Markdown, HTML and paper all print from here, so that no card says less than another.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from tarebook.cards.figures import (
    NAMES,
    NO_TOTAL,
    NOT_KNOWN,
    ceiling,
    digits,
    likely,
    nothing_known,
    span,
)
from tarebook.cards.lines import clean
from tarebook.cards.on_paper import on_paper
from tarebook.cards.own_steps import without_pouring
from tarebook.cards.words import (
    PARTS,
    allergen_sentences,
    borrowed_sentences,
    cure_sentences,
    finished_words,
    grams_words,
    ingredient_name,
    listed,
    measure_words,
    soak_place,
    temperature_words,
)
from tarebook.cards.worksheet import Worksheet
from tarebook.figures.daily_values import daily_values
from tarebook.figures.foods import food
from tarebook.nutrition import Estimate
from tarebook.nutrition.range import Range
from tarebook.nutrition.rounding import percent_daily_value, round_label
from tarebook.quantities.words import format_mass_g, format_pounds
from tarebook.recipe.model import HeatStep, Part, Soak
from tarebook.safety import Case, Caution
from tarebook.safety.method import (
    dryer_mark,
    for_another_heat,
    heat_line,
    hours_mark,
    soak_mark,
    steps_head,
    until_words,
)
from tarebook.safety.steps import marked
from tarebook.scaling import ScaledIngredient
from tarebook.tuples import NamedTuple

NOT_A_LABEL = "Home estimate, not a retail label."
CURE_HEAD = "Curing salt"
FIGURES_HEAD = "Home estimate for one finished ounce"


class Measured(NamedTuple):
    """One ingredient: what to call it, what to take, what the scale reads, and a remark."""

    name: str
    measure: str
    weighs: str
    note: str


class Group(NamedTuple):
    """Ingredients that go in together, under a heading."""

    heading: str
    items: tuple[Measured, ...]


class FigureRow(NamedTuple):
    """One figure of an ounce: likely value, share of a day, low to high.

    The likely value is rounded as labels round, but never to outside of its own range.

    Attributes:
        figure: its name in the tables, as ``sodium_mg``; empty for one that is never known.
        name: what the card calls it.
        amount: with unit; ``at least`` where something is missing; or that it is not known.
        share: ``12 % DV``, or empty.
        span: ``208-364 mg``, or empty; ``≥`` before it where something is missing.
    """

    figure: str
    name: str
    amount: str
    share: str = ""
    span: str = ""


class Content(NamedTuple):
    """Everything a card says, in the order it says it.

    Attributes:
        title, about: as the recipe has them; control characters taken out.
        size: ``For 6 lb (2,722 g) of venison``.
        groups: what to measure.
        cure: ingoing nitrite by the published methods; empty without curing salt.
        conditions: soak, heat and drying, one sentence each; at the end the line that stands
            above the recipe's own steps, where it has any.
        steps, notes: as the recipe has them; a mark before those that are not to be followed, and
            today's heat step among them where they were written for another.
        figures_foot: which ounce, and how the figures are rounded.
        figures: the table of an ounce.
        beneath: sentences under the table: the most sodium there could be, the finished weight,
            an ounce held against the house's own figures for a day.
        allergens: sentences.
        cautions: gravest first, each with who says so.
        foot: the last line.
    """

    title: str
    about: str
    size: str
    groups: tuple[Group, ...]
    cure: tuple[str, ...]
    conditions: tuple[str, ...]
    steps: tuple[str, ...]
    notes: tuple[str, ...]
    figures_foot: str
    figures: tuple[FigureRow, ...]
    beneath: tuple[str, ...]
    allergens: tuple[str, ...]
    cautions: tuple[Caution, ...]
    foot: str = NOT_A_LABEL


def content(sheet: Worksheet) -> Content:
    """Return the words of a card.

    Args:
        sheet: the recipe at today's size, as ``worksheet`` makes it.
    """
    recipe, mass = sheet.recipe, sheet.scaled.meat_mass_g
    found = sheet.estimate
    return Content(
        title=clean(recipe.title),
        about=clean(recipe.about),
        size=f"For {format_pounds(mass)} ({format_mass_g(mass)}) of {food(recipe.meat.food).name}",
        groups=tuple(_groups(sheet)),
        cure=tuple(cure_sentences(sheet)),
        conditions=tuple(_conditions(sheet)),
        steps=tuple(clean(step) for step in _steps(sheet)),
        notes=tuple(clean(note) for note in marked(sheet.case, "note")),
        figures_foot=f"{found.ounce.words}; likely value rounded as labels round, within its range",
        figures=tuple(_figures(found)),
        beneath=(*_beneath(found), *_of_a_day(sheet)),
        allergens=tuple(allergen_sentences(sheet.allergens)),
        cautions=on_paper(sheet.cautions),
    )


def _steps(sheet: Worksheet) -> Iterable[str]:
    """Return the recipe's steps, as they go with today's heat step and what is poured away."""
    case, steps = sheet.case, marked(sheet.case, "step")
    kept = not sheet.recipe.soak.poured_away or _boiled_down_today(case)
    if kept and case.soaked:
        steps = without_pouring(steps)
    if not for_another_heat(case) and case.recipe.heat is not HeatStep.OVEN_AFTER:
        return steps
    from tarebook.cards.todays_heat import with_todays_heat

    return with_todays_heat(tuple(steps), case)


def _boiled_down_today(case: Case) -> bool:
    """Return whether the marinade is kept for today's heat step, whatever the steps say of it."""
    return for_another_heat(case) and case.recipe.heat is HeatStep.BOILED_DOWN


def _groups(sheet: Worksheet) -> Iterator[Group]:
    for part in Part:
        items = [one for one in sheet.scaled.ingredients if one.ingredient.part is part]
        if items:
            yield Group(PARTS[part], tuple(_measured(one) for one in items))


def _measured(one: ScaledIngredient) -> Measured:
    return Measured(
        ingredient_name(one), measure_words(one), grams_words(one), clean(one.ingredient.note)
    )


def _conditions(sheet: Worksheet) -> Iterator[str]:
    recipe = sheet.recipe
    if any(one.part is Part.MARINADE for one in recipe.ingredients):
        yield _soak(recipe.soak, soak_mark(sheet.case), kept=_boiled_down_today(sheet.case))
    heat = heat_line(sheet.case)
    if heat:
        yield heat
    if recipe.drying.temperature_f:
        air = temperature_words(recipe.drying.temperature_f) + dryer_mark(sheet.case)
        yield f"Dry: {air}{_drying_hours(sheet)}{until_words(sheet.case)}."
    head = steps_head(sheet.case)
    if head:
        yield head


def _soak(soak: Soak, mark: str = "", *, kept: bool = False) -> str:
    """Return how it soaks; where the recipe says no hours, which ones the figures stand on."""
    low, _, high = soak.hours
    hours = f"{low:g} h" if low == high else f"{low:g} to {high:g} h"
    then = f", then {soak.surface.value}" if soak.poured_away else "; nothing is poured away"
    if kept and soak.poured_away:
        then = "; the marinade is kept for the heat step"
    after = f"{soak_place(soak)}{mark}{then}."
    if soak.stated:
        return f"Soak: {hours} {after}"
    return f"Soak: {after} Hours not stated; figured for {hours}."


def _drying_hours(sheet: Worksheet) -> str:
    hours = sheet.recipe.drying.hours
    if hours is None:
        return hours_mark(sheet.case)
    return f", {'-'.join(dict.fromkeys(f'{end:g}' for end in hours))} h{hours_mark(sheet.case)}"


def _figures(found: Estimate) -> Iterator[FigureRow]:
    for figure, value in found.per_ounce.items():
        yield _figure(figure, value)
    yield FigureRow("", NAMES["trans_g"], NOT_KNOWN)


def _figure(figure: str, value: Range | None) -> FigureRow:
    name = NAMES[figure]
    if value is None:
        return FigureRow(figure, name, NO_TOTAL)
    if nothing_known(value):
        return FigureRow(figure, name, NOT_KNOWN)
    if value.at_least:
        # What is missing cannot be rounded away: the figure stands unrounded, with no share.
        return FigureRow(figure, name, likely(value), span=f"≥ {span(value)}")
    amount = f"{rounded(figure, value)} {value.unit}"
    return FigureRow(figure, name, amount, _share_of_day(figure, value.likely), span(value))


def rounded(figure: str, value: Range) -> str:
    """Return the likely value as a label rounds it; as it stands where that leaves its range.

    Args:
        figure: its name, as in ``NAMES``.
        value: its range.

    Returns:
        The number, or "less than 1", without its unit.
    """
    told = str(round_label(figure, value.likely))
    if not told[0].isdigit():  # "less than 1" is no number to lie outside of anything
        return told
    low, at, high = (
        float(text.replace(",", ""))
        for text in (digits(value.low, value.unit), told, digits(value.high, value.unit))
    )
    return told if low <= at <= high else digits(value.likely, value.unit)


def _share_of_day(figure: str, amount: float) -> str:
    daily = daily_values().get(figure)
    # A share of protein needs its quality, which nobody has stated here.
    if daily is None or daily.amount is None or figure == "protein_g":
        return ""
    return f"{percent_daily_value(figure, amount, daily.amount)} % DV"


def _beneath(found: Estimate) -> Iterator[str]:
    most = found.ceiling_sodium_mg_per_oz
    if most is not None:
        yield f"Sodium, everything counted: at most about {ceiling(most)} mg."
    yield finished_words(found, on_card=True)
    if found.no_sodium_total:
        names = listed(found.no_sodium_total)
        yield clean(f"No sodium total: {names} has no weight: weigh it.")
    yield from borrowed_sentences(found)


def _of_a_day(sheet: Worksheet) -> Iterator[str]:
    if sheet.of_a_day:
        from tarebook.cards.a_day_words import a_day_sentences

        yield from a_day_sentences(sheet)
