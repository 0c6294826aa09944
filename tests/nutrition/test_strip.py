"""The meat as it meets its marinade."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from tarebook.nutrition import Facts
from tarebook.nutrition.strip import film_area_factor, water_fraction

FactsOf = Callable[..., Facts]


def test_thin_strips_carry_more_film() -> None:
    """Surface per weight, edges at 30 mm counted, against a quarter inch (published areas)."""
    assert film_area_factor(0.00635) == pytest.approx(1.0)
    assert film_area_factor(0.003) == pytest.approx(0.689 / 0.358, rel=2e-3)
    assert film_area_factor(0.010) == pytest.approx(0.250 / 0.358, rel=3e-3)


def test_water_follows_the_solids(known: FactsOf) -> None:
    """Meat with a tenth more solids has so much less water."""
    facts = known()._replace(meat={"water_g": 73.0})

    assert water_fraction(facts, {"raw-solids": 1.1}) == pytest.approx(1 - 0.27 * 1.1)
