"""Amounts as a cook writes them, understood exactly; units, and what to measure them with.

Text comes in as the cook typed it and goes out as exact fractions in named units. Nothing is
rounded until it is printed or measured. Knows nothing of food: volume becomes mass elsewhere,
through a density that was named.

Files of this room:

- ``plain``: what was typed or pasted, in plain characters; odd ones are refused by name.
- ``number``: the one door for numbers: ``1 1/2``, ``½``, ``0.75``, ``5-8``.
- ``units``: units, their words and exact factors, read from ``reference/units.txt``.
- ``forms``: ``packed``, ``minced`` and the small words around an amount.
- ``terms``: an amount taken apart into numbers, units and words.
- ``amount``: ``Amount``, and the readers of amounts, weights and lengths.
- ``temperature``: temperatures, which are read and shown and never scaled.
- ``convert``: the same units by pint, where its start-up time is welcome.
- ``drawer``: spoons and cups, and the fewest scoops that measure a volume.
- ``words``: weights in words.

Imports ``findings``, ``where`` and the standard library; pint only inside functions of
``convert``.
"""

from tarebook.quantities.amount import (
    Amount,
    AmountKind,
    parse_amount,
    parse_length_mm,
    parse_mass,
    to_g,
    to_ml,
)
from tarebook.quantities.drawer import DRAWERS, Drawer, Scoops, Tool, choose_drawer, measure
from tarebook.quantities.forms import parse_form
from tarebook.quantities.number import format_fraction, parse_number, parse_range
from tarebook.quantities.units import (
    Dimension,
    Unit,
    dimension,
    factor,
    read_unit,
    unit,
    unit_text,
    units,
)
from tarebook.quantities.words import format_mass_g, format_pounds

__all__ = [
    "DRAWERS",
    "Amount",
    "AmountKind",
    "Dimension",
    "Drawer",
    "Scoops",
    "Tool",
    "Unit",
    "choose_drawer",
    "dimension",
    "factor",
    "format_fraction",
    "format_mass_g",
    "format_pounds",
    "measure",
    "parse_amount",
    "parse_form",
    "parse_length_mm",
    "parse_mass",
    "parse_number",
    "parse_range",
    "read_unit",
    "to_g",
    "to_ml",
    "unit",
    "unit_text",
    "units",
]
