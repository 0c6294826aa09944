"""How long it keeps: the most cautious published times, and no date where none holds."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING

from tarebook.figures.nutrients import values
from tarebook.findings import Finding
from tarebook.recipe.model import HeatStep
from tarebook.safety.case import Animal, Case
from tarebook.safety.dryer import cannot_hold, too_cold_for_any, too_cool
from tarebook.safety.ground import too_fat
from tarebook.safety.heat import days_as_cooked, dried_too_short, held_words
from tarebook.safety.rulebook import air_words, citations, degrees, limit, rule, span
from tarebook.safety.soak import over_every_limit, soaks_warm
from tarebook.safety.steps import (
    steps_cold_air,
    steps_cool_air,
    steps_miss_heat,
    steps_raw,
    steps_warm,
)
from tarebook.tuples import NamedTuple

if TYPE_CHECKING:
    from datetime import date

_PLACES = {
    "room": "at room temperature",
    "refrigerator": "in the refrigerator",
    "freezer": "frozen",
}


class KeepLimit(NamedTuple):
    """How long sealed dried meat keeps in one place.

    Attributes:
        place: ``room``, ``refrigerator`` or ``freezer``.
        most: how many [days or months].
        unit: ``day`` or ``month``.
        until: last day, or None where it is not known when it was packed.
    """

    place: str
    most: int
    unit: str
    until: date | None = None

    @property
    def words(self) -> str:
        """The limit as a card prints it: ``14 days at room temperature``."""
        many = "" if self.most == 1 else "s"
        last = f" (until {self.until.isoformat()})" if self.until else ""
        return f"{self.most} {self.unit}{many} {_PLACES[self.place]}{last}"


class KeepBy(NamedTuple):
    """How long a batch keeps, or why no time is given.

    Attributes:
        limits: by place, shortest first; empty where no published time holds.
        reason: why there are none; empty where there are.
        cites: ids of the rules it stands on, joined by ``; ``.
        instead: what to do where there is no date, a sentence.
        to_eat: whether it is food to be kept at all, with no heat step missing.
        lost: whether no heat can make up for what it missed.
        packing: what the bag must not do, a sentence, or nothing.
        heated: the heat that the times rest on, words that follow an "and"; empty without times.
    """

    limits: tuple[KeepLimit, ...]
    reason: str
    cites: str
    instead: str = ""
    to_eat: bool = True
    lost: bool = False
    packing: str = ""
    heated: str = ""

    @property
    def text(self) -> str:
        """One or two sentences for the card."""
        if not self.limits:
            return f"{self.instead} No date is given: {self.reason}."
        times = ", ".join(one.words for one in self.limits)
        return f"S{_kept(self.heated)[1:]}, {times}: the shortest published times."

    @property
    def label(self) -> str:
        """What a label says where there is no date."""
        said = f"{self.instead} No date{f': {self.reason}' if self.to_eat else ''}."
        return f"{said} {self.packing}" if self.packing else said

    @property
    def citation(self) -> str:
        """Who says so, on one line."""
        return citations(self.cites)


def keep_by(case: Case, *, packed_on: date | None = None) -> KeepBy:
    """Return how long a batch keeps, or why nobody here can say.

    Args:
        case: the batch.
        packed_on: day it was dried and packed, for last days in place of lengths.

    Returns:
        The shortest published time of each place. None at all where the recipe misses a step that
        the times rest on, where it is or ends too moist or too fat, or where no rule is held.

    Source:
        Rules ``storage-cautious`` and ``storage-perishable``.
    """
    reason, cites = _why_none(case)
    if reason:
        instead, also = _instead(case)
        packing = FISH_PACK if case.animal is Animal.FISH else ""
        lost = too_cold_for_any(case)
        packing = "" if lost else packing
        to_eat = not (lost or unheated(case) or steps_raw(case) or steps_miss_heat(case))
        cites = f"{cites}; {also}"
        return KeepBy((), reason, cites, instead, to_eat=to_eat, lost=lost, packing=packing)
    limits = tuple(_limit(place, packed_on) for place in _PLACES)
    return KeepBy(limits=limits, reason="", cites="storage-cautious", heated=_heated(case))


def storage(case: Case) -> tuple[Finding, ...]:
    """Say how long it keeps, and what to do with mould."""
    found = keep_by(case)
    if found.limits:
        times = ", ".join(one.words for one in found.limits)
        says = f"{_kept(found.heated)}, the shortest published times are {times}"
        do = f"cool it, seal it with the least air, {_LOOK}"
        return (case.note("storage", says, do, cites=f"{found.cites}; mould-discard"),)
    says = f"{_small(found.instead)[:-1]}; there is no use-by date"
    if found.lost:
        do = f"dry it where the air holds {degrees('dryer-145', 'dryer-air')} or more"
        return (case.warn("storage-cold", says, do, cites=f"{found.cites}; dryer-145"),)
    if found.to_eat:
        says += f", for {found.reason}"
    if case.animal is Animal.FISH:
        do = (
            "wrap it loosely, pack it sealed or without air only frozen (Alaska: or below "
            f"{degrees('fish-no-air', 'refrigerator')} for {limit('fish-no-air', 'time'):g} days), "
            "and throw all of it away if mould shows"
        )
        return (case.warn("storage-cold", says, do, cites=f"{found.cites}; fish-no-air"),)
    return (case.warn("storage-cold", says, _LOOK, cites=f"{found.cites}; mould-discard"),)


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


FISH_PACK = "Loosely wrapped; sealed or without air only frozen."
"""How fish is packed; rule ``fish-no-air``."""
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
    for holds, reason, cites in _BARS:
        if holds(case):
            return reason, cites
    return "", ""


def unheated(case: Case) -> bool:
    """Return whether it has no heat step that is published for such food, or none at all."""
    if not case.is_flesh:
        return False
    if case.recipe.heat is HeatStep.UNSTATED:
        return True
    return case.recipe.heat is HeatStep.OVEN_AFTER and bool(case.oven_after_refusal)


def _instead(case: Case) -> tuple[str, str]:
    """Return what to do with a batch that has no date, and the rules that stands on."""
    if too_cold_for_any(case):
        at = air_words(case.air_f) if case.air_f else ""
        return (
            f"Dried at {at}, cooler than anybody publishes even for heated meat: not to be eaten.",
            "dryer-after-heat; outbreak-venison",
        )
    warm, missed = _lay_warm(case), _heat_missed(case)
    if warm and missed:
        return f"{warm} {missed}", f"out-of-cold; {case.inside_rule[0]}"
    if warm or missed:
        return warm or missed, "out-of-cold" if warm else case.inside_rule[0]
    if case.animal is Animal.FISH:
        weeks = span("fish-smoked", "refrigerator")[0]
        return (
            f"Keep cold, below {degrees('fish-smoked-michigan', 'refrigerator')}, {weeks:g} weeks "
            "at most, as smoked fish, the nearest held; or freeze it.",
            "fish-smoked; fish-smoked-michigan",
        )
    days = days_as_cooked()
    return (
        f"Keep cold and eat within {days:g} days, as cooked food (from memory), or freeze it.",
        "cooked-cold",
    )


def _kept(heated: str) -> str:
    """Return what the published keeping times rest on."""
    return f"sealed, dry by the bend test and {heated}"


def _heated(case: Case) -> str:
    """Return the heat that the times rest on, for whoever has only the bag to go by.

    Source:
        Rules ``heat-before`` and ``game-165``.
    """
    if case.animal in (Animal.BEAR, Animal.WILD_PORK):
        return f"if every piece was {case.inside} inside in wet heat"
    return f"heated to {case.inside} inside"


def _lay_warm(case: Case) -> str:
    """Return what becomes of what lay warm while it was raw; nothing where it did not."""
    if soaks_warm(case):
        return "It soaked warm: throw it away if that was over 2 hours."
    if steps_warm(case):
        return "By its own steps it lay out of the cold: throw it away if that was over 2 hours."
    if steps_cold_air(case):
        return "Its own steps dry it cooler than anybody publishes: throw it away if that was done."
    return ""


def _heat_missed(case: Case) -> str:
    """Return what is asked of what has no heat step that counts; nothing where it has one."""
    if unheated(case):
        unstated = case.recipe.heat is HeatStep.UNSTATED
        why = "No heat step is recorded" if unstated else "Not heated as published"
    elif steps_raw(case):
        why = "Its own steps take heat for needless"
    elif steps_miss_heat(case):
        why = "Its own steps heat it too little, or put raw marinade on it"
    else:
        return ""
    return (
        f"{why}: not to be eaten unless every piece has been {case.inside} inside"
        f"{held_words(case)}, in wet heat."
    )


def _small(sentence: str) -> str:
    return f"{sentence[0].lower()}{sentence[1:]}"


def _no_dryer_stated(case: Case) -> bool:
    return case.recipe.drying.temperature_f is None


def _used_before(case: Case) -> bool:
    return case.soaked and case.recipe.soak.used_before


def _soaked_ground(case: Case) -> bool:
    return case.ground and case.soaked


def _fat(case: Case) -> bool:
    fat_g = values(case.food.key)["fat_g"]
    return fat_g is None or fat_g >= limit("fat-rancid", "fat")


_BARS: tuple[tuple[Callable[[Case], bool], str, str], ...] = (
    (soaks_warm, "it soaked warmer than a refrigerator", "out-of-cold"),
    (steps_warm, "a step thaws, soaks or rests it out of the cold", "thaw-cold; out-of-cold"),
    (steps_raw, "a step takes heat for needless", "heat-before; outbreak-venison"),
    (steps_miss_heat, "a step heats it too little, or puts raw marinade on it", "heat-before"),
    (steps_cold_air, "a step dries it cooler than anybody publishes", "dryer-after-heat"),
    (steps_cool_air, "a step dries it cooler than published", "storage-perishable"),
    (_used_before, "its marinade was used before", "marinade-discarded"),
    (cannot_hold, "its dryer is not one for meat", "fixed-dryer"),
    (too_cool, "its dryer is cooler than published", "storage-perishable"),
    (unheated, "its heat step is not published for such air", "oven-after"),
    (_no_dryer_stated, "no dryer temperature is recorded", "storage-perishable"),
    (dried_too_short, "it dries too short a time before the oven", "storage-perishable"),
    (over_every_limit, "it soaks longer than the limit held for it", "storage-perishable"),
    (_soaked_ground, "ground meat was put in a marinade", "ground-meat"),
    (too_fat, "its ground meat is fatter than published", "ground-meat"),
    (lambda case: case.too_thick, "it is cut thicker than published", "thickness-quarter-inch"),
    (_fat, "meat so fat turns rancid", "fat-rancid"),
    (lambda case: case.weighed_too_moist, "the weighed batch is too moist", "too-moist"),
    (lambda case: case.too_moist, "it stops drying while too moist", "storage-perishable"),
)
"""What leaves a batch without a date, though its heat step is published."""


def _limit(place: str, packed_on: date | None) -> KeepLimit:
    found = rule("storage-cautious").figures[place]
    count = int(found.limit)
    until = None if packed_on is None else _after(packed_on, count, found.unit)
    return KeepLimit(place=place, most=count, unit=found.unit, until=until)


def _after(day: date, count: int, unit: str) -> date:
    """Return the day so long after another; a month too short for its day ends on its last."""
    from datetime import date, timedelta  # only where a date is asked for

    if unit == "day":
        return day + timedelta(days=count)
    months = day.year * 12 + day.month - 1 + count
    first = date(months // 12, months % 12 + 1, 1)
    last = (first + timedelta(days=31)).replace(day=1) - timedelta(days=1)
    return first.replace(day=min(day.day, last.day))
