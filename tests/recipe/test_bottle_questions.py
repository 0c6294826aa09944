"""The questions of a bottle: in the panel's order, every answer understood or told why not."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tarebook.findings import AskedWrongly, RecordFaulty
from tarebook.recipe.bottle import read_bottle
from tarebook.recipe.bottle_questions import (
    BY_NAME,
    QUESTIONS,
    bottle_from,
    next_question,
    other_units,
)
from tarebook.recipe.panel import PANEL_FIELDS
from tarebook.recipe.write_bottle import bottle_toml

ANSWERS = {
    "like": "shoyu",
    "name": "Lakeside soy sauce",
    "serving": "1 Tbsp (17 g)",
    "energy": "10",
    "sodium": "575",
    "sugars": "0 g",
    "size": "15 fl oz",
    "price": "$3.49",
    "contains": "Soy, wheat",
    "check": "",
}


def test_every_example_is_an_answer() -> None:
    """What a question shows can be typed as it stands."""
    for question in QUESTIONS:
        question.check(question.example)


def test_all_of_a_panel_is_asked_for() -> None:
    """Every figure that packs print has its question; water and ash no pack prints."""
    assert {*PANEL_FIELDS} - {"water", "ash"} <= BY_NAME.keys()


def test_without_a_serving_no_figure_is_asked_for() -> None:
    """Nothing could be made of it: the pack comes next."""
    asked: dict[str, str] = {"like": "honey", "name": "", "serving": " "}
    while (question := next_question(asked)) is not None:
        asked[question.name] = ""

    assert ["like", "name", "serving", "size", "price", "contains", "check"] == list(asked)


def test_the_answers_make_a_bottle() -> None:
    """Bare numbers in the unit asked for, a price without its mark, allergens as tables say."""
    bottle = bottle_from(ANSWERS, key="Lakeside Soy", date="2026-11-25")

    assert ("lakeside-soy", "Lakeside soy sauce", "soy-sauce") == bottle[:3]
    assert bottle.panel is not None and bottle.pack is not None
    assert (10, 575, 0, None) == (
        bottle.panel.energy_kcal,
        bottle.panel.sodium_mg,
        bottle.panel.sugars_g,
        bottle.panel.fat_g,
    )
    assert Fraction("3.49") == bottle.pack.price
    assert (("soybeans", "wheat"), ()) == (bottle.contains, bottle.check)
    assert "2026-11-25" == bottle.origin_date


def test_a_pack_without_allergens_is_not_one_that_nobody_read() -> None:
    """None is an answer; no answer is not."""
    assert () == bottle_from({"like": "honey", "contains": "None"}, key="x").contains
    assert bottle_from({"like": "honey", "contains": ""}, key="x").contains is None


@pytest.mark.parametrize(
    ("name", "answer", "says"),
    [
        ("like", "", "this one is needed, as in soy-sauce"),
        ("like", "soy-sauc", 'no food is called "soy-sauc"; did you mean "soy-sauce" or'),
        ("like", "curing-salt-1", "a curing salt is no bottle of your own"),
        ("serving", "a bit", 'serving "a bit" has neither a measure nor a weight'),
        ("sodium", "575 ml", '"575 ml" is not in mg; write "575 mg"'),
        ("sodium", "lots", '"lots" is not in mg'),
        ("sugars", "-1", "-1"),
        ("size", "big", '"big"'),
        ("contains", "5750", '"5750" is no allergen; as in soybeans, wheat'),
        ("price", "cheap", '"cheap" is no price; as in 3.49'),
    ],
)
def test_what_is_no_answer_is_told(name: str, answer: str, says: str) -> None:
    """Each with what to type instead."""
    with pytest.raises(AskedWrongly) as told:
        BY_NAME[name].check(answer)

    assert says in str(told.value)


def test_answers_that_make_no_bottle_are_told() -> None:
    """Each will do by itself, and the whole weighs more than its serving."""
    with pytest.raises(RecordFaulty, match="its parts weigh 40 g, more than the serving"):
        bottle_from({"like": "honey", "serving": "17 g", "sugars": "40"}, key="x")


@pytest.mark.parametrize(
    ("answers", "expected"),
    [
        ({"sodium": "575 mg", "sugars": "1", "energy": "10 calories", "vitamin-d": "2 ug"}, []),
        ({"sodium": "0.6 g"}, ['sodium "0.6 g" is taken as 600 mg; panels print mg']),
        ({"sugars": "500 mg"}, ['sugars "500 mg" is taken as 0.5 g; panels print g']),
    ],
)
def test_another_unit_is_asked_back(answers: dict[str, str], expected: list[str]) -> None:
    """Sodium in grams may be right, and may be salt: the cook is asked."""
    assert expected == list(other_units(answers))


TYPED = st.text(max_size=30) | st.from_regex(r"[0-9<./]{1,6} ?(mg|g|mcg|kcal|Tbsp|fl oz|)")


@given(st.dictionaries(st.sampled_from(sorted(BY_NAME)), TYPED))
def test_whatever_is_typed_is_understood_or_told(answers: dict[str, str]) -> None:
    """No answer ends in a traceback, alone or with others."""
    taken = {"like": "honey"}
    for name, answer in answers.items():
        try:
            BY_NAME[name].check(answer)
        except AskedWrongly:
            continue
        taken[name] = answer if answer.strip() or name != "like" else "honey"
    list(other_units(taken))
    try:
        bottle = bottle_from(taken, key="x")
    except RecordFaulty as faulty:
        assert faulty.findings
    else:
        assert bottle == read_bottle(bottle_toml(bottle), key="x", file="x")[0]
