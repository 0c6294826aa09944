"""What the meat takes from the marinade, and what stays behind in the bowl.

Files of this room:

- ``crank``: how far a strip has come toward balance with its bath, after a time.
- ``table``: the same for many draws at once, read from one table; ``make_table`` makes it.
- ``maths``, ``arrays``: numbers that the formulae take: one, a column of draws, an array.
- ``soak``: shares of salt, sugars, other matter and oil that end in or on the meat.

Plain numbers in, plain numbers out; the recipe is not known here. Every working value comes in
as an argument. The formulae take single floats, or whole arrays of draws: what differs between
the two (smaller of, larger of, choose, the uptake fraction) comes in as a ``Maths``.
"""

from tarebook.uptake.crank import (
    roots,
    uptake_fraction,
    uptake_fraction_series,
    uptake_fraction_unlimited,
)
from tarebook.uptake.maths import COLUMNS, PLAIN, Column, Maths
from tarebook.uptake.soak import (
    Bath,
    Kept,
    Lost,
    Soaked,
    Strip,
    heated_in_marinade,
    heated_with_drip_lost,
    rubbed,
    soak,
)

__all__ = [
    "COLUMNS",
    "PLAIN",
    "Bath",
    "Column",
    "Kept",
    "Lost",
    "Maths",
    "Soaked",
    "Strip",
    "heated_in_marinade",
    "heated_with_drip_lost",
    "roots",
    "rubbed",
    "soak",
    "uptake_fraction",
    "uptake_fraction_series",
    "uptake_fraction_unlimited",
]
