"""How to get sodium or sugars under a figure: which change, how much of it, and what it costs.

Files of this room:

- ``goal``: what is asked for: a figure, a limit, for an ounce or for the batch.
- ``changes``: what a cook can honestly change, each from nothing to its most.
- ``own_bottles``: the cook's own bottles that hold less, as one more change.
- ``solve``: the least of a change that reaches the goal, in exact grams and in scoops.
"""

from tarebook.target.changes import CHANGES, Change
from tarebook.target.goal import Goal, read_goal
from tarebook.target.solve import (
    Answer,
    Answers,
    Option,
    answers,
    marinade_g,
    marinade_ml,
    marinade_salt_percent,
)

__all__ = [
    "CHANGES",
    "Answer",
    "Answers",
    "Change",
    "Goal",
    "Option",
    "answers",
    "marinade_g",
    "marinade_ml",
    "marinade_salt_percent",
    "read_goal",
]
