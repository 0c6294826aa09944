"""The ways in which the meat may have been heated, where the recipe does not say.

Each is worked out with all of the draws, and the range is over all of them together: so it rests
on as many draws as any other. A draw by itself has one way, the one that its own input says.
"""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Callable, Mapping, Sequence
from itertools import accumulate

from tarebook.nutrition.assumptions import Assumption
from tarebook.nutrition.draws import Fixed
from tarebook.nutrition.facts import Facts
from tarebook.nutrition.model import Batch, batch, heat_edges, unheated
from tarebook.recipe.model import HeatStep
from tarebook.uptake.maths import Column, Maths, Number

Picker = Callable[[Sequence[list[float]]], list[float]]


def ways_of(
    facts: Facts, inputs: Mapping[str, Assumption], x: Mapping[str, Number], maths: Maths
) -> list[tuple[float, Batch]]:
    """Return how likely each way of heating the meat is, and the batch then.

    Args:
        facts: what is known of the batch.
        inputs: the uncertain inputs by name.
        x: draws of them.
        maths: operations for their kind of number.

    Returns:
        One way where the step is stated or the input that stands for it is pinned, else three;
        the likelihoods add up to 1.
    """
    if facts.heat is not HeatStep.UNSTATED or isinstance(inputs["heat-case"].distribution, Fixed):
        return [(1.0, batch(facts, x, maths))]
    raw = unheated(facts, x, maths)
    to_simmer, to_steam = heat_edges()
    return [
        (how_likely, batch(facts._replace(heat=step), x, maths, raw))
        for how_likely, step in (
            (to_simmer, HeatStep.SIMMERED),
            (to_steam - to_simmer, HeatStep.STEAMED),
            (1 - to_steam, HeatStep.OVEN_AFTER),
        )
    ]


def picker(ways: Sequence[tuple[float, Batch]], x: Mapping[str, Number]) -> Picker:
    """Return what picks, for each draw, the value of the way that the draw itself has.

    Args:
        ways: as :func:`ways_of` gives them.
        x: draws of the inputs.

    Returns:
        A function of the draws in each way, in their order; it returns one list of draws.
    """
    if len(ways) == 1:
        return lambda each: each[0]
    edges = list(accumulate(how_likely for how_likely, _ in ways[:-1]))
    which = [bisect_right(edges, one) for one in x["heat-case"]]
    return lambda each: [each[way][at] for at, way in enumerate(which)]


def values(number: object, draws: int) -> list[float]:
    """Return a number as a list of draws; a plain one as that many alike."""
    if isinstance(number, Column):
        return list(number)
    if getattr(number, "ndim", 0):  # an array of draws
        return list(number.tolist())  # type: ignore[attr-defined]
    return [float(number)] * draws  # type: ignore[arg-type]
