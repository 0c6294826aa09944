"""Everything about one recipe at one size."""

from __future__ import annotations

from collections.abc import Callable
from fractions import Fraction
from pathlib import Path

import pytest

from tarebook.cards.worksheet import Worksheet, allergens_of, worksheet
from tarebook.findings import AskedWrongly, CureRefused, QuantityError
from tarebook.nutrition import Ounce
from tarebook.recipe.model import Recipe

RecipeOf = Callable[..., Recipe]


def sodium(sheet: Worksheet) -> tuple[float, float, float]:
    """Return low, likely and high sodium per ounce [mg]."""
    found = sheet.estimate.per_ounce["sodium_mg"]
    assert found is not None
    return found.low, found.likely, found.high


def test_without_a_size_it_is_the_recipes_own(recipe_of: RecipeOf) -> None:
    """Neither weight nor factor: as written."""
    recipe = recipe_of(amount="2 lb")

    assert 1 == worksheet(recipe).scaled.factor
    assert recipe.meat.mass_g == worksheet(recipe).scaled.meat_mass_g


def test_a_weight_and_a_factor_meet(recipe_of: RecipeOf) -> None:
    """Two kilograms of a recipe for one is twice the recipe."""
    recipe = recipe_of(amount="1 kg")
    by_weight = worksheet(recipe, meat_mass_g=Fraction(2000))

    assert by_weight == worksheet(recipe, factor=Fraction(2))


def test_an_ounce_holds_the_same_at_any_size(recipe_of: RecipeOf) -> None:
    """Scaled exactly, an ounce holds what it held, and the batch so many times as much."""
    recipe = recipe_of(marinade={"soy-sauce": "1 cup", "honey": "1/4 cup"})
    one, four = worksheet(recipe), worksheet(recipe, factor=Fraction(4))

    assert sodium(one) == pytest.approx(sodium(four))
    batch_one = one.estimate.per_batch["sodium_mg"]
    batch_four = four.estimate.per_batch["sodium_mg"]
    assert batch_one is not None and batch_four is not None
    assert 4 * batch_one.likely == pytest.approx(batch_four.likely)


def test_a_label_ounce_is_28_grams(recipe_of: RecipeOf) -> None:
    """The label's ounce holds 28 / 28.3495 of what an ounce holds, and is named."""
    recipe = recipe_of()
    label = worksheet(recipe, ounce=Ounce.LABEL)

    assert "label ounce of 28 g" == label.estimate.ounce.words
    expected = [each * 28 / 28.349523125 for each in sodium(worksheet(recipe))]
    assert expected == pytest.approx(list(sodium(label)))


def test_weighing_the_batch_narrows_the_range(recipe_of: RecipeOf) -> None:
    """The weight on the scale takes the place of the guess at it."""
    recipe = recipe_of(marinade={}, mixed_in={"salt-table": "15 g", "honey": "1 Tbsp"})
    guessed = worksheet(recipe)
    weighed = worksheet(recipe, finished_g=guessed.estimate.finished_g.likely)
    before, after = sodium(guessed), sodium(weighed)

    assert after[2] - after[0] < before[2] - before[0]
    assert weighed.estimate.weighed and not guessed.estimate.weighed


@pytest.mark.parametrize("grams", [20.0, 5000.0])
def test_a_finished_weight_that_cannot_be_is_refused(recipe_of: RecipeOf, grams: float) -> None:
    """Less than its dry solids or more than went in: another batch was weighed."""
    with pytest.raises(QuantityError):
        worksheet(recipe_of(), finished_g=grams)


def test_a_drawer_nobody_has_is_told() -> None:
    """The measuring set must be one of ours."""
    from tarebook.recipe.load import load_recipe

    recipe, _ = load_recipe("juniper-venison")
    with pytest.raises(AskedWrongly, match="metric"):
        worksheet(recipe, drawer="metrik")


CURED = '{{ amount = "{grams} g", strength = "6.25 %" }}'


@pytest.mark.parametrize("part", ["marinade", "rub", "mixed_in"])
def test_too_much_nitrite_makes_no_worksheet(recipe_of: RecipeOf, part: str) -> None:
    """156 ppm of one kilogram is 2.496 g of a 6.25 % salt: 2.4 passes, 2.5 does not, anywhere."""
    fine = recipe_of(**{part: {"curing-salt-1": CURED.format(grams="2.4")}})
    over = recipe_of(**{part: {"curing-salt-1": CURED.format(grams="2.5")}})
    cure = worksheet(fine).cure

    assert cure is not None
    assert 150 == cure.guard_ppm
    with pytest.raises(CureRefused, match=r"156\.25 ppm"):
        worksheet(over)


@pytest.mark.parametrize("factor", ["1/7", "3", "11/3", "40"])
def test_nitrite_is_recomputed_after_scaling(recipe_of: RecipeOf, factor: str) -> None:
    """What is weighed at today's size never holds more than the recipe's own share."""
    recipe = recipe_of(rub={"curing-salt-1": CURED.format(grams="2.4")})
    sheet = worksheet(recipe, factor=Fraction(factor))

    assert sheet.cure is not None
    weighed_g = sheet.cure.cures[0].mass_g
    assert weighed_g % Fraction(1, 10) == 0
    assert weighed_g * Fraction("0.0625") / sheet.scaled.meat_mass_g * 10**6 == sheet.cure.guard_ppm
    assert sheet.cure.guard_ppm <= 150


def test_a_spoon_of_plain_salt_leaves_no_sodium_total(recipe_of: RecipeOf) -> None:
    """Salt of unknown crystal: measures yes, a total of sodium no, not even "at least"."""
    sheet = worksheet(recipe_of(marinade={"soy-sauce": "1 cup", "salt": "1 Tbsp"}))

    assert sheet.estimate.per_ounce["sodium_mg"] is None
    assert sheet.estimate.per_batch["sodium_mg"] is None
    assert sheet.estimate.ceiling_sodium_mg_per_oz is None
    assert ("salt",) == sheet.estimate.no_sodium_total
    assert "1 Tbsp" == sheet.scaled.ingredients[1].measure.text
    assert sheet.estimate.per_ounce["protein_g"] is not None


@pytest.mark.parametrize("salt", ["salt-table", "salt-kosher-fine-flake", "salt-pickling"])
def test_a_named_salt_has_a_total(recipe_of: RecipeOf, salt: str) -> None:
    """Once its kind is named a spoon of salt counts."""
    sheet = worksheet(recipe_of(marinade={"soy-sauce": "1 cup", salt: "1 Tbsp"}))

    assert sodium(sheet) > sodium(worksheet(recipe_of(marinade={"soy-sauce": "1 cup"})))
    assert () == sheet.estimate.no_sodium_total


def test_weighed_plain_salt_has_a_total(recipe_of: RecipeOf) -> None:
    """On the scale all crystals are alike, but for the few per cent that is not salt."""
    plain = worksheet(recipe_of(marinade={"salt": "30 g"}))
    table = worksheet(recipe_of(marinade={"salt-table": "30 g"}))

    assert sodium(plain) == pytest.approx(sodium(table), rel=0.03)


def test_what_is_missing_is_named(recipe_of: RecipeOf) -> None:
    """Soy sauce to taste leaves sodium at least, and its name says whose share is missing."""
    sheet = worksheet(recipe_of(marinade={"salt-table": "20 g", "soy-sauce": "to taste"}))
    found = sheet.estimate.per_ounce["sodium_mg"]

    assert found is not None
    assert found.at_least and ("soy-sauce",) == found.missing


def test_no_ceiling_over_what_is_not_known(recipe_of: RecipeOf) -> None:
    """Where a share of the sodium is missing nobody can say "at most"."""
    sheet = worksheet(recipe_of(marinade={"salt-table": "20 g", "soy-sauce": "to taste"}))

    assert sheet.estimate.ceiling_sodium_mg_per_oz is None


def test_two_of_one_name_are_each_off_by_their_own(recipe_of: RecipeOf) -> None:
    """A pinch of salt in the rub does not make the weighed salt of the marinade doubtful."""
    weighed = {"salt-table": "20 g", "soy-sauce": "2 Tbsp"}
    one = sodium(worksheet(recipe_of(marinade=weighed)))
    two = sodium(worksheet(recipe_of(marinade=weighed, rub={"salt-table": "a pinch"})))

    assert two[1] > one[1]
    assert two[2] - two[0] < 1.2 * (one[2] - one[0])


def test_the_ceiling_is_never_below_high(recipe_of: RecipeOf) -> None:
    """Everything counted is never less than the high estimate."""
    for heat in ("oven after drying", "simmered in its marinade", "steamed or roasted first"):
        for amount in ("1 Tbsp", "1/2 cup", "3 cups"):
            sheet = worksheet(recipe_of(marinade={"soy-sauce": amount}, heat=heat))
            ceiling = sheet.estimate.ceiling_sodium_mg_per_oz
            assert ceiling is None or ceiling >= sodium(sheet)[2]


def test_allergens_come_by_kind_and_packs_are_to_be_read(recipe_of: RecipeOf) -> None:
    """Who brings an allergen is named; what only the pack can tell is asked of the pack."""
    listed = {"soy-sauce": "1 cup", "tamari": "1 Tbsp", "worcestershire": "1 Tbsp"}
    found = allergens_of(recipe_of(meat="salmon-coho", marinade=listed))

    assert ("soy-sauce", "tamari") == found.contains["soybeans"]
    assert any(name.startswith("fish") for name in found.contains)
    assert not set(found.contains) & set(found.check)


def test_a_batch_weighed_too_moist_has_no_date(recipe_of: RecipeOf) -> None:
    """The scale overrules the recipe: at six tenths of the raw weight it is kept cold."""
    recipe = recipe_of(amount="1 kg")
    moist, dry = worksheet(recipe, finished_g=600), worksheet(recipe, finished_g=360)

    assert "weighed-moist" in {one.code for one in moist.cautions}
    assert "weighed-moist" not in {one.code for one in dry.cautions}
    assert "the weighed batch is too moist" == moist.keep_by.reason
    assert moist.keep_by.limits == ()
    assert "weighed-moist" not in {one.code for one in worksheet(recipe).cautions}


def test_the_bottle_s_own_list_of_allergens_wins(own_home: Path, recipe_of: RecipeOf) -> None:
    """What its pack lists stands for what its kind holds; without a list the kind's does."""
    folder = own_home / "foods"
    folder.mkdir(parents=True)
    listed = '[allergens]\ncontains = ["soybeans"]\ncheck = ["sesame"]'
    (folder / "lakeside-soy.toml").write_text(f'like = "soy-sauce"\n{listed}')
    (folder / "cove-soy.toml").write_text('like = "soy-sauce"')
    own, kind = (
        allergens_of(recipe_of(marinade={name: "1 cup"})) for name in ("lakeside-soy", "cove-soy")
    )

    assert {"soybeans": ("lakeside-soy",)} == own.contains
    assert {"sesame": ("lakeside-soy",)} == own.check
    assert {"soybeans", "wheat"} == set(kind.contains)
