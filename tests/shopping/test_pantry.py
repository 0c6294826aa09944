"""The cook's list of the house is read with every fault at once."""

from __future__ import annotations

from fractions import Fraction

import pytest

from tarebook.shopping.pantry import Pantry, read_pantry

LIST = """
currency = "$"
[have]
brown-sugar = "1 lb"
"apple cider vinegar" = "0 cup"
[packs]
shoyu = { size = "15 fl oz", price = 3.49 }
honey = "12 oz"
"""


def read(text: str) -> tuple[Pantry | None, list[str]]:
    """Return the pantry of a text, and its findings as printed."""
    pantry, findings = read_pantry(text.encode(), file="pantry.toml")
    return pantry, [str(one) for one in findings]


def test_a_list_is_read() -> None:
    """Foods by any of their names; packs with and without a price; exact money."""
    pantry, findings = read(LIST)

    assert [] == findings
    assert pantry is not None
    assert {"brown-sugar", "vinegar-cider"} == set(pantry.have)
    assert Fraction("3.49") == pantry.packs["soy-sauce"].price
    assert pantry.packs["honey"].price is None
    assert "$" == pantry.currency


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ('[have]\nsugr = "1 lb"', 'pantry.toml:2: error: no food is called "sugr"'),
        ("[have]\nhoney = 3", "pantry.toml:2: error: an amount is text"),
        ('[have]\nhoney = "1-2 cups"', "one amount is needed, not a range or a taste"),
        ('[have]\nhoney = "to taste"', "one amount is needed"),
        ('[have]\nhoney = "1 cpu"', 'did you mean "cup"'),
        ('[have]\nsoy-sauce = "1 cup"\nshoyu = "1 cup"', "pantry.toml:3: error: "),
        ("have = 3", "[have] must be a table"),
        ('[hve]\nhoney = "1 cup"', 'did you mean "have"'),
        ("[packs]\nhoney = { price = 3 }", "the size of the pack is missing"),
        ('[packs]\nhoney = { size = "1 lb", price = "3" }', "a price is a number"),
        ('[packs]\nhoney = { size = "1 lb", price = -1 }', "a price lies between 0 and 1,000,000"),
        ('[packs]\nhoney = { size = "1 lb", price = true }', "a price is a number"),
        ('[packs]\nhoney = { size = "1 lb", prize = 3 }', '"prize" is no key of a pack'),
        ('[packs]\nhoney = { size = "0 lb" }', "a pack holds more than nothing"),
        ("[packs]\nhoney = 3", "a pack has a size"),
        ('currency = "\\u0007"', "a currency is a short sign or word"),
        ("", "the file is empty"),
    ],
)
def test_err_every_fault_has_its_line_and_its_remedy(text: str, says: str) -> None:
    """Nothing is read of a faulty list, and the fault is said."""
    pantry, findings = read(text)

    assert pantry is None
    assert any(says in one for one in findings), findings


def test_all_faults_are_told_at_once() -> None:
    """Two slips, two findings, in file order."""
    _, findings = read('[have]\nsugr = "1 lb"\nhoney = 3')

    assert ["pantry.toml:2", "pantry.toml:3"] == [one.split(": ")[0] for one in findings]
