"""The operations of the formulae for arrays of draws; numpy is imported when they are asked for."""

from __future__ import annotations

from functools import cache
from typing import Any

from tarebook.uptake.crank import uptake_fraction
from tarebook.uptake.maths import Maths
from tarebook.uptake.table import BATHS, FILE, TIMES, WHOLE

_HARDLY_ANY = 1e-30  # a bath without water: all of it is in at once, as the formula has it


@cache
def arrays() -> Maths:
    """Return the operations for arrays of floats with one entry a draw."""
    import numpy as np

    def choose(at: Any, edge: Any, below: Any, otherwise: Any) -> Any:
        return np.where(at < edge, below, otherwise)

    return Maths(np.minimum, np.maximum, choose, _uptake)


def _uptake(tau: Any, alpha: Any) -> Any:
    """Return uptake fractions read from the table."""
    import numpy as np

    taus, alphas = np.broadcast_arrays(np.asarray(tau, float), np.asarray(alpha, float))
    if not taus.ndim:
        return uptake_fraction(float(taus), float(alphas))
    share = np.maximum(alphas, _HARDLY_ANY) / (1 + alphas)
    down = BATHS * np.sqrt(share)
    across = TIMES - TIMES / np.sqrt(1 + np.sqrt(taus) / share)
    bath = np.minimum(down.astype(int), BATHS - 1)
    time = np.minimum(across.astype(int), TIMES - 1)
    here = bath * (TIMES + 1) + time
    part = across - time
    before, after = (
        (1 - part) * _table()[at] + part * _table()[at + 1] for at in (here, here + TIMES + 1)
    )
    return before + (after - before) * (down - bath)


@cache
def _table() -> Any:
    import numpy as np

    return np.frombuffer(FILE.read_bytes(), "<u2") / WHOLE
