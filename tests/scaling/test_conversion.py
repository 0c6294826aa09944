"""One amount of one food in another unit."""

from __future__ import annotations

from fractions import Fraction

import pytest

from tarebook.findings import AmountError, AskedWrongly, FoodUnknown, UnitError
from tarebook.scaling.conversion import converted


@pytest.mark.published
@pytest.mark.parametrize(
    ("amount", "name", "to", "value"),
    [
        # SR26 household weights, there and back.
        ("3/4 cup packed", "brown-sugar", None, 165),
        ("220 g packed", "brown-sugar", "cups", 1),
        ("339 g", "honey", None, 1),
        ("1 cup", "honey", "g", 339),
        ("2 cloves", "garlic", None, 6),
    ],
)
def test_there_and_back(amount: str, name: str, to: str | None, value: int) -> None:
    """Volume to mass and mass to volume go through one density, exactly."""
    found = converted(amount, name, to)

    assert (value, value) == (found.low, found.high)


@pytest.mark.parametrize(
    ("amount", "to", "value"),
    [
        ("1 cup", "Tbsp", Fraction(16)),
        ("1 quart", "fl oz", Fraction(32)),
        ("1 lb", "g", Fraction("453.59237")),
        ("0.5 kg", "oz", Fraction(500) / Fraction("28.349523125")),
    ],
)
def test_within_one_kind_nothing_is_assumed(amount: str, to: str, value: Fraction) -> None:
    """Cups to spoons and pounds to grams are exact for any food, density or none."""
    found = converted(amount, "salt", to)

    assert value == found.low
    assert found.mass is None
    assert "exact: only the unit changes" == found.lines()[-1]


def test_the_answer_names_density_form_source_and_doubt() -> None:
    """A cook reads by which density, of which form, who says so, and how sure it is."""
    first, second, third = converted("3/4 cup packed", "brown-sugar").lines()

    assert "3/4 cup packed brown sugar = 165 grams" == first
    assert "density 0.9299 g/mL, packed" == second
    assert third.startswith("source sr26 (measured); good to about 7%")


def test_an_unsaid_form_is_said_and_doubted() -> None:
    """Where the form is not said, the answer says which was taken, and is less sure."""
    told, untold = converted("1 cup packed", "brown-sugar"), converted("1 cup", "brown-sugar")

    assert "form not said" in " ".join(untold.lines())
    assert told.mass is not None and untold.mass is not None
    assert told.mass.doubt < untold.mass.doubt


def test_an_ounce_is_a_weight_and_says_so() -> None:
    """Ounces of a liquid are weight, and the answer says that they were read so."""
    assert "oz read as weight" == converted("8 oz", "soy-sauce").lines()[-1]
    assert "read as" not in " ".join(converted("8 fl oz", "soy-sauce").lines())


def test_a_range_stays_a_range() -> None:
    """Two to three spoons are two weights."""
    found = converted("2-3 tsp ground", "black-pepper")

    assert (Fraction("4.6"), Fraction("6.9")) == (found.low, found.high)
    assert "= 4.6 to 6.9 grams" in found.lines()[0]


def test_the_data_holds_what_the_lines_say() -> None:
    """The same answer as plain data, its keys stable and its units in their names."""
    data = converted("3/4 cup packed", "brown-sugar").data()

    assert {
        "amount": "3/4 cup packed",
        "food": "brown-sugar",
        "unit": "gram",
        "low": 165.0,
        "high": 165.0,
        "how": "by volume",
        "source": "sr26",
        "confidence": "measured",
    }.items() <= data.items()
    assert {"density_g_per_ml", "doubt_fraction", "note"} <= set(data)
    assert 0.9299 == pytest.approx(data["density_g_per_ml"], abs=1e-4)


@pytest.mark.parametrize(
    ("amount", "name", "to", "error", "says"),
    [
        ("1 tsp", "salt", None, UnitError, "say which salt it is"),
        ("1 tsp", "curing-salt-1", None, UnitError, "never measured by the spoon"),
        ("5 g", "curing-salt-1", "tsp", UnitError, "never measured by the spoon"),
        ("3 cloves", "honey", None, UnitError, "nobody has stated"),
        ("1 cup", "honey", "furlongs", AskedWrongly, "furlongs"),
        ("1 cup", "honey", "cupps", AskedWrongly, "did you mean cup"),
        ("1 cup", "honey", "inch", AskedWrongly, "mass or volume"),
        ("1 cup", "honey", "cloves", AskedWrongly, "mass or volume"),
        ("to taste", "honey", None, AmountError, "no size"),
        ("3", "honey", None, AmountError, "unit"),
        ("0 cups", "honey", None, AmountError, "zero"),
        ("1 cup", "hunney", None, FoodUnknown, "did you mean honey"),
    ],
)
def test_what_cannot_be_answered(
    amount: str, name: str, to: str | None, error: type[Exception], says: str
) -> None:
    """No density, no unit, no size, no food: each is told in its own words, none guessed."""
    with pytest.raises(error, match=says):
        converted(amount, name, to)


def test_a_stick_is_cut_by_its_maker() -> None:
    """A stick of butter weighs 113 g (SR26) to a few grams, unlike a clove; grams have decimals."""
    first, basis = converted("1/2 stick", "butter").lines()

    assert "1/2 stick butter, salted = 56.5 grams" == first
    assert "good to about 3% either way" in basis
    assert "good to about 25% either way" in converted("1 clove", "garlic").lines()[1]


def test_kitchen_fractions_stand_where_cooks_use_them() -> None:
    """Cups come in halves, grams and millilitres in decimals."""
    assert "= 1 1/2 cups" in converted("24 Tbsp", "honey", "cups").lines()[0]
    assert "= 2.5 milliliters" in converted("5/2 mL", "honey", "mL").lines()[0]
