"""The one way of setting a file down."""

from __future__ import annotations

import pytest

from tarebook.toml.layout import COLUMNS, list_text, text_of_page
from tarebook.toml.pieces import pieces


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("a='x'   # y", 'a = "x"  # y\n'),
        ("'a'   =1", "a = 1\n"),
        ("'a b'=1\n7-up=2", '"a b" = 1\n7-up = 2\n'),
        ("a . 'b' = 1", "a.b = 1\n"),
        ("[ a . 'b' ]", "[a.b]\n"),
        ("a=1\n[b]\nc=1", "a = 1\n\n[b]\nc = 1\n"),
        ("a=1\n\n\n\nb=2", "a = 1\n\nb = 2\n"),
        ("[b]\n\nc=1", "[b]\nc = 1\n"),
        ("a={b=1,c='x'}", 'a = { b = 1, c = "x" }\n'),
        ("a={}\nb=[ ]", "a = {}\nb = []\n"),
        ("a=['x',\n'y']", 'a = ["x", "y"]\n'),
        ("a=['x.','y.']", 'a = [\n    "x.",\n    "y.",\n]\n'),
        ("a=['x.']", 'a = ["x."]\n'),
        ("a=[ # b\n'x' # c\n]", 'a = [\n    # b\n    "x",  # c\n]\n'),
        ("a = 'say \"x\"'", "a = 'say \"x\"'\n"),
        ("a = 'it\\n'", "a = 'it\\n'\n"),
        ('a = "\\u00bd"', 'a = "½"\n'),
        ('a = "\\u0007"', 'a = "\\u0007"\n'),
        ('a = """\nx\n"""', 'a = """\nx\n"""\n'),
        ("[a]  #b\n# c\n\n# d\nk=1", "[a]  #b\n# c\n\n# d\nk = 1\n"),
        ("a=1\n# x\n\nb=2", "a = 1\n# x\n\nb = 2\n"),
        ("#:s\na=1", "#:s\na = 1\n"),
        ("# b\u2028c\u00a0 \t\na=1", "# b\u2028c\u00a0\na = 1\n"),
        ("# h\n\n[a]\n# end", "# h\n\n[a]\n# end\n"),
        ("[a]\nk=1\n\n# end", "[a]\nk = 1\n\n# end\n"),
    ],
)
def test_how_it_looks(text: str, expected: str) -> None:
    """Each thing has one way of being written, and once written so it stays."""
    assert expected == text_of_page(pieces(text))
    assert expected == text_of_page(pieces(expected))


def test_a_list_that_would_be_too_long() -> None:
    """It goes on several lines just where one would be longer than allowed."""
    lead = "contains = "
    fits = "x" * (COLUMNS - len(lead) - len('["", "b"]'))

    assert 1 == len(list_text([fits, "b"], lead).splitlines())
    assert 4 == len(list_text([fits + "x", "b"], lead).splitlines())
