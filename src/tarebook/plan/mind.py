"""What the safety rules say of the days of a plan."""

from __future__ import annotations

from fractions import Fraction

from tarebook.findings import Severity
from tarebook.plan.jobs import Job
from tarebook.plan.make import Plan
from tarebook.safety import Caution, cautions
from tarebook.safety.case import Case
from tarebook.safety.caution import TITLES
from tarebook.tuples import NamedTuple

ELSEWHERE = frozenset(
    {
        "cure-scale", "potassium", "weighed-moist", "cure-no-meat", "cure-nitrate", "dryer-fixed",
        "dryer-weak", "much-sodium", "allergens", "alcohol", "enhanced-meat", "salt-crystal",
        "salt-by-spoon", "scaling", "estimate", "home-card", "step-words", "ground-fat",
        "finish-moist",
    }
)  # fmt: skip
"""Cautions that the card tells and that change nothing in the days, or that a conflict tells."""


class Minded(NamedTuple):
    """A caution of a plan, with whom it is for.

    Attributes:
        caution: what the rules say.
        jobs: the recipes that they say it of, counted from 0.
        shared: whether those are all of the plan's.
    """

    caution: Caution
    jobs: tuple[int, ...]
    shared: bool

    @property
    def grave(self) -> bool:
        """Whether it is more than a note."""
        return self.caution.severity is not Severity.NOTE


def plan_cautions(plan: Plan) -> tuple[Minded, ...]:
    """Return what the safety rules say of the days of these recipes, each once, gravest first.

    What holds for one recipe may be wrong for the other: nothing is said without saying of which.
    """
    found: dict[tuple[str, str], tuple[Caution, list[int]]] = {}
    for at, job in enumerate(plan.jobs):
        for one in cautions(_as_weighed(job)):
            if one.code not in ELSEWHERE:
                found.setdefault((one.code, one.text), (one, []))[1].append(at)
    told = (Minded(one, tuple(jobs), len(jobs) == len(plan.jobs)) for one, jobs in found.values())
    return tuple(sorted(told, key=_gravity))


def _gravity(one: Minded) -> tuple[int, int, tuple[int, ...]]:
    severities, codes = tuple(Severity), tuple(TITLES)
    return severities.index(one.caution.severity), codes.index(one.caution.code), one.jobs


def _as_weighed(job: Job) -> Case:
    """Return the case at the least meat that curing salt is weighed for.

    Of several loads that is the smallest that gets any; where none does, the largest tells why.
    """
    if not job.cured_by_load:
        return job.case
    cured_g = [share.meat_g for share in job.shares if share.cured]
    least_g = Fraction(min(cured_g) if cured_g else max(share.meat_g for share in job.shares))
    return job.case._replace(factor=least_g / job.case.recipe.meat.mass_g)
