"""The page of a thermometer's log."""

from __future__ import annotations

import pytest

from tarebook.cards.lines import plain_text, width
from tarebook.cards.probe_page import NO_VERDICT, probe_data, probe_page
from tarebook.probe import Log, read_log

ROWS = "time,Core (F)\n" + "".join(
    f"2026-11-21 {18 + m // 60}:{m % 60:02d},{min(60 + m, 163)}\n" for m in range(200)
)


@pytest.fixture
def log() -> Log:
    """Two hundred minutes up to 163 °F."""
    return read_log(ROWS.encode(), file="oven.csv")


def test_the_page_fits_eighty_columns(log: Log) -> None:
    """No line runs over."""
    assert [] == [one.text for one in probe_page(log) if width(one.text) > 80]


def test_the_page_tells_when_and_for_how_long(log: Log) -> None:
    """First reading by the clock; longest; never where it never was."""
    page = plain_text(probe_page(log))

    assert "160 °F (71 °C)      1 h 40 min in (19:40)     1 h 39 min        1 h 39 min" in page
    assert "165 °F (74 °C)      never" in page


def test_the_page_gives_no_verdict(log: Log) -> None:
    """It says what it does not say, and cites what the figures are for."""
    page = " ".join(plain_text(probe_page(log)).split())

    assert NO_VERDICT in page
    assert "[USDA FSIS, Jerky and Food Safety]" in page
    for word in ("is safe", "lethal", "log reduction", "pasteur"):
        assert word not in page.lower()


def test_air_and_meat_are_kept_apart(log: Log) -> None:
    """What was read in the air is said to tell nothing of the meat."""
    air = plain_text(probe_page(log._replace(place="air")))
    unknown = plain_text(probe_page(log._replace(place="")))

    assert "tells nothing of the inside of the meat" in air
    assert "--in meat or --in air" in " ".join(unknown.split())


def test_the_curve_is_drawn_left_to_right(log: Log) -> None:
    """Rising readings rise on the page."""
    rows = [text.text for text in probe_page(log) if "│" in text.text]
    places = [row.index("•") for row in rows if "•" in row]

    assert len(places) > 6
    assert sorted(places, reverse=True) == places


def test_the_data_say_the_same(log: Log) -> None:
    """Seconds and degrees, null where nothing was reached."""
    found = probe_data(log)

    assert ("meat", 200, 163.0) == (found["place"], found["readings"], found["highest_f"])
    assert [5100.0, 6000.0, None] == [one["first_s"] for one in found["reached"]]
