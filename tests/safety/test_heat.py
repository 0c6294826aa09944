"""Heat: each rule with a batch it accepts and one it refuses."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from tarebook.findings import Severity
from tarebook.recipe.model import HeatStep
from tarebook.safety.case import Case
from tarebook.safety.heat import (
    bear_and_wild_pork,
    check_heat_stated,
    check_oven_after,
    check_oven_hours,
    heat,
    heat_first,
    no_rule,
    poultry,
)

Cases = Callable[..., Case]


def test_a_stated_heat_step_is_accepted(case: Cases) -> None:
    """Any stated heat step answers the question whether there is one."""
    assert check_heat_stated(case(heat=HeatStep.OVEN_AFTER)) == ()


@pytest.mark.parametrize("key", ["salmon-sockeye", "mushroom-shiitake"])
def test_no_heat_step_is_asked_where_no_rule_is_held(case: Cases, key: str) -> None:
    """Fish and mushrooms are not held to a rule for meat."""
    assert check_heat_stated(case(key, heat=HeatStep.UNSTATED)) == ()


def test_a_missing_heat_step_is_a_warning(case: Cases) -> None:
    """A recipe without one is told why, and which step to write."""
    (found,) = check_heat_stated(case(heat=HeatStep.UNSTATED))

    assert found.severity is Severity.WARNING
    assert found.place.path == "heat.step"
    assert found.message == (
        "no heat step is stated, and drying alone has left bacteria alive in published trials"
    )
    assert found.hint == (
        "heat the meat, and write how under [heat]; the most cautious is "
        'step = "simmered in its marinade"'
    )


def test_without_marinade_steaming_is_offered(case: Cases) -> None:
    """A rub has nothing to simmer in."""
    (found,) = check_heat_stated(case(heat=HeatStep.UNSTATED, marinade={}))

    assert found.hint.endswith('step = "steamed or roasted first"')


def test_oven_after_is_accepted_for_thin_strips(case: Cases) -> None:
    """Thin whole-muscle venison strips may be heated after drying."""
    assert check_oven_after(case(heat=HeatStep.OVEN_AFTER)) == ()


def test_oven_after_is_refused_for_poultry(case: Cases) -> None:
    """Poultry is told what the oven is published for, and how hot it must get first."""
    (found,) = check_oven_after(case("turkey-breast", heat=HeatStep.OVEN_AFTER))

    assert found.severity is Severity.WARNING
    assert found.message == (
        "the oven after drying is published for whole-muscle strips up to 1/4 in (6 mm), "
        "dried at 145 to 155 °F (63 to 68 °C); not for poultry"
    )
    assert found.hint == "heat it to 165 °F (74 °C) inside, in wet heat, before it dries"


def test_heating_first_is_never_refused(case: Cases) -> None:
    """Bear heated first is accepted; only the oven after is not."""
    assert check_oven_after(case("bear", heat=HeatStep.STEAMED)) == ()
    assert check_oven_after(case("bear", heat=HeatStep.OVEN_AFTER)) != ()


def test_heat_is_always_said_of_meat(case: Cases) -> None:
    """Every card of meat says how hot, and offers the oven only where it is published."""
    (thin,) = heat(case())
    (thick,) = heat(case(thickness_mm=9.0))
    (bird,) = heat(case("turkey-breast"))

    assert thin.message == ("bring the meat to 160 °F (71 °C) inside, in wet heat, before it dries")
    assert thin.hint == (
        "or dry strips up to 1/4 in at 145 to 155 °F (63 to 68 °C) for 6 hours at least "
        "(Wisconsin: 4), then 10 minutes in a preheated 275 °F (135 °C) oven, to 160 °F (71 °C) "
        "inside"
    )
    assert thick.hint == "an oven after drying is not published for thicker strips"
    assert bird.hint == "an oven after drying is not published for poultry"
    assert bird.message == (
        "bring the poultry to 165 °F (74 °C) inside, in wet heat, before it dries"
    )
    assert heat(case("mushroom-shiitake")) == ()


def test_heat_cites_the_rule_its_figure_is_from(case: Cases) -> None:
    """The hotter figure for bear is not put into the mouth of a body that did not say it."""
    both = "heat-before; oven-after; oven-after-minnesota; dryer-145"
    assert heat(case())[0].cites == both
    assert heat(case("bear"))[0].cites == "game-165; oven-after; heat-before"


def test_oven_after_hears_that_heating_first_is_preferred(case: Cases) -> None:
    """Who chose the oven after drying is told why the other way is preferred, and by whom."""
    (found,) = heat_first(case(heat=HeatStep.OVEN_AFTER))

    assert found.message == (
        "heating before drying is preferred: once dried, bacteria stand more heat"
    )
    assert found.cites == "heat-first-michigan"
    assert heat_first(case(heat=HeatStep.STEAMED)) == ()


def test_too_few_hours_before_the_oven_are_a_warning(case: Cases) -> None:
    """Under six stated hours the oven after drying is not as published; six and none pass."""
    (found,) = check_oven_hours(case(heat=HeatStep.OVEN_AFTER, drying_hours=(4.0, 6.0)))

    assert found.severity is Severity.WARNING
    assert found.message == (
        "4 hours of drying are under the 6 that the oven after drying is published with"
    )
    assert "Wisconsin allows 4 hours" in found.hint
    assert check_oven_hours(case(heat=HeatStep.OVEN_AFTER, drying_hours=(6.0, 8.0))) == ()
    assert check_oven_hours(case(heat=HeatStep.OVEN_AFTER)) == ()
    bear = case("bear", heat=HeatStep.OVEN_AFTER, drying_hours=(4.0, 6.0))
    assert check_oven_hours(bear) == ()  # it is refused the oven, whatever the hours
    assert check_oven_hours(case(heat=HeatStep.STEAMED, drying_hours=(3.0, 5.0))) == ()


def test_poultry_is_told_of_the_advice_against_it(case: Cases) -> None:
    """Only poultry hears that drying it raw is advised against."""
    (found,) = poultry(case("duck-breast-wild"))

    assert found.hint == "cook it to 165 °F (74 °C) first"
    assert poultry(case("bison")) == ()


def test_bear_and_wild_pork_hear_of_parasites(case: Cases) -> None:
    """Bear, wild boar and hunted pork are told that only heat deals with their parasites."""
    for key, wild in (("bear", True), ("wild-boar", True), ("pork-loin", True)):
        (found,) = bear_and_wild_pork(case(key, wild=wild))
        assert found.severity is Severity.WARNING
        assert found.message == (
            "freezing, curing, drying and smoking may leave parasites of bear and wild pork alive"
        )
        assert found.hint == (
            "heat it before it dries, in wet heat: the thickest of every lot to 165 °F (74 °C) "
            "inside"
        )
        assert "game-165" in found.cites
    assert bear_and_wild_pork(case("pork-loin")) == ()


@pytest.mark.parametrize(
    ("key", "says"),
    [
        ("salmon-sockeye", "no published rule for drying fish at home is held here"),
        ("mushroom-shiitake", "no published rule for drying mushrooms at home is held here"),
        ("apple", "no published rule for drying this food at home is held here"),
    ],
)
def test_where_no_rule_is_held_that_is_said(case: Cases, key: str, says: str) -> None:
    """Silence is never taken for leave."""
    (found,) = no_rule(case(key))

    assert found.severity is Severity.WARNING
    assert says == found.message


def test_meat_has_rules(case: Cases) -> None:
    """Meat is not told that nothing is held."""
    assert no_rule(case()) == ()


@pytest.mark.parametrize(
    ("temperature_f", "top_f", "low_f", "refused"),
    [
        (145, None, None, False),
        (155, 160.0, 95.0, False),
        (140, None, None, True),
        (156, None, None, True),
        (155, 140.0, 95.0, True),
        (150, None, 200.0, True),
        (None, None, None, False),
        (None, 125.0, None, True),
    ],
)
def test_the_oven_after_asks_for_its_air(
    case: Cases,
    temperature_f: float | None,
    top_f: float | None,
    low_f: float | None,
    refused: bool,
) -> None:
    """Published after 145 to 155 degF: refused for what the recipe or the house dries outside."""
    found = case(temperature_f=temperature_f, heat=HeatStep.OVEN_AFTER)._replace(
        dryer_top_f=top_f, dryer_low_f=low_f
    )

    assert refused is bool(check_oven_after(found))
    assert refused is ("air of" in found.oven_after_refusal)


def test_fish_is_refused_the_oven_after(case: Cases) -> None:
    """Fish: 160 degF inside for 30 minutes, as smoked fish; mushrooms hear nothing."""
    (found,) = check_oven_after(case("chum-salmon", heat=HeatStep.OVEN_AFTER))

    assert "not for fish" in found.message
    assert found.hint.startswith("heat it to 160 °F (71 °C) inside for 30 minutes")
    assert check_oven_after(case("mushroom-shiitake", heat=HeatStep.OVEN_AFTER)) == ()
