"""What ``scale`` prints: what to measure, what an ounce will hold, and what to mind."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from tarebook.cards.bars import bars
from tarebook.cards.figures import NAMES, NO_TOTAL, NOT_KNOWN, ceiling, digits, nothing_known
from tarebook.cards.lines import Line, Style, clean, row, table, wrap
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
)
from tarebook.cards.worksheet import Allergens, Worksheet
from tarebook.figures.foods import food, salt_kinds
from tarebook.figures.nutrients import nutrients
from tarebook.figures.spoken import spoken
from tarebook.findings import Severity
from tarebook.nutrition import Estimate
from tarebook.nutrition.ceiling import outweighed
from tarebook.nutrition.range import Range
from tarebook.quantities.words import format_mass_g, format_pounds
from tarebook.recipe.model import Part
from tarebook.safety import Caution
from tarebook.scaling import ScaledIngredient
from tarebook.scaling.measuring import exact_text

COLUMNS = 80
_NAME, _MEASURE, _GRAMS = 24, 32, 10
_NAMED, _LOOKED_FOR = 4, ("sodium_mg", "sugars_g")
"""How many unknown figures of a food are named in one line, and which of more than that."""
THE_OTHERS = "The other cautions: the same command without --short."
NO_CEILING = "No ceiling is told: the marinade outweighs the meat, and most of it is poured away."


def sheet(sheet: Worksheet, *, exact: bool = False, short: bool = False) -> Iterator[Line]:
    """Yield the lines of a scaled recipe, 80 columns.

    Args:
        sheet: everything about the recipe at today's size.
        exact: show the exact scaled amount of each ingredient as well.
        short: amounts, figures and grave cautions only.
    """
    yield from _heading(sheet)
    for part in Part:
        yield from _part(sheet, part, exact=exact)
    yield from _cure(sheet)
    yield from figures_block(sheet.estimate, short=short)
    yield from unknowns(sheet.estimate)
    if short:
        yield from grave_lines(sheet.cautions, COLUMNS)
        return
    yield from _of_a_day(sheet)
    yield Line()
    yield from allergens_lines(sheet.allergens, COLUMNS)
    yield from caution_lines(sheet.cautions, COLUMNS)


def _heading(sheet: Worksheet) -> Iterator[Line]:
    recipe, scaled = sheet.recipe, sheet.scaled
    for text in wrap(recipe.title, COLUMNS):
        yield Line(text, Style.TITLE)
    meat = food(recipe.meat.food).name
    size = f"{format_pounds(scaled.meat_mass_g)} ({format_mass_g(scaled.meat_mass_g)}) of {meat}"
    yield from _lines(wrap(f"For {size}: {_times(float(scaled.factor))}.", COLUMNS))


def _times(factor: float) -> str:
    return "as written" if factor == 1 else f"{factor:.3g} times the recipe"


def _part(sheet: Worksheet, part: Part, *, exact: bool) -> Iterator[Line]:
    items = [one for one in sheet.scaled.ingredients if one.ingredient.part is part]
    if not items:
        return
    yield Line()
    widths = (_NAME, _MEASURE, _GRAMS)
    yield Line(row((PARTS[part], "measure", "weighs"), widths, right=(2,)), Style.HEAD)
    for one in items:
        cells = (ingredient_name(one), measure_words(one), grams_words(one))
        yield from _lines(table([cells], widths, right=(2,)))
        for note in _notes(one, exact=exact):
            yield from _quiet(wrap(note, COLUMNS, first="    ", rest="    "))


def _notes(one: ScaledIngredient, *, exact: bool) -> Iterator[str]:
    if exact:
        yield f"exactly {exact_text(one.measure.exact)}"
    if one.ingredient.note:
        yield one.ingredient.note


def _cure(sheet: Worksheet) -> Iterator[Line]:
    if sheet.cure is None:
        return
    yield Line()
    for text in cure_sentences(sheet):
        yield from _lines(wrap(text, COLUMNS))


def figures_block(found: Estimate, *, short: bool = False) -> Iterator[Line]:
    """Yield the figures per finished ounce, low, likely and high; short, those alone."""
    yield Line()
    yield Line("Home estimate for one finished ounce", Style.HEAD)
    widths = (24, 12, 12, 12, 6)
    yield Line(row((found.ounce.words, "low", "likely", "high", ""), widths, right=(1, 2, 3)))
    for figure, value in found.per_ounce.items():
        name = NAMES[figure] + (" *" if value is not None and value.rough else "")
        yield Line(row((name, *_three(value)), widths, right=(1, 2, 3)))
    yield Line(row(("trans fat", "", NOT_KNOWN, "", ""), widths, right=(1, 2, 3)))
    yield from _bottom(found)
    if not short:
        yield Line()
        rows = [(NAMES[one], found.per_ounce[one]) for one in ("sodium_mg",)]
        yield from (Line(text) for text in bars(rows, 64, name_columns=14))


def _three(value: Range | None) -> tuple[str, str, str, str]:
    if value is None:
        return "", NO_TOTAL, "", ""
    if nothing_known(value):
        return "", NOT_KNOWN, "", ""
    lead = "≥ " if value.at_least else ""
    low, likely, high = (digits(n, value.unit) for n in (value.low, value.likely, value.high))
    return lead + low, lead + likely, lead + high, value.unit


def _bottom(found: Estimate) -> Iterator[Line]:
    if found.ceiling_sodium_mg_per_oz is not None:
        text = (
            f"Sodium with everything counted, nothing poured away: at most about "
            f"{ceiling(found.ceiling_sodium_mg_per_oz)} mg."
        )
        yield from _lines(wrap(text, COLUMNS))
    elif _known(found.per_ounce["sodium_mg"]) and outweighed(found.facts):
        yield from _lines(wrap(NO_CEILING, COLUMNS))
    yield from _lines(wrap(finished_words(found), COLUMNS))
    if any(value is not None and value.rough for value in found.per_ounce.values()):
        yield Line("* rougher than the rest", Style.QUIET)
    yield from _quiet(
        wrap(
            "Low to high holds nine batches of ten, if the recipe and the cut are as said.", COLUMNS
        )
    )


def _known(value: Range | None) -> bool:
    return value is not None and not value.missing


def unknowns(found: Estimate) -> Iterator[Line]:
    """Yield what is not known and whose doing it is."""
    if found.no_sodium_total:
        names = " and ".join(map(spoken, found.no_sodium_total))
        kinds = ", ".join(salt_kinds())
        text = (
            f"No sodium total: {names} has no weight. Weigh it; or measure it and name its kind, "
            f"since a spoon of one crystal holds up to twice as much salt as of another: {kinds}."
        )
        yield from (Line(one, Style.WARN) for one in wrap(text, COLUMNS))
    borrowed = nutrients(found.facts.meat_name)["sodium_mg"].note
    if borrowed:
        text = f"Sodium of {found.facts.meat_name} itself: {borrowed}."
        yield from (Line(one, Style.WARN) for one in wrap(text, COLUMNS))
    for text in borrowed_sentences(found):
        yield from (Line(one, Style.WARN) for one in wrap(text, COLUMNS))
    gaps: dict[tuple[str, ...], list[str]] = {}
    for figure, value in found.per_ounce.items():
        if value is not None and value.missing:
            gaps.setdefault(value.missing, []).append(NAMES[figure])
    for names_missing, figures in gaps.items():
        text = f"≥ at least: {_counted(figures)} of {listed(names_missing)} not known."
        yield from _quiet(wrap(clean(text), COLUMNS, rest="  "))
    bounded = [one.figures_of for one in found.facts.lines if one.makeup.sugars_bounded]
    if bounded:
        text = (
            f"Sugars of {listed(dict.fromkeys(bounded))} not stated: counted as anything from none "
            "to all its carbohydrate that is no fibre."
        )
        yield from _quiet(wrap(clean(text), COLUMNS, rest="  "))


def _counted(figures: Sequence[str]) -> str:
    """Return figures by name; of a long row, those that are looked for, and how many more."""
    if len(figures) <= _NAMED:
        return ", ".join(figures)
    first = [one for one in (NAMES[key] for key in _LOOKED_FOR) if one in figures]
    return f"{', '.join(first)} and {len(figures) - len(first)} further figures marked so"


def _of_a_day(sheet: Worksheet) -> Iterator[Line]:
    if not sheet.of_a_day:
        return
    from tarebook.cards.a_day_words import HEAD, a_day_sentences

    yield Line()
    yield Line(HEAD, Style.HEAD)
    for text in a_day_sentences(sheet):
        yield from _lines(wrap(text, COLUMNS))


def allergens_lines(found: Allergens, columns: int) -> Iterator[Line]:
    """Yield allergens by kind of ingredient, and the packs to read."""
    for text in allergen_sentences(found):
        yield from _lines(wrap(text, columns, rest="  "))


def caution_lines(
    cautions: tuple[Caution, ...], columns: int, *, cited: bool = True
) -> Iterator[Line]:
    """Yield every caution with its source, gravest first; where short is asked for, without."""
    yield Line()
    yield Line("Mind", Style.HEAD)
    for one in cautions:
        style = Style.WARN if one.severity is not Severity.NOTE else Style.PLAIN
        text = f"{one.title}. {one.text}" + (f" [{one.citation}]" if cited else "")
        yield from (Line(t, style) for t in wrap(text, columns, first="- ", rest="  "))


def grave_lines(cautions: tuple[Caution, ...], columns: int) -> Iterator[Line]:
    """Yield the grave cautions without their sources, and where all the others are."""
    grave = tuple(one for one in cautions if one.severity is not Severity.NOTE)
    yield from caution_lines(grave, columns, cited=False)
    yield Line()
    yield Line(THE_OTHERS, Style.QUIET)


def _lines(texts: Iterator[str]) -> Iterator[Line]:
    return (Line(text) for text in texts)


def _quiet(texts: Iterator[str]) -> Iterator[Line]:
    return (Line(text, Style.QUIET) for text in texts)
