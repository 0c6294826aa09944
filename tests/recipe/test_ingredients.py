"""One line of a marinade, rub or mix: names, doubtful ounces and spoons, how much is too much."""

from __future__ import annotations

import pytest

from tarebook.recipe import read_recipe
from tarebook.recipe.ingredients import MOST_INGREDIENTS

BASE = 'title = "x"\n[meat]\nfood = "moose"\namount = "1 kg"\n[rub]\n'


def said(lines: str) -> list[str]:
    """Return what is said of a rub, without the place."""
    _, findings = read_recipe(BASE + lines, file="r")
    return [str(finding).partition(": ")[2] for finding in findings]


@pytest.mark.parametrize(
    "food", ["soy-sauce", "water", "vinegar-cider", "milk", "oil-olive", "apple-juice"]
)
def test_ounces_of_a_liquid_are_weight_and_that_is_said(food: str) -> None:
    """An ounce of what is poured could be a fluid one: it means weight, with a note."""
    expected = f"note: oz read as weight (rub.{food}); for a volume write fl oz"
    assert [expected] == said(f'{food} = "2 oz"')


@pytest.mark.parametrize("amount", ["2 fl oz", "2 g", "1 lb"])
def test_no_doubt_no_note(amount: str) -> None:
    """Fluid ounces, grams and pounds of a liquid mean one thing only."""
    assert [] == said(f'soy-sauce = "{amount}"')


@pytest.mark.parametrize("food", ["salt-table", "brown-sugar", "citric-acid", "black-pepper"])
def test_ounces_of_a_solid_are_no_doubt(food: str) -> None:
    """Nobody means fluid ounces of what is dry."""
    assert [] == said(f'{food} = "2 oz"')


@pytest.mark.parametrize(
    ("amount", "spoon"), [("1 t", "t read as teaspoon"), ("1 T", "T read as tablespoon")]
)
def test_written_by_hand(amount: str, spoon: str) -> None:
    """The small and the capital letter are different spoons, and how each was read is said."""
    assert [f"note: {spoon} (rub.honey)"] == said(f'honey = "{amount}"')
    assert [f"note: {spoon} (rub.x)"] == said(f'x = {{ food = "honey", amount = "{amount}" }}')


@pytest.mark.parametrize(
    ("line", "expected"),
    [
        ('"" = "1 g"', 'error: an ingredient without a name (rub."")'),
        ('" " = "1 g"', 'error: an ingredient without a name (rub." ")'),
        (
            '"a\\nb" = "1 g"',
            'error: a name must be one line, without tabs (rub."a\\nb")',
        ),
        (
            '"a\\u0007" = "1 g"',
            'error: the name holds the hidden character \\x07 (rub."a\\u0007"); leave it out',
        ),
        (
            'soy-sause = "1 cup"',
            'error: no food is called "soy-sause" (rub.soy-sause); did you mean "soy-sauce"',
        ),
        (
            'x = { food = "soy-sause", amount = "1 cup" }',
            'error: no food is called "soy-sause" (rub.x.food); did you mean "soy-sauce"',
        ),
        (
            'honey.scael = "fixed"\nhoney.amount = "1 g"',
            'error: "scael" is no key of an ingredient (rub.honey.scael); did you mean "scale"',
        ),
    ],
)
def test_names(line: str, expected: str) -> None:
    """A name is one line of visible letters; a misspelt food or key brings up those near it."""
    found = said(line)
    assert 1 == len(found)
    assert found[0].startswith(expected)


def test_one_food_in_two_parts() -> None:
    """The same food may go into the marinade and onto the meat: a line a food and part."""
    recipe, findings = read_recipe(
        f'{BASE}honey = "1 g"\n"more honey" = {{ food = "honey", amount = "2 g" }}\n'
        '[marinade]\nhoney = "3 g"\n',
        file="r",
    )
    assert () == findings
    assert recipe is not None
    assert ["rub.honey", 'rub."more honey"', "marinade.honey"] == [
        ingredient.path for ingredient in recipe.ingredients
    ]
    assert {"honey"} == {ingredient.food for ingredient in recipe.ingredients}


def test_the_most_ingredients() -> None:
    """Five hundred are read, over all parts together; one more is refused as a whole."""
    rows = [f'w{n} = {{ food = "water", amount = "1 g" }}\n' for n in range(MOST_INGREDIENTS)]
    half = MOST_INGREDIENTS // 2
    text = f"{BASE}{''.join(rows[:half])}[marinade]\n{''.join(rows[half:])}"
    recipe, findings = read_recipe(text, file="r")
    assert () == findings
    assert recipe is not None
    assert MOST_INGREDIENTS == len(recipe.ingredients)
    recipe, findings = read_recipe(f'{text}honey = "1 g"\n', file="r")
    assert recipe is None
    assert ["r:5: error: 501 ingredients, more than 500 (rub); is this the right file?"] == [
        str(finding) for finding in findings
    ]


def test_several_faults_on_one_line_are_all_told() -> None:
    """Whatever is wrong with one ingredient is told in one go."""
    found = said('x = { food = "soy-sause", amount = 3, scale = "fix", note = true, wibble = 1 }')
    assert 5 == len(found)
    assert [True] * 5 == [line.startswith("error: ") for line in found]
