"""How ranges, figures and "at least" are worded."""

from __future__ import annotations

import pytest

from tarebook.cards.figures import NAMES, ceiling, digits, likely, nothing_known, percent, span
from tarebook.nutrition import FIGURES
from tarebook.nutrition.range import Range


def found(
    low: float, middle: float, high: float, unit: str = "mg", missing: tuple[str, ...] = ()
) -> Range:
    """Return a range."""
    return Range(low=low, likely=middle, high=high, unit=unit, missing=missing)


def test_every_figure_has_a_name() -> None:
    """Each figure of the estimate, and trans fat, has the name a cook knows it by."""
    assert {*FIGURES, "trans_g"} == set(NAMES)


@pytest.mark.parametrize(
    ("amount", "unit", "told"),
    [
        (1234.5, "mg", "1,234"),
        (9.96, "mg", "10.0"),
        (0.26, "mg", "0.3"),
        (80.4, "kcal", "80"),
        (1.44, "g", "1.4"),
        (0.072, "g", "0.07"),
        (123.4, "g", "123"),
        (33.4, "%", "33"),
    ],
)
def test_no_more_digits_than_the_doubt_allows(amount: float, unit: str, told: str) -> None:
    """Whole milligrams, calories and per cent; a decimal or two of small grams."""
    assert told == digits(amount, unit)


@pytest.mark.parametrize(
    ("amount", "told"),
    [(601.9, "610"), (610.0, "610"), (600.1, "610"), (996, "1,000"), (1393.2, "1,400"),
     (57.4, "58"), (99.2, "100"), (4.41, "4.5"), (0.123, "0.13")],
)  # fmt: skip
def test_what_there_is_at_most_is_rounded_up_to_two_digits(amount: float, told: str) -> None:
    """After "about" two digits are all it bears, and it is never told below what it is."""
    assert told == ceiling(amount)
    assert float(told.replace(",", "")) >= amount


def test_a_span_is_low_to_high() -> None:
    """Low and high with one unit; no total is not known."""
    assert "208-364 mg" == span(found(208, 280, 364))
    assert "not known" == span(None)


def test_a_span_without_width_is_told_once() -> None:
    """None at all is 0, without decimals; two ends that read alike stand there once."""
    assert "0 mg" == span(found(0, 0, 0))
    assert "0 g" == span(found(0, 0, 0, "g"))
    assert "0.61 g" == span(found(0.609, 0.61, 0.612, "g"))


def test_the_likely_value_is_at_least_where_something_is_missing() -> None:
    """A figure that can only be higher says "at least"."""
    assert "280 mg" == likely(found(208, 280, 364))
    assert "at least 1.4 g" == likely(found(1, 1.4, 2, "g", ("allspice",)))
    assert "not known" == likely(None)


def test_all_missing_is_not_known_rather_than_zero() -> None:
    """At least nothing would look like none: it is told as not known."""
    gone = found(0, 0, 0.001, "µg", ("deer",))

    assert nothing_known(gone)
    assert "not known" == likely(gone) == span(gone)
    assert not nothing_known(found(0, 0, 0)) and "0 mg" == likely(found(0, 0, 0))


def test_per_cent() -> None:
    """A share in whole per cent."""
    assert "39 %" == percent(0.3904)
