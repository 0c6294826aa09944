"""The uptake fraction of many draws, read from one table made beforehand.

Crank's fraction depends on two numbers, tau and alpha (see ``crank``). The table holds it for every
bath and every time at once, because both are laid out on a stretch from 0 to 1:

- ``share`` = alpha / (1 + alpha), the part of the water that is outside, by its square root;
- ``reach`` = sqrt(tau) / share, in which all baths begin alike, by 1 - 1 / sqrt(1 + reach).

Between its points straight lines are drawn, both ways. The table lies beside this module; how it is
made is told in ``make_table``.
"""

from __future__ import annotations

import sys
from array import array
from collections.abc import Sequence
from functools import cache, lru_cache
from math import inf, sqrt
from pathlib import Path

from tarebook.uptake.crank import uptake_fraction

BATHS, TIMES = 128, 256
"""How many steps the table has from no bath to an unlimited one, and from no time to all time."""

WHOLE = 65_535
"""What 1 is in the table: two bytes a fraction, the lower one first."""

MANY = 16
"""How many draws the table pays for; fewer are worked out one by one, exactly."""

FILE = Path(__file__).with_name("table.u16")


def uptake_fractions(taus: Sequence[float], alphas: Sequence[float]) -> list[float]:
    """Return how much of what each strip will ever take in has gone in, for many draws at once.

    Args:
        taus: dimensionless times D t / (L/2)**2 [-], zero or more, length n.
        alphas: water outside over reachable water inside [-], zero or more, length n.

    Returns:
        Fractions of the final uptake [-], length n, within 1e-4 of the series; fewer than ``MANY``
        are exact.

    Source:
        Crank 1975, eq. 4.37, source id "crank-1975".

    Example:
        >>> [round(one, 3) for one in uptake_fractions([0.2, 0.2], [1.0, 4.0])]
        [0.712, 0.573]
    """
    if len(alphas) < MANY or min(alphas) <= 0 or max(alphas) == inf:
        return [uptake_fraction(tau, alpha) for tau, alpha in zip(taus, alphas, strict=True)]
    found = []
    for tau, (share, upper, lower, down) in zip(taus, _baths(tuple(alphas)), strict=True):
        across = TIMES - TIMES / sqrt(1 + sqrt(tau) / share)
        time = int(across)
        part = across - time
        here = upper[time] + (upper[time + 1] - upper[time]) * part
        there = lower[time] + (lower[time + 1] - lower[time]) * part
        found.append((here + (there - here) * down) / WHOLE)
    return found


@lru_cache(maxsize=8)
def _baths(alphas: tuple[float, ...]) -> list[tuple[float, Sequence[int], Sequence[int], float]]:
    """Return where each bath lies in the table: its share, the rows it is between, and how far.

    The baths of one soak are asked for again and again, by each solute and for strips in pairs.
    """
    found = []
    for alpha in alphas:
        share = alpha / (1 + alpha)
        down = BATHS * sqrt(share)
        bath = int(down)
        found.append((share, _row(bath), _row(bath + 1), down - bath))
    return found


@cache
def _row(bath: int) -> Sequence[int]:
    """Return the fractions of one bath, of ``WHOLE``; one more at the end for times beyond."""
    width = TIMES + 1
    start = min(bath, BATHS) * width
    found = _whole_table()[start : start + width]
    found.append(WHOLE)
    return found


@cache
def _whole_table() -> array[int]:
    found = array("H", FILE.read_bytes())
    if sys.byteorder == "big":
        found.byteswap()
    return found
