"""The page of how long a batch may dry."""

from __future__ import annotations

import pytest

from tarebook.cards.drying_page import NO_CLOCK, NOT_MEAT, DryingSheet, drying_data, drying_page
from tarebook.cards.lines import plain_text, width
from tarebook.drying.time import Conditions
from tarebook.figures.drying_times import drying_times
from tarebook.plan.hours import carried_hours, published_hours

QUARTER = Conditions(thickness_mm=6.35, air_c=65.0)
THIN = Conditions(thickness_mm=5.0, air_c=65.0)


@pytest.fixture
def sheet() -> DryingSheet:
    """A last batch of six hours beside what others printed."""
    answers = (
        ("your last batch", carried_hours(6.0, QUARTER, THIN)),
        ("others", published_hours(THIN)),
    )
    return DryingSheet("Lake strips", 5.0, 65.0, (True, False), answers, True)


def test_the_page_fits_eighty_columns(sheet: DryingSheet) -> None:
    """Printed times with their long titles too."""
    assert [] == [one.text for one in drying_page(sheet) if width(one.text) > 80]


def test_every_way_is_told_with_its_corners_and_as_an_estimate(sheet: DryingSheet) -> None:
    """Three figures each, where they come from, and never by the clock alone."""
    page = " ".join(plain_text(drying_page(sheet)).split())

    assert 2 == page.count("(an estimate)")
    assert "at its four corners" in page
    assert "air of 149 °F (65 °C), taken since none is stated" in page
    assert NO_CLOCK in page


def test_every_printed_time_is_shown_with_who_says_so(sheet: DryingSheet) -> None:
    """One row a source."""
    page = plain_text(drying_page(sheet))

    assert all(one.what in page for one in drying_times())
    assert ", Instruction" not in page


def test_what_is_no_meat_has_no_printed_time(sheet: DryingSheet) -> None:
    """And that is said."""
    page = plain_text(drying_page(sheet._replace(printed=False)))

    assert NOT_MEAT in page and "Minnesota" not in page


def test_the_data_say_the_same(sheet: DryingSheet) -> None:
    """Hours as numbers, each with its name."""
    data = drying_data(sheet)

    assert ["your last batch", "others"] == [one["from"] for one in data["hours"]]
    assert all(one["low"] < one["likely"] < one["high"] for one in data["hours"])
