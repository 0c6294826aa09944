"""What ``drying`` prints: how long a batch may dry, and what ends it instead of the clock."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from tarebook.cards.bars import bars
from tarebook.cards.figures import percent
from tarebook.cards.keys import range_data
from tarebook.cards.lines import Line, Style, clean, row, wrap
from tarebook.cards.sheet import caution_lines
from tarebook.cards.words import temperature_words
from tarebook.cards.worksheet import Worksheet
from tarebook.figures.drying_times import DryingTime, drying_times
from tarebook.figures.sources import sources
from tarebook.figures.working import value
from tarebook.nutrition.range import Range
from tarebook.plan.hours import Hours
from tarebook.quantities.words import format_mass_g, format_pounds
from tarebook.safety import Case, Caution
from tarebook.safety.rulebook import rule
from tarebook.tuples import NamedTuple

COLUMNS = 80
_WIDTHS = (40, 12, 22)
_CORNERS = (40, 18, 18)
NO_CLOCK = (
    "No clock ends a drying: begin to test early, by a piece that has cooled, and let the thickest "
    "decide. A fuller dryer, damp air and crowded trays take longer, and no figure here holds them."
)
HEAT_APART = "The heat step is not part of these hours, and is never left out."
NOT_MEAT = "The times that others printed are about meat, and tell nothing of this."
_CODES = frozenset(
    {
        "bear-and-wild-pork",
        "dryer",
        "dryer-cool",
        "dryer-fixed",
        "dryer-mild",
        "dryer-weak",
        "finish-moist",
        "heat",
        "heat-first",
        "heat-missing",
        "no-rule",
        "oven-after",
        "oven-after-short",
        "thickness-blank",
        "thickness-over",
    }
)


class DryingSheet(NamedTuple):
    """What is known of how long a batch dries.

    Attributes:
        done: the recipe at today's size, cut and heat.
        thickness_mm: of a strip today [mm].
        air_c: of the dryer today [degC].
        stated: whether the recipe (or the cook) gives thickness, and whether it gives the air.
        answers: each way of telling the hours with its name, the best one first.
    """

    done: Worksheet
    thickness_mm: float
    air_c: float
    stated: tuple[bool, bool]
    answers: tuple[tuple[str, Hours], ...]

    @property
    def printed(self) -> tuple[DryingTime, ...]:
        """What others printed about it: nothing about what is not meat."""
        return drying_times() if Case.of(self.done.recipe).is_meat else ()

    @property
    def cautions(self) -> tuple[Caution, ...]:
        """What of the recipe's cautions is about heat, the dryer and the cut."""
        return tuple(one for one in self.done.cautions if one.code in _CODES)


def drying_page(sheet: DryingSheet) -> Iterator[Line]:
    """Yield the page, 80 columns."""
    yield from _say(clean(sheet.done.recipe.title), Style.TITLE)
    yield from _say(_planned(sheet))
    for name, answer in sheet.answers:
        yield Line()
        yield from _say(f"{name.capitalize()}: {_three(answer)}", Style.HEAD)
        yield from _say(f"By {answer.why}.")
        if answer.corners_h is not None:
            yield from _corners(answer.corners_h)
    yield Line()
    drawn = [(name, Range(one.low_h, one.likely_h, one.high_h, "h")) for name, one in sheet.answers]
    yield from (Line(text) for text in bars(drawn, 60, name_columns=18))
    yield Line()
    yield from _done_when(sheet)
    yield Line()
    if sheet.printed:
        yield Line(row(("what others printed", "hours", "air"), _WIDTHS), Style.HEAD)
        for printed in sheet.printed:
            yield from _printed(printed)
    else:
        yield from _say(NOT_MEAT)
    if sheet.cautions:
        yield from caution_lines(sheet.cautions, COLUMNS)


def drying_data(sheet: DryingSheet) -> dict[str, Any]:
    """Return the same as plain data."""
    done = sheet.done
    return {
        "title": done.recipe.title,
        "meat": {"food": done.recipe.meat.food, "mass_g": float(done.scaled.meat_mass_g)},
        "thickness_mm": sheet.thickness_mm,
        "thickness_stated": sheet.stated[0],
        "air_c": sheet.air_c,
        "air_stated": sheet.stated[1],
        "hours": [_hours_data(name, one) for name, one in sheet.answers],
        "finished_g": range_data(done.estimate.finished_g),
        "printed_by_others": [_printed_data(one) for one in sheet.printed],
        "cautions": [
            {"code": one.code, "text": one.text, "rule": one.cites, "citation": one.citation}
            for one in sheet.cautions
        ],
    }


def _hours_data(name: str, one: Hours) -> dict[str, Any]:
    return {
        "from": name,
        "low": one.low_h,
        "likely": one.likely_h,
        "high": one.high_h,
        "corners": None if one.corners_h is None else list(one.corners_h),
        "by": one.why,
        "sources": list(one.sources),
        "batches": list(one.batches),
    }


def _printed_data(one: DryingTime) -> dict[str, Any]:
    return {
        "what": one.what,
        "low": one.low_h,
        "high": one.high_h,
        "air_c": list(one.air_c),
        "thickness_mm": None if one.thickness_mm is None else list(one.thickness_mm),
        "source": one.source,
    }


def _planned(sheet: DryingSheet) -> str:
    thickness, air = sheet.stated
    mass_g = sheet.done.scaled.meat_mass_g
    how_thick = "" if thickness else ", taken for 1/4 in since none is stated"
    how_hot = "" if air else ", taken since none is stated"
    return (
        f"{format_pounds(mass_g)} ({format_mass_g(mass_g)}), {sheet.thickness_mm:.3g} mm "
        f"({sheet.thickness_mm / 25.4:.2g} in) thick{how_thick}; air of {_air(sheet.air_c)}"
        f"{how_hot}."
    )


def _three(found: Hours) -> str:
    return f"{found.low_h:.1f} to {found.high_h:.1f} h, likely {found.likely_h:.1f} h (an estimate)"


def _corners(hours: tuple[float, float, float, float]) -> Iterator[Line]:
    """Yield what each corner of the carrying over rests on."""
    power, energy = value("drying-thickness-exponent"), value("drying-activation")
    heads = ("carried over alone, at its corners", "heat counts little", "heat counts much")
    units = ("", f"({energy.low:g} kJ/mol)", f"({energy.high:g} kJ/mol)")
    yield Line(row(heads, _CORNERS, right=(1, 2)), Style.QUIET)
    yield Line(row(units, _CORNERS, right=(1, 2)), Style.QUIET)
    for says, exponent, pair in (
        ("if the surface sets the pace", power.low, hours[:2]),
        ("if travel inside sets it", power.high, hours[2:]),
    ):
        cells = (f"  {says} (power {exponent:g})", *(f"{one:.1f} h" for one in pair))
        yield Line(row(cells, _CORNERS, right=(1, 2)))
    likely = f"likely {power.likely:g} and {energy.likely:g} kJ/mol"
    why = (
        f"Working values, {likely}. Power of the thickness: {power.reason}. Heat: {energy.reason}."
    )
    yield from _say(why, Style.QUIET)


def _done_when(sheet: DryingSheet) -> Iterator[Line]:
    yield Line("When it is dry enough", Style.HEAD)
    yield from _say(NO_CLOCK)
    if sheet.printed:
        yield from _rule("bend-test")
    finished, share = sheet.done.estimate.finished_g, sheet.done.estimate.yield_fraction
    low, likely, high = map(format_mass_g, (finished.low, finished.likely, finished.high))
    yield from _say(
        f"By the scale, about {likely} are left of it ({low} to {high}, {percent(share.low)} to "
        f"{percent(share.high)} of the raw meat): an estimate too."
    )
    if Case.of(sheet.done.recipe).is_flesh:
        yield from _say(HEAT_APART)


def _printed(one: DryingTime) -> Iterator[Line]:
    ends = [f"{end:g}" if end is not None else "" for end in (one.low_h, one.high_h)]
    hours = ends[0] if ends[0] == ends[1] else "-".join(ends)
    hours = f"{ends[0]} or more" if not ends[1] else hours
    yield Line(row((one.what, hours, _air(*one.air_c)), _WIDTHS))
    publisher = sources()[one.source]
    told = ", ".join(part for part in (publisher.publisher, publisher.title) if part)
    yield from (Line(t, Style.QUIET) for t in wrap(told, COLUMNS, first="    ", rest="    "))


def _air(*celsius: float) -> str:
    return temperature_words((celsius[0] * 1.8 + 32, celsius[-1] * 1.8 + 32))


def _rule(name: str) -> Iterator[Line]:
    found = rule(name)
    says = found.statement.replace("degF", "°F").replace("degC", "°C")
    yield from _say(f"{says} [{found.citation}]", Style.QUIET)


def _say(text: str, style: Style = Style.PLAIN) -> Iterator[Line]:
    return (Line(one, style) for one in wrap(text, COLUMNS))
