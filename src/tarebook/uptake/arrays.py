"""The operations of the formulae for arrays of draws; numpy is imported when they are asked for."""

from __future__ import annotations

from functools import cache
from typing import Any

from tarebook.uptake.crank import uptake_fraction
from tarebook.uptake.maths import Maths, each
from tarebook.uptake.table import BATHS, FILE, MANY, TIMES, WHOLE, uptake_fractions

_HARDLY_ANY = 1e-30  # a bath without water: all of it is in at once, as the formula has it


@cache
def arrays() -> Maths:
    """Return the operations for arrays of floats with one entry a draw."""
    import numpy as np

    def choose(at: Any, edge: Any, below: Any, otherwise: Any) -> Any:
        return np.where(at < edge, below, otherwise)

    return Maths(np.minimum, np.maximum, choose, _uptake)


@cache
def arrays_like_columns() -> Maths:
    """Return operations for arrays that give the very numbers of columns, to the last bit."""
    return arrays()._replace(uptake=_uptake_like_columns)


def _uptake_like_columns(tau: Any, alpha: Any) -> Any:
    """Return what ``table.uptake_fractions`` returns, by the same steps in the same order."""
    import numpy as np

    if not getattr(tau, "ndim", 0) or not getattr(alpha, "ndim", 0):
        return each(uptake_fraction, tau, alpha)
    if len(alpha) < MANY or alpha.min() <= 0 or not np.isfinite(alpha.max()):
        return np.array(uptake_fractions(tau.tolist(), alpha.tolist()))
    share = alpha / (1 + alpha)
    down = BATHS * np.sqrt(share)
    bath = down.astype(int)
    across = TIMES - TIMES / np.sqrt(1 + np.sqrt(tau) / share)
    time = across.astype(int)
    part = across - time
    table = _rows()
    here, there = (
        table[row, time] + (table[row, time + 1] - table[row, time]) * part
        for row in (np.minimum(bath, BATHS), np.minimum(bath + 1, BATHS))
    )
    return (here + (there - here) * (down - bath)) / WHOLE


@cache
def _rows() -> Any:
    """Return the table by baths and times; one more time, at which all is in, at each end."""
    import numpy as np

    rows = np.frombuffer(FILE.read_bytes(), "<u2").reshape(BATHS + 1, TIMES + 1)
    return np.pad(rows.astype(float), ((0, 0), (0, 1)), constant_values=WHOLE)


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
