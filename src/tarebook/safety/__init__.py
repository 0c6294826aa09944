"""What can hurt someone, and who says so: published rules held against a recipe.

Nothing is ever found harmless here. A rule that is silent has only found nothing, and local codes
and licensed practice stand over all of it. Where bodies differ the most cautious figure is used and
the others are named; where no rule is held, that is said and no keeping time is given.

Files of this room:

- ``rules``: ``RULES``, ``TO_KNOW``, ``check``, ``cautions``: every rule, in two tuples.
- ``rulebook``: ``rule``, ``limit``, ``degrees``: the rules as data (``rules.csv``,
  ``rule-figures.csv``, ``rule-foods.csv``; sources in ``sources-safety.toml``).
- ``case``: ``Case``: what a rule looks at.
- ``caution``: ``Caution``, and the title and order of every code.
- ``heat``, ``dryer``, ``ground``, ``soak``, ``cure``, ``game``, ``eaters``: the rules themselves.
- ``curing``: ``guard``, ``guard_scaled``: over the limit nothing is printed; ``ingoing``: nitrite
  by each published method.
- ``heated``: ``as_heated``: a recipe as it is made with a heat step, its own or another.
- ``method``: soak, heat and dryer as a card's front says them; ``steps``: the recipe's own words,
  held against words of danger (``step_words``), by their clauses (``clauses``).
- ``storage``: ``keep_by``: how long it keeps, or why nobody can say.
"""

from tarebook.safety.case import Animal, Case
from tarebook.safety.caution import Caution
from tarebook.safety.rules import RULES, TO_KNOW, cautions, check
from tarebook.safety.storage import KeepBy, KeepLimit, keep_by

__all__ = [
    "RULES",
    "TO_KNOW",
    "Animal",
    "Case",
    "Caution",
    "KeepBy",
    "KeepLimit",
    "cautions",
    "check",
    "keep_by",
]
