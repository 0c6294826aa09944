"""What the cook could weigh or say to narrow a figure, and by how much."""

from __future__ import annotations

from collections.abc import Iterator

from tarebook.nutrition.assumptions import assumptions
from tarebook.nutrition.draws import percentile, strata
from tarebook.nutrition.estimate import DRAWS, Ounce, estimate
from tarebook.nutrition.facts import Facts
from tarebook.nutrition.model import batch
from tarebook.nutrition.range import Range
from tarebook.recipe.model import HeatStep, Part
from tarebook.tuples import NamedTuple
from tarebook.uptake.maths import PLAIN


class Narrowing(NamedTuple):
    """One thing to do, and the range of the figure once it is done.

    Attributes:
        words: what to do, in a cook's words.
        after: the range then, if what is found is what was likely.
    """

    words: str
    after: Range


def narrowings(
    facts: Facts, figure: str = "sodium_mg", *, ounce: Ounce = Ounce.AVOIRDUPOIS
) -> tuple[Narrowing, ...]:
    """Return what would narrow a figure, the narrowest outcome first.

    Each is the estimate run again as if the scale had read what was likely.

    Args:
        facts: what is known of the batch.
        figure: name of the figure.
        ounce: which ounce.

    Returns:
        Only what is not known yet, and only what narrows the range at all.
    """
    now = estimate(facts, ounce=ounce).per_ounce[figure]
    if now is None:
        return ()
    found = []
    for words, told in _untold(facts):
        after = estimate(told, ounce=ounce).per_ounce[figure]
        if after is not None and _width(after) < _width(now):
            found.append(Narrowing(words, after))
    return tuple(sorted(found, key=_narrowest))


def _untold(facts: Facts) -> Iterator[tuple[str, Facts]]:
    likely = batch(
        facts,
        {
            name: percentile(list(strata(one.distribution, DRAWS)), 0.5)
            for name, one in assumptions(facts).items()
        },
        PLAIN,
    )
    finished = facts._replace(finished_g=float(likely.finished_g))
    soaked = float(likely.soaked_g)
    soaks = facts.has(Part.MARINADE) and facts.soaked_g is None
    if facts.heat is HeatStep.UNSTATED:
        yield "say in the recipe how it is heated", facts._replace(heat=HeatStep.STEAMED)
    if facts.finished_g is None:
        yield "weigh the finished batch", finished
        if soaks:
            both = finished._replace(soaked_g=soaked)
            yield "weigh the strips after soaking, and the finished batch", both
    elif soaks:
        yield "weigh the strips after soaking", facts._replace(soaked_g=soaked)


def _width(found: Range) -> float:
    return (found.high - found.low) / found.likely if found.likely else 0.0


def _narrowest(one: Narrowing) -> float:
    return _width(one.after)
