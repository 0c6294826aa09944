"""How long it keeps: the most cautious published times, and no date where none holds."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, NamedTuple

from tarebook.findings import Finding
from tarebook.recipe.model import HeatStep
from tarebook.safety.case import Animal, Case
from tarebook.safety.rulebook import rule

if TYPE_CHECKING:
    from datetime import date

_PLACES = {
    "room": "at room temperature",
    "refrigerator": "in the refrigerator",
    "freezer": "frozen",
}


@dataclass(frozen=True, slots=True, kw_only=True)
class KeepLimit:
    """How long sealed dried meat keeps in one place.

    Attributes:
        place: ``room``, ``refrigerator`` or ``freezer``.
        count: how many [days or months].
        unit: ``day`` or ``month``.
        until: last day, or None where it is not known when it was packed.
    """

    place: str
    count: int
    unit: str
    until: date | None = None

    @property
    def words(self) -> str:
        """The limit as a card prints it: ``14 days at room temperature``."""
        many = "" if self.count == 1 else "s"
        last = f" (until {self.until.isoformat()})" if self.until else ""
        return f"{self.count} {self.unit}{many} {_PLACES[self.place]}{last}"


class KeepBy(NamedTuple):
    """How long a batch keeps, or why no time is given.

    Attributes:
        limits: by place, shortest first; empty where no published time holds.
        reason: why there are none; empty where there are.
        cites: id of the rule it stands on.
    """

    limits: tuple[KeepLimit, ...]
    reason: str
    cites: str

    @property
    def text(self) -> str:
        """One or two sentences for the card."""
        if not self.limits:
            return f"Keep it cold and treat it as perishable: {self.reason}. No date is given."
        times = ", ".join(one.words for one in self.limits)
        others = ", ".join(_longest(one.place) for one in self.limits)
        return f"Sealed, {times}: the shortest published times. The longest are {others}."

    @property
    def citation(self) -> str:
        """Who says so, on one line."""
        return rule(self.cites).citation


def keep_by(case: Case, *, packed_on: date | None = None) -> KeepBy:
    """Return how long a batch keeps, or why nobody here can say.

    Args:
        case: the batch.
        packed_on: day it was dried and packed, for last days in place of lengths.

    Returns:
        The shortest published time of each place. None at all where the recipe has no heat step
        that is published for such meat, where it stops drying too moist, or where no rule is held.

    Source:
        Rules ``storage-cautious`` and ``storage-perishable``.
    """
    reason, cites = _why_none(case)
    if reason:
        return KeepBy(limits=(), reason=reason, cites=cites)
    limits = tuple(_limit(place, packed_on) for place in _PLACES)
    return KeepBy(limits=limits, reason="", cites="storage-cautious")


def storage(case: Case) -> tuple[Finding, ...]:
    """Say how long it keeps, and what to do with mould."""
    found = keep_by(case)
    if found.limits:
        times = ", ".join(one.words for one in found.limits)
        says = f"the shortest published times for sealed packs are {times}"
        return (case.note("storage", says, _LOOK, cites=found.cites),)
    says = "keep it cold as perishable food, with no use-by date"
    if case.is_meat:
        says += f": {found.reason}"
    return (case.warn("storage-cold", says, _LOOK, cites=found.cites),)


def vacuum(case: Case) -> tuple[Finding, ...]:
    """Say what packing without air does not do."""
    if not case.vacuum_packed:
        return ()
    return (
        case.warn(
            "vacuum",
            "packing without air replaces neither drying nor cold",
            "keep to the same times and places",
            cites="vacuum",
        ),
    )


_LISTS = (
    "storage-wyoming",
    "storage-michigan",
    "storage-nchfp",
    "storage-fsis",
    "storage-minnesota",
)
_DAYS = {"day": 1, "month": 30}

_LOOK = "date every pack, and throw all of it away if mould shows"

_NONE_HELD = {
    Animal.FISH: "fish-none-held",
    Animal.MUSHROOM: "mushroom-none-held",
    Animal.OTHER: "other-none-held",
}


def _why_none(case: Case) -> tuple[str, str]:
    if not case.is_meat:
        reason = f"no published rule for drying {case.animal.value} at home is held"
        return reason, _NONE_HELD[case.animal]
    if case.recipe.heat is HeatStep.UNSTATED:
        return "no heat step is recorded", "storage-perishable"
    if not case.heat_holds:
        return "its heat step is not published for such meat", "storage-perishable"
    if case.too_moist:
        return "it stops drying while too moist", "storage-perishable"
    return "", ""


def _longest(place: str) -> str:
    """Return the longest time any list gives for a place, so that the reader sees the spread."""
    figures = (rule(one).figures.get(place) for one in _LISTS)
    ends = [(one.high, one.unit) for one in figures if one is not None and one.high is not None]
    count, unit = max(ends, key=_days)
    return f"{count:g} {unit}s {_PLACES[place]}"


def _days(end: tuple[float, str]) -> float:
    return end[0] * _DAYS[end[1]]


def _limit(place: str, packed_on: date | None) -> KeepLimit:
    found = rule("storage-cautious").figures[place]
    count = int(found.limit)
    until = None if packed_on is None else _after(packed_on, count, found.unit)
    return KeepLimit(place=place, count=count, unit=found.unit, until=until)


def _after(day: date, count: int, unit: str) -> date:
    """Return the day so long after another; a month too short for its day ends on its last."""
    from datetime import date, timedelta  # only where a date is asked for

    if unit == "day":
        return day + timedelta(days=count)
    months = day.year * 12 + day.month - 1 + count
    first = date(months // 12, months % 12 + 1, 1)
    last = (first + timedelta(days=31)).replace(day=1) - timedelta(days=1)
    return first.replace(day=min(day.day, last.day))
