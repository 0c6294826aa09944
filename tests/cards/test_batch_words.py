"""What an entry of the batch book says."""

from __future__ import annotations

from fractions import Fraction
from typing import Any

import pytest

from tarebook.cards.batch_words import (
    counted,
    day_words,
    entry_line,
    entry_words,
    hours_words,
    moment_words,
    weight_words,
)
from tarebook.cards.lines import plain_text
from tarebook.records.entry import Entry, Kind
from tarebook.records.moment import read_moment

AT = read_moment("2026-11-05T06:07:00-06:00")


def entry(kind: Kind, **fields: Any) -> Entry:
    """Return an entry of batch 12."""
    return Entry(uid="", batch=12, number=7, kind=kind, happened=AT, recorded=AT, **fields)


@pytest.mark.parametrize(
    ("written", "grams", "words"),
    [
        ("2 lb 3 oz", "992.233", "2 lb 3 oz (992 g)"),
        ("992 g", "992", "992 g"),
        ("992g", "992", "992 g"),
        ("1,002 g", "1002", "1,002 g"),
        ("1 kg", "1000", "1 kg (1,000 g)"),
        ("0 oz", "0", "0 oz (0 g)"),
    ],
)
def test_a_weight_as_written_and_in_grams(written: str, grams: str, words: str) -> None:
    """What was written stands first; grams stand beside it unless they are the same."""
    told = entry(Kind.WEIGH, what="raw", written=written, value=Fraction(grams))

    assert words == weight_words(told)


@pytest.mark.parametrize(
    ("written", "degrees", "words"),
    [
        ("160 F", "160", "meat at 160 F (71 °C)"),
        ("160°f", "160", "meat at 160°f (71 °C)"),
        ("160 Fahrenheit", "160", "meat at 160 Fahrenheit (71 °C)"),
        ("71 C", "159.8", "meat at 71 C (160 °F)"),
        ("71 degrees Celsius", "159.8", "meat at 71 degrees Celsius (160 °F)"),
    ],
)
def test_a_temperature_in_both_scales(written: str, degrees: str, words: str) -> None:
    """The scale that was not written stands beside it."""
    told = entry(Kind.TEMP, what="meat", written=written, value=Fraction(degrees))

    assert words == entry_words(told)


def test_every_kind_has_its_words() -> None:
    """None is told by its name in the tables."""
    said = {
        entry_words(entry(kind, what="in", note="x", about=3, written="1 g", value=Fraction(1)))
        for kind in Kind
    }

    assert len(Kind) == len(said)
    assert {"into the soak; x", "into the heat; x", "into the dryer; x", "turned; x"} < said
    assert {"strikes entry 3; x", "takes up note 3; x", "drops note 3; x", "note: x"} < said


def test_the_line_of_an_entry() -> None:
    """Its number, what, when, and of which batch; what it replaces with it; within 80 columns."""
    old = entry(Kind.NOTE, note="more pepper")
    new = entry(Kind.NOTE, note="less pepper " * 9, about=7)
    lines = plain_text(entry_line(new, "Lake strips", old)).splitlines()

    assert lines[0].startswith("12.7  note: less pepper less")
    assert lines[1].startswith("      ")
    assert "in place of 7 (note: more pepper)" in " ".join(" ".join(lines).split())
    assert lines[-1].endswith("Thu 5 Nov 06:07, Lake strips")
    assert max(map(len, lines)) <= 80


def test_marks_that_steer_a_terminal() -> None:
    """None comes through, whoever wrote it."""
    told = entry(Kind.WEIGH, what="raw", written="\x1b[2J6 lb", value=Fraction(1), note="\u202ex")

    assert entry_words(told).isprintable()


def test_moments_and_lengths() -> None:
    """Days as a cook says them, hours and minutes."""
    assert "Thu 5 Nov 06:07" == moment_words(AT)
    assert "Thu 5 Nov 2026 06:07" == moment_words(AT, year=True)
    assert "Thu 5 Nov" == day_words(AT)
    assert ["0 min", "1 min", "59 min", "1 h", "1 h 1 min", "1,000 h"] == [
        hours_words(one) for one in (0, 1 / 60, 0.99, 0.9999, 61 / 60, 1000)
    ]
    assert ("1 batch", "1,000 batches") == (
        counted(1, "batch", "batches"), counted(1000, "batch", "batches")
    )  # fmt: skip
