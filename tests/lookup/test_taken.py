"""A food of the table kept as a bottle: its figures, its serving, its source."""

from __future__ import annotations

import json
from datetime import date
from fractions import Fraction
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tarebook.findings import AskedWrongly, FoodUnknown, RecordFaulty
from tarebook.lookup.answers import TableFood, read_food
from tarebook.lookup.taken import as_printed, bottle_of
from tarebook.recipe.bottles import own_bottle
from tarebook.recipe.write_bottle import keep_bottle

HERE = Path(__file__).parent
DAY = date(2026, 11, 25)


def food_of(name: str, **changed: Any) -> TableFood:
    """Return a food of a documented answer, changed."""
    answer = json.loads((HERE / f"{name}.json").read_text(encoding="utf-8")) | changed
    return read_food(json.dumps(answer).encode(), fdc_id=answer["fdcId"])


def test_a_plain_food_keeps_its_figures_per_100_g() -> None:
    """What was analysed is kept as it stands, with source, number and day; the rest stays open."""
    bottle = bottle_of(food_of("food"), name="lake soy", like="shoyu", day=DAY)

    assert ("lake-soy", "soy-sauce") == (bottle.key, bottle.like)
    assert ("fooddata-central", "174278", "2026-11-25") == (
        bottle.origin, bottle.origin_id, bottle.origin_date)  # fmt: skip
    panel = bottle.panel
    assert panel is not None and not panel.rounded
    assert (100, None) == (panel.serving_g, panel.serving_ml)
    assert (5493, Fraction("0.4"), Fraction("71.15"), Fraction("15.31")) == (
        panel.sodium_mg, panel.sugars_g, panel.water_g, panel.ash_g)  # fmt: skip
    assert panel.fiber_g is None and panel.potassium_mg is None


def test_a_label_keeps_its_serving() -> None:
    """A label's figures go by its serving, by measure and weight, as they were rounded there."""
    panel = bottle_of(food_of("pack"), name="teriyaki", like="soy-sauce", day=DAY).panel

    assert panel is not None and panel.rounded
    assert (15, 17) == (panel.serving_ml, panel.serving_g)
    assert (610, 5, 4, 6) == (
        panel.sodium_mg, panel.sugars_g, panel.added_sugars_g, panel.carbohydrate_g)  # fmt: skip
    assert (25, Fraction(1, 2), 20) == (panel.energy_kcal, panel.protein_g, panel.potassium_mg)
    assert 0 == panel.fat_g and panel.fiber_g is None


@given(st.integers(0, 600), st.integers(1, 240))
def test_grams_printed_on_a_label_come_back(tenths: int, size: int) -> None:
    """What a label prints in grams, worked out for 100 and rounded, comes back as printed."""
    printed = Fraction(tenths, 10)
    per_100 = Fraction(round(printed * 10_000 / size), 100)

    found = as_printed(per_100, Fraction(size), "g")

    assert abs(found - printed) <= Fraction(size, 10_000)
    assert size > 100 or found == printed


@given(st.integers(0, 250), st.integers(1, 60))
def test_milligrams_printed_on_a_label_come_back(tens: int, size: int) -> None:
    """Tens of milligrams, in servings as small as those of sauces, come back as printed."""
    per_100 = Fraction(round(Fraction(tens * 1000, size)))

    assert tens * 10 == as_printed(per_100, Fraction(size), "mg")


@pytest.mark.parametrize(
    ("serving", "expected"),
    [
        ({"servingSize": 15, "servingSizeUnit": "ml"}, (15, None, Fraction("538.2"))),
        ({"servingSize": 17, "householdServingFullText": "1 packet"}, (None, 17, None)),
        ({"servingSize": 17, "householdServingFullText": ""}, (None, 17, None)),
        ({"servingSize": None}, (None, 100, 3588)),
        ({"servingSize": None, "servingSizeUnit": "ml"}, (100, None, 3588)),
        ({"servingSize": 4, "servingSizeUnit": "piece"}, (None, 100, 3588)),
    ],
)
def test_servings_of_every_kind(
    serving: dict[str, Any], expected: tuple[object, object, object]
) -> None:
    """By volume, by weight, or without a serving, the figures go with what they are per."""
    panel = bottle_of(food_of("pack", **serving), name="marinade", like="soy-sauce", day=DAY).panel

    assert panel is not None
    assert expected[:2] == (panel.serving_ml, panel.serving_g)
    assert expected[2] in (None, panel.sodium_mg)


@pytest.mark.parametrize("name", ["food", "pack"])
def test_what_is_kept_reads_back(name: str) -> None:
    """The file that is written gives the same bottle to a recipe."""
    bottle = bottle_of(food_of(name), name="lake-soy", like="soy-sauce", day=DAY)

    keep_bottle(bottle)

    assert bottle == own_bottle("lake-soy")


def test_figures_that_outweigh_the_food_are_not_kept(own_home: Path) -> None:
    """A row whose parts weigh more than the whole is refused, and no file is left."""
    heavy = [
        {"nutrient": {"number": number, "unitName": "g"}, "amount": 90}
        for number in ("203", "204", "205")
    ]

    with pytest.raises(RecordFaulty, match="more than the serving"):
        keep_bottle(bottle_of(food_of("food", foodNutrients=heavy), name="lead", like="soy-sauce",
                              day=DAY))  # fmt: skip

    assert not (own_home / "foods").exists()


@pytest.mark.parametrize("name", ["", "../etc/passwd", "a/b", "x" * 80, "..."])
def test_names_that_no_bottle_can_have(name: str) -> None:
    """Neither a path nor nothing names a bottle."""
    with pytest.raises(AskedWrongly, match="can name no bottle"):
        bottle_of(food_of("food"), name=name, like="soy-sauce", day=DAY)


def test_what_it_must_be_like() -> None:
    """It is like a food of the tables, and no curing salt ever comes this way."""
    with pytest.raises(FoodUnknown):
        bottle_of(food_of("food"), name="lake-soy", like="lake water", day=DAY)
    with pytest.raises(AskedWrongly, match="curing salt"):
        bottle_of(food_of("food"), name="lake-cure", like="curing-salt-1", day=DAY)


def test_nothing_known_is_nothing_to_keep() -> None:
    """A food without a single figure is not kept."""
    with pytest.raises(AskedWrongly, match="no figure"):
        bottle_of(food_of("food", foodNutrients=[]), name="lake-soy", like="soy-sauce", day=DAY)
