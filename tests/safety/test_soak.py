"""Soaking and raw juices: each rule with a batch it accepts and one it refuses."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from tarebook.findings import Severity
from tarebook.recipe.model import HeatStep, MeatForm, Recipe, Soak
from tarebook.safety.case import Case
from tarebook.safety.soak import (
    check_soak,
    check_soak_warm,
    check_used_before,
    cold_hold,
    cold_soak,
    raw_splash,
    used_marinade,
)

Batch = Callable[..., Recipe]
Cases = Callable[..., Case]


@pytest.mark.parametrize("hours", [12.0, 24.0, None])
def test_a_day_is_accepted(case: Cases, hours: float | None) -> None:
    """24 hours pass; a recipe that states none is not blamed."""
    assert check_soak(case(hours=hours)) == ()


def test_a_rub_does_not_soak(case: Cases) -> None:
    """Hours without a marinade are not a soak."""
    assert check_soak(case(marinade={}, rub={"salt-table": "10 g"}, hours=72)) == ()


def test_over_a_day_is_a_warning_with_both_limits(case: Cases) -> None:
    """A longer soak is told the cautious limit and the outer one, side by side."""
    (found,) = check_soak(case("beef-top-round", hours=36))

    assert found.severity is Severity.WARNING
    assert found.code == "soak-over"
    assert found.message == (
        "36 hours in the marinade is over the cautious 24; the outer limit of USDA is 2 "
        "days for cubed meat, which strips are nearest to"
    )
    assert found.hint == "soak 24 hours at most, and freeze meat that must wait"


@pytest.mark.parametrize(
    ("changes", "hours", "code"),
    [
        ({"food": "beef-top-round"}, 48, "soak-over"),
        ({"food": "beef-top-round"}, 49, "soak-far-over"),
        ({"food": "pork-loin", "form": MeatForm.PIECES}, 48, "soak-over"),
        ({"food": "pork-loin", "form": MeatForm.PIECES}, 49, "soak-far-over"),
        ({"food": "lamb-leg"}, 49, "soak-far-over"),
        ({"food": "deer"}, 120, "soak-over"),
        ({"food": "deer"}, 121, "soak-far-over"),
        ({"food": "turkey-breast"}, 48, "soak-over"),
        ({"food": "turkey-breast"}, 49, "soak-far-over"),
    ],
)
def test_outer_limits_differ_by_kind(
    case: Cases, changes: dict[str, object], hours: float, code: str
) -> None:
    """Poultry, cubes and strips have two days; game is told off for more than any meat has."""
    (found,) = check_soak(case(**changes, hours=hours))

    assert code == found.code


@pytest.mark.parametrize("key", ["whitefish", "deer-ground", "deer", "bison", "bear", "wild-boar"])
def test_where_no_outer_limit_is_held_none_is_named(case: Cases, key: str) -> None:
    """Fish, ground meat and game are not given the limits of raised meat."""
    (found,) = check_soak(case(key, hours=36))

    assert found.message == (
        "36 hours in the marinade is over the cautious 24; the 5 days of USDA are for roasts of "
        "raised meat, not for this"
    )


def test_the_cold_is_said_of_every_soak(case: Cases) -> None:
    """Every card with a marinade on flesh says how cold and how long."""
    (found,) = cold_soak(case("turkey-breast"))

    assert found.message == (
        "thaw and soak in the refrigerator at 40 °F (4 °C) or below, 24 hours at most; raw, it "
        "lies there 2 days at most in all"
    )
    assert found.hint == "the outer limit of USDA is 2 days for poultry"
    assert cold_soak(case(marinade={})) == ()


def test_mushrooms_soak_in_the_cold_too(case: Cases) -> None:
    """Soaked mushrooms are kept cold and their marinade thrown away, with no word of meat."""
    (cold,) = cold_soak(case("mushroom-shiitake"))
    (used,) = used_marinade(case("mushroom-shiitake"))

    assert cold.message == "soak in the refrigerator at 40 °F (4 °C) or below"
    assert cold.hint == "no published limit of soaking time is held for it"
    assert used.message == "throw used marinade away: mushrooms have lain in it"


def test_a_rub_rests_in_the_cold(case: Cases) -> None:
    """Rubbed flesh hears of cold and run-off; soaked flesh and rubbed mushrooms do not."""
    rub = {"salt-table": "10 g"}

    assert cold_hold(case(marinade={}, rub=rub)) != ()
    assert cold_hold(case(rub=rub)) == ()
    assert cold_hold(case("mushroom-shiitake", marinade={}, rub=rub)) == ()


def test_used_marinade_is_thrown_away(case: Cases) -> None:
    """Every card with a marinade on flesh says what becomes of it."""
    (found,) = used_marinade(case())

    assert found.message == "throw used marinade away: raw meat has lain in it"
    assert used_marinade(case(marinade={}, rub={"salt-table": "10 g"})) == ()


def test_marinade_that_is_eaten_is_boiled(case: Cases) -> None:
    """Where the recipe boils it down onto the meat, it is told to boil it, not to waste it."""
    (found,) = used_marinade(case(heat=HeatStep.BOILED_DOWN))

    assert found.message == "boil the marinade through: raw meat has lain in it"
    assert found.cites == "marinade-boiled"


def test_raw_juices_are_kept_apart(case: Cases) -> None:
    """Every card of flesh says so, mushrooms' do not."""
    (found,) = raw_splash(case("salmon-sockeye"))

    assert found.message == (
        "wash hands 20 seconds before and after raw fish, and wash and sanitise board, trays, sink "
        "and tongs before what is heated or dried"
    )
    assert found.hint.startswith(
        "1 teaspoon bleach to a quart of water (Wyoming: 2 tablespoons bleach to a gallon)"
    )
    assert raw_splash(case("mushroom-shiitake")) == ()


@pytest.mark.parametrize("degf", [34.0, 38.0, 40.0, None])
def test_a_cold_or_unstated_soak_is_accepted(batch: Batch, degf: float | None) -> None:
    """40 degF and below; a recipe that does not say is told how cold it must be elsewhere."""
    assert () == check_soak_warm(_at(batch, degf))


def test_a_soak_on_the_counter_is_a_warning(batch: Batch) -> None:
    """In both scales, with what to do instead."""
    (found,) = check_soak_warm(_at(batch, 65.0))

    assert ("soak-warm", Severity.WARNING) == (found.code, found.severity)
    assert "65 °F (18 °C) is warmer than the 40 °F (4 °C)" in found.message
    assert "never on the counter" in found.hint


def test_a_fresh_marinade_is_accepted(batch: Batch) -> None:
    """Nothing to say of it."""
    assert () == check_used_before(_at(batch, None))


def test_a_used_marinade_is_a_warning(batch: Batch) -> None:
    """Raw meat has lain in it: a fresh one for every batch."""
    recipe = batch()._replace(soak=Soak(used_before=True))
    (found,) = check_used_before(Case.of(recipe))

    assert ("marinade-reused", "soak.used-before") == (found.code, found.place.path)
    assert "make a fresh one for every batch" in found.hint


def _at(batch: Batch, degf: float | None) -> Case:
    stated = None if degf is None else (degf, degf)
    return Case.of(batch()._replace(soak=Soak(temperature_f=stated)))


@pytest.mark.parametrize(
    ("key", "days"), [("deer", 3), ("turkey-breast", 2), ("deer-ground", 2), ("whitefish", 2)]
)
def test_how_long_it_may_wait_raw(case: Cases, key: str, days: int) -> None:
    """The cautious end for its kind, whether it is soaked or rubbed."""
    for one in (*cold_soak(case(key)), *cold_hold(case(key, marinade={}))):
        assert f"it lies there {days} days at most in all" in one.message
        assert "raw-holding" in one.cites


@pytest.mark.parametrize(("key", "opened"), [("whitefish", True), ("deer", False)])
def test_fish_thaws_in_an_opened_pack(key: str, opened: bool, case: Cases) -> None:
    """Soaked or rubbed, fish hears that its pack is opened first, and who says so; meat not."""
    for one in (
        *cold_soak(case(key)),
        *cold_hold(case(key, marinade={}, rub={"salt-table": "1 g"})),
    ):
        assert opened is one.message.startswith("thaw in an opened pack and ")
        assert opened is ("fish-no-air" in one.cites)
