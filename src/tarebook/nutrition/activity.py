"""Water activity of the finished batch, as a band: an estimate, and never a test of keeping."""

from __future__ import annotations

from collections.abc import Mapping

from tarebook.drying.water_activity import Band, DryMatter, band
from tarebook.drying.water_held import Gab
from tarebook.figures.working import value
from tarebook.nutrition.assumptions import assumptions
from tarebook.nutrition.draws import Distribution, percentile, strata
from tarebook.nutrition.estimate import DRAWS
from tarebook.nutrition.facts import Facts
from tarebook.nutrition.makeup import SODIUM_IN_SALT
from tarebook.nutrition.model import batch, contents
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
    own_salt = (facts.meat.get("sodium_mg") or 0.0) * facts.meat_mass_g / 100
    salt = max(done.figures["sodium_mg"] - own_salt, 0.0) / 1000 / SODIUM_IN_SALT
    sugars = float(done.figures["sugars_g"])
    sucrose = sugars * _sucrose_share(facts, x)
    hexose = sugars - sucrose
    other = done.solids_g - done.figures["fat_g"] - salt - sugars
    dry = DryMatter(salt, sucrose, hexose / 2, hexose / 2, max(other, 0.0))
    water = max(finished - done.solids_g, 0.0)
    half = value("water-activity-band").likely
    return band(
        dry, water_g=water, gab=(_gab("low"), _gab("likely"), _gab("high")), half_width=half
    )


def _sucrose_share(facts: Facts, x: Mapping[str, float]) -> float:
    held = [contents(facts, part, x) for part in Part if facts.has(part)]
    sucrose = sum(one.sucrose for one in held)
    both = sucrose + sum(one.hexose for one in held)
    return float(sucrose / both) if both else 0.5


def _gab(end: str) -> Gab:
    return Gab(*(float(getattr(value(key), end)) for key in ("gab-monolayer", "gab-c", "gab-k")))


def _at(distribution: Distribution, fraction: float) -> float:
    return percentile(list(strata(distribution, DRAWS)), fraction)
