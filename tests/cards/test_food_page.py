"""One food: every figure with its source, and every measure with its grams."""

from __future__ import annotations

from collections.abc import Callable, Iterable

import pytest

from tarebook.cards.food_page import food_data, food_page
from tarebook.cards.lines import Line, width
from tarebook.figures.foods import food_keys
from tarebook.figures.measures import measures
from tarebook.figures.nutrients import FIGURES, nutrients
from tarebook.findings import FoodUnknown

Unwrapped = Callable[[Iterable[Line]], str]


@pytest.mark.published
def test_soy_sauce_as_printed(unwrapped: Unwrapped) -> None:
    """SR26 row 16123 as printed: its number, sodium, tablespoon, and the name of the release."""
    page = unwrapped(food_page("shoyu"))

    assert page.startswith("soy-sauce: soy sauce (shoyu)")
    assert "Per 100 g (sr26 16123)" in page
    assert "sodium 5,493 mg" in page
    assert "tablespoon 16 g sr26, measured" in page
    assert "USDA National Nutrient Database for Standard Reference, Release 26" in page


def test_what_is_not_known_says_so(unwrapped: Unwrapped) -> None:
    """A figure nobody states is not known, on the page and in the data."""
    assert "vitamin d not known" in unwrapped(food_page("deer"))
    assert food_data("deer")["per_100_g"]["vitamin_d_ug"]["value"] is None


def test_salt_of_unknown_kind_has_no_spoon(unwrapped: Unwrapped) -> None:
    """Plain salt has no measure, and the page says what to do."""
    page = unwrapped(food_page("salt"))

    assert "none held: weigh it" in page
    assert "say which salt it is" in page


def test_a_note_on_the_whole_row_is_said_once(unwrapped: Unwrapped) -> None:
    """What holds for every figure stands above them once."""
    assert 1 == unwrapped(food_page("curing-salt-1")).count("composition in the trade")


def test_the_measure_used_to_convert_is_marked(unwrapped: Unwrapped) -> None:
    """Of many measures the one that is used stands out."""
    page = unwrapped(food_page("soy-sauce"))

    assert "* cup 273 g sr26-choi-okos" in page
    assert "* used to convert" in page


def test_every_food_has_a_page_within_80_columns() -> None:
    """Each food's page fits, and has a line for every figure and measure that is held."""
    for name in food_keys():
        lines = list(food_page(name))

        assert [] == [one.text for one in lines if width(one.text) > 80], name
        assert len(lines) > len(FIGURES) + len(measures(name))


def test_the_data_holds_every_figure_and_measure() -> None:
    """As plain data: units in names, each figure with value, unit and source."""
    data = food_data("brown-sugar")

    assert set(FIGURES) == set(data["per_100_g"])
    sodium = nutrients("brown-sugar")["sodium_mg"]
    assert {"value": sodium.value, "unit": "mg", "source": sodium.source}.items() <= data[
        "per_100_g"
    ]["sodium_mg"].items()
    assert len(measures("brown-sugar")) == len(data["measures"])
    assert {"measure", "form", "mass_g", "volume_ml", "source"} <= set(data["measures"][0])


def test_a_food_nobody_knows_is_told() -> None:
    """No such food: the near ones are named."""
    with pytest.raises(FoodUnknown, match="honey"):
        list(food_page("hunney"))


def test_a_recollection_is_told_once(unwrapped: Unwrapped) -> None:
    """What is from memory has no source beside itself."""
    page = unwrapped(food_page("liquid-smoke"))

    assert "teaspoon 5 g from memory" in page
    assert "from-memory, from memory" not in page
