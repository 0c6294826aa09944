"""The operations of the formulae for arrays of draws; numpy is imported when they are asked for."""

from __future__ import annotations

from functools import cache
from typing import Any

from tarebook.uptake.crank import NOTHING_LEFT, SHORT_TAU, series_terms, uptake_fraction
from tarebook.uptake.maths import Maths


@cache
def arrays() -> Maths:
    """Return the operations for arrays of floats with one entry a draw."""
    import numpy as np

    def choose(at: Any, edge: Any, below: Any, otherwise: Any) -> Any:
        return np.where(at < edge, below, otherwise)

    return Maths(np.minimum, np.maximum, choose, _uptake)


def _uptake(tau: Any, alpha: Any) -> Any:
    """Return uptake fractions; the series' roots and weights are read from a table over baths."""
    import numpy as np

    taus, alphas = np.broadcast_arrays(np.asarray(tau, float), np.asarray(alpha, float))
    if not taus.ndim:
        return uptake_fraction(float(taus), float(alphas))
    low, high = float(alphas.min()), float(alphas.max())
    table = series_terms(low, high)
    late = taus > SHORT_TAU
    if table is None:
        late = np.zeros_like(late)
    found = np.empty(taus.shape)
    early = ~late
    found[early] = [
        uptake_fraction(t, a)
        for t, a in zip(taus[early].tolist(), alphas[early].tolist(), strict=True)
    ]
    if table is not None and late.any():
        outside, step, terms = table
        place = (alphas[late] / (1 + alphas[late]) - outside) / step
        at = place.astype(int)
        part, late_taus = place - at, taus[late]
        left = np.ones(place.shape)
        for squares, weights in (np.array(term).T for term in terms):
            decay = (squares[at] + (squares[at + 1] - squares[at]) * part) * late_taus
            if decay.min() > NOTHING_LEFT:
                break
            left -= (weights[at] + (weights[at + 1] - weights[at]) * part) * np.exp(-decay)
        found[late] = left
    return found
