"""What marinade, rub and mix hold."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from tarebook.nutrition import Facts
from tarebook.nutrition.bowl import carried_by, contents
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


@pytest.mark.parametrize(("factor", "sugars_g"), [(0.0, 0.0), (1.0, 2.526), (2.0, 5.052)])
def test_what_is_no_sugar_of_a_bounded_food_is_other_carbohydrate(
    known: FactsOf, middle: Middle, factor: float, sugars_g: float
) -> None:
    """Ten grams of allspice hold 7.212 g of carbohydrate, however much of it is sugar."""
    facts = known(marinade={"water": "1 cup", "allspice": "10 g"})
    bowl = contents(facts, Part.MARINADE, middle(facts) | {"sugars:allspice": factor})
    starch = sum(one.brought for one in carried_by(bowl) if one.figure == "starch_g")

    assert sugars_g == pytest.approx(bowl.sucrose + bowl.hexose)
    assert starch == pytest.approx(7.212 - sugars_g)
    assert 10.0 == pytest.approx(sum(bowl[:7]) - 236.9, abs=0.8)
