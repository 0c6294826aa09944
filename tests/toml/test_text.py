"""From bytes to text: what is a text, and what is refused."""

from __future__ import annotations

import pytest

from tarebook.recipe import read_recipe
from tarebook.toml.fault import Faults
from tarebook.toml.text import MOST_BYTES, text_of

GOOD = """\
title = "Räucherfisch"
[meat]
food = "salmon-chum"
amount = "1 kg"
[rub]
salt-table = "1 tsp"
"""


def read(source: bytes | str) -> tuple[str | None, list[tuple[int | None, str]]]:
    """Return the text, and the line and code of each fault."""
    faults = Faults()
    text = text_of(source, faults, empty_hint="")
    return text, [(fault.line, fault.code) for fault in faults.found]


@pytest.mark.parametrize("source", [GOOD, GOOD.encode()])
def test_a_text_is_taken_as_it_is(source: bytes | str) -> None:
    """UTF-8 needs no word said, with whatever letters the family writes."""
    assert (GOOD, []) == read(source)


def test_a_utf8_mark_is_taken_off() -> None:
    """The mark of some editors is noted and does not become part of the first key."""
    assert (GOOD, [(1, "byte-order-mark")]) == read(b"\xef\xbb\xbf" + GOOD.encode())


@pytest.mark.parametrize(
    "encoding", ["utf-16", "utf-16-le", "utf-16-be", "utf-32", "utf-32-le", "utf-32-be"]
)
def test_other_encodings_are_refused(encoding: str) -> None:
    """UTF-16 and UTF-32 are told with their mark and without it, and nothing else is."""
    text, found = read(GOOD.encode(encoding))
    assert text is None
    assert [(1, "encoding")] == found


@pytest.mark.parametrize(
    ("source", "line"),
    [
        (GOOD.encode("latin-1"), 1),
        (GOOD.encode() + b"# \xff", 7),
        (GOOD.encode() + b"# \xc3", 7),  # cut off inside a letter
        (GOOD.encode() + b"# \xed\xa0\x80", 7),  # half of a UTF-16 pair
        (GOOD.encode().replace(b"\n", b"\r\n") + b"\x00", 7),
        (b"\x00", 1),
    ],
)
def test_the_line_of_a_bad_byte_is_told(source: bytes, line: int) -> None:
    """A byte that is no text is found on its line, however lines end."""
    assert (None, [(line, "encoding")]) == read(source)


@pytest.mark.parametrize("source", [b"", b"\n\n", b"\r\n", b" \t", b"\xef\xbb\xbf\n"])
def test_an_empty_file(source: bytes) -> None:
    """A file without a letter is empty, whatever blanks or marks it has."""
    text, found = read(source)
    assert text is None
    assert (1, "empty") == found[-1]


def test_the_largest_file() -> None:
    """A file of the most bytes is still read; one byte more is refused before it is decoded."""
    fits = GOOD + "#" * (MOST_BYTES - len(GOOD.encode()))
    assert read_recipe(fits, file="r")[0] is not None
    assert (None, [(1, "too-large")]) == read(fits + "#")
    assert (None, [(1, "too-large")]) == read(b"\xff" * (MOST_BYTES + 1))


def test_line_ends_of_another_system_keep_the_lines() -> None:
    """With CR and LF at the end of each line, the faults stand on the lines they stand on."""
    text = GOOD + 'honey = 1/2\npepper = "1 cpu"\n'
    _, expected = read_recipe(text, file="r")
    _, found = read_recipe(text.replace("\n", "\r\n").encode(), file="r")
    assert [7, 8] == [finding.place.line for finding in found]
    assert expected == found


def test_lone_carriage_returns_are_named() -> None:
    """A file whose lines end with CR alone is told so, not blamed for its quotes."""
    recipe, findings = read_recipe(GOOD.replace("\n", "\r").encode(), file="r")
    assert recipe is None
    assert ["r:1: error: a lone carriage return; save the file with usual line ends"] == [
        str(finding) for finding in findings
    ]
