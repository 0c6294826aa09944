"""Numbers in, exact fractions out, and back."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tarebook.findings import AmountError
from tarebook.quantities.number import format_fraction, parse_number, parse_range, split


@pytest.mark.parametrize(
    ("written", "expected"),
    [
        ("3", Fraction(3)),
        ("0", Fraction(0)),
        ("0.5", Fraction(1, 2)),
        (".5", Fraction(1, 2)),
        ("0.1", Fraction(1, 10)),
        ("3/4", Fraction(3, 4)),
        ("1 1/2", Fraction(3, 2)),
        ("1-1/2", Fraction(3, 2)),
        ("1 and 1/2", Fraction(3, 2)),
        ("½", Fraction(1, 2)),
        ("1½", Fraction(3, 2)),
        ("1 ½", Fraction(3, 2)),
        ("1⁄3", Fraction(1, 3)),
        ("5/4", Fraction(5, 4)),
        ("0.333333333333333333333", Fraction(333333333333333333333, 10**21)),
    ],
)
def test_numbers_are_exact(written: str, expected: Fraction) -> None:
    """Every way a cook writes a number gives exactly that number."""
    assert expected == parse_number(written)


@pytest.mark.parametrize(
    ("written", "message", "hint"),
    [
        ("1,5", 'number "1,5" has a comma inside a number', "write 1.5"),
        ("1,500", 'number "1,500" has a comma inside a number', "write 1500 or 1.500"),
        ("-2", 'number "-2" is negative', ""),
        ("−2", 'number "−2" is negative', ""),
        ("1/0", 'number "1/0" divides by zero', ""),
        ("2-3", 'number "2-3" is a range', "write one number"),
        ("1 3/2", 'number "1 3/2" is no mixed number', "write it as 1 1/2 is written"),
        ("9" * 61, f'number "{"9" * 40}…" has too many digits', ""),
        ("", "number is empty", "write an amount such as 1 1/2 cups"),
    ],
)
def test_err_numbers_say_what_to_write(written: str, message: str, hint: str) -> None:
    """A number that cannot be taken says why, word for word, and what to write."""
    with pytest.raises(AmountError) as caught:
        parse_number(written)

    assert (message, hint) == (str(caught.value), caught.value.hint)


@pytest.mark.parametrize(
    "written",
    ["nan", "inf", "-inf", "Infinity", "1e3", "1e999999", "0x10", "1_000", "1.2.3", "1 2", "1/2/3",
     "1/2 1/2", "two", "1.", ".", "/", "-", "1 1/2 1/2", "1.5/2", "3 cups"],
)  # fmt: skip
def test_err_anything_else_is_no_number(written: str) -> None:
    """Not a number, exponents, hexadecimal and two numbers are refused."""
    with pytest.raises(AmountError):
        parse_number(written)


@pytest.mark.parametrize(
    ("written", "low", "high"),
    [
        ("5-8", 5, 8),
        ("5 - 8", 5, 8),
        ("5–8", 5, 8),
        ("5 to 8", 5, 8),
        ("5 or 6", 5, 6),
        ("0.5-0.7", Fraction(1, 2), Fraction(7, 10)),
        ("1/2-3/4", Fraction(1, 2), Fraction(3, 4)),
        ("½-1", Fraction(1, 2), 1),
        ("1-1/2", Fraction(3, 2), Fraction(3, 2)),
        ("1-2/3", Fraction(5, 3), Fraction(5, 3)),
        ("1-3/2", 1, Fraction(3, 2)),
        ("1 1/2-2", Fraction(3, 2), 2),
        ("1-1 1/2", 1, Fraction(3, 2)),
        ("1-1/2-2", Fraction(3, 2), 2),
        ("1-1-1/2", 1, Fraction(3, 2)),
        ("12", 12, 12),
    ],
)
def test_a_hyphen_is_a_range_or_a_mixed_number(
    written: str, low: Fraction | int, high: Fraction | int
) -> None:
    """Whole, hyphen and proper fraction are one number; everything else is two ends."""
    assert (low, high) == parse_range(written)


@pytest.mark.parametrize(
    ("written", "hint"),
    [("3-2", "write the smaller number first"), ("1–1/2", "did you mean 1 1/2?")],
)
def test_err_backwards_range(written: str, hint: str) -> None:
    """A range that runs backwards is refused, and says what was probably meant."""
    with pytest.raises(AmountError, match=r" runs backwards$") as caught:
        parse_range(written)

    assert hint == caught.value.hint


@pytest.mark.parametrize("written", ["1-2-3", "1-", "-", "2 to", "to 2", "1-3/2 to 2", "-1-2"])
def test_err_no_range(written: str) -> None:
    """Three ends, or one, are no range."""
    with pytest.raises(AmountError):
        parse_range(written)


@pytest.mark.parametrize(
    ("value", "expected"),
    [
        (Fraction(3, 2), "1 1/2"),
        (Fraction(3, 4), "3/4"),
        (Fraction(2), "2"),
        (0, "0"),
        (7, "7"),
        (Fraction(-3, 2), "-1 1/2"),
        (Fraction(1, 48), "1/48"),
        (Fraction(17, 13), "1 4/13"),
    ],
)
def test_numbers_print_as_a_cook_writes_them(value: Fraction | int, expected: str) -> None:
    """Whole, proper or mixed, never rounded."""
    assert expected == format_fraction(value)


@given(st.fractions(min_value=0, max_denominator=10**9))
def test_printed_numbers_read_back_the_same(value: Fraction) -> None:
    """Print, read is the same number."""
    assert value == parse_number(format_fraction(value))


@given(st.text(max_size=250))
def test_any_text_is_a_number_or_an_amount_error(text: str) -> None:
    """No text raises anything but ``AmountError``."""
    for read in (parse_number, parse_range):
        try:
            read(text)
        except AmountError as error:
            assert str(error).isprintable()


def test_splitting_keeps_every_character_but_spaces() -> None:
    """Nothing written is lost between the tokens."""
    text = '1-1/2 to 2.5 fl. oz. (about 3/4"), ~#é'

    assert text.replace(" ", "") == "".join(split(text))


@pytest.mark.parametrize("written", ["1 and", "1,"])
def test_err_number_that_breaks_off(written: str) -> None:
    """Nothing stands behind it: refused in words."""
    with pytest.raises(AmountError, match="cannot be read"):
        parse_number(written)


@pytest.mark.parametrize(
    ("written", "hint"),
    [
        ("2 to 1/2", "did you mean 2 1/2?"),
        ("2 to 3/2", "write the smaller number first"),
        ("3/2 to 1/2", "write the smaller number first"),
    ],
)
def test_only_a_mixed_number_is_guessed_behind_a_backwards_range(written: str, hint: str) -> None:
    """A whole and a part of one may be a mixed number; nothing else may."""
    with pytest.raises(AmountError) as caught:
        parse_number(written)

    assert hint == caught.value.hint
