"""Faults on their way: gathered, put in file order, made findings of one visible line."""

from __future__ import annotations

import pytest

from tarebook.findings import AmountError, Severity
from tarebook.toml.fault import (
    MOST_ERRORS,
    Faults,
    Refused,
    TooManyErrors,
    did_you_mean,
    shown,
)
from tarebook.toml.locate import Lines

TEXT = 'title = "x"\n\n[rub]\nhoney = "1 g"\n'


def test_file_order() -> None:
    """Faults come by line, those of one line in the order of finding, keys or lines alike."""
    faults = Faults()
    faults.error("c", "third", path=("rub", "honey"))
    faults.warn("a", "first", path=("title",))
    faults.note("b", "second", line=3)
    faults.error("d", "fourth", path=("rub", "honey", "amount"))
    found = faults.findings("r", Lines(TEXT))
    assert [
        "r:1: warning: first (title)",
        "r:3: note: second",
        "r:4: error: third (rub.honey)",
        "r:4: error: fourth (rub.honey.amount)",
    ] == [str(finding) for finding in found]
    assert 2 == faults.errors


def test_what_is_missing_stands_at_its_table_or_at_the_top() -> None:
    """A key that is not there is told at the table that lacks it, or else at line 1."""
    faults = Faults()
    faults.error("x", "in a table", path=("rub", "soy"))
    faults.error("x", "nowhere", path=("meat",))
    assert [1, 3] == [finding.place.line for finding in faults.findings("r", Lines(TEXT))]


def test_no_file_no_line() -> None:
    """Values that never were a file have no lines to name."""
    faults = Faults()
    faults.error("x", "m", path=("rub",))
    assert ["r: error: m (rub)"] == [str(finding) for finding in faults.findings("r", None)]


def test_too_many_errors_end_the_reading() -> None:
    """At the hundredth error the reading ends; warnings and notes never end it."""
    faults = Faults()
    for _ in range(MOST_ERRORS * 2):
        faults.warn("w", "m")
        faults.note("n", "m")
    for _ in range(MOST_ERRORS - 1):
        faults.error("e", "m")
    with pytest.raises(TooManyErrors):
        faults.error("e", "m")
    last = faults.findings("r", None)[-1]
    assert "r: error: 100 errors; more were not looked for" == str(last)
    assert Severity.ERROR is last.severity


@pytest.mark.parametrize(
    ("refused", "expected"),
    [
        (Refused("code", "no good", hint="try"), ("code", "no good", "try")),
        (AmountError("no\x1bgood", hint="try\n"), ("amount", "no\\x1bgood", "try\\n")),
        (AmountError("x" * 200), ("amount", "x" * 159 + "…", "")),
    ],
)
def test_refuse(refused: Refused | AmountError, expected: tuple[str, str, str]) -> None:
    """What a getter refused becomes an error, with nothing hidden and nothing endless."""
    faults = Faults()
    faults.refuse(refused, ("rub",))
    fault = faults.found[0]
    assert expected == (fault.code, fault.message, fault.hint)
    assert (("rub",), Severity.ERROR) == (fault.path, fault.severity)


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("½ cup", "½ cup"),
        ("a\tb\r\n", "a\\tb\\r\\n"),
        ("\x1b[2J", "\\x1b[2J"),
        ("\u202e", "\\u202e"),
        ("\U000e0001", "\\U000e0001"),
        ("x" * 60, "x" * 60),
        ("x" * 61, "x" * 59 + "…"),
    ],
)
def test_shown(text: str, expected: str) -> None:
    """A cook's text is shown on one line, its hidden characters in plain letters."""
    assert expected == shown(text)


@pytest.mark.parametrize(
    ("near", "expected"),
    [
        ((), ""),
        (("deer",), 'did you mean "deer"?'),
        (("deer", "bear"), 'did you mean "deer" or "bear"?'),
    ],
)
def test_did_you_mean(near: tuple[str, ...], expected: str) -> None:
    """Words that are near are offered in quotes; where none is, nothing is said."""
    assert expected == did_you_mean(near)
