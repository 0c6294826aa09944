"""From wet to finished: what a batch weighs when it is dry enough, and when that is.

Files of this room:

- ``shrink``: the balance of solids, and the finished weight for each way of saying "done".
- ``water_held``: water that a gram of salt, of sugar or of meat solids holds (``Gab``).
- ``water_activity``: the water activity of a batch as a ``band``, an estimate and no test; and
  the finished weight at a water activity (``finished_at_water_activity``).
- ``time``: hours ``carried_over`` from the cook's own earlier batch, what may be promised of
  them (``promise``), and a wide range before that (``first_batch_hours``).
- ``curve``: a slab that dries from within, to check whether a time is possible.

Plain numbers in, plain numbers out; in ``shrink``, and in the weights of ``water_activity``, also
columns with one entry a draw. Every working value comes in as an argument. What cannot be is
refused with a ``ValueError`` whose text is a sentence a cook can act on. Names beyond the balance
of solids are imported from their own file, so that a card that shows none of them waits for none.
"""

from tarebook.drying.shrink import (
    Solids,
    finished_at_moisture,
    finished_at_moisture_to_protein,
    finished_at_yield,
    moisture,
    moisture_to_protein,
    solids,
)

__all__ = [
    "Solids",
    "finished_at_moisture",
    "finished_at_moisture_to_protein",
    "finished_at_yield",
    "moisture",
    "moisture_to_protein",
    "solids",
]
