"""The page of how long a batch may dry."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable
from fractions import Fraction

import pytest

from tarebook.cards.drying_page import (
    HEAT_APART,
    NO_CLOCK,
    NOT_MEAT,
    DryingSheet,
    drying_data,
    drying_page,
)
from tarebook.cards.lines import Line, plain_text, width
from tarebook.cards.worksheet import worksheet
from tarebook.drying.time import Conditions
from tarebook.figures.drying_times import drying_times
from tarebook.figures.sources import sources
from tarebook.plan.hours import carried_hours, published_hours
from tarebook.recipe.model import Recipe

Unwrapped = Callable[[Iterable[Line]], str]

QUARTER = Conditions(thickness_mm=6.35, air_c=65.0)
THIN = Conditions(thickness_mm=5.0, air_c=60.0)


@pytest.fixture
def sheet_of(recipe_of: Callable[..., Recipe]) -> Callable[..., DryingSheet]:
    """Return a maker of pages: a last batch of six hours beside what others printed."""
    answers = (
        ("your last batch", carried_hours(6.0, QUARTER, THIN)),
        ("others", published_hours(THIN)),
    )

    def make(**parts: str) -> DryingSheet:
        done = worksheet(recipe_of(**parts), factor=Fraction(1))
        return DryingSheet(done, 5.0, 60.0, (True, False), answers)

    return make


@pytest.mark.parametrize("meat", ["deer", "turkey-breast", "salmon-sockeye", "mushroom-portabella"])
def test_the_page_fits_eighty_columns(sheet_of: Callable[..., DryingSheet], meat: str) -> None:
    """Printed times with their long titles too."""
    page = drying_page(sheet_of(meat=meat, title="Strips from the far end of the lake " * 4))

    assert [] == [one.text for one in page if width(one.text) > 80]


def test_every_way_is_told_as_an_estimate(
    sheet_of: Callable[..., DryingSheet], unwrapped: Unwrapped
) -> None:
    """Three figures each, where they come from, and never by the clock alone."""
    page = unwrapped(drying_page(sheet_of()))

    assert 2 == len(re.findall(r"[\d.]+ to [\d.]+ h, likely [\d.]+ h \(an estimate\)", page))
    assert "air of 140 °F (60 °C), taken since none is stated" in page
    assert "5 mm (0.2 in) thick" in page
    assert NO_CLOCK in page and HEAT_APART in page
    assert re.search(r"bends like a green stick.*?\[University of Wyoming", page)


def test_the_corners_say_what_they_rest_on(sheet_of: Callable[..., DryingSheet]) -> None:
    """Power of the thickness down, what heat does across; with the working values."""
    sheet = sheet_of()
    corners = sheet.answers[0][1].corners_h
    assert corners is not None
    page = plain_text(drying_page(sheet))
    rows = [re.findall(r"([\d.]+) h", one) for one in page.splitlines() if "(power" in one]

    assert [[f"{one:.1f}" for one in corners[:2]], [f"{one:.1f}" for one in corners[2:]]] == rows
    assert "(18 kJ/mol)" in page and "(45 kJ/mol)" in page


def test_the_scale_says_when_it_is_done(
    sheet_of: Callable[..., DryingSheet], unwrapped: Unwrapped
) -> None:
    """The weight that is left, as an estimate."""
    sheet = sheet_of()
    likely = sheet.done.estimate.finished_g.likely

    assert f"By the scale, about {likely:,.0f} g are left of it" in unwrapped(drying_page(sheet))


def test_thermometer_and_heat_are_always_said(
    sheet_of: Callable[..., DryingSheet], unwrapped: Unwrapped
) -> None:
    """With who says so; and nothing of what the hours do not touch."""
    sheet = sheet_of()
    page = unwrapped(drying_page(sheet))

    assert {"heat", "dryer"} <= {one.code for one in sheet.cautions}
    assert "by a thermometer and not by its dial" in page
    assert "allergens" not in {one.code for one in sheet.cautions}
    assert not re.search(r"\bsafe(ly)?\b", page)


def test_a_cool_dryer_and_a_thick_cut_are_warned_of(sheet_of: Callable[..., DryingSheet]) -> None:
    """As everywhere else."""
    sheet = sheet_of(thickness="1/2 in", drying='temperature = "110 F"')

    assert {"dryer-cool", "thickness-over"} <= {one.code for one in sheet.cautions}


def test_every_printed_time_is_shown_with_who_says_so(
    sheet_of: Callable[..., DryingSheet], unwrapped: Unwrapped
) -> None:
    """One row a source."""
    page = unwrapped(drying_page(sheet_of()))

    assert all(one.what in page for one in drying_times())
    assert all(sources()[one.source].title in page for one in drying_times())


def test_what_is_no_meat_has_no_printed_time(
    sheet_of: Callable[..., DryingSheet], unwrapped: Unwrapped
) -> None:
    """And that is said; nor is there a heat step or a bend to speak of."""
    sheet = sheet_of(meat="mushroom-portabella")
    page = unwrapped(drying_page(sheet))

    assert NOT_MEAT in page and "Minnesota" not in page
    assert HEAT_APART not in page and "green stick" not in page
    assert [] == drying_data(sheet)["printed_by_others"]


def test_the_data_say_the_same(sheet_of: Callable[..., DryingSheet]) -> None:
    """Hours as numbers, each with its name; what others printed, and the cautions."""
    data = drying_data(sheet_of())
    own, others = data["hours"]

    assert ("your last batch", "others") == (own["from"], others["from"])
    assert all(one["low"] < one["likely"] < one["high"] for one in data["hours"])
    assert 4 == len(own["corners"]) and others["corners"] is None
    assert len(drying_times()) == len(data["printed_by_others"])
    assert data["finished_g"]["low"] < data["finished_g"]["high"]
    assert {"heat", "dryer"} <= {one["code"] for one in data["cautions"]}
