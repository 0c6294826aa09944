"""Parasites, prions, dirt and poison: whom each is said of, and whom not."""

from __future__ import annotations

from collections.abc import Callable

from tarebook.safety.case import Case
from tarebook.safety.game import (
    deer_testing,
    fish_freezing,
    game_parasites,
    gloves,
    gut_shot,
    mushroom_poison,
    pork_freezing,
)

Cases = Callable[..., Case]


def test_pork_is_frozen_first(case: Cases) -> None:
    """Raised pork hears of freezing, cautious figure first; wild pork is not told it would do."""
    (found,) = pork_freezing(case("pork-loin"))

    assert found.message == (
        "freeze pork up to 6 in (15 cm) thick at 0 °F (-18 °C) or below for 30 days first"
    )
    assert found.hint == "older advice is 5 °F (-15 °C) for 20 days; neither replaces heat"
    assert pork_freezing(case("wild-boar")) == ()
    assert pork_freezing(case("deer")) == ()


def test_fish_is_frozen_first(case: Cases) -> None:
    """Fish hears of freezing against parasites, the tuna that the code exempts does not."""
    (found,) = fish_freezing(case("whitefish"))

    assert "-4 °F (-20 °C) or below for 7 days" in found.message
    assert fish_freezing(case("tuna-yellowfin")) == ()
    assert fish_freezing(case("deer")) == ()


def test_deer_and_kin_hear_of_testing(case: Cases) -> None:
    """Deer, elk, moose and caribou hear of chronic wasting disease, other game does not."""
    for key in ("deer", "elk", "moose", "caribou", "deer-ground"):
        assert deer_testing(case(key)) != ()
    for key in ("antelope", "bear", "bison", "beef-top-round"):
        assert deer_testing(case(key)) == ()


def test_wild_pork_and_deer_are_cut_with_gloves(case: Cases) -> None:
    """Brucellosis comes through a cut; of deer and kin nothing of brain or spine is taken."""
    (boar,) = gloves(case("wild-boar"))
    (elk,) = gloves(case("elk"))

    assert "brucellosis" in boar.message and "above all with a cut on the hand" in boar.message
    assert "freezing, curing, smoking and drying do not" in boar.hint
    assert elk.message.startswith("wear gloves") and "nothing of brain or spine" in elk.hint
    for key in ("pork-loin", "bear", "bison", "turkey-breast", "whitefish", "mushroom-shiitake"):
        assert gloves(case(key)) == ()


def test_game_hears_that_freezing_is_not_reliable(case: Cases) -> None:
    """Game other than bear hears it too; what was raised does not, nor do birds."""
    for key in ("deer", "moose", "antelope"):
        (found,) = game_parasites(case(key))
        assert found.cites == "game-freezing"
    for key in ("beef-top-round", "turkey-breast", "bear", "wild-boar"):
        assert game_parasites(case(key)) == ()


def test_game_hears_of_dirtied_meat(case: Cases) -> None:
    """What was hunted, or may have been, hears of gut shots; what was raised does not."""
    assert gut_shot(case("deer")) != ()
    assert gut_shot(case("bison", wild=None)) != ()
    assert gut_shot(case("bison", wild=False)) == ()
    assert gut_shot(case("whitefish", wild=True)) == ()


def test_gathered_mushrooms_hear_of_poison(case: Cases) -> None:
    """Mushrooms that may have been gathered hear of poison; bought ones do not."""
    assert mushroom_poison(case("mushroom-shiitake", wild=True)) != ()
    assert mushroom_poison(case("mushroom-shiitake", wild=None)) != ()
    assert mushroom_poison(case("mushroom-shiitake", wild=False)) == ()
    assert mushroom_poison(case("deer")) == ()
