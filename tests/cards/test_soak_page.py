"""The page of soaking hours: what it shows, marks and always says."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable
from fractions import Fraction

import pytest

from tarebook.cards.lines import Line, Style, plain_text
from tarebook.cards.soak_page import limit_h, soak_data, soak_page
from tarebook.cards.worksheet import Worksheet, worksheet
from tarebook.nutrition.soaking import soaking_times
from tarebook.recipe.model import Recipe

Shipped = Callable[..., Worksheet]
Unwrapped = Callable[[Iterable[Line]], str]

SOAKED = [
    "juniper-venison", "bay-brine-bison", "cranberry-moose", "maple-dill-salmon",
    "orchard-turkey", "woodland-mushrooms",
]  # fmt: skip
WITHOUT = ["cabin-rub-elk", "trail-sticks-venison"]


@pytest.fixture
def sheet_of(recipe_of: Callable[..., Recipe]) -> Callable[..., Worksheet]:
    """Return a maker of worksheets from parts of a recipe."""
    return lambda **parts: worksheet(recipe_of(**parts), factor=Fraction(1))


@pytest.mark.parametrize("name", SOAKED)
def test_all_of_it_fits(name: str, shipped: Shipped) -> None:
    """Each page fits 80 columns and has a table, a chart of salt and of sugar, and the half."""
    text = plain_text(soak_page(shipped(name)))

    assert max(len(line) for line in text.splitlines()) <= 80
    assert 6 == len(re.findall(r"^\d+ h (?:\*)? *\d+ / \d+ / \d+ %", text, re.M))
    assert 12 == text.count("●")
    assert "Half the thickness" in text and "More hours stop mattering from about" in text


def test_the_table_shows_the_times(shipped: Shipped) -> None:
    """What the table says of salt, sugar and salt kept is what was reckoned."""
    sheet = shipped()
    times = soaking_times(sheet.estimate.facts)
    assert times is not None
    text = plain_text(soak_page(sheet))
    (line,) = (one for one in text.splitlines() if re.match(r"12 h .*/", one))

    twelve = times.after[3]
    assert twelve.sugar is not None
    expected = [
        str(round(100 * end))
        for found in (twelve.salt, twelve.sugar, twelve.salt_kept)
        for end in (found.low, found.likely, found.high)
    ]
    assert ["12", *expected] == re.findall(r"\d+", line)


def test_a_soak_over_the_limit_is_marked(shipped: Shipped) -> None:
    """Two days are marked as over the limit, a day is not; the limit says who set it."""
    lines = list(soak_page(shipped()))
    rows = [one for one in lines if re.match(r"\d+ h .*/", one.text)]

    assert [False] * 5 + [True] == [" h *" in one.text for one in rows]
    assert [Style.PLAIN] * 5 + [Style.WARN] == [one.style for one in rows]
    assert any(re.match(r"\* longer than 24 h, .*\[Iowa State", one.text) for one in lines)


@pytest.mark.parametrize("name", SOAKED[:-1])
def test_cold_is_always_said_with_its_source(
    name: str, shipped: Shipped, unwrapped: Unwrapped
) -> None:
    """How cold, how long and what becomes of the marinade stand on every page, sourced."""
    text = unwrapped(soak_page(shipped(name)))

    assert re.search(r"refrigerator at 40 °F \(4 °C\) or below, 24 hours at most.*?\[Iowa", text)
    assert re.search(r"Used marinade\. .*?\[National Center", text)


def test_no_limit_is_made_up(shipped: Shipped, unwrapped: Unwrapped) -> None:
    """For mushrooms no limit is held: nothing is marked, and that is said."""
    sheet = shipped("woodland-mushrooms")

    assert limit_h(sheet) is None
    text = unwrapped(soak_page(sheet))
    assert "No published limit of soaking time is held for this food." in text
    assert " h *" not in text


@pytest.mark.parametrize("name", WITHOUT)
def test_no_marinade_is_one_sentence(name: str, shipped: Shipped, unwrapped: Unwrapped) -> None:
    """A rub and a ground mix have nothing to soak, and one sentence says so."""
    sheet = shipped(name)

    text = unwrapped(soak_page(sheet))
    assert f"{sheet.recipe.title}: it has no marinade, so there is no soaking time to tell." == text
    assert text == soak_data(sheet)["nothing_to_soak"]
    assert [] == soak_data(sheet)["after"]


def test_ground_meat_is_not_reckoned(
    sheet_of: Callable[..., Worksheet], unwrapped: Unwrapped
) -> None:
    """Ground meat in a marinade gets no time, and the caution against it."""
    text = unwrapped(soak_page(sheet_of(form="ground")))

    assert "ground meat has no thickness to soak through, so no time is told." in text
    assert "Ground meat in a marinade." in text and "/" not in text.split("Mind")[0]


def test_oil_alone_is_not_reckoned(sheet_of: Callable[..., Worksheet]) -> None:
    """Oil and pepper are no liquid that salt moves through."""
    text = plain_text(soak_page(sheet_of(marinade={"olive-oil": "1/2 cup"})))

    assert "no liquid of known weight in its marinade" in " ".join(text.split())


def test_unstated_thickness_is_said(shipped: Shipped, unwrapped: Unwrapped) -> None:
    """Without a thickness the page names the working range it reckons with."""
    sheet = shipped()
    meat = sheet.estimate.facts._replace(thickness_mm=None)
    text = unwrapped(soak_page(sheet._replace(estimate=sheet.estimate._replace(facts=meat))))

    assert "states no thickness: reckoned with 4.5 to 8 mm, likely 6 mm (a working range)" in text


def test_a_thick_piece_matters_past_the_limit(
    sheet_of: Callable[..., Worksheet], unwrapped: Unwrapped
) -> None:
    """Where more hours still matter after the limit, the page says that they are over it."""
    text = unwrapped(soak_page(sheet_of(thickness="20 mm", form="pieces")))

    assert re.search(r"stop mattering from about \d+ h, which is past the 24 h limit", text)


@pytest.mark.parametrize(
    ("parts", "words"),
    [
        ({"heat": "simmered in its marinade"}, "to balance, whatever the hours"),
        ({"soak": "hours = 12\npoured-away = false"}, "since nothing is poured away"),
        ({"heat": "oven after drying"}, "heat step (oven after drying)"),
    ],
)
def test_what_kept_means_is_said(
    parts: dict[str, str],
    words: str,
    sheet_of: Callable[..., Worksheet],
    unwrapped: Unwrapped,
) -> None:
    """The page says which heat step the salt kept is for."""
    assert words in unwrapped(soak_page(sheet_of(**parts)))


def test_data_are_those_of_the_page(shipped: Shipped) -> None:
    """The data hold each length with its mark, the half, and the limit."""
    data = soak_data(shipped())

    assert [False] * 5 + [True] == [one["over_limit"] for one in data["after"]]
    assert (24, True, None) == (data["limit_h"], data["thickness_stated"], data["nothing_to_soak"])
    assert data["half_as_thick"]["enough_h"] < data["enough_h"]
    assert data["half_as_thick"]["thickness_mm"][1] == data["thickness_mm"][1] / 2


def test_a_stated_temperature_is_told(
    sheet_of: Callable[..., Worksheet], unwrapped: Unwrapped
) -> None:
    """In both scales, at the head and in what the figures rest on."""
    sheet = sheet_of(soak='hours = 12\ntemperature = "36-40 F"')
    text = unwrapped(soak_page(sheet))

    assert "Reckoned for a soak in the refrigerator at 36-40 °F (2-4 °C)." in text
    assert [2.22, 3.33, 4.44] == pytest.approx(soak_data(sheet)["temperature_c"], abs=0.01)
    assert soak_data(sheet_of())["temperature_c"] is None


def test_a_warm_soak_is_warned_of_with_its_source(
    sheet_of: Callable[..., Worksheet], unwrapped: Unwrapped
) -> None:
    """And so is a marinade that meat lay in before; nothing calls it a refrigerator."""
    sheet = sheet_of(soak='hours = 12\ntemperature = "65 F"\nused-before = true')
    text = unwrapped(soak_page(sheet))

    assert re.search(r"Soak is too warm\. A soak at 65 °F \(18 °C\).*?\[National Center", text)
    assert re.search(r"Marinade used before\. .*?\[", text)
    assert "Home estimate, at 65 °F (18 °C)." in text
    assert {"soak-warm", "marinade-reused"} <= {one["code"] for one in soak_data(sheet)["cautions"]}
