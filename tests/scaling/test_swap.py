"""One food for another in a recipe."""

from __future__ import annotations

from collections.abc import Callable
from fractions import Fraction

import pytest

from tarebook.figures.foods import food
from tarebook.figures.measures import density
from tarebook.findings import AskedWrongly, FoodUnknown
from tarebook.quantities.amount import parse_amount
from tarebook.recipe.model import Ingredient, Recipe
from tarebook.scaling.swap import Swap, swap
from tarebook.scaling.volume_and_mass import mass_of

RecipeOf = Callable[..., Recipe]


def only(recipe: Recipe) -> Ingredient:
    """Return the one ingredient of a recipe."""
    (one,) = recipe.ingredients
    return one


def test_volume_for_volume(recipe_of: RecipeOf) -> None:
    """Unless told otherwise a cup of one is a cup of the other, and so many times as much."""
    before = recipe_of(marinade={"soy-sauce": "3/4 cup"})
    same = only(swap(before, Swap(old="soy-sauce", new="soy-sauce-low-sodium")))
    half = only(swap(before, Swap(old="shoyu", new="tamari", ratio=Fraction(1, 2))))

    assert ("soy-sauce-low-sodium", parse_amount("3/4 cup")) == (same.food, same.amount)
    assert ("soy-sauce-tamari", parse_amount("3/8 cup")) == (half.food, half.amount)


def test_gram_for_gram(recipe_of: RecipeOf) -> None:
    """By mass the new food weighs what the old one weighed."""
    before = recipe_of(marinade={"honey": "1/2 cup"})
    after = only(swap(before, Swap(old="honey", new="maple-syrup", by_mass=True)))
    weighed = mass_of(parse_amount("1/2 cup"), food("honey"))

    assert weighed is not None
    assert ("gram", weighed.low_g) == (after.amount.unit, after.amount.low)


def test_gram_for_gram_goes_by_the_old_bottle(recipe_of: RecipeOf) -> None:
    """Where the old bottle prints its own density, that is what it weighed."""
    table = '{ amount = "150 mL", panel = { serving = "15 mL (20 g)", sodium = "575 mg" } }'
    before = recipe_of(marinade={"soy-sauce": table})
    after = only(swap(before, Swap(old="soy-sauce", new="tamari", by_mass=True)))

    assert (200, "gram") == (after.amount.low, after.amount.unit)


def test_a_weighed_food_keeps_its_volume(recipe_of: RecipeOf) -> None:
    """Volume for volume holds for a weighed amount too, through both densities."""
    before = recipe_of(marinade={"honey": "100 g"})
    after = only(swap(before, Swap(old="honey", new="maple-syrup")))
    old, new = density("honey"), density("maple-syrup")

    assert old is not None and new is not None
    assert 100 * new.g_per_ml / old.g_per_ml == after.amount.low
    assert "gram" == after.amount.unit


@pytest.mark.parametrize("amount", ["3 cloves", "to taste"])
def test_counts_and_tastes_stay_as_they_are(recipe_of: RecipeOf, amount: str) -> None:
    """Three of one for three of the other; to taste stays to taste."""
    before = recipe_of(marinade={"garlic": amount})
    after = only(swap(before, Swap(old="garlic", new="shallot")))

    assert (parse_amount(amount), "shallot") == (after.amount, after.food)


def test_the_old_bottles_panel_goes_with_it(recipe_of: RecipeOf) -> None:
    """The panel of the old bottle says nothing of the new one."""
    table = '{ amount = "1 cup", panel = { serving = "15 mL", sodium = "575 mg" } }'
    before = recipe_of(marinade={"soy-sauce": table})

    assert only(before).panel is not None
    assert only(swap(before, Swap(old="soy-sauce", new="tamari"))).panel is None


def test_every_other_ingredient_is_left_alone(recipe_of: RecipeOf) -> None:
    """A swap touches what it names, in its place, and nothing else."""
    before = recipe_of(marinade={"honey": "1 Tbsp", "soy-sauce": "1 cup", "garlic": "1 clove"})
    after = swap(before, Swap(old="soy-sauce", new="tamari"))

    assert before.ingredients[::2] == after.ingredients[::2]
    assert "soy-sauce-tamari" == after.ingredients[1].food
    assert before.ingredients[1].part == after.ingredients[1].part


def test_an_ingredient_goes_by_the_name_the_recipe_gives_it(recipe_of: RecipeOf) -> None:
    """What the recipe calls "dark soy" can be swapped by that name alone."""
    listed = {"soy-sauce": "1 cup", "dark soy": '{ food = "soy-sauce", amount = "1 Tbsp" }'}
    after = swap(recipe_of(marinade=listed), Swap(old="Dark Soy", new="molasses"))

    assert ["soy-sauce", "molasses"] == [one.food for one in after.ingredients]


@pytest.mark.parametrize("old", ["meat", "Meat", "venison", "deer"])
def test_the_meat_too(recipe_of: RecipeOf, old: str) -> None:
    """The meat may be swapped, by that word or by its name; it keeps its weight and cut."""
    before = recipe_of()
    after = swap(before, Swap(old=old, new="turkey-breast"))

    assert "turkey-breast" == after.meat.food
    assert food("turkey-breast").wild == after.meat.wild
    assert (before.meat.mass_g, before.meat.thickness_mm) == (
        after.meat.mass_g,
        after.meat.thickness_mm,
    )
    assert before.ingredients == after.ingredients


@pytest.mark.parametrize("new", ["soy-sauce", "curing-salt-1", "honey"])
def test_only_what_is_dried_takes_the_meats_place(recipe_of: RecipeOf, new: str) -> None:
    """Meat, fish or mushroom; nobody dries soy sauce, and no curing salt comes in this way."""
    with pytest.raises(AskedWrongly, match="no meat, fish or mushroom"):
        swap(recipe_of(), Swap(old="meat", new=new))


def test_meat_takes_no_ratio(recipe_of: RecipeOf) -> None:
    """Half the meat is another question, asked with --meat."""
    with pytest.raises(AskedWrongly, match="keeps its weight"):
        swap(recipe_of(), Swap(old="meat", new="elk", ratio=Fraction(1, 2)))


def test_curing_salt_is_never_swapped(recipe_of: RecipeOf) -> None:
    """Neither out nor in, by whatever name."""
    cure = '{ amount = "2 g", strength = "6.25 %" }'
    recipe = recipe_of(marinade={"curing-salt-1": cure, "salt-table": "20 g"})

    for old, new in (("curing-salt-1", "salt-table"), ("salt-table", "curing-salt-1")):
        for by_mass in (False, True):
            with pytest.raises(AskedWrongly, match="never swapped"):
                swap(recipe, Swap(old=old, new=new, by_mass=by_mass))


def test_what_is_not_there_cannot_be_swapped(recipe_of: RecipeOf) -> None:
    """A name that the recipe does not have is told with the near ones that it has."""
    with pytest.raises(AskedWrongly, match="did you mean soy-sauce"):
        swap(recipe_of(), Swap(old="soy-suace", new="tamari"))
    with pytest.raises(AskedWrongly, match="it has soy-sauce"):
        swap(recipe_of(), Swap(old="honey", new="maple-syrup"))


def test_a_food_nobody_knows_is_told(recipe_of: RecipeOf) -> None:
    """The new food must be in the tables."""
    with pytest.raises(FoodUnknown, match="tamari"):
        swap(recipe_of(), Swap(old="soy-sauce", new="tamarri"))


def test_no_density_no_volume_for_volume(recipe_of: RecipeOf) -> None:
    """A weighed food cannot be matched by volume with one that has no known density."""
    recipe = recipe_of(marinade={"salt-table": "20 g"})

    with pytest.raises(AskedWrongly, match="--swap-by mass"):
        swap(recipe, Swap(old="salt-table", new="potassium-chloride"))
    after = only(swap(recipe, Swap(old="salt-table", new="potassium-chloride", by_mass=True)))
    assert 20 == after.amount.low


def test_by_mass_needs_a_mass(recipe_of: RecipeOf) -> None:
    """A spoon of unknown salt has no weight to match gram for gram."""
    recipe = recipe_of(marinade={"salt": "1 Tbsp"})

    with pytest.raises(AskedWrongly, match="nobody has stated"):
        swap(recipe, Swap(old="salt", new="salt-table", by_mass=True))


@pytest.mark.parametrize(
    ("what", "words"),
    [
        (Swap(old="a", new="b"), "b for a"),
        (Swap(old="a", new="b", ratio=Fraction(1, 2)), "b x 0.5 for a"),
        (Swap(old="a", new="b", by_mass=True), "b for a by weight"),
    ],
)
def test_a_swap_is_named_in_words(what: Swap, words: str) -> None:
    """An output names what came in for what, at which ratio and by which measure."""
    assert words == what.words
