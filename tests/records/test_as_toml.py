"""The book as TOML."""

from __future__ import annotations

import tomllib

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tarebook.records.as_toml import _long

LETTERS = st.characters(exclude_categories=["Cs"])


@given(st.text(LETTERS) | st.text('"\\\n\ra '))
def test_a_long_text_there_and_back(text: str) -> None:
    """A recipe is read as it was, to the letter, however many quotes stand in it."""
    assert text == tomllib.loads(f"text = {_long(text)}\n")["text"]


@pytest.mark.parametrize(
    ("text", "shown"),
    [
        ('title = "Lake"\n', '"""\ntitle = "Lake"\n"""'),
        ("a\r\n", '"""\na\\r\n"""'),
        ('say "', '"""\nsay \\""""'),
    ],
)
def test_how_it_looks(text: str, shown: str) -> None:
    """A recipe looks as it does in its own file; only what must be is escaped."""
    assert shown == _long(text)
