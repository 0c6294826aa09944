"""The words of a plan before their look: the page, the printed sheet and the HTML print them."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from itertools import groupby

from tarebook.cards.lines import clean
from tarebook.cards.plan_counted import about, counted
from tarebook.cards.sheet import THE_OTHERS
from tarebook.clocks.zones import clock
from tarebook.figures.foods import food
from tarebook.figures.sources import sources
from tarebook.figures.task_times import task_times
from tarebook.plan.conflicts import AT_ODDS
from tarebook.plan.hours import Hours
from tarebook.plan.jobs import Job
from tarebook.plan.make import Plan
from tarebook.plan.mind import Minded, plan_cautions
from tarebook.plan.steps import HEATED, Step, hours_words
from tarebook.plan.words import said_at, said_day, said_time
from tarebook.quantities.words import format_mass_g, format_pounds
from tarebook.safety import Caution
from tarebook.safety.caution import TITLES
from tarebook.tuples import NamedTuple

ESTIMATES = (
    "Lengths of work are estimates: common practice, no source. Strips are dry enough when a "
    "cooled one bends and cracks, and does not break, whatever the clock says; that says nothing "
    "of their heat step."
)
NOT_AS_ASKED, COUNTED, TO_KNOW = "Not as asked", "Counted with", "Good to know"
TITLE = "The days"
YOU = "by you"
AT, WHAT, TAKES, UNTIL = "at", "what", "takes", "who, or until"
_CALLED = {"preheat": "heating the dryer", "thaw": "thawing", "oven": "the oven step"}
_ALPHABET = 26
_KEEPING = "see Keeping"
_IMPORTANT = "Important"
_EVERY_TIME = frozenset({"mix", "steep", "rub", *HEATED, "rotate", "oven"})
"""Steps whose note is never left out: a dose, how hot the thickest piece must be, clean hands."""


class Head(NamedTuple):
    """One recipe of a plan.

    Attributes:
        letter: what tells it from the others; nothing where it is alone.
        title: of the recipe.
        size: today's meat in words.
    """

    letter: str
    title: str
    size: str


class Row(NamedTuple):
    """One step.

    Attributes:
        time: of the clock.
        mark: which recipe and load it is for, where there are several.
        what: to do.
        length: how long it takes.
        until: when it ends, where nobody has to be there; ``by you`` where somebody has.
        attended: whether somebody has to be there.
        notes: what to mind.
        hours: of drying, low, likely and high [h], where it is drying.
    """

    time: str
    mark: str
    what: str
    length: str
    until: str
    attended: bool
    notes: tuple[str, ...]
    hours: tuple[float, float, float] | None = None


class Day(NamedTuple):
    """A day with its steps."""

    name: str
    rows: tuple[Row, ...]


class Heed(NamedTuple):
    """A caution, and which recipes it is for.

    Attributes:
        lead: their letters, ``A: ``; nothing where it is for all of them.
        caution: as the rules have it.
        grave: whether it is more than a note.
    """

    lead: str
    caution: Caution
    grave: bool

    @property
    def named(self) -> Caution:
        """The caution with the letters before its title; a grave one is called important.

        Colour alone does not say so: not down a pipe, not in print, and to nobody's ear.
        """
        title = f"{self.lead}{self.caution.title}"
        if self.grave:
            title = f"{_IMPORTANT} for {title}" if self.lead else f"{_IMPORTANT}: {title}"
        return self.caution._replace(title=title)


class PlanContent(NamedTuple):
    """Everything that a plan says.

    Attributes:
        heads: its recipes.
        when: when it begins and ends.
        grave: what is at odds with published advice, in the plan as it stands.
        conflicts: what does not go as asked, and is planned otherwise.
        days: the steps.
        counted: what it was reckoned with.
        to_know: what is good to know.
        cautions: what the safety rules say; the grave ones only, in a short plan.
        also: the titles of the other cautions, in a short plan.
        short: whether it is the short form: nothing counted, nothing to know, each note once.
    """

    heads: tuple[Head, ...]
    when: str
    grave: tuple[str, ...]
    conflicts: tuple[str, ...]
    days: tuple[Day, ...]
    counted: tuple[str, ...]
    to_know: tuple[str, ...]
    cautions: tuple[Heed, ...]
    also: tuple[str, ...] = ()
    short: bool = False


def plan_content(plan: Plan, *, zone_name: str, short: bool = False) -> PlanContent:
    """Return the words of a plan.

    Args:
        plan: as made.
        zone_name: what to call its clock.
        short: times, steps, conflicts and what is grave; of the other cautions only the titles.
    """
    whole = _whole(plan, zone_name, short=short)
    if not short:
        return whole
    return whole._replace(
        counted=(),
        to_know=(),
        cautions=tuple(one for one in whole.cautions if one.grave),
        also=tuple(one.named.title for one in whole.cautions if not one.grave),
        short=True,
    )


def others(found: PlanContent) -> tuple[str, ...]:
    """Return what a short plan leaves out, by title, and where it stands."""
    also = f"Also: {'; '.join(found.also)}." if found.also else ""
    return tuple(filter(None, (also, THE_OTHERS)))


def _whole(plan: Plan, zone_name: str, *, short: bool) -> PlanContent:
    first, last = plan.span
    minded = plan_cautions(plan)
    seen: set[str] = set()
    return PlanContent(
        heads=tuple(_head(plan, at, job) for at, job in enumerate(plan.jobs)),
        when=f"Begin {said_at(first, plan.zone)}; all packed by {said_at(last, plan.zone)} "
        f"({clean(zone_name)}).",
        grave=tuple(clean(one.sentence) for one in plan.conflicts if one.grave),
        conflicts=tuple(clean(one.sentence) for one in plan.conflicts if not one.grave),
        days=tuple(
            Day(day, tuple(_row(plan, one, minded, seen, short) for one in steps))
            for day, steps in groupby(plan.steps, key=lambda one: said_day(one.start, plan.zone))
        ),
        counted=tuple(
            _lead(plan, at) + clean(text)
            for at, job in enumerate(plan.jobs)
            for text in counted(plan, at, job)
        ),
        to_know=(*(clean(one.sentence) for one in plan.notes), *_sources(plan)),
        cautions=tuple(_heed(plan, one) for one in minded),
    )


def _letter(plan: Plan, at: int) -> str:
    if len(plan.jobs) == 1:
        return ""
    return chr(ord("A") + at) if at < _ALPHABET else str(at + 1)


def _lead(plan: Plan, at: int) -> str:
    letter = _letter(plan, at)
    return f"{letter}: " if letter else ""


def _heed(plan: Plan, one: Minded) -> Heed:
    letters = ", ".join(_letter(plan, at) for at in one.jobs)
    return Heed("" if one.shared else f"{letters}: ", one.caution, one.grave)


def _head(plan: Plan, at: int, job: Job) -> Head:
    thick = job.case.recipe.meat.thickness_written
    details = (food(job.recipe.meat.food).name, thick, "frozen" if job.frozen else "")
    named = ", ".join(filter(None, details))
    size = f"{format_pounds(job.meat_g)} ({format_mass_g(job.meat_g)}) of {named}"
    return Head(_letter(plan, at), clean(job.recipe.title), clean(size))


def _row(plan: Plan, one: Step, minded: Iterable[Minded], seen: set[str], short: bool) -> Row:
    """Return a step; what passes a test, in a short plan most of what to mind, is said once."""
    hours = plan.jobs[one.job].hours
    drying = one.kind == "dry"
    note = _its_keeping(plan, one, minded) if one.kind == "pack" else one.note
    once = one.kind == "test" or (short and one.kind not in _EVERY_TIME)
    told = once and note in seen
    seen.add(note)
    again = note.partition("; ")[0] if one.kind == "test" else ""  # clean hands, every time
    odd = any(
        said.grave and one.kind in said.kinds and said.job in (None, one.job)
        for said in plan.conflicts
    )
    notes = [
        *filter(
            None,
            (
                f"{AT_ODDS}: see above" if odd else "",
                again if told else note,
                _drying_note(plan, one, hours) if drying else "",
            ),
        )
    ]
    return Row(
        time=said_time(one.start, plan.zone),
        mark=_mark(plan, one),
        what=clean(one.what),
        length=hours_words(one.end - one.start),
        until=YOU if one.attended else f"to {_until(plan, one)}",
        attended=one.attended,
        notes=tuple(map(clean, notes)),
        hours=(hours.low_h, hours.likely_h, hours.high_h) if drying else None,
    )


def _its_keeping(plan: Plan, one: Step, minded: Iterable[Minded]) -> str:
    """Return what to mind at packing, with the letter of the keeping time that is this recipe's."""
    for each in minded:
        if one.job in each.jobs and each.caution.title == TITLES["storage"] and not each.shared:
            lead = _heed(plan, each).lead
            return one.note.replace(_KEEPING, f'see "{lead}{each.caution.title}"')
    return one.note


def _mark(plan: Plan, one: Step) -> str:
    """Return which recipe and load a step is for, where there are several: ``B2``, ``load 2``."""
    many = one.load and len(plan.jobs[one.job].loads) > 1
    letter = _letter(plan, one.job)
    if letter:
        return f"{letter}{one.load}" if many else letter
    return f"load {one.load}" if many else ""


def _until(plan: Plan, one: Step) -> str:
    start, end = clock(one.start, plan.zone), clock(one.end, plan.zone)
    day = "" if start.date() == end.date() else f"{said_day(one.end, plan.zone)[:3]} "
    return f"{day}{end:%H:%M}"


def _drying_note(plan: Plan, one: Step, hours: Hours) -> str:
    likely = said_time(one.start + round(hours.likely_h * 60), plan.zone)
    return (
        f"low {about(hours.low_h)}, likely {about(hours.likely_h)} ({likely}), "
        f"high {about(hours.high_h)}"
    )


def _sources(plan: Plan) -> Iterator[str]:
    yield ESTIMATES
    for kind, listed in _published(plan).items():
        names = "; ".join(map(_named, listed))
        yield f"Published length of {_CALLED.get(kind, kind)}: {names}."


def _published(plan: Plan) -> dict[str, tuple[str, ...]]:
    """Return the published sources of the lengths that a plan uses, by what takes so long."""
    found = {}
    for kind in dict.fromkeys(one.kind for one in plan.steps):
        try:
            rows = task_times(kind)
        except KeyError:
            continue  # soaking, drying, waiting: no work
        listed = tuple(dict.fromkeys(one.source for one in rows if one.code == "P"))
        if listed:
            found[kind] = listed
    return found


def _named(source: str) -> str:
    found = sources()[source]
    publisher = f"{found.publisher}: " if found.publisher else ""
    return f"{publisher}{found.title}"
