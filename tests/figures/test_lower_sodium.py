"""What stands for a salty food has less salt in it, and is told apart from it."""

from __future__ import annotations

import pytest

from tarebook.figures.foods import food
from tarebook.figures.lower_sodium import lower_sodium
from tarebook.figures.nutrients import values


@pytest.mark.parametrize(("salty", "instead"), lower_sodium().items())
def test_it_has_less_sodium(salty: str, instead: str) -> None:
    """Per 100 g, by the table's own figures."""
    more, less = values(food(salty).key)["sodium_mg"], values(food(instead).key)["sodium_mg"]

    assert more is not None and less is not None
    assert less < 0.85 * more


@pytest.mark.parametrize(("salty", "instead"), lower_sodium().items())
def test_it_is_poured_as_the_other_is(salty: str, instead: str) -> None:
    """A cup of one takes the place of a cup of the other."""
    assert food(salty).kind == food(instead).kind
    assert not food(instead).curing
