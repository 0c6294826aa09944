"""How much tray a batch takes, and how many loads that makes."""

from __future__ import annotations

from math import ceil

from tarebook.figures.working import value
from tarebook.kitchen.profile import CM2_PER_FT2, Kitchen, Tray
from tarebook.tuples import NamedTuple

G_PER_LB = 453.59237
QUARTER_INCH_MM = 6.35
_NEARLY = 1e-9


class Dryer(NamedTuple):
    """What there is to dry on.

    Attributes:
        trays: how many, or None if not known.
        tray_cm2: what one of them offers, its hole taken off [cm2], or None if not known.
        heat_f: coolest and hottest it can be set to [degF], or None if not known.
        adjustable: whether its heat can be set, or None if not known.
        oven: whether it is the oven.
    """

    trays: int | None = None
    tray_cm2: float | None = None
    heat_f: tuple[float, float] | None = None
    adjustable: bool | None = None
    oven: bool = False


class Load(NamedTuple):
    """What dries together.

    Attributes:
        meat_g: raw meat [g].
        trays: how many trays it takes; 1 where trays are not known.
        known: whether that is more than a stand-in.
    """

    meat_g: float
    trays: int
    known: bool = True


def dryer_of(kitchen: Kitchen, *, trays: int | None = None, tray: Tray | None = None) -> Dryer:
    """Return what there is to dry on: the dryer, or the oven where there is none.

    Args:
        kitchen: as the cook told.
        trays: how many trays to plan for instead.
        tray: outline of one of them instead.
    """
    if kitchen.trays == 0 and trays is None:
        lowest = kitchen.oven_lowest_f
        return Dryer(
            trays=kitchen.oven_racks or None,
            tray_cm2=kitchen.oven_rack.area_cm2 if kitchen.oven_rack else None,
            heat_f=None if lowest is None else (lowest, 550.0),
            adjustable=True,
            oven=True,
        )
    return Dryer(
        trays=kitchen.trays if trays is None else trays,
        tray_cm2=kitchen.tray_cm2 if tray is None else tray.area_cm2,
        heat_f=kitchen.dryer_f,
        adjustable=kitchen.adjustable,
    )


def area_cm2(meat_g: float, thickness_mm: float) -> float:
    """Return how much tray strips take [cm2].

    Args:
        meat_g: raw meat [g], above zero.
        thickness_mm: of a strip [mm], above zero.

    Returns:
        A square foot for a pound at a quarter inch, and more for thinner ones in proportion.

    Source:
        ``working-values.csv``, row ``tray-area``.

    Example:
        >>> round(area_cm2(2 * 453.59237, 6.35) / 929.0304, 6)
        2.0
    """
    each = value("tray-area").likely * CM2_PER_FT2
    return each * meat_g / G_PER_LB * QUARTER_INCH_MM / thickness_mm


def trays_for(needed_cm2: float, tray_cm2: float) -> int:
    """Return how many trays an area takes, whole ones.

    Example:
        >>> trays_for(5000, 1000), trays_for(5001, 1000)
        (5, 6)
    """
    return max(ceil(needed_cm2 / tray_cm2 - _NEARLY), 1)


def loads_of(meat_g: float, thickness_mm: float, dryer: Dryer) -> tuple[Load, ...]:
    """Return the loads of a batch: full ones first, what is left last.

    Where trays are not known, everything is one load of one tray: whoever asks must say so.

    Args:
        meat_g: raw meat [g].
        thickness_mm: of a strip [mm].
        dryer: what there is to dry on.

    Returns:
        Loads that hold all of the meat together.

    Example:
        >>> dryer = Dryer(trays=5, tray_cm2=929.0304)
        >>> [load.trays for load in loads_of(11 * 453.59237, 6.35, dryer)]
        [5, 5, 1]
    """
    if dryer.tray_cm2 is None:
        return (Load(meat_g, dryer.trays or 1, known=False),)
    needed = trays_for(area_cm2(meat_g, thickness_mm), dryer.tray_cm2)
    if dryer.trays is None:
        return (Load(meat_g, needed),)
    full, left = divmod(needed, dryer.trays)
    each_g = dryer.trays * dryer.tray_cm2 / area_cm2(1.0, thickness_mm)
    if not left:  # the last full load is the one that may be a little short
        full, left = full - 1, dryer.trays
    return (*[Load(each_g, dryer.trays)] * full, Load(meat_g - each_g * full, left))
