"""The questions of a new recipe: what is asked, what is an answer, and what comes of them."""

from __future__ import annotations

import pytest

from tarebook.findings import AskedWrongly, RecipeFaulty
from tarebook.quantities.amount import parse_amount
from tarebook.recipe import HeatStep, MeatForm, Part, Surface, read_recipe
from tarebook.recipe.questions import QUESTIONS, Question, next_question, read_line, recipe_from
from tarebook.recipe.write import to_toml

Typed = dict[str, str | list[str]]

STRIPS: Typed = {
    "title": "Juniper strips",
    "about": "",
    "meat.food": "venison",
    "meat.amount": "2 1/2 lb",
    "meat.form": "strips",
    "meat.thickness": "1/4 in",
    "marinade": ["3/4 cup soy sauce", "3 cloves garlic, minced", "brown-sugar = 1/4 cup packed"],
    "rub": ["2.8 g curing-salt-1 at 6.25 %"],
    "soak.hours": "8-12",
    "soak.surface": "patted",
    "heat.step": "oven after drying",
    "drying.temperature": "155 F",
    "drying.hours": "5-8",
    "method.steps": ["Slice.", "Soak."],
    "method.notes": [],
}


def asked(typed: Typed) -> list[str]:
    """Return the names of the questions that are asked, answering each as typed or not at all."""
    answers: Typed = {}
    while (question := next_question(answers)) is not None:
        answers[question.name] = typed.get(question.name, "")
    return list(answers)


def test_questions_and_their_order() -> None:
    """A soaked recipe is asked about its soak, ground meat about what is mixed in."""
    everything = [question.name for question in QUESTIONS]
    soaked = [name for name in everything if name != "mixed-in"]
    assert soaked == asked(STRIPS)
    dry = [name for name in soaked if not name.startswith("soak.")]
    assert dry == asked({**STRIPS, "marinade": []})
    ground = [name for name in everything if name.split(".")[0] not in ("marinade", "rub", "soak")]
    assert ground == asked({**STRIPS, "meat.form": "ground"})


def test_answers_make_a_recipe() -> None:
    """All answers arrive, and the file written from them reads back as the same recipe."""
    recipe = recipe_from(STRIPS, file="new.toml")
    assert ("Juniper strips", "deer", MeatForm.STRIPS) == (
        recipe.title,
        recipe.meat.food,
        recipe.meat.form,
    )
    assert [
        ("soy sauce", "soy-sauce", Part.MARINADE, parse_amount("3/4 cup")),
        ("garlic", "garlic", Part.MARINADE, parse_amount("3 cloves, minced")),
        ("brown-sugar", "brown-sugar", Part.MARINADE, parse_amount("1/4 cup packed")),
        ("curing-salt-1", "curing-salt-1", Part.RUB, parse_amount("2.8 g")),
    ] == [(one.name, one.food, one.part, one.amount) for one in recipe.ingredients]
    assert ((8.0, 10.0, 12.0), Surface.PATTED) == (recipe.soak.hours, recipe.soak.surface)
    assert HeatStep.OVEN_AFTER is recipe.heat
    assert ("Slice.", "Soak.") == recipe.steps
    assert (recipe, ()) == read_recipe(to_toml(recipe, hints=True), file="new.toml")


def test_the_least_answers() -> None:
    """Three answers are enough; whatever was passed over stays unsaid."""
    recipe = recipe_from({"title": "x", "meat.food": "elk", "meat.amount": "1 lb", "rub": []})
    assert HeatStep.UNSTATED is recipe.heat
    assert recipe.drying.temperature_f is None


def test_answers_that_make_no_recipe() -> None:
    """Answers nobody checked are checked once more, all together."""
    with pytest.raises(RecipeFaulty) as caught:
        recipe_from({"title": "x", "meat.food": "soy-sauce"}, file="new.toml")
    assert {"not-dried", "missing-key", "no-ingredients"} == {
        finding.code for finding in caught.value.findings
    }


@pytest.mark.parametrize("question", QUESTIONS, ids=lambda question: question.name)
def test_every_example_is_an_answer(question: Question) -> None:
    """What a question offers as an example, or to choose from, will do as an answer."""
    answers = question.choices or (question.example,)
    assert all(answers)
    for answer in answers:
        question.check(answer)
    if not question.needed:
        question.check(" ")


@pytest.mark.parametrize(
    ("name", "answer", "expected"),
    [
        ("title", " ", "this one is needed, as in Juniper venison strips"),
        ("meat.food", "dear", 'no food is called "dear"; did you mean "deer" or "bear"?'),
        (
            "meat.food",
            "honey",
            "honey is no meat, fish or mushroom; [meat] says what is dried; "
            "the rest goes under [marinade], [rub] or [mixed-in]",
        ),
        ("meat.amount", "2 cups", 'weight "2 cups" is no weight; write 6 lb, 2.7 kg or 2700 g'),
        ("meat.form", "strip", 'form cannot be "strip"; did you mean "strips"?'),
        ("soak.hours", "overnight", '"overnight" is not in hours; write hours, as in "8-12"'),
        (
            "marinade",
            "some soy sauce",
            '"some soy sauce" is not an amount and a food I know; '
            "write it as in  3/4 cup soy-sauce  or  soy-sauce = 3/4 cup",
        ),
        (
            "marinade",
            "honey = 1 cpu",
            'amount "1 cpu" has no unit I know; did you mean "cup"?',
        ),
        (
            "rub",
            "1 g curing-salt-1",
            "the strength of a curing salt is missing; packs differ twelvefold; "
            'copy it from the pack: { amount = "2.8 g", strength = "6.25 %" }',
        ),
    ],
)
def test_what_is_said_of_a_wrong_answer(name: str, answer: str, expected: str) -> None:
    """A wrong answer is told at once, in the words the reader would use."""
    question = next(question for question in QUESTIONS if question.name == name)
    with pytest.raises(AskedWrongly) as caught:
        question.check(answer)
    assert expected == str(caught.value)


@pytest.mark.parametrize(
    ("typed", "expected"),
    [
        ("soy-sauce = 3/4 cup", ("soy-sauce", {"amount": "3/4 cup"})),
        ('"dark soy" = "1 Tbsp"', ("dark soy", {"amount": "1 Tbsp"})),
        ("3/4 cup low sodium soy sauce", ("low sodium soy sauce", {"amount": "3/4 cup"})),
        ("1/4 cup packed brown sugar", ("brown sugar", {"amount": "1/4 cup packed"})),
        ("to taste black pepper", ("black pepper", {"amount": "to taste"})),
        ("3 cloves garlic, minced", ("garlic", {"amount": "3 cloves, minced"})),
        (
            "curing-salt = 2 g at 0.5 %",
            ("curing-salt", {"amount": "2 g", "strength": "0.5 %"}),
        ),
    ],
)
def test_read_line(typed: str, expected: object) -> None:
    """An ingredient may be typed as it is spoken or as it stands in a file."""
    assert expected == read_line(typed)
