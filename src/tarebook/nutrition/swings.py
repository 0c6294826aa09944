"""Which uncertain input moves a figure most."""

from __future__ import annotations

from collections.abc import Mapping

from tarebook.nutrition.assumptions import Assumption, assumptions
from tarebook.nutrition.draws import Fixed, percentile, strata
from tarebook.nutrition.estimate import DRAWS, Ounce
from tarebook.nutrition.facts import Facts
from tarebook.nutrition.model import batch
from tarebook.tuples import NamedTuple
from tarebook.uptake.maths import PLAIN

LOW, HIGH = 0.10, 0.90
"""The points of an input between which its swing is told."""


class Swing(NamedTuple):
    """How far one input moves a figure, from its 10 to its 90 % point, all else at its middle.

    Attributes:
        input: the uncertain input.
        at_low, at_high: the figure in one ounce at the two points, in the unit of its name.
    """

    input: Assumption
    at_low: float
    at_high: float

    @property
    def size(self) -> float:
        """Distance between the two, in the unit of the figure."""
        return abs(self.at_high - self.at_low)


def swings(
    facts: Facts, figure: str = "sodium_mg", *, ounce: Ounce = Ounce.AVOIRDUPOIS
) -> tuple[Swing, ...]:
    """Return how far each input moves a figure, the widest first.

    Args:
        facts: what is known of the batch.
        figure: name of the figure.
        ounce: which ounce.

    Returns:
        A swing for each uncertain input that moves the figure at all.
    """
    inputs = assumptions(facts)
    middle = {name: at(one, 0.5) for name, one in inputs.items()}

    def per_ounce(changed: Mapping[str, float]) -> float:
        done = batch(facts, {**middle, **changed}, PLAIN)
        finished = done.finished_g if facts.finished_g is None else facts.finished_g
        return float(done.figures[figure] / finished * ounce.grams)

    found = (
        Swing(one, per_ounce({name: at(one, LOW)}), per_ounce({name: at(one, HIGH)}))
        for name, one in inputs.items()
        if not isinstance(one.distribution, Fixed)
    )
    return tuple(sorted((one for one in found if one.size > 0), key=_size, reverse=True))


def at(one: Assumption, fraction: float) -> float:
    """Return a point of an input's distribution, in its unit; ``fraction`` is 0 to 1."""
    return percentile(list(strata(one.distribution, DRAWS)), fraction)


def _size(one: Swing) -> float:
    return one.size
