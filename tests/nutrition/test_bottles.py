"""Bottles in the estimate: their panel's rounding is part of the range, and draws go by bottle."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest

from tarebook.nutrition import Facts, assumptions, estimate
from tarebook.nutrition.range import Range

FactsOf = Callable[..., Facts]


@pytest.fixture(autouse=True)
def bottles(own_home: Path) -> None:
    """Two soy sauces of the house: one prints a gram of sugars, one prints none."""
    folder = own_home / "foods"
    folder.mkdir(parents=True)
    for name, sugars in (("lakeside-soy", "1 g"), ("cove-soy", "0 g")):
        (folder / f"{name}.toml").write_text(
            'like = "soy-sauce"\n[panel]\nserving = "1 Tbsp (17 g)"\n'
            f'sodium = "575 mg"\nsugars = "{sugars}"\n'
        )


def sugars(known: FactsOf, name: str, amount: str = "3/4 cup") -> Range:
    """Return the sugars of an ounce that were put in by one sauce alone."""
    found = estimate(known(marinade={name: amount})).per_ounce["sugars_g"]
    assert found is not None
    return found


def width(found: Range) -> float:
    """Return how wide a range is, relative to its likely value."""
    return (found.high - found.low) / found.likely


def test_a_rounded_gram_widens_the_sugars(known: FactsOf) -> None:
    """1 g may be 0.5 to 1.5 g: the range of an ounce is wider than that of the table's row."""
    assert width(sugars(known, "lakeside-soy")) > 1.3 * width(sugars(known, "soy-sauce"))


def test_a_zero_has_a_range(known: FactsOf) -> None:
    """Printed 0 g: likely little, and up to as much as 0.5 g a spoon would bring."""
    found = sugars(known, "cove-soy")

    assert 0 < found.low < found.likely / 2
    assert 2 * found.likely < found.high


def test_draws_go_by_bottle(known: FactsOf) -> None:
    """Two bottles like one food are off each in their own way; the table's row in its."""
    facts = known(
        marinade={"lakeside-soy": "1/4 cup", "cove-soy": "1/4 cup", "soy-sauce": "1/4 cup"},
        rub={"dark": '{ food = "lakeside-soy", amount = "1 Tbsp" }'},
    )
    names = assumptions(facts)

    assert {"sodium:lakeside-soy", "sodium:cove-soy", "sodium:soy-sauce"} <= names.keys()
    assert {"sugars:lakeside-soy", "sugars:cove-soy"} == {
        name for name in names if name.startswith("sugars:")
    }


def test_a_panel_in_the_recipe_is_its_own(known: FactsOf) -> None:
    """Two lines of one food with a panel each do not share what rounding left open."""
    panel = 'panel = { serving = "17 g", sugars = "%s" }'
    facts = known(
        marinade={
            name: f'{{ food = "soy-sauce", amount = "1/4 cup", {panel % printed} }}'
            for name, printed in (("dark", "1 g"), ("light", "9 g"))
        }
    )
    found = {name: one.distribution for name, one in assumptions(facts).items()}

    assert found["sugars:dark"] != found["sugars:light"]
    assert estimate(facts).per_ounce["sugars_g"] is not None


def test_without_panels_there_is_no_such_input(known: FactsOf) -> None:
    """The default path draws nothing more than before."""
    assert not any(name.startswith("sugars:") for name in assumptions(known()))


def test_the_range_agrees_with_twenty_thousand_draws(known: FactsOf) -> None:
    """Sodium and sugars with bottles in it, at 5, 50 and 95 %, within 3 %."""
    facts = known(marinade={"lakeside-soy": "1/2 cup", "honey": "2 Tbsp"})
    shown, many = estimate(facts), estimate(facts, draws=20_000)
    for figure in ("sodium_mg", "sugars_g"):
        ours, theirs = shown.per_ounce[figure], many.per_ounce[figure]
        assert ours is not None and theirs is not None
        assert ours[:3] == pytest.approx(theirs[:3], rel=0.03)
