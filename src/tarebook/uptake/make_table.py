"""The making of the table that uptake fractions are read from: ``python -m`` of this module.

Run it when ``crank`` changes. A test makes the table anew and meets the file byte for byte.
"""

from __future__ import annotations

from math import inf

from tarebook.uptake.crank import scaled_erfc, uptake_fraction
from tarebook.uptake.table import BATHS, FILE, TIMES, WHOLE


def made() -> bytes:
    """Return the table: bath by bath from none to unlimited, each from no time to all time."""
    return b"".join(
        round(WHOLE * _fraction(bath / BATHS, time / TIMES)).to_bytes(2, "little")
        for bath in range(BATHS + 1)
        for time in range(TIMES + 1)
    )


def _fraction(down: float, across: float) -> float:
    """Return the fraction at one point, told by how far down and across the table it lies."""
    if across == 1:
        return 1.0
    share, reach = down * down, 1 / (1 - across) ** 2 - 1
    if share == 0:
        return 1 - scaled_erfc(reach)  # the short-time form, which a vanishing bath never leaves
    alpha = inf if share == 1 else share / (1 - share)
    return uptake_fraction((reach * share) ** 2, alpha)


if __name__ == "__main__":
    FILE.write_bytes(made())
