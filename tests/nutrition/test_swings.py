"""What moves a figure most: the right inputs, on the right side."""

from __future__ import annotations

from fractions import Fraction

import pytest

from tarebook.nutrition import facts_of
from tarebook.nutrition.swings import swings
from tarebook.quantities.drawer import choose_drawer
from tarebook.recipe.load import load_recipe
from tarebook.scaling import scale_by_factor


def swings_of(name: str, figure: str = "sodium_mg") -> dict[str, float]:
    """Return the signed swing of every input of a shipped recipe."""
    scaled = scale_by_factor(load_recipe(name)[0], Fraction(1), choose_drawer("basic"))
    return {one.input.name: one.at_high - one.at_low for one in swings(facts_of(scaled), figure)}


def test_the_widest_comes_first() -> None:
    """Swings fall in size, and none of them is nothing."""
    sizes = [abs(size) for size in swings_of("juniper-venison").values()]

    assert sizes == sorted(sizes, reverse=True)
    assert sizes[-1] > 0


@pytest.mark.parametrize(
    ("input_name", "rises"),
    [
        ("sodium:soy-sauce", True),
        ("mass:soy-sauce", True),
        ("juice", False),
        ("finish", False),
        ("drip", False),
    ],
)
def test_each_input_moves_sodium_its_own_way(input_name: str, rises: bool) -> None:
    """More sauce means more sodium an ounce; juice lost, water left or drip means less."""
    assert (swings_of("juniper-venison")[input_name] > 0) is rises


def test_a_rub_has_no_diffusion_in_it() -> None:
    """Nothing of the soak is asked of a recipe that soaks nothing."""
    assert not any("diffusivity" in name for name in swings_of("cabin-rub-elk"))
