"""What is said of unknown and missing keys, and what a wrong value is called."""

from __future__ import annotations

from fractions import Fraction

import pytest

from tarebook.recipe import keys
from tarebook.recipe.key_faults import kind_of, number_text, unknown_key
from tarebook.recipe.keys import Key
from tarebook.toml.fault import Faults
from tarebook.toml.locate import KeyPath
from tarebook.toml.syntax import OddNumber


@pytest.mark.parametrize(
    ("value", "expected"),
    [
        (True, "true"),
        (False, "false"),
        (3, "a number"),
        (Fraction(1, 2), "a number"),
        ("x", "words"),
        ([], "a list"),
        ({}, "a table"),
        (OddNumber("nan"), "nan"),
    ],
)
def test_kind_of(value: object, expected: str) -> None:
    """A cook hears of words and numbers; true is never taken for the number one."""
    assert expected == kind_of(value)


@pytest.mark.parametrize(
    ("value", "expected"),
    [
        (12, "12"),
        (Fraction(1, 2), "0.5"),
        (Fraction(1, 100_000), "0.00001"),
        (Fraction(1, 10**30), "0." + "0" * 29 + "1"),
        (10**15, "of more than 15 digits"),
        (-(10**4000), "of more than 15 digits"),
    ],
)
def test_number_text(value: int | Fraction, expected: str) -> None:
    """A number is shown as it is written by hand, never with an exponent, never at length."""
    assert expected == number_text(value)


TABLES: list[tuple[dict[str, Key], KeyPath]] = [
    (dict(keys.TOP), ()),
    (dict(keys.INGREDIENT), ("rub", "x")),
    (dict(keys.PANEL), ("rub", "x", "panel")),
    *[(dict(known), (name,)) for name, known in keys.SECTIONS.items()],
]
OTHER_WORDS = [
    pytest.param(known, path, word, key.name, id=".".join(map(str, (*path, word))))
    for known, path in TABLES
    for key in known.values()
    for word in (*key.also, key.name.upper(), key.name.replace("-", "_") + " ")
    if word != key.name
]


@pytest.mark.parametrize(("known", "path", "word", "name"), OTHER_WORDS)
def test_other_words_for_a_key_are_answered_with_it(
    known: dict[str, Key], path: KeyPath, word: str, name: str
) -> None:
    """Whatever else people call a key, or however they spell it, they are told its name."""
    faults = Faults()
    unknown_key(word, known, path, faults)
    assert [f'did you mean "{name}"?'] == [fault.hint for fault in faults.found]
    assert [(*path, word)] == [fault.path for fault in faults.found]
