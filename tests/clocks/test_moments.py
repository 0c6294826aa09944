"""A moment as a cook says it."""

from __future__ import annotations

from datetime import datetime
from zoneinfo import ZoneInfo

import pytest

from tarebook.clocks.moments import read_clock_span, read_moment
from tarebook.findings import AskedWrongly

ZONE = ZoneInfo("America/Chicago")
NOW = datetime(2026, 11, 25, 9, 30, tzinfo=ZONE)  # a Wednesday


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("Saturday 18:00", "2026-11-28 18:00"),
        ("saturday 6pm", "2026-11-28 18:00"),
        ("Sat 6 pm", "2026-11-28 18:00"),
        ("18:00 on saturday".replace("on ", ""), "2026-11-28 18:00"),
        ("Thursday 18:00", "2026-11-26 18:00"),
        ("Tuesday 18:00", "2026-12-01 18:00"),
        ("TUESDAY 6PM", "2026-12-01 18:00"),
        ("Tomorrow 7am", "2026-11-26 07:00"),
        ("Today 2pm", "2026-11-25 14:00"),
        ("Wednesday 18:00", "2026-11-25 18:00"),
        ("Wednesday 9:00", "2026-12-02 09:00"),
        ("today 14:30", "2026-11-25 14:30"),
        ("today 7am", "2026-11-25 07:00"),
        ("tomorrow 7am", "2026-11-26 07:00"),
        ("tomorrow at noon", "2026-11-26 12:00"),
        ("tomorrow midnight", "2026-11-26 00:00"),
        ("18:00", "2026-11-25 18:00"),
        ("7:00", "2026-11-26 07:00"),
        ("12am", "2026-11-26 00:00"),
        ("12pm", "2026-11-25 12:00"),
        ("2026-11-28 18:00", "2026-11-28 18:00"),
        ("2026-11-28T18:00", "2026-11-28 18:00"),
        ("Nov 28 18:00", "2026-11-28 18:00"),
        ("28 November 2027, 6:15pm", "2027-11-28 18:15"),
        ("Saturday, 28 November, 18:00", "2026-11-28 18:00"),
        ("Mar 3 8am", "2027-03-03 08:00"),
    ],
)
def test_moments(text: str, says: str) -> None:
    """Days of the week, today and tomorrow, dates in words and figures; times of either clock."""
    found, note = read_moment(text, NOW)

    assert says == f"{found:%Y-%m-%d %H:%M}"
    assert (ZONE, "") == (found.tzinfo, note)


@pytest.mark.parametrize(
    "text",
    [
        "", "Saturday", "6", "soon", "Saturday 25:00", "Saturday 13pm", "18:7", "someday 18:00",
        "2026-02-30 18:00", "30 Feb 18:00", "Saturday Sunday 18:00", "0am", "x" * 100, "18:00:00",
        "Ma 3 18:00", "3/4 18:00", "٣:00",
    ],
)  # fmt: skip
def test_what_is_no_moment(text: str) -> None:
    """A day without a time, a day that does not exist and other words are refused, with a hint."""
    with pytest.raises(AskedWrongly) as caught:
        read_moment(text, NOW)

    assert len(str(caught.value)) > 20


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("Saturday 18:00", "2026-11-21 18:00"),
        ("Wednesday 9:00", "2026-11-25 09:00"),
        ("Wednesday 18:00", "2026-11-18 18:00"),
        ("today 14:30", "2026-11-25 14:30"),
        ("yesterday 6pm", "2026-11-24 18:00"),
        ("7:00", "2026-11-25 07:00"),
        ("9:40", "2026-11-25 09:40"),
        ("18:00", "2026-11-24 18:00"),
        ("Nov 24 18:00", "2026-11-24 18:00"),
        ("Nov 28 18:00", "2025-11-28 18:00"),
        ("2026-11-28 18:00", "2026-11-28 18:00"),
    ],
)
def test_moments_that_have_been(text: str, says: str) -> None:
    """Of what happened the last time is meant; a wall clock a little ahead is still today."""
    found, note = read_moment(text, NOW, past=True)

    assert (says, "") == (f"{found:%Y-%m-%d %H:%M}", note)


@pytest.mark.parametrize(
    ("text", "past", "says"),
    [
        ("tomorrow 7am", True, '"tomorrow 7am" is still to come'),
        ("yesterday 7am", False, '"yesterday 7am" is past'),
        ("once 7am", True, "is no day I can read; write 18:00, yesterday 7am, Saturday"),
        ("once 7am", False, "is no day I can read; write Saturday 18:00, tomorrow 7am"),
        ("Saturday", True, "does not say the time of day; write 18:00, yesterday 7am"),
    ],
)
def test_yesterday_and_tomorrow_have_their_side(text: str, past: bool, says: str) -> None:
    """What happened was not tomorrow, what is planned is not yesterday, and examples fit."""
    with pytest.raises(AskedWrongly) as caught:
        read_moment(text, NOW, past=past)

    assert says in str(caught.value)


def test_an_hour_that_is_left_out() -> None:
    """Where clocks go forward, the hour between is no time."""
    with pytest.raises(AskedWrongly, match="the clocks go forward"):
        read_moment("2027-03-14 02:30", NOW)


def test_an_hour_that_comes_twice() -> None:
    """Where clocks go back, the first of the two is taken, and that is told."""
    found, note = read_moment("2027-11-07 01:30", NOW)

    assert -5 * 3600 == found.utcoffset().total_seconds()  # type: ignore[union-attr]
    assert "comes twice" in note


@pytest.mark.parametrize(
    ("text", "span"),
    [
        ("22:00-06:00", ((22, 0), (6, 0))),
        ("10pm-6am", ((22, 0), (6, 0))),
        ("22:30 – 5:45", ((22, 30), (5, 45))),
        ("10 pm to 6 am", ((22, 0), (6, 0))),
        ("01:00-05:00", ((1, 0), (5, 0))),
    ],
)
def test_clock_spans(text: str, span: object) -> None:
    """A night is written from one time to another."""
    assert span == read_clock_span(text)


@pytest.mark.parametrize("text", ["22:00", "22:00-22:00", "night", "22-6", "-", "Sat 22:00-6:00"])
def test_what_is_no_night(text: str) -> None:
    """One time, twice the same and words are refused."""
    with pytest.raises(AskedWrongly):
        read_clock_span(text)
