"""What is asked for, as a cook writes it."""

from __future__ import annotations

import pytest

from tarebook.findings import AmountError
from tarebook.target import Goal, read_goal


@pytest.mark.parametrize(
    ("text", "limit", "per"),
    [
        ("300 mg/oz", 300.0, "ounce"),
        ("300mg", 300.0, "ounce"),
        ("0.3 g per ounce", 300.0, "ounce"),
        ("4 g/batch", 4000.0, "batch"),
        ("4g per batch", 4000.0, "batch"),
    ],
)
def test_a_limit_is_read(text: str, limit: float, per: str) -> None:
    """Milligrams or grams, an ounce or the batch."""
    assert Goal("sodium_mg", limit, per) == read_goal("sodium_mg", text)


@pytest.mark.parametrize(
    ("text", "cut"), [("30%", 0.3), ("30 %", 0.3), ("30% less", 0.3), ("12.5%", 0.125)]
)
def test_a_cut_is_read(text: str, cut: float) -> None:
    """A part of today's figure to be taken off."""
    assert cut == read_goal("sodium_mg", text).cut


@pytest.mark.parametrize(
    "text", ["", "300", "0%", "100%", "-3 %", "300 mg/slice", "much", "0 mg", "1 cup/oz", "x%"]
)
def test_err_no_limit(text: str) -> None:
    """What is no limit is refused."""
    with pytest.raises(AmountError):
        read_goal("sodium_mg", text)
