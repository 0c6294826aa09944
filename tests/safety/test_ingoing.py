"""Ingoing nitrite by each published method, beside the guard."""

from __future__ import annotations

from collections.abc import Callable
from fractions import Fraction

import pytest

from tarebook.quantities.drawer import DRAWERS
from tarebook.recipe.model import Recipe
from tarebook.safety.curing import guard_scaled
from tarebook.safety.ingoing import Ingoing, ingoing, too_little
from tarebook.scaling import ScaledRecipe, scale_by_factor

F = Fraction
Batch = Callable[..., Recipe]
CURE = {"curing-salt-1": "2.4 g"}


def scaled(recipe: Recipe) -> ScaledRecipe:
    """Return a recipe as written."""
    return scale_by_factor(recipe, F(1), DRAWERS["basic"])


def test_without_curing_salt_there_is_nothing_to_tell(batch: Batch) -> None:
    """No line at all."""
    assert () == ingoing(scaled(batch()))


@pytest.mark.parametrize("part", ["rub", "mixed_in"])
def test_rubbed_or_mixed_in_all_is_counted(batch: Batch, part: str) -> None:
    """2.4 g of 6.25 % to a kilogram of meat is 150 ppm, the guard's own figure."""
    recipe = scaled(batch(**{part: CURE}))
    (found,) = ingoing(recipe)
    report = guard_scaled(recipe)

    assert report is not None
    assert F(150) == found.ppm == report.guard_ppm


@pytest.mark.published
@pytest.mark.parametrize(
    ("soaked_g", "one", "two"), [(1100.0, F(60), F(120)), (None, None, F(120)), (990.0, 0, F(120))]
)
def test_a_soak_is_told_by_both_methods(
    batch: Batch, soaked_g: float | None, one: F | None, two: F
) -> None:
    """1,000 g of meat in 250 g of liquid with 2.4 g of a 6.25 % mix, 10 % gained.

    Source: formulas of the FSIS calculations handbook, methods one and two, p. 22 and before:
    0.15 g x 0.10 / 250 g and 0.15 g / 1,250 g.
    """
    recipe = scaled(batch(marinade={**CURE, "water": "247.6 g"}))
    short, long = ingoing(recipe, soaked_g=soaked_g)

    assert (one, two) == (short.ppm, long.ppm)


def test_without_a_weight_after_the_soak_the_short_method_says_what_it_needs(batch: Batch) -> None:
    """No pick-up is made up."""
    short, _ = ingoing(scaled(batch(marinade={**CURE, "water": "1 cup"})))

    assert "soaked briefly, by the weight gained: needs the meat weighed after its soak" in str(
        short
    )
    assert "[USDA FSIS, Processing Inspectors' Calculations Handbook, 1995]" in str(short)


def test_a_liquid_of_unknown_weight_is_named(batch: Batch) -> None:
    """A spoon of plain salt: neither method can be worked, and it is said by whose fault."""
    found = ingoing(scaled(batch(marinade={**CURE, "salt": "1 tsp"})))

    assert [None, None] == [one.ppm for one in found]
    assert {"salt has no weight"} == {one.missing for one in found}


def test_no_method_passes_the_guard(batch: Batch) -> None:
    """The guard counts all: no published method gives a higher figure."""
    recipe = scaled(batch(marinade={**CURE, "water": "100 g"}, rub={}))
    report = guard_scaled(recipe)

    assert report is not None
    assert all(
        one.ppm is not None and one.ppm <= report.guard_ppm
        for one in ingoing(recipe, soaked_g=1050.0)
    )


@pytest.mark.published
@pytest.mark.parametrize(
    ("ppm", "says"),
    [
        (120, ""),
        (119, "under 120 ppm, the floor for cured products that are kept refrigerated; none is "
              "published for shelf-stable ones"),
        (40, "under 120 ppm"),
        (39, "under 40 ppm, where some preserving effect begins"),
    ],
)  # fmt: skip
def test_too_little_is_said_with_what_is_published(ppm: int, says: str) -> None:
    """120 and 40 ppm. Source: FSIS Processing Inspectors' Calculations Handbook, 1995, p. 12."""
    found = too_little(F(ppm))

    assert says in found
    assert bool(says) == bool(found)
    assert ("40" in found.split("120")[-1]) == (ppm < 40)


def test_a_method_is_printed_in_whole_parts_per_million() -> None:
    """With who says so."""
    assert "mixed in: 150 ppm [" in str(Ingoing("mixed in", F("149.6"), "", "ingoing-ground"))
