"""An ounce held against the house's own figures for a day."""

from __future__ import annotations

from collections.abc import Callable
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as some

from tarebook.nutrition import Estimate, estimate, facts_of
from tarebook.nutrition.a_day import _ounces, of_a_day
from tarebook.nutrition.range import Range
from tarebook.quantities.drawer import choose_drawer
from tarebook.recipe.model import Recipe
from tarebook.scaling import scale_by_factor

RecipeOf = Callable[..., Recipe]


def estimate_of(recipe: Recipe) -> Estimate:
    """Return the figures of a recipe at its own size."""
    return estimate(facts_of(scale_by_factor(recipe, Fraction(1), choose_drawer("basic"))))


def test_share_and_count(recipe_of: RecipeOf) -> None:
    """The share is that of low, likely and high; the count goes by the high one."""
    found = estimate_of(recipe_of())
    sodium = found.per_ounce["sodium_mg"]
    assert sodium is not None
    (told,) = of_a_day(found, {"sodium_mg": 3.5 * sodium.high})

    assert 3 == told.ounces
    assert told.share is not None and sodium.low / (3.5 * sodium.high) == told.share[0]
    assert pytest.approx(1 / 3.5) == told.share[2]
    assert ("mg", ()) == (told.unit, told.missing)


def test_with_a_part_unknown_no_ounces_are_counted(recipe_of: RecipeOf) -> None:
    """A figure that is "at least" has a least share, and no count; what is missing is named."""
    recipe = recipe_of(marinade={"soy-sauce": "1 cup", "honey": "to taste"})
    (told,) = of_a_day(estimate_of(recipe), {"sugars_g": 25.0})

    assert (None, ("honey",)) == (told.ounces, told.missing)
    assert told.share is not None and told.share[0] > 0


def test_without_a_total_there_is_no_share(recipe_of: RecipeOf) -> None:
    """Salt by the spoon has no weight: neither share nor count."""
    (told,) = of_a_day(estimate_of(recipe_of(marinade={"salt": "1 Tbsp"})), {"sodium_mg": 1500.0})

    assert (None, None, ("salt",)) == (told.share, told.ounces, told.missing)


def test_nothing_set_nothing_told(recipe_of: RecipeOf) -> None:
    """None is taken for granted."""
    assert () == of_a_day(estimate_of(recipe_of()), {})


def test_of_nothing_no_count() -> None:
    """An ounce that holds nothing of it could be counted without end: it is not."""
    assert _ounces(Range(0.0, 0.0, 0.0, "g"), 25.0) is None


@given(some.floats(0.01, 5000), some.floats(0.01, 10_000))
def test_the_count_stays_within_and_one_more_does_not(high: float, a_day: float) -> None:
    """It is the most whole ounces that stay within, by the high estimate."""
    count = _ounces(Range(high, high, high, "mg"), a_day)

    assert count is not None
    assert count * high <= a_day < (count + 1) * high * (1 + 1e-12)
