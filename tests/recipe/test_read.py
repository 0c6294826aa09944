"""Reading a recipe file: what a good one becomes, and that all faults come together, in order."""

from __future__ import annotations

from fractions import Fraction

import pytest

from tarebook.findings import Severity
from tarebook.quantities.amount import AmountKind, parse_amount
from tarebook.recipe import (
    Drying,
    Finish,
    FinishBy,
    HeatStep,
    Ingredient,
    Meat,
    MeatForm,
    Panel,
    Part,
    Recipe,
    ScaleBy,
    Soak,
    Surface,
    read_recipe,
)
from tarebook.recipe.read import recipe_of

GOOD = """\
#:schema ../reference/recipe.schema.json
title = "Juniper venison strips"
about = "Dark and a little sweet."

[meat]
food = "deer"
amount = "2 1/2 lb"
thickness = "5-7 mm"
form = "pieces"

[marinade]
shoyu = "3/4 cup"
"dark soy" = { food = "soy-sauce", amount = "1 Tbsp", scale = "fixed", note = "for colour" }
sugar = { amount = "1/4 cup", form = "packed" }
bottle = { food = "soy-sauce", amount = "2 Tbsp", panel = { serving = "1 Tbsp (17 g)", \
sodium = "0.575 g", sugars = "1 g", energy = "10 kcal" } }

[rub]
black-pepper = "to taste"
curing-salt-1 = { amount = "2.8 g", strength = "6.25 %" }

[soak]
hours = "8-12"
surface = "patted"
poured-away = false

[heat]
step = "oven after drying"

[drying]
temperature = "145-155 °F"
hours = 6
moisture-to-protein = "0.5-0.7"

[method]
steps = ["Slice.", "Soak."]
notes = ["Keep cold."]
"""

MINIMAL = '[rub]\nsalt-table = "1 tsp"\n[meat]\nfood = "bison"\namount = "1 kg"\n'


def test_a_whole_recipe_becomes_its_values() -> None:
    """Every key of the format arrives in the model, understood and exact."""
    expected = Recipe(
        title="Juniper venison strips",
        about="Dark and a little sweet.",
        meat=Meat(
            food="deer",
            amount=parse_amount("2 1/2 lb"),
            mass_g=Fraction("1133.980925"),
            form=MeatForm.PIECES,
            thickness_mm=(5.0, 6.0, 7.0),
            thickness_written="5-7 mm",
            wild=True,
        ),
        ingredients=(
            Ingredient(
                name="shoyu",
                food="soy-sauce",
                amount=parse_amount("3/4 cup"),
                path="marinade.shoyu",
            ),
            Ingredient(
                name="dark soy",
                food="soy-sauce",
                amount=parse_amount("1 Tbsp"),
                scale=ScaleBy.FIXED,
                note="for colour",
                path='marinade."dark soy"',
            ),
            Ingredient(
                name="sugar",
                food="sugar",
                amount=parse_amount("1/4 cup"),
                form=("packed",),
                path="marinade.sugar",
            ),
            Ingredient(
                name="bottle",
                food="soy-sauce",
                amount=parse_amount("2 Tbsp"),
                panel=Panel(
                    serving_ml=Fraction(15),
                    serving_g=Fraction(17),
                    sodium_mg=Fraction(575),
                    sugars_g=Fraction(1),
                    energy_kcal=Fraction(10),
                ),
                path="marinade.bottle",
            ),
            Ingredient(
                name="black-pepper",
                food="black-pepper",
                amount=parse_amount("to taste"),
                part=Part.RUB,
                path="rub.black-pepper",
            ),
            Ingredient(
                name="curing-salt-1",
                food="curing-salt-1",
                amount=parse_amount("2.8 g"),
                part=Part.RUB,
                strength_percent=Fraction(25, 4),
                path="rub.curing-salt-1",
            ),
        ),
        soak=Soak(
            hours=(8.0, 10.0, 12.0),
            stated=True,
            hours_written="8-12",
            surface=Surface.PATTED,
            poured_away=False,
        ),
        heat=HeatStep.OVEN_AFTER,
        drying=Drying(
            temperature_f=(145.0, 155.0),
            temperature_written="145-155 °F",
            hours=(6.0, 6.0),
            hours_written="6",
            finish=Finish(
                by=FinishBy.MOISTURE_TO_PROTEIN, value=(0.5, 0.6, 0.7), written="0.5-0.7"
            ),
        ),
        steps=("Slice.", "Soak."),
        notes=("Keep cold.",),
        file="good.toml",
    )
    assert (expected, ()) == read_recipe(GOOD, file="good.toml")


def test_what_is_left_out_is_not_stated() -> None:
    """The least a recipe may say leaves soak, heat and finish open rather than guessed."""
    recipe, findings = read_recipe(f'title = "Strips"\n{MINIMAL}', file="x.toml")
    assert () == findings
    assert recipe is not None
    assert (Soak(), HeatStep.UNSTATED, Drying()) == (recipe.soak, recipe.heat, recipe.drying)
    assert (MeatForm.STRIPS, None) == (recipe.meat.form, recipe.meat.thickness_mm)


@pytest.mark.parametrize("written", [GOOD.encode(), GOOD.replace("\n", "\r\n").encode()])
def test_bytes_and_line_ends_do_not_matter(written: bytes) -> None:
    """A file reads the same as bytes or text, with either kind of line end."""
    assert read_recipe(GOOD, file="x") == read_recipe(written, file="x")


def test_parts_keep_the_order_of_the_file() -> None:
    """Ingredients come in the order in which the cook wrote them, part by part."""
    text = 'title = "x"\n[rub]\nallspice = "1 tsp"\n[marinade]\nwater = "1 cup"\n'
    recipe, _ = read_recipe(f'{text}[meat]\nfood = "elk"\namount = "1 lb"\n', file="x")
    assert recipe is not None
    assert ["allspice", "water"] == [ingredient.name for ingredient in recipe.ingredients]


def test_cup_of_the_recipe_is_the_cup_of_its_amounts() -> None:
    """A metric recipe means metric cups, wherever its ``cup`` line stands among the top keys."""
    recipe, _ = read_recipe(
        'title = "x"\ncup = "metric"\n[marinade]\nwater = "1 cup"\n'
        '[meat]\nfood = "elk"\namount = "1 kg"\n',
        file="x",
    )
    assert recipe is not None
    assert "metric_cup" == recipe.ingredients[0].amount.unit


@pytest.mark.parametrize(
    ("written", "expected"),
    [
        ("moisture-to-protein = 0.6", (0.48, 0.6, 0.75)),
        ('moisture-to-protein = "0.5-0.7"', (0.5, 0.6, 0.7)),
        ('moisture = "25 %"', (0.2, 0.25, 0.3125)),
        ('moisture = "20-30 %"', (0.2, 0.25, 0.3)),
        ('yield = "50 %"', (0.47, 0.5, 0.53)),
        ("water-activity = 0.80", (0.752, 0.8, 0.848)),
        ('water-activity = "0.75-0.85"', (0.75, 0.8, 0.85)),
        ('yield = "98 %"', (0.9212, 0.98, 0.99)),
    ],
)
def test_finish(written: str, expected: tuple[float, float, float]) -> None:
    """A range is taken as stated; one value gets its documented spread and stays below all."""
    recipe, findings = read_recipe(f'title = "x"\n{MINIMAL}[drying]\n{written}\n', file="x")
    assert recipe is not None, findings
    assert recipe.drying.finish is not None
    assert pytest.approx(expected, rel=1e-12) == recipe.drying.finish.value


@pytest.mark.parametrize(
    ("food", "said", "expected"),
    [
        ("deer", "", True),
        ("deer", "wild = false", False),
        ("bison", "wild = true", True),
        ("salmon-chum", "", None),
    ],
)
def test_wild_is_what_the_recipe_says_or_the_table(
    food: str, said: str, expected: bool | None
) -> None:
    """The cook's word stands over the table's; where both are silent it is not known."""
    text = f'title = "x"\n[rub]\n[meat]\nfood = "{food}"\namount = "1 kg"\n{said}\n'
    recipe, _ = read_recipe(text, file="x")
    assert recipe is not None
    assert recipe.meat.wild is expected


def test_all_faults_come_together_in_file_order() -> None:
    """Faults of every kind, syntax too, are told in one go and by rising line."""
    text = (
        'titel = "x"\n'
        "[meat]\n"
        'amount = "2 cups"\n'
        'food = "dear"\n'
        "[marinade]\n"
        "soy-sauce = 3/4 cup\n"
        "honey = true\n"
        'honey = "1 Tbsp"\n'
        'water = "1 T"\n'
        "[method]\n"
        'steps = ["Slice.",\n  2]\n'
    )
    recipe, findings = read_recipe(text, file="x")
    assert recipe is None
    expected = [
        (1, "unknown-key"),
        (3, "amount"),
        (4, "unknown-food"),
        (6, "syntax"),
        (7, "wrong-type"),
        (8, "syntax"),
        (9, "reading"),
        (12, "wrong-type"),
    ]
    assert expected == [(finding.place.line, finding.code) for finding in findings]


def test_notes_leave_the_recipe_usable() -> None:
    """A note says how a word was read and does not keep the recipe back."""
    text = GOOD.replace('"1 Tbsp"', '"1 T"').replace('"2 Tbsp"', '"2 oz"')
    recipe, findings = read_recipe(text, file="x")
    assert recipe is not None
    assert {Severity.NOTE} == {finding.severity for finding in findings}
    assert 'marinade."dark soy"' == findings[0].place.path


def test_ounces_of_a_solid_need_no_note() -> None:
    """Nobody means fluid ounces of sugar, so nothing is said about them."""
    text = GOOD.replace('amount = "1/4 cup", form = "packed"', 'amount = "4 oz"')
    recipe, findings = read_recipe(text, file="x")
    assert recipe is not None
    assert () == findings


@pytest.mark.parametrize("form", ["to taste", "a pinch", "2-3 tsp", "1 cup + 2 Tbsp", "½ tsp"])
def test_amounts_are_the_quantities_rooms(form: str) -> None:
    """Whatever the quantities room reads is an amount here, and the same one."""
    recipe, _ = read_recipe(GOOD.replace('"to taste"', f'"{form}"'), file="x")
    assert recipe is not None
    assert parse_amount(form) == recipe.ingredients[4].amount
    assert (form == "to taste") is (recipe.ingredients[4].amount.kind is AmountKind.TO_TASTE)


def test_places_of_a_recipe_are_lines_of_its_file() -> None:
    """Any room above can say where an ingredient stands; what is unsaid is at its table."""
    recipe, _ = read_recipe(GOOD, file="x.toml")
    assert recipe is not None
    rows = GOOD.split("\n")
    for ingredient in recipe.ingredients:
        line = recipe.place(ingredient.path).line
        assert line is not None
        assert ingredient.name in rows[line - 1]
    assert recipe.place("heat").line == recipe.place("heat.minutes").line
    place = recipe.place("heat.step")
    assert ("x.toml:27", "heat.step") == (str(place), place.path)
    assert recipe.place("nowhere").line is None


def test_recipe_of_values_that_never_were_a_file() -> None:
    """Values made in code are read by the same rules, only without lines."""
    document = {"title": "x", "meat": {"food": "elk", "amount": "1 lb"}, "rub": {"salt": 3}}
    recipe, findings = recipe_of(document, file="new.toml")
    assert recipe is None
    assert ["new.toml"] == [str(finding.place) for finding in findings]
    recipe, findings = recipe_of({**document, "rub": {"salt": "3 g"}}, file="new.toml")
    assert recipe is not None
    assert () == findings


def test_a_file_of_nothing_but_faults_is_given_up() -> None:
    """After a hundred errors the rest is not looked for, and that is said."""
    recipe, findings = read_recipe("".join(f"k{n} = 1\n" for n in range(5000)), file="x")
    assert recipe is None
    assert 101 == len(findings)
    assert "too-many-errors" == findings[-1].code


def test_many_notes_are_no_reason_to_give_up() -> None:
    """Only errors are counted: a long recipe full of notes is still a recipe."""
    rows = "".join(f'"w{n}" = {{ food = "water", amount = "1 oz" }}\n' for n in range(400))
    recipe, findings = read_recipe(f'title = "x"\n{MINIMAL}[marinade]\n{rows}', file="x")
    assert recipe is not None
    assert 400 == len(findings)


@pytest.mark.parametrize(
    ("drying", "says"),
    [
        ('temperature = "155 C"', "a dryer at 311 °F (155 °C) is hotter than boiling water"),
        ("hours = 900", "900 hours of drying are more than two days"),
    ],
)
def test_a_slip_of_the_pen_is_warned_of(drying: str, says: str) -> None:
    """Degrees of the other scale, or minutes for hours, are read and warned of."""
    meat = 'title = "x"\n[meat]\nfood = "elk"\namount = "1 kg"\n[rub]\nhoney = "1 tsp"\n'
    text = f"{meat}[drying]\n{drying}\n"

    recipe, findings = read_recipe(text, file="x")

    assert recipe is not None
    assert [says] == [one.message for one in findings if one.code == "unlikely"]


def test_a_soak_tells_how_cold_it_is_and_whether_it_was_used() -> None:
    """Both in the value; a marinade is fresh, and its temperature open, where nothing is said."""
    text = (
        'title = "x"\n[meat]\nfood = "elk"\namount = "1 lb"\n[marinade]\nhoney = "1 T"\n'
        '[soak]\ntemperature = "4 C"\nused-before = true\n'
    )
    recipe, findings = read_recipe(text, file="r.toml")
    fresh, _ = read_recipe(text.partition("[soak]")[0], file="r.toml")

    assert recipe is not None and fresh is not None, findings
    assert recipe.soak.temperature_f == pytest.approx((39.2, 39.2))
    assert recipe.soak.used_before
    assert (None, False) == (fresh.soak.temperature_f, fresh.soak.used_before)


def test_game_that_is_not_held_takes_the_most_cautious_rule() -> None:
    """A hunter's cougar is no venison: the hint names bear, whose rule of heat is the strictest."""
    for name in ("cougar", "walrus", "javelina"):
        text = f'title = "x"\n[meat]\nfood = "{name}"\namount = "1 lb"\n'
        _, findings = read_recipe(text, file="x")
        hints = [one.hint for one in findings if one.code == "unknown-food"]
        assert len(hints) == 1 and 'write "bear"' in hints[0]
