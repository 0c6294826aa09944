"""How long the work takes."""

from __future__ import annotations

import pytest

from tarebook.figures.sources import sources
from tarebook.figures.task_times import minutes, task_keys, task_times

LB_PER_KG = 1 / 0.45359237

# Hours that were printed for so many pounds, the task, the end of the range.
PUBLISHED = [
    (24, 5, "thaw", "low", "fsis-thawing: 24 hours for every 5 pounds"),
    (24, 4, "thaw", "high", "fsis-thawing: 24 hours for each 4 to 5 pounds, turkey"),
]


@pytest.mark.published
@pytest.mark.parametrize(("hours", "pounds", "key", "end", "source"), PUBLISHED)
def test_printed_thawing(hours: int, pounds: int, key: str, end: str, source: str) -> None:
    """Minutes a kilogram are the printed hours for the printed pounds, to a tenth."""
    assert round(hours * 60 / pounds * LB_PER_KG, 1) == minutes(key, kg=1, end=end), source


@pytest.mark.published
def test_printed_minutes() -> None:
    """A full day to thaw small packages (fsis-thawing); 15 to 30 minutes to heat the dryer
    (wyoming-jerky); 10 minutes in the oven (uw-home-jerky).
    """
    assert 24 * 60 == minutes("thaw-least")
    (preheat,) = task_times("preheat")
    assert (15, 30) == (preheat.low, preheat.high)
    assert 10 == next(one.likely for one in task_times("oven") if one.source == "uw-home-jerky")


def test_lines_add_up() -> None:
    """What is done once and what is done for each kilogram or tray add up."""
    assert 10 + 9 * 3 == minutes("slice", kg=3)
    assert 3 * 7 == minutes("load", trays=7)
    assert 5 + 5 == minutes("slice", kg=1, end="low")


@pytest.mark.parametrize("key", task_keys())
def test_ranges_and_reasons(key: str) -> None:
    """Every line has a rising range, a reason, a known code, and a source that is described."""
    for one in task_times(key):
        assert 0 < one.low <= one.likely <= one.high
        assert one.reason and one.code in ("P", "W")
        assert one.source in sources()
        ours = ("common-practice" == one.source, "W" == one.code)
        assert len(set(ours)) == 1, "a time of ours is common-practice with code W"


def test_an_unknown_task() -> None:
    """A task that the table does not have is a fault of the caller."""
    with pytest.raises(KeyError):
        task_times("nap")
