"""Logs of all makes are read, and what is odd about them is told."""

from __future__ import annotations

import time
from datetime import UTC, datetime

import pytest

from tarebook.findings import AskedWrongly, FileUnreadable
from tarebook.probe import Gap, Log, read_log

STEADY = "".join(f"2026-11-21 18:{minute:02d},{100 + minute}\n" for minute in range(30))


def log(text: str, **asked: str | bool) -> Log:
    """Return the log that such a text makes."""
    return read_log(text.encode(), file="oven.csv", **asked)  # type: ignore[arg-type]


def codes(found: Log) -> list[str]:
    """Return what was odd, by code."""
    return [one.code for one in found.findings]


@pytest.mark.parametrize(
    ("heading", "first", "second"),
    [
        ("Time,Temp (°F)", "2026-11-21T18:00:00,150", "2026-11-21T18:01:00,151"),
        ("Time,Temp F", "2026-11-21T18:00:00-06:00,150", "2026-11-21T18:01:00-06:00,151"),
        ("time;temp_f", "21.11.2026 18:00;150,0", "21.11.2026 18:01;151,0"),
        ("Date,Time,Probe [F]", "11/21/2026,6:00 PM,150", "11/21/2026,6:01 PM,151"),
        ("Date\tClock\tdegF", "2026/11/21\t18:00:00\t150", "2026/11/21\t18:01:00\t151"),
        ("elapsed (min),Fahrenheit", "0,150", "1,151"),
        ("seconds,temperature °F", "0,150", "60,151"),
        ("timestamp,Temp (F)", "1795284000,150", "1795284060,151"),
        ("timestamp,Temp (F)", "1795284000000,150", "1795284060000,151"),
        ("when,reading", "18:00:00,150 °F", "18:01:00,151 °F"),
        ("hh:mm,t,humidity %", "0:00,150F,40", "0:01,151F,41"),
        ("Time,Temp (°C)", "2026-11-21 18:00,65.5556", "2026-11-21 18:01,66.1111"),
        ("", "18:00,150 F", "18:01,151 F"),
    ],
)
def test_a_minute_and_a_degree_however_written(heading: str, first: str, second: str) -> None:
    """Whatever the columns, marks, clock and scale: two readings, a minute and 1 °F apart."""
    rows = "\n".join(one for one in (heading, first, second) if one)
    found = log(rows)

    assert [0.0, 60.0] == [one.seconds for one in found.readings]
    assert [150.0, 151.0] == [round(one.temperature_f, 2) for one in found.readings]


def test_marks_of_other_systems_are_read() -> None:
    """Windows line ends, a byte-order mark, and UTF-16."""
    text = "Time,Temp (°F)\r\n18:00,150\r\n18:01,151\r\n"
    for data in (text.encode("utf-8-sig"), text.encode("utf-16"), text.encode("latin-1")):
        assert 2 == len(read_log(data, file="oven.csv").readings)


@pytest.mark.parametrize("mark", ["\x0b", "\x1c", "\x1e", "\x85", "\u2028", "\r"])
def test_lines_are_counted_as_an_editor_counts_them(mark: str) -> None:
    """A mark within a row that is no line end here moves no line number."""
    text = STEADY.replace("18:05,", f"18:05{mark},").replace("18:07,", f"18:07{mark}x,")

    (finding,) = log(text + "what,is this\n", scale="f").findings

    assert "rows-unread" == finding.code
    assert 8 == finding.place.line
    assert "line 8, 31" in finding.message


def test_line_ends_of_old_machines_are_read() -> None:
    """A file whose lines end in carriage returns alone has as many readings."""
    assert 30 == len(log(STEADY.replace("\n", "\r"), scale="f").readings)


def test_a_clock_put_back_never_leaves_readings_out_of_order() -> None:
    """An hour and a minute back is no clock put back: added to it, the row would still be early."""
    rows = "".join(f"2026-11-21 18:{minute:02d},{100 + minute}\n" for minute in (0, 1, 2, 3))
    found = log(f"{rows}2026-11-21 19:10,120\n2026-11-21 18:09,121\n", scale="f")

    times = [one.seconds for one in found.readings]
    assert sorted(times) == times
    assert ["out-of-order"] == [
        code for code in codes(found) if code in ("out-of-order", "clock-back")
    ]


def test_a_year_that_no_calendar_has_is_a_row_that_cannot_be_read() -> None:
    """A number far too large for a time of today is passed over like any other such row."""
    rows = "1795284000,150\n1795284060,151\n999999999999,152\n"
    found = log(f"timestamp,Temp (F)\n{rows}")

    assert [0.0, 60.0] == [one.seconds for one in found.readings]
    assert ["rows-unread"] == codes(found)


def test_a_mark_of_old_teletypes_behind_a_number_is_a_blank() -> None:
    """What Python calls a blank behind a number of time hides no row."""
    assert 3 == len(log("seconds,Temp (F)\n0,150\n60\x1f,151\n120,152\n").readings)


def test_a_clock_without_days_goes_over_midnight() -> None:
    """23:59 and then 00:00 are a minute apart."""
    assert [0.0, 60.0] == [one.seconds for one in log("23:59,150 F\n00:00,150 F").readings]


def test_times_with_a_zone_are_true_over_a_clock_change() -> None:
    """The night the clocks go back, an offset tells the two one o'clocks apart."""
    found = log("time,F\n2026-11-01T01:30:00-05:00,150\n2026-11-01T01:00:00-06:00,150")

    assert [0.0, 1800.0] == [one.seconds for one in found.readings]


def test_a_clock_put_back_is_seen_without_a_zone() -> None:
    """A log in local time that goes back an hour once goes on, and says so."""
    rows = [f"2026-11-01 01:{minute:02d},150 F" for minute in range(30, 60)]
    rows += [f"2026-11-01 01:{minute:02d},150 F" for minute in range(30)]
    found = log("\n".join(rows))

    assert 59 * 60.0 == found.readings[-1].seconds
    assert "clock-back" in codes(found)


def test_rows_out_of_order_are_put_in_order_and_told() -> None:
    """Two rows swapped are a warning with their line, and lose nothing."""
    rows = STEADY.splitlines()
    rows[10], rows[11] = rows[11], rows[10]
    found = log("time,F\n" + "\n".join(rows))

    assert sorted(one.seconds for one in found.readings) == [one.seconds for one in found.readings]
    assert 30 == len(found.readings)
    assert ["out-of-order"] == codes(found)
    assert 13 == found.findings[0].place.line


def test_of_two_rows_of_one_time_the_cooler_counts() -> None:
    """No heat is told that one of them denies."""
    found = log("time,F\n18:00,150\n18:01,160\n18:01,155\n18:02,158")

    assert [150.0, 155.0, 158.0] == [one.temperature_f for one in found.readings]


def test_a_lone_jump_is_marked_and_not_believed() -> None:
    """A probe lifted out for one reading, or touching the tray."""
    rows = STEADY.splitlines()
    rows[12] = "2026-11-21 18:12,212"
    found = log("time,F\n" + "\n".join(rows))

    assert [12 * 60.0] == [one.seconds for one in found.readings if one.spike]
    assert "spike" in codes(found)


def test_a_true_rise_is_no_spike() -> None:
    """An oven that jumps and stays hot is believed."""
    found = log("time,F\n18:00,150\n18:01,275\n18:02,275\n18:03,275")

    assert not any(one.spike for one in found.readings)


def test_a_gap_is_told_from_and_to() -> None:
    """Half an hour without a reading in a log of minutes."""
    rows = [*STEADY.splitlines()[:20], "2026-11-21 19:00,150", "2026-11-21 19:01,151"]
    found = log("time,F\n" + "\n".join(rows))

    assert (Gap(19 * 60.0, 60 * 60.0),) == found.gaps
    assert "gap" in codes(found)


def test_rows_that_cannot_be_read_are_counted_with_their_lines() -> None:
    """Words among the readings are passed over, not fatal."""
    found = log("time,F\n18:00,150\npaused,\n18:01,ERR\n18:02,152\n18:03,99999")

    assert [150.0, 152.0] == [one.temperature_f for one in found.readings]
    assert "3 rows were passed over" in found.findings[0].message
    assert "line 3, 4, 6" in found.findings[0].message


@pytest.mark.parametrize(
    ("name", "place"),
    [("Meat (F)", "meat"), ("internal °F", "meat"), ("Ambient F", "air"), ("Oven degF", "air"),
     ("Probe 1 (F)", ""), ("T1 F", "")],
)  # fmt: skip
def test_where_the_tip_was_comes_only_from_words_that_say_it(name: str, place: str) -> None:
    """A heading that says neither leaves it open."""
    assert place == log(f"time,{name}\n18:00,150\n18:01,151").place


def test_what_the_cook_says_of_the_place_wins() -> None:
    """The heading may be wrong."""
    assert "meat" == log("time,Oven F\n18:00,150\n18:01,151", place="meat").place


def test_err_several_columns_are_not_chosen_among() -> None:
    """Meat and air are kept apart: the cook says which."""
    with pytest.raises(AskedWrongly, match='--column: "Meat F", "Air F"'):
        log("time,Meat F,Air F\n18:00,150,160\n18:01,151,161")
    assert (
        161
        == log("t,Meat F,Air F\n18:00,150,160\n18:01,151,161", column="air")
        .readings[1]
        .temperature_f
    )


def test_err_no_scale_is_not_guessed() -> None:
    """71 may be either: nothing is told until somebody says."""
    with pytest.raises(AskedWrongly, match="add --scale f or --scale c"):
        log("time,temp\n18:00,71\n18:01,72")
    assert 159.8 == log("time,temp\n18:00,71\n18:01,72", scale="c").readings[0].temperature_f


def test_days_that_read_both_ways_are_told() -> None:
    """3/4 is March unless the cook says April."""
    rows = "time,F\n3/4/2026 18:00,150\n3/4/2026 18:01,151"

    assert datetime(2026, 3, 4, 18) == log(rows).start
    assert ["time-read"] == codes(log(rows))
    assert datetime(2026, 4, 3, 18) == log(rows, day_first=True).start


def test_seconds_since_1970_have_a_clock() -> None:
    """The start of an epoch log is known in the world's time."""
    start = log("timestamp,F\n1795284000,150\n1795284060,151").start

    assert start is not None
    assert datetime(2026, 11, 21, 18, tzinfo=UTC) == start


@pytest.mark.parametrize(
    "text",
    ["", "\n\n", "one line", "a,b\nc,d\ne,f", "time,F\n18:00,x\n18:01,y", "time,F\n18:00,150",
     "\0\1\2\3,\0\n1,2\n3,4", "F\n150\n151", '"', "time,F\n99:99,150\n88:88,151"],
)  # fmt: skip
def test_err_what_is_no_log(text: str) -> None:
    """Whatever it is, it is said that it cannot be read, and by whose fault."""
    with pytest.raises(FileUnreadable):
        log(text)


def test_rows_of_one_moment_are_no_log() -> None:
    """Two readings of one moment leave one: that is refused, not drawn."""
    with pytest.raises(FileUnreadable, match="one moment"):
        read_log("clock;meat\n12:00 am;71 °C\n12:00 am;71 °C\n".encode(), file="log.csv")


@pytest.mark.parametrize(
    ("heading", "cell"),
    [("Temp (F)", "1" + " " * 30_000 + "x"), ("Temp" + " " * 30_000 + "x (F)", "150")],
)
def test_a_cell_of_blanks_takes_no_time(heading: str, cell: str) -> None:
    """Tens of thousands of blanks within a heading or a cell are passed in a moment."""
    rows = f"seconds,{heading}\n0,150\n60,151\n120,{cell}\n"
    began = time.process_time()

    assert 2 <= len(log(rows, scale="f").readings)
    assert time.process_time() - began < 1
