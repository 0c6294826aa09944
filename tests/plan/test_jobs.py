"""From a recipe, today's meat and a kitchen to plain minutes and trays."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from tarebook.findings import AskedWrongly, CureRefused, PlanRefused
from tarebook.kitchen import Kitchen, Tray, Vessel
from tarebook.plan.jobs import Job, air_of, soak_minutes
from tarebook.plan.trays import Dryer
from tarebook.recipe.model import HeatStep
from tarebook.safety import Case

JobOf = Callable[..., Job]


def kinds(found: Job) -> list[list[str]]:
    """Return what is done once, and to the first load before and after its soak."""
    portion = found.batch.portions[0]
    return [
        [task.kind for task in part] for part in (found.batch.prep, portion.lead, portion.front)
    ]


def test_strips_in_a_marinade(job: JobOf) -> None:
    """They are trimmed, part-frozen and sliced, soaked, drained, steamed and laid out."""
    found = job(pounds=4, frozen=True)

    assert [
        ["thaw", "trim", "wash"],
        ["part-freeze", "slice"],
        ["drain", "wash", "steam", "load"],
    ] == kinds(found)
    assert found.batch.mix and found.batch.steep
    assert not found.batch.raw


def test_ground_meat_is_never_soaked(job: JobOf) -> None:
    """Seasoning is kneaded in, sheets are formed, and a marinade is no bath."""
    plain = job(form="ground", marinade={}, mixed_in={"salt-table": "1 tsp"})
    soaked = job(form="ground")

    assert [["mix", "knead", "wash"], [], ["form", "wash", "steam", "load"]] == kinds(plain)
    for found in (plain, soaked):
        assert ((0, 0, 0), 0, 0) == (found.batch.soak, found.batch.steep, found.batch.mix)


def test_a_rub_rests(job: JobOf) -> None:
    """Rubbed meat rests for the hours of the table, since recipes have none for it."""
    found = job(marinade={}, rub={"salt-table": "1 tsp"}, heat="oven after drying")

    assert [["trim", "wash"], ["part-freeze", "slice"], ["load"]] == kinds(found)
    assert (120, 240, 480) == found.batch.soak
    assert found.batch.raw and found.batch.portions[0].oven


def test_mushrooms_are_not_frozen_or_sanitised_after(job: JobOf) -> None:
    """What is no flesh is sliced as it is, and leaves no raw juices."""
    found = job(meat="portabella", heat="steamed or roasted first")

    assert [["trim"], ["slice"]] == kinds(found)[:2]
    assert 0 == found.batch.portions[0].clean


def test_frozen_meat_thaws_a_day_for_four_pounds(job: JobOf) -> None:
    """24 hours for each 4 pounds, and a full day for less (fsis-thawing)."""
    thaws = [job(pounds=pounds, frozen=True).batch.prep[0].minutes for pounds in (1, 4, 8, 10)]

    assert [1440, 1440, 2880, 3600] == thaws


@pytest.mark.parametrize(
    ("hours", "minutes", "capped"),
    [
        ("12", (600, 720, 840), False),
        ('"10-14"', (600, 720, 840), False),
        ('"8-36"', (480, 1320, 1440), False),
        ("24", (1320, 1440, 1440), False),
        ("36", (1440, 1440, 1440), True),
        ('"30-60"', (1440, 1440, 1440), True),
        ("1", (60, 60, 180), False),
        ("0.5", (30, 30, 150), False),
    ],
)
def test_a_soak_never_goes_over_the_limit(
    hours: str, minutes: tuple[int, int, int], capped: bool, job: JobOf
) -> None:
    """Two hours of slack for a single figure, a range as it is, and 24 hours at the very most."""
    found = job(soak=f"hours = {hours}")

    assert (minutes, capped) == soak_minutes(Case.of(found.recipe))
    assert (minutes, capped) == (found.batch.soak, found.soak_capped)


def test_the_limit_is_for_flesh(job: JobOf) -> None:
    """Mushrooms may lie as long as their recipe says: no limit is held for them."""
    assert 40 * 60 == job(meat="portabella", soak='hours = "36-40"').batch.soak[2]


@pytest.mark.parametrize(
    ("heat_f", "wanted_f", "air_f"),
    [
        (None, (150, 155), (150, 155)),
        ((95, 165), (150, 155), (150, 155)),
        ((95, 152), (150, 155), (150, 152)),
        ((95, 140), (150, 155), (140, 140)),
        ((170, 550), (150, 155), (170, 170)),
        ((160, 160), (150, 155), (160, 160)),
    ],
)
def test_air_as_near_as_the_dryer_comes(
    heat_f: tuple[float, float] | None, wanted_f: tuple[float, float], air_f: tuple[float, float]
) -> None:
    """The recipe's heat where the dryer has it, else the nearest it has."""
    assert air_f == air_of(wanted_f, Dryer(heat_f=heat_f))


def test_the_oven_after_dries_for_its_least_hours(job: JobOf) -> None:
    """However short the recipe's hours, the oven after drying asks for 6 before it."""
    found = job(heat="oven after drying", drying='temperature = "155 F"\nhours = "3-4"')

    assert 6 == found.hours.low_h and 6 <= found.hours.likely_h


def test_the_hours_planned_with(job: JobOf) -> None:
    """Low, likely or high hours, rounded up to five minutes."""
    lengths = [job(own_h=(6, 6), by=by).batch.portions[0].dry for by in ("low", "likely", "high")]

    assert [270, 360, 450] == lengths


def test_a_bowl_that_holds_a_load(job: JobOf) -> None:
    """The smallest bowl that the load and its marinade go into, with room; or none."""
    bowls = (Vessel("tub", 9000), Vessel("bag", 3800), Vessel("cup", 240))  # type: ignore[arg-type]
    kitchen = Kitchen(trays=5, tray=Tray(304.8, 304.8), bowls=bowls)
    found = job(pounds=4, kitchen=kitchen)

    assert 2000 < found.bowl_ml < 3000
    assert found.bowl == bowls[1]
    assert None is job(pounds=4, kitchen=kitchen._replace(bowls=bowls[2:])).bowl
    assert (None, False) == (job(pounds=4).bowl, job(pounds=4).bowls_told)


def test_a_refused_cure_plans_nothing(job: JobOf) -> None:
    """Curing salt beyond what is printed stops the plan too."""
    salt = '{ amount = "80 g", strength = "6.25 %" }'

    with pytest.raises(CureRefused):
        job(marinade={"soy-sauce": "1 cup", "curing-salt-1": salt})


def test_the_case_follows_the_step_chosen(job: JobOf) -> None:
    """The safety rules are asked about the heat step of the plan, not that of the recipe."""
    found = job(meat="bear", heat="oven after drying")

    assert HeatStep.SIMMERED is found.case.recipe.heat
    assert HeatStep.OVEN_AFTER is found.recipe.heat


@pytest.mark.parametrize(
    ("meat", "drying_f", "heat_f", "air_f"),
    [
        ("deer", 130, (95.0, 165.0), (145, 155)),
        ("deer", 150, (95.0, 165.0), (150, 150)),
        ("deer", 155, (95.0, 140.0), (140, 140)),
        ("chum salmon", 130, (95.0, 165.0), (145, 155)),
        ("portabella", 125, (95.0, 165.0), (125, 125)),
    ],
)
def test_flesh_is_planned_hot_enough(
    meat: str,
    drying_f: int,
    heat_f: tuple[float, float],
    air_f: tuple[float, float],
    job: JobOf,
) -> None:
    """At 145 degF or more where the dryer can, whatever the recipe says; mushrooms as they are."""
    drying = f'temperature = "{drying_f} F"\nhours = "5-7"'

    assert air_f == job(meat=meat, drying=drying, dryer=Dryer(heat_f=heat_f)).air_f


@pytest.mark.parametrize("top_f", [125.0, 129.0])
def test_no_days_are_planned_under_the_published_floor(top_f: float, job: JobOf) -> None:
    """Flesh under 130 degF is refused, with the outbreak and what to do; 130 and mushrooms pass."""
    cool = Dryer(heat_f=(95.0, top_f))
    for meat in ("elk", "turkey-breast", "chum salmon"):
        with pytest.raises(PlanRefused) as refused:
            job(meat=meat, dryer=cool)
        assert "11 people fell ill" in str(refused.value)
        assert "tarebook kitchen set dryer.trays 0" in str(refused.value)

    assert 130.0 == job(dryer=Dryer(heat_f=(95.0, 130.0))).air_f[1]
    assert job(meat="portabella", dryer=cool, drying='temperature = "125 F"\nhours = 6')


@pytest.mark.parametrize(("top_f", "may"), [(160.0, True), (140.0, False)])
def test_the_oven_after_asks_for_the_dryers_heat(top_f: float, may: bool, job: JobOf) -> None:
    """Where the dryer stays below 145 degF the oven after is refused, asked for or written."""
    found = job(heat="oven after drying", dryer=Dryer(heat_f=(95.0, top_f)))

    assert may is (found.choice.step is HeatStep.OVEN_AFTER)
    if not may:
        assert "not for air of 140 °F (60 °C)" in found.choice.refused
        with pytest.raises(AskedWrongly, match="not for air of"):
            job(step="oven-after", dryer=Dryer(heat_f=(95.0, top_f)))


def test_what_is_too_thick_is_planned_at_a_quarter_inch(job: JobOf) -> None:
    """Trays and hours are those of the cut that times are published for."""
    thick, thin = job(thickness="3/8 in"), job(thickness="1/4 in")

    assert thin.needed_cm2 == thick.needed_cm2 and 6.35 == thick.thickness_mm
    assert "1/4 in" == thick.case.recipe.meat.thickness_written


def test_raw_work_is_known(job: JobOf) -> None:
    """All that touches raw meat is marked, and nothing of mushrooms is."""
    portion = job().batch.portions[0]

    assert {"part-freeze", "slice", "drain", "wash", "steam", "load"} == {
        task.kind for task in (*portion.lead, *portion.front) if task.raw
    }
    assert job().batch.wash and job().batch.flesh
    assert not any(task.raw for task in job(meat="portabella").batch.portions[0].front)


@pytest.mark.parametrize(
    ("lowest_f", "drying", "held_f"),
    [
        (170.0, 'temperature = "150-155 F"\nhours = "5-7"', (150.0, 155.0)),
        (170.0, 'temperature = "130 F"\nhours = "5-7"', (145.0, 155.0)),
        (140.0, 'temperature = "150-155 F"\nhours = "5-7"', None),
    ],
)
def test_an_oven_too_hot_is_propped(
    lowest_f: float, drying: str, held_f: tuple[float, float] | None, job: JobOf
) -> None:
    """Its hours are for the air that is held, never under the cautious one; a cool one is shut."""
    oven = Dryer(trays=2, tray_cm2=2000.0, heat_f=(lowest_f, 550.0), oven=True)
    found = job(dryer=oven, drying=drying)

    assert found.propped is (held_f is not None)
    if held_f is None:
        assert found.held_f == found.air_f == (150.0, 155.0) and found.shut is None
        return
    assert held_f == found.held_f == found.batch.air and (170.0, 170.0) == found.air_f
    assert found.shut is not None and found.shut.high_h < found.hours.high_h
    assert job(dryer=oven, drying=drying, own_h=(6, 6)).shut is None


def test_a_dryer_is_never_propped(job: JobOf) -> None:
    """A dryer that goes no cooler is planned at what it does: it has no door to prop."""
    found = job(dryer=Dryer(trays=5, tray_cm2=900.0, heat_f=(160.0, 165.0)))

    assert not found.propped and found.held_f == found.air_f == (160.0, 160.0)
