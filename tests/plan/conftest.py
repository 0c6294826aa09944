"""A kitchen, a recipe and a plan in one line each."""

from __future__ import annotations

from collections.abc import Callable
from datetime import datetime
from fractions import Fraction
from typing import Any
from zoneinfo import ZoneInfo

import pytest

from tarebook.clocks.moments import read_clock_span, read_moment
from tarebook.clocks.zones import minute_of
from tarebook.kitchen import Kitchen, Tray
from tarebook.plan.jobs import Job, job_of
from tarebook.plan.make import Plan, Wish, make_plan
from tarebook.plan.trays import Dryer, dryer_of
from tarebook.recipe.model import Recipe

G_PER_LB = Fraction("453.59237")
FIVE_TRAYS = Kitchen(trays=5, tray=Tray(304.8, 304.8), dryer_f=(95.0, 165.0), adjustable=True)
"""Five trays of a square foot each."""
ZONE = ZoneInfo("America/Chicago")
NOW = datetime(2026, 11, 25, 9, 0, tzinfo=ZONE)

JobOf = Callable[..., Job]
PlanOf = Callable[..., Plan]


@pytest.fixture
def job(recipe_of: Callable[..., Recipe]) -> JobOf:
    """The builder of jobs: a recipe's parts by name, and pounds, kitchen, heat ... of today."""

    def build(
        *,
        pounds: float | str = 4,
        kitchen: Kitchen = FIVE_TRAYS,
        dryer: Dryer | None = None,
        step: str | None = None,
        frozen: bool = False,
        own_h: tuple[float, float] | None = None,
        by: str = "high",
        **parts: Any,
    ) -> Job:
        parts.setdefault("heat", "steamed or roasted first")
        parts.setdefault("drying", 'temperature = "150-155 F"\nhours = "5-7"')
        return job_of(
            recipe_of(**parts),
            meat_g=Fraction(pounds) * G_PER_LB,
            kitchen=kitchen,
            dryer=dryer or dryer_of(kitchen),
            heat=step,
            frozen=frozen,
            hours=own_h,
            by=by,
        )

    return build


@pytest.fixture
def plan(job: JobOf) -> PlanOf:
    """The builder of plans: of jobs, or of one job's parts; moments as a cook says them."""

    def build(
        *jobs: Job,
        ready: str | None = None,
        start: str | None = None,
        nights: str | None = None,
        kitchen: Kitchen = FIVE_TRAYS,
        now: datetime = NOW,
        by: str = "high",
        **parts: Any,
    ) -> Plan:
        listed = jobs or (job(kitchen=kitchen, by=by, **parts),)

        def minute(text: str | None) -> int | None:
            return None if text is None else minute_of(read_moment(text, now)[0])

        wish = Wish(
            now=minute_of(now),
            ready=minute(ready),
            start=minute(start),
            nights=read_clock_span(nights) if nights else None,
            by=by,
        )
        assert now.tzinfo is not None
        return make_plan(listed, dryer_of(kitchen), wish, now.tzinfo)

    return build
