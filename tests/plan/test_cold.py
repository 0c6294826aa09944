"""How long raw meat is out of the cold, and how long it waits in it."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from tarebook.plan.cold import AT_THE_BOARD, longest_held_min, warm_of
from tarebook.plan.jobs import Job
from tarebook.plan.make import Plan

JobOf = Callable[..., Job]
PlanOf = Callable[..., Plan]


def test_counted_by_hand(plan: PlanOf) -> None:
    """4 lb (1.8 kg): trim 20, slice 30 at the board; into the marinade 10, drain 15 in hand."""
    found = plan(pounds=4, ready="Saturday 18:00")
    warm = warm_of(found.jobs[0], 0, found.placed)

    assert (50, 25, 75, 2) == (warm.board_min, warm.hands_min, warm.out_min, warm.lots)
    heat, load = (
        next(one for one in found.placed if one.kind == kind) for kind in ("steam", "load")
    )
    assert load.end - heat.start == warm.heating_min


def test_laying_out_raw_counts(plan: PlanOf) -> None:
    """Meat that goes into the dryer raw is still out of the cold while it is laid out."""
    heated, raw = (
        plan(pounds=4, ready="Saturday 18:00", step=step) for step in ("steam", "oven-after")
    )
    hands = [warm_of(one.jobs[0], 0, one.placed).hands_min for one in (heated, raw)]

    load = next(one for one in raw.placed if one.kind == "load")
    assert hands[0] + load.end - load.start == hands[1]


def test_held_from_thawed_to_heated(plan: PlanOf) -> None:
    """Frozen meat is held from the end of its thawing; fresh meat from the plan's start."""
    fresh, frozen = (
        plan(pounds=4, ready="Saturday 18:00", frozen=frozen) for frozen in (False, True)
    )
    held = [warm_of(one.jobs[0], 0, one.placed).held_min for one in (fresh, frozen)]
    steam = next(one for one in fresh.placed if one.kind == "steam")

    assert [steam.start - fresh.placed[0].start] * 2 == held


@pytest.mark.parametrize(
    ("parts", "days"),
    [
        ({}, 3),
        ({"meat": "turkey-breast"}, 2),
        ({"form": "ground", "marinade": {}, "mixed_in": {"salt-table": "1 tsp"}}, 2),
        ({"meat": "chum salmon"}, 2),
    ],
)
def test_how_long_it_may_be_held(parts: dict[str, object], days: int, job: JobOf) -> None:
    """Poultry, fish and ground meat for 2 days, red meat for the lower end of 3 to 5."""
    assert days * 1440 == longest_held_min(job(**parts))


@pytest.mark.parametrize(("pounds", "lots"), [(4, False), (30, True)])
def test_too_much_for_two_hours_is_worked_in_lots(pounds: int, lots: bool, plan: PlanOf) -> None:
    """Where all of it would lie out too long, the steps at the board say in how many lots."""
    found = plan(pounds=pounds, ready="2026-12-12 18:00")
    at_board = [one for one in found.steps if one.kind in AT_THE_BOARD]
    warm = warm_of(found.jobs[0], 0, found.placed)

    assert lots is warm.too_long and at_board
    for one in at_board:
        assert lots is one.note.startswith(f"in {warm.lots} lots, each out of the refrigerator")
    assert lots is any("planned here is to work in" in one.text for one in found.conflicts)
