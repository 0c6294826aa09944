"""Units: published factors, words, and the file they come from."""

from __future__ import annotations

import csv
import tomllib
from collections import Counter
from fractions import Fraction

import pytest

from tarebook.findings import UnitError
from tarebook.quantities.units import (
    TRADITIONS,
    Dimension,
    dimension,
    factor,
    read_unit,
    unit,
    unit_text,
    units,
    units_file,
)
from tarebook.where import folder

# given, printed figure, unit, source id, place in the source. All are exact.
PUBLISHED_EXACT = [
    ("pound", "453.59237", "gram", "nist-sp811", "appendix B, pound (avoirdupois)"),
    ("inch", "25.4", "millimeter", "nist-sp811", "appendix B, inch"),
    ("liter", "1000", "milliliter", "nist-sp811", "liter"),
    ("gallon", "231", "cubic_inch", "nist-hb44", "appendix C, gallon (US)"),
    ("gallon", "3.785411784", "liter", "nist-hb44", "appendix C, gallon (US), by inch and liter"),
    ("gallon", "4", "quart", "nist-hb44", "appendix C, liquid quarts"),
    ("quart", "2", "pint", "nist-hb44", "appendix C, liquid pints"),
    ("pint", "16", "fluid_ounce", "nist-hb44", "appendix C, fluid ounces"),
    ("cup", "8", "fluid_ounce", "nist-hb44", "appendix C, cup, measuring"),
    ("cup", "16", "tablespoon", "nist-hb44", "appendix C, tablespoon, measuring"),
    ("tablespoon", "3", "teaspoon", "nist-hb44", "appendix C, teaspoon, measuring"),
    ("pound", "16", "ounce", "nist-hb44", "appendix C, avoirdupois ounces"),
    ("label_teaspoon", "5", "milliliter", "cfr-21-101.9", "(b)(5)(viii)"),
    ("label_tablespoon", "15", "milliliter", "cfr-21-101.9", "(b)(5)(viii)"),
    ("label_fluid_ounce", "30", "milliliter", "cfr-21-101.9", "(b)(5)(viii)"),
    ("label_cup", "240", "milliliter", "cfr-21-101.9", "(b)(5)(viii)"),
    ("label_ounce", "28", "gram", "cfr-21-101.9", "(b)(5)(viii)"),
]

# As printed, rounded; met within half a unit of the last printed digit.
PUBLISHED_ROUNDED = [
    ("teaspoon", "4.928922", "milliliter", "nist-sp811", "appendix B, teaspoon"),
    ("tablespoon", "14.78676", "milliliter", "nist-sp811", "appendix B, tablespoon"),
    ("fluid_ounce", "29.57353", "milliliter", "nist-sp811", "appendix B, ounce (US fluid)"),
    ("cup", "236.5882", "milliliter", "nist-sp811", "appendix B, cup (US)"),
    ("pint", "473.1765", "milliliter", "nist-sp811", "appendix B, pint (US liquid)"),
    ("quart", "946.3529", "milliliter", "nist-sp811", "appendix B, quart (US liquid)"),
    ("ounce", "28.34952", "gram", "nist-sp811", "appendix B, ounce (avoirdupois)"),
    ("cubic_inch", "16.38706", "milliliter", "nist-sp811", "appendix B, cubic inch"),
]

ANCHORS = {"gram", "centimeter", "second", "kelvin"}


@pytest.mark.published
@pytest.mark.parametrize(("given", "printed", "to", "source", "place"), PUBLISHED_EXACT)
def test_defined_factors_are_met_exactly(
    given: str, printed: str, to: str, source: str, place: str
) -> None:
    """A factor that a publication defines is met to the last digit."""
    assert Fraction(printed) == factor(given, to), f"{source}, {place}"


@pytest.mark.published
@pytest.mark.parametrize(("given", "printed", "to", "source", "place"), PUBLISHED_ROUNDED)
def test_rounded_factors_are_met_to_their_last_digit(
    given: str, printed: str, to: str, source: str, place: str
) -> None:
    """A factor that a publication rounds is met within half its last digit."""
    half = Fraction(1, 2 * 10 ** len(printed.partition(".")[2]))

    assert abs(factor(given, to) - Fraction(printed)) <= half, f"{source}, {place}"


@pytest.mark.parametrize("hand", ["dash", "pinch"])
def test_dash_and_pinch_are_a_sixteenth_of_a_teaspoon(hand: str) -> None:
    """By common practice, where a food has no dash weight of its own."""
    assert Fraction(1, 16) == factor(hand, "teaspoon")


def test_every_line_has_a_source_that_is_on_the_list() -> None:
    """No unit without a source, and each source is a row of ``sources.toml``."""
    text = (folder("reference") / "sources.toml").read_text(encoding="utf-8")
    known = {row["id"] for row in tomllib.loads(text)["source"]}

    assert [] == [one.name for one in units().values() if not one.note]
    assert set() == {one.source for one in units().values()} - known


def test_the_file_is_whole() -> None:
    """Rows by what they measure; a lost line shows."""
    rows = Counter(one.dimension.value for one in units().values())
    lines = [line for line in units_file().splitlines() if line and not line.startswith("#")]

    assert {"mass": 6, "length": 3, "volume": 20, "time": 3, "temperature": 3, "count": 59} == rows
    assert len(lines) == len(units())


def test_every_factor_leads_to_one_anchor() -> None:
    """Mass, length, volume, time and temperature are each chained from a single unit."""
    bases = {one.base for one in units().values() if one.dimension is not Dimension.COUNT}

    assert ANCHORS | {"centimeter ** 3"} == bases


def test_no_word_means_two_units() -> None:
    """Each spelling stands for one unit only."""
    words = Counter(word for one in units().values() for word in one.words)

    assert [] == [word for word, times in words.items() if times > 1]


def test_every_counted_thing_of_the_measures_is_a_unit() -> None:
    """A measure in the tables can be written in a recipe."""
    with (folder("reference") / "measures.csv").open(encoding="utf-8", newline="") as file:
        used = {row["unit"] for row in csv.DictReader(file)}

    assert set() == used - set(units())


@pytest.mark.parametrize(
    ("word", "expected"),
    [
        ("tsp", "teaspoon"), ("tsp.", "teaspoon"), ("Teaspoons", "teaspoon"), ("TSP", "teaspoon"),
        ("Tbsp", "tablespoon"), ("tbs", "tablespoon"), ("tablespoon", "tablespoon"),
        ("TBSP.", "tablespoon"), ("t", "teaspoon"), ("T", "tablespoon"), ("T.", "tablespoon"),
        ("c", "cup"), ("C", "cup"), ("cups", "cup"), ("fl oz", "fluid_ounce"),
        ("fl. oz.", "fluid_ounce"), ("Fluid Ounces", "fluid_ounce"), ("floz", "fluid_ounce"),
        ("pint", "pint"), ("pt", "pint"), ("qt", "quart"), ("quarts", "quart"), ("gal", "gallon"),
        ("oz", "ounce"), ("oz.", "ounce"), ("ounces", "ounce"), ("lb", "pound"), ("lbs", "pound"),
        ("lbs.", "pound"), ("#", "pound"), ("pounds", "pound"), ("g", "gram"), ("grams", "gram"),
        ("kg", "kilogram"), ("mg", "milligram"), ("mL", "milliliter"), ("ml", "milliliter"),
        ("ML", "milliliter"), ("L", "liter"), ("l", "liter"), ("litres", "liter"),
        ("dash", "dash"), ("dashes", "dash"), ("pinch", "pinch"), ("drops", "drop"),
        ("cloves", "clove"), ("leaves", "leaf"), ("medium", "medium"), ("ribs", "stalk"),
        ("metric cup", "metric_cup"), ("label Tbsp", "label_tablespoon"), ("in", "inch"),
        ('"', "inch"), ("mm", "millimeter"),
    ],
)  # fmt: skip
def test_words_of_the_kitchen(word: str, expected: str) -> None:
    """Every spelling a cook uses is read; only ``t`` and ``T`` differ by case."""
    assert expected == read_unit(word)


@pytest.mark.parametrize(
    "word", ["", ".", "cpu", "kcup", "mclove", "tesla", "F", "fl", "ts", "[mass]", "cup cup"]
)
def test_other_words_are_no_unit(word: str) -> None:
    """No prefixes are made up, and nothing is guessed."""
    assert read_unit(word) is None


def test_each_unit_reads_back_from_what_is_printed() -> None:
    """One and several of a unit are printed in words that mean the same unit."""
    for name in units():
        for value in (Fraction(1, 2), 1, 2):
            assert name == read_unit(unit_text(name, value))


@pytest.mark.parametrize(
    ("name", "one", "many"),
    [
        ("cup", "cup", "cups"),
        ("teaspoon", "tsp", "tsp"),
        ("leaf", "leaf", "leaves"),
        ("medium", "medium", "medium"),
        ("fluid_ounce", "fl oz", "fl oz"),
        ("metric_cup", "metric cup", "metric cups"),
    ],
)
def test_more_than_one_is_plural(name: str, one: str, many: str) -> None:
    """Up to one is singular, more is plural, symbols never change."""
    assert (one, one, many) == tuple(
        unit_text(name, n) for n in (Fraction(1, 2), 1, Fraction(3, 2))
    )


@pytest.mark.parametrize(
    ("given", "to", "message", "hint"),
    [
        ("cup", "gram", "cup (volume) does not turn into gram (mass)",
         "volume becomes mass only through the density of a food"),
        ("clove", "sprig", "clove (count) does not turn into sprig (count)",
         "a count becomes mass only through the weight of one, food by food"),
        ("fluid_ounce", "ounce", "fluid ounce (volume) does not turn into ounce (mass)",
         "volume becomes mass only through the density of a food"),
        ("inch", "milliliter", "inch (length) does not turn into milliliter (volume)", ""),
        ("celsius", "fahrenheit", "a temperature is not turned by a factor", ""),
        ("cpu", "gram", 'no unit is called "cpu"', "did you mean cup?"),
    ],
)  # fmt: skip
def test_err_factor(given: str, to: str, message: str, hint: str) -> None:
    """What does not convert says both sides and what would bridge them."""
    with pytest.raises(UnitError) as caught:
        factor(given, to)

    assert (message, hint) == (str(caught.value), caught.value.hint)


def test_err_unknown_dimension() -> None:
    """The empty unit of "to taste" has no dimension."""
    with pytest.raises(UnitError, match=r'^no unit is called ""$'):
        dimension("")


def test_traditions_name_units_that_exist() -> None:
    """Each cup tradition maps known units to known units of the same dimension."""
    for mapping in TRADITIONS.values():
        for usual, own in mapping.items():
            assert unit(usual).dimension is unit(own).dimension


def test_only_temperatures_have_a_zero_elsewhere() -> None:
    """No cup is a cup of nothing: what is no temperature begins at nothing."""
    elsewhere = {one.dimension for one in units().values() if one.zero != 0}

    assert {Dimension.TEMPERATURE} == elsewhere
