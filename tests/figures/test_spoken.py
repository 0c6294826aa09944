"""What a cook calls a food."""

from __future__ import annotations

from collections import Counter

import pytest

from tarebook.figures.foods import food_keys
from tarebook.figures.spoken import spoken


@pytest.mark.parametrize(
    ("key", "said"),
    [
        ("oil-olive", "olive oil"),
        ("vinegar-red-wine", "red wine vinegar"),
        ("ginger-ground", "ground ginger"),
        ("salt-table", "table salt"),
        ("lemon-juice-bottled", "bottled lemon juice"),
        ("worcestershire-sauce", "Worcestershire sauce"),
        ("soy-sauce", "soy sauce"),
        ("garlic", "garlic"),
        ("mushroom-shiitake-dried", "dried shiitake mushroom"),
    ],
)
def test_a_key_is_told_in_the_order_one_says_it(key: str, said: str) -> None:
    """Names of the tables run from the general to the particular, a cook's the other way."""
    assert said == spoken(key)


@pytest.mark.parametrize(
    ("written", "said"),
    [
        ("red-wine-vinegar", "red wine vinegar"),
        ("dark soy", "dark soy"),
        ("Grandmother's five-spice mix", "Grandmother's five-spice mix"),
        ("jar-of-nothing-known", "jar of nothing known"),
    ],
)
def test_a_cooks_own_name_stays_as_written(written: str, said: str) -> None:
    """Another name of a food, or one of the cook's own, is not put into other words."""
    assert said == spoken(written)


def test_no_two_foods_are_said_alike() -> None:
    """Kosher salt of two crystals, or sauce with and without salt, stay apart on paper."""
    counts = Counter(spoken(key) for key in food_keys())

    assert [] == [name for name, count in counts.items() if count > 1]
    assert len(food_keys()) == len(counts)
