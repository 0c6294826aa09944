"""Doubt of the inputs and doubt of the model itself, told apart.

The range shown holds both. Here each is switched off in turn: the inputs held at their middle, or
the model taken at its word.
"""

from __future__ import annotations

from tarebook.nutrition.assumptions import assumptions
from tarebook.nutrition.draws import percentile, strata
from tarebook.nutrition.estimate import DRAWS, Ounce, estimate
from tarebook.nutrition.facts import Facts
from tarebook.nutrition.range import Range
from tarebook.tuples import NamedTuple

MODEL = "model"
"""Name of the one input that stands for the doubt of the model's own form."""


class Doubt(NamedTuple):
    """The range of one figure with one kind of doubt alone.

    Attributes:
        inputs: the model taken at its word, every input as unsure as it is.
        model: every input at its middle, the model as unsure as it is.
    """

    inputs: Range
    model: Range


def doubt(
    facts: Facts, figure: str = "sodium_mg", *, ounce: Ounce = Ounce.AVOIRDUPOIS
) -> Doubt | None:
    """Return the range of a figure with each kind of doubt alone.

    Args:
        facts: what is known of the batch.
        figure: name of the figure.
        ounce: which ounce.

    Returns:
        The two ranges, or None where the figure has no total.
    """
    middles = {
        name: percentile(list(strata(one.distribution, DRAWS)), 0.5)
        for name, one in assumptions(facts).items()
    }
    others = {name: middle for name, middle in middles.items() if name != MODEL}
    inputs = estimate(facts, ounce=ounce, pinned={MODEL: middles[MODEL]}).per_ounce[figure]
    model = estimate(facts, ounce=ounce, pinned=others).per_ounce[figure]
    return None if inputs is None or model is None else Doubt(inputs, model)
