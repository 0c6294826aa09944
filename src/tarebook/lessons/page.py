"""What ``batch lessons`` prints, and what ``batch show`` adds: figures by the weights so far."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Any

from tarebook.cards.figures import NAMES, NOT_KNOWN, likely, span
from tarebook.cards.keys import range_data
from tarebook.cards.lines import Line, Style, clean, row, wrap
from tarebook.cards.words import listed
from tarebook.cards.worksheet import Worksheet
from tarebook.lessons.tables import ALL, MEASURES, Spread, Taught
from tarebook.nutrition import Estimate
from tarebook.nutrition.range import Range

COLUMNS = 80
_WIDTHS = (24, 8, 20, 20)
_TWO = (14, 64)
_NAMED = {
    "yield_fraction": "finished over raw",
    "gain_fraction": "gained in the soak",
    "soak_h": "hours soaked",
    "dry_h": "hours in the dryer",
}
_SHARES = ("yield_fraction", "gain_fraction")
_FIGURES = ("sodium_mg", "sugars_g")
_TOO_MOIST = "weighed-moist"  # the one caution that a weight brings
FEW = (
    "Few batches tell little: the next forecast leans on the model, the less the more batches "
    "there are. Home estimates."
)
NONE_YET = (
    "No batch was weighed raw and finished yet. tarebook batch start RECIPE --meat 6lb starts one; "
    "tarebook batch weigh finished 480g ends it."
)


def lessons_page(found: Sequence[Taught]) -> Iterator[Line]:
    """Yield counts and spread by recipe, 80 columns."""
    if not found:
        yield from _say(NONE_YET)
        return
    one_recipe = len(found) == 2  # of which all of the kitchen would say the same again
    for place, one in enumerate(found[:1] if one_recipe else found):
        if place:
            yield Line()
        batches = "1 batch" if one.batches == 1 else f"{one.batches} batches"
        name = "All of the kitchen" if one.recipe == ALL else clean(one.recipe)
        yield from _say(f"{name}, {batches}", Style.TITLE)
        yield Line(row(("", "told by", "mean, spread", "from, to"), _WIDTHS), Style.HEAD)
        for measure in MEASURES:
            if measure in one.spreads:
                yield Line(row(_cells(measure, one.spreads[measure]), _WIDTHS))
        if one.own_yield is not None:
            low, middle, high = (f"{100 * end:.0f}" for end in one.own_yield)
            yours = batches if one.batches > 1 else "batch"
            yield from _say(f"From your {yours}: {middle} % of the raw meat, {low}-{high}.")
    yield Line()
    yield from _say(FEW, Style.QUIET)


def lessons_data(found: Sequence[Taught]) -> list[dict[str, Any]]:
    """Return the same as plain data."""
    return [
        {
            "recipe": one.recipe or None,
            "batches": one.batches,
            "measures": {name: spread._asdict() for name, spread in one.spreads.items()},
            "own_yield": None if one.own_yield is None else list(one.own_yield),
        }
        for one in found
    ]


def lessons_rows(found: Sequence[Taught]) -> Iterator[list[str]]:
    """Yield the same as cells, one measure of a recipe a row."""
    yield ["recipe", "batches", "measure", "count", "mean", "deviation", "low", "high"]
    for one in found:
        for name, spread in one.spreads.items():
            numbers = (spread.mean, spread.deviation, spread.low, spread.high)
            cells = ["" if n is None else f"{n:.6g}" for n in numbers]
            yield [one.recipe, str(one.batches), name, str(spread.batches), *cells]


def figures_so_far(sheet: Worksheet) -> Iterator[Line]:
    """Yield what an ounce of a batch holds by the weights so far."""
    found = sheet.estimate
    weighed = "as weighed" if found.weighed else "not weighed yet"
    yield Line()
    yield Line(f"In one finished ounce, a home estimate ({weighed})", Style.HEAD)
    for figure in _FIGURES:
        yield Line(row((NAMES[figure], _likely_of(found.per_ounce[figure])), _TWO))
    yield from _missing(found)
    if found.weighed:
        share = f"{100 * found.yield_fraction.likely:.0f} %"
        yield from _say(f"{share} of the raw meat is left.")
    for caution in sheet.cautions:
        if caution.code == _TOO_MOIST:
            yield from _say(f"{caution.title}. {caution.text}", Style.WARN)
    if sheet.of_a_day:
        from tarebook.cards.a_day_words import a_day_sentences

        for text in a_day_sentences(sheet):
            yield from _say(text)


def figures_data(sheet: Worksheet) -> dict[str, Any]:
    """Return the same as plain data."""
    return {figure: range_data(sheet.estimate.per_ounce[figure]) for figure in _FIGURES}


def _likely_of(found: Range | None) -> str:
    """Return the likely value with low and high; "at least" where something is missing."""
    ends = span(found)
    return ends if found is None or ends == NOT_KNOWN else f"{likely(found)} ({ends})"


def _missing(found: Estimate) -> Iterator[Line]:
    """Yield what the figures lack, and whose doing it is."""
    gaps: dict[tuple[str, ...], list[str]] = {}
    for figure in _FIGURES:
        value = found.per_ounce[figure]
        if value is not None and value.missing:
            gaps.setdefault(value.missing, []).append(NAMES[figure])
    for names, figures in gaps.items():
        yield from _say(f"{' and '.join(figures).capitalize()} of {listed(names)} not known.")


def _cells(measure: str, found: Spread) -> tuple[str, str, str, str]:
    def told(value: float) -> str:
        return f"{100 * value:.1f} %" if measure in _SHARES else f"{value:.1f} h"

    spread = "" if found.deviation is None else f" ± {told(found.deviation)}"
    return (
        _NAMED[measure],
        str(found.batches),
        f"{told(found.mean)}{spread}",
        f"{told(found.low)} to {told(found.high)}",
    )


def _say(text: str, style: Style = Style.PLAIN) -> Iterator[Line]:
    return (Line(one, style) for one in wrap(text, COLUMNS))
