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
from collections.abc import Sequence
from functools import cache
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
    smallest, largest = min(alphas), max(alphas)
    if len(alphas) < MANY or smallest <= 0 or largest == inf:
        return [uptake_fraction(tau, alpha) for tau, alpha in zip(taus, alphas, strict=True)]
    first = int(_down(smallest))
    rows = [_row(bath) for bath in range(first, int(_down(largest)) + 2)]
    found = []
    for tau, alpha in zip(taus, alphas, strict=True):
        share = alpha / (1 + alpha)
        down = BATHS * sqrt(share) - first
        across = TIMES - TIMES / sqrt(1 + sqrt(tau) / share)
        bath, time = int(down), int(across)
        row, next_row = rows[bath], rows[bath + 1]
        part = across - time
        here, there = row[time], next_row[time]
        here += (row[time + 1] - here) * part
        there += (next_row[time + 1] - there) * part
        found.append(here + (there - here) * (down - bath))
    return found


def _down(alpha: float) -> float:
    """Return how far down the table a bath stands [steps]."""
    return BATHS * sqrt(alpha / (1 + alpha))


@cache
def _row(bath: int) -> tuple[float, ...]:
    """Return the fractions of one bath, one more at the end for times beyond the last."""
    width = 2 * (TIMES + 1)
    start = min(bath, BATHS) * width
    whole = memoryview(_bytes()[start : start + width]).cast("H")
    return (*(one / WHOLE for one in whole), 1.0)


@cache
def _bytes() -> bytes:
    """Return the table in this machine's order of bytes."""
    found = FILE.read_bytes()
    if sys.byteorder == "little":
        return found
    turned = bytearray(found)
    turned[::2], turned[1::2] = found[1::2], found[::2]
    return bytes(turned)
