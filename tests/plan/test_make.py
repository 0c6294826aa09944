"""The whole plan: what was asked, and the nearest to it."""

from __future__ import annotations

from collections.abc import Callable
from datetime import datetime
from zoneinfo import ZoneInfo

import pytest

from tarebook.clocks.zones import clock
from tarebook.findings import AskedWrongly
from tarebook.kitchen import Kitchen, Tray
from tarebook.plan.cold import longest_held_min, warm_of
from tarebook.plan.conflicts import conflicts_of
from tarebook.plan.jobs import Job
from tarebook.plan.make import Plan
from tarebook.plan.mind import plan_cautions
from tarebook.plan.steps import raw_spans
from tarebook.plan.tasks import Span
from tarebook.plan.words import said_at
from tarebook.recipe.model import HeatStep
from tarebook.safety import Case
from tarebook.safety.heated import as_heated

JobOf = Callable[..., Job]
PlanOf = Callable[..., Plan]
FIVE_TRAYS = Kitchen(trays=5, tray=Tray(304.8, 304.8), dryer_f=(95.0, 165.0), adjustable=True)
HELSINKI = ZoneInfo("Europe/Helsinki")


def ends(found: Plan) -> tuple[str, str]:
    """Return when a plan begins and ends, in words."""
    return said_at(found.span.start, found.zone), said_at(found.span.end, found.zone)


def said(found: Plan) -> str:
    """Return every conflict in one text."""
    return " ".join(one.sentence for one in found.conflicts)


def noted(found: Plan) -> str:
    """Return every note in one text."""
    return " ".join(one.sentence for one in found.notes)


def test_ready_by_the_hour_asked(plan: PlanOf) -> None:
    """The last bag is packed at the very minute, and nothing is at odds."""
    found = plan(ready="Saturday 18:00")

    assert "Saturday 28 November, 18:00" == ends(found)[1]
    assert () == found.conflicts


def test_begun_at_the_hour_asked(plan: PlanOf) -> None:
    """The first thing is done at the very minute."""
    found = plan(start="tomorrow 7am")

    assert "Thursday 26 November, 07:00" == ends(found)[0]


def test_the_same_plan_forward_and_back(plan: PlanOf) -> None:
    """Begun when the plan for Saturday says, it is the plan for Saturday."""
    back = plan(pounds=11, ready="Sunday 18:00")
    begin = clock(back.span.start, back.zone)

    assert back.placed == plan(pounds=11, start=f"{begin:%Y-%m-%d %H:%M}").placed


def test_too_soon_is_said_with_the_earliest(plan: PlanOf) -> None:
    """What would have had to begin already is planned from now, and both hours are told."""
    found = plan(ready="tomorrow 8am")

    assert "to be ready by Thursday 26 November, 08:00 it would have had to begin" in (
        found.conflicts[0].text
    )
    assert "which is past" in found.conflicts[0].text
    assert f"the earliest is {ends(found)[1]}" in found.conflicts[0].do
    assert "Wednesday 25 November, 09:00" == ends(found)[0]
    assert found.conflicts[0].do.startswith("begun now, ")


def test_a_later_start_than_now_is_explained(plan: PlanOf) -> None:
    """Too late for the hour asked, and night before it can begin: both hours, why, and the way."""
    late = datetime(2026, 11, 25, 21, 30, tzinfo=ZoneInfo("America/Chicago"))
    found = plan(ready="tomorrow 18:00", nights="22:00-06:00", now=late)
    (told,) = (one.do for one in found.conflicts)
    begin, end = ends(found)

    assert f"the earliest is {end}: that plan follows, and begins {begin}" in told
    assert "begun now" not in told and not begin.startswith("Wednesday")
    assert "since nobody is needed between 22:00 and 06:00, and the dryer rests" in told
    free = ends(plan(ready="tomorrow 18:00", now=late))[1]
    assert told.endswith(f"without --no-nights it could be ready {free}")


@pytest.mark.parametrize("when", [{}, {"start": "today 22:00"}])
def test_nothing_is_won_by_beginning_in_the_night(when: dict[str, str], plan: PlanOf) -> None:
    """Where a plan begins hours after it may, it says that sooner would win nothing, and why."""
    late = datetime(2026, 11, 25, 21, 30, tzinfo=ZoneInfo("America/Chicago"))
    found = plan(nights="22:00-06:00", now=late, **when)

    asked = "at the hour asked, Wednesday 25 November, 22:00" if when else "now"
    assert f"Nothing is won by beginning {asked}: it would end no sooner, since" in noted(found)
    assert "between 22:00 and 06:00, and the dryer rests." in noted(found)
    assert "Nothing is won" not in noted(plan(now=late, **when))


def test_a_load_that_would_end_by_night(plan: PlanOf) -> None:
    """It is said when it would have ended, when to start instead, and what this plan does."""
    parts = {"start": "today 14:00", "nights": "22:00-06:00", "soak": "hours = 2", "own_h": (5, 5)}
    found = plan(now=datetime(2026, 11, 25, 8, 0, tzinfo=ZoneInfo("America/Chicago")), **parts)
    late = plan(now=datetime(2026, 11, 25, 13, 0, tzinfo=ZoneInfo("America/Chicago")), **parts)

    assert "The batch would end in the night, Thursday 26 November, 01:" in said(found)
    assert "Start by Wednesday 25 November, 08:55, instead" in said(found)
    assert f"otherwise this plan waits and ends {ends(found)[1]}" in said(found)
    assert "Start by" not in said(late) and f"This plan waits and ends {ends(late)[1]}" in said(
        late
    )


def test_starting_when_told_keeps_out_of_the_night(plan: PlanOf) -> None:
    """The start that a conflict names leads to a plan without it."""
    parts = {"nights": "22:00-06:00", "soak": "hours = 2", "own_h": (5, 5)}
    now = datetime(2026, 11, 25, 5, 0, tzinfo=ZoneInfo("America/Chicago"))
    found = plan(start="today 14:00", now=now, **parts)
    told = said(found).partition("Start by ")[2].partition(", instead")[0]
    hour = told.rpartition(", ")[2]

    assert "in the night" not in said(plan(start=f"today {hour}", now=now, **parts))


def test_nights_are_kept(plan: PlanOf) -> None:
    """Nobody is needed and nothing dries between the hours named."""
    found = plan(pounds=11, start="tomorrow 7am", nights="22:00-06:00")

    for one in found.placed:
        if one.attended or one.kind == "dry":
            hours = {clock(minute, found.zone).hour for minute in range(one.start, one.end, 5)}
            assert all(6 <= hour < 22 for hour in hours)


def test_drying_longer_than_a_day_is_said(plan: PlanOf) -> None:
    """Where there is no room between nights the dryer runs by night: it is told, with a way out."""
    found = plan(ready="Sunday 18:00", nights="22:00-06:00", own_h=(16, 16))

    assert "the dryer runs through them here" in said(found) and "--by likely" in said(found)
    assert not any(
        one.attended and not 6 <= clock(one.start, found.zone).hour < 22 for one in found.steps
    )


def test_a_night_that_leaves_no_day(plan: PlanOf) -> None:
    """Where not even the work fits between the nights, they are given up, and that is told."""
    found = plan(ready="Sunday 18:00", nights="06:30-06:00")

    assert "no plan keeps out of the nights you named".capitalize()[1:] in said(found)[1:]


def test_without_nights_those_that_are_met_are_told(plan: PlanOf) -> None:
    """Steps in the small hours are counted, and the option is named."""
    found = plan(ready="Saturday 10:00")

    assert "of these steps fall between 22:00 and 06:00; the first is " in noted(found)
    assert "--no-nights" in noted(found)
    assert "of these steps" not in noted(plan(ready="Saturday 10:00", nights="22:00-06:00"))


@pytest.mark.parametrize(
    ("ready", "says"),
    [
        ("Saturday 21:00", "2 turnings of a soak would fall between 22:00 and 06:00, and nobody "
         "gets up for that: 1 moved to evening or morning, 1 left out."),
        ("Saturday 18:00", "1 turning of a soak would fall between 22:00 and 06:00, and nobody "
         "gets up for that: 1 moved to evening or morning."),
        ("Saturday 09:00", ""),
    ],
)  # fmt: skip
def test_what_became_of_turnings_is_told(ready: str, says: str, plan: PlanOf) -> None:
    """In one line: how many were moved and how many left out, and nothing where none was."""
    told = noted(plan(ready=ready))

    assert says in told and bool(says) == ("turning" in told)


def test_a_soak_across_the_change_of_clocks(plan: PlanOf) -> None:
    """Twelve hours are twelve hours in the night that clocks go back, and that is told."""
    now = datetime(2026, 10, 22, 9, 0, tzinfo=HELSINKI)
    found = plan(ready="2026-10-25 18:00", soak="hours = 12", now=now)
    (soak,) = (one for one in found.placed if one.kind == "soak")
    start, end = clock(soak.start, HELSINKI), clock(soak.end, HELSINKI)

    assert 12 * 60 == soak.end - soak.start
    assert 11 == (end.replace(tzinfo=None) - start.replace(tzinfo=None)).total_seconds() / 3600
    assert "The clocks go back on Sunday 25 October" in noted(found)
    assert "clocks" not in noted(plan(ready="Saturday 18:00"))


@pytest.mark.parametrize(
    ("meters", "step", "says"),
    [
        (1524, "simmer", "Water boils at about 203 °F (95 °C)"),
        (3048, "boil-down", "Water boils at about 194 °F (90 °C)"),
        (200, "simmer", ""),
        (3048, "steam", ""),
    ],
)
def test_high_kitchens_boil_cooler(meters: float, step: str, says: str, plan: PlanOf) -> None:
    """At 5,000 ft water boils at 203 degF, at 10,000 ft at 194: told where meat is boiled."""
    found = plan(ready="Saturday 18:00", step=step, kitchen=FIVE_TRAYS._replace(altitude_m=meters))

    assert ("boils" in noted(found), True) == (bool(says), says in noted(found))


def test_two_recipes_share_the_trays(plan: PlanOf, job: JobOf) -> None:
    """Two pounds each of two recipes with one air dry side by side, and that is told."""
    one, two = job(pounds=2, title="Ours"), job(pounds=2, title="Theirs")
    found = plan(one, two, ready="Saturday 18:00")
    drying = [each.span for each in found.placed if each.kind == "dry"]

    assert drying[0].meets(drying[1])
    assert "share the dryer" in noted(found)


def test_recipes_whose_air_differs_take_turns(plan: PlanOf, job: JobOf) -> None:
    """Where the temperatures do not agree nothing is shared."""
    one = job(pounds=2, title="Ours")
    two = job(pounds=2, title="Theirs", drying='temperature = "165 F"\nhours = "5-7"')
    found = plan(one, two, ready="Sunday 18:00")
    drying = [each.span for each in found.placed if each.kind == "dry"]

    assert not drying[0].meets(drying[1])
    assert "share the dryer" not in noted(found)


def test_raw_and_heated_meat_take_turns(plan: PlanOf, job: JobOf) -> None:
    """Meat that goes in raw never dries beside meat that was heated."""
    found = plan(
        job(pounds=2, title="Ours"),
        job(pounds=2, title="Theirs", step="oven-after"),
        ready="Sunday 18:00",
    )
    drying = [each.span for each in found.placed if each.kind == "dry"]

    assert not drying[0].meets(drying[1])


def test_what_overlaps_is_told(plan: PlanOf) -> None:
    """While one load dries the next is made ready; the hours are told."""
    found = plan(pounds=11, ready="Sunday 18:00")

    assert "While the first load dries you get the second load ready" in noted(found)


@pytest.mark.parametrize(
    ("kitchen", "says"),
    [
        (Kitchen(), 'how much the dryer holds is not known'),
        (Kitchen(trays=5), 'kitchen set dryer.tray "15 x 13 in"'),
        (Kitchen(trays=0), 'kitchen set oven.racks "2"'),
        (Kitchen(trays=5, tray=Tray(305, 305), adjustable=False), "is not recommended for meat"),
        (Kitchen(trays=5, tray=Tray(305, 305), dryer_f=(95, 140)), "no hotter than 140 °F (60 °C)"),
        (Kitchen(trays=5, tray=Tray(305, 305), dryer_f=(160, 160)), "is set to 160 °F (71 °C)"),
        (Kitchen(trays=0, oven_lowest_f=200, oven_racks=2, oven_rack=Tray(500, 350)),
         "the oven goes no cooler than 200 °F (93 °C)"),
        (Kitchen(trays=0, oven_racks=2), "the oven's lowest setting is not known"),
        (Kitchen(), "where there is no dryer, tarebook kitchen set dryer.trays 0"),
    ],
)  # fmt: skip
def test_kitchens_that_do_not_fit(kitchen: Kitchen, says: str, plan: PlanOf) -> None:
    """What is unknown, too cool, too hot or not to be set is said, with what to do."""
    found = plan(ready="Saturday 18:00", kitchen=kitchen)

    assert says.lower() in said(found).lower()
    assert all(one.do for one in found.conflicts)


@pytest.mark.parametrize(
    ("parts", "says"),
    [
        ({"soak": "hours = 36"}, "planned here is the cautious limit, 24 h"),
        ({"meat": "bear", "heat": "oven after drying"}, "not for bear"),
        ({"meat": "pork-loin"}, "frozen for 30 days at 0 °F (-18 °C) or below"),
        ({"meat": "chum salmon"}, "frozen for 7 days at -4 °F (-20 °C) or below"),
        ({"form": "ground"}, "ground meat is not soaked"),
        ({"thickness": "3/8 in"}, "the recipe cuts 3/8 in; planned here at 1/4 in"),
        ({"soak": "hours = 8\nused-before = true"}, "planned here is a fresh one"),
        ({"soak": 'hours = 8\ntemperature = "60 F"'}, "the recipe soaks at 60 °F (16 °C); planned"),
        ({"drying": 'temperature = "130 F"\nhours = 6'}, "the recipe dries at 130 °F (54 °C)"),
        ({"meat": "chum salmon", "heat": "oven after drying"}, "not for fish"),
        (
            {"heat": "oven after drying", "drying": 'temperature = "155 F"\nhours = "5-7"'},
            "the recipe dries 5 h at the least before the oven; planned here are 6 h or more. "
            'Write hours = "6-7" under [drying]',
        ),
        ({"pounds": 30}, "over the 2 hours between 40 and 140 °F (4 and 60 °C)"),
    ],
)
def test_recipes_at_odds_with_a_rule(parts: dict[str, object], says: str, plan: PlanOf) -> None:
    """What a rule stands against is said, with who says so."""
    found = plan(ready="2026-12-12 18:00", **parts)

    assert says in said(found).replace("Ground", "ground").replace("The recipe", "the recipe")


@pytest.mark.parametrize(
    ("meat", "pounds", "when"),
    [
        ("turkey-breast", 30, {"ready": "2026-12-12 18:00", "nights": "22:00-06:00"}),
        ("turkey-breast", 25, {"start": "Friday 8:00"}),
        ("deer", 40, {"start": "Friday 9:00"}),
    ],
)
def test_only_as_much_is_planned_as_may_wait(
    meat: str, pounds: int, when: dict[str, str], plan: PlanOf
) -> None:
    """Loads that would wait raw over the limit are no part of the plan; they are to be frozen."""
    found = plan(meat=meat, pounds=pounds, **when)
    (job,) = found.jobs

    assert job.left_g > 0
    assert pounds * 453.59237 == pytest.approx(job.meat_g + job.left_g)
    assert job.meat_g == pytest.approx(sum(load.meat_g for load in job.loads))
    assert warm_of(job, 0, found.placed).held_min <= longest_held_min(job)
    assert {one.load for one in found.placed} - {0} == set(range(1, len(job.loads) + 1))
    assert "the cautious limit for" in said(found) and "Freeze the other" in said(found)
    assert not any(one.grave for one in found.conflicts)


def test_plan_and_card_have_one_answer_on_the_hours(plan: PlanOf) -> None:
    """With the oven after drying asked for, the rules judge the raised hours, in both."""
    method = '[method]\nsteps = ["Steam it."]'
    found = plan(ready="Saturday 18:00", step="oven-after", more=method)
    (job,) = found.jobs

    assert (
        (6.0, 7.0)
        == job.case.recipe.drying.hours
        == as_heated(Case.of(job.recipe), HeatStep.OVEN_AFTER).drying.hours
    )
    assert 6.0 == job.hours.low_h and () == found.conflicts
    assert "oven-after-short" not in {one.caution.code for one in plan_cautions(found)}
    assert "what they say of heat and hours is for another heat step" in noted(found)
    assert "another heat step" not in noted(plan(ready="Saturday 18:00", more=method))


def test_a_dangerous_step_is_not_as_asked(plan: PlanOf) -> None:
    """A step of the recipe's own that thaws it warm is told before the days, not among the rest."""
    method = '[method]\nsteps = ["Thaw the meat on the counter overnight.", "Slice it."]'
    found = plan(ready="Saturday 18:00", more=method)
    good = plan(ready="Saturday 18:00", more='[method]\nsteps = ["Thaw it in the refrigerator."]')

    assert "The recipe's own step 1 speaks of thawing" in said(found)
    assert "those named above are not to be followed" in noted(found)
    assert () == good.conflicts and "nobody has checked them. Where they ask" in noted(good)
    assert "do that too" not in noted(good) and "named above" not in noted(good)
    assert "step-words" not in {one.caution.code for one in plan_cautions(found)}


def test_one_load_that_waits_too_long_is_at_odds(plan: PlanOf) -> None:
    """Where no load can be left out, the limit is told, and the plan stays at odds with it."""
    found = plan(meat="turkey-breast", pounds=4, start="Friday 8:00")
    early = [
        one._replace(start=one.start - 3 * 1440) if one.kind == "trim" else one
        for one in found.placed
    ]
    told = conflicts_of(found.jobs, found.dryer, early, found.steps)

    assert not any(one.grave for one in found.conflicts)
    (grave,) = [one for one in told if one.grave]
    assert "2 days is the cautious limit for turkey breast" in grave.text
    assert "dry less at once; freeze the rest at once" in grave.do


def test_frozen_meat_is_thawed_load_by_load(plan: PlanOf) -> None:
    """Where all of it thawed at once would wait too long, each load thaws in its own time."""
    parts = {"meat": "turkey-breast", "pounds": 20, "nights": "22:00-06:00", "frozen": True}
    found = plan(ready="2026-12-12 18:00", **parts)
    thaws = [one for one in found.placed if one.kind == "thaw"]

    assert len(found.jobs[0].loads) == len(thaws) > 1
    assert 2 * 24 * 60 >= warm_of(found.jobs[0], 0, found.placed).held_min
    assert "each load comes out of the freezer in its own time" in said(found)
    assert not any(one.grave for one in found.conflicts)


def test_a_little_frozen_meat_is_thawed_at_once(plan: PlanOf) -> None:
    """Where nothing waits too long there is one thaw."""
    found = plan(pounds=11, ready="Sunday 18:00", frozen=True)

    assert 1 == len([one for one in found.placed if one.kind == "thaw"])
    assert "its own time" not in said(found)


@pytest.mark.parametrize(
    ("parts", "grave"),
    [
        ({"kitchen": FIVE_TRAYS}, False),
        ({"kitchen": FIVE_TRAYS._replace(dryer_f=(95.0, 140.0))}, True),
        ({"kitchen": FIVE_TRAYS._replace(adjustable=False)}, True),
        ({"form": "pieces"}, True),
        ({"thickness": "3/8 in"}, False),
        ({"soak": "hours = 36"}, False),
        ({"meat": "pork-loin"}, False),
        ({"meat": "bear", "heat": "oven after drying"}, False),
        ({"soak": 'hours = 8\ntemperature = "60 F"'}, False),
        ({"meat": "deer-ground", "marinade": {}, "mixed_in": {"salt-table": "1 tsp"}}, True),
        ({"meat": "beef-ground-95", "marinade": {}, "mixed_in": {"salt-table": "1 tsp"}}, False),
        ({"drying": 'temperature = "155 F"\nhours = "6-7"\nyield = "60 %"'}, True),
        ({"drying": 'temperature = "155 F"\nhours = "6-7"\nyield = "40 %"'}, False),
        ({"pounds": 30}, False),
    ],
)
def test_what_is_grave(parts: dict[str, object], grave: bool, plan: PlanOf) -> None:
    """What stays at odds with published advice is; what is planned otherwise is only said."""
    found = plan(ready="Saturday 18:00", **parts)

    assert grave is any(one.grave for one in found.conflicts)
    assert all(one.do for one in found.conflicts)


def test_finished_strips_never_meet_raw_work(plan: PlanOf, job: JobOf) -> None:
    """From the trays to the pack no raw meat is in hand, of any load or recipe."""
    two = (job(pounds=2, title="Ours"), job(pounds=3, title="Theirs", meat="elk"))
    for found in (
        plan(pounds=11, ready="2026-12-06 18:00"),
        plan(pounds=11, ready="2026-12-12 18:00", nights="22:00-06:00", frozen=True),
        plan(*two, ready="Sunday 18:00"),
    ):
        raw = raw_spans(found.jobs, found.placed)
        packed = {(one.batch, one.load): one.end for one in found.placed if one.kind == "pack"}
        off = [one for one in found.placed if one.kind == "unload"]
        assert len(packed) == len(off) and raw
        for one in off:
            open_for = Span(one.start, packed[one.batch, one.load])
            assert not any(open_for.meets(span) for span in raw)


def test_two_weeks_are_enough(plan: PlanOf) -> None:
    """More than two weeks of drying is not planned."""
    with pytest.raises(AskedWrongly, match="more than two weeks"):
        plan(pounds=400, ready="2027-01-12 18:00")


def test_no_soak_is_ever_over_its_limit(plan: PlanOf) -> None:
    """Whatever a recipe says and whatever the night moves, raw flesh lies 24 hours at most."""
    for hours in ("12", "23", '"20-40"', "60"):
        found = plan(
            pounds=11, ready="2026-12-06 18:00", soak=f"hours = {hours}", nights="21:00-07:00"
        )
        soaks = [one.end - one.start for one in found.placed if one.kind == "soak"]
        assert soaks and max(soaks) <= 24 * 60


def test_a_dryer_whose_heat_nobody_told(plan: PlanOf) -> None:
    """Flesh hears that it must hold 145 degF; told of, or for mushrooms, nothing is said."""
    unknown = FIVE_TRAYS._replace(dryer_f=None)
    says = "how hot the dryer gets is not known".capitalize()

    assert says in noted(plan(ready="Saturday 18:00", kitchen=unknown))
    assert says not in noted(plan(ready="Saturday 18:00"))
    assert says not in noted(plan(ready="Saturday 18:00", kitchen=unknown, meat="portabella"))
