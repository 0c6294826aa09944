"""The plain data of a plan, for scripts; keys carry their units."""

from __future__ import annotations

from typing import Any

from tarebook.clocks.zones import clock
from tarebook.plan.cold import warm_of
from tarebook.plan.conflicts import Said
from tarebook.plan.jobs import Job
from tarebook.plan.make import Plan
from tarebook.plan.mind import plan_cautions
from tarebook.plan.steps import Step


def plan_data(plan: Plan, *, zone_name: str) -> dict[str, Any]:
    """Return a plan as plain data."""
    return {
        "zone": zone_name,
        "begin": _iso(plan, plan.span.start),
        "ready": _iso(plan, plan.span.end),
        "ready_wanted": None if plan.wish.ready is None else _iso(plan, plan.wish.ready),
        "start_wanted": None if plan.wish.start is None else _iso(plan, plan.wish.start),
        "drying_hours": plan.wish.by,
        "recipes": [_job_data(plan, at, job) for at, job in enumerate(plan.jobs)],
        "steps": [_step_data(plan, one) for one in plan.steps],
        "conflicts": [_said_data(one) for one in plan.conflicts],
        "notes": [_said_data(one) for one in plan.notes],
        "cautions": [
            {**one.caution._asdict(), "recipes": list(one.jobs)} for one in plan_cautions(plan)
        ],
    }


def _job_data(plan: Plan, at: int, job: Job) -> dict[str, Any]:
    warm = warm_of(job, at, plan.placed)
    return {
        "title": job.recipe.title,
        "meat_g": round(job.meat_g, 2),
        "left_over_g": round(job.left_g, 2),
        "frozen": job.frozen,
        "heat_step": job.choice.step.value,
        "heat_step_why": job.choice.why,
        "air_f": list(job.air_f),
        "held_f": list(job.held_f),
        "hours": {
            "low": round(job.hours.low_h, 3),
            "likely": round(job.hours.likely_h, 3),
            "high": round(job.hours.high_h, 3),
            "why": job.hours.why,
            "sources": list(job.hours.sources),
            "batches": list(job.hours.batches),
        },
        "tray_area_cm2": round(job.needed_cm2, 1),
        "loads": [_load_data(job, at) for at in range(len(job.loads))],
        "out_of_cold_min": warm.out_min if job.case.is_flesh else None,
        "held_cold_min": warm.held_min,
    }


def _load_data(job: Job, at: int) -> dict[str, Any]:
    load = job.loads[at]
    data: dict[str, Any] = {"meat_g": round(load.meat_g, 2), "trays": load.trays}
    if job.shares:
        share = job.shares[at]
        data["share_of_what_is_mixed"] = round(share.part, 4)
        data["curing_salts"] = [
            {"name": one.name, "mass_g": float(one.mass_g)} for one in share.cures
        ]
        data["nitrite_ppm"] = round(share.nitrite_ppm, 1) if share.cures else None
    return data


def _step_data(plan: Plan, one: Step) -> dict[str, Any]:
    return {
        "kind": one.kind,
        "recipe": one.job,
        "load": one.load or None,
        "start": _iso(plan, one.start),
        "end": _iso(plan, one.end),
        "minutes": one.end - one.start,
        "attended": one.attended,
        "what": one.what,
        "note": one.note,
    }


def _said_data(one: Said) -> dict[str, Any]:
    return {
        "text": one.text,
        "do": one.do,
        "cites": one.cites.split("; ") if one.cites else [],
        "at_odds_with_published_advice": one.grave,
    }


def _iso(plan: Plan, minute: int) -> str:
    return clock(minute, plan.zone).isoformat(timespec="minutes")
