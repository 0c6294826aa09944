"""Figures per finished ounce: from what was measured to what an ounce holds, with its doubt.

Files of this room:

- ``printed``: what a figure on a panel stands for, its rounding undone.
- ``odd_panel``: what looks like a slip in a panel that somebody copied.
- ``makeup``: what one gram of an ingredient brings, sorted by what becomes of it.
- ``facts``: what is known of a batch, and what is missing.
- ``assumptions``: every uncertain input, its range, code and source.
- ``draws``: the draws of those inputs, the same for the same name everywhere; ``make_draws``
  makes the files of what they are dealt by.
- ``finish``: what a batch weighs when it is dry enough, by each way of saying so.
- ``bowl``: what marinade, rub and mix hold; ``strip``: the meat as it meets them.
- ``model``: from bowl to scale, for one setting or a column of draws.
- ``ways``: the batch in each way it may be heated, where the recipe does not say.
- ``agreement``: whether the cook's weights agree, and the likeliest slip where they do not.
- ``weighings``: what the cook's own weights tell of a batch.
- ``range``: low, likely, high, and what is missing; ``ranges``: those of all figures.
- ``ceiling``: the most sodium there could be, with what it comes from.
- ``estimate``: per ounce and per batch; ``many``: its draws by the thousand.
- ``doubt``: doubt of the inputs and of the model itself, told apart.
- ``activity``: water activity of the finished batch, as a band.
- ``swings``: which uncertain input moves a figure most.
- ``narrowing``: what the cook could weigh or say to narrow a figure.
- ``soaking``: how far salt and sugar come with the hours, and when more stop mattering.
- ``a_day``: an ounce held against the house's own figure for a day.
- ``compare``: paired differences between variants.
- ``rounding``: label rounding and percent Daily Value.
"""

from tarebook.nutrition.assumptions import Assumption, assumptions
from tarebook.nutrition.estimate import Estimate, Ounce, estimate
from tarebook.nutrition.facts import Facts, Line, facts_of
from tarebook.nutrition.model import FIGURES
from tarebook.nutrition.range import Range
from tarebook.nutrition.ranges import unit_of

__all__ = [
    "FIGURES",
    "Assumption",
    "Estimate",
    "Facts",
    "Line",
    "Ounce",
    "Range",
    "assumptions",
    "estimate",
    "facts_of",
    "unit_of",
]
