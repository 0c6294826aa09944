"""Today's heat step among the recipe's own steps: at its place, and once."""

from __future__ import annotations

import pytest

from tarebook.cards.content import content
from tarebook.cards.own_steps import NOTHING_POURED
from tarebook.cards.todays_heat import LEAVE_OUT, NOW
from tarebook.cards.worksheet import worksheet
from tarebook.recipe.load import load_recipe
from tarebook.recipe.model import HeatStep
from tarebook.safety.case import Case
from tarebook.safety.heated import as_heated

OVEN, STEAM, SIMMER, DOWN = (
    HeatStep.OVEN_AFTER, HeatStep.STEAMED, HeatStep.SIMMERED, HeatStep.BOILED_DOWN,
)  # fmt: skip
ROAST = "Roast until a strip reads 160 °F (71 °C) inside."


def on_card(
    step: HeatStep, *steps: str, name: str = "juniper-venison", own: HeatStep = STEAM
) -> tuple[str, ...]:
    """Return the steps of a card; today's heat step shortened to its first words."""
    recipe, _ = load_recipe(name)
    recipe = recipe._replace(heat=own, steps=steps or recipe.steps)
    today = as_heated(Case.of(recipe), step)
    told = content(worksheet(today)).steps
    return tuple(NOW if one.startswith(NOW) else one for one in told)


def test_the_oven_comes_before_what_cools_and_packs() -> None:
    """Numbers followed to the last never end with raw strips in the bag."""
    told = on_card(OVEN)

    assert told[3].startswith(f"{LEAVE_OUT} Roast on racks")
    assert told[4].startswith("Dry on open trays") and told[6].startswith("Cool, weigh the batch")
    assert (NOW, 7) == (told[5], len(told))


@pytest.mark.parametrize(
    ("steps", "told"),
    [
        (
            (ROAST, "Dry until leathery, then cool and pack it."),
            (f"{LEAVE_OUT} {ROAST}", "Dry until leathery.", NOW, "Cool and pack it."),
        ),
        ((ROAST, "Dry it."), (f"{LEAVE_OUT} {ROAST}", "Dry it.", NOW)),
        ((ROAST, "Pack it."), (f"{LEAVE_OUT} {ROAST}", NOW, "Pack it.")),
        (("Slice it.",), ("Slice it.", NOW)),
        (
            ("Cool the brine.", "Six hours in the dryer; store it."),
            ("Cool the brine.", "Six hours in the dryer.", NOW, "Store it."),
        ),
    ],
)
def test_the_oven_finds_its_place(steps: tuple[str, ...], told: tuple[str, ...]) -> None:
    """A step that dries and packs is parted; where nothing dries or packs, the oven is last."""
    assert told == on_card(OVEN, *steps)


def test_wet_heat_comes_before_drying() -> None:
    """Meat that was to go into the oven after drying is heated first today."""
    steps = ("Pat dry with paper.", "Drain and dry it.", "Ten minutes in the oven.", "Pack it.")
    told = on_card(STEAM, *steps, own=OVEN)

    assert told == (
        "Pat dry with paper.", "Drain.", NOW, "Dry it.", f"{LEAVE_OUT} Ten minutes in the oven.",
        "Pack it.",
    )  # fmt: skip


def test_strips_simmer_before_their_marinade_is_thrown_away() -> None:
    """What they are to be simmered in is still there."""
    told = on_card(SIMMER)

    assert told.index(NOW) + 1 == next(at for at, one in enumerate(told) if "throw the" in one)


def test_what_is_boiled_down_is_not_thrown_away() -> None:
    """A card for boiling the marinade down keeps it, whatever the recipe's own steps say."""
    told = on_card(DOWN)
    turkey = on_card(DOWN, name="orchard-turkey", own=SIMMER)

    assert NOTHING_POURED in told and NOW in told
    assert not any("throw" in one.lower() for one in (*told, *turkey))
    recipe, _ = load_recipe("juniper-venison")
    card = content(worksheet(as_heated(Case.of(recipe), DOWN)))
    assert card.conditions[0].endswith("; the marinade is kept for the heat step.")
    assert content(worksheet(recipe)).conditions[0].endswith(", then patted.")
    assert f"Dry at 155 °F (68 °C). {NOTHING_POURED}" == turkey[-1]


def test_steps_for_todays_heat_step_stay_as_they_are() -> None:
    """Nothing is put among steps that were written for it; the oven only where they lack it."""
    recipe, _ = load_recipe("juniper-venison")
    oven = ("Dry it.", "Ten minutes in the oven.", "Pack it.")

    assert recipe.steps == on_card(STEAM)
    assert oven == on_card(OVEN, *oven, own=OVEN)
    assert ("Dry it.", NOW, "Pack it.") == on_card(OVEN, "Dry it.", "Pack it.", own=OVEN)


def test_a_mark_stands_before_both_halves() -> None:
    """A step that is not to be followed stays marked where it is parted."""
    told = on_card(OVEN, "Skip the heating.", "Dry in the sun, then pack it.")

    assert told == (
        "NOT SO (see Mind): Skip the heating.",
        "NOT SO (see Mind): Dry in the sun.", NOW, "NOT SO (see Mind): Pack it.",
    )  # fmt: skip


def test_mushrooms_have_no_such_step() -> None:
    """What is no flesh has no heat step that must not be missed."""
    recipe, _ = load_recipe("woodland-mushrooms")

    assert recipe.steps == content(worksheet(recipe)).steps
