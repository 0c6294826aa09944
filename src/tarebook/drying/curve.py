"""How long a strip dries if nothing but travel inside it holds the water up.

A check on whether a time is possible, for whoever asks from Python: no command needs it. No dryer
follows it to the hour; what is told a cook comes from ``time``.
"""

from __future__ import annotations

from math import log

from tarebook.uptake.crank import uptake_fraction_unlimited

_SECONDS_PER_HOUR = 3600


def moisture_ratio(*, now: float, start: float, balance: float) -> float:
    """Return how much of the water that can leave is still there.

    Args:
        now, start: water now and at the start [g per g of dry matter].
        balance: water that stays for ever in that air [g per g of dry matter], below ``start``.

    Returns:
        Moisture ratio [-]: 1 at the start, 0 at balance with the air.

    Raises:
        ValueError: not 0 <= balance <= now <= start, or nothing can leave.
    """
    if not 0 <= balance <= now <= start or balance == start:
        raise ValueError(
            "water falls from the start toward its balance with the air, never past it"
        )
    return (now - balance) / (start - balance)


def slab_tau(ratio: float) -> float:
    """Return the dimensionless time at which a drying slab comes to a moisture ratio.

    Args:
        ratio: moisture ratio [-], above 0 and at most 1.

    Returns:
        D t / (L/2)**2 [-].

    Raises:
        ValueError: the ratio is outside its limits.

    Source:
        Crank 1975, eq. 4.18, source id "crank-1975".

    Example:
        >>> round(slab_tau(0.2), 5)
        0.56716
    """
    _refuse_ratio(ratio)
    # The last term alone decays as exp(-pi**2 tau / 4), so this is always past the answer.
    low, high = 0.0, 1 - log(ratio)
    for _ in range(60):
        middle = (low + high) / 2
        if 1 - uptake_fraction_unlimited(middle) > ratio:
            low = middle
        else:
            high = middle
    return (low + high) / 2


def slab_hours(*, ratio: float, thickness_mm: float, diffusivity_m2_s: float) -> float:
    """Return how long a strip dries if water travelling inside it is all that holds it up.

    Args:
        ratio: moisture ratio to come to [-], above 0 and at most 1.
        thickness_mm: of the strip, both faces open [mm], above zero.
        diffusivity_m2_s: of water in it [m2/s], above zero.

    Returns:
        Time [h]. A check on whether a time is possible, not a promise.

    Raises:
        ValueError: an argument outside its limits.

    Source:
        Crank 1975, eq. 4.18, source id "crank-1975".
    """
    _refuse(thickness_mm > 0 and diffusivity_m2_s > 0, "thickness and diffusivity are above zero")
    half_m = thickness_mm / 2000
    return slab_tau(ratio) * half_m * half_m / diffusivity_m2_s / _SECONDS_PER_HOUR


def _refuse_ratio(ratio: float) -> None:
    _refuse(0 < ratio <= 1, f"a moisture ratio of {ratio:g}: above 0, at most 1")


def _refuse(sensible: bool, why: str) -> None:
    if not sensible:
        raise ValueError(why)
