"""How far a strip has come toward balance with its bath.

A strip of thickness L, wet on both faces, in a stirred bath of limited volume. Source of the
equations: Crank, The Mathematics of Diffusion, 2nd ed., 1975, eq. 4.18 (unlimited bath) and 4.37
(limited volume), source id ``crank-1975``. Three symbols of that book are kept:

- ``tau``  = D t / l**2, with l = L / 2 [-], zero or more;
- ``alpha`` = water outside / water inside the strip that the solute can reach [-], above zero;
- ``q``    = the positive roots of tan q = -alpha q [-].
"""

from __future__ import annotations

from math import atan, erfc, exp, inf, pi, sqrt

# Below this tau the two faces do not yet feel each other: the closed short-time form is good to
# 1e-8; above it a few terms of the series are. The tests hold both against the Laplace transform.
_SHORT_TAU = 0.06
_TERMS_AFTER_SHORT = 6
# exp(-18) is 1.5e-8: terms beyond it change no digit that is ever shown.
_NOTHING_LEFT = 18.0
# Newton's error is the square of its last step: this one leaves 1e-14.
_STEP_THAT_SETTLES = 1e-7
# Above this ratio the bath is unlimited to every printed digit.
_UNLIMITED_ALPHA = 1e6


def uptake_fraction(tau: float, alpha: float) -> float:
    """Return how much of what the strip will ever take in has gone in so far.

    Args:
        tau: dimensionless time D t / (L/2)**2 [-], zero or more.
        alpha: water outside over reachable water inside [-], zero or more; ``inf`` is allowed.

    Returns:
        Fraction of that bath's own final uptake [-], 0 to 1, within 1e-6 of the exact series.
        With no free water outside (alpha 0) all of it is in: 1.

    Source:
        Crank 1975, eq. 4.37 and its short-time form, source id "crank-1975".

    Example:
        >>> round(uptake_fraction(0.2, 1.0), 5)
        0.71163
    """
    if alpha <= 0:
        return 1.0
    if alpha > _UNLIMITED_ALPHA:
        return uptake_fraction_unlimited(tau)
    if tau <= _SHORT_TAU:
        return (1 + alpha) * (1 - scaled_erfc(sqrt(tau) / alpha))
    return uptake_fraction_series(tau, alpha, terms=_TERMS_AFTER_SHORT)


def uptake_fraction_unlimited(tau: float) -> float:
    """Return the same fraction in a bath so large that it never weakens.

    Args:
        tau: dimensionless time [-], zero or more.

    Returns:
        Fraction of the final uptake [-], 0 to 1.

    Source:
        Crank 1975, eq. 4.18 and its short-time form, source id "crank-1975".
    """
    if tau <= _SHORT_TAU:
        return 2 * sqrt(tau / pi)
    left = 0.0
    for n in range(_TERMS_AFTER_SHORT):
        odd = (2 * n + 1) ** 2 * pi * pi
        left += 8 / odd * exp(-odd * tau / 4)
    return 1 - left


def uptake_fraction_series(tau: float, alpha: float, *, terms: int) -> float:
    """Return the fraction from the first terms of the series, however slowly it converges.

    Args:
        tau: dimensionless time [-], above zero.
        alpha: water outside over reachable water inside [-], above zero and finite.
        terms: how many terms of the series; 60 are enough from tau = 0.001 up.

    Returns:
        Fraction of the final uptake [-].

    Source:
        Crank 1975, eq. 4.37, source id "crank-1975".
    """
    left = 0.0
    for n in range(1, terms + 1):
        q = _root(n, alpha)
        decay = q * q * tau
        if decay > _NOTHING_LEFT:
            break
        left += 2 * alpha * (1 + alpha) / (1 + alpha + (alpha * q) ** 2) * exp(-decay)
    return 1 - left


def roots(alpha: float, *, count: int) -> tuple[float, ...]:
    """Return the first positive roots of tan q = -alpha q.

    Args:
        alpha: zero or more; ``inf`` is allowed.
        count: how many roots.

    Returns:
        The roots q_1 < q_2 < … [-], length ``count``.

    Source:
        Crank 1975, Table 4.1, source id "crank-1975".
    """
    if alpha == inf:
        return tuple((n - 0.5) * pi for n in range(1, count + 1))
    return tuple(_root(n, alpha) for n in range(1, count + 1))


def _root(n: int, alpha: float) -> float:
    """Solve q = n pi - atan(alpha q) by Newton's method: the tangent itself is never taken."""
    whole = n * pi
    q = whole - atan(alpha * (whole - 1.0))
    for _ in range(8):
        reach = alpha * q
        step = (q - whole + atan(reach)) / (1 + alpha / (1 + reach * reach))
        q -= step
        if abs(step) < _STEP_THAT_SETTLES:
            break
    return q


def scaled_erfc(x: float) -> float:
    """Return exp(x*x) erfc(x); the plain product overflows from x = 27.

    Args:
        x: zero or more.
    """
    if x < 12:
        return exp(x * x) * erfc(x)
    inverse = 1 / (2 * x * x)
    return (1 - inverse * (1 - 3 * inverse * (1 - 5 * inverse))) / (x * sqrt(pi))
