"""Values that no key takes: each kind of wrong number, word or type, and what is said of it.

The faults of a file as a whole, of TOML and of curing salts stand in ``test_messages``.
"""

from __future__ import annotations

import pytest

from tarebook.recipe import read_recipe
from tarebook.recipe.fields import named_food

BASE = """\
title = "Strips"
[meat]
food = "deer"
amount = "1 kg"
[rub]
salt-table = "1 tsp"
[soak]
hours = 12
[drying]
temperature = "155 F"
"""

IN_QUOTES = 'write it in quotes, as in "3/4 cup"'
WITH_UNIT = 'write it in quotes with its unit, as in "3/4 cup"'
NUMBER = "write a number such as 2, 0.5, 3/4 or 1 1/2"
CUPS = "write an amount such as 1 1/2 cups"
SALT, WEIGHT, HOURS, DEGREES = '"1 tsp"', '"1 kg"', "12", '"155 F"'

# The value of BASE, what stands in its place, and the line behind "error: ".
REFUSED = [
    # --- an amount in quotes
    (SALT, '"-1 tsp"', 'amount "-1 tsp" is negative', "write an amount above zero"),
    (SALT, '"0 g"', 'amount "0 g" is zero', "leave the ingredient out, or write how much"),
    (
        SALT,
        '"99999999 cups"',
        'amount "99999999 cups" is absurdly large: more than 1000 L',
        "check number and unit",
    ),
    (
        SALT,
        '"1e999999999 cup"',
        'amount "1e999999999 cup" has an exponent',
        "write the number out",
    ),
    (
        SALT,
        f'"{"9" * 5000} cup"',
        f'amount "{"9" * 40}…" is 5004 characters long',
        CUPS,
    ),
    (SALT, '"nan cup"', 'amount "nan cup" is not a number', CUPS),
    (SALT, '"inf cup"', 'amount "inf cup" is not a number', CUPS),
    (SALT, '"1/0 cup"', 'amount "1/0 cup" divides by zero', ""),
    (
        SALT,
        '"3"',
        'amount "3" has no unit',
        'an amount needs a unit, such as "3 cloves", "1 medium" or "3 tsp"',
    ),
    (SALT, '""', "amount is empty", CUPS),
    (SALT, '"1,5 cup"', 'amount "1,5 cup" has a comma inside a number', "write 1.5"),
    (SALT, '"5-2 tsp"', 'amount "5-2 tsp" runs backwards', "write the smaller number first"),
    # --- an amount without quotes that TOML takes for something else
    (SALT, "0", "amount 0 has no unit", WITH_UNIT),
    (SALT, "-3", "amount -3 has no unit", WITH_UNIT),
    (SALT, "0.00001", "amount 0.00001 has no unit", WITH_UNIT),
    (SALT, "0x10", "amount 16 has no unit", WITH_UNIT),
    (SALT, "9" * 100, "amount of more than 15 digits has no unit", WITH_UNIT),
    (SALT, "false", "false is no amount", IN_QUOTES),
    (SALT, "-inf", "-inf is no amount", IN_QUOTES),
    (SALT, "1e999999999", "1e999999999 is no amount", IN_QUOTES),
    (SALT, f"0.{'1' * 5000}", f"0.{'1' * 57}… is no amount", IN_QUOTES),
    (SALT, "[1]", "a list is no amount", IN_QUOTES),
    (SALT, "1979-05-27", "a date or a time is no amount", IN_QUOTES),
    (SALT, "07:32:00", "a date or a time is no amount", IN_QUOTES),
    # --- the weight of the meat
    (WEIGHT, '"0 kg"', 'weight "0 kg" is zero', ""),
    (WEIGHT, '"-1 kg"', 'weight "-1 kg" is negative', "write an amount above zero"),
    (
        WEIGHT,
        '"1001 kg"',
        'weight "1001 kg" is absurdly large: more than 1000 kg',
        "check number and unit",
    ),
    (WEIGHT, '"1-2 kg"', 'weight "1-2 kg" is a range', "give one weight"),
    (WEIGHT, '"6"', 'weight "6" has no unit', "write 6 lb or 6 kg"),
    (
        WEIGHT,
        "6",
        "amount 6 has no unit",
        'write it in quotes with its unit, as in amount = "2 1/2 lb"',
    ),
    (WEIGHT, "inf", "amount takes a weight, not inf", 'as in amount = "2 1/2 lb"'),
    # --- hours, a number or words
    (HOURS, "0", "hours 0 is not above 0 and at most 2,000 hours", ""),
    (HOURS, '"0-3"', "hours 0-3 is not above 0 and at most 2,000 hours", ""),
    (HOURS, "2001", "hours 2001 is not above 0 and at most 2,000 hours", ""),
    (HOURS, "1e20", "hours of more than 15 digits is absurdly large", ""),
    (HOURS, "nan", "hours takes hours, a number or a range, not nan", 'as in hours = "8-12"'),
    (
        HOURS,
        "[8, 12]",
        "hours takes hours, a number or a range, not a list",
        'as in hours = "8-12"',
    ),
    (HOURS, '"1e-10"', 'range "1e-10" cannot be read', NUMBER),
    (HOURS, '"1-2-3 hours"', 'range "1-2-3" cannot be read', NUMBER),
    (HOURS, '"-1"', 'range "-1" is negative', ""),
    # --- temperatures
    (DEGREES, '"-5 F"', 'range "-5" is negative', ""),
    (DEGREES, '"hot F"', 'range "hot" cannot be read', NUMBER),
    (DEGREES, '"68 C - 155 F"', 'range "68 c - 155" cannot be read', NUMBER),
    (DEGREES, '"300 C"', "temperature 300 C is not above 0 and at most 500 °F", ""),
]
PLACES = {
    SALT: (6, "rub.salt-table"),
    WEIGHT: (4, "meat.amount"),
    HOURS: (8, "soak.hours"),
    DEGREES: (10, "drying.temperature"),
}


@pytest.mark.parametrize(("was", "put", "message", "hint"), REFUSED)
def test_refused_value(was: str, put: str, message: str, hint: str) -> None:
    """A value that cannot be used is one error at its line, with what to write instead."""
    line, path = PLACES[was]
    expected = f"r:{line}: error: {message} ({path})" + (f"; {hint}" if hint else "")
    recipe, findings = read_recipe(BASE.replace(was, put), file="r")
    assert [expected] == [str(finding) for finding in findings]
    assert recipe is None


TABLES = [
    ("amount = 3", 'amount 3 has no unit (rub.x.amount); write it in quotes with its unit, as in '
     'amount = "3/4 cup"'),
    ("amount = true", 'amount takes an amount, not true (rub.x.amount); as in amount = "3/4 cup"'),
    (
        'amount = "1 tsp", scale = "doubel"',
        'scale cannot be "doubel" (rub.x.scale); '
        'choose one of "with meat", "fixed", "whole"',
    ),
    (
        'amount = "1 tsp", scale = 2',
        "scale takes one of a few words, not a number (rub.x.scale); "
        'as in scale = "with meat"',
    ),
    (
        'amount = "1 tsp", panel = 3',
        "panel takes a table, not a number (rub.x.panel); "
        'as in panel = { serving = "1 Tbsp (17 g)", sodium = "580 mg" }',
    ),
    (
        'amount = "1 tsp", form = "pakced"',
        'form "pakced" has a word I do not know: "pakced" (rub.x.form); '
        'did you mean "packed" or "unpacked"?',
    ),
    (
        'amount = "1 tsp", form = "plus 2 Tbsp"',
        'form "plus 2 Tbsp" has a word I do not know: "plus" (rub.x.form)',
    ),
    (
        'amount = "1 tsp", form = "to taste"',
        'form "to taste" has a word I do not know: "to" (rub.x.form)',
    ),
    (
        'amount = "1 tsp", form = 3',
        'form takes form words, not a number (rub.x.form); as in form = "packed"',
    ),
    ('amount = "1 tsp", note = 5', 'note takes one line of words, not a number (rub.x.note); '
     'as in note = "for colour"'),
]  # fmt: skip


@pytest.mark.parametrize(("inside", "expected"), TABLES)
def test_refused_value_of_an_ingredient(inside: str, expected: str) -> None:
    """A faulty key of an ingredient is told by its own path, and nothing of it is dropped."""
    put = f'x = {{ food = "salt-table", {inside} }}'
    recipe, findings = read_recipe(BASE.replace('salt-table = "1 tsp"', put), file="r")
    assert [f"r:6: error: {expected}"] == [str(finding) for finding in findings]
    assert recipe is None


@pytest.mark.parametrize(
    ("put", "expected"),
    [
        ('food = ""', "r:3: error: food is empty (meat.food)"),
        (
            "food = 3",
            "r:3: error: food takes a meat, a fish or a mushroom, not a number (meat.food); "
            'as in food = "deer"',
        ),
        (
            f'food = "{"x" * 201}"',
            "r:3: error: food has 201 letters, more than 200 (meat.food)",
        ),
        (
            'food = "deer\\u202e"',
            "r:3: error: food holds the hidden character \\u202e (meat.food); leave it out",
        ),
        (
            'food = "deer"\nthickness = 6',
            "r:4: error: thickness 6 has no unit (meat.thickness); "
            'write it in quotes with its unit, as in thickness = "1/4 in"',
        ),
        (
            'food = "deer"\nthickness = "0 mm"',
            'r:4: error: length "0 mm" is zero (meat.thickness)',
        ),
        (
            'food = "deer"\nthickness = "999 in"',
            'r:4: error: length "999 in" is absurdly large: more than 300 mm (meat.thickness); '
            "check number and unit",
        ),
    ],
)
def test_refused_value_of_the_meat(put: str, expected: str) -> None:
    """What is dried is a food of the table in plain letters, and its thickness a length."""
    _, findings = read_recipe(BASE.replace('food = "deer"', put), file="r")
    assert [expected] == [str(finding) for finding in findings]


@pytest.mark.parametrize(
    ("put", "expected"),
    [
        ('moisture = "75.1 %"', "moisture 75.1 % is not above 0 and at most 75 %"),
        ('moisture = "100 %"', "moisture 100 % is not above 0 and at most 75 %"),
        ('moisture = "0 %"', "moisture 0 % is not above 0 and at most 75 %"),
        ('yield = "101 %"', "yield 101 % is not above 0 and at most 100 %"),
        ("water-activity = 1.1", "water-activity 1.1 is not above 0 and at most 1"),
        ("moisture-to-protein = 0", "moisture-to-protein 0 is not above 0 and at most 5"),
        ("moisture-to-protein = 5.1", "moisture-to-protein 5.1 is not above 0 and at most 5"),
    ],
)
def test_a_finish_that_is_none(put: str, expected: str) -> None:
    """Meat that is all water, or heavier than it went in, was never dried."""
    key = put.partition(" ")[0]
    recipe, findings = read_recipe(f"{BASE}{put}\n", file="r")
    assert [f"r:11: error: {expected} (drying.{key})"] == [str(finding) for finding in findings]
    assert recipe is None


@pytest.mark.parametrize(
    ("written", "expected"),
    [('"145 f - 155 F"', (145.0, 155.0)), ('"155 Degrees F"', (155.0, 155.0))],
)
def test_letters_of_a_scale_may_be_small_or_capital(
    written: str, expected: tuple[float, float]
) -> None:
    """A temperature reads the same however its words are spelt."""
    recipe, findings = read_recipe(BASE.replace('"155 F"', written), file="r")
    assert () == findings
    assert recipe is not None
    assert expected == recipe.drying.temperature_f


@pytest.mark.parametrize("name", ["soy-sauce", "Soy Sauce", "soy_sauce", "shoyu"])
def test_named_food(name: str) -> None:
    """Other names, capitals, blanks and underscores lead to the same food."""
    assert "soy-sauce" == named_food(name).key


@pytest.mark.parametrize("put", ["0.55", "0.95", '"0.55-0.95"'])
def test_a_water_activity_at_either_end_is_taken(put: str) -> None:
    """The limits themselves lie inside."""
    recipe, findings = read_recipe(f"{BASE}water-activity = {put}\n", file="r")

    assert recipe is not None and recipe.drying.finish is not None, findings
    low, likely, high = recipe.drying.finish.value
    assert 0.5 < low <= likely <= high < 1


@pytest.mark.parametrize("put", ["28 F", "100 F", "0 C", "34-41 F"])
def test_a_soak_may_be_as_cold_as_meat_does_not_freeze(put: str) -> None:
    """And warm enough to be warned of."""
    recipe, findings = read_recipe(
        BASE.replace("[soak]", f'[soak]\ntemperature = "{put}"'), file="r"
    )

    assert recipe is not None, findings


@pytest.mark.parametrize("put", ["27 F", "101 F", "30-160 F", "71 C"])
def test_no_soak_is_frozen_or_hot(put: str) -> None:
    """What heats the meat is no soak."""
    recipe, findings = read_recipe(
        BASE.replace("[soak]", f'[soak]\ntemperature = "{put}"'), file="r"
    )

    assert recipe is None
    assert [
        f"r:8: error: temperature {put} is outside 28 to 100 °F (soak.temperature); it is that of "
        "the soak; heat goes under [heat]"
    ] == [str(finding) for finding in findings]


def test_mushrooms_have_no_water_activity_to_aim_at() -> None:
    """How they hold water is not held, and what to state instead is said."""
    text = BASE.replace('"deer"', '"mushroom-shiitake"') + "water-activity = 0.6\n"
    recipe, findings = read_recipe(text, file="r")

    assert recipe is None
    assert [
        "r:11: error: how mushroom-shiitake holds water is not known here, so no water-activity "
        "can be its end (drying.water-activity); state its moisture or yield instead"
    ] == [str(finding) for finding in findings]


@pytest.mark.parametrize("put", ["0.5", '"0.8-0.99"'])
def test_a_water_activity_nobody_can_estimate(put: str) -> None:
    """Drier or wetter than the equations reach."""
    recipe, findings = read_recipe(f"{BASE}water-activity = {put}\n", file="r")
    said = put.strip('"')

    assert recipe is None
    assert [
        f"r:11: error: water-activity {said} is outside 0.55 to 0.95 (drying.water-activity); "
        "elsewhere it cannot be estimated"
    ] == [str(finding) for finding in findings]
