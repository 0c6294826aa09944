"""What a batch weighs when it is dry enough, by each way of saying when that is."""

from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING

from tarebook.drying import (
    finished_at_moisture,
    finished_at_moisture_to_protein,
    finished_at_yield,
)
from tarebook.figures.working import value
from tarebook.nutrition.facts import Facts
from tarebook.nutrition.makeup import SODIUM_IN_SALT
from tarebook.recipe.model import FinishBy
from tarebook.uptake.maths import Maths, Number

if TYPE_CHECKING:
    from tarebook.drying.water_activity import DryMatter
    from tarebook.drying.water_held import Gab

_DROPLET_G = 1e-6


def finished_weight(
    facts: Facts,
    figures: Mapping[str, Number],
    solids_g: Number,
    sugars_g: tuple[Number, Number],
    x: Mapping[str, Number],
    maths: Maths,
) -> Number:
    """Return what the finished batch weighs by the recipe's own finish, or by the usual one.

    Args:
        facts: what is known of the batch.
        figures: whole-batch figures by name.
        solids_g: all solids in it [g].
        sugars_g: sucrose and hexoses of everything that was put on the meat [g].
        x: the inputs; ``finish`` is read here.
        maths: operations for this kind of number.

    Returns:
        Finished weight [g].
    """
    match facts.finish_by():
        case FinishBy.MOISTURE:
            return finished_at_moisture(solids_g=solids_g, moisture=x["finish"])
        case FinishBy.YIELD:
            return finished_at_yield(
                raw_mass_g=facts.meat_mass_g,
                yield_fraction=x["finish"],
                solids_g=solids_g,
                maths=maths,
            )
        case FinishBy.WATER_ACTIVITY:
            dry = dry_matter(facts, figures, solids_g, sugars_g, maths)
            return _at_activity(dry, solids_g, x["finish"] + x["activity-error"], maths)
        case _:
            return finished_at_moisture_to_protein(
                solids_g=solids_g, protein_g=figures["protein_g"], ratio=x["finish"]
            )


def dry_matter(
    facts: Facts,
    figures: Mapping[str, Number],
    solids_g: Number,
    sugars_g: tuple[Number, Number],
    maths: Maths,
) -> DryMatter:
    """Return what is not water in a finished batch, by how it holds water [g].

    Args:
        facts, figures, solids_g, sugars_g, maths: as for :func:`finished_weight`.

    Returns:
        Salt but for the meat's own, whose ions are bound in it; sugars, of which hexoses count as
        half glucose, half fructose; the rest without the fat.
    """
    from tarebook.drying.water_activity import DryMatter

    own_mg = (facts.meat.get("sodium_mg") or 0.0) * facts.meat_mass_g / 100
    salt = maths.larger(figures["sodium_mg"] - own_mg, 0.0) / 1000 / SODIUM_IN_SALT
    sugars = figures["sugars_g"]
    sucrose, hexose = sugars_g
    share = sucrose / maths.larger(sucrose + hexose, _DROPLET_G)
    other = maths.larger(solids_g - figures["fat_g"] - salt - sugars, 0.0)
    half = sugars * (1 - share) / 2
    return DryMatter(salt, sugars * share, half, half, other)


def meat_solids(end: str) -> Gab:
    """Return the sorption constants of meat solids: ``low``, ``likely`` or ``high``."""
    from tarebook.drying.water_held import Gab

    return Gab(*(float(getattr(value(key), end)) for key in ("gab-monolayer", "gab-c", "gab-k")))


def _at_activity(dry: DryMatter, solids_g: Number, aim: Number, maths: Maths) -> Number:
    from tarebook.drying.water_activity import finished_at_water_activity
    from tarebook.drying.water_held import HIGHEST_ACTIVITY, LOWEST_ACTIVITY

    # A draw may aim past what the equations reach; it then stands at their end.
    aim = maths.smaller(maths.larger(aim, LOWEST_ACTIVITY), HIGHEST_ACTIVITY)
    return finished_at_water_activity(
        solids_g=solids_g, dry=dry, activity=aim, gab=meat_solids("likely")
    )
