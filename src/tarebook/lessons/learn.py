"""What a kitchen's own batches say of the next one.

Each batch's yield is taken for the kitchen's own times the chance of the day, on the logarithm.
Few batches tell the chance badly, so that of ``working-values.csv`` counts as if it were some
batches more. What comes out is an observation: the forecast of the model moves toward it, the
further the more batches there are, as it would toward a weight from the scale.
"""

from __future__ import annotations

from collections.abc import Sequence
from math import exp, log

from tarebook.figures.working import value
from tarebook.nutrition.facts import OwnYield


def learn(yields: Sequence[float], *, same_recipe: bool = True) -> OwnYield | None:
    """Return what batches say of the yield of the next one.

    Args:
        yields: finished over raw weight of each [-], above zero.
        same_recipe: whether they are of the recipe that comes next, or of others.

    Returns:
        The middle, its doubt, the chance of one batch, and how many there were; None of none.

    Source:
        Normal batches about an own mean, the spread shrunk toward a prior one by its weight in
        degrees of freedom (Gelman and others, Bayesian Data Analysis, source id "gelman-2013"):
        working values ``own-batch-spread``, ``own-batch-spread-weight``, ``own-other-recipe``.

    Example:
        >>> found = learn([0.40, 0.42, 0.41])
        >>> round(found.middle, 3), found.batches
        (0.41, 3)
    """
    logs = [log(one) for one in yields if one > 0]
    if not logs:
        return None
    count, mean, spread = len(logs), sum(logs) / len(logs), spread_of(logs)
    variance = spread * spread / count
    if not same_recipe:
        variance += value("own-other-recipe").likely ** 2
    return OwnYield(exp(mean), variance**0.5, spread, count, same_recipe)


def spread_of(logs: Sequence[float], usual: float | None = None) -> float:
    """Return how far one batch lies from the kitchen's own mean [-], relative, one sigma.

    Args:
        logs: logarithms of what was measured of each batch, one or more.
        usual: the spread that is usual [-], toward which few batches are shrunk; that of yields
            if none is given.
    """
    weight = value("own-batch-spread-weight").likely
    usual = value("own-batch-spread").likely if usual is None else usual
    mean = sum(logs) / len(logs)
    squares = sum((one - mean) ** 2 for one in logs)
    return float(((weight * usual * usual + squares) / (weight + len(logs) - 1)) ** 0.5)


def own_mean(yields: Sequence[float]) -> tuple[float, float, float]:
    """Return the kitchen's own yield with its 90 % range, from its batches alone [-].

    Args:
        yields: of one or more batches, above zero.

    Returns:
        Low, middle and high: where the mean of very many such batches would lie.
    """
    logs = [log(one) for one in yields]
    mean = sum(logs) / len(logs)
    # Student's points for so many degrees of freedom are wider than the normal ones.
    freedom = value("own-batch-spread-weight").likely + len(logs) - 1
    half = student_95(freedom) * spread_of(logs) / len(logs) ** 0.5
    return exp(mean - half), exp(mean), exp(mean + half)


def student_95(freedom: float) -> float:
    """Return the 95 % point of Student's distribution, to 0.2 % from 3 degrees of freedom up.

    Source: expansion in powers of 1/freedom, Abramowitz and Stegun 26.7.5, source id "as-1964".
    """
    z = 1.6448536269514722
    g1 = (z**3 + z) / 4
    g2 = (5 * z**5 + 16 * z**3 + 3 * z) / 96
    g3 = (3 * z**7 + 19 * z**5 + 17 * z**3 - 15 * z) / 384
    return z + g1 / freedom + g2 / freedom**2 + g3 / freedom**3
