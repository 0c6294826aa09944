"""How far a strip has come toward balance with its bath.

A strip of thickness L, wet on both faces, in a stirred bath of limited volume. Source of the
equations: Crank, The Mathematics of Diffusion, 2nd ed., 1975, eq. 4.18 (unlimited bath) and 4.37
(limited volume), source id ``crank-1975``. Three symbols of that book are kept:

- ``tau``  = D t / l**2, with l = L / 2 [-], zero or more;
- ``alpha`` = water outside / water inside the strip that the solute can reach [-], above zero;
- ``q``    = the positive roots of tan q = -alpha q [-].
"""

from __future__ import annotations

from collections.abc import Sequence
from functools import lru_cache
from math import atan, erfc, exp, inf, pi, sqrt

# Below this tau the two faces do not yet feel each other: the closed short-time form is good to
# 1e-7; above it a few terms of the series are. Both are checked against 400 terms in the tests.
SHORT_TAU = 0.06
_TERMS_AFTER_SHORT = 6
# exp(-18) is 1.5e-8: terms beyond it change no digit that is ever shown.
NOTHING_LEFT = 18.0
# Baths of one soak that differ by no more than this factor share one set of roots, solved on
# this many of them.
_ALIKE, _BATHS = 4.0, 32
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
    if tau <= 0:
        return 0.0 if alpha > 0 else 1.0
    if alpha <= 0:
        return 1.0
    if alpha > _UNLIMITED_ALPHA:
        return uptake_fraction_unlimited(tau)
    if tau <= SHORT_TAU:
        return min(1.0, (1 + alpha) * (1 - _scaled_erfc(sqrt(tau) / alpha)))
    return uptake_fraction_series(tau, alpha, terms=_TERMS_AFTER_SHORT)


def uptake_fractions(taus: Sequence[float], alphas: Sequence[float]) -> list[float]:
    """Return :func:`uptake_fraction` for many draws of one soak at once.

    The baths of one soak are alike: the roots are solved on a few of them and read between, so
    that a draw costs a fifth of what it does alone.

    Args:
        taus: dimensionless times [-], length n.
        alphas: water outside over reachable water inside [-], length n.

    Returns:
        Fractions of the final uptake [-], length n, within 1e-4 of the exact series.

    Source:
        Crank 1975, eq. 4.37, source id "crank-1975".
    """
    table = series_terms(min(alphas), max(alphas))
    if table is None:
        return [uptake_fraction(*each) for each in zip(taus, alphas, strict=True)]
    outside, step, terms = table
    found = []
    for tau, alpha in zip(taus, alphas, strict=True):
        if tau <= SHORT_TAU:
            found.append(uptake_fraction(tau, alpha))
            continue
        place, left = (alpha / (1 + alpha) - outside) / step, 1.0
        before = int(place)
        part = place - before
        for term in terms:
            (square, weight), (next_square, next_weight) = term[before], term[before + 1]
            decay = (square + (next_square - square) * part) * tau
            if decay > NOTHING_LEFT:
                break
            left -= (weight + (next_weight - weight) * part) * exp(-decay)
        found.append(left)
    return found


Terms = tuple[tuple[tuple[float, float], ...], ...]


def series_terms(low: float, high: float) -> tuple[float, float, Terms] | None:
    """Return a table of the series over baths that are alike.

    Args:
        low, high: the least and the greatest alpha [-].

    Returns:
        The share of water outside in the first bath, the step of it from bath to bath, and for
        each term of the series its squared root and its weight in every bath. None where the
        baths are too unlike for one table, or have no water or no end.
    """
    if not 0 < low or high > _ALIKE * low or high > _UNLIMITED_ALPHA:
        return None
    # Between baths the roots run straightest along the share of water that is outside.
    outside = low / (1 + low)
    step = (high / (1 + high) - outside) / (_BATHS - 1) or 1e-9
    return outside, step, _terms(outside, step)


@lru_cache(maxsize=16)
def _terms(outside: float, step: float) -> Terms:
    """Return the terms of the series for baths evenly spaced by their share of the water."""
    shares = [outside + step * place for place in range(_BATHS)]
    baths = [share / (1 - share) for share in shares]
    baths.append(baths[-1])
    return tuple(
        tuple(_term(n, alpha) for alpha in baths) for n in range(1, _TERMS_AFTER_SHORT + 1)
    )


def _term(n: int, alpha: float) -> tuple[float, float]:
    """Return the square of a root, and the weight of its term."""
    q = _root(n, alpha)
    return q * q, 2 * alpha * (1 + alpha) / (1 + alpha + (alpha * q) ** 2)


def uptake_fraction_unlimited(tau: float) -> float:
    """Return the same fraction in a bath so large that it never weakens.

    Args:
        tau: dimensionless time [-], zero or more.

    Returns:
        Fraction of the final uptake [-], 0 to 1.

    Source:
        Crank 1975, eq. 4.18 and its short-time form, source id "crank-1975".
    """
    if tau <= 0:
        return 0.0
    if tau <= SHORT_TAU:
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
        if decay > NOTHING_LEFT:
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


def _scaled_erfc(x: float) -> float:
    """Return exp(x*x) erfc(x) for x >= 0; the plain product overflows from x = 27."""
    if x < 12:
        return exp(x * x) * erfc(x)
    inverse = 1 / (2 * x * x)
    return (1 - inverse * (1 - 3 * inverse * (1 - 5 * inverse))) / (x * sqrt(pi))
