"""The documented answers become figures; what is not a figure becomes a remark, never a number."""

from __future__ import annotations

import json
from fractions import Fraction
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tarebook.findings import LookupFailed
from tarebook.lookup.amounts import FIELDS, NUMBERS, read_figures, unit_of
from tarebook.lookup.answers import Portion, Serving, read_food, read_search

HERE = Path(__file__).parent
SOY = 174278
PRINTED = {
    "water_g": "71.15", "energy_kcal": "53", "protein_g": "8.14", "fat_g": "0.57",
    "carbohydrate_g": "4.93", "ash_g": "15.31", "sugars_g": "0.4", "sodium_mg": "5493",
}  # fmt: skip
"""Soy sauce as printed: USDA SR26, row 16123."""


def document(name: str) -> Any:
    """Return an answer as documented."""
    return json.loads((HERE / f"{name}.json").read_text(encoding="utf-8"))


def figures_with(number: str, unit: object, amount: object) -> tuple[Any, tuple[str, ...]]:
    """Return what one entry becomes, and the remarks."""
    entry = {"nutrient": {"number": number, "unitName": unit}, "amount": amount}
    read = read_figures([entry])
    return read.figures[NUMBERS[number]], read.remarks


@pytest.mark.published
def test_a_food_has_its_figures_as_printed() -> None:
    """Every figure of the row arrives exactly; those that are not there are not known."""
    found = read_food(json.dumps(document("food")).encode(), fdc_id=SOY)

    assert {name: Fraction(value) for name, value in PRINTED.items()} == {
        name: figure for name, figure in found.figures.items() if figure is not None
    }
    assert set(FIELDS) == set(found.figures)
    assert ("SR Legacy", "100 g", "4/1/2019") == (found.kind, found.per, found.published)
    assert (Portion("1 tbsp", Fraction(16)),) == found.portions
    assert () == found.remarks


def test_a_search_reads_both_documented_shapes() -> None:
    """Figures named by number and amount are read as those named by nutrient number and value."""
    found = read_search(json.dumps(document("search")).encode())

    assert [5493, 3, 6133] == [hit.figures["sodium_mg"] for hit in found.foods]
    assert [Fraction("0.4"), None, 0] == [hit.figures["sugars_g"] for hit in found.foods]
    assert ["100 g", "100 g", "100 mL"] == [hit.per for hit in found.foods]
    assert (1397, 0) == (found.total, found.unread)
    assert "Lakeside Pantry" == found.foods[2].brand


def test_energy_by_factors_stands_in_and_is_said() -> None:
    """Where 208 is missing, 958 is taken before 957, and told."""

    def read(*numbers: str) -> tuple[Any, tuple[str, ...]]:
        values = {"208": 53, "958": 51, "957": 49}
        listed = [
            {"nutrient": {"number": one, "unitName": "kcal"}, "amount": values[one]}
            for one in numbers
        ]
        found = read_figures(listed)
        return found.figures["energy_kcal"], found.remarks

    assert (53, ()) == read("957", "958", "208")
    assert (51, ("energy is by specific factors",)) == read("957", "958")
    assert (49, ("energy is by general factors",)) == read("957")
    assert (None, ()) == read()


@pytest.mark.parametrize(("number", "field"), NUMBERS.items())
def test_every_figure_is_taken_in_its_own_unit_only(number: str, field: str) -> None:
    """In its unit, however spelled, a figure is taken; in any other it is refused and said."""
    right = {"g": ["g", "G", " G "], "mg": ["mg", "MG"], "ug": ["ug", "UG", "µg", "mcg"],
             "kcal": ["kcal", "KCAL"]}  # fmt: skip
    unit = unit_of(field)
    wrong = [one for other, spelled in right.items() if other != unit for one in spelled]

    for spelling in right[unit]:
        assert (Fraction(5, 2), ()) == figures_with(number, spelling, _decimal("2.5"))
    for spelling in [*wrong, "IU", "kJ", "", None, 7, "percent"]:
        figure, (remark,) = figures_with(number, spelling, 2)
        assert figure is None
        assert f"is not given in {unit}, and was not taken" in remark


def _decimal(text: str) -> Any:
    from decimal import Decimal

    return Decimal(text)


@pytest.mark.parametrize(
    ("said", "why"),
    [
        ('"575"', "no number"), ('"trace"', "no number"), ("true", "no number"),
        ("[5]", "no number"), ("{}", "no number"), ("NaN", "no number"), ("Infinity", "no number"),
        ("-Infinity", "no number"), ("1e999", "no number"), ("1e-999", "no number"),
        ("-0.001", "below zero"), ("-5", "below zero"), ("100001", "more than there can be"),
        ("9" * 60, "no number"), ("0." + "3" * 60, "no number"),
    ],
)  # fmt: skip
def test_what_is_no_figure_stays_unknown_and_is_said(said: str, why: str) -> None:
    """A word, a NaN, a negative or an impossible figure is unknown, and never zero."""
    answer = json.dumps(document("food")).replace('"amount": 5493', f'"amount": {said}')

    found = read_food(answer.encode(), fdc_id=SOY)

    assert found.figures["sodium_mg"] is None
    assert [True] == [why in one and "sodium" in one for one in found.remarks]
    assert Fraction("0.4") == found.figures["sugars_g"]  # the others are as they were


@pytest.mark.parametrize("absent", ["null", None])
def test_what_is_missing_is_unknown_without_a_word(absent: str | None) -> None:
    """A figure without an amount is unknown; so is one that is not listed."""
    answer = json.dumps(document("food"))
    old = '"amount": 5493'
    answer = answer.replace(old, '"amount": null' if absent else '"median": 5493')

    found = read_food(answer.encode(), fdc_id=SOY)

    assert (None, ()) == (found.figures["sodium_mg"], found.remarks)


def test_zero_is_zero() -> None:
    """A figure that the table says is zero is known."""
    assert (0, ()) == figures_with("269", "g", 0)


def test_a_figure_given_twice() -> None:
    """The same twice is one figure; two different ones are none."""
    one = {"nutrient": {"number": "307", "unitName": "mg"}, "amount": 575}
    other = {"nutrient": {"number": "307", "unitName": "mg"}, "amount": 57.5}

    assert 575 == read_figures([one, dict(one)]).figures["sodium_mg"]
    read = read_figures([one, {**other, "amount": 58}])
    assert read.figures["sodium_mg"] is None
    assert "given more than once" in read.remarks[0]


def test_a_pack_has_a_serving_and_a_list() -> None:
    """The label's serving, and its ingredients, are told as printed."""
    found = read_food(json.dumps(document("pack")).encode(), fdc_id=2900002)

    assert Serving(Fraction(17), "g", "1 Tbsp") == found.serving
    assert found.ingredients.startswith("WATER, SUGAR, SOY SAUCE")
    assert () == found.remarks


def test_a_label_that_does_not_fit_its_figures_is_said() -> None:
    """Where the label's figure and the one per 100 g cannot be of one food, both are told."""
    pack = document("pack")
    pack["labelNutrients"]["sodium"]["value"] = 61

    (remark,) = read_food(json.dumps(pack).encode(), fdc_id=2900002).remarks

    assert "sodium by the label is 61 in a serving, by the figure per 100 g 609.96" == remark


@pytest.mark.parametrize("unit", ["ml", "MLT", " mL "])
def test_a_pack_sold_by_volume(unit: str) -> None:
    """What is sold by volume has its figures per 100 mL."""
    pack = document("pack") | {"servingSizeUnit": unit, "servingSize": 15}

    found = read_food(json.dumps(pack).encode(), fdc_id=2900002)

    assert ("100 mL", "mL") == (found.per, found.serving.unit if found.serving else "")


def test_words_of_the_answer_cannot_steer_a_screen() -> None:
    """Control characters, turned lines and endless names are made one plain line."""
    food = document("food") | {"description": "Soy\x1b[31m sauce\r\n\x00\u202e\u2028" + "x" * 5000}

    told = read_food(json.dumps(food).encode(), fdc_id=SOY).description

    assert told.startswith("Soy [31m sauce xxx")
    assert told.isprintable() and len(told) <= 200


@pytest.mark.parametrize(
    "changed",
    [{"fdcId": "174278"}, {"fdcId": None}, {"fdcId": True}, {"fdcId": -1}, {"fdcId": 10**12},
     {"description": ""}, {"description": 5}, {"foodNutrients": None}, {"foodNutrients": {}}],
)  # fmt: skip
def test_what_is_no_food_is_refused(changed: dict[str, object]) -> None:
    """An answer without what every food has is none about a food."""
    with pytest.raises(LookupFailed, match="not what the service documents"):
        read_food(json.dumps(document("food") | changed).encode(), fdc_id=SOY)


def test_another_food_is_refused() -> None:
    """A figure of another food is never taken for the one that was asked for."""
    with pytest.raises(LookupFailed, match="about number 174278, not 5"):
        read_food(json.dumps(document("food")).encode(), fdc_id=5)


def test_foods_that_cannot_be_read_are_counted() -> None:
    """One entry that is no food hides none of the others, and is told."""
    answer = document("search")
    answer["foods"].insert(1, {"fdcId": "x"})

    found = read_search(json.dumps(answer).encode())

    assert (3, 1) == (len(found.foods), found.unread)


def test_nothing_found_is_an_answer() -> None:
    """A search without a hit is no fault."""
    assert () == read_search(b'{"totalHits": 0, "foods": []}').foods


@pytest.mark.parametrize(
    ("portion", "words"),
    [
        ({"portionDescription": "1 cup", "gramWeight": 255}, "1 cup"),
        ({"amount": 0.5, "measureUnit": {"name": "cup"}, "gramWeight": 128}, "0.5 cup"),
        ({"amount": 1, "measureUnit": {"name": "cup"}, "modifier": "sliced", "gramWeight": 90},
         "1 cup sliced"),
        ({"gramWeight": 90}, None), ({"modifier": "tbsp", "gramWeight": 0}, None),
        ({"modifier": "tbsp", "gramWeight": "16"}, None), ({"modifier": "tbsp"}, None), ("x", None),
    ],
)  # fmt: skip
def test_measures_of_every_kind_of_row(portion: object, words: str | None) -> None:
    """Each kind of row says its measure elsewhere; one without words or weight is left out."""
    food = document("food") | {"foodPortions": [portion]}

    found = read_food(json.dumps(food).encode(), fdc_id=SOY).portions

    assert ([words] if words else []) == [one.measure for one in found]


JSON = st.recursive(
    st.none() | st.booleans() | st.integers() | st.floats() | st.text(max_size=8)
    | st.sampled_from(["307", "mg", "g", 307, 5493]),
    lambda inner: st.lists(inner, max_size=4)
    | st.dictionaries(
        st.sampled_from(["fdcId", "description", "foods", "foodNutrients", "nutrient", "number",
                         "unitName", "amount", "value", "foodPortions", "gramWeight",
                         "labelNutrients", "sodium", "servingSize", "totalHits"]),
        inner, max_size=6),
    max_leaves=20,
)  # fmt: skip


@given(JSON, st.sampled_from(["foods", "foodNutrients", "foodPortions", "labelNutrients"]))
def test_nothing_in_an_answer_breaks_the_reader(value: object, place: str) -> None:
    """Whatever stands where, the answer is read or refused; and a figure is never below zero."""
    for name, read in (("search", read_search), ("pack", _pack)):
        answer = document(name) | {place: value}
        try:
            found = read(json.dumps(answer).encode())
        except LookupFailed:
            continue
        foods = getattr(found, "foods", (found,))
        figures = [figure for food in foods for figure in food.figures.values()]
        assert all(figure is None or figure >= 0 for figure in figures)


def _pack(data: bytes) -> Any:
    return read_food(data, fdc_id=2900002)
