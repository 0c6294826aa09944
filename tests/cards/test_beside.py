"""Variants side by side."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from fractions import Fraction

import pytest

from tarebook.cards.beside import Variant, beside
from tarebook.cards.lines import Line, Style, width
from tarebook.cards.worksheet import Worksheet, worksheet
from tarebook.nutrition.compare import difference
from tarebook.recipe.model import Recipe
from tarebook.scaling.swap import Swap, swap

Shipped = Callable[..., Worksheet]
Unwrapped = Callable[[Iterable[Line]], str]
RecipeOf = Callable[..., Recipe]


def pair(recipe: Recipe, *swaps: Swap) -> list[Variant]:
    """Return a recipe and the same with some swaps made."""
    changed = recipe
    for one in swaps:
        changed = swap(changed, one)
    return [Variant("first", worksheet(recipe)), Variant("second", worksheet(changed))]


LESS_SODIUM = Swap(old="soy-sauce", new="soy-sauce-low-sodium")


def test_a_low_sodium_sauce_has_less_and_the_page_says_by_how_much(
    recipe_of: RecipeOf, unwrapped: Unwrapped
) -> None:
    """Less sodium, with the range of the paired difference in the words as in the row."""
    sides = pair(recipe_of(), LESS_SODIUM)
    found = difference(sides[0].sheet.estimate, sides[1].sheet.estimate, "sodium_mg", per="ounce")

    assert found.change is not None and found.change.high < 0
    low, high = -found.change.high, -found.change.low
    assert f"Sodium: B has less, by {low:.0f} to {high:.0f} mg an ounce." in unwrapped(
        beside(sides)
    )


def test_the_paired_difference_is_narrower_than_the_two_ranges(recipe_of: RecipeOf) -> None:
    """What both sides share drops out of their difference."""
    sides = pair(recipe_of(), LESS_SODIUM)
    found = difference(sides[0].sheet.estimate, sides[1].sheet.estimate, "sodium_mg", per="ounce")

    assert found.first is not None and found.second is not None and found.change is not None
    apart = (found.first.high - found.second.low) - (found.first.low - found.second.high)
    assert found.change.high - found.change.low < apart / 1.5


def test_a_recipe_beside_itself_is_the_same(recipe_of: RecipeOf, unwrapped: Unwrapped) -> None:
    """The same recipe twice has no difference at all, and none is doubted."""
    recipe = recipe_of()
    page = unwrapped(beside([Variant("a", worksheet(recipe)), Variant("b", worksheet(recipe))]))

    assert "Sodium: the same." in page and "Total sugars: the same." in page
    assert "smaller than the doubt" not in page.lower()


def test_smaller_than_the_doubt_is_said(recipe_of: RecipeOf, unwrapped: Unwrapped) -> None:
    """A difference whose range includes zero is told as smaller than the doubt in it."""
    recipe = recipe_of(marinade={"soy-sauce": "1/2 cup", "honey": "1 Tbsp"})
    sides = pair(recipe, Swap(old="soy-sauce", new="soy-sauce-tamari"))
    found = difference(sides[0].sheet.estimate, sides[1].sheet.estimate, "sodium_mg", per="ounce")

    assert found.change is not None and found.change.low < 0 < found.change.high
    assert "Sodium: the difference is smaller than the doubt in it." in unwrapped(beside(sides))


def test_overlapping_ranges_may_still_differ(recipe_of: RecipeOf, unwrapped: Unwrapped) -> None:
    """Two ranges that overlap do not make a difference doubtful; only its own range does."""
    sides = pair(recipe_of(), Swap(old="soy-sauce", new="soy-sauce", ratio=Fraction(5, 4)))
    found = difference(sides[0].sheet.estimate, sides[1].sheet.estimate, "sodium_mg", per="ounce")

    assert found.first is not None and found.second is not None
    assert found.first.high > found.second.low
    assert "Sodium: B has more" in unwrapped(beside(sides))


def test_the_whole_batch_is_compared_too(recipe_of: RecipeOf, unwrapped: Unwrapped) -> None:
    """Sums of the batch and its finished weight stand below the ounce."""
    page = unwrapped(beside(pair(recipe_of(), LESS_SODIUM)))

    assert "Whole batch sodium: A " in page
    assert "finished weight, likely: A " in page


def test_no_total_on_one_side_is_no_difference(recipe_of: RecipeOf, unwrapped: Unwrapped) -> None:
    """Plain salt by the spoon on one side: no difference of sodium is made up."""
    with_salt = worksheet(recipe_of(marinade={"salt": "1 Tbsp"}))
    page = unwrapped(beside([Variant("a", worksheet(recipe_of())), Variant("b", with_salt)]))

    assert "Sodium: no total on one side, so no difference." in page
    assert "B no total" in page
    assert "B, not known" in page and "name its kind" in page


def test_a_missing_share_on_one_side_decides_nothing(
    recipe_of: RecipeOf, unwrapped: Unwrapped
) -> None:
    """A sauce nobody has a figure for is not called lower in sodium, either way round."""
    unknown = Swap(old="soy-sauce", new="coconut-seasoning-sauce")
    first, second = pair(recipe_of(), unknown)
    for sides in ([first, second], [second, first]):
        page = unwrapped(beside(sides))
        assert "Sodium: nobody can say which is lower, for that of" in page
        assert "coconut-seasoning-sauce is not known" in page
        assert "mg, B less A not known" in page
        assert "has less" not in page and "has more" not in page


def test_a_missing_share_leaves_the_difference_open_on_its_side(
    recipe_of: RecipeOf, unwrapped: Unwrapped
) -> None:
    """More salt and an unknown sauce: more sodium for certain, by at least so much."""
    plain = recipe_of(marinade={"honey": "1 cup"})
    salted = recipe_of(marinade={"honey": "1 cup", "salt-table": "40 g", "soy-sauce": "to taste"})
    up = [Variant("a", worksheet(plain)), Variant("b", worksheet(salted))]

    assert "Sodium: B has more, by at least" in unwrapped(beside(up))
    assert "Sodium: B has less, by at least" in unwrapped(beside(up[::-1]))


def test_potassium_salt_carries_its_caution(recipe_of: RecipeOf, unwrapped: Unwrapped) -> None:
    """A swap to a salt with potassium says whom it can harm; without it nothing is said."""
    recipe = recipe_of(marinade={"salt-table": "20 g"})
    potassium = Swap(old="salt-table", new="potassium-chloride", by_mass=True)

    assert "kidney disease" in unwrapped(beside(pair(recipe, potassium)))
    assert "kidney disease" not in unwrapped(beside(pair(recipe, Swap(old="meat", new="elk"))))


def test_another_meat_compares_too(recipe_of: RecipeOf, unwrapped: Unwrapped) -> None:
    """The meat swapped: its own protein and cautions come with it."""
    page = unwrapped(beside(pair(recipe_of(), Swap(old="meat", new="turkey-breast"))))

    assert "Raw poultry." in page
    assert "B against A, one finished ounce" in page


def test_what_is_not_known_on_both_sides_is_not_the_same(
    recipe_of: RecipeOf, unwrapped: Unwrapped
) -> None:
    """Vitamin D of venison is not known; nobody can say that both sides hold the same."""
    lines = [one.text.split() for one in beside(pair(recipe_of(), LESS_SODIUM))]
    (row,) = (cells for cells in lines if cells[:2] == ["vitamin", "D"])

    assert ["vitamin", "D", *["not", "known"] * 3] == row


def test_three_sides_are_each_held_against_the_first(
    shipped: Shipped, unwrapped: Unwrapped
) -> None:
    """Several recipes: each one against the first, with a bar for each."""
    names = ("juniper-venison", "cabin-rub-elk", "woodland-mushrooms")
    page = unwrapped(beside([Variant(name, shipped(name)) for name in names]))

    assert "B against A, one finished ounce" in page and "C against A" in page
    assert all(f"{letter} {name}," in page for letter, name in zip("ABC", names, strict=True))


@pytest.mark.parametrize(
    "names",
    [
        ("juniper-venison", "woodland-mushrooms"),
        ("orchard-turkey", "juniper-venison"),
        ("juniper-venison", "orchard-turkey", "maple-dill-salmon"),
    ],
)
def test_every_caution_is_said_once(
    names: tuple[str, ...], shipped: Shipped, unwrapped: Unwrapped
) -> None:
    """Whatever holds for any side is said, once; what differs between sides is said of each."""
    sides = [Variant(name, shipped(name)) for name in names]
    page = unwrapped(beside(sides))

    for one in {one for side in sides for one in side.sheet.cautions}:
        assert 1 == page.count(f"{one.title}. {one.text}")


def test_a_caution_of_one_side_says_of_which(shipped: Shipped, unwrapped: Unwrapped) -> None:
    """Poultry wants more heat than venison: each side has its own temperature."""
    names = ("orchard-turkey", "juniper-venison")
    page = unwrapped(beside([Variant(name, shipped(name)) for name in names]))

    assert "- A: Heat the meat. Bring the poultry to 165 °F" in page
    assert "- B: Heat the meat. Bring the meat to 160 °F" in page
    assert "- Home estimate. Sodium" in page


def test_the_gravest_caution_of_any_side_comes_first(shipped: Shipped) -> None:
    """A warning of the second side stands above a note of the first."""
    sides = [Variant(name, shipped(name)) for name in ("woodland-mushrooms", "juniper-venison")]
    heads = [one for one in beside(sides) if one.text.startswith("- ")]
    warned = [one.style is Style.WARN for one in heads]

    assert warned == sorted(warned, reverse=True) and any(warned) and not all(warned)


@pytest.mark.parametrize("other", ["cabin-rub-elk", "orchard-turkey", "trail-sticks-venison"])
def test_no_line_is_over_80_columns(other: str, shipped: Shipped) -> None:
    """Eighty columns hold every line."""
    sides = [Variant("first", shipped("juniper-venison")), Variant("second", shipped(other))]

    assert [] == [one.text for one in beside(sides) if width(one.text) > 80]


def test_short_has_the_grave_cautions_alone(shipped: Shipped, unwrapped: Unwrapped) -> None:
    """Those of one side say of which; all differences stay."""
    variants = [Variant("one", shipped()), Variant("other", shipped("cranberry-moose"))]
    whole, short = (unwrapped(beside(variants, short=each)) for each in (False, True))

    assert short.split(" Mind ")[0] == whole.split(" Mind ")[0]
    assert "- B: Handle curing salt with care." in short
    assert "Not a retail label" in whole and "Not a retail label" not in short
    assert short.endswith("The other cautions: the same command without --short.")
