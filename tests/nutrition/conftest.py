"""Facts of a batch: from a recipe in one line, or the sheet's own worked example."""

from __future__ import annotations

from collections.abc import Callable
from fractions import Fraction
from typing import Any

import pytest

from tarebook.nutrition import Facts, assumptions, facts_of
from tarebook.nutrition.swings import at
from tarebook.quantities.drawer import choose_drawer
from tarebook.recipe.model import Recipe
from tarebook.scaling import scale_by_factor

FactsOf = Callable[..., Facts]
Middle = Callable[..., dict[str, float]]


@pytest.fixture
def known(recipe_of: Callable[..., Recipe]) -> FactsOf:
    """Return a maker of facts: parts as of ``recipe_of``, weights by name."""

    def make(*, weights: dict[str, float] | None = None, **parts: Any) -> Facts:
        scaled = scale_by_factor(recipe_of(**parts), Fraction(1), choose_drawer("full"))
        return facts_of(scaled, **(weights or {}))

    return make


@pytest.fixture
def middle() -> Middle:
    """Return a maker of inputs: each at its middle, but for those given by name."""

    def make(facts: Facts, **fixed: float) -> dict[str, float]:
        inputs = {name: at(one, 0.5) for name, one in assumptions(facts).items()}
        changed = {name.replace("_", "-"): amount for name, amount in fixed.items()}
        assert changed.keys() <= inputs.keys()
        return {**inputs, **changed}

    return make
