"""The making of what draws are dealt by: ``python -m`` of this module.

Run it when ``STANDING`` or the deal of ``draws`` changes, or a working value. A test makes the
files anew and meets them byte for byte.
"""

from __future__ import annotations

import sys
from array import array
from fractions import Fraction
from math import log

from tarebook.nutrition.assumptions import assumptions
from tarebook.nutrition.draws import (
    JUDGEMENTS,
    KEPT,
    ORDERS,
    STANDING,
    LogPert,
    Pert,
    mode_place,
    order,
    unit_pert,
)
from tarebook.nutrition.facts import facts_of
from tarebook.quantities.drawer import choose_drawer
from tarebook.recipe.load import load_recipe, shipped_recipes
from tarebook.scaling import scale_by_factor


def made_orders() -> bytes:
    """Return the order of every standing input, one byte a draw, in their order."""
    return b"".join(bytes(order(name, KEPT)) for name in STANDING)


def made_judgements() -> bytes:
    """Return the modes of the judgements about the shipped recipes, each before its quantiles."""
    found = array("d")
    for mode in sorted(_modes()):
        found.append(mode)
        found.extend(unit_pert(mode, KEPT))
    if sys.byteorder == "big":
        found.byteswap()
    return found.tobytes()


def _modes() -> set[float]:
    found = set()
    for name in shipped_recipes():
        scaled = scale_by_factor(load_recipe(name)[0], Fraction(1), choose_drawer("basic"))
        for one in assumptions(facts_of(scaled)).values():
            match one.distribution:
                case Pert(low, likely, high):
                    found.add(mode_place(low, likely, high))
                case LogPert(low, likely, high):
                    found.add(mode_place(log(low), log(likely), log(high)))
    return found


if __name__ == "__main__":
    ORDERS.write_bytes(made_orders())
    JUDGEMENTS.write_bytes(made_judgements())
