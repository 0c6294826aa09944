"""From wet to finished: what a batch weighs when it is dry enough, and what drips away.

Files of this room:

- ``shrink``: the balance of solids, and the finished weight for each way of saying "done".

Plain numbers in, plain numbers out; floats, or arrays with one entry a draw.
"""

from tarebook.drying.shrink import (
    Solids,
    finished_at_moisture,
    finished_at_moisture_to_protein,
    finished_at_yield,
    lowest_finished,
    moisture,
    moisture_to_protein,
    solids,
)

__all__ = [
    "Solids",
    "finished_at_moisture",
    "finished_at_moisture_to_protein",
    "finished_at_yield",
    "lowest_finished",
    "moisture",
    "moisture_to_protein",
    "solids",
]
