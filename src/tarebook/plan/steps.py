"""A plan as a cook reads it: every step in words, with what is done in between."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from itertools import pairwise
from math import ceil

from tarebook.figures.task_times import minutes
from tarebook.plan.jobs import Job, held_hot_min, patted, whole_minutes
from tarebook.plan.tasks import Placed, Span
from tarebook.recipe.model import HeatStep
from tarebook.safety.case import Animal
from tarebook.safety.rulebook import air_words, degrees, limit
from tarebook.tuples import NamedTuple

_SHORTEST_WAIT = 30
_TURN_TWICE_FROM = 3 * 60
_MOST_TESTS = 6
_RUBBED = {"steep": "rub", "soak": "rest"}


class Step(NamedTuple):
    """One line of a plan.

    Attributes:
        kind: what, as ``task-times.csv`` calls it; ``wait`` is meat kept cold.
        job: which recipe, counted from 0.
        load: which load of it, counted from 1; 0 where it is for all of it.
        start, end: when [min].
        attended: whether somebody has to be there all the time.
        what: in words, short.
        note: what to mind, or nothing.
    """

    kind: str
    job: int
    load: int
    start: int
    end: int
    attended: bool
    what: str
    note: str = ""

    @property
    def span(self) -> Span:
        """From its start to its end."""
        return Span(self.start, self.end)


def steps_of(
    jobs: Sequence[Job], placed: Sequence[Placed], nights: Sequence[Span] = ()
) -> tuple[Step, ...]:
    """Return a plan in words, in order: what was placed, and what is done in between.

    Args:
        jobs: the recipes.
        placed: the plan.
        nights: spans in which nobody turns a bag or a tray.
    """
    found = [_step(one, jobs[one.batch]) for one in placed]
    for at, job in enumerate(jobs):
        own = [one for one in placed if one.batch == at]
        found += _waits(at, job, own)
        for one in own:
            if one.kind == "soak" and job.case.soaked:
                found += _turns(one, nights)
            elif one.kind == "dry":
                found += _looked_at(one, job, nights)
    found += _preheats(jobs, placed)
    return tuple(sorted(found, key=lambda one: (one.start, one.end, one.job, one.load)))


def hours_words(length: float) -> str:
    """Return minutes as hours and minutes.

    Example:
        >>> hours_words(45), hours_words(60), hours_words(705)
        ('45 min', '1 h', '11 h 45')
    """
    whole = round(length)
    if whole < 60:
        return f"{whole} min"
    return f"{whole // 60} h {whole % 60:02d}" if whole % 60 else f"{whole // 60} h"


def _step(one: Placed, job: Job) -> Step:
    kind = one.kind
    if not job.case.soaked:
        kind = _RUBBED.get(kind, kind)
    what, note = _words(kind, one, job)
    return Step(
        kind=kind,
        job=one.batch,
        load=one.load,
        start=one.start,
        end=one.end,
        attended=one.attended,
        what=what,
        note=note,
    )


def _words(kind: str, one: Placed, job: Job) -> tuple[str, str]:
    """Return what a step is called, and what to mind."""
    recipe, inside, cold = job.recipe, job.case.inside, degrees("cold-store", "refrigerator")
    fridge = f"refrigerator, {cold} or below"
    steam = "Steam" if job.oven else "Steam or roast"
    surface = "pat dry" if patted(recipe) else "drain"
    plain = {
        "thaw": (
            f"{_flesh(job).capitalize()} out of the freezer to thaw",
            f"in the {fridge}; in a dish, lowest shelf",
        ),
        "trim": (f"Trim the {_flesh(job)}", "out of the cold only what you cut")
        if job.case.is_flesh else ("Wipe and trim", ""),
        "part-freeze": ("Part-freeze it", "firm, but a knife still goes in"),
        "slice": (f"Slice it{_thick(job)}", "back into the cold as you go"),
        "knead": ("Knead the seasoning in", "cold, and back into the refrigerator"),
        "form": (f"Press and cut it{_thick(job)}", ""),
        "mix": (f"Mix the {_mixed(job)}", _apart(job)),
        "steep": ("Into the marinade", _bowl_words(one, job)),
        "rub": ("Rub it in", ""),
        "soak": ("Soaks", fridge),
        "rest": ("Rests in its rub", fridge),
        "drain": (f"Lift out, {surface}", "used marinade is thrown away")
        if job.choice.step is not HeatStep.SIMMERED
        else ("Bring its marinade to the boil", "what waits, waits in the refrigerator"),
        "simmer": (f"Simmer to {inside} inside", _after_simmer(job)),
        "steam": (f"{steam} to {inside} inside", f"moist, the thickest measured{_held(job)}"),
        "boil-down": (f"Boil the marinade down onto it, to {inside} inside", _held(job)[2:]),
        "load": (_onto(one, job), _laid(job)),
        "clean": ("Wash and sanitise boards, sink and tongs", "")
        if job.case.is_flesh else ("Wash up", ""),
        "dry": (f"Dries at {air_words(job.air_f)}", ""),
        "unload": ("Off the trays; wash them", ""),
        "oven": (
            f"Oven at {degrees('oven-after', 'oven-air')}, "
            f"{limit('oven-after', 'oven-time'):g} min a sheet",
            f"preheated; on clean sheets, until {degrees('oven-after', 'meat-inside')} inside"
            if job.case.is_meat else "as the recipe says: no published rule is held for it",
        ),
        "cool": ("Cools", "open, on clean trays; under a cloth till it is packed"),
        "pack": ("Weigh, write it down, pack and date it", ""),
    }  # fmt: skip
    return plain[kind]


def _onto(one: Placed, job: Job) -> str:
    load = job.loads[one.load - 1] if one.load else job.loads[0]
    if not load.known:
        return "Onto the trays"
    name = "rack" if job.oven else "tray"
    return f"Onto 1 {name}" if load.trays == 1 else f"Onto {load.trays} {name}s"


def _after_simmer(job: Job) -> str:
    away = "; then throw the marinade away" if job.recipe.soak.poured_away else ""
    return f"a few at a time, the thickest measured{_held(job)}{away}"


def _flesh(job: Job) -> str:
    return "fish" if job.case.animal is Animal.FISH else "meat"


def _held(job: Job) -> str:
    held = held_hot_min(job.case)
    return f"; held there {held} min, as smoked fish is" if held else ""


def _laid(job: Job) -> str:
    apart = "a finger's breadth apart"
    if job.batch.raw or not job.case.is_flesh:
        return apart
    return f"{apart}; clean trays and tongs, none that touched it raw"


def _thick(job: Job) -> str:
    written = job.recipe.meat.thickness_written
    return f", {written}" if written else ", 1/4 in at most" if job.case.is_meat else ""


def _mixed(job: Job) -> str:
    if job.case.ground:
        return "seasoning"
    return "marinade" if job.case.soaked else "rub"


def _apart(job: Job) -> str:
    if len(job.loads) == 1 or job.case.ground:
        return ""
    return "a share for each load, kept cold, clean of raw meat till then"


def _bowl_words(one: Placed, job: Job) -> str:
    if not job.bowl_ml:
        return ""
    load = job.loads[one.load - 1] if one.load else job.loads[0]
    takes = job.bowl_ml * load.meat_g / job.loads[0].meat_g
    name = f": {job.bowl.name}" if job.bowl is not None else ""
    return f"takes about {takes / 1000:.1f} L{name}; into the refrigerator"


def _waits(at: int, job: Job, own: Sequence[Placed]) -> Iterator[Step]:
    """Yield where meat waits in the cold between two steps."""
    prep = [one for one in own if one.load == 0 and one.kind != "mix"]
    roads = [prep]
    for load in range(1, len(job.loads) + 1):
        mine = [one for one in own if one.load == load and one.start < _hot(own, load)]
        roads.append([*prep[-1:], *mine])
    for road in roads:
        for before, after in pairwise(road):
            if after.start - before.end >= _SHORTEST_WAIT:
                yield _wait(at, after.load, before.end, after.start)


def _hot(own: Sequence[Placed], load: int) -> int:
    """Return when a load begins to dry."""
    return next(one.start for one in own if one.load == load and one.kind == "dry")


def _wait(at: int, load: int, start: int, end: int) -> Step:
    cold = degrees("cold-store", "refrigerator")
    return Step(
        "wait", at, load, start, end, False, "Waits, covered", f"refrigerator, {cold} or below"
    )


def _turns(soak: Placed, nights: Sequence[Span]) -> Iterator[Step]:
    """Yield when the bag is turned: twice, or once in a short soak; never by night."""
    length = soak.end - soak.start
    parts = (1 / 3, 2 / 3) if length >= _TURN_TWICE_FROM else (1 / 2,)
    each = whole_minutes(minutes("turn"))
    seen: set[int] = set()
    for part in parts:
        start = _awake(soak.start + whole_minutes(length * part), each, nights)
        if soak.start < start and start + each <= soak.end and start not in seen:
            seen.add(start)
            yield Step(
                "turn", soak.batch, soak.load, start, start + each, True, "Turn it in its marinade"
            )


def _looked_at(dry: Placed, job: Job, nights: Sequence[Span]) -> Iterator[Step]:
    """Yield when trays are turned, and from the low hours on when a strip is tested."""
    rotate, test = (whole_minutes(minutes(kind)) for kind in ("rotate", "test"))
    first = min(dry.start + whole_minutes(job.hours.low_h * 60), dry.end)
    every = int(minutes("rotate-every"))
    for start in range(dry.start + every, first, every):
        if not _asleep(start, rotate, nights):
            yield _event("rotate", dry, start, rotate, "Turn the trays round")
    every = _between_tests(dry.end - first)
    likely = dry.start + job.hours.likely_h * 60
    for start in range(first, dry.end, every):
        if not _asleep(start, test, nights):
            near = abs(start - likely) <= every / 2
            what = "Bend test" + (": likely about now" if near else "")
            yield _event("test", dry, start, test, what)


def _between_tests(length: int) -> int:
    every = int(minutes("test-every"))
    return max(every, ceil(length / _MOST_TESTS / 30) * 30)


def _event(kind: str, dry: Placed, start: int, length: int, what: str) -> Step:
    return Step(kind, dry.batch, dry.load, start, start + length, True, what)


def _awake(start: int, length: int, nights: Sequence[Span]) -> int:
    """Return the time itself, or the nearer edge of the night that it lies in."""
    span = Span(start, start + length)
    night = next((one for one in nights if one.meets(span)), None)
    if night is None:
        return start
    evening = night.start - length
    return evening if start - evening <= night.end - start else night.end


def _asleep(start: int, length: int, nights: Sequence[Span]) -> bool:
    return any(one.meets(Span(start, start + length)) for one in nights)


def _preheats(jobs: Sequence[Job], placed: Iterable[Placed]) -> Iterator[Step]:
    """Yield when the dryer is switched on: before each time it has stood idle."""
    ahead = whole_minutes(minutes("preheat"))
    drying = sorted((one for one in placed if one.kind == "dry"), key=lambda one: one.start)
    hot_until: int | None = None
    for one in drying:
        if hot_until is None or one.start - hot_until > ahead:
            air = air_words(jobs[one.batch].air_f)
            yield Step(
                "preheat", one.batch, one.load, one.start - ahead, one.start, False,
                f"{'Oven' if jobs[one.batch].oven else 'Dryer'} on, at {air}",
                "by a thermometer among the trays",
            )  # fmt: skip
        hot_until = max(hot_until or one.end, one.end)
