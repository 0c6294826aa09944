"""A plan in words, with what is done in between."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from tarebook.kitchen import Kitchen, Tray
from tarebook.plan.make import Plan
from tarebook.plan.steps import Step, finished_spans, heated_spans, hours_words, raw_spans
from tarebook.plan.tasks import Span
from tarebook.safety.rulebook import air_words

PlanOf = Callable[..., Plan]


def of(found: Plan, kind: str) -> list[Step]:
    """Return the steps of a kind."""
    return [one for one in found.steps if one.kind == kind]


def test_everything_placed_is_said(plan: PlanOf) -> None:
    """No task of the plan is without its line; lines are in order of time."""
    found = plan(pounds=11, ready="Sunday 18:00", frozen=True)

    said = [(one.start, one.end, one.load) for one in found.steps]
    assert {(one.start, one.end, one.load) for one in found.placed} <= set(said)
    assert [one.start for one in found.steps] == sorted(one.start for one in found.steps)
    assert all(one.what for one in found.steps)


def test_a_long_soak_is_turned_twice_a_short_one_once(plan: PlanOf) -> None:
    """At a third and two thirds of twelve hours; in the middle of two."""
    long = plan(ready="Saturday 10:00", soak="hours = 12")
    short = plan(ready="Sunday 06:00", soak="hours = 2")
    (soak,) = of(long, "soak")

    assert [4 * 60, 8 * 60] == [one.start - soak.start for one in of(long, "turn")]
    assert 1 == len(of(short, "turn"))


def test_nobody_turns_a_bag_by_night(plan: PlanOf) -> None:
    """Turnings that would fall into a night are done at its edge."""
    found = plan(ready="Saturday 18:00", soak="hours = 12", nights="21:00-07:00")
    (soak,) = of(found, "soak")

    assert of(found, "turn")
    for one in found.steps:
        hours = {_hour(found, minute) for minute in range(one.start, one.end, 5)}
        assert not one.attended or all(7 <= hour < 21 for hour in hours)
    assert soak.end - soak.start >= 600


def _hour(found: Plan, minute: int) -> int:
    from tarebook.clocks.zones import clock

    return clock(minute, found.zone).hour


def test_trays_are_turned_then_strips_tested(plan: PlanOf) -> None:
    """Trays every two hours; from the low hours on a strip is bent instead, to the planned end."""
    found = plan(ready="Saturday 18:00", own_h=(8, 8))
    (dry,) = of(found, "dry")

    assert [120, 240] == [one.start - dry.start for one in of(found, "rotate")]
    tests = [one.start - dry.start for one in of(found, "test")]
    assert [360, 420, 480, 540, 595] == tests
    assert ["likely" in one.what for one in of(found, "test")] == [
        False, False, True, False, False,
    ]  # fmt: skip


@pytest.mark.parametrize("hours", ["5-7", "6-8", "3-9", "4"])
def test_a_test_stands_at_the_likely_hours(hours: str, plan: PlanOf) -> None:
    """One test says so, and stands where start and likely length put it; all begin at the low."""
    found = plan(
        ready="Saturday 18:00", drying=f'temperature = "150 F"\nhours = "{hours}"', pounds=2
    )
    (dry,), told = of(found, "dry"), found.jobs[0].hours
    tests = of(found, "test")

    (likely,) = [one for one in tests if "likely" in one.what]
    assert (likely.start, tests[0].start) == (
        dry.start + round(told.likely_h * 60),
        dry.start + round(told.low_h * 60),
    )
    assert dry.end - dry.start == round(told.high_h * 60)


def test_by_night_the_first_test_after_says_likely(plan: PlanOf) -> None:
    """Where nobody tests at the likely hour, the next test says that it is likely by now."""
    found = plan(
        ready="Saturday 10:00", nights="22:00-06:00", own_h=(16, 16), soak="hours = 2", pounds=2
    )
    told = [one.what for one in of(found, "test") if "likely" in one.what]

    assert ["Bend test: likely by now"] == told


@pytest.mark.parametrize("by", ["low", "likely", "high"])
@pytest.mark.parametrize("own_h", [None, (2, 2), (12, 12)])
@pytest.mark.parametrize("step", ["steam", "oven-after"])
def test_nothing_comes_off_untested(
    by: str, own_h: tuple[int, int] | None, step: str, plan: PlanOf
) -> None:
    """Whatever the hours, a test stands right before the trays are emptied."""
    found = plan(ready="Saturday 18:00", by=by, own_h=own_h, step=step)
    last, (off,) = of(found, "test")[-1], of(found, "unload")

    assert "off only what passes" in last.what and "goes on drying" in last.note
    assert 0 <= off.start - last.start <= 5
    assert "only what passed" in off.note


def test_no_test_falls_into_raw_work(plan: PlanOf) -> None:
    """A strip is bent before raw meat is taken up or after all is washed, never in between."""
    found = plan(pounds=11, ready="Sunday 18:00")
    raw = raw_spans(found.jobs, found.placed)

    turns = [one.span for one in of(found, "turn")]
    assert of(found, "test") and turns
    assert not any(one.span.meets(span) for one in of(found, "test") for span in (*raw, *turns))


def test_no_bag_is_turned_beside_finished_strips(plan: PlanOf) -> None:
    """From the trays to the pack no raw bag is in hand, by day or beside a night."""
    for nights in (None, "22:00-06:00"):
        found = plan(pounds=11, ready="2026-12-06 18:00", nights=nights)
        finished = finished_spans(found.placed)
        assert of(found, "turn") and 3 == len(finished)
        assert not any(one.span.meets(span) for one in of(found, "turn") for span in finished)


def test_all_is_washed_before_what_is_heated_is_handled(plan: PlanOf) -> None:
    """A wash follows trimming, marinade and draining; all stand before the trays are loaded."""
    found = plan(ready="Saturday 18:00")
    done = [of(found, kind)[0] for kind in ("trim", "steep", "drain")]
    after_trim, after_soak, after_drain = of(found, "wash")
    (load,) = of(found, "load")

    assert [one.end for one in done] == [one.start for one in (after_trim, after_soak, after_drain)]
    assert after_drain.end < load.start and "hands washed again" in load.note
    assert not of(plan(ready="Saturday 18:00", meat="portabella"), "wash")


def test_every_lot_is_measured(plan: PlanOf) -> None:
    """Each heat step says how it is made wet, and that the thickest of every lot is measured."""
    for step in ("simmer", "steam", "boil-down"):
        (hot,) = of(plan(ready="Saturday 18:00", step=step), step)
        assert "a thin-tipped thermometer lengthwise in the thickest of every" in hot.note
    (hot,) = of(plan(ready="Saturday 18:00", step="simmer"), "simmer")
    assert "covered by the liquid" in hot.note and "5 min or more at the boil" in hot.note


def test_meat_that_waits_waits_cold(plan: PlanOf) -> None:
    """Between trimming and its own slicing a later load is in the refrigerator: it is said."""
    found = plan(pounds=11, ready="Sunday 18:00")
    waits = of(found, "wait")

    assert {2, 3} <= {one.load for one in waits}
    assert all("refrigerator, 40 °F (4 °C) or below" == one.note for one in waits)


def test_no_raw_minute_is_unaccounted_for(plan: PlanOf) -> None:
    """From trimming to drying each load is at every moment in hand, in the cold, or in its soak."""
    found = plan(pounds=11, ready="Sunday 18:00", nights="22:00-06:00")
    for load in (1, 2, 3):
        mine = sorted(
            one.span for one in found.steps
            if one.load in (0, load) and one.kind not in ("mix", "turn", "preheat")
        )  # fmt: skip
        at = mine[0].end
        dry = next(one.start for one in of(found, "dry") if one.load == load)
        for span in mine:
            if span.start < dry:
                assert span.start - at < 30, (load, span)
                at = max(at, span.end)


def test_the_dryer_is_hot_before_it_is_loaded(plan: PlanOf) -> None:
    """It goes on 20 minutes before each time that it has stood idle, and not in between."""
    found = plan(pounds=11, ready="Sunday 18:00")
    drying = [one.span for one in of(found, "dry")]

    for one in of(found, "preheat"):
        assert one.end in [span.start for span in drying]
        assert not any(span.meets(Span(one.start, one.end)) for span in drying)


def test_poultry_is_heated_to_165(plan: PlanOf) -> None:
    """The step names the figure of its animal, in both scales."""
    (turkey,) = of(plan(meat="turkey-breast", ready="Saturday 18:00"), "steam")
    (deer,) = of(plan(ready="Saturday 18:00"), "steam")

    assert "Steam or roast to 165 °F (74 °C) inside" == turkey.what
    assert "Steam or roast to 160 °F (71 °C) inside" == deer.what


@pytest.mark.parametrize(
    ("minutes", "words"), [(5, "5 min"), (60, "1 h"), (65, "1 h 05"), (1445, "24 h 05")]
)
def test_hours_words(minutes: int, words: str) -> None:
    """Lengths in hours and minutes."""
    assert words == hours_words(minutes)


def test_air_words() -> None:
    """A temperature or a span of them in both scales."""
    assert "150-155 °F (66-68 °C)" == air_words((150, 155))
    assert "155 °F (68 °C)" == air_words((155, 155))


@pytest.mark.parametrize(
    ("meat", "says"),
    [
        ("deer", "sealed with the least air"),
        ("salmon-sockeye", "loosely wrapped, into the refrigerator, below 36 °F (2 °C), at once"),
        ("portabella", "packed, into the refrigerator, 40 °F (4 °C) or below, or the freezer"),
    ],
)
def test_packing_says_what_its_caution_says(meat: str, says: str, plan: PlanOf) -> None:
    """Only meat is sealed with the least air; fish never, but for the freezer."""
    (pack,) = of(plan(ready="Saturday 18:00", meat=meat), "pack")

    assert says in pack.note and "see Keeping" in pack.note
    assert (meat == "deer") is ("least air" in pack.note)


def test_strips_are_raw_till_the_oven_and_every_line_says_so(plan: PlanOf) -> None:
    """Where the heat comes after drying, tests and unloading say: not tasted, washed after."""
    raw = plan(ready="Saturday 18:00", step="oven-after")
    heated = plan(ready="Saturday 18:00", step="steam")

    assert len(of(raw, "test")) > 1
    for one in (*of(raw, "test"), *of(raw, "unload")):
        assert "still raw till the oven: not tasted" in one.note and "washed after" in one.note
    assert all(one.what.startswith("Bend test, still raw") for one in of(raw, "test"))
    assert "still raw" not in str([*of(heated, "test"), *of(heated, "unload")])


@pytest.mark.parametrize("nights", [None, "22:00-06:00"])
@pytest.mark.parametrize("frozen", [False, True])
def test_no_raw_meat_comes_out_beside_heated_strips(
    frozen: bool, nights: str | None, plan: PlanOf
) -> None:
    """Between the heat and the trays no bag is turned and nothing raw goes into the freezer."""
    found = plan(pounds=11, ready="2026-12-06 18:00", nights=nights, frozen=frozen)
    heated = heated_spans(found.placed)
    begun = [Span(one.start, one.start + 5) for one in of(found, "part-freeze")]

    assert 3 == len(heated) == len(begun)
    for span in (*begun, *(one.span for one in of(found, "turn"))):
        assert not any(map(span.meets, heated))
    assert all("hands washed after" in one.note for one in of(found, "part-freeze"))


def test_the_door_is_propped_at_the_step(plan: PlanOf) -> None:
    """The drying step says what is held and what a gas oven does; a cool oven's says nothing."""
    hot = Kitchen(trays=0, oven_lowest_f=170.0, oven_racks=2, oven_rack=Tray(500, 350))
    own, told, cool = (
        next(one for one in plan(ready="Saturday 18:00", **parts).steps if one.kind == "dry")
        for parts in (
            {"kitchen": hot, "own_h": (6, 6)},
            {"kitchen": hot},
            {"kitchen": hot._replace(oven_lowest_f=140.0)},
        )
    )

    assert "Dries, door propped, near 150-155 °F (66-68 °C)" == told.what
    assert "never under 145 °F (63 °C); not left alone: somebody awake in the house" in told.note
    assert "with a gas oven, or children near, the door stays shut" in told.note
    assert "dry after 2 h 10 to 8 h 50, tried from the first on, a piece cut open" in told.note
    assert "dry sooner than told here, tried every half hour" in own.note
    assert ("Dries at 150-155 °F (66-68 °C)", "") == (cool.what, cool.note)


@pytest.mark.parametrize(("meat", "opened"), [("salmon-sockeye", True), ("deer", False)])
def test_frozen_fish_thaws_in_an_opened_pack(meat: str, opened: bool, plan: PlanOf) -> None:
    """Fish is often frozen without air: its pack is opened first; meat has no such line."""
    (thaw,) = of(plan(ready="Sunday 18:00", meat=meat, frozen=True), "thaw")

    assert opened is thaw.note.startswith("pack opened first; in the refrigerator")
