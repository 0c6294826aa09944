"""What to buy for a batch, and what it costs, from what is in the house and the cook's own prices.

Files of this room:

- ``pantry``: the cook's list of what is in the house and what packs cost, kept as TOML.
- ``needs``: what recipes need, food by food, less what is in the house, in shop units.
- ``cost``: what it costs, for the batch and for a finished ounce and pound.
"""

from tarebook.recipe.model import Pack
from tarebook.shopping.cost import Cost, cost_of
from tarebook.shopping.needs import Need, needs_of
from tarebook.shopping.pantry import Pantry, read_pantry

__all__ = ["Cost", "Need", "Pack", "Pantry", "cost_of", "needs_of", "read_pantry"]
