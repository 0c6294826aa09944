"""Units by pint: the same file, read by the units library itself.

Used where its start-up time is welcome, and to prove the exact factors of ``units`` pair by pair.
pint is never given a cook's text, only names that ``units`` knows.
"""

from __future__ import annotations

from fractions import Fraction
from functools import cache
from typing import TYPE_CHECKING

from tarebook.findings import UnitError
from tarebook.quantities.units import Dimension, no_road, unit, units_file

if TYPE_CHECKING:
    from pint import UnitRegistry

__all__ = ["pint_factor", "registry"]


def pint_factor(given: str, to: str) -> Fraction:
    """Return how many of one unit make up another, as pint works it out, exactly.

    Args:
        given: our name of the unit there is (``cup``).
        to: our name of the unit wanted (``milliliter``).

    Returns:
        Factor to multiply an amount in ``given`` by [``to`` per ``given``].

    Raises:
        UnitError: a unit is not known, or the two measure different things.

    Example:
        >>> pint_factor("cup", "tablespoon")
        Fraction(16, 1)
    """
    from pint import DimensionalityError

    have, want = unit(given), unit(to)
    if have.dimension is want.dimension is Dimension.TEMPERATURE:
        raise UnitError("a temperature is not turned by a factor", given=given, wanted=to)
    known = registry()
    one = known.Quantity(Fraction(1), known.Unit(have.name))
    try:
        return Fraction(one.to(known.Unit(want.name)).magnitude)
    except DimensionalityError:
        # Our words, since pint's own cannot print the exact exponent of a volume.
        raise no_road(have, want) from None


@cache
def registry() -> UnitRegistry[Fraction]:
    """Return the one registry of this process, with exact fractions for its numbers."""
    from pint import UnitRegistry

    return UnitRegistry(units_file().splitlines(), non_int_type=Fraction)
