"""A TOML text taken apart and set down again: nothing lost, nothing read otherwise."""

from __future__ import annotations

import tomllib
from collections import Counter
from itertools import pairwise
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as some

from tarebook.toml.layout import text_of_page
from tarebook.toml.pieces import pieces, remarks_of

ODD_VALUES = (
    "1", "+1_0.5e+3", "true", "nan", "1979-05-27 07:32:00Z", "07:32:00", "0xAF",
    '"a # b"', "'a # b'", '"½ \\u00e9 \\" \\\\"', "'C:\\\\x \"y\"'", '""', "''",
    '"""\n# no remark\n[no]\n"""', "'''x\n= # \"y\"'''", '"""a\\\n   b"""', '"""x"""""',
    "[]", "[ ]", "[1,2,]", '["a", \'b\' ,"c"]', "[[1, [2]], 3]", "[{ a = 1 }, { a = 2 }]",
    "{}", "{ }", "{ a=1,b = 'x' }", '{ food = "x", panel = { a = "1 } g", b.c = [1] } }',
    "[ # IN\n  'a', # IN\n  # IN\n 'b' # IN\n  , 'c'\n # IN\n]", "[ # IN\n]", "[1 # IN\n , # IN\n]",
    "{ a = [ 1, # IN\n 2 ] }", "[ [1, # IN\n 2] ]", "[ 'one.', 'two.' ]",
)  # fmt: skip
HEADERS = ("[t{}]", "[ t{} . 'u v' ]", "[[t{}]]", "['t.{}'] ", "[t{}.u]", "[[ t{}.u ]]")
KEYS = ("k{}", "'k{}'", '"k {}"', "k{} . b", "7k-{}_", '"\\u00e9{}"')
SPACES = ("", " ", "\t", "   ")


@some.composite
def texts(draw: some.DrawFn) -> str:
    """Draw a valid text with every odd thing in it, each remark with a number of its own."""
    lines = []
    for number in range(draw(some.integers(0, 14))):
        kind = draw(some.sampled_from(["row", "row", "row", "header", "remark", "remark", "blank"]))
        space = draw(some.sampled_from(SPACES))
        if kind == "remark":
            line = "# R"
        elif kind == "blank":
            line = ""
        else:
            if kind == "header":
                line = draw(some.sampled_from(HEADERS)).format(number)
            else:
                key = draw(some.sampled_from(KEYS)).format(number)
                value = draw(some.sampled_from(ODD_VALUES))
                line = f"{key}{space}={draw(some.sampled_from(SPACES))}{value}"
            line += space + draw(some.sampled_from(["", "", "# R", "#R"]))
        lines.append(space + line)
    text = "\n".join(lines) + draw(some.sampled_from(["", "\n", "\n\n  "]))
    count = 0
    while " R" in text or "#R" in text or "# IN" in text:
        count += 1
        marks = [mark for mark in ("# R", "#R", "# IN") if mark in text]
        first = min(marks, key=text.index)
        text = text.replace(first, f"# r{count} ends", 1)
    return text


def document(text: str) -> dict[str, Any]:
    """Return what is read; numbers as they are written, so that nan equals itself."""
    return tomllib.loads(text, parse_float=str)


def remarks(text: str) -> Counter[str]:
    """Return the numbered remarks of a text, wherever they stand."""
    words = text.split()
    return Counter(word for word, after in pairwise(words) if after == "ends")


@settings(max_examples=400, deadline=None)
@given(texts())
def test_nothing_is_lost_and_all_reads_the_same(text: str) -> None:
    """Set down again, a text reads the same, has every remark, in order, and stays as it is."""
    found = text_of_page(pieces(text))

    assert document(text) == document(found)
    assert list(remarks(text)) == list(remarks(found))
    assert remarks(text) == remarks(found)
    assert found == text_of_page(pieces(found))


@settings(deadline=None)
@given(texts())
def test_every_remark_is_counted(text: str) -> None:
    """What is counted before a file is written are the remarks that it has, nests of lists apart.

    Those stand in values that are left letter by letter.
    """
    listed = remarks_of(pieces(text))
    counted = [one.split()[1] for one in listed if one.endswith(" ends")]
    apart = Counter(remarks(text)) - Counter(counted)

    assert not Counter(counted) - Counter(remarks(text))
    assert all(f"# {one} ends" in found.raw for one in apart for found in _raws(text, one))


def _raws(text: str, remark: str) -> list[Any]:
    from tarebook.toml.pieces import Raw

    page = pieces(text)
    values = [row.value for table in page.tables for row in table.rows]
    holding = [one for one in values if isinstance(one, Raw) and f"# {remark} ends" in one.raw]
    assert holding, "a remark that is neither counted nor in a value left as it is"
    return holding


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("# a\n\n# b\nk = 1\n", {"head": ("# a",), "k": ("# b",)}),
        ("#:schema x\n# b\nk = 1\n", {"head": ("#:schema x",), "k": ("# b",)}),
        ("j = 1\n# a\n\nk = 1\n", {"head": (), "j": ("# a",), "k": ()}),
        ("j = 1\n# a\nk = 1\n", {"head": (), "j": (), "k": ("# a",)}),
        ("j = 1\n\n# a\n\nk = 1\n", {"head": (), "j": (), "k": ("# a", "")}),
        ("j = 1\n\n\n# a\n\n\n# b\nk = 1\n", {"head": (), "j": (), "k": ("# a", "", "# b")}),
    ],
)
def test_whose_remark_it_is(text: str, expected: dict[str, tuple[str, ...]]) -> None:
    """A remark is of the line below it if no blank parts them, else of the one above."""
    page = pieces(text)
    found = {row.keys[0]: (*row.above, *row.below) for row in page.tables[0].rows}

    assert expected == {"head": page.head, **found}


def test_a_file_of_remarks_only() -> None:
    """It stays what it is."""
    assert "# a\n\n# b\n" == text_of_page(pieces("\n# a\n\n\n# b\n\n"))
