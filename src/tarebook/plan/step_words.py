"""What every step of a plan is called, and what to mind at it."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from tarebook.plan.jobs import Job, held_hot_min, patted
from tarebook.plan.tasks import Placed
from tarebook.recipe.model import HeatStep
from tarebook.safety.case import Animal
from tarebook.safety.cure import own_scale
from tarebook.safety.curing import STEP_G
from tarebook.safety.dryer import BENDS
from tarebook.safety.rulebook import air_words, degrees, limit

Words = tuple[str, str]
"""What a step is called, and what to mind."""


def words_of(kind: str, one: Placed, job: Job) -> Words:
    """Return what a step is called, and what to mind.

    Args:
        kind: of the step; ``rub`` and ``rest`` where meat is rubbed and not soaked.
        one: the step with its load.
        job: its recipe.
    """
    return _SAID[kind](one, job)


def test_words(job: Job) -> Words:
    """Return what a test of dried pieces is called, and what passes it."""
    if not job.case.is_meat:
        passes = "leathery, with no wet middle (common practice, no source)"
        return "Try a cooled piece", f"hands washed first; {passes}"
    inside = "; cut one open: no wet middle" if job.air_f[0] > job.wanted_f[1] else ""
    name = "Bend test, still raw" if job.batch.raw else "Bend test"
    return name, f"hands washed first; {BENDS}{inside}{_still_raw(job)}"


def turn_words(job: Job) -> Words:
    """Return what a turning of trays is called, and what to mind at it."""
    name = "Turn the trays round, still raw" if job.batch.raw else "Turn the trays round"
    return name, f"hands washed first{_still_raw(job)}"


def air_note(job: Job) -> str:
    """Return how the air is known; in an oven that runs too hot, how it is kept from it."""
    if job.propped:
        return "its lowest; a thermometer on the rack, and what to prop the door with, at hand"
    return "by a thermometer among the trays"


def _thaw(one: Placed, job: Job) -> Words:
    opened = "pack opened first; " if job.case.animal is Animal.FISH else ""
    return (
        f"{_flesh(job).capitalize()} out of the freezer to thaw",
        f"{opened}in the {_fridge()}; in a dish, lowest shelf",
    )


def _trim(one: Placed, job: Job) -> Words:
    if not job.case.is_flesh:
        return "Wipe and trim", _own_steps(job)
    note = f"hands washed {_seconds()} before and after; out of the cold only what you cut"
    return f"Trim the {_flesh(job)}", note


def _slice(one: Placed, job: Job) -> Words:
    return f"Slice it{_thick(job)}", "back into the cold as you go" if job.case.is_flesh else ""


def _form(one: Placed, job: Job) -> Words:
    return f"Press and cut it{_thick(job)}", "hands, press and board are raw till they are washed"


def _knead(one: Placed, job: Job) -> Words:
    own = "grinding it yourself is not in these minutes; " if job.case.is_meat else ""
    return "Knead the seasoning in", f"{own}cold, and back into the refrigerator"


def _mix(one: Placed, job: Job) -> Words:
    name = "seasoning" if job.case.ground else "marinade" if job.case.soaked else "rub"
    told = ["hands washed first; clean bowl and spoons"] if job.case.is_flesh else []
    if job.recipe.soak.used_before and job.case.soaked:
        told.append("fresh, never one used before")
    if job.shares:
        parts = ", ".join(f"load {at} {one.percent}" for at, one in enumerate(job.shares, start=1))
        told.append(f"parted by weight, a share for each load, {parts}")
        told.append("kept cold, clean of raw meat till then")
    if job.case.cures:
        told.append(_cure_in_mix(job))
    return f"Mix the {name}", "; ".join(told)


def _cure_in_mix(job: Job) -> str:
    """Return what becomes of curing salt as the marinade is mixed."""
    if job.cured_by_load and len(job.uncured) < len(job.shares):
        return "no curing salt in it yet: each load's own is weighed when its meat goes in"
    coarse = bool(job.uncured) or bool(own_scale(job.case))
    if coarse:
        return f"no curing salt in it: too little to weigh on {_scale(job)}"
    return "the curing salt last, on a scale that shows 0.1 g"


def _scale(job: Job) -> str:
    step_g = STEP_G if job.case.scale_g is None else job.case.scale_g
    return f"a scale that shows {float(step_g):g} g"


def _steep(one: Placed, job: Job) -> Words:
    return "Into the marinade", _own_cure(one, job, "its share") + _bowl_words(one, job)


def _rub(one: Placed, job: Job) -> Words:
    cold = f"into the {_fridge()}" if job.case.is_flesh else ""
    return "Rub it in", _own_cure(one, job, "its share of the rub") + cold


def _own_cure(one: Placed, job: Job, into: str) -> str:
    """Return what curing salt is weighed for this load alone, and where it goes first."""
    if not job.cured_by_load or not one.load:
        return ""
    share = job.shares[one.load - 1]
    weighed = (
        f"first weigh {share.cure_words}; less for less meat; stirred into {into} just before the "
        "meat"
    )
    told = filter(None, (weighed if share.cured else "", share.left_out))
    return "".join(f"{each}; " for each in told)


def _wash(one: Placed, job: Job) -> Words:
    return (
        "Wash hands, board, knife, sink and tongs",
        f"hands {_seconds()} with soap, the rest sanitised; raw {_flesh(job)} stays cold meanwhile",
    )


def _drain(one: Placed, job: Job) -> Words:
    surface = "pat dry" if patted(job.recipe) else "drain"
    if job.choice.step is HeatStep.SIMMERED:
        return (
            "Lift the strips out, then boil the marinade",
            "strips into a clean bowl and back into the refrigerator till it boils",
        )
    if not job.recipe.soak.poured_away:
        return f"Lift out, {surface}", "what is left of the marinade only once it is boiled through"
    return f"Lift out, {surface}", "used marinade is thrown away"


def _simmer(one: Placed, job: Job) -> Words:
    boil = limit("marinade-as-bath", "boil-time")
    away = "; then throw the marinade away" if job.recipe.soak.poured_away else ""
    return (
        f"Simmer to {job.case.inside} inside",
        f"a few at a time, covered by the liquid (water added, if it is too little), {boil:g} min "
        f"or more at the boil, {_measured('lot')}{_held(job)}{away}",
    )


def _steam(one: Placed, job: Job) -> Words:
    oven = f"covered, with a little water, in an oven at {degrees('roast-oven', 'oven-air')}"
    if job.oven:
        how = "over boiling water, under a lid"
    else:
        how = f"over boiling water, under a lid; or {oven} (from memory)"
    return (
        f"{'Steam' if job.oven else 'Steam or roast'} to {job.case.inside} inside",
        f"{how}; {_measured('tray')}{_held(job)}",
    )


def _boil_down(one: Placed, job: Job) -> Words:
    return (
        f"Boil the marinade down onto it, to {job.case.inside} inside",
        f"turned in it all the while; {_measured('lot')}{_held(job)}",
    )


def _load(one: Placed, job: Job) -> Words:
    load = job.loads[one.load - 1] if one.load else job.loads[0]
    name = "rack" if job.oven else "tray"
    if not load.known:
        what = "Onto the trays"
    else:
        what = f"Onto 1 {name}" if load.trays == 1 else f"Onto {load.trays} {name}s"
    apart = "a finger's breadth apart"
    if not job.case.is_flesh:
        return what, apart
    if job.batch.raw:
        ran = "; what ran out is thrown away" if job.case.rubbed and not job.case.soaked else ""
        return what, f"{apart}{ran}"
    return what, (
        f"hands washed again, clean {name}s and tongs, none that touched it raw; hot from the pan "
        f"to the {'oven' if job.oven else 'dryer'}, {apart}"
    )


def _clean(one: Placed, job: Job) -> Words:
    if not job.case.is_flesh:
        return "Wash up", ""
    pots = "boards, sink and tongs" if job.batch.raw else "pots, sink and tongs"
    return f"Wash and sanitise {pots}", f"and hands, {_seconds()}"


def _dry(one: Placed, job: Job) -> Words:
    if not job.propped:
        return f"Dries at {air_words(job.air_f)}", ""
    least = f", never under {degrees('dryer-145', 'dryer-air')}" if job.case.is_flesh else ""
    return f"Dries, door propped, near {air_words(job.held_f)}", (
        f"by a thermometer on the rack{least}; not left alone: somebody awake in the house till it "
        "is off; with a gas oven, or children near, the door stays shut (common practice, no "
        f"source), at {air_words(job.air_f)}: {_shut_words(job)}"
    )


def _unload(one: Placed, job: Job) -> Words:
    if not job.case.is_flesh:
        return "Off the trays; wash them", ""
    return (
        "Off the trays; wash and sanitise them" if job.batch.raw else "Off the trays; wash them",
        f"only what passed; hands washed first{_still_raw(job)}",
    )


def _oven(one: Placed, job: Job) -> Words:
    air, least = degrees("oven-after", "oven-air"), degrees("oven-after", "meat-inside")
    what = f"Oven at {air}, {limit('oven-after', 'oven-time'):g} min a sheet"
    if not job.case.is_meat:
        return what, "as the recipe says: no published rule is held for it"
    return what, (
        f"preheated; on clean sheets, until {least} inside; {_measured('sheet')}; till then they "
        "are raw: hands and tongs are washed before they are touched again"
    )


def _cool(one: Placed, job: Job) -> Words:
    return "Cools", "on clean racks or towels, away from raw meat; under a cloth till it is packed"


def _pack(one: Placed, job: Job) -> Words:
    if job.case.is_meat:
        how = "sealed with the least air"
    elif job.case.animal is Animal.FISH:
        how = (
            f"loosely wrapped, into the refrigerator, below {_fish_cold()}, at once; sealed or "
            "without air only for the freezer"
        )
    else:
        how = f"packed, into the {_fridge()}, or the freezer"
    return (
        "Weigh, write it down, pack and date it",
        f"hands washed first; quite cool, {how}; for how long: see Keeping",
    )


def _shut_words(job: Job) -> str:
    """Return when what dries behind a shut door is tried, and how."""
    if job.shut is None:
        return "dry sooner than told here, tried every half hour, a piece cut open: no wet middle"
    low, high = (round(hours * 6) * 10 for hours in (job.shut.low_h, job.shut.high_h))
    return (
        f"dry after {low // 60} h {low % 60:02d} to {high // 60} h {high % 60:02d}, tried from "
        "the first on, a piece cut open: no wet middle"
    )


def _soaks(one: Placed, job: Job) -> Words:
    return "Soaks", _fridge()


def _rests(one: Placed, job: Job) -> Words:
    return "Rests in its rub", _fridge()


def _part_freeze(one: Placed, job: Job) -> Words:
    return "Part-freeze it", "hands washed after; firm, but a knife still goes in"


_SAID: Mapping[str, Callable[[Placed, Job], Words]] = {
    "thaw": _thaw,
    "trim": _trim,
    "part-freeze": _part_freeze,
    "slice": _slice,
    "knead": _knead,
    "form": _form,
    "mix": _mix,
    "steep": _steep,
    "rub": _rub,
    "wash": _wash,
    "soak": _soaks,
    "rest": _rests,
    "drain": _drain,
    "simmer": _simmer,
    "steam": _steam,
    "boil-down": _boil_down,
    "load": _load,
    "clean": _clean,
    "dry": _dry,
    "unload": _unload,
    "oven": _oven,
    "cool": _cool,
    "pack": _pack,
}


def _fridge() -> str:
    return f"refrigerator, {degrees('cold-store', 'refrigerator')} or below"


def _fish_cold() -> str:
    return degrees("fish-smoked-michigan", "refrigerator")


def _still_raw(job: Job) -> str:
    """Return that dried strips count as raw till their oven step; nothing where they are heated."""
    if not job.batch.raw:
        return ""
    after = "its heat step" if job.choice.step is HeatStep.UNSTATED else "the oven"
    return f"; still raw till {after}: not tasted; hands, and what it lay on, are washed after"


def _seconds() -> str:
    return f"{limit('hand-wash', 'wash-time'):g} s"


def _flesh(job: Job) -> str:
    return "fish" if job.case.animal is Animal.FISH else "meat"


def _measured(lot: str) -> str:
    """Return how every lot is measured: a tip that was in half-done meat is washed first."""
    return (
        f"a thin-tipped thermometer lengthwise in the thickest of every {lot}, its tip washed in "
        "hot soapy water and wiped before each reading (common practice, no source)"
    )


def _held(job: Job) -> str:
    held = held_hot_min(job.case)
    return f"; held there {held} min, as smoked fish is" if held else ""


def _thick(job: Job) -> str:
    written = job.case.recipe.meat.thickness_written
    return f", {written}" if written else ", 1/4 in at most" if job.case.is_meat else ""


def _own_steps(job: Job) -> str:
    return "the recipe's own steps are on its card" if job.recipe.steps else ""


def _bowl_words(one: Placed, job: Job) -> str:
    cold = f"into the {_fridge()}" if job.case.is_flesh else "into the refrigerator"
    if not job.bowl_ml:
        return cold
    load = job.loads[one.load - 1] if one.load else job.loads[0]
    takes = job.bowl_ml * load.meat_g / job.loads[0].meat_g
    name = f": {job.bowl.name}" if job.bowl is not None else ""
    return f"takes about {takes / 1000:.1f} L{name}; {cold}"
