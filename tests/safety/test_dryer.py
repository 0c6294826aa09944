"""Dryer, cut and finish: each rule with a batch it accepts and one it refuses."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from tarebook.findings import Severity
from tarebook.recipe.model import Finish, FinishBy, HeatStep
from tarebook.safety.case import Case
from tarebook.safety.caution import TITLES
from tarebook.safety.dryer import (
    check_dryer,
    check_finish,
    check_thickness,
    dryer,
    own_dryer,
    weighed_moist,
)

Cases = Callable[..., Case]


@pytest.mark.parametrize("degf", [145.0, 63 * 1.8 + 32, 62.75 * 1.8 + 32, 160.0, None])
def test_a_hot_or_unstated_dryer_is_accepted(case: Cases, degf: float | None) -> None:
    """145 degF passes, in either scale; a recipe that states none is not blamed."""
    assert check_dryer(case(temperature_f=degf, heat=HeatStep.OVEN_AFTER)) == ()


def test_a_cool_dryer_is_a_warning(case: Cases) -> None:
    """A dryer under 145 degF is told what both bodies say and what to set."""
    (found,) = check_dryer(case(temperature_f=135, heat=HeatStep.OVEN_AFTER))

    assert found.severity is Severity.WARNING
    assert found.message == (
        "135 °F (57 °C) is under the 145 °F (63 °C) of Wisconsin; FSIS gives "
        "130 to 140 °F (54 to 60 °C), and only once the meat has been heated"
    )
    assert found.hint == "dry at 145 to 155 °F (63 to 68 °C), by a thermometer among the trays"
    assert found.place.path == "drying.temperature"


@pytest.mark.parametrize(
    ("degf", "heat", "severity"),
    [
        (130, HeatStep.SIMMERED, Severity.NOTE),
        (140, HeatStep.STEAMED, Severity.NOTE),
        (129, HeatStep.SIMMERED, Severity.WARNING),
        (140, HeatStep.UNSTATED, Severity.WARNING),
    ],
)
def test_after_heating_a_cooler_dryer_is_only_noted(
    case: Cases, degf: float, heat: HeatStep, severity: Severity
) -> None:
    """FSIS's 130 to 140 degF counts only once the meat has been heated."""
    (found,) = check_dryer(case(temperature_f=degf, heat=heat))

    assert severity is found.severity
    assert ("dryer-mild" if severity is Severity.NOTE else "dryer-cool") == found.code


def test_after_heating_a_cooler_dryer_is_not_called_too_cool(case: Cases) -> None:
    """What FSIS allows is told as allowed, and the cautious figure beside it."""
    (found,) = check_dryer(case(temperature_f=135))

    assert "cool" not in TITLES[found.code]
    assert found.message == (
        "135 °F (57 °C) is within the 130 to 140 °F (54 to 60 °C) of FSIS for meat that has been "
        "heated; Wisconsin asks for 145 °F (63 °C) or more"
    )
    assert found.hint == "take the hotter, by a thermometer among the trays"


def test_a_weighed_batch_that_is_too_moist_is_a_warning(case: Cases) -> None:
    """The scale overrules the recipe; a dry batch and an unweighed one hear nothing."""
    (found,) = weighed_moist(case(moisture_to_protein=0.9))

    assert found.severity is Severity.WARNING
    assert found.hint == "dry it further and weigh it again, or keep it cold as perishable food"
    assert weighed_moist(case(moisture_to_protein=0.7)) == weighed_moist(case()) == ()


def test_fish_hears_of_the_dryer_as_far_as_a_rule_is_held(case: Cases) -> None:
    """Fish is told the figure for meat as one for meat, and that none for fish is held."""
    (found,) = dryer(case("salmon-sockeye"))

    assert "145 °F (63 °C) or more for meat" in found.message
    assert found.hint == "no figure for fish is held: take no cooler one"


@pytest.mark.parametrize("key", ["salmon-sockeye", "mushroom-shiitake"])
def test_no_dryer_rule_is_held_for_other_food(case: Cases, key: str) -> None:
    """A rule for meat is not put upon fish and mushrooms."""
    assert check_dryer(case(key, temperature_f=110)) == ()
    assert dryer(case("mushroom-shiitake")) == ()


def test_the_dryer_is_always_said_of_meat(case: Cases) -> None:
    """Every card of meat says what the dryer must hold and what is none."""
    (found,) = dryer(case())

    assert found.message == (
        "the dryer must hold 145 °F (63 °C) or more, by a thermometer and not by its dial"
    )
    assert found.hint == (
        "a dryer whose heat cannot be set is not for meat; nor is the sun or a cool oven"
    )


def test_a_quarter_inch_is_accepted(case: Cases) -> None:
    """Strips of a quarter inch are what the published times are for."""
    assert check_thickness(case(thickness_mm=6.35)) == ()


def test_a_thick_cut_is_a_warning(case: Cases) -> None:
    """A thicker cut is told how thick, in both measures, and what to do."""
    (found,) = check_thickness(case(thickness_mm=9.525))

    assert found.severity is Severity.WARNING
    assert found.message == (
        "0.38 in (9.5 mm) is thicker than the 1/4 in (6 mm) that the published times are for"
    )
    assert found.hint == (
        "cut it to 1/4 in; for what is thicker no times are held, and no keeping time is given"
    )


def test_an_unstated_thickness_is_noted(case: Cases) -> None:
    """Where no thickness is stated, that is noted."""
    (found,) = check_thickness(case(thickness_mm=None))

    assert found.severity is Severity.NOTE
    assert found.code == "thickness-blank"


def test_mushrooms_may_be_thick(case: Cases) -> None:
    """The rule on strips of meat is not put upon mushrooms."""
    assert check_thickness(case("mushroom-portabella", thickness_mm=20)) == ()


def test_a_dry_finish_is_accepted(case: Cases) -> None:
    """A finish within the figure for jerky is accepted."""
    dry = Finish(by=FinishBy.MOISTURE_TO_PROTEIN, value=(0.35, 0.58, 0.80))

    assert check_finish(case(finish=dry)) == ()
    assert check_finish(case(finish=None)) == ()


def test_a_moist_finish_is_a_warning(case: Cases) -> None:
    """A recipe that stops too moist is told that no keeping time holds."""
    moist = Finish(by=FinishBy.YIELD, value=(0.47, 0.5, 0.53))

    (found,) = check_finish(case(finish=moist))

    assert found.severity is Severity.WARNING
    assert found.place.path == "drying.yield"
    assert found.hint == "dry it further, or keep it cold as perishable food"


@pytest.mark.parametrize(("top_f", "settable"), [(165.0, True), (145.0, None), (None, None)])
def test_a_dryer_that_is_hot_enough_or_unknown_is_accepted(
    case: Cases, top_f: float | None, settable: bool | None
) -> None:
    """145 degF or more; a house that says nothing of its dryer is not blamed."""
    assert () == own_dryer(case()._replace(dryer_top_f=top_f, dryer_settable=settable))


def test_a_dryer_that_cannot_be_set_is_a_warning(case: Cases) -> None:
    """However hot it is said to get: what is wrong, and what to do instead."""
    (found,) = own_dryer(case()._replace(dryer_top_f=165.0, dryer_settable=False))

    assert ("dryer-fixed", Severity.WARNING) == (found.code, found.severity)
    assert "an oven that does, by a thermometer" in found.hint


def test_a_dryer_that_stays_too_cool_is_a_warning(case: Cases) -> None:
    """Its top is told beside the figure it misses, in both scales."""
    (found,) = own_dryer(case()._replace(dryer_top_f=140.0))

    assert "dryer-weak" == found.code
    assert "goes to 140 °F (60 °C), under the 145 °F (63 °C)" in found.message


def test_mushrooms_may_dry_in_any_dryer(case: Cases) -> None:
    """No figure for them is held, so none is held against the dryer."""
    assert () == own_dryer(case("mushroom-portabella")._replace(dryer_settable=False))


@pytest.mark.parametrize(
    ("top_f", "outbreak"), [(125.0, True), (135.0, True), (140.0, False), (None, False)]
)
def test_a_dryer_as_cool_as_that_of_the_outbreak(
    case: Cases, top_f: float | None, outbreak: bool
) -> None:
    """Eleven people fell ill of venison from 125 to 135 degF: told where a dryer stays there."""
    found = own_dryer(case()._replace(dryer_top_f=top_f))

    assert outbreak is ("11 people fell ill" in "".join(one.message for one in found))


@pytest.mark.parametrize(
    ("stated_f", "low_f", "top_f", "air_f"),
    [
        (155.0, None, None, (155.0, 155.0)),
        (155.0, 95.0, 125.0, (125.0, 125.0)),
        (155.0, 200.0, None, (200.0, 200.0)),
        (None, None, 125.0, (125.0, 125.0)),
        (None, None, None, None),
    ],
)
def test_it_dries_as_near_as_the_house_comes(
    case: Cases,
    stated_f: float | None,
    low_f: float | None,
    top_f: float | None,
    air_f: tuple[float, float] | None,
) -> None:
    """The air is the recipe's, no hotter and no cooler than the dryer in the house can be."""
    found = case(temperature_f=stated_f)._replace(dryer_low_f=low_f, dryer_top_f=top_f)

    assert air_f == found.air_f
