"""Water activity by adding up the water that salt, sugar and meat solids each hold.

A copy of the equations for the tests, kept apart from whatever the package makes of them: at one
common water activity every part holds its own water (salt after Tang and others 1997, sucrose
after Norrish, meat solids after the GAB isotherm; the constants are from memory or working values).
"""

from __future__ import annotations

from functools import cache
from typing import Any

import numpy as np

Array = Any

WATER, SUCROSE = 18.01528, 342.297  # g per mol
NORRISH_SUCROSE = -6.47
ACTIVITIES = np.linspace(0.55, 0.995, 891)


def held_by_salt(activity: Array) -> Array:
    """Return the water that a gram of salt holds, dissolved beyond saturation as well [g]."""
    percent = np.linspace(0.01, 48, 20_000)
    terms = (6.366e-3, -8.624e-5, 1.158e-5, -1.518e-7)
    over = 1 - sum(term * percent ** (n + 1) for n, term in enumerate(terms))
    return np.interp(activity, over[::-1], ((100 - percent) / percent)[::-1])


def held_by_sucrose(activity: Array) -> Array:
    """Return the water that a gram of sucrose holds [g]."""
    part = np.linspace(1e-4, 0.25, 20_000)  # mole fraction of sucrose
    over = (1 - part) * np.exp(NORRISH_SUCROSE * part**2)
    return np.interp(activity, over[::-1], ((1 - part) / part * WATER / SUCROSE)[::-1])


def held_by_meat(activity: Array, monolayer: Array, c: Array, k: Array) -> Array:
    """Return the water that a gram of meat solids free of fat, salt and sugar holds [g]."""
    near = k * activity
    return monolayer * c * near / ((1 - near) * (1 - near + c * near))


@cache
def _curves() -> tuple[Array, Array]:
    return held_by_salt(ACTIVITIES), held_by_sucrose(ACTIVITIES)


def water_held(
    *, salt_g: float, sugars_g: float, other_g: float, gab: tuple[float, float, float]
) -> Array:
    """Return the water that a batch holds at each of ``ACTIVITIES`` [g].

    Args:
        salt_g, sugars_g: as they lie in the batch [g]; all sugar is taken for sucrose.
        other_g: its other solids, fat left out [g].
        gab: monolayer [g per g], C and K of its isotherm [-].
    """
    salt, sucrose = _curves()
    return salt_g * salt + sugars_g * sucrose + other_g * held_by_meat(ACTIVITIES, *gab)
