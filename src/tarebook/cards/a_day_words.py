"""What is said of an ounce and the house's own figure for a day: on sheet, card and batch page."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from math import floor
from typing import Any

from tarebook.cards.figures import NAMES
from tarebook.cards.lines import clean
from tarebook.cards.words import listed
from tarebook.cards.worksheet import Worksheet
from tarebook.figures.spoken import spoken
from tarebook.nutrition.a_day import OfADay

HEAD = "Of the house's own figures for a day"
ARITHMETIC = (
    "This is arithmetic with the house's own figures, not medical advice: ask whoever advises on "
    "the diet. What else is eaten that day counts too."
)
_MOST_COUNTED = 16
"""A pound a day is more dried meat than a count should ever speak of."""


def a_day_sentences(sheet: Worksheet) -> Iterator[str]:
    """Yield a sentence for each figure that the cook set, and what they are not; else nothing.

    Ounces are counted for the figure that fewest stay within: any other count would invite.
    """
    tightest = _tightest(sheet.of_a_day)
    for one in sheet.of_a_day:
        counted = one if one is tightest else one._replace(ounces=None)
        yield clean(_sentence(counted, sheet.estimate.ounce.words))
    if sheet.of_a_day:
        yield ARITHMETIC


def a_day_data(found: Sequence[OfADay]) -> dict[str, Any]:
    """Return the same as plain data, figure by figure; empty where the cook set none."""
    return {
        one.figure: {
            "a_day": one.a_day,
            "share_fraction": None
            if one.share is None
            else dict(zip(("low", "likely", "high"), one.share, strict=True)),
            "ounces_within": one.ounces,
            "missing": list(one.missing),
        }
        for one in found
    }


def _tightest(found: Sequence[OfADay]) -> OfADay | None:
    counted = [(one.ounces, place) for place, one in enumerate(found) if one.ounces is not None]
    return found[min(counted)[1]] if counted else None


def _sentence(one: OfADay, ounce: str) -> str:
    ounce = f"{'an' if ounce.startswith('ounce') else 'a'} {ounce}"
    lead = f"Of the house's {one.a_day:,.10g} {one.unit} of {NAMES[one.figure]} a day, "
    if one.share is None:
        names = " and ".join(map(spoken, one.missing))
        return f"{lead}no share and no count of ounces can be told: {names} has no weight."
    if one.missing:
        return (
            f"{lead}{ounce} is {_at_least(one.share[0])}; no count of ounces can be told, since "
            f"what it has from {listed(one.missing)} is not known."
        )
    if not any(one.share):
        return f"{lead}{ounce} holds nothing."
    told = f"{lead}{ounce} is {_share(one.share)}"
    if one.ounces is None:
        return f"{told}."
    return f"{told}; by the high estimate {_count(one.ounces)} it."


def _at_least(low: float) -> str:
    percent = floor(100 * low)  # rounded up, it would be more than the least
    return f"at least {percent} %" if percent else "some part that is not known"


def _share(share: tuple[float, float, float]) -> str:
    low, likely, high = (f"{100 * part:.0f}" for part in share)
    if likely == "0":
        return "under 1 %"
    return f"{likely} %" + (f" ({low}-{high} %)" if low != high else "")


def _count(ounces: int) -> str:
    if ounces > _MOST_COUNTED:
        return f"more than {_MOST_COUNTED} whole ounces stay within"
    if ounces == 0:
        return "not even one whole ounce stays within"
    return "1 whole ounce stays within" if ounces == 1 else f"{ounces} whole ounces stay within"
