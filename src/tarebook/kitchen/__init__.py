"""What a cook's kitchen has: trays, heat, bowls, spoons and scale, asked once and kept.

Everything may be left out: what nobody said is not known, and is never taken for something usual.
The profile lies in the cook's own folder as ``kitchen.toml``, and is edited by hand as gladly as by
questions.

Files of this room:

- ``profile``: ``Kitchen``, ``Tray``, ``Vessel``: what is known.
- ``values``: how each kind of thing is written and read: a tray, a height, yes or no.
- ``keys``: every key of the file, with its question: the reader, the writer and the questions
  follow it.
- ``read``: the text of a file to a ``Kitchen``, with every fault at its line.
- ``write``: the file, with our remarks; a single key set in it, the cook's own remarks kept.
- ``tidy``: the whole file in our order and layout, remarks kept.
- ``load``: where the file lies; what other commands ask of it.
"""

from tarebook.kitchen.load import kitchen_file, load_kitchen
from tarebook.kitchen.profile import UNKNOWN, Kitchen, Tray, Vessel
from tarebook.kitchen.read import read_kitchen

__all__ = [
    "UNKNOWN",
    "Kitchen",
    "Tray",
    "Vessel",
    "kitchen_file",
    "load_kitchen",
    "read_kitchen",
]
