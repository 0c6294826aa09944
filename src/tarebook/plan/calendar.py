"""A plan as an iCalendar file, which phones and desktop calendars read.

Times are in UTC, so that no reader has to know our zone; it shows them on its own clock. Folding,
escaping and line ends follow RFC 5545; identifiers stay the same for the same batch on the same
day, so that a plan made anew replaces the old one.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from datetime import UTC, datetime
from hashlib import sha256

from tarebook.clocks.zones import clock
from tarebook.plan.conflicts import AT_ODDS
from tarebook.plan.make import Plan
from tarebook.plan.mind import Minded, plan_cautions
from tarebook.plan.steps import Step
from tarebook.safety.caution import TITLES

_KEEPING = TITLES["storage"]
_MINUTES_TO_READ = 5
_LONGEST_LINE = 75  # octets, RFC 5545 section 3.1
_ESCAPES = str.maketrans({"\\": "\\\\", ";": "\\;", ",": "\\,", "\n": "\\n", "\r": None})


def calendar(plan: Plan, *, stamp: datetime) -> str:
    """Return a plan as the text of an iCalendar file.

    Args:
        plan: as made.
        stamp: when it was made, for ``DTSTAMP``.

    Returns:
        First an event with all that is to be known before, then one for each step; lines ended
        and folded as the standard asks.

    Source:
        RFC 5545, sections 3.1 (folding), 3.3.5 (UTC times), 3.3.11 (escaping), 3.6.1 (events).
    """
    lines = ["BEGIN:VCALENDAR", "VERSION:2.0", "PRODID:-//tarebook//plan//EN", "CALSCALE:GREGORIAN"]
    lines += _before(plan, stamp)
    seen: Counter[tuple[str, int, int]] = Counter()
    for one in plan.steps:
        key = (one.kind, one.job, one.load)
        lines += _event(plan, one, seen[key], stamp)
        seen[key] += 1
    lines.append("END:VCALENDAR")
    return "".join(f"{fold(line)}\r\n" for line in lines)


def fold(line: str) -> str:
    """Return a line folded at 75 octets, never inside a letter.

    Example:
        >>> fold("SUMMARY:" + "e" * 80).split("\\r\\n ")[1]
        'eeeeeeeeeeeee'
    """
    parts, room, part = [], _LONGEST_LINE, ""
    for letter in line:
        size = len(letter.encode("utf-8"))
        if size > room:
            parts.append(part)
            part, room = "", _LONGEST_LINE - 1  # the blank that continues a line counts too
        part += letter
        room -= size
    return "\r\n ".join([*parts, part])


def escaped(text: str) -> str:
    """Return a text as a property's value: no steering characters, marks of the format escaped."""
    shown = "".join(c if c.isprintable() or c == "\n" else " " for c in text)
    return shown.translate(_ESCAPES)


def _event(plan: Plan, one: Step, number: int, stamp: datetime) -> Iterator[str]:
    job = plan.jobs[one.job]
    many = f", load {one.load} of {len(job.loads)}" if one.load and len(job.loads) > 1 else ""
    yield "BEGIN:VEVENT"
    yield f"UID:{_uid(plan, one, number)}"
    yield f"DTSTAMP:{_utc(stamp)}"
    yield f"DTSTART:{_minute(one.start)}"
    yield f"DTEND:{_minute(one.end)}"
    yield f"SUMMARY:{escaped(f'{one.what} ({job.recipe.title}{many})')}"
    about = "\n".join(filter(None, (one.note, *_about(plan, one))))
    if about:
        yield f"DESCRIPTION:{escaped(about)}"
    yield f"TRANSP:{'OPAQUE' if one.attended else 'TRANSPARENT'}"
    yield "END:VEVENT"


def _about(plan: Plan, one: Step) -> Iterator[str]:
    """Yield what does not go as asked, or is at odds with advice, in this step."""
    for said in plan.conflicts:
        if one.kind in said.kinds and said.job in (None, one.job):
            yield f"{AT_ODDS}: {said.sentence}" if said.grave else said.sentence
    if one.kind == "pack":
        for each in plan_cautions(plan):
            if one.job in each.jobs and each.caution.title == _KEEPING:
                yield f"{_KEEPING}: {each.caution.text}"


def _before(plan: Plan, stamp: datetime) -> Iterator[str]:
    """Yield an event at the very start, with everything that the printed plan says around it."""
    start = plan.span.start
    grave = [f"{AT_ODDS}: {one.sentence}" for one in plan.conflicts if one.grave]
    asked = [f"Not as asked: {one.sentence}" for one in plan.conflicts if not one.grave]
    mind = [_minded(plan, one) for one in plan_cautions(plan)]
    titles = "; ".join(job.recipe.title for job in plan.jobs)
    yield "BEGIN:VEVENT"
    yield f"UID:{_digest(plan, 0, 'before', 0, 0)}"
    yield f"DTSTAMP:{_utc(stamp)}"
    yield f"DTSTART:{_minute(start)}"
    yield f"DTEND:{_minute(start + _MINUTES_TO_READ)}"
    yield f"SUMMARY:{escaped(f'Read before you begin ({titles})')}"
    text = "\n".join((*grave, *asked, *mind))
    yield f"DESCRIPTION:{escaped(text)}"
    yield "TRANSP:TRANSPARENT"
    yield "END:VEVENT"


def _minded(plan: Plan, one: Minded) -> str:
    """Return a caution, with the recipes that it is for before it, where it is not for all."""
    titles = [] if one.shared else [plan.jobs[at].recipe.title for at in one.jobs]
    told = one.caution
    return ": ".join(filter(None, ("; ".join(titles), told.title, told.text))) + (
        f" [{told.citation}]"
    )


def _uid(plan: Plan, one: Step, number: int) -> str:
    return _digest(plan, one.job, one.kind, one.load, number)


def _digest(plan: Plan, at: int, kind: str, load: int, number: int) -> str:
    job = plan.jobs[at]
    day = clock(plan.span.end, plan.zone).date().isoformat()
    parts = (job.recipe.title, f"{job.meat_g:.1f}", day, at, kind, load, number)
    digest = sha256("\0".join(map(str, parts)).encode("utf-8", "replace")).hexdigest()
    return f"{digest[:32]}@tarebook"


def _minute(minute: int) -> str:
    return _utc(clock(minute, UTC))


def _utc(at: datetime) -> str:
    return f"{at.astimezone(UTC):%Y%m%dT%H%M%SZ}"
