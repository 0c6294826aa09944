"""Sugars: how they divide, and which count as added."""

import pytest

from tarebook.figures.foods import food, food_keys
from tarebook.figures.nutrients import values
from tarebook.figures.sugars import split

TOLERANCE = 1e-12

ADDED_UP = [  # food, individual sugars as remembered, g per 100 g, total as printed; source sr26
    ("honey", ("0.89", "35.75", "40.94", "1.44", "3.10"), "82.12"),
    ("brown-sugar", ("94.56", "1.35", "1.11"), "97.02"),
    ("agave-syrup", ("55.60", "12.43"), "68.03"),
    ("apple-juice", ("1.26", "2.63", "5.73"), "9.62"),
    ("kiwifruit", ("0.15", "4.11", "4.35"), "8.99"),
    ("mango", ("6.97", "2.01", "4.68"), "13.66"),
    ("papaya", ("4.09", "3.73"), "7.82"),
    ("lemon-juice", ("0.43", "0.99", "1.10"), "2.52"),
]


@pytest.mark.parametrize("key", food_keys())
def test_shares_are_shares(key: str) -> None:
    """A split is wholly known and adds up to one, or wholly not known; so are added shares."""
    found = split(key)
    shares = (found.sucrose, found.hexose, found.other)
    if None in shares:
        assert shares == (None, None, None)
    else:
        assert abs(sum(share or 0.0 for share in shares) - 1) < TOLERANCE
    assert 0 <= found.added_low <= found.added_high <= 1
    assert found.added in ("all", "none", "part", "unknown")


@pytest.mark.parametrize("key", food_keys())
def test_every_food_with_sugars_has_a_row(key: str) -> None:
    """Only a food that holds no sugars goes without a row of its own."""
    if split(key).note == "no sugars in the tables":
        assert (values(key)["sugars_g"] or 0.0) == 0.0, f"give {key} a row in sugars.csv"
        assert values(key)["sugars_g"] is not None or food(key).kind == "salt"


@pytest.mark.parametrize(
    ("name", "sucrose", "hexose"),
    [("table sugar", 1.0, 0.0), ("powdered sugar", 1.0, 0.0), ("dextrose", 0.0, 1.0)],
)
def test_sugars_by_definition(name: str, sucrose: float, hexose: float) -> None:
    """Table sugar is sucrose and dextrose is glucose, by what the words mean."""
    assert (sucrose, hexose) == (split(name).sucrose, split(name).hexose)
    assert split(name).source == "by-definition"


@pytest.mark.parametrize(
    ("name", "source", "confidence"),
    [
        ("maple syrup", "sweetener-splits-2010", "handbook"),
        ("honey", "sr26", "from memory"),
        ("milk", "from-memory", "from memory"),
        ("light corn syrup", "baines-seal-2012", "handbook"),
    ],
)
def test_split_says_who_and_how_sure(name: str, source: str, confidence: str) -> None:
    """A split from memory says that it is from memory."""
    assert (source, confidence) == (split(name).source, split(name).confidence)


@pytest.mark.parametrize("name", ["teriyaki", "hoisin", "barbecue sauce", "jam", "pineapple juice"])
def test_split_that_nobody_gives_is_not_known(name: str) -> None:
    """Where no source divides the sugars, nothing is made up."""
    assert (split(name).sucrose, split(name).hexose, split(name).other) == (None, None, None)


@pytest.mark.parametrize(
    ("name", "added"),
    [
        ("honey", "all"),
        ("maple syrup", "all"),
        ("sugar", "all"),
        ("cola", "all"),
        ("apple juice", "none"),
        ("pineapple", "none"),
        ("milk", "none"),
        ("soy sauce", "none"),
        ("ketchup", "part"),
        ("low-sodium soy sauce", "unknown"),
        ("deer", "none"),
    ],
)
def test_added_class(name: str, added: str) -> None:
    """Syrups and honey are added; whole fruit, plain juice and milk are not."""
    assert added == split(name).added


def test_undiluted_concentrate_is_added_beyond_the_juice() -> None:
    """Of juice concentrate, what exceeds the same volume of juice is added: 44.8 against 8.8 g."""
    found = split("orange-juice-concentrate")
    assert (found.added_low, found.added_high) == (0.804, 0.804)
    assert round(1 - (8.40 * 248) / (37.37 * 284), 3) == found.added_low


@pytest.mark.parametrize(("key", "parts", "total"), ADDED_UP)
def test_remembered_sugars_add_up_to_the_printed_total(
    key: str, parts: tuple[str, ...], total: str
) -> None:
    """Individual sugars from memory are checked against the printed total, within 5 %."""
    remembered = sum(float(part) for part in parts)
    printed = values(key)["sugars_g"]
    assert float(total) == printed
    assert abs(remembered / float(total) - 1) < 0.05
