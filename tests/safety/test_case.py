"""What a case knows of a batch: its kind, its cut, its heat step and its finish."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from tarebook.figures.foods import food, food_keys
from tarebook.recipe.model import Finish, FinishBy, HeatStep, MeatForm
from tarebook.safety.case import Animal, Case

Cases = Callable[..., Case]


@pytest.mark.parametrize(
    ("key", "animal"),
    [
        ("deer", Animal.DEER),
        ("elk-ground", Animal.DEER),
        ("caribou", Animal.DEER),
        ("antelope", Animal.MEAT),
        ("bison", Animal.MEAT),
        ("lamb-leg", Animal.MEAT),
        ("pork-loin", Animal.PORK),
        ("wild-boar", Animal.WILD_PORK),
        ("bear", Animal.BEAR),
        ("turkey-breast", Animal.POULTRY),
        ("duck-breast-wild", Animal.POULTRY),
        ("salmon-sockeye", Animal.FISH),
        ("squid", Animal.FISH),
        ("shrimp-untreated", Animal.FISH),
        ("mushroom-shiitake", Animal.MUSHROOM),
        ("apple", Animal.OTHER),
    ],
)
def test_kind_of_animal(case: Cases, key: str, animal: Animal) -> None:
    """What is dried is told apart as the rules tell it apart."""
    assert animal == case(key).animal


def test_every_food_of_the_tables_has_a_kind(case: Cases) -> None:
    """Whatever may be dried has a kind; nothing that flies or swims is taken for red meat."""
    for key in food_keys():
        item = food(key)
        if item.kind == "fish":
            assert case(key).animal is Animal.FISH
        if item.species_group == "poultry":
            assert case(key).animal is Animal.POULTRY


def test_hunted_pork_is_wild_pork(case: Cases) -> None:
    """Pork that the recipe calls wild is held to the rules for wild pork."""
    assert case("pork-loin", wild=True).animal is Animal.WILD_PORK
    assert case("pork-loin", wild=None).animal is Animal.PORK


def test_ground_by_form_or_by_food(case: Cases) -> None:
    """Meat is ground if the recipe says so or if its food is."""
    assert case("deer", form=MeatForm.GROUND).ground
    assert case("deer-ground").ground
    assert not case("deer").ground


def test_a_quarter_inch_is_not_too_thick(case: Cases) -> None:
    """A quarter inch passes; a hair more does not."""
    assert not case(thickness_mm=6.35).too_thick
    assert not case(thickness_mm=0.25 * 25.4).too_thick
    assert case(thickness_mm=6.4).too_thick
    assert not case(thickness_mm=None).too_thick


@pytest.mark.parametrize(
    ("changes", "reason"),
    [
        ({}, ""),
        ({"food": "bison"}, ""),
        ({"food": "pork-loin"}, ""),
        ({"food": "turkey-breast"}, "poultry"),
        ({"food": "bear"}, "bear"),
        ({"food": "wild-boar"}, "wild pork"),
        ({"food": "deer-ground"}, "ground meat"),
        ({"form": MeatForm.PIECES}, "pieces that are not strips"),
        ({"thickness_mm": None}, "strips of unstated thickness"),
        ({"thickness_mm": 7.0}, "thicker strips"),
        ({"food": "salmon-sockeye"}, "fish"),
    ],
)
def test_where_the_oven_after_drying_is_published(
    case: Cases, changes: dict[str, object], reason: str
) -> None:
    """Only thin whole-muscle strips of some meats may be heated after drying."""
    assert reason == case(**{"food": "deer", **changes}).not_for_oven_after


@pytest.mark.parametrize(
    ("heat", "holds"),
    [
        (HeatStep.SIMMERED, True),
        (HeatStep.STEAMED, True),
        (HeatStep.BOILED_DOWN, True),
        (HeatStep.OVEN_AFTER, True),
        (HeatStep.UNSTATED, False),
    ],
)
def test_which_heat_steps_hold(case: Cases, heat: HeatStep, holds: bool) -> None:
    """A heat step holds if it is stated and published for such meat."""
    assert holds is case(heat=heat).heat_holds


def test_oven_after_does_not_hold_for_poultry(case: Cases) -> None:
    """Poultry heated only after drying has no heat step that holds."""
    assert not case("turkey-breast", heat=HeatStep.OVEN_AFTER).heat_holds
    assert case("turkey-breast", heat=HeatStep.STEAMED).heat_holds


@pytest.mark.parametrize(
    ("by", "value", "moist"),
    [
        (FinishBy.MOISTURE_TO_PROTEIN, 0.75, False),
        (FinishBy.MOISTURE_TO_PROTEIN, 0.76, True),
        (FinishBy.YIELD, 0.45, False),
        (FinishBy.YIELD, 0.46, True),
        (FinishBy.MOISTURE, 0.37, False),
        (FinishBy.MOISTURE, 0.38, True),
    ],
)
def test_a_finish_that_is_too_moist(case: Cases, by: FinishBy, value: float, moist: bool) -> None:
    """A finish is held to what goes by the name of jerky, at its likely value."""
    finish = Finish(by=by, value=(value * 0.5, value, value * 1.5))

    assert moist is case(finish=finish).too_moist


def test_no_finish_is_not_too_moist(case: Cases) -> None:
    """A recipe that states no finish is not blamed for one."""
    assert not case(finish=None).too_moist


@pytest.mark.parametrize(
    ("food", "inside"),
    [
        ("deer", "160 °F (71 °C)"),
        ("turkey-breast", "165 °F (74 °C)"),
        ("bear", "165 °F (74 °C)"),
        ("wild-boar", "165 °F (74 °C)"),
        ("pork-loin", "160 °F (71 °C)"),
    ],
)
def test_how_hot_inside(case: Cases, food: str, inside: str) -> None:
    """Poultry, bear and wild pork are asked for more than other meat."""
    assert inside == case(food).inside
