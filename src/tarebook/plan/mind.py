"""What the safety rules say of the days of a plan."""

from __future__ import annotations

from fractions import Fraction

from tarebook.plan.jobs import Job
from tarebook.plan.make import Plan
from tarebook.safety import Caution, cautions
from tarebook.safety.case import Case

ELSEWHERE = frozenset(
    {
        "cure-scale", "potassium", "weighed-moist", "cure-no-meat", "cure-nitrate", "dryer-fixed",
        "dryer-weak", "high-sodium", "allergens", "alcohol", "enhanced-meat", "salt-crystal",
        "salt-by-spoon", "scaling", "estimate", "home-card", "step-words",
    }
)  # fmt: skip
"""Cautions that the card tells and that change nothing in the days, or that a conflict tells."""


def plan_cautions(plan: Plan) -> tuple[Caution, ...]:
    """Return what the safety rules say of the days of these recipes, each once, gravest first."""
    found = [
        one for job in plan.jobs for one in cautions(_as_weighed(job)) if one.code not in ELSEWHERE
    ]
    return tuple({(one.code, one.text): one for one in found}.values())


def _as_weighed(job: Job) -> Case:
    """Return the case at the least meat that curing salt is weighed for: the smallest load's."""
    if not job.cured_by_load:
        return job.case
    least_g = Fraction(min(share.meat_g for share in job.shares))
    return job.case._replace(factor=least_g / job.case.recipe.meat.mass_g)
