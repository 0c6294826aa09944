"""Styled lines, wrapping and columns that count what a terminal shows."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tarebook.cards.lines import Line, Style, clean, pad, plain_text, row, table, width, wrap


@pytest.mark.parametrize(
    ("text", "columns"),
    [("salt", 4), ("½ cup", 5), ("鹿肉", 4), ("cafe\u0301", 4), ("\u200dx", 1), ("", 0)],
)
def test_width_is_what_a_terminal_shows(text: str, columns: int) -> None:
    """Wide letters take two columns, combining ones none."""
    assert columns == width(text)


@pytest.mark.parametrize(
    ("text", "cleaned"),
    [
        ("plain words", "plain words"),
        ("\x1b[31mred\x1b[0m", " [31mred [0m"),
        ("bell\x07 and\ttab\nline", "bell  and tab line"),
        ("turned \u202eround", "turned  round"),
        ("para\u2029graph", "para graph"),
        ("naïve ½", "naïve ½"),
    ],
)
def test_a_recipe_cannot_move_the_cursor(text: str, cleaned: str) -> None:
    """Escape codes, bells and letters that turn a line round become spaces."""
    assert cleaned == clean(text)


def test_wrap_breaks_between_words() -> None:
    """Lines end between words, with their own prefixes."""
    assert ["1. Slice the", "   meat thin."] == list(
        wrap("Slice the meat thin.", 13, first="1. ", rest="   ")
    )


def test_wrap_cuts_only_a_word_that_is_too_long() -> None:
    """A word longer than the line is cut, not lost."""
    assert ["a", "bbbb", "bb c"] == list(wrap("a bbbbbb c", 4))
    assert ["鹿肉", "鹿肉"] == list(wrap("鹿肉鹿肉", 5))


def test_wrap_of_nothing_is_nothing() -> None:
    """No text, no line."""
    assert [] == list(wrap("  \n ", 10))


words = st.text(st.characters(codec="utf-8", categories=("L", "N", "P", "S")), max_size=60)


@given(text=words, columns=st.integers(6, 40))
def test_wrapped_lines_fit_and_lose_nothing(text: str, columns: int) -> None:
    """Whatever the letters, no line is wider than asked and every letter is still there."""
    lines = list(wrap(text, columns, first="- ", rest="  "))

    assert all(width(line) <= columns for line in lines)
    assert "".join(clean(text).split()) == "".join("".join(line[2:] for line in lines).split())


def test_row_sets_columns() -> None:
    """Cells stand in columns, some flush right, and nothing hangs over at the end."""
    assert "salt     20 g" == row(("salt", "20 g", ""), (6, 5, 3), right=(1,))
    assert "鹿      3 g" == row(("鹿", "3 g"), (5, 4), right=(1,))


def test_a_cell_too_long_for_its_column_is_left_whole() -> None:
    """A row cuts nothing off."""
    assert "peppercorns  1 g" == row(("peppercorns", "1 g"), (4, 3))


def test_a_table_wraps_inside_its_columns() -> None:
    """Long cells go on below themselves, in their own column."""
    assert [
        "black     1 Tbsp   12 g",
        "pepper,",
        "ground",
    ] == list(table([("black pepper, ground", "1 Tbsp", "12 g")], (8, 7, 4), right=(2,)))


def test_pad_fills_up_and_never_cuts() -> None:
    """A text is filled to its width on the screen."""
    assert ("鹿 |", "long|") == (pad("鹿", 3) + "|", pad("long", 2) + "|")


def test_plain_text_has_no_paint() -> None:
    """Plain text ends each line with one line feed and no spaces before it."""
    assert "Head\nrow\n\n" == plain_text([Line("Head ", Style.HEAD), Line("row"), Line()])


@given(st.text(alphabet="ab .°-", max_size=120), st.integers(1, 30))
def test_letters_of_one_column_are_wrapped_as_all_others(text: str, columns: int) -> None:
    """The quick way for plain letters breaks where the way for all letters does."""
    plain = list(wrap(text, columns, first="- ", rest="x "))
    any_letters = list(wrap(text, columns, first="\u2013 ", rest="\u00d7 "))

    assert plain == [line.replace("\u2013", "-").replace("\u00d7", "x") for line in any_letters]


def test_a_degree_sign_stays_with_its_number() -> None:
    """A temperature is not torn apart at the end of a line."""
    assert ["dry at", "155 °F", "for 6 h"] == list(wrap("dry at 155 °F for 6 h", 8))
