"""What marinade, rub and mix hold."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from tarebook.nutrition import Facts
from tarebook.nutrition.bowl import contents
from tarebook.recipe.model import Part

FactsOf = Callable[..., Facts]
Middle = Callable[..., dict[str, float]]


def test_contents_add_up(known: FactsOf, middle: Middle) -> None:
    """What a part holds is the sum over its ingredients, and only over its own."""
    facts = known(marinade={"soy-sauce": "100 g"}, rub={"salt-table": "10 g"})
    x = middle(facts)

    bowl = contents(facts, Part.MARINADE, x)

    assert bowl.sodium_mg == pytest.approx(5493, rel=1e-3)
    assert bowl.water == pytest.approx(71.15, rel=1e-3)
    assert contents(facts, Part.RUB, x).sodium_mg == pytest.approx(3875.8, rel=1e-3)
