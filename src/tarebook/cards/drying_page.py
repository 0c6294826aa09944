"""What ``drying`` prints: how long a batch may dry, and what ends it instead of the clock."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any, NamedTuple

from tarebook.cards.bars import bars
from tarebook.cards.lines import Line, Style, clean, row, wrap
from tarebook.figures.drying_times import DryingTime, drying_times
from tarebook.figures.sources import sources
from tarebook.nutrition.range import Range
from tarebook.plan.hours import Hours
from tarebook.safety.rulebook import rule

COLUMNS = 80
_WIDTHS = (40, 12, 22)
NO_CLOCK = (
    "No clock ends a drying: begin to test early, by a piece that has cooled, and let the thickest "
    "decide. The heat step is not part of these hours and is never left out."
)
NOT_MEAT = "The times that others printed are about meat, and tell nothing of this."


class DryingSheet(NamedTuple):
    """What is known of how long a batch dries.

    Attributes:
        title: of the recipe.
        thickness_mm: of a strip today [mm].
        air_c: of the dryer today [degC].
        stated: whether the recipe (or the cook) gives thickness, and whether it gives the air.
        answers: each way of telling the hours with its name, the best one first.
        printed: whether published times are about it.
    """

    title: str
    thickness_mm: float
    air_c: float
    stated: tuple[bool, bool]
    answers: tuple[tuple[str, Hours], ...]
    printed: bool


def drying_page(sheet: DryingSheet) -> Iterator[Line]:
    """Yield the page, 80 columns."""
    yield from _say(clean(sheet.title), Style.TITLE)
    yield from _say(_planned(sheet))
    for _, answer in sheet.answers:
        yield Line()
        yield Line(_three(answer), Style.HEAD)
        yield from _say(f"By {answer.why}.")
    yield Line()
    drawn = [(name, Range(one.low_h, one.likely_h, one.high_h, "h")) for name, one in sheet.answers]
    yield from (Line(text) for text in bars(drawn, 60, name_columns=18))
    if sheet.printed:
        yield Line()
        yield Line(row(("what others printed", "hours", "air"), _WIDTHS), Style.HEAD)
        for printed in drying_times():
            yield from _printed(printed)
    else:
        yield Line()
        yield from _say(NOT_MEAT)
    yield Line()
    yield from _say(NO_CLOCK)
    if sheet.printed:
        yield from _rule("bend-test")


def drying_data(sheet: DryingSheet) -> dict[str, Any]:
    """Return the same as plain data."""
    return {
        "title": sheet.title,
        "thickness_mm": sheet.thickness_mm,
        "thickness_stated": sheet.stated[0],
        "air_c": sheet.air_c,
        "air_stated": sheet.stated[1],
        "hours": [
            {
                "from": name,
                "low": one.low_h,
                "likely": one.likely_h,
                "high": one.high_h,
                "by": one.why,
                "sources": list(one.sources),
            }
            for name, one in sheet.answers
        ],
    }


def _planned(sheet: DryingSheet) -> str:
    thickness, air = sheet.stated
    mm, celsius = sheet.thickness_mm, sheet.air_c
    how_thick = "" if thickness else ", taken for 1/4 in since none is stated"
    how_hot = "" if air else ", taken since none is stated"
    return (
        f"{mm:.3g} mm thick{how_thick}; air of {celsius * 1.8 + 32:.0f} °F ({celsius:.0f} °C)"
        f"{how_hot}."
    )


def _three(found: Hours) -> str:
    return f"{found.low_h:.1f} to {found.high_h:.1f} h, likely {found.likely_h:.1f} h (an estimate)"


def _printed(one: DryingTime) -> Iterator[Line]:
    ends = [f"{end:g}" if end is not None else "" for end in (one.low_h, one.high_h)]
    hours = ends[0] if ends[0] == ends[1] else "-".join(ends)
    hours = f"{ends[0]} or more" if not ends[1] else hours
    fahrenheit = "-".join(dict.fromkeys(f"{c * 1.8 + 32:.0f}" for c in one.air_c))
    celsius = "-".join(dict.fromkeys(f"{c:.0f}" for c in one.air_c))
    yield Line(row((one.what, hours, f"{fahrenheit} °F ({celsius} °C)"), _WIDTHS))
    publisher = sources()[one.source]
    told = ", ".join(part for part in (publisher.publisher, publisher.title) if part)
    yield from (Line(t, Style.QUIET) for t in wrap(told, COLUMNS, first="    ", rest="    "))


def _rule(name: str) -> Iterator[Line]:
    found = rule(name)
    says = found.statement.replace("degF", "°F").replace("degC", "°C")
    yield from _say(f"{says} [{found.citation}]", Style.QUIET)


def _say(text: str, style: Style = Style.PLAIN) -> Iterator[Line]:
    return (Line(one, style) for one in wrap(text, COLUMNS))
