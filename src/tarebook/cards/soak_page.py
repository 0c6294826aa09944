"""What ``soak`` prints: how far salt and sugar have come, and how long meat may lie."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from tarebook.cards.bars import axis, bar
from tarebook.cards.keys import range_data
from tarebook.cards.lines import Line, Style, row, wrap
from tarebook.cards.sheet import COLUMNS, caution_lines
from tarebook.cards.words import soak_place
from tarebook.cards.worksheet import Worksheet
from tarebook.nutrition.range import Range
from tarebook.nutrition.soaking import (
    FURTHER_H,
    LITTLE_GAIN,
    Soaking,
    SoakingTimes,
    half_as_thick,
    soaking_times,
)
from tarebook.recipe.model import HeatStep, Part
from tarebook.safety import Case
from tarebook.safety.rulebook import limit, rule

_CODES = frozenset(
    {
        "ground-soaked",
        "soak-far-over",
        "soak-warm",
        "marinade-reused",
        "soak-over",
        "no-rule",
        "cold-soak",
        "used-marinade",
    }
)
_LIMIT = ("soak-day", "soak")
_WIDTHS = (6, 19, 19, 19)
_RIGHT = (1, 2, 3)
_AXIS = 60


def soak_page(sheet: Worksheet) -> Iterator[Line]:
    """Yield how far salt and sugar come with the hours, 80 columns.

    Args:
        sheet: everything about the recipe at today's size.
    """
    times = _times(sheet)
    if times is None:
        yield from _said(_nothing_to_soak(sheet))
        if _soak_cautions(sheet):
            yield from caution_lines(_soak_cautions(sheet), COLUMNS)
        return
    yield from (Line(one, Style.TITLE) for one in wrap(sheet.recipe.title, COLUMNS))
    yield from _said(_thickness(times))
    if sheet.recipe.soak.temperature_f is not None:
        yield from _said(f"Reckoned for a soak {soak_place(sheet.recipe.soak)}.")
    yield from _table(sheet, times)
    yield from _charts(times)
    yield Line()
    yield from _said(_enough(times, limit_h(sheet)))
    yield from _half(sheet, times)
    yield Line()
    yield from _said(_kept_how(sheet), Style.QUIET)
    yield from _said(
        f"Home estimate, {soak_place(sheet.recipe.soak)}. Low and high are the 5 and 95 % points "
        "of what goes into it; salt kept carries the model's own doubt as well, widest under 4 h.",
        Style.QUIET,
    )
    yield from caution_lines(_soak_cautions(sheet), COLUMNS)


def soak_data(sheet: Worksheet) -> dict[str, Any]:
    """Return the same as plain data; ``after`` is empty where there is nothing to soak."""
    times = _times(sheet)
    half = soaking_times(half_as_thick(sheet.estimate.facts)) if times else None
    most = limit_h(sheet)
    return {
        "title": sheet.recipe.title,
        "meat": {
            "food": sheet.recipe.meat.food,
            "mass_g": float(sheet.scaled.meat_mass_g),
        },
        "nothing_to_soak": None if times else _nothing_to_soak(sheet),
        "thickness_stated": None if times is None else times.stated,
        "temperature_c": _degrees(sheet),
        **_times_data(times, most),
        "half_as_thick": None if half is None else _times_data(half, most),
        "limit_h": most,
        "percentiles": [5, 50, 95],
        "cautions": [
            {"code": one.code, "text": one.text, "rule": one.cites, "citation": one.citation}
            for one in _soak_cautions(sheet)
        ],
    }


def _degrees(sheet: Worksheet) -> list[float] | None:
    stated = sheet.estimate.facts.soak_c
    return None if stated is None else list(stated)


def limit_h(sheet: Worksheet) -> float | None:
    """Return the cautious limit of a soak [h], or None where no rule is held for the food."""
    return limit(*_LIMIT) if Case.of(sheet.recipe).is_flesh else None


def _times(sheet: Worksheet) -> SoakingTimes | None:
    """Return the times; ground meat has none, since a marinade runs all through it."""
    return None if Case.of(sheet.recipe).ground else soaking_times(sheet.estimate.facts)


def _nothing_to_soak(sheet: Worksheet) -> str:
    """Return in one sentence why a recipe has no soaking time."""
    title = sheet.recipe.title
    if not any(one.part is Part.MARINADE for one in sheet.recipe.ingredients):
        return f"{title}: it has no marinade, so there is no soaking time to tell."
    if Case.of(sheet.recipe).ground:
        return f"{title}: ground meat has no thickness to soak through, so no time is told."
    return f"{title}: no liquid of known weight in its marinade, so no soaking time is told."


def _soak_cautions(sheet: Worksheet) -> tuple[Any, ...]:
    return tuple(one for one in sheet.cautions if one.code in _CODES)


def _times_data(times: SoakingTimes | None, most: float | None) -> dict[str, Any]:
    if times is None:
        return {"thickness_mm": None, "after": [], "enough_h": None}
    return {
        "thickness_mm": list(times.thickness_mm),
        "after": [
            {
                "hours": one.hours,
                "over_limit": None if most is None else one.hours > most,
                "salt_toward_balance_fraction": range_data(one.salt),
                "sugar_toward_balance_fraction": range_data(one.sugar),
                "salt_kept_fraction": range_data(one.salt_kept),
            }
            for one in times.after
        ],
        "enough_h": times.enough_hours,
    }


def _thickness(times: SoakingTimes) -> str:
    if times.stated:
        return f"At {_mm(times)} thick, as the recipe states."
    low, likely, high = times.thickness_mm
    return (
        f"The recipe states no thickness: reckoned with {low:g} to {high:g} mm, likely "
        f"{likely:g} mm (a working range). State it, and the doubt shrinks."
    )


def _mm(times: SoakingTimes) -> str:
    low, likely, high = times.thickness_mm
    if low == high:
        return f"{likely:.4g} mm"
    return f"{low:.4g} to {high:.4g} mm"


def _table(sheet: Worksheet, times: SoakingTimes) -> Iterator[Line]:
    most = limit_h(sheet)
    yield Line()
    heads = ("after", "salt to balance", "sugar to balance", "salt kept")
    yield Line(row(heads, _WIDTHS, right=_RIGHT), Style.HEAD)
    each = "low/likely/high"
    yield Line(row(("", each, each, each), _WIDTHS, right=_RIGHT), Style.QUIET)
    for one in times.after:
        over = most is not None and one.hours > most
        cells = (_three(one.salt), _three(one.sugar), _three(one.salt_kept))
        text = row((_hours(one, most), *cells), _WIDTHS, right=_RIGHT)
        yield Line(text, Style.WARN if over else Style.PLAIN)
    if times.after[0].sugar is None:
        yield from _said("No sugar is known of in this marinade.", Style.QUIET)
    if most is None:
        yield from _said("No published limit of soaking time is held for this food.", Style.WARN)
    else:
        text = f"* longer than {most:g} h, the cautious limit [{rule(_LIMIT[0]).citation}]"
        yield from _said(text, Style.WARN)


def _hours(one: Soaking, most: float | None) -> str:
    return f"{one.hours} h *" if most is not None and one.hours > most else f"{one.hours} h"


def _three(found: Range | None) -> str:
    if found is None:
        return "-"
    ends = (f"{100 * one:.0f}" for one in (found.low, found.likely, found.high))
    return f"{' / '.join(ends)} %"


def _charts(times: SoakingTimes) -> Iterator[Line]:
    for name in ("salt", "sugar"):
        found = [(one.hours, getattr(one, name)) for one in times.after]
        if found[0][1] is None:
            continue
        yield Line()
        yield Line(f"How far {name} has come to balance", Style.HEAD)
        yield from (Line(f"{f'{hours} h':>5} {bar(one, 1.0, _AXIS)}") for hours, one in found)
        yield Line(" " * 6 + axis(100, _AXIS, "%"))


def _enough(times: SoakingTimes, most: float | None) -> str:
    gain = f"{100 * LITTLE_GAIN:.0f} points of its final uptake"
    little = f"{FURTHER_H} h more bring salt under {gain}"
    past = most is not None and times.enough_hours > most
    note = f", which is past the {most:g} h limit" if past else ""
    return f"More hours stop mattering from about {times.enough_hours} h{note}: {little}, likely."


def _half(sheet: Worksheet, times: SoakingTimes) -> Iterator[Line]:
    half = soaking_times(half_as_thick(sheet.estimate.facts))
    assert half is not None  # the marinade is the same one
    most = limit_h(sheet)
    yield Line()
    yield Line(f"Half the thickness, {_mm(half)}: likely (for the recipe's own)", Style.HEAD)
    yield Line(row(("after", "salt", "sugar", "salt kept"), _WIDTHS, right=_RIGHT), Style.QUIET)
    for thin, now in zip(half.after, times.after, strict=True):
        pairs = ((thin.salt, now.salt), (thin.sugar, now.sugar), (thin.salt_kept, now.salt_kept))
        cells = (_instead(a, b) for a, b in pairs)
        yield Line(row((_hours(thin, most), *cells), _WIDTHS, right=_RIGHT))
    yield from _said(_enough(half, most))


def _instead(thin: Range | None, now: Range | None) -> str:
    if thin is None or now is None:
        return "-"
    return f"{100 * thin.likely:.0f} (for {100 * now.likely:.0f}) %"


def _kept_how(sheet: Worksheet) -> str:
    facts = sheet.estimate.facts
    if not facts.poured_away or facts.heat is HeatStep.BOILED_DOWN:
        return "Salt kept: all of it, whatever the hours, since nothing is poured away."
    lead = "Salt kept: share of the marinade's salt that goes into the dryer, film included"
    if facts.heat is HeatStep.SIMMERED:
        return f"{lead}; simmering carries it to balance, whatever the hours."
    return f"{lead}, after this recipe's heat step ({facts.heat.value})."


def _said(text: str, style: Style = Style.PLAIN) -> Iterator[Line]:
    return (Line(one, style) for one in wrap(text, COLUMNS))
