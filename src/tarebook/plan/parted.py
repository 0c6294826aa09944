"""A recipe parted otherwise: thawed load by load, or of as many loads as may wait raw."""

from __future__ import annotations

from fractions import Fraction

from tarebook.plan.jobs import Job, prep_of
from tarebook.plan.trays import area_cm2


def thawed_by_load(job: Job) -> Job:
    """Return a job whose loads come out of the freezer one by one, each in its own time."""
    prep = tuple(one for one in job.batch.prep if one.kind not in ("thaw", "trim", "wash"))
    portions = tuple(
        portion._replace(lead=(*prep_of(job.case, load.meat_g / 1000, frozen=True), *portion.lead))
        for portion, load in zip(job.batch.portions, job.loads, strict=True)
    )
    return job._replace(batch=job.batch._replace(prep=prep, portions=portions), by_load=True)


def first_loads(job: Job, count: int) -> Job:
    """Return a job of its first loads only; what it leaves over is told in ``left_g``.

    Args:
        job: the recipe.
        count: how many loads stay, at least 1.
    """
    loads = job.loads[:count]
    meat_g = sum(load.meat_g for load in loads)
    prep = job.batch.prep
    if not job.by_load:
        prep = prep_of(job.case, meat_g / 1000, frozen=job.frozen)
    shares = tuple(one._replace(part=one.meat_g / meat_g) for one in job.shares[:count])
    factor = Fraction(meat_g) / job.recipe.meat.mass_g
    return job._replace(
        meat_g=meat_g,
        left_g=job.left_g + job.meat_g - meat_g,
        loads=loads,
        shares=shares if count > 1 else (),
        case=job.case._replace(factor=factor),
        needed_cm2=area_cm2(meat_g, job.thickness_mm),
        batch=job.batch._replace(prep=prep, portions=job.batch.portions[:count]),
    )
