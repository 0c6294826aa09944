"""How a recipe grows with the meat, and what each amount weighs and measures.

Files of this room:

- ``volume_and_mass``: a cook's amount of a food as grams, through a named density.
- ``measuring``: what to take from the drawer, and what the scale should read.
- ``by_meat_weight``: the whole recipe for today's meat.
- ``swap``: one food in another's place.
- ``conversion``: one amount of one food in another unit.

Hours, temperatures and thickness never scale. Curing salt scales with the meat only, is rounded
down, and is refused over its limit (``safety.curing`` holds the limit; this room only weighs).
"""

from tarebook.scaling.by_meat_weight import (
    ScaledIngredient,
    ScaledRecipe,
    scale_by_factor,
    scale_to_meat,
    trimmed,
)
from tarebook.scaling.measuring import Measure, measure_amount
from tarebook.scaling.volume_and_mass import Mass, mass_of

__all__ = [
    "Mass",
    "Measure",
    "ScaledIngredient",
    "ScaledRecipe",
    "mass_of",
    "measure_amount",
    "scale_by_factor",
    "scale_to_meat",
    "trimmed",
]
