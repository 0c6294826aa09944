"""What words of a step speak of danger: heat, cold, raw meat, used marinade, long keeping.

A list of words finds only what is on it. Words are looked at by clauses, and one with a no in it
("never on the counter") is taken for what it is.
"""

from __future__ import annotations

from collections.abc import Sequence
from enum import StrEnum
from functools import cache

from tarebook.safety.clauses import (
    DAYS,
    NO,
    Clause,
    Sentence,
    days_in,
    degrees_in,
    sentences,
    words_of,
)
from tarebook.tuples import NamedTuple


class Danger(StrEnum):
    """What a step may speak of.

    ``COOL_AIR`` is below what is asked of a dryer; ``COLD_AIR`` below what anybody publishes.
    """

    WARM = "warm"
    RAW = "raw"
    CLAIM = "claim"
    COOL_HEAT = "cool heat"
    COOL_AIR = "cool air"
    COLD_AIR = "cold air"
    TASTE = "taste"
    USED = "used marinade"
    LONG = "long keeping"


class Limits(NamedTuple):
    """What words are held against.

    Attributes:
        inside_f: what the meat must reach inside [degF].
        air_f: what is asked of the dryer [degF]; 0 where nothing is.
        least_air_f: the coolest air that anybody publishes [degF].
        room_days, cold_days, frozen_days: how long dried meat keeps in each place [day].
    """

    inside_f: float
    air_f: float
    least_air_f: float
    room_days: float
    cold_days: float
    frozen_days: float


_CLAIM = "safe"
"""The word that nothing here is called, whoever wrote it."""
_CLAIMS_OF_THINGS = words_of("food oven dishwasher microwave")

_COLD = words_of("refrigerator refrigerated fridge freezer cooler ice iced cold chilled")
_MEAT = words_of(
    "meat strip strips piece pieces slice slices roast flesh venison deer elk moose bison bear "
    "boar turkey breast fish fillet fillets salmon leg shoulder"
)
_LIQUID = words_of(
    "marinade brine liquid juice water syrup sauce honey sugar salt vinegar oil spices broth"
)

_WARM = ("counter", "room temperature", "warm kitchen")
_WARMER = (
    "garage", "porch", "shed", "barn", "attic", "windowsill", "kitchen table", "radiator",
    "warm place", "warm spot", "warm room", "by the stove",
)  # fmt: skip
_COLD_WORK = ("thaw", "defrost", "marinat", "marinad", "soak", "rest ", "overnight")
_LEFT = words_of("stand stands sit sits hang hangs leave left lie")
_WIPES = words_of("wipe wash clean scrub sanitise sanitize")
_COOLS = words_of("cool cools cooled cooling")
_NIGHT = ("overnight", "all night", "all day")
_DONE = words_of("cool cooled cools cooling dried jerky cooked dry dryer trays")
_RAW = (
    "eat raw", "eaten raw", "eat it raw", "without cooking", "without heating", "no need to heat",
    "no need to cook", "need not be heated", "need not be cooked", "no heating", "no cooking",
    "not need to heat", "not need to cook", "don't need to heat", "don't need to cook",
    "not need to be heated", "not need to be cooked", "not have to heat", "not have to cook",
)  # fmt: skip
_HEATING = words_of("heat heating roasting steaming simmering cooking roast steam simmer")
_SKIP = ("skip", "omit", "forgo", "leave out the", "leave off the")
_SKIPPED = ("can be skipped", "may be skipped", "be left out", "be omitted", "is optional",
            "is needless", "is unnecessary", "is not needed", "is not necessary")  # fmt: skip
_NOT_HEAT = tuple(
    f"{no} {verb}" for no in ("do not", "don't", "never") for verb in ("heat", "cook", "roast")
)
_END_OF_NOT_HEAT = ("", "first", "at all", "beforehand", "if", "for", "since", "because", "as")
_TASTES = words_of("taste try nibble sample eat")

_SPENT = words_of("used leftover left-over drained old spent")
_BATH = words_of("marinade brine")
_ONTO = words_of("baste brush mop glaze drizzle pour spoon dip toss")
_BASTE = words_of("baste basting brush mop glaze")
_KEEP_BATH = words_of("keep save reserve reuse re-use store freeze")
_GONE = words_of("away off out down drain sink")
_CLEAN = words_of("fresh unused clean reserved boiled aside half part some cup extra")
_NEXT = ("next batch", "next lot", "next time", "next load", "another batch", "another lot")

_KEEPS = words_of("keep keeps kept store stores stored last lasts good")
_NOT_KEPT = words_of("raw thaw first spice spices mix rub seasoning syrup sauce paste roast leg")
_FROZEN = words_of("freezer frozen freeze")

_INSIDE = words_of(
    "inside reads read reading internal internally core thickest reach reaches centre center "
    "thermometer"
)
_HEATS = words_of("roast roasted steam steamed simmer bake baked cook cooked heat heated poach "
                   "boil grill broil")  # fmt: skip
_DRYER = words_of("dryer dehydrator smoker")
_DRIES = words_of("dry dries drying dehydrate smoke smoking cold-smoke air-dry")
_OTHERWISE = words_of(
    "cool cools cooled cooling chill chilled thaw freeze frozen freezer refrigerator fridge falls "
    "drops soak room pat blot"
)
_IF = words_of("if when once unless whenever should")
_SUN = ("in the sun", "in full sun", "in sunlight", "sun-dry", "sun dry", "in the open air")
_AIRY = (
    "at room temperature",
    "in the attic",
    "on the porch",
    "over the radiator",
    "in the garage",
)
_NEARLY_F = 1.5  # [degF] what a rounded number of the other scale may take off


@cache
def dangers(text: str, limits: Limits) -> tuple[Danger, ...]:
    """Return what a step speaks of that is a danger to whoever follows it.

    Args:
        text: the step, as written.
        limits: what its figures are held against.
    """
    small = text.lower()
    likely = {danger for danger, signs in _SIGNS if any(sign in small for sign in signs)}
    if not likely:
        return ()
    said = tuple(sentences(text))
    clauses = [one for sentence in said for one in sentence]
    raw = Danger.RAW in likely and any(map(_raw, clauses))
    found = {Danger.RAW: raw}
    if Danger.WARM in likely:
        found[Danger.WARM] = any(map(_warm, said)) or _stands_overnight(clauses)
    if Danger.CLAIM in likely:
        found[Danger.CLAIM] = not raw and any(map(_claims, clauses))
    if Danger.TASTE in likely:
        found[Danger.TASTE] = not raw and any(map(_tastes, clauses))
    if Danger.USED in likely:
        found[Danger.USED] = _used(clauses, boiled=" boil" in f" {small}")
    if Danger.LONG in likely:
        found[Danger.LONG] = any(_kept_long(one, limits) for one in said)
    if Danger.COOL_HEAT in likely:
        found |= _heat_dangers(said, clauses, limits)
    return tuple(danger for danger in Danger if found.get(danger))


_SIGNS = (
    (Danger.WARM, (*_WARM, *_WARMER, *_NIGHT, " sun", " out", "water")),
    (Danger.RAW, ("raw", "heat", "cook", "roast", "steam", "simmer")),
    (Danger.CLAIM, (_CLAIM,)),
    (Danger.TASTE, ("raw",)),
    (Danger.USED, tuple(_BATH | {"liquid"})),
    (Danger.LONG, tuple(DAYS)),
    (Danger.COOL_HEAT, (*"0123456789", "sun", "in the open", *_AIRY)),
)
"""Letters without which a danger is not in a text: most steps need no closer look."""


def _warm(sentence: Sentence) -> bool:
    """Return whether a sentence thaws, soaks or leaves raw flesh out of the cold."""
    text = " ".join(one.text for one in sentence)
    work = any(f" {one}" in text for one in _COLD_WORK)
    done = any(one.has(_DONE) for one in sentence)
    left = not done and any(one.has(_LEFT) for one in sentence)
    cold = any(one.has(_COLD) for one in sentence)
    for one in sentence:
        if one.has(_COOLS) and " to room temperature" in one.text:
            continue
        if not done and one.has(_MEAT) and one.asks("come to room temperature"):
            return True
        if (work or left) and not one.has(_WIPES) and any(one.asks(place) for place in _WARM):
            return True
        if work and one.asks("in the sun"):
            return True
        if (work or left) and not cold and any(one.asks(place) for place in _WARMER):
            return True
        if ("thaw" in one.text or "defrost" in one.text) and (
            one.asks("in warm water") or one.asks("in hot water")
        ):
            return True
    return not cold and not done and any(map(_left_out, sentence))


_LEAVES = ("leave", "left", "sit", "stand", "lie")


def _left_out(clause: Clause) -> bool:
    """Return whether a clause leaves something lying out: not "leave out the gills"."""
    words = clause.words
    if "out" not in words or not clause.has(_MEAT | {"it", "them", "bag"}):
        return False
    at = words.index("out")
    verb = max((words.index(one) for one in _LEAVES if one in words), default=at)
    after = words[at + 1 : at + 2]
    return (
        (verb + 1 < at or (verb < at and words[verb] in ("sit", "stand", "lie")))
        and NO.isdisjoint(words[:verb])
        and (not after or after[0] in ("overnight", "all") or _hours(words[at + 1 :]))
    )


def _hours(words: Sequence[str]) -> bool:
    return words[:1] == ("for",) and any(
        one.rstrip("s") in ("hour", "day", "night", "h") for one in words
    )


def _stands_overnight(clauses: Sequence[Clause]) -> bool:
    """Return whether something stands overnight in a step that nowhere speaks of cold."""
    if any(one.has(_COLD, _DONE) for one in clauses):
        return False
    return any(
        one.has(_LEFT)
        and (one.has(_MEAT) or not one.has(_LIQUID))
        and any(one.asks(night) for night in _NIGHT)
        for one in clauses
    )


def _raw(clause: Clause) -> bool:
    """Return whether a clause says that meat needs no heat."""
    if any(clause.asks(one) for one in _RAW):
        return True
    heats = [at for at, word in enumerate(clause.words) if word in _HEATING]
    if len(heats) == 1:
        words = clause.words
        before = f" {' '.join(words[: heats[0]])} "
        if len(words[: heats[0]]) < 6 and any(
            f" {one} " in before and NO.isdisjoint(before.partition(one)[0].split())
            for one in _SKIP
        ):
            return True
        after = Clause.of(words[heats[0] + 1 :])
        if len(after.words) < 8 and any(after.asks(one) for one in _SKIPPED):
            return True
    return any(_not_heated(clause, one) for one in _NOT_HEAT)


def _not_heated(clause: Clause, phrase: str) -> bool:
    """Return whether a clause tells not to heat the meat: not only not too long, or too hot."""
    if phrase not in clause.text:
        return False
    before, found, after = clause.text.partition(f" {phrase} ")
    words = after.split()
    meat = next((at for at, word in enumerate(words[:3]) if word in _MEAT), None)
    if not found or before.split() or meat is None:
        return False
    rest = words[meat + 1 :]
    return (rest[0] if rest else "") in _END_OF_NOT_HEAT


def _claims(clause: Clause) -> bool:
    for at, word in enumerate(clause.words):
        if word.startswith(_CLAIM) and NO.isdisjoint(clause.words[:at]):
            return at == 0 or clause.words[at - 1] not in _CLAIMS_OF_THINGS
    return False


def _tastes(clause: Clause) -> bool:
    words = clause.words
    at = next((at for at, word in enumerate(words) if word in _TASTES), None)
    return at is not None and "raw" in words[at + 1 : at + 7] and NO.isdisjoint(words[: at + 7])


def _used(clauses: Sequence[Clause], *, boiled: bool) -> bool:
    """Return whether used marinade is kept, or comes onto the meat unboiled."""
    return any(
        one.has(_BATH | {"liquid"})
        and not one.has(NO, _GONE, _CLEAN)
        and (_kept_bath(one) or (not boiled and _put_back(one)))
        for one in clauses
    )


def _kept_bath(clause: Clause) -> bool:
    words = clause.words
    verb = next((at for at, word in enumerate(words) if word in _KEEP_BATH), None)
    if verb is None:
        return False
    taken = words[verb + 1 : verb + 5]
    if _BATH.isdisjoint(taken) or not {"in", "with", "under", "from"}.isdisjoint(taken):
        return False
    again = words[verb] in ("reuse", "re-use") or any(one in clause.text for one in _NEXT)
    return again or clause.has(_SPENT)


def _put_back(clause: Clause) -> bool:
    if clause.has(_ONTO) and clause.has(_SPENT):
        return True
    return clause.has(_BASTE) and not clause.has(_HEATS)


def _kept_long(sentence: Sentence, limits: Limits) -> bool:
    """Return whether a sentence keeps dried meat longer than is published for its place."""
    if not any(one.has(_KEEPS) for one in sentence) or any(one.has(_NOT_KEPT) for one in sentence):
        return False
    whole = max((_place_days(one, limits) for one in sentence), default=0.0)
    return any(
        days_in(one) > (_place_days(one, limits) or whole or limits.room_days)
        for one in sentence
        if not one.has(NO) or " without refrigeration" in one.text
    )


def _place_days(clause: Clause, limits: Limits) -> float:
    if clause.has(_FROZEN):
        return limits.frozen_days
    if clause.has(_COLD):
        return limits.cold_days
    shelf = ("pantry", "shelf", "cupboard", "room temperature")
    return limits.room_days if any(one in clause.text for one in shelf) else 0.0


def _heat_dangers(
    said: Sequence[Sentence], clauses: Sequence[Clause], limits: Limits
) -> dict[Danger, bool]:
    """Return whether pieces are heated too little, and whether the air is too cool."""
    inside: list[float] = []
    heated: list[float] = []
    air: list[float] = []
    for sentence in said:
        kind = ""
        for one in sentence:
            kind = _kind(one, kind)
            told = (
                []
                if one.has(NO) or _only_if(one)
                else list(degrees_in(one, bare=kind in ("dry", "inside")))
            )
            {"inside": inside, "heat": heated, "dry": air}.get(kind, []).extend(told)
    least = limits.inside_f - _NEARLY_F
    hot = [f for f in inside if f >= 100] or [f for f in heated if f >= 100]
    cool = [f for f in air if f > 45 and f < limits.air_f - _NEARLY_F]
    cold = bool(limits.air_f) and any(map(_in_the_sun, clauses))
    cold = cold or any(f < limits.least_air_f - _NEARLY_F for f in cool)
    return {
        Danger.COOL_HEAT: bool(hot) and max(hot) < least,
        Danger.COLD_AIR: cold,
        Danger.COOL_AIR: bool(cool) and not cold,
    }


def _kind(clause: Clause, before: str) -> str:
    """Return whether a clause is about a piece's inside, about heating it, drying, or else."""
    if clause.has(_OTHERWISE) or (clause.has(_LIQUID) and not clause.has(_MEAT)):
        return "else"
    oven = "oven" in clause.words
    if clause.has(_DRYER) or (oven and not clause.has(_HEATS, _INSIDE)):
        return "dry"
    if clause.has(_INSIDE):
        return "else" if oven else "inside"
    if clause.has(_DRIES):
        return "dry"
    if clause.has(_HEATS):
        return "heat"
    until = clause.opens in ("until", "till") and before == "heat"
    return "inside" if until else before


def _only_if(clause: Clause) -> bool:
    return clause.has(_IF) and clause.has(frozenset({"below", "under", "than"}))


def _in_the_sun(clause: Clause) -> bool:
    if any(clause.asks(one) for one in _SUN):
        work = any(f" {one}" in clause.text for one in _COLD_WORK)
        return not work and (not clause.has(_LIQUID) or clause.has(_MEAT))
    airy = clause.has(_DRIES) and any(clause.asks(one) for one in _AIRY)
    return airy and not clause.has(_COLD)
