"""What holds for every plan: many kinds of meat, weights, kitchens and hours at once."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from itertools import product

import pytest

from tarebook.kitchen import Kitchen, Tray
from tarebook.plan.jobs import Job
from tarebook.plan.make import Plan
from tarebook.plan.nights import USUAL
from tarebook.plan.nights import nights as night_spans
from tarebook.plan.steps import Step
from tarebook.recipe.model import HeatStep

PlanOf = Callable[..., Plan]
JobOf = Callable[..., Job]
PlansOf = Callable[[str], tuple[Plan, ...]]

CURE = '{ amount = "2.2 g", strength = "6.25 %" }'
STEAM, AFTER = "steamed or roasted first", "oven after drying"
FOODS: dict[str, dict[str, object]] = {
    "bear": {"meat": "bear"},
    "wild boar": {"meat": "wild-boar", "heat": "simmered in its marinade"},
    "cured moose": {"meat": "moose", "marinade": {"soy-sauce": "1/2 cup", "curing-salt-1": CURE}},
    "venison": {"meat": "deer"},
    "venison, oven after": {"meat": "deer", "heat": AFTER},
    "venison, unsoaked": {"meat": "deer", "marinade": {}},
    "venison, ground": {"meat": "deer", "form": "ground"},
    "turkey": {"meat": "turkey-breast"},
    "salmon": {"meat": "salmon-sockeye", "soak": 'hours = "4-8"'},
}
FIVE_TRAYS = Kitchen(trays=5, tray=Tray(304.8, 304.8), dryer_f=(95.0, 165.0), adjustable=True)
OVEN = Kitchen(trays=0, oven_lowest_f=170.0, oven_racks=2, oven_rack=Tray(500, 350))
WHEN: tuple[dict[str, object], ...] = (
    {},
    {"start": "2026-11-25 20:00"},
    {"ready": "Sunday 18:00"},
    {"nights": "22:00-06:00"},
    {"nights": "22:00-06:00", "ready": "2026-12-06 18:00", "frozen": True},
)
POUNDS = (6, 7, 8, 9, 10, 11)
ON_DRIED = frozenset({"rotate", "test", "unload", "oven", "pack"})
ON_RAW = frozenset(
    {"trim", "slice", "knead", "form", "steep", "rub", "drain", "simmer", "steam", "boil-down"}
)
WASHES = frozenset({"wash", "clean"})

TWO = "two recipes"
every_food = pytest.mark.parametrize("food", [*FOODS, TWO])


@pytest.fixture
def plans_of(plan: PlanOf, job: JobOf) -> PlansOf:
    """All plans for a food, of every weight, kitchen and hour; made once."""

    def made(food: str) -> tuple[Plan, ...]:
        if food not in MADE:
            MADE[food] = tuple(_plans(plan, job, food))
        return MADE[food]

    return made


MADE: dict[str, tuple[Plan, ...]] = {}


def _plans(plan: PlanOf, job: JobOf, food: str) -> Iterator[Plan]:
    for pounds, kitchen, when in product(POUNDS, (FIVE_TRAYS, OVEN), WHEN):
        if food != TWO:
            yield plan(kitchen=_for(kitchen, food), **_parts(food, pounds), **when)
            continue
        once = {key: value for key, value in when.items() if key != "frozen"}
        two = [
            job(kitchen=kitchen, title=one, **_parts(one, pounds / 2))
            for one in ("venison", "turkey")
        ]
        yield plan(*two, kitchen=kitchen, **once)


def _parts(food: str, pounds: float) -> dict[str, object]:
    hours = "5-7" if pounds % 2 else "6-9"
    drying = f'temperature = "150-155 F"\nhours = "{hours}"'
    usual = {"soak": 'hours = "10-12"', "drying": drying, "heat": STEAM, "pounds": pounds}
    return {**usual, **FOODS[food]}


def _for(kitchen: Kitchen, food: str) -> Kitchen:
    """Return a kitchen in which a food may be had: strips dry raw in a cool oven alone."""
    raw = FOODS[food].get("heat") == AFTER
    return kitchen._replace(oven_lowest_f=150.0) if raw and kitchen is OVEN else kitchen


def unwashed(found: Plan) -> Iterator[tuple[int, int]]:
    """Yield from when raw meat is taken in hand until the end of the wash after it."""
    for job in range(len(found.jobs)):
        since: int | None = None
        for one in sorted(found.steps, key=lambda step: step.start):
            if one.job == job and one.kind in ON_RAW and found.jobs[job].case.is_flesh:
                since = one.start if since is None else since
            if one.job == job and one.kind in WASHES and since is not None:
                yield since, one.end
                since = None
        assert since is None, "raw work that no wash follows"


@every_food
def test_nothing_dried_is_touched_between_raw_work_and_its_wash(
    food: str, plans_of: PlansOf
) -> None:
    """Trays are turned, strips bent, unloaded and packed before raw work, or after its wash."""
    loads = touched = 0
    for found in plans_of(food):
        spans = list(unwashed(found))
        loads += sum(one.kind == "dry" for one in found.steps)
        for one in _on_dried(found):
            touched += 1
            meets = [span for span in spans if one.start < span[1] and span[0] < one.end]
            assert [] == meets, (one, meets)
    assert loads > len(POUNDS) * 2 * len(WHEN) and touched > loads


def _on_dried(found: Plan) -> Iterator[Step]:
    return (one for one in found.steps if one.kind in ON_DRIED)


@every_food
def test_hands_are_washed_at_every_turning_of_trays(food: str, plans_of: PlansOf) -> None:
    """Trays with strips on are turned with washed hands, and it says so each time."""
    turned = [one for found in plans_of(food) for one in found.steps if one.kind == "rotate"]

    assert turned
    assert {True} == {one.note.startswith("hands washed first") for one in turned}


@every_food
def test_the_thermometer_is_washed_between_lots(food: str, plans_of: PlansOf) -> None:
    """Wherever heat is measured, the tip is washed and wiped before each reading."""
    measured = [one for found in plans_of(food) for one in found.steps if "thickest" in one.note]
    heated = {one.kind for one in measured}

    assert heated and heated <= {"simmer", "steam", "boil-down", "oven"}
    washed = "its tip washed in hot soapy water and wiped before each reading"
    assert all(washed in one.note for one in measured)


@every_food
def test_trays_of_raw_strips_are_raw(food: str, plans_of: PlansOf) -> None:
    """Strips that get their heat after drying are raw at each turning, and so are their trays."""
    for found in plans_of(food):
        for one in found.steps:
            raw = found.jobs[one.job].choice.step is HeatStep.OVEN_AFTER
            if one.kind == "rotate":
                assert raw is ("still raw" in one.what)
                told = "still raw till the oven: not tasted; hands, and what it lay on, are washed"
                assert raw is (told in one.note)
            if one.kind == "unload":
                assert raw is ("wash and sanitise them" in one.what)


@every_food
def test_an_open_oven_is_not_left_alone(food: str, plans_of: PlansOf) -> None:
    """A propped door asks for somebody awake; by night the step says so, and names the option."""
    for found in plans_of(food):
        nights = list(night_spans(*USUAL, found.zone, since=found.span.start, until=found.span.end))
        for one in found.steps:
            if one.kind == "dry":
                propped = found.jobs[one.job].propped
                late = propped and any(map(one.span.meets, nights))
                asked = found.wish.nights is not None
                assert propped is ("not left alone: somebody awake in the house" in one.note)
                assert late is ("at night too: stay up with it" in one.note)
                assert (late and not asked) is ("plan with --no-nights 22:00-06:00" in one.note)


def test_an_open_oven_through_a_night_that_was_named(plan: PlanOf) -> None:
    """Where it has to run through it somebody stays up, and no dryer is said to run unwatched."""
    parts = {"nights": "22:00-06:00", "own_h": (16, 16), "ready": "2026-12-06 18:00"}
    found = plan(pounds=2, kitchen=OVEN, **parts)
    (dry,) = [one for one in found.steps if one.kind == "dry"]
    said = str(found.conflicts)

    assert "somebody has to stay up with it" in said and "nobody looks at it" not in said
    assert "at night too: stay up with it;" in dry.note and "--no-nights" not in dry.note
    assert "nobody looks at it then" in str(plan(pounds=2, **parts).conflicts)


@every_food
def test_no_bag_is_in_hand_while_strips_are(food: str, plans_of: PlansOf) -> None:
    """Nobody turns raw meat in its marinade in the minutes that dried strips are handled."""
    for found in plans_of(food):
        turns = [one.span for one in found.steps if one.kind == "turn"]
        assert not any(one.span.meets(span) for one in _on_dried(found) for span in turns)
