"""Fractions as a cook writes them."""

from __future__ import annotations

import pytest

from tarebook.paper.kitchen_fractions import kitchen_fractions


@pytest.mark.parametrize(
    ("written", "shown"),
    [
        ("1/2 tsp", "½ tsp"),
        ("1 1/2 cups", "1½ cups"),
        ("2 x 1/4 cup", "2 x ¼ cup"),
        ("1 cup + 3 Tbsp", "1 cup + 3 Tbsp"),
        ("2/3 cup + 1/3 cup + 7/8 tsp", "⅔ cup + ⅓ cup + ⅞ tsp"),
        ("1 5/16 in", "1 5/16 in"),
        ("not known", "not known"),
        ("", ""),
    ],
)
def test_fractions_are_single_characters(written: str, shown: str) -> None:
    """Halves, thirds, quarters and eighths have a glyph; others stay as they are."""
    assert shown == kitchen_fractions(written).replace("\xa0", " ")


def test_a_number_keeps_its_spoon_on_the_line() -> None:
    """A line never ends between a number and what it counts."""
    assert "1½\xa0cups + ⅓\xa0cup" == kitchen_fractions("1 1/2 cups + 1/3 cup")
