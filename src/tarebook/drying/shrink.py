"""The balance of solids through drying, and the finished weight.

Only water leaves; whatever is solid stays, less what drips. So the finished weight is the solids
plus the water that is left, and "dry enough" may be said as a moisture, as water over protein,
as a yield, or by the scale.
"""

from __future__ import annotations

from tarebook.tuples import NamedTuple
from tarebook.uptake.maths import Maths, Number


class Solids(NamedTuple):
    """What cannot evaporate [g], by where it came from."""

    meat_g: Number
    taken_g: Number

    @property
    def total_g(self) -> Number:
        """All of it [g]."""
        return self.meat_g + self.taken_g


def solids(
    *,
    raw_mass_g: Number,
    water_fraction: Number,
    solubles_lost_g: Number,
    fat_drip_g: Number,
    taken_g: Number,
    drip_fraction: Number,
) -> Solids:
    """Return the solids of a batch as they lie on the trays.

    Args:
        raw_mass_g: raw trimmed meat [g], above zero.
        water_fraction: water in it [g per g], 0 to 1; solids are the rest.
        solubles_lost_g: the meat's own solids that leaked into a marinade or a drip [g].
        fat_drip_g: melted fat that drips off [g].
        taken_g: salt, sugar and other matter kept from marinade, rub or mix [g].
        drip_fraction: part of the taken solids that drips off in drying [-].

    Returns:
        Solids of the meat and of what it took [g].
    """
    own = raw_mass_g * (1 - water_fraction) - solubles_lost_g - fat_drip_g
    return Solids(own, taken_g * (1 - drip_fraction))


def finished_at_moisture_to_protein(
    *, solids_g: Number, protein_g: Number, ratio: Number
) -> Number:
    """Return the finished weight at a given water over protein.

    Args:
        solids_g: all solids [g], above zero.
        protein_g: protein among them [g].
        ratio: grams of water left for each gram of protein [-], zero or more.

    Returns:
        Finished weight [g].

    Example:
        >>> round(finished_at_moisture_to_protein(solids_g=270, protein_g=225, ratio=0.5), 1)
        382.5
    """
    return solids_g + ratio * protein_g


def finished_at_moisture(*, solids_g: Number, moisture: Number) -> Number:
    """Return the finished weight at a given moisture [g]; moisture is a fraction below 1 [-]."""
    return solids_g / (1 - moisture)


def finished_at_yield(
    *, raw_mass_g: Number, yield_fraction: Number, solids_g: Number, maths: Maths
) -> Number:
    """Return the finished weight at a given yield, never below the solids.

    Args:
        raw_mass_g: raw trimmed meat [g].
        yield_fraction: finished over raw weight [-].
        solids_g: all solids [g]; water cannot be negative, so this is the floor.
        maths: operations for this kind of number.

    Returns:
        Finished weight [g].
    """
    return maths.larger(raw_mass_g * yield_fraction, solids_g)


def moisture(*, finished_g: Number, solids_g: Number) -> Number:
    """Return the water left in a finished batch [g per g]."""
    return (finished_g - solids_g) / finished_g


def moisture_to_protein(*, finished_g: Number, solids_g: Number, protein_g: Number) -> Number:
    """Return grams of water left for each gram of protein [-]."""
    return (finished_g - solids_g) / protein_g
