"""The calendar file, read by somebody else's parser."""

from __future__ import annotations

from collections.abc import Callable
from datetime import UTC, datetime
from zoneinfo import ZoneInfo

import pytest

from tarebook.clocks.zones import minute_of
from tarebook.kitchen import Kitchen, Tray
from tarebook.plan.calendar import calendar, escaped, fold
from tarebook.plan.jobs import Job
from tarebook.plan.make import Plan

icalendar = pytest.importorskip("icalendar")

JobOf = Callable[..., Job]
PlanOf = Callable[..., Plan]
STAMP = datetime(2026, 11, 25, 9, 0, tzinfo=ZoneInfo("America/Chicago"))


def test_every_step_is_an_event(plan: PlanOf) -> None:
    """A standard parser finds every step, with its true times, its words and its own identifier."""
    found = plan(pounds=11, ready="Sunday 18:00", frozen=True)
    read = icalendar.Calendar.from_ical(calendar(found, stamp=STAMP))
    before, *events = read.walk("VEVENT")

    assert str(before["SUMMARY"]).startswith("Read before you begin")
    assert "2.0" == str(read["VERSION"]) and [] == read.errors
    times = [(minute_of(event["DTSTART"].dt), minute_of(event["DTEND"].dt)) for event in events]
    assert [(one.start, one.end) for one in found.steps] == times
    for event, one in zip(events, found.steps, strict=True):
        assert one.what in str(event["SUMMARY"]) and "Lake strips" in str(event["SUMMARY"])
        assert str(event.get("DESCRIPTION", "")).startswith(one.note)
        assert UTC.utcoffset(None) == event["DTSTART"].dt.utcoffset()
        assert STAMP == event["DTSTAMP"].dt
    assert len(events) == len({str(event["UID"]) for event in events})


def test_across_the_change_of_clocks(plan: PlanOf) -> None:
    """In a calendar of the kitchen's own zone a soak across the change is still twelve hours."""
    zone = ZoneInfo("Europe/Helsinki")
    found = plan(
        ready="2026-10-25 18:00", soak="hours = 12", now=datetime(2026, 10, 22, 9, tzinfo=zone)
    )
    read = icalendar.Calendar.from_ical(calendar(found, stamp=STAMP))
    (soak,) = (one for one in read.walk("VEVENT") if str(one["SUMMARY"]).startswith("Soaks"))
    start, end = (soak[key].dt.astimezone(zone) for key in ("DTSTART", "DTEND"))

    assert 12 * 3600 == (end - start.astimezone(UTC)).total_seconds()
    assert (3 * 3600, 2 * 3600) == (
        start.utcoffset().total_seconds(),
        end.utcoffset().total_seconds(),
    )


def test_the_same_plan_has_the_same_bytes(plan: PlanOf) -> None:
    """Nothing in it depends on the hour it is written, but the stamp that was given."""
    one, two = (calendar(plan(ready="Saturday 18:00"), stamp=STAMP) for _ in range(2))
    later = calendar(plan(ready="Saturday 18:00"), stamp=STAMP.replace(hour=10))

    assert one == two
    assert set(one.split("\r\n")) ^ set(later.split("\r\n")) == {
        "DTSTAMP:20261125T150000Z",
        "DTSTAMP:20261125T160000Z",
    }


def test_a_plan_made_anew_keeps_its_identifiers(plan: PlanOf) -> None:
    """Moved by two hours on the same day, each step is still itself; on another day it is not."""

    def uids(hour: str) -> list[str]:
        text = calendar(plan(ready=hour, own_h=(6, 6)), stamp=STAMP)
        return sorted(line for line in text.split("\r\n") if line.startswith("UID:"))

    assert uids("Saturday 10:00") == uids("Saturday 12:00")
    assert not set(uids("Saturday 10:00")) & set(uids("Sunday 10:00"))


def test_hostile_words_stay_words(plan: PlanOf, job: JobOf) -> None:
    """Marks of the format and letters of several octets in a title do no harm."""
    title = "Oma; liha, \\\\n " + "ä½" * 60
    found = plan(job(title=title), ready="Saturday 18:00")
    text = calendar(found, stamp=STAMP)
    read = icalendar.Calendar.from_ical(text)

    assert all(len(line.encode()) <= 75 for line in text.split("\r\n"))
    assert text.endswith("END:VCALENDAR\r\n") and "\n" not in text.replace("\r\n", "")
    shown = found.jobs[0].recipe.title
    assert all(shown in str(event["SUMMARY"]) for event in read.walk("VEVENT"))


@pytest.mark.parametrize("length", [1, 74, 75, 76, 149, 150, 400])
def test_folding(length: int) -> None:
    """Lines are folded at 75 octets, and unfolded are what they were."""
    for letter in ("a", "ä", "½", "🦌"):
        line = letter * length
        folded = fold(line)
        assert line == folded.replace("\r\n ", "")
        assert all(len(part.encode()) <= 75 for part in folded.split("\r\n"))


def test_escaping() -> None:
    """Backslash, semicolon, comma and line ends are escaped; steering characters are gone."""
    assert "a\\\\b\\;c\\,d\\ne f" == escaped("a\\b;c,d\ne\x1bf")


def test_a_phone_is_told_what_the_page_tells(plan: PlanOf) -> None:
    """The first event holds conflicts and cautions; each conflict stands on its own event too."""
    found = plan(
        ready="Saturday 18:00",
        kitchen=Kitchen(trays=5, tray=Tray(304.8, 304.8), dryer_f=(95.0, 140.0)),
    )
    before, *events = icalendar.Calendar.from_ical(calendar(found, stamp=STAMP)).walk("VEVENT")
    told = str(before["DESCRIPTION"])

    assert "At odds with published advice: The dryer goes no hotter than 140" in told
    assert "Hands and raw juices: Wash hands 20 seconds" in told
    assert all(one.sentence in told for one in found.conflicts)
    for event in events:
        odd = "At odds with published advice" in str(event.get("DESCRIPTION", ""))
        assert odd is str(event["SUMMARY"]).startswith(("Dryer on", "Dries"))
    tests = [one for one in events if str(one["SUMMARY"]).startswith("Bend test")]
    assert tests and all("bends and cracks" in str(one["DESCRIPTION"]) for one in tests)


def test_cautions_and_keeping_name_their_recipe(plan: PlanOf, job: JobOf) -> None:
    """In a calendar too: the first event names whom a caution is for, packing how long it keeps."""
    found = plan(
        job(pounds=2, title="Ours"),
        job(pounds=2, title="Theirs", meat="portabella"),
        ready="Sunday 18:00",
    )
    read = icalendar.Calendar.from_ical(calendar(found, stamp=STAMP))
    told = {str(one["SUMMARY"]): str(one.get("DESCRIPTION", "")) for one in read.walk("VEVENT")}

    before = told["Read before you begin (Ours; Theirs)"]
    assert "Ours: Keeping: Sealed" in before and "Theirs: Keeping: Keep cold" in before
    assert "\nWho should take most care: " in before
    packed = {name: text for name, text in told.items() if "pack and date it" in name}
    assert ["14 days" in text for name, text in sorted(packed.items())] == [True, False]
