"""Thousands of draws at once, in arrays: for a reference that the default draws are held against.

The same inputs, distributions and formulae as the default; only the kind of number differs. numpy
is imported when this is asked for and not before.
"""

from __future__ import annotations

from collections.abc import Mapping
from functools import lru_cache
from typing import TYPE_CHECKING, Any

from tarebook.nutrition.draws import MULTIPLIER, PRIME, Distribution, Fixed, column, seed_of, strata
from tarebook.uptake.arrays import arrays, arrays_like_columns

if TYPE_CHECKING:
    from tarebook.nutrition.assumptions import Assumption

_POINTS = 512  # quantiles that a draw is read between

__all__ = ["array_columns", "arrays", "arrays_like_columns", "same_columns"]


def array_columns(inputs: Mapping[str, Assumption], n: int) -> dict[str, Any]:
    """Return draws of every input.

    Args:
        inputs: by name.
        n: how many draws.

    Returns:
        An array of shape (n,) for each, in the input's unit. Each visits n equal slices of
        probability once, in an order that belongs to its name.
    """
    return {name: _column(name, one.distribution, n) for name, one in inputs.items()}


def same_columns(inputs: Mapping[str, Assumption], n: int) -> dict[str, Any]:
    """Return the very draws that are taken without arrays, as arrays.

    Args:
        inputs: by name.
        n: how many draws.
    """
    return {name: _same_column(name, one.distribution, n) for name, one in inputs.items()}


@lru_cache(maxsize=1024)
def _same_column(name: str, distribution: Distribution, n: int) -> Any:
    import numpy as np

    return np.array(column(name, distribution, n))


@lru_cache(maxsize=256)
def _column(name: str, distribution: Distribution, n: int) -> Any:
    import numpy as np

    if isinstance(distribution, Fixed):
        return np.full(n, distribution.value)
    keys = seed_of(name) * _powers(n) % PRIME
    return _quantiles(distribution, n)[np.argsort(keys)]


@lru_cache(maxsize=8)
def _powers(n: int) -> Any:
    """Return the powers of the multiplier: all steps of the plain generator at once."""
    import numpy as np

    found = [MULTIPLIER]
    while len(found) < n:
        found.append(found[-1] * MULTIPLIER % PRIME)
    return np.array(found, np.int64)


@lru_cache(maxsize=64, typed=True)
def _quantiles(distribution: Distribution, n: int) -> Any:
    import numpy as np

    slices, points = ((np.arange(count) + 0.5) / count for count in (n, _POINTS))
    return np.interp(slices, points, strata(distribution, _POINTS))
