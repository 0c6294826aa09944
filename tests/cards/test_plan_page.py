"""What plan prints: the four scenes that a new cook comes with, and the page itself."""

from __future__ import annotations

import re
from collections.abc import Callable
from datetime import datetime
from fractions import Fraction
from typing import Any
from zoneinfo import ZoneInfo

import pytest

from tarebook.cards.lines import plain_text, width
from tarebook.cards.plan_content import plan_content
from tarebook.cards.plan_keys import plan_data
from tarebook.cards.plan_page import plan_page
from tarebook.clocks.moments import read_moment
from tarebook.clocks.zones import minute_of
from tarebook.kitchen import Kitchen, Tray
from tarebook.plan.jobs import job_of
from tarebook.plan.make import Plan, Wish, make_plan
from tarebook.plan.mind import ELSEWHERE, plan_cautions
from tarebook.plan.trays import dryer_of
from tarebook.recipe import load_recipe
from tarebook.recipe.model import Recipe
from tarebook.safety.caution import TITLES

ZONE = ZoneInfo("America/Chicago")
NOW = datetime(2026, 11, 25, 9, 0, tzinfo=ZONE)
FIVE = Kitchen(trays=5, tray=Tray(330.2), hole=Tray(76.2), dryer_f=(95, 165), adjustable=True)
OVEN = Kitchen(trays=0, oven_lowest_f=170, oven_racks=2, oven_rack=Tray(508, 355.6))
LB = Fraction("453.59237")

RecipeOf = Callable[..., Recipe]


def planned(
    recipe: Recipe | str,
    pounds: int,
    *,
    kitchen: Kitchen = FIVE,
    ready: str | None = None,
    start: str | None = None,
    night: bool = True,
    **more: Any,
) -> Plan:
    """Return a plan as the command makes it."""
    opened = load_recipe(recipe)[0] if isinstance(recipe, str) else recipe
    dryer = dryer_of(kitchen)
    job = job_of(opened, meat_g=pounds * LB, kitchen=kitchen, dryer=dryer, **more)
    wish = Wish(
        now=minute_of(NOW),
        ready=minute_of(read_moment(ready, NOW)[0]) if ready else None,
        start=minute_of(read_moment(start, NOW)[0]) if start else None,
        nights=((22, 0), (6, 0)) if night else None,
    )
    return make_plan([job], dryer, wish, ZONE)


def text(plan: Plan) -> str:
    """Return the page as text."""
    return plain_text(plan_page(plan, zone_name="America/Chicago"))


def joined(plan: Plan) -> str:
    """Return the page with its lines put together."""
    return " ".join(text(plan).split())


def test_turkey_for_a_saturday() -> None:
    """Frozen turkey: thawed in the cold for its day, heated to 165 before it dries, packed in
    time, and raw poultry spoken of; the oven after is nowhere offered.
    """
    found = planned("orchard-turkey", 4, ready="Saturday 18:00", frozen=True)
    page = joined(found)

    assert "4 lb (1,814 g) of turkey breast" in page and "frozen" in page
    assert "Meat out of the freezer to thaw 24 h" in page
    assert "Simmer to 165 °F (74 °C) inside" in page
    assert "all packed by Saturday 28 November, " in page
    assert "Raw poultry." in page and "oven after drying (" not in page
    assert page.index("to thaw") < page.index("Trim") < page.index("Slice") < page.index("Soaks")
    assert page.index("Simmer to") < page.index("Onto 5 trays") < page.index("Bend test")
    assert "Not as asked" not in page


def test_eleven_pounds_on_five_trays() -> None:
    """Thirteen trays' worth on five: three loads, each soaked for itself, none by night."""
    found = planned("juniper-venison", 11, start="tomorrow 7am")
    page = joined(found)

    assert (
        "13 trays of 0.87 sq ft, 3 loads: 5 (4 lb 5.8 oz) + 5 (4 lb 5.8 oz) + 3 (2 lb 4.4" in page
    )
    assert "The second load would end in the night, " in page
    assert 3 == page.count("Soaks 12 h")
    for load in (1, 2, 3):
        own = [page.index(f"load {load}: {what}") for what in ("Slice", "Soaks", "Steam", "Dries")]
        assert own == sorted(own)
    assert "While the first load dries you get the second load ready" in page
    assert "chronic wasting disease" in page


def test_oven_only() -> None:
    """No dryer: racks of the oven, its lowest heat over the recipe's, so its door is propped and
    the hours are the recipe's; the oven after drying is nowhere offered, not published with such
    air.
    """
    found = planned("juniper-venison", 3, kitchen=OVEN, start="today 18:00")
    page = joined(found)

    assert "Onto 2 racks" in page and "Oven on, at 170 °F (77 °C)" in page
    assert "The oven goes no cooler than 170 °F (77 °C), and the recipe asks for 150-155 °F" in page
    assert "Dries, door propped, near 150-155 °F (66-68 °C) 11 h 50" in page
    assert "carried over to this cut and heat" not in page
    assert "with a gas oven, or children near, the door stays shut" in page
    assert "at 170 °F (77 °C): dry after 2 h 10 to 8 h 50" in page
    assert "Oven at 275 °F" not in page and "oven after drying (" not in page
    assert "dehydrator" not in text(found).partition("Counted with")[0].lower()


def test_ground_meat_is_neither_soaked_nor_ground_here() -> None:
    """Its minutes are of kneading and pressing; that grinding is not in them is said twice."""
    page = joined(planned("trail-sticks-venison", 3, ready="Saturday 18:00"))
    strips = joined(planned("juniper-venison", 3, ready="Saturday 18:00"))

    assert "10 min at the board and 15 min pressed and cut, of 120 in all" in page
    assert "put in its marinade" not in page and "put in its marinade" in strips
    assert "grinding it yourself is not in these minutes; cold" in page
    assert "Meat that you grind yourself is out for longer" in page and "grind" not in strips


def test_bear(recipe_of: RecipeOf) -> None:
    """Bear with the oven after drying and a soak of a day and a half: both are said to be no plan,
    and what is planned instead; the thickest of every lot to 165 before it dries at 145 or more.
    """
    recipe = recipe_of(
        meat="bear",
        heat="oven after drying",
        soak="hours = 36",
        drying='temperature = "140 F"\nhours = "6-8"',
    )
    found = planned(recipe, 3, ready="Sunday 18:00")
    page = joined(found)

    assert "The recipe says oven after drying, but " in page and "not for bear" in page
    assert "Planned here: simmered in its marinade, to 165 °F (74 °C) inside." in page
    assert "planned here is the cautious limit, 24 h" in page
    assert "Bear and wild pork: only heat helps." in page
    assert page.index("Simmer to 165 °F (74 °C) inside") < page.index("Dries at 145-155 °F")
    assert "Oven at 275" not in page


@pytest.mark.parametrize("pounds", [1, 4, 11])
def test_eighty_columns(pounds: int) -> None:
    """Nothing is wider than 80 columns, and no line is empty at the end."""
    found = planned("juniper-venison", pounds, ready="Sunday 18:00")
    lines = text(found).splitlines()

    assert max(map(width, lines)) <= 80
    assert all(line == line.rstrip() for line in lines) and lines[-1]


def test_start_and_length_make_the_end() -> None:
    """In the row of drying the likely hour and the planned length are those of its own start."""
    for name in ("juniper-venison", "cranberry-moose", "woodland-mushrooms"):
        (row,) = [
            row
            for day in plan_content(planned(name, 3, ready="Sunday 18:00"), zone_name="").days
            for row in day.rows
            if row.hours
        ]
        hour, minute = map(int, row.time.split(":"))
        likely = (60 * hour + minute + round(row.hours[1] * 60)) % 1440 if row.hours else None
        assert likely is not None and f"({likely // 60:02d}:{likely % 60:02d})" in row.notes[-1]
        assert row.notes[-1].endswith(f"high {row.length}")


def test_day_headings_and_clock_times() -> None:
    """Every day of the plan has its heading once, and its steps stand below it in order."""
    found = planned("juniper-venison", 11, start="tomorrow 7am")
    lines = text(found).splitlines()
    days = [line for line in lines if line.endswith(" 2026") and line.isupper()]

    assert len(days) == len(set(days)) >= 3
    times: list[str] = []
    for line in lines:
        if line in days:
            assert times == sorted(times)
            times = []
        elif line[2:3] == ":" and line[:2].isdigit():
            times.append(line[:5])


def test_who_is_needed_is_shown() -> None:
    """Attended steps say so; others say until when."""
    page = text(planned("juniper-venison", 4, ready="Saturday 18:00"))

    lines = {line[7:].split("  ")[0]: line for line in page.splitlines() if line[2:3] == ":"}
    assert lines["Trim the meat"].endswith(" min  by you")
    assert " to " in lines["Soaks"] and "you" not in lines["Soaks"]


def test_nothing_is_called_safe() -> None:
    """No page promises that anything is safe."""
    for name in ("juniper-venison", "orchard-turkey", "maple-dill-salmon", "cabin-rub-elk"):
        said = joined(planned(name, 4, ready="Sunday 18:00", night=False, frozen=True))
        for title in ("Making Safe Jerky", "Safe Defrosting Methods", "Safe Thawing"):
            said = said.replace(title, "")
        assert not re.search(r"\bsafe\b", said, re.IGNORECASE)


def test_estimates_and_sources_are_named() -> None:
    """Lengths of work are said to be estimates, published ones have their publisher."""
    page = joined(planned("juniper-venison", 4, ready="Sunday 18:00", frozen=True))

    assert "Lengths of work are estimates: common practice, no source." in page
    assert "The Big Thaw: Safe Defrosting Methods" in page
    assert "whatever the clock says; that says nothing of their heat step" in page
    assert "Published length of thawing: " in page and "of heating the dryer: University of" in page
    assert "Planned with the high drying hours" in page


def test_several_recipes_have_letters(recipe_of: RecipeOf) -> None:
    """Two recipes are told apart by letters, in the heading and on every line."""
    dryer = dryer_of(FIVE)
    jobs = [
        job_of(recipe_of(title=title), meat_g=2 * LB, kitchen=FIVE, dryer=dryer)
        for title in ("Ours", "Theirs")
    ]
    wish = Wish(now=minute_of(NOW), ready=minute_of(read_moment("Sunday 18:00", NOW)[0]))
    lines = text(make_plan(jobs, dryer, wish, ZONE)).splitlines()

    assert "A  Ours" in lines and "B  Theirs" in lines
    steps = [line[7:9] for line in lines if line[2:3] == ":" and line[:2].isdigit()]
    assert {"A:", "B:"} == set(steps)


def test_each_caution_once(recipe_of: RecipeOf) -> None:
    """What two recipes of one meat ask for is told once."""
    dryer = dryer_of(FIVE)
    jobs = [job_of(recipe_of(), meat_g=LB, kitchen=FIVE, dryer=dryer) for _ in range(2)]
    wish = Wish(now=minute_of(NOW), start=minute_of(NOW))
    found = plan_cautions(make_plan(jobs, dryer, wish, ZONE))

    assert len(found) == len({(one.caution.code, one.caution.text) for one in found})
    assert {"heat", "dryer", "cold-soak", "raw-splash"} <= {one.caution.code for one in found}
    assert all(one.shared and (0, 1) == one.jobs for one in found)


def both(*names: str) -> Plan:
    """Return a plan of several recipes."""
    dryer = dryer_of(FIVE)
    jobs = [
        job_of(load_recipe(name)[0], meat_g=2 * LB, kitchen=FIVE, dryer=dryer) for name in names
    ]
    return make_plan(jobs, dryer, Wish(now=minute_of(NOW), start=minute_of(NOW)), ZONE)


def test_a_caution_names_whom_it_is_for() -> None:
    """What is not said of every recipe has letters: no word of one stands for the other."""
    found = both("juniper-venison", "cranberry-moose")
    page = joined(found)

    assert "- A: Curing salt and heat. There is no curing salt in this recipe" in page
    assert "- B: Curing salt and heat. Curing salt does not replace" in page
    assert "- Important for B: Handle curing salt with care." in page
    assert "- Important: Heat the meat." in page and "- Keeping. Sealed" in page
    data = {(one["code"], *one["recipes"]) for one in plan_data(found, zone_name="")["cautions"]}
    assert {("cure-handling", 1), ("cure-is-no-heat", 0), ("heat", 0, 1)} <= data


def test_keeping_times_are_each_recipes_own() -> None:
    """Venison's days never stand for mushrooms: the caution has a letter, and packing names it."""
    page = joined(both("juniper-venison", "woodland-mushrooms", "cranberry-moose"))

    assert "- Important for B: Keeping. Keep cold and eat within 3 days" in page
    assert "- A, C: Keeping. Sealed, dry by the bend test" in page
    assert (2, 1) == (
        page.count('for how long: see "A, C: Keeping"'),
        page.count('for how long: see "B: Keeping"'),
    )
    assert "for how long: see Keeping" in joined(both("juniper-venison", "cranberry-moose"))


def test_the_gravest_stand_first_whosever_they_are() -> None:
    """A warning of the second recipe stands before every note of the first."""
    graves = [one.grave for one in plan_cautions(both("juniper-venison", "woodland-mushrooms"))]

    assert graves == sorted(graves, reverse=True) and graves[0] and not graves[-1]


def test_cautions_told_elsewhere_are_those_that_exist() -> None:
    """A new rule is told with the days unless somebody says that it changes nothing in them."""
    assert set(TITLES) >= ELSEWHERE
    assert {"heat", "dryer", "soak-over", "deer-testing", "cold-soak"}.isdisjoint(ELSEWHERE)


def test_plain_data() -> None:
    """The same as data: every step with its zone's time, lengths that agree, nothing left out."""
    found = planned("juniper-venison", 11, start="tomorrow 7am")
    data = plan_data(found, zone_name="America/Chicago")

    assert len(found.steps) == len(data["steps"])
    for step, one in zip(data["steps"], found.steps, strict=True):
        start, end = (datetime.fromisoformat(step[key]) for key in ("start", "end"))
        assert step["minutes"] * 60 == (end - start).total_seconds()
        assert minute_of(start) == one.start
    (recipe,) = data["recipes"]
    assert 11 * float(LB) == pytest.approx(sum(load["meat_g"] for load in recipe["loads"]), abs=0.1)
    assert [5, 5, 3] == [load["trays"] for load in recipe["loads"]]
    assert data["conflicts"] and data["cautions"]


def test_the_oven_after_hears_of_its_hours() -> None:
    """Six hours at least before the oven, and that heating first is preferred."""
    page = joined(
        planned("juniper-venison", 3, start="today 18:00", heat="oven-after", hours=(3, 3))
    )

    assert "at least 6 h, which the oven after drying asks for" in page
    assert "Oven at 275 °F (135 °C), 10 min a sheet" in page
    assert "Heating first is preferred." in page
    assert "6 hours in all is the limit" in page and "heat it first, if you can" in page
    assert "print them with --heat oven-after, so that their figures are for it" in page


def test_a_dryer_too_cool_is_said_first_and_at_its_steps() -> None:
    """What is at odds with published advice stands above all else, and beside what it is about."""
    cool = FIVE._replace(dryer_f=(95.0, 135.0))
    found = planned("juniper-venison", 3, kitchen=cool, start="today 18:00")
    page = text(found)

    assert page.index("At odds with published advice") < page.index("WEDNESDAY 25 NOVEMBER")
    assert 2 == page.count("At odds with published advice: see above")
    assert "it lies between them for" in joined(found)
    assert "At odds" not in text(planned("juniper-venison", 3, start="today 18:00"))


def test_the_plan_says_how_it_keeps() -> None:
    """The page on the counter ends with what the packer needs."""
    page = joined(planned("juniper-venison", 3, start="today 18:00"))

    assert "sealed with the least air" in page and "14 days at room temperature" in page
    assert "Parasites of game." in page and "Who should take most care." in page
    assert "not before" in page and "since raw it keeps 3 days" in page
    assert "not before" not in joined(
        planned("juniper-venison", 3, frozen=True, start="today 18:00")
    )


def test_short_has_times_steps_conflicts_and_what_is_grave() -> None:
    """For wet hands: every step and conflict, each note once, grave cautions without their
    sources, of the others the titles; and where they are.
    """
    found = both("juniper-venison", "woodland-mushrooms")
    whole, short = (
        plain_text(plan_page(found, zone_name="", short=each)).splitlines()
        for each in (False, True)
    )

    assert len(short) < 0.6 * len(whole)
    timed = [[line for line in page if line[2:3] == ":"] for page in (whole, short)]
    assert timed[0] == timed[1] and len(found.steps) == len(timed[0])
    page = " ".join(" ".join(short).split())
    assert all(one.sentence in page for one in found.conflicts)
    minded = [one.partition(". ")[0] for one in short if one.startswith("- Important")]
    assert len(minded) == sum(one.grave for one in plan_cautions(found))
    assert "Counted with" not in short and "Good to know" not in short
    assert "Also: A: Parasites of game; " in page and "[USDA" not in page.partition("Mind")[2]
    assert "The other cautions: the same command without --short." == short[-1]
    assert 1 == page.count("a thin-tipped thermometer lengthwise")


def test_a_short_plan_says_again_what_differs() -> None:
    """Each load's own curing salt and its thermometer stay at their load, alike or not."""
    found = planned("cranberry-moose", 8, start="tomorrow 7am", night=False, hours=(5, 5))
    short = " ".join(plain_text(plan_page(found, zone_name="", short=True)).split())

    loads = len(found.jobs[0].loads)
    assert loads == short.count("first weigh ") == short.count("a thin-tipped thermometer") > 1


@pytest.mark.parametrize("short", [False, True])
def test_hands_are_washed_at_every_look_at_the_trays(short: bool) -> None:
    """Each turning of trays and each bend test says so on the page, the short one's too."""
    found = planned("cranberry-moose", 8, start="tomorrow 7am", night=False, hours=(5, 5))
    rows = [
        row for day in plan_content(found, zone_name="", short=short).days for row in day.rows
        if row.what.startswith(("Turn the trays", "Bend test"))
    ]  # fmt: skip

    assert len(rows) > 6
    assert all(row.notes and row.notes[0].startswith("hands washed first") for row in rows)
