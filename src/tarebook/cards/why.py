"""Every assumption behind the figures, and which of them matters most: what ``--why`` prints."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from tarebook.cards.figures import NAMES, digits, span
from tarebook.cards.lines import Line, Style, row, table, wrap
from tarebook.cards.worksheet import Worksheet
from tarebook.nutrition import Assumption, unit_of
from tarebook.nutrition.activity import activity_band
from tarebook.nutrition.ceiling import Ceiling
from tarebook.nutrition.doubt import Doubt, doubt
from tarebook.nutrition.narrowing import narrowings
from tarebook.nutrition.swings import Swing, at, swings

COLUMNS = 80
_CODES = "P published, C computed, W working value, M from memory, F fact of this recipe"
_NO_TEST = (
    "Strips dry unevenly and the thick end is the wettest; a band from arithmetic tests nothing "
    "and tells nothing of how long it keeps."
)
_KINDS = (
    "Inputs: what was measured, cut, soaked, heated and dried, each as unsure as listed below. "
    "Model: how far such a sum may be off for meat of which no batch was analysed."
)
_BAR = 22
_MOST = 8
_FIGURES = ("sodium_mg", "sugars_g")


def why(sheet: Worksheet) -> Iterator[Line]:
    """Yield what matters most to sodium and sugars, then every assumption with its range."""
    for figure in _FIGURES:
        if sheet.estimate.per_ounce[figure] is not None:
            yield from _matters(sheet, figure)
    yield from _apart(sheet)
    yield from _narrower(sheet)
    yield from _most(sheet)
    yield Line()
    yield Line("Every assumption: 5 %, middle and 95 % point", Style.HEAD)
    yield Line(_CODES, Style.QUIET)
    for one in sheet.estimate.assumptions.values():
        yield from _assumption(one)


def why_data(sheet: Worksheet) -> dict[str, Any]:
    """Return the same as plain data."""
    return {
        "assumptions": [
            {
                "name": one.name,
                "p5": at(one, 0.05),
                "p50": at(one, 0.50),
                "p95": at(one, 0.95),
                "unit": one.unit,
                "code": one.code,
                "reason": one.reason,
                "source": one.source or None,
            }
            for one in sheet.estimate.assumptions.values()
        ],
        "doubt_apart": {
            figure: {
                "inputs_alone": {"low": found.inputs.low, "high": found.inputs.high},
                "model_alone": {"low": found.model.low, "high": found.model.high},
            }
            for figure in _FIGURES
            if (found := _doubt(sheet, figure)) is not None
        },
        "ceiling": None if sheet.estimate.ceiling is None else sheet.estimate.ceiling._asdict(),
        "to_narrow_sodium": [
            {"do": one.words, "after": {"low": one.after.low, "high": one.after.high}}
            for one in narrowings(sheet.estimate.facts, ounce=sheet.estimate.ounce)
        ],
        "swings_per_ounce": {
            figure: [
                {"name": one.input.name, "at_p10": one.at_low, "at_p90": one.at_high}
                for one in _swings(sheet, figure)
            ]
            for figure in _FIGURES
            if sheet.estimate.per_ounce[figure] is not None
        },
    }


def activity_lines(sheet: Worksheet) -> Iterator[Line]:
    """Yield the water activity of the batch as a band, or that none can be told."""
    found = activity_band(sheet.estimate.facts)
    text = "none is told for what is not meat" if found is None else str(found)
    yield Line()
    yield from (Line(one) for one in wrap(f"Water activity: {text}. {_NO_TEST}", COLUMNS))


def activity_data(sheet: Worksheet) -> dict[str, float] | None:
    """Return the same as plain data; null for what is not meat."""
    found = activity_band(sheet.estimate.facts)
    if found is None:
        return None
    return {"low": found.low, "likely": found.likely, "high": found.high}


def _swings(sheet: Worksheet, figure: str) -> tuple[Swing, ...]:
    return swings(sheet.estimate.facts, figure, ounce=sheet.estimate.ounce)


def _matters(sheet: Worksheet, figure: str) -> Iterator[Line]:
    found = _swings(sheet, figure)[:_MOST]
    if not found:
        return
    unit = unit_of(figure)
    yield Line()
    yield Line(f"What moves {NAMES[figure]} most, each from its 10 to its 90 % point", Style.HEAD)
    widest = found[0].size
    for one in found:
        bar = "█" * max(round(one.size / widest * _BAR), 1)
        moved = f"{digits(one.at_low, unit)} to {digits(one.at_high, unit)} {unit}"
        yield from (Line(text) for text in table([(_short(one), bar, moved)], (36, _BAR, 16)))


def _short(one: Swing) -> str:
    """Return what an input is, without where its range comes from."""
    return one.input.reason.partition(" (")[0]


def _doubt(sheet: Worksheet, figure: str) -> Doubt | None:
    return doubt(sheet.estimate.facts, figure, ounce=sheet.estimate.ounce)


def _apart(sheet: Worksheet) -> Iterator[Line]:
    """Say what is doubt of the inputs and what is doubt of the model itself."""
    told = [(figure, found) for figure in _FIGURES if (found := _doubt(sheet, figure)) is not None]
    if not told:
        return
    yield Line()
    yield Line("Two kinds of doubt, each alone; the range shown holds both", Style.HEAD)
    widths = (20, 18, 18, 18)
    yield Line(row(("", "inputs alone", "model alone", "both"), widths))
    for figure, found in told:
        both = span(sheet.estimate.per_ounce[figure])
        cells = (NAMES[figure], span(found.inputs), span(found.model), both)
        yield Line(row(cells, widths))
    yield from (Line(text, Style.QUIET) for text in wrap(_KINDS, COLUMNS))


def _narrower(sheet: Worksheet) -> Iterator[Line]:
    """Say in one line what would narrow sodium most."""
    found = narrowings(sheet.estimate.facts, ounce=sheet.estimate.ounce)
    now = sheet.estimate.per_ounce["sodium_mg"]
    if not found or now is None:
        return
    yield Line()
    text = f"To narrow sodium: {found[0].words}: from {span(now)} to {span(found[0].after)}."
    yield from (Line(one) for one in wrap(text, COLUMNS))


def _most(sheet: Worksheet) -> Iterator[Line]:
    """Say how the ceiling comes about, so that it can be worked out again by hand."""
    most = sheet.estimate.ceiling
    if most is None:
        return
    parts = [
        f"{amount:,.0f} mg {what}" + (f" x {factor:.4g}" if factor != 1 else "")
        for amount, what, factor in (
            (most.labelled_mg, "of what was measured", most.allowance),
            (most.pure_mg, "of weighed salt", 1),
            (most.own_mg, "of the meat itself", most.own_factor),
        )
        if amount
    ]
    text = (
        f"({' + '.join(parts)}) / {most.weight_g:,.1f} g x {most.ounce_g:.2f} g = "
        f"{most.counted_mg:,.0f} mg. {_shared_among(most)} A label's figure may be "
        f"{100 * (most.allowance - 1):.0f} % too low; "
        f"{most.own_factor:.4g} is the most that is drawn for the meat's own."
    )
    if most.by_range:
        text += f" The high estimate, {most.per_ounce_mg:,.0f} mg, is above that, and stands."
    yield Line()
    yield Line("How the sodium with everything counted comes about", Style.HEAD)
    yield from (Line(one) for one in wrap(text, COLUMNS))


def _shared_among(most: Ceiling) -> str:
    """Return what the weight is that the sodium is shared among."""
    if most.solids_g is None:
        return "The weight is the finished batch's on the scale."
    if most.protein_g is None:
        return (
            "The weight is the least there could be: the dry matter of meat and marinade, all kept."
        )
    return (
        "The weight is the least there could be: dry matter of meat and marinade, all kept "
        f"({most.solids_g:,.1f} g), and {most.ratio:g} g of water to each of {most.protein_g:,.1f} "
        "g of protein."
    )


def _assumption(one: Assumption) -> Iterator[Line]:
    ends = (_shown(at(one, point)) for point in (0.05, 0.50, 0.95))
    unit = f" {one.unit}" if one.unit else ""
    head = f"{one.name}: {' / '.join(ends)}{unit} [{one.code}]"
    yield from (Line(text) for text in wrap(head, COLUMNS))
    told = f"{one.reason} [{one.source}]" if one.source else one.reason
    yield from (Line(text, Style.QUIET) for text in wrap(told, COLUMNS, first="    ", rest="    "))


def _shown(value: float) -> str:
    return f"{value:.3g}"
