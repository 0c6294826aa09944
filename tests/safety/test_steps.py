"""The recipe's own steps: a few dangerous words are noticed."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from tarebook.recipe.load import load_recipe
from tarebook.recipe.model import HeatStep, Recipe
from tarebook.safety.case import Case
from tarebook.safety.steps import check_steps

Batch = Callable[..., Recipe]
NAMES = (
    "bay-brine-bison", "cabin-rub-elk", "cranberry-moose", "juniper-venison", "maple-dill-salmon",
    "orchard-turkey", "trail-sticks-venison", "woodland-mushrooms",
)  # fmt: skip


def of(batch: Batch, step: str, food: str = "deer") -> list[str]:
    """Return what is said of a step."""
    return [one.message for one in check_steps(Case.of(batch(food)._replace(steps=(step,))))]


@pytest.mark.parametrize(
    ("step", "says"),
    [
        ("Thaw the meat on the counter overnight.", "step 1 speaks of thawing"),
        ("Marinate at room temperature 12 h.", "step 1 speaks of thawing"),
        ("Not in the cold: thaw it on the counter.", "step 1 speaks of thawing"),
        ("Never hurry: on the counter, then never on the counter, overnight.", "step 1 speaks of"),
        ("It is safe to eat raw.", "step 1 promises more than anybody can"),
        ("No need to heat it.", "step 1 promises more than anybody can"),
    ],
)
def test_dangerous_steps(batch: Batch, step: str, says: str) -> None:
    """Thawing or soaking out of the cold, and promises, are warned of."""
    (found,) = of(batch, step)

    assert found.startswith(says)


@pytest.mark.parametrize(
    ("step", "says"),
    [
        ("Roast until a strip reads 140 °F inside.", "heats to less"),
        ("Steam the strips to 63 °C inside.", "heats to less"),
        ("Roast in a 275 °F oven until it is 145 °F.", "heats to less"),
        ("Heat the meat to 130 degrees F.", "heats to less"),
        ("Simmer until the thickest piece reads 140 inside.", "heats to less"),
        ("Dry at 120 F until leathery.", "dries cooler"),
        ("Dry on trays, six hours at 135 °F (57 °C).", "dries cooler"),
        ("Set the dehydrator to 50 °C.", "dries cooler"),
        ("Dry at 130 until leathery.", "dries cooler"),
        ("Dry in the sun.", "dries cooler"),
        ("Hang the strips in the sun for two days.", "dries cooler"),
        ("Cold-smoke at 85 °F for four hours.", "dries cooler"),
        ("Skip the heating if the meat was frozen for a month.", "promises more"),
        ("Do not heat the strips first, it spoils them.", "promises more"),
        ("The roasting may be skipped for lean meat.", "promises more"),
        ("No need to cook it, the cure does it.", "promises more"),
        ("Taste a strip raw to check the salt.", "tastes raw"),
        ("Keep the used marinade for the next batch, or pour it over the dried meat.", "puts used"),
        ("Baste the strips with the used marinade every hour as they dry.", "puts used"),
        ("Brush with the marinade twice as it dries.", "puts used"),
        ("Save the brine for another batch.", "puts used"),
        ("Re-use the marinade.", "puts used"),
        ("Store in jars in the pantry for two years.", "keeps the dried meat longer"),
        ("Pack in a vacuum bag, keeps a year on the shelf.", "keeps the dried meat longer"),
        ("Keep it in a tin for months.", "keeps the dried meat longer"),
        ("Keeps 6 months in the refrigerator.", "keeps the dried meat longer"),
        ("Leave the roast out until soft enough to slice.", "speaks of thawing"),
        ("Let it stand overnight in the garage.", "speaks of thawing"),
        ("Let it stand overnight.", "speaks of thawing"),
        ("Thaw the meat in warm water.", "speaks of thawing"),
    ],
)
def test_less_heat_less_cold_or_more_time(batch: Batch, step: str, says: str) -> None:
    """What asks for less than is published is found, each by its own words."""
    (found,) = of(batch, step)

    assert found.startswith(f"step 1 {says}")


@pytest.mark.parametrize(
    "step",
    [
        "Soak overnight in the refrigerator, turning the bag at bedtime.",
        "Cool to room temperature, weigh and pack.",
        "Sink the strips under a plate; keep the bowl in the refrigerator.",
        "Wipe the counter.",
        "Raw strips are unsafe on the dried ones' trays.",
        "Thaw in the refrigerator, never on the counter.",
        "Soak it cold; do not leave it at room temperature.",
        "Never eaten raw.",
        "Soak in the refrigerator. Wipe the counter.",
        "It is not safe to eat raw.",
        "Knead it in a food-safe bag.",
        "Roast on racks in a moist oven until the thickest strip reads 160 °F (71 °C) inside.",
        "Steam until a strip reads 71 °C inside.",
        "Roast at 275 °F (135 °C) until done.",
        "At 140 °F inside raise the oven, and roast until a strip reads 165 °F inside.",
        "Heat the marinade to 140 °F, so that the sugar melts, and cool it.",
        "Dry at 150 °F (66 °C) until a cooled strip cracks but does not break.",
        "Dry at 145-155 °F.",
        "Dry for 6 hours, turning the trays at 3.",
        "Never dry them below 145 °F.",
        "If the dryer falls below 140 °F, stop and heat the strips again.",
        "Preheat the dehydrator to 160 °F.",
        "Pat dry, and chill to 38 °F.",
        "Keep the packs out of the sun.",
        "Do not dry it in the sun.",
        "Never skip the heating.",
        "The heating must not be left out.",
        "Do not heat the strips too fast.",
        "Do not cook the strips over a bare flame.",
        "Do not heat the cure.",
        "Taste the marinade before the raw meat goes in.",
        "Never taste raw strips.",
        "Drain the strips, throw the marinade away, and pat them dry.",
        "Never keep used marinade for another batch.",
        "Pour the used marinade down the drain.",
        "Boil the used marinade five minutes, and brush the strips with it.",
        "Set half a cup of the marinade aside, and baste with the fresh marinade.",
        "Keep the strips in the marinade until the next day, in the refrigerator.",
        "Pour the marinade over the strips, and turn them.",
        "Store in a jar for two weeks.",
        "Keeps two weeks on the shelf, three months in the refrigerator, six months frozen.",
        "Do not keep it for months.",
        "Keep the raw leg frozen for a month first.",
        "Keep the spice mix in a jar for a year.",
        "Leave out the gills, and leave the skin on.",
        "Let the strips stand overnight in the refrigerator.",
        "Let the brine stand overnight.",
        "Let the dried strips stand overnight in an open jar.",
        "Hang it in the garage refrigerator overnight.",
        "Set the strips out on trays.",
        "Weigh the salt and the curing salt apart, each in its own bowl.",
        "Dry until a strip bends, 5 hours at least; at 120 g it is done.",
    ],
)
def test_good_steps(batch: Batch, step: str) -> None:
    """What is no danger is passed over."""
    assert [] == of(batch, step)


HARMLESS = (
    "Slice across the grain, 1/4 in thick.",
    "Mix the marinade and let it cool to room temperature.",
    "Let the cooked strips cool on the counter for ten minutes.",
    "Marinate in the refrigerator overnight.",
    "Marinate overnight.",
    "Preheat the oven to 275 °F.",
    "Preheat the oven to 170 °F and prop the door.",
    "Roast at 325 °F, covered, until a strip reads 160 °F inside.",
    "Heat the strips in the marinade to a rolling boil, 5 minutes.",
    "Warm the honey to 100 °F so it runs, and stir it in.",
    "Lay the strips on racks in the dryer at 155 °F.",
    "Dry at 68 °C for five hours.",
    "Dry at 155 °F for 6 h, then test a strip at room temperature.",
    "Set the dehydrator at 160 °F for the first hour, then 150 °F.",
    "Rub the strips with salt and leave them in the refrigerator for 12 hours.",
    "Leave the strips in the bag overnight in the fridge.",
    "Keep everything cold while you work; hands and knife are raw.",
    "Wash the counter after the raw meat.",
    "Wipe down the counter before marinating.",
    "Do not taste the strips raw.",
    "Taste a cooked strip for salt.",
    "Store in the freezer for up to six months.",
    "Freeze the meat for 30 days at 5 °F first.",
    "Use within two weeks, or freeze.",
    "Label the jar with the date; eat within 14 days.",
    "Keep the dried strips in the refrigerator for up to three months.",
    "Discard the marinade; never re-use it.",
    "Bring the marinade to a boil for 5 minutes before you brush it on.",
    "Reserve half a cup of marinade before the meat goes in, for basting.",
    "Dry until a strip bends and cracks, 4 to 8 hours.",
    "Turn the trays every hour. Blot the fat with paper.",
    "Smoke at 150 °F with apple wood for three hours after roasting.",
    "Do not heat the marinade.",
    "The meat need not be frozen first.",
    "If a strip reads less than 160 °F inside, put it back.",
    "Check that the thickest strip reads at least 160 °F.",
    "Steam 10 minutes over boiling water until 165 °F inside.",
    "Let it rest in the cold for a day.",
    "Grind the meat twice, keeping it at 35 °F.",
    "No strip goes to the dryer until it reads 160 °F.",
    "Do not skip the steaming, even if the dryer is hot.",
    "Thaw in cold water in its bag, changing it every 30 minutes.",
    "The marinade keeps for a week in the refrigerator before use.",
    "Strain the marinade, boil it hard, and brush it on.",
    "Hang the bag over a bowl in the fridge overnight.",
    "Heat the dryer to 155 °F before you load it.",
    "Cook the strips, 160 °F inside, and do not rush it.",
    "Roast 25 min at 300 °F.",
    "Dry 120 minutes, then turn.",
    "Spread on 140 cm of racks.",
    "Heat until the thickest strip reads 71 °C inside and hold.",
    "Store cool and dark for ten days.",
    "Skip the sugar if you like.",
    "Leave out the onion for children.",
    "Take the meat out of the refrigerator and slice at once.",
)
DANGEROUS = (
    "Marinate on the kitchen counter for 24 hours.",
    "Cook to an internal temperature of 145 F.",
    "Cook to medium rare, 135 °F.",
    "Heat until 150°F.",
    "Dry at 95-110 °F for two days.",
    "Dry at 110F overnight.",
    "Dehydrate at 125 degrees for 10 hours.",
    "Sun-dry for three days.",
    "Hang the strips outside in the sun.",
    "Dry them on the porch for two days.",
    "Air-dry at room temperature for three days.",
    "You can skip the cooking step.",
    "No heating is needed.",
    "You don't need to heat it.",
    "There's no need to cook the meat first.",
    "Don't cook the strips.",
    "The meat does not need to be cooked.",
    "Heating is optional.",
    "Eat some raw to test seasoning.",
    "Sample a raw strip.",
    "Use the leftover marinade as a glaze at the end.",
    "Reserve the used brine for the next batch.",
    "Pour the used marinade over the strips as they dry.",
    "Brush the strips with leftover marinade during drying.",
    "Keeps for years in a jar.",
    "Will keep 6 months in the cupboard.",
    "It keeps up to a year without refrigeration.",
    "Store at room temperature for up to three months.",
    "Thaw in hot water.",
    "Leave the meat on the table overnight.",
    "Leave out overnight.",
    "Let the bag sit out for six hours.",
    "Let the strips come to room temperature for four hours.",
    "Rest on the bench in a warm room overnight.",
    "Set the oven to its lowest, 120 °F.",
    "Set the oven to 130 °F and dry for 8 hours.",
    "Oven at 100 °F with the door open all night.",
    "Smoke cold at 70 °F for a day.",
    "Roast the strips until they read 60 °C.",
    "Simmer until 140.",
    "Steam to 150 °F inside; that is enough.",
    "The vinegar cooks it, so heating is not necessary.",
)


@pytest.mark.parametrize("step", HARMLESS)
def test_kitchen_sentences_raise_no_alarm(batch: Batch, step: str) -> None:
    """A list of words must not cry over what careful cooks write."""
    assert [] == of(batch, step)


@pytest.mark.parametrize("step", DANGEROUS)
def test_other_words_for_the_same_dangers(batch: Batch, step: str) -> None:
    """The same dangers are found in other words, as people write them."""
    assert [] != of(batch, step)


@pytest.mark.parametrize("name", NAMES)
def test_the_shipped_recipes_are_silent(name: str) -> None:
    """No word of theirs is taken for danger."""
    recipe, _ = load_recipe(name)

    assert () == check_steps(Case.of(recipe))


def test_a_note_is_looked_at_too(batch: Batch) -> None:
    """A danger is one wherever the card prints it."""
    recipe = batch()._replace(notes=("Good raw.", "Eat it raw."))
    (found,) = check_steps(Case.of(recipe))

    assert (found.message[:6], found.place.path) == ("note 2", "method.notes")


def test_a_step_goes_by_its_words_where_a_card_numbers_anew(batch: Batch) -> None:
    """Today's heat step among them must not be taken for the one that is not to be followed."""
    recipe = batch()._replace(steps=("Slice it.", "Dry it in the sun all week."))
    own, oven, other = (
        check_steps(Case.of(one))[0].message
        for one in (
            recipe,
            recipe._replace(heat=HeatStep.OVEN_AFTER),
            recipe._replace(steps_heat=HeatStep.STEAMED),
        )
    )

    assert own.startswith("step 2 dries cooler")
    assert oven == other == 'step "Dry it in the ..." dries cooler than published'


def test_a_bird_is_held_against_its_own_heat(batch: Batch) -> None:
    """160 degrees are enough for deer and not for turkey."""
    step = "Simmer until the thickest strip reads 160 °F (71 °C) inside."

    assert ([], 1) == (of(batch, step), len(of(batch, step, "turkey-breast")))


def test_mushrooms_may_thaw_as_they_like(batch: Batch) -> None:
    """The rule is one for flesh."""
    assert [] == of(batch, "Thaw them on the counter.", "mushroom-shiitake")
