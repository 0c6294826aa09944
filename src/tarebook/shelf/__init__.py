"""All recipes of the house on one list, with what an ounce of each holds.

Files of this room:

- ``rows``: what the list tells of one recipe, sorted and chosen among.
- ``kept``: rows that were worked out before, kept by all that they were worked out from.
- ``many``: thousands of recipes worked out on every core.
- ``gather``: every recipe of the house, worked out or taken from what is kept.
"""

from tarebook.shelf.gather import gather
from tarebook.shelf.rows import SORTS, Row, row_of, sort_rows, under

__all__ = ["SORTS", "Row", "gather", "row_of", "sort_rows", "under"]
