"""Words that several pages share."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from fractions import Fraction

import pytest

from tarebook.cards.content import content
from tarebook.cards.lines import Line
from tarebook.cards.sheet import sheet
from tarebook.cards.words import WEIGHED_ONCE, allergen_sentences, finished_words, soak_place
from tarebook.cards.worksheet import Allergens, Worksheet, worksheet
from tarebook.recipe.load import load_recipe
from tarebook.recipe.model import Recipe, Soak

RecipeOf = Callable[..., Recipe]
Unwrapped = Callable[[Iterable[Line]], str]
ESTIMATE = "an estimate, which measures nothing and is no test of keeping"


def aiming(recipe_of: RecipeOf, stated: str = "0.80") -> Worksheet:
    """Return a worksheet of strips that end at a water activity."""
    return worksheet(recipe_of(drying=f"water-activity = {stated}"), factor=Fraction(1))


@pytest.mark.parametrize(
    ("stated", "says"),
    [
        (None, "in the refrigerator"),
        ((38.0, 38.0), "in the refrigerator at 38 °F (3 °C)"),
        ((34.0, 40.0), "in the refrigerator at 34-40 °F (1-4 °C)"),
        ((34.0, 45.0), "at 34-45 °F (1-7 °C)"),
        ((65.0, 65.0), "at 65 °F (18 °C)"),
    ],
)
def test_a_warm_soak_is_not_in_the_refrigerator(
    stated: tuple[float, float] | None, says: str
) -> None:
    """Where nothing is stated it is; where it is warmer than one, the card does not say so."""
    assert says == soak_place(Soak(temperature_f=stated))


def test_a_card_says_how_cold_it_soaks(recipe_of: RecipeOf) -> None:
    """In both scales, beside the hours."""
    cold = recipe_of(soak='hours = 12\ntemperature = "38 F"')
    told = content(worksheet(cold, factor=Fraction(1))).conditions[0]

    assert "Soak: 12 h in the refrigerator at 38 °F (3 °C), then drained." == told


def test_a_card_says_which_hours_it_was_figured_for(recipe_of: RecipeOf) -> None:
    """A recipe that states no hours has none on its card, but for what the figures stand on."""
    told = content(worksheet(recipe_of(soak='surface = "drained"'), factor=Fraction(1))).conditions[
        0
    ]

    assert (
        "Soak: in the refrigerator, then drained. Hours not stated; figured for 8 to 24 h." == told
    )


def test_a_card_has_room_for_the_weight(recipe_of: RecipeOf, unwrapped: Unwrapped) -> None:
    """The screen names the option, paper a line to write on; a weighed batch has neither."""
    recipe = recipe_of()
    guessed, weighed = (
        worksheet(recipe, factor=Fraction(1)),
        worksheet(recipe, factor=Fraction(1), finished_g=450.0),
    )
    beneath = " ".join(content(guessed).beneath)

    assert "Weigh it, and give --finished." in unwrapped(sheet(guessed))
    assert "Weigh it and write it here: ________ g." in beneath and "--" not in beneath
    assert not any("Weigh it" in one for one in content(weighed).beneath)


@pytest.mark.parametrize("stated", ["0.80", '"0.75-0.85"'])
def test_a_reckoned_water_activity_is_called_an_estimate(recipe_of: RecipeOf, stated: str) -> None:
    """Beside the weight at which the batch is thought to be there."""
    told = finished_words(aiming(recipe_of, stated).estimate)

    assert f"reckoned to be {float(stated):g}" in told if '"' not in stated else "0.75-0.85" in told
    assert told.endswith(f"{ESTIMATE}. Weigh it, and give --finished.")


def test_sheet_and_card_say_it_alike(recipe_of: RecipeOf, unwrapped: Unwrapped) -> None:
    """Every look prints from the same words."""
    aimed = aiming(recipe_of)

    assert ESTIMATE in unwrapped(sheet(aimed))
    assert any(ESTIMATE in one for one in content(aimed).beneath)


def test_a_weighed_batch_has_no_aim_left(recipe_of: RecipeOf) -> None:
    """The scale decides, and nothing is said of what was aimed at."""
    recipe = recipe_of(drying="water-activity = 0.80")
    weighed = worksheet(recipe, factor=Fraction(1), finished_g=450.0)

    assert "water activity" not in finished_words(weighed.estimate)


def test_a_fish_is_not_named_twice_among_the_allergens() -> None:
    """Fish is told with its kind, and with what holds it only where that is something else."""
    found = Allergens(
        contains={"fish (whitefish)": ("whitefish",), "fish (anchovy)": ("worcestershire-sauce",)},
        check={},
        elsewhere={},
    )

    (told,) = allergen_sentences(found)
    assert "Allergens: fish (whitefish); fish (anchovy) (Worcestershire sauce)." == told


def test_curing_salt_is_weighed_once() -> None:
    """A card weighs it for all of the meat, a plan for each load: beside the dose stands which."""
    cured, plain = (
        content(worksheet(load_recipe(name)[0])).cure
        for name in ("cranberry-moose", "juniper-venison")
    )

    assert cured[0].startswith("Curing salt, weighed") and WEIGHED_ONCE == cured[1]
    assert "for each load as its plan says" in cured[1] and () == plain
