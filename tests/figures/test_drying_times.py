"""Printed drying times: whole, in order, and each with who says so."""

import pytest

from tarebook.figures.drying_times import DryingTime, drying_times
from tarebook.figures.sources import sources


def test_table_is_whole() -> None:
    """Seventeen printed times are carried, each under its own key."""
    assert 17 == len(drying_times()) == len({time.key for time in drying_times()})


@pytest.mark.parametrize("time", drying_times(), ids=lambda time: time.key)
def test_time_is_in_order(time: DryingTime) -> None:
    """Every time has an end, runs forward, says for what, and names a source we know."""
    ends = [end for end in (time.low_h, time.high_h) if end is not None]

    assert ends and sorted(ends) == ends and ends[0] > 0
    assert time.air_c[0] <= time.air_c[1]
    assert time.thickness_mm is None or 0 < time.thickness_mm[0] <= time.thickness_mm[1]
    assert time.what and time.source in sources()


def test_units_are_turned_into_ours() -> None:
    """Degrees Fahrenheit and inches of the print become degrees Celsius and millimeters."""
    booklet = next(time for time in drying_times() if time.key == "booklet-160")

    assert (4, 8) == (booklet.low_h, booklet.high_h)
    assert booklet.air_c == pytest.approx((71.111, 71.111), abs=1e-3)
    assert booklet.thickness_mm == pytest.approx((6.35, 6.35))


def test_open_ends_stay_open() -> None:
    """A time printed as "at least" has no upper end, and a thickness not printed is not known."""
    news = next(time for time in drying_times() if time.key == "news-2010")

    assert (6, None) == (news.low_h, news.high_h)
    assert news.thickness_mm is None
