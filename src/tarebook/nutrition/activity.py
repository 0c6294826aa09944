"""Water activity of the finished batch, as a band: an estimate, and never a test of keeping."""

from __future__ import annotations

from collections.abc import Mapping

from tarebook.drying.water_activity import Band, band
from tarebook.figures.working import value
from tarebook.nutrition.assumptions import assumptions
from tarebook.nutrition.bowl import contents, sugars_put_in
from tarebook.nutrition.draws import Distribution, percentile, strata
from tarebook.nutrition.estimate import DRAWS
from tarebook.nutrition.facts import Facts
from tarebook.nutrition.finish import dry_matter, meat_solids
from tarebook.nutrition.model import batch
from tarebook.recipe.model import Part
from tarebook.uptake.maths import PLAIN

_FINISHES = (0.10, 0.50, 0.90)


def activity_band(facts: Facts) -> Band | None:
    """Return where the water activity of the finished batch is likely to lie.

    Args:
        facts: what is known of the batch.

    Returns:
        A band [-] over the likely finishes, or over the model alone where the batch was weighed;
        None for what is not meat, whose solids hold water otherwise.

    Source:
        ``drying.water_activity``; constants in ``working-values.csv``, rows ``gab-…``.
    """
    if facts.moisture_food:
        return None
    inputs = assumptions(facts)
    middle = {name: _at(one.distribution, 0.5) for name, one in inputs.items()}
    finishes = (0.5,) if facts.finished_g is not None else _FINISHES
    found = [
        _band(facts, {**middle, "finish": _at(inputs["finish"].distribution, point)})
        for point in finishes
    ]
    return Band(
        low=min(one.low for one in found),
        likely=found[len(found) // 2].likely,
        high=max(one.high for one in found),
    )


def _band(facts: Facts, x: Mapping[str, float]) -> Band:
    done = batch(facts, x, PLAIN)
    finished = done.finished_g if facts.finished_g is None else facts.finished_g
    parts = {part: contents(facts, part, x) for part in Part if facts.has(part)}
    dry = dry_matter(facts, done.figures, done.solids_g, sugars_put_in(parts), PLAIN)
    water = max(finished - done.solids_g, 0.0)
    ends = meat_solids("low"), meat_solids("likely"), meat_solids("high")
    return band(dry, water_g=water, gab=ends, half_width=value("water-activity-band").likely)


def _at(distribution: Distribution, fraction: float) -> float:
    return percentile(list(strata(distribution, DRAWS)), fraction)
