"""TOML values: exact numbers, and how far reading goes on behind a faulty line."""

from __future__ import annotations

from fractions import Fraction

import pytest

from tarebook.toml.fault import Faults
from tarebook.toml.syntax import DEEPEST_KEY, OddNumber, exact, parse


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("0.1", Fraction(1, 10)),
        ("-1_0.5", Fraction(-21, 2)),
        ("2.5e-3", Fraction(1, 400)),
        ("1E2", Fraction(100)),
        ("nan", OddNumber("nan")),
        ("-inf", OddNumber("-inf")),
        ("1e31", OddNumber("1e31")),
        ("1e-999999999", OddNumber("1e-999999999")),
        ("1e" + "9" * 9000, OddNumber("1e" + "9" * 9000)),
        ("0." + "1" * 9000, OddNumber("0." + "1" * 9000)),
    ],
)
def test_exact(text: str, expected: Fraction | OddNumber) -> None:
    """A decimal is exact; what is no number or absurdly long is marked, at once."""
    assert expected == exact(text)


@pytest.mark.parametrize(
    ("text", "lines", "left"),
    [
        ("a = 1/2\nb = 1\nc = ½\nd = 2\n", [1, 3], {"b": 1, "d": 2}),
        ("a = 1\na = 2\nb = 3\n", [2], {"a": 1, "b": 3}),
        ("loose words\nb = 1\n", [1], {"b": 1}),
        ('a = "open\nb = 1\n', [1], {"b": 1}),
    ],
)
def test_a_faulty_line_hides_no_other(text: str, lines: list[int], left: object) -> None:
    """Behind a fault that is one line long the rest is still read."""
    faults = Faults()
    parsed = parse(text, faults)
    assert lines == [fault.line for fault in faults.found]
    assert parsed is not None
    assert (left, False) == (parsed.document, parsed.whole)
    assert text.count("\n") == parsed.text.count("\n")


@pytest.mark.parametrize(
    "text", ["a = [1,\nb = 2\n", 'a = """x\nb = 2\n', "[a\nb = 1\n", "[a]\n[a]\nb = 1\n"]
)
def test_a_fault_of_many_lines_ends_the_reading(text: str) -> None:
    """Where a list, a long text or a section goes wrong, nothing behind it can be trusted."""
    faults = Faults()
    assert parse(text, faults) is None
    assert 1 == len(faults.found)


def test_short_sentences_are_no_deep_key() -> None:
    """Words between points are a key only where a key stands."""
    text = f'steps = "{"Slice. Stir. Soak. " * DEEPEST_KEY}"\n'
    assert parse(text, Faults()) is not None
    assert parse("a" + ".b" * (DEEPEST_KEY - 1) + " = 1\n", Faults()) is not None
    assert parse("a" + ".b" * (DEEPEST_KEY + 1) + " = 1\n", Faults()) is None
    assert parse("[a" + ' . "b"' * (DEEPEST_KEY + 1) + "]\n", Faults()) is None
