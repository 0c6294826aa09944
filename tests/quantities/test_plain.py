"""What was pasted becomes plain characters, or is refused by name."""

from __future__ import annotations

import pytest

from tarebook.findings import AmountError
from tarebook.quantities.plain import LONGEST, plain, quoted


@pytest.mark.parametrize(
    ("written", "expected"),
    [
        ("½ cup", "1/2 cup"),
        ("1½ cups", "1 1/2 cups"),
        ("1 ½ cups", "1 1/2 cups"),
        ("1-½ cups", "1-1/2 cups"),
        ("1⁄2 cup", "1/2 cup"),
        ("½½", "1/2 1/2"),
        ("½2", "1/2 2"),
        ("2–3 tsp", "2–3 tsp"),
        ("2—3 tsp", "2–3 tsp"),
        ("−2 cups", "-2 cups"),
        ("2\u00a0cups", "2 cups"),
        ("2\tcups ", "2 cups"),
        ("¼¾⅓⅔⅛⅜⅝⅞", "1/4 3/4 1/3 2/3 1/8 3/8 5/8 7/8"),
    ],
)
def test_glyphs_dashes_and_spaces(written: str, expected: str) -> None:
    """Every glyph stands for its fraction, and never runs into a digit beside it."""
    assert expected == plain(written)


@pytest.mark.parametrize(
    ("written", "character"),
    [
        ("1\u202e cup", "U+202E (right-to-left override)"),
        ("1\u200f cup", "U+200F (right-to-left mark)"),
        ("1\u200b cup", "U+200B (zero width space)"),
        ("1\x00 cup", "U+0000 (without a name)"),
        ("1\n2 cups", "U+000A (without a name)"),
        ("１ cup", "U+FF11 (fullwidth digit one)"),
        ("٣ cups", "U+0663 (arabic-indic digit three)"),
        ("1² cup", "U+00B2 (superscript two)"),
        ("Ⅳ cups", "U+2163 (roman numeral four)"),
        ("1 🥄", "U+1F944 (spoon)"),
    ],
)
def test_err_character_is_named(written: str, character: str) -> None:
    """A character with no place in an amount is refused, with its code and name."""
    with pytest.raises(AmountError) as caught:
        plain(written)

    assert str(caught.value).endswith(f"has a character that cannot be read: {character}")
    assert written == caught.value.text


def test_err_too_long_is_refused_unread() -> None:
    """More than 200 characters are refused whatever they are, and shown shortened."""
    with pytest.raises(AmountError, match=r'^amount "1{40}…" is 201 characters long$'):
        plain("1" * (LONGEST + 1))
    assert "1" * LONGEST == plain("1" * LONGEST)


@pytest.mark.parametrize("written", ["", "   ", "\t", "\u00a0"])
def test_err_empty(written: str) -> None:
    """An amount of spaces is empty."""
    with pytest.raises(AmountError, match=r"^weight is empty$"):
        plain(written, "weight")


def test_messages_hold_no_control_characters() -> None:
    """What is shown of a text cannot turn a terminal's line around."""
    assert '"a?b?c"' == quoted("a\u202eb\x1bc")


def test_quoted_is_cut_behind_forty() -> None:
    """Forty letters are shown whole, of more the first forty and a sign of it."""
    assert f'"{"a" * 40}"' == quoted("a" * 40)
    assert f'"{"a" * 40}…"' == quoted("a" * 41)
