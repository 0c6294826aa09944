"""What is known of a kitchen; None wherever nobody said."""

from __future__ import annotations

from fractions import Fraction
from math import pi

from tarebook.tuples import NamedTuple

CM2_PER_FT2 = 929.0304
"""Square centimeters in a square foot, exact: a foot is 30.48 cm."""


class Tray(NamedTuple):
    """The outline of a tray, or of the hole in it.

    Attributes:
        long_mm: the longer side, or the width of a round one [mm], above zero.
        short_mm: the shorter side [mm], or None where it is round.
    """

    long_mm: float
    short_mm: float | None = None

    @property
    def area_cm2(self) -> float:
        """What it covers [cm2]."""
        if self.short_mm is None:
            return pi * self.long_mm**2 / 400
        return self.long_mm * self.short_mm / 100


class Vessel(NamedTuple):
    """A bowl or a bag, by the cook's own name for it.

    Attributes:
        name: what the cook calls it.
        volume_ml: what it holds to the brim [mL].
    """

    name: str
    volume_ml: Fraction


class Kitchen(NamedTuple):
    """A kitchen, as far as the cook told.

    Attributes:
        trays: how many trays the dryer has; 0 says that there is no dryer.
        tray: outline of one of them.
        hole: outline of the hole in its middle, or None where none is told of.
        dryer_f: coolest and hottest the dryer can be set to [degF].
        adjustable: whether its heat can be set at all.
        oven_lowest_f: lowest setting of the oven [degF].
        oven_racks: how many racks the oven has to dry on.
        oven_rack: outline of one of them.
        bowls: bowls and bags.
        drawer: name of the measuring set.
        scale_g: the step that the scale shows [g].
        altitude_m: height above the sea [m].
        units: ``us`` or ``metric``.
        sodium_a_day_mg: the house's own figure for a day [mg]; none unless the cook set one.
        sugars_a_day_g: the same for total sugars [g].
    """

    trays: int | None = None
    tray: Tray | None = None
    hole: Tray | None = None
    dryer_f: tuple[float, float] | None = None
    adjustable: bool | None = None
    oven_lowest_f: float | None = None
    oven_racks: int | None = None
    oven_rack: Tray | None = None
    bowls: tuple[Vessel, ...] = ()
    drawer: str | None = None
    scale_g: Fraction | None = None
    altitude_m: float | None = None
    units: str | None = None
    sodium_a_day_mg: float | None = None
    sugars_a_day_g: float | None = None

    @property
    def tray_cm2(self) -> float | None:
        """What one tray of the dryer offers, its hole taken off [cm2]; None if not known."""
        if self.tray is None:
            return None
        return self.tray.area_cm2 - (self.hole.area_cm2 if self.hole else 0.0)

    @property
    def a_day(self) -> dict[str, float]:
        """The house's own figures for a day, figure of an ounce to amount; empty by default."""
        said = {"sodium_mg": self.sodium_a_day_mg, "sugars_g": self.sugars_a_day_g}
        return {figure: amount for figure, amount in said.items() if amount is not None}


UNKNOWN = Kitchen()
"""The kitchen of a cook who told nothing."""
