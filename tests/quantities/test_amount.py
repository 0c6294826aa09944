"""Amounts as cooks write them: read, printed, scaled, added, refused."""

from __future__ import annotations

import random
from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tarebook.findings import AmountError, QuantityError, UnitError
from tarebook.quantities.amount import (
    Amount,
    AmountKind,
    parse_amount,
    parse_length_mm,
    parse_mass,
    to_g,
    to_ml,
)
from tarebook.quantities.forms import FORMS, SIZES, THEIR_OWN_NAME, place_of
from tarebook.quantities.units import Dimension, read_unit, units

HALF = Fraction(1, 2)
THREE_HALVES = Fraction(3, 2)


@pytest.mark.parametrize(
    ("written", "low", "high", "unit"),
    [
        ("3 cups", 3, 3, "cup"),
        ("0.5 tsp", HALF, HALF, "teaspoon"),
        (".5 tsp", HALF, HALF, "teaspoon"),
        ("3/4 cup", Fraction(3, 4), Fraction(3, 4), "cup"),
        ("1 1/2 cups", THREE_HALVES, THREE_HALVES, "cup"),
        ("1-1/2 cup", THREE_HALVES, THREE_HALVES, "cup"),
        ("1 and 1/2 cups", THREE_HALVES, THREE_HALVES, "cup"),
        ("½ tsp", HALF, HALF, "teaspoon"),
        ("1½ cups", THREE_HALVES, THREE_HALVES, "cup"),
        ("1 ½ cup", THREE_HALVES, THREE_HALVES, "cup"),
        ("1⁄2 cup", HALF, HALF, "cup"),
        ("2-3 tsp", 2, 3, "teaspoon"),
        ("2 - 3 tsp", 2, 3, "teaspoon"),
        ("2 to 3 tsp", 2, 3, "teaspoon"),
        ("2 or 3 tsp", 2, 3, "teaspoon"),
        ("2–3 tsp", 2, 3, "teaspoon"),
        ("1-2 cup", 1, 2, "cup"),
        ("1 1/2-2 cups", THREE_HALVES, 2, "cup"),
        ("1-1 1/2 cups", 1, THREE_HALVES, "cup"),
        ("1-1/2 to 2 cups", THREE_HALVES, 2, "cup"),
        ("½-1 tsp", HALF, 1, "teaspoon"),
        ("2 tsp to 1 Tbsp", 2, 3, "teaspoon"),
        ("a pinch", 1, 1, "pinch"),
        ("pinch", 1, 1, "pinch"),
        ("a pinch of", 1, 1, "pinch"),
        ("half a cup", HALF, HALF, "cup"),
        ("one cup", 1, 1, "cup"),
        ("two to three cups", 2, 3, "cup"),
        ("2 fl. oz.", 2, 2, "fluid_ounce"),
        ("1 pint", 1, 1, "pint"),
        ("1 qt", 1, 1, "quart"),
        ("1 gallon", 1, 1, "gallon"),
        ("2lbs", 2, 2, "pound"),
        ("500mg", 500, 500, "milligram"),
        ("5 ML", 5, 5, "milliliter"),
        ("3 drops", 3, 3, "drop"),
        ("1 metric cup", 1, 1, "metric_cup"),
        ("1 label Tbsp", 1, 1, "label_tablespoon"),
        ("1 US cup", 1, 1, "cup"),
        ("1/2 stick", HALF, HALF, "stick"),
        ("1 can", 1, 1, "can"),
        ("juice of 1 lemon", 1, 1, "lemon"),
        ("1 large", 1, 1, "large"),
        ("1 medium onion", 1, 1, "medium"),
        ("1 onion, large", 1, 1, "large"),
        ("10 berries", 10, 10, "berry"),
    ],
)
def test_amounts_as_written(
    written: str, low: Fraction | int, high: Fraction | int, unit: str
) -> None:
    """Every way a cook writes number and unit gives exactly that much."""
    amount = parse_amount(written)

    assert (low, high, unit, (), written) == (
        amount.low,
        amount.high,
        amount.unit,
        amount.form,
        amount.text,
    )
    assert AmountKind.MEASURED is amount.kind


@pytest.mark.parametrize(
    ("written", "unit", "form", "printed"),
    [
        ("1/4 cup packed", "cup", ("packed",), "1/4 cup packed"),
        ("packed 1/4 cup", "cup", ("packed",), "1/4 cup packed"),
        ("1/4 packed cup", "cup", ("packed",), "1/4 cup packed"),
        ("1/4 cup, packed", "cup", ("packed",), "1/4 cup packed"),
        ("1/4 cup (packed)", "cup", ("packed",), "1/4 cup packed"),
        ("1/4 cup firmly packed", "cup", ("packed",), "1/4 cup packed"),
        ("1/4 cup lightly packed", "cup", ("unpacked",), "1/4 cup unpacked"),
        ("1 cup coarsely chopped", "cup", ("coarse", "chopped"), "1 cup coarse chopped"),
        ("1 tsp freshly ground", "teaspoon", ("ground",), "1 tsp ground"),
        ("2 tsp whole", "teaspoon", ("whole",), "2 tsp whole"),
        ("1 tsp leaves", "teaspoon", ("leaves",), "1 tsp leaves"),
        ("2 leaves", "leaf", (), "2 leaves"),
        ("2 large leaves, crushed", "leaf", ("large", "crushed"), "2 large leaves, crushed"),
        ("2 cloves, minced", "clove", ("minced",), "2 cloves, minced"),
        ("2 large cloves", "clove", ("large",), "2 large cloves"),
        ("2 minced thin slices", "slice", ("thin", "minced"), "2 thin slices, minced"),
        ("1 stalk large", "stalk", ("large",), "1 large stalk"),
        ("1 small fruit", "fruit", ("small",), "1 small fruit"),
        ("1-2 sprigs fresh", "sprig", ("fresh",), "1 to 2 sprigs, fresh"),
    ],
)
def test_form_words_anywhere(written: str, unit: str, form: tuple[str, ...], printed: str) -> None:
    """A form word stays with the amount wherever it is written, and is printed in its place."""
    amount = parse_amount(written)

    assert (unit, form, printed) == (amount.unit, amount.form, str(amount))


@pytest.mark.parametrize(
    ("written", "readings"),
    [
        ("1 T", ("T read as tablespoon",)),
        ("1 t", ("t read as teaspoon",)),
        ("1 t.", ("t read as teaspoon",)),
        ("2#", ("# read as pound",)),
        ("5 oz", ("oz read as weight",)),
        ("5 ounces", ("oz read as weight",)),
        ("5 fl oz", ()),
        ("6 lb 4 oz", ()),
        ("1 Tbsp", ()),
        ("about 2 cups", ("about read as exactly",)),
        ("2 tsp, or to taste", ("to taste left out: the amount counts",)),
        ("1 T + 1 T", ("T read as tablespoon",)),
    ],
)
def test_doubtful_words_say_how_they_were_read(written: str, readings: tuple[str, ...]) -> None:
    """A letter, mark or word with more than one meaning leaves a note, once."""
    assert readings == parse_amount(written).readings


@pytest.mark.parametrize("written", ["to taste", "To taste", "as needed", " to taste "])
def test_to_taste_says_no_amount(written: str) -> None:
    """ "To taste" is an amount that nobody knows, never zero."""
    amount = parse_amount(written)

    assert (AmountKind.TO_TASTE, None, None, "") == (
        amount.kind,
        amount.low,
        amount.high,
        amount.unit,
    )
    assert "to taste" == str(amount)
    assert amount == amount.times(3)
    for ask in (lambda: amount.middle, lambda: to_g(amount), lambda: to_ml(amount)):
        with pytest.raises(QuantityError, match="says no amount"):
            ask()


def test_to_taste_keeps_its_form() -> None:
    """A form word beside "to taste" is kept, and reads back."""
    amount = parse_amount("ground, to taste")

    assert ("ground",) == amount.form
    assert amount == parse_amount(str(amount))


@pytest.mark.parametrize(
    ("written", "value", "unit"),
    [
        ("1 cup + 2 Tbsp", Fraction(9, 8), "cup"),
        ("1 cup plus 2 Tbsp", Fraction(9, 8), "cup"),
        ("1 cup and 2 Tbsp", Fraction(9, 8), "cup"),
        ("1 cup, 2 Tbsp", Fraction(9, 8), "cup"),
        ("1 cup 2 Tbsp", Fraction(9, 8), "cup"),
        ("6 lb 4 oz", Fraction(25, 4), "pound"),
        ("6lb4oz", Fraction(25, 4), "pound"),
        ("1 kg 250 g", Fraction(5, 4), "kilogram"),
        ("1 Tbsp + 1 tsp + 1/2 tsp", Fraction(3, 2), "tablespoon"),
        ("1 cup + 1 cup", Fraction(2), "cup"),
    ],
)
def test_sums_are_exact_in_the_first_unit(written: str, value: Fraction, unit: str) -> None:
    """What is written as a sum is one amount."""
    amount = parse_amount(written)

    assert (value, value, unit) == (amount.low, amount.high, amount.unit)


def test_a_sum_with_a_range_is_a_range() -> None:
    """Both ends take the other terms."""
    amount = parse_amount("1-2 cups + 2 Tbsp")

    assert (Fraction(9, 8), Fraction(17, 8)) == (amount.low, amount.high)
    assert Fraction(13, 8) == amount.middle


@pytest.mark.parametrize(
    ("cup", "written", "unit"),
    [
        ("us", "1 cup", "cup"),
        ("metric", "1 cup", "metric_cup"),
        ("metric", "1 T", "metric_tablespoon"),
        ("metric", "1 tsp", "metric_teaspoon"),
        ("metric", "1 fl oz", "fluid_ounce"),
        ("metric", "1 US cup", "cup"),
        ("metric", "1 label cup", "label_cup"),
        ("label", "1 cup", "label_cup"),
        ("label", "1 fl oz", "label_fluid_ounce"),
        ("label", "1 oz", "ounce"),
        ("label", "1 cup 2 Tbsp", "label_cup"),
    ],
)
def test_the_recipe_says_whose_cup(cup: str, written: str, unit: str) -> None:
    """A bare cup or spoon is the recipe's; a named one is what it says."""
    assert unit == parse_amount(written, cup=cup).unit


def test_err_unknown_cup() -> None:
    """There are three traditions."""
    with pytest.raises(UnitError, match='no cup is called "imperial"'):
        parse_amount("1 cup", cup="imperial")


# Word for word; the one place where wording is tested.
REFUSED = [
    ("3", 'amount "3" has no unit',
     'an amount needs a unit, such as "3 cloves", "1 medium" or "3 tsp"'),
    ("1 cpu", 'amount "1 cpu" has no unit I know', 'did you mean "cup"?'),
    ("2 tbspn", 'amount "2 tbspn" has no unit I know', 'did you mean "tbsp" or "tbsps"?'),
    ("1,5 cup", 'amount "1,5 cup" has a comma inside a number', "write 1.5"),
    ("1,000 g", 'amount "1,000 g" has a comma inside a number', "write 1000 or 1.000"),
    ("-2 cups", 'amount "-2 cups" is negative', "write an amount above zero"),
    ("−2 cups", 'amount "−2 cups" is negative', "write an amount above zero"),
    ("0 cups", 'amount "0 cups" is zero', "leave the ingredient out, or write how much"),
    ("0-1 tsp", 'amount "0-1 tsp" starts at zero', "write the least you would use"),
    ("nan cups", 'amount "nan cups" is not a number', "write an amount such as 1 1/2 cups"),
    ("inf g", 'amount "inf g" is not a number', "write an amount such as 1 1/2 cups"),
    ("1e3 g", 'amount "1e3 g" has an exponent', "write the number out"),
    ("1001 kg", 'amount "1001 kg" is absurdly large: more than 1000 kg', "check number and unit"),
    ("1001 L", 'amount "1001 L" is absurdly large: more than 1000 L', "check number and unit"),
    ("10001 cloves", 'amount "10001 cloves" is absurdly large: more than 10,000 pieces',
     "check number and unit"),
    ("1/0 cup", 'amount "1/0 cup" divides by zero', ""),
    ("1–1/2 cup", 'amount "1–1/2 cup" runs backwards', "did you mean 1 1/2?"),
    ("1 cup to 1 Tbsp", 'amount "1 cup to 1 Tbsp" runs backwards',
     "write the smaller amount first"),
    ("1 cup (240 mL)", 'amount "1 cup (240 mL)" has a second amount in brackets',
     "write one amount, and the other in a note"),
    ("1 cup 240 mL", 'amount "1 cup 240 mL" is two amounts side by side',
     'write a "+" between them, or only one of them'),
    ("1 lb 16 oz", 'amount "1 lb 16 oz" is two amounts side by side',
     'write a "+" between them, or only one of them'),
    ("1 cup soy", 'amount "1 cup soy" has a word I do not know: "soy"', "put remarks in a note"),
    ("2 cloves, minsed", 'amount "2 cloves, minsed" has a word I do not know: "minsed"',
     'did you mean "minced" or "mashed"?'),
    ("2 heaping tsp", 'amount "2 heaping tsp" says "heaping", which cannot be scaled',
     'write how much, such as "1 tsp", or "to taste"'),
    ("a few sprigs", 'amount "a few sprigs" says "few", which cannot be scaled',
     'write how much, such as "1 tsp", or "to taste"'),
    ("cups", 'amount "cups" has no number', 'write it as in "1 cup"'),
    ("packed", 'amount "packed" has no number',
     "write an amount such as 1 1/2 cups, or to taste"),
    ("3 inches", 'amount "3 inches" is a length, not an amount of food',
     "write a volume, a weight or a count"),
    ("2 hours", 'amount "2 hours" is a time, not an amount of food',
     "write a volume, a weight or a count"),
    ("1 12-ounce can", 'amount "1 12-ounce can" has two numbers in a row',
     "write one amount, and the rest in a note"),
    ("12 oz can", 'amount "12 oz can" has two units', "write one amount, and the rest in a note"),
    ("1 cup +", 'amount "1 cup +" ends in the middle of a sum or range', ""),
    ("1 clove + 1 slice",
     'amount "1 clove + 1 slice" does not add up: '
     "slice (count) does not turn into clove (count)", "write it in one unit"),
    ("1 cup + 3 oz",
     'amount "1 cup + 3 oz" does not add up: ounce (mass) does not turn into cup (volume)',
     "write it in one unit"),
    ("1-2 cups to 3 cups", 'amount "1-2 cups to 3 cups" is more than one range',
     "write one range, in one unit"),
    ("1 cup / 2", 'amount "1 cup / 2" has a mark that cannot be read: /',
     "write an amount such as 1 1/2 cups"),
    ("350 °F", 'amount "350 °F" has a mark that cannot be read: °',
     "write an amount such as 1 1/2 cups"),
]  # fmt: skip


@pytest.mark.parametrize(("written", "message", "hint"), REFUSED)
def test_err_amounts_say_what_to_write(written: str, message: str, hint: str) -> None:
    """What cannot be taken says why, and what to write instead."""
    with pytest.raises(AmountError) as caught:
        parse_amount(written)

    assert (message, hint, written) == (
        str(caught.value),
        caught.value.hint,
        caught.value.text,
    )


@pytest.mark.parametrize("written", ["1000 kg", "1000 L", "10000 cloves", "0.000001 g", "1/48 tsp"])
def test_the_edges_are_accepted(written: str) -> None:
    """The largest amounts that are believed, and very small ones, are read."""
    amount = parse_amount(written)

    assert amount.low is not None and amount.low > 0


@pytest.mark.parametrize("written", ["0 g", "0-1 g"])
def test_zero_is_an_amount_on_a_panel(written: str) -> None:
    """Where the caller says so, zero is read as zero."""
    assert 0 == parse_amount(written, zero=True).low


@pytest.mark.parametrize(
    ("written", "expected"),
    [
        ("6lb", Fraction("2721.55422")),
        ("6 lb 4 oz", Fraction("2834.9523125")),
        ("6lb4oz", Fraction("2834.9523125")),
        ("100 oz", Fraction("2834.9523125")),
        ("2.7kg", 2700),
        ("2700 g", 2700),
        ("2½ lb", Fraction("1133.980925")),
        ("6#", Fraction("2721.55422")),
    ],
)
def test_weights_for_meat(written: str, expected: Fraction | int) -> None:
    """A weight in any usual unit, or in two, gives exact grams."""
    assert expected == parse_mass(written)


@pytest.mark.parametrize(
    ("written", "message", "hint"),
    [
        ("6", 'weight "6" has no unit', "write 6 lb or 6 kg"),
        ("4 pounds 6", 'weight "4 pounds 6" has no unit', "write 4 lb 6 oz if you mean that"),
        ("4lb6 1/2", 'weight "4lb6 1/2" has no unit', "write 4 lb 6 1/2 oz if you mean that"),
        ("2 kg 300", 'weight "2 kg 300" has no unit', "write 2 kg 300 g if you mean that"),
        ("4 lb to 6", 'weight "4 lb to 6" has no unit', "write 6 lb or 6 kg"),
        ("6 cups", 'weight "6 cups" is no weight', "write 6 lb, 2.7 kg or 2700 g"),
        ("3 steaks", 'weight "3 steaks" is no weight', "write 6 lb, 2.7 kg or 2700 g"),
        ("to taste", 'weight "to taste" is no weight', "write 6 lb, 2.7 kg or 2700 g"),
        ("6-7 lb", 'weight "6-7 lb" is a range', "give one weight"),
        ("0 lb", 'weight "0 lb" is zero', ""),
        ("-6 lb", 'weight "-6 lb" is negative', "write an amount above zero"),
        ("2300 lb", 'weight "2300 lb" is absurdly large: more than 1000 kg',
         "check number and unit"),
        ("6 ib", 'weight "6 ib" has no unit I know', "write 6 lb or 6 kg"),
        ("6 grms", 'weight "6 grms" has no unit I know', 'did you mean "grams" or "gms"?'),
        ("", "weight is empty", "write an amount such as 1 1/2 cups"),
    ],
)  # fmt: skip
def test_err_weights(written: str, message: str, hint: str) -> None:
    """What is no single weight is refused, word for word."""
    with pytest.raises(AmountError) as caught:
        parse_mass(written)

    assert (message, hint) == (str(caught.value), caught.value.hint)


@pytest.mark.parametrize(
    ("written", "expected"),
    [
        ("1/4 in", (6.35, 6.35, 6.35)),
        ('1/4"', (6.35, 6.35, 6.35)),
        ("¼ inch", (6.35, 6.35, 6.35)),
        ("6 mm", (6.0, 6.0, 6.0)),
        ("0.6 cm", (6.0, 6.0, 6.0)),
        ("5-7 mm", (5.0, 6.0, 7.0)),
        ("1/8 to 1/4 inch", (3.175, 4.7625, 6.35)),
        ("300 mm", (300.0, 300.0, 300.0)),
    ],
)
def test_thickness(written: str, expected: tuple[float, float, float]) -> None:
    """Low, middle and high of a thickness in millimeters."""
    assert expected == parse_length_mm(written)


@pytest.mark.parametrize(
    "written", ["6", "6 g", "0 mm", "-6 mm", "301 mm", "to taste", "", "6 mmm", "7-5 mm"]
)
def test_err_thickness(written: str) -> None:
    """What is no length between zero and 300 mm is refused."""
    with pytest.raises(AmountError, match=r"^length "):
        parse_length_mm(written)


def test_grams_and_milliliters_of_both_ends() -> None:
    """An amount converts within its own dimension, exactly; never across."""
    assert (Fraction("453.59237"), Fraction("907.18474")) == to_g(parse_amount("1-2 lb"))
    assert (Fraction("14.78676478125"),) * 2 == to_ml(parse_amount("1 Tbsp"))
    with pytest.raises(UnitError, match="does not turn into gram"):
        to_g(parse_amount("1 Tbsp"))
    with pytest.raises(UnitError):
        to_ml(parse_amount("1 clove"))


def test_amounts_are_equal_if_they_mean_the_same() -> None:
    """How it was written and read does not count."""
    assert parse_amount("1 1/2 T packed") == parse_amount("packed 1-½ tablespoons")
    assert parse_amount("1 cup") != parse_amount("16 Tbsp")


@pytest.mark.parametrize("by", [0, -1, Fraction(-1, 2)])
def test_err_scaling_by_nothing(by: Fraction | int) -> None:
    """A factor of zero or less means nothing."""
    with pytest.raises(QuantityError, match="above zero"):
        parse_amount("1 cup").times(by)


INGREDIENT_UNITS = sorted(
    one.name
    for one in units().values()
    if one.dimension in (Dimension.MASS, Dimension.VOLUME, Dimension.COUNT)
)
NUMBERS = st.fractions(min_value=Fraction(1, 64), max_value=200, max_denominator=96)


@st.composite
def amounts(draw: st.DrawFn) -> Amount:
    """Draw an amount such as reading gives: any unit, range or not, any form words."""
    unit = draw(st.sampled_from(INGREDIENT_UNITS))
    low, high = sorted((draw(NUMBERS), draw(NUMBERS)))
    words = sorted(set(FORMS.values()))
    if unit in SIZES:  # "2 small halves" counts halves
        words = [word for word in words if read_unit(word) is None]
    form = draw(st.lists(st.sampled_from(words), unique=True, max_size=3))
    named = unit in THEIR_OWN_NAME - {"fruit"} or unit in SIZES
    if units()[unit].dimension is Dimension.COUNT and not named:
        form += draw(st.lists(st.sampled_from(sorted(SIZES)), max_size=1))
    return Amount(
        low=low,
        high=draw(st.sampled_from((low, high))),
        unit=unit,
        form=tuple(sorted(form, key=place_of)),
    )


@given(amounts())
def test_printed_amounts_read_back_the_same(amount: Amount) -> None:
    """Print, read is the same amount, whatever unit and form."""
    assert amount == parse_amount(str(amount))


@given(amounts(), NUMBERS, NUMBERS)
def test_scaling_by_one_factor_then_another(amount: Amount, a: Fraction, b: Fraction) -> None:
    """Scaled by a and then by b equals scaled by ab, exactly; and the text says so."""
    twice = amount.times(a).times(b)

    assert amount.times(a * b) == twice
    assert str(twice) == twice.text


READERS = (parse_amount, parse_mass, parse_length_mm)


@settings(max_examples=300)
@given(st.one_of(st.text(max_size=220), st.text("0123456789 /.,-+½–TtLlbcupsozg()#", max_size=30)))
def test_any_text_is_read_or_is_an_amount_error(text: str) -> None:
    """No text raises anything but ``AmountError``, whose message fits one line of a terminal."""
    for read in READERS:
        try:
            read(text)
        except AmountError as error:
            assert str(error).isprintable()


SEEDS = (
    "3/4 cup packed", "3 cloves, minced", "6 lb 4 oz", "2 tsp to 1 Tbsp", "½–1 tsp", "to taste",
    "1 medium onion", "a pinch", "1 metric cup", "1 cup plus 2 Tbsp", "1-1/2 T", "2 fl. oz.",
)  # fmt: skip
LETTERS = "abcdefghijklmnopqrstuvwxyz0123456789 /.,-+()–½TtL#\"'\u202e\x00°é１"


def mutated(text: str, chance: random.Random) -> str:
    """Return the text with one to four slips of the finger."""
    chars = list(text)
    for _ in range(chance.randint(1, 4)):
        at = chance.randrange(len(chars) + 1)
        match chance.randrange(3):
            case 0:
                chars.insert(at, chance.choice(LETTERS))
            case 1:
                del chars[at : at + 1]
            case _:
                chars[at : at + 1] = chance.choice(LETTERS)
    return "".join(chars)


def test_slips_of_the_finger_are_read_or_refused() -> None:
    """10,000 amounts with slips: each is refused, or is read and then reads back the same."""
    chance = random.Random(20261125)
    read = 0
    for _ in range(10_000):
        text = mutated(chance.choice(SEEDS), chance)
        try:
            amount = parse_amount(text)
        except AmountError:
            continue
        read += 1
        assert amount == parse_amount(str(amount)), text

    assert read > 100


@pytest.mark.parametrize(
    ("written", "by", "low", "high"),
    [
        ("3/4 cup", Fraction(5, 2), Fraction(15, 8), Fraction(15, 8)),
        ("1-2 cups", Fraction(3), Fraction(3), Fraction(6)),
        ("4 to 6 Tbsp", HALF, Fraction(2), Fraction(3)),
    ],
)
def test_scaling_by_hand(written: str, by: Fraction, low: Fraction, high: Fraction) -> None:
    """Both ends of an amount are multiplied, and a range stays one."""
    scaled = parse_amount(written).times(by)

    assert (low, high) == (scaled.low, scaled.high)


@pytest.mark.parametrize(("most", "beyond"), [("1000 kg", "1000000.5 g"), ("1000 L", "1000001 mL")])
def test_the_largest_amount_is_as_large_as_it_says(most: str, beyond: str) -> None:
    """A ton, or its volume, is let in; half a gram or a milliliter more is not."""
    assert 1000 == parse_amount(most).low
    with pytest.raises(AmountError, match="absurdly large"):
        parse_amount(beyond)


@pytest.mark.parametrize(
    ("written", "form"),
    [
        ("1 us cup packed", ("packed",)),
        ("1 us fl oz packed", ("packed",)),
        ("1 cup - packed", ("packed",)),
        ("1 cup chopped packed", ("chopped", "packed")),
        ("one or two cups packed", ("packed",)),
    ],
)
def test_form_words_behind_other_words(written: str, form: tuple[str, ...]) -> None:
    """No word before it swallows a form word or turns it into another."""
    assert form == parse_amount(written).form


def test_or_between_two_amounts_is_a_range() -> None:
    """One cup or two: from one to two."""
    amount = parse_amount("1 cup or 2 cups")

    assert (1, 2) == (amount.low, amount.high)


def test_a_dash_between_two_amounts_is_a_range() -> None:
    """Whatever digits the second begins with."""
    amount = parse_amount("2 tsp - 13 tsp")

    assert (2, 13) == (amount.low, amount.high)


@pytest.mark.parametrize(
    ("written", "message"),
    [
        ("1 cup + 1 Tbsp to 2 cups", "is more than one range"),
        ("1 and", "ends in the middle of a sum or range"),
        ("2 cups as packed", 'a word I do not know: "as"'),
        ("1 cup if needed", 'a word I do not know: "if"'),
        ("1 cup purée", 'a word I do not know: "purée"'),
        ("一 cup", r"a character that cannot be read: U\+4E00"),
        ("1, 5 cups", "a comma inside a number"),
    ],
)
def test_err_by_what_is_wrong(written: str, message: str) -> None:
    """The refusal names the slip itself: the sum, the word, the letter, the comma."""
    with pytest.raises(AmountError, match=message):
        parse_amount(written)
