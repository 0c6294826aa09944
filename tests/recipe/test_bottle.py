"""A bottle of the cook's own: read from its file, every fault told at its line."""

from __future__ import annotations

import tomllib
from fractions import Fraction

import pytest

from tarebook.recipe.bottle import ALLERGENS, PACK, SOURCE, TABLES, TOP, read_bottle
from tarebook.recipe.fields import value_of
from tarebook.recipe.keys import Key
from tarebook.recipe.model import Bottle
from tarebook.toml.syntax import exact

LAKESIDE = """\
name = "Lakeside soy sauce"
like = "shoyu"

[panel]
serving = "1 Tbsp (17 g)"
sodium = "575 mg"
sugars = "0 g"
saturated = "0 g"
vitamin-d = "0 mcg"

[pack]
size = "15 fl oz"
price = 3.49

[allergens]
contains = ["soybeans", "wheat"]
check = ["sesame"]

[source]
from = "fooddata-central"
id = "174278"
date = "2026-11-20"
"""


def bottle(text: str) -> Bottle:
    """Return the bottle of a text without faults."""
    found, findings = read_bottle(text, key="lakeside-soy", file="lakeside-soy.toml")
    assert found is not None, [str(one) for one in findings]
    return found


def faults(text: str) -> list[str]:
    """Return everything that is wrong with a text, as it is printed."""
    found, findings = read_bottle(text, key="b", file="b")
    assert found is None
    return [str(one) for one in findings]


def test_a_whole_bottle() -> None:
    """Every table of the file arrives: panel, pack, allergens, source; the food by its key."""
    found = bottle(LAKESIDE)

    assert ("lakeside-soy", "Lakeside soy sauce", "soy-sauce") == found[:3]
    assert found.panel is not None and found.pack is not None
    assert (575, 0, 0, 0) == (
        found.panel.sodium_mg,
        found.panel.sugars_g,
        found.panel.saturated_g,
        found.panel.vitamin_d_ug,
    )
    assert Fraction(17, 15) == found.panel.g_per_ml
    assert ("15 fl oz", Fraction(349, 100)) == (str(found.pack.size), found.pack.price)
    assert (("soybeans", "wheat"), ("sesame",)) == (found.contains, found.check)
    assert ("fooddata-central", "174278", "2026-11-20") == found[-3:]


def test_only_what_it_is_like_is_needed() -> None:
    """All else may be left out: then it is the food of the tables by another name."""
    found = bottle('like = "soy-sauce"')

    assert "lakeside soy" == found.name
    assert (None, None, None, ()) == found[3:7]
    assert "own bottle" == found.origin


def test_a_serving_alone_tells_the_density() -> None:
    """A panel may print no figure that is copied: its volume and weight are worth having."""
    found = bottle('like = "honey"\n[panel]\nserving = "1 Tbsp (21 g)"').panel

    assert found is not None and Fraction(21, 15) == found.g_per_ml


def test_what_it_may_hold_tells_that_the_list_was_read() -> None:
    """A list of traces alone means that the pack lists nothing as contained."""
    assert () == bottle('like = "honey"\n[allergens]\ncheck = ["sesame"]').contains


@pytest.mark.parametrize(
    ("was", "put", "expected"),
    [
        ('like = "shoyu"', "", 'b:1: error: like is missing (like); as in like = "soy-sauce"'),
        (
            '"shoyu"',
            '"soy-sauc"',
            'b:2: error: no food is called "soy-sauc" (like); did you mean "soy-sauce" or '
            '"soy-sauce-hvp"?',
        ),
        (
            '"shoyu"',
            '"curing-salt-1"',
            "b:2: error: a curing salt is no bottle of your own (like); name it in the recipe, "
            "with its strength from the pack",
        ),
        ("name =", "nmae =", 'b:1: error: "nmae" is no key of a bottle (nmae); '
         'did you mean "name"?'),
        ("name =", "title =", 'b:1: error: "title" is no key of a bottle (title); did you mean '
         '"name"?'),
        ("name =", "sodium =", 'b:1: error: "sodium" is no key of a bottle (sodium); it belongs '
         "in [panel]"),
        ("[pack]", "[pak]", 'b:11: error: "pak" is no key of a bottle (pak); did you mean "pack"?'),
        (
            "sodium =",
            "sodum =",
            'b:6: error: "sodum" is no key of [panel] (panel.sodum); did you mean "sodium"?',
        ),
        ('"575 mg"', "575", "b:6: error: sodium 575 has no unit (panel.sodium); write it in quotes "
         'with its unit, as in sodium = "580 mg"'),
        ('"575 mg"', '"57.5 g"', "b:4: error: its parts weigh 146 g, more than the serving "
         "(panel); are the figures for one serving?"),
        ("3.49", '"3.49"', "b:13: error: price takes a number, not words (pack.price); "
         "as in price = 3.49"),
        ("3.49", "-1", "b:13: error: a price lies between 0 and 1,000,000 (pack.price)"),
        ('"15 fl oz"', '"to taste"', "b:12: error: a pack holds one amount with a unit "
         '(pack.size); as in size = "15 fl oz"'),
        ('["sesame"]', '"sesame"', "b:17: error: check takes a list of words, not words "
         '(allergens.check); as in check = ["sesame"]'),
        ('"fooddata-central"', '"hearsay"', 'b:20: error: from cannot be "hearsay" (source.from); '
         'choose one of "own bottle", "fooddata-central"'),
    ],
)  # fmt: skip
def test_a_fault_is_told_at_its_line(was: str, put: str, expected: str) -> None:
    """Each fault with file, line, key, and what to write instead."""
    assert [expected] == faults(LAKESIDE.replace(was, put))


def test_all_faults_are_told_at_once() -> None:
    """One bad line hides no other."""
    text = LAKESIDE.replace("575 mg", "575").replace("3.49", "true").replace("shoyu", "xyzzy")

    assert [2, 6, 13] == [int(one.split(":")[1]) for one in faults(text)]


@pytest.mark.parametrize("text", ["", "like =", "= 3", "like = 3", "[[panel]]\nx = 1"])
def test_what_is_no_bottle_is_refused(text: str) -> None:
    """Nothing, half a line, and other things than words: a fault, never a crash."""
    assert faults(text)


@pytest.mark.parametrize("known", [TOP, PACK, ALLERGENS, SOURCE])
def test_every_example_is_taken(known: dict[str, Key]) -> None:
    """A hint never offers what the reader would refuse."""
    assert TABLES == {"pack": PACK, "allergens": ALLERGENS, "source": SOURCE}
    for key in known.values():
        value = tomllib.loads(f"x = {key.example}", parse_float=exact)["x"]
        assert value_of(value, key) is not None
