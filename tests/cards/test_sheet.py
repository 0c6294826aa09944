"""What ``scale`` prints."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from pathlib import Path

import pytest

from tarebook.cards.figures import ceiling
from tarebook.cards.lines import Line, Style, plain_text, width
from tarebook.cards.sheet import sheet
from tarebook.cards.text_card import text_card
from tarebook.cards.worksheet import Worksheet, worksheet
from tarebook.findings import Severity
from tarebook.recipe.load import shipped_recipes
from tarebook.recipe.model import Recipe

Shipped = Callable[..., Worksheet]
Unwrapped = Callable[[Iterable[Line]], str]
RecipeOf = Callable[..., Recipe]


def test_every_ingredient_has_measure_and_grams(shipped: Shipped) -> None:
    """What to measure stands beside what it weighs, under the part it belongs to."""
    rows = plain_text(sheet(shipped(factor="12/5"))).splitlines()

    assert "soy sauce                 1 cup + 3 Tbsp                         324 g" in rows
    assert "garlic, minced            7 cloves                                21 g" in rows
    assert rows.index("Marinade                  measure                               weighs") < (
        rows.index("onion powder              2 tsp + 1/2 tsp                        5.8 g")
    )


def test_a_spoon_out_of_tolerance_tells_its_error(shipped: Shipped, unwrapped: Unwrapped) -> None:
    """Where no spoon is near enough the nearest is shown with its error, beside the grams."""
    assert "1/2 tsp (17 % under: weigh it)" in unwrapped(sheet(shipped(factor="12/5")))


def test_exact_amounts_on_request(shipped: Shipped, unwrapped: Unwrapped) -> None:
    """The exact amount is there for those who ask, and not for the others."""
    assert "exactly 1 1/5 cups" in unwrapped(sheet(shipped(factor="12/5"), exact=True))
    assert "exactly" not in unwrapped(sheet(shipped(factor="12/5")))


def test_the_ounce_is_named(recipe_of: RecipeOf, unwrapped: Unwrapped) -> None:
    """Which ounce the figures are for stands over them."""
    from tarebook.nutrition import Ounce

    assert "ounce of 28.35 g low likely high" in unwrapped(sheet(worksheet(recipe_of())))
    label = worksheet(recipe_of(), ounce=Ounce.LABEL)
    assert "label ounce of 28 g low likely high" in unwrapped(sheet(label))


def test_at_least_names_whose_share_is_missing(shipped: Shipped, unwrapped: Unwrapped) -> None:
    """Figures that can only be higher carry a mark, and the mark is explained with names."""
    text = unwrapped(sheet(shipped()))

    assert "added sugars ≥" in text
    assert "at least: added sugars of worcestershire not known" in text


def test_sugars_that_have_a_bound_are_counted_and_told(
    shipped: Shipped, unwrapped: Unwrapped
) -> None:
    """Sugars of a spice that no source states are within the figure, which is no "at least"."""
    text = unwrapped(sheet(shipped()))

    assert "total sugars ≥" not in text
    assert "carbohydrate ≥" not in text
    assert (
        "Sugars of allspice not stated: counted as anything from none to all its carbohydrate "
        "that is no fibre."
    ) in text


def test_a_food_of_which_nothing_is_known_is_told_in_one_line(
    recipe_of: RecipeOf, unwrapped: Unwrapped
) -> None:
    """Sodium and sugars are named, and the rest is counted: the table marks each of them."""
    done = worksheet(recipe_of(marinade={"soy-sauce": "1 cup", "liquid-smoke": "1 Tbsp"}))
    alone = [
        one
        for one in done.estimate.per_ounce.values()
        if one is not None and one.missing == ("liquid-smoke",)
    ]
    told = (
        f"≥ at least: sodium, total sugars and {len(alone) - 2} further figures marked so of "
        "liquid smoke not known."
    )

    assert len(alone) > 10
    assert told in unwrapped(sheet(done))


def test_what_no_source_gives_is_not_known(shipped: Shipped, unwrapped: Unwrapped) -> None:
    """Trans fat has no source and no zero."""
    assert "trans fat not known" in unwrapped(sheet(shipped()))


def test_plain_salt_by_the_spoon(recipe_of: RecipeOf, unwrapped: Unwrapped) -> None:
    """Measures print, sodium has no total of any kind, and the kinds to choose from are named."""
    text = unwrapped(sheet(worksheet(recipe_of(marinade={"honey": "1 cup", "salt": "1 Tbsp"}))))

    assert "salt 1 Tbsp not known" in text
    assert "sodium no total" in text
    assert "No sodium total: salt has no weight" in text
    assert "name its kind" in text
    assert "salt-table, salt-kosher-fine-flake, salt-kosher-dense-flake" in text
    assert "Sodium with everything counted" not in text
    assert "sodium ≥" not in text and "≥ at least: sodium" not in text


def test_curing_salt_is_told_in_grams_with_its_nitrite(
    shipped: Shipped, unwrapped: Unwrapped
) -> None:
    """Grams rounded down, the nitrite that goes in, and the limit; never a spoon."""
    text = unwrapped(sheet(shipped("cranberry-moose", "2")))

    assert "curing salt 1 6.0 g, weighed" in text
    assert "138 ppm of the raw meat; nothing is printed over 156 ppm" in text
    (line,) = (one.text for one in sheet(shipped("cranberry-moose", "2")) if "6.0 g" in one.text)
    assert not any(spoon in line for spoon in ("tsp", "Tbsp", "cup"))


def test_the_ceiling_stands_beside_the_range(shipped: Shipped, unwrapped: Unwrapped) -> None:
    """What an ounce could hold at the most, everything counted."""
    found = shipped().estimate.ceiling_sodium_mg_per_oz

    assert found is not None
    told = f"everything counted, nothing poured away: at most about {ceiling(found)} mg"
    assert told in unwrapped(sheet(shipped()))


def test_a_weighed_batch_is_told_as_weighed(recipe_of: RecipeOf, unwrapped: Unwrapped) -> None:
    """The finished weight is the cook's own, and nobody is asked to weigh it again."""
    text = unwrapped(sheet(worksheet(recipe_of(), finished_g=420.0)))

    assert "Finished batch, as weighed: 420 g, 42 % of the raw meat." in text
    assert "Weigh it, and the figures narrow" not in text


@pytest.mark.parametrize("name", shipped_recipes())
def test_every_caution_is_there_with_its_source(name: str, shipped: Shipped) -> None:
    """No caution of the worksheet is left out, and each says who says so."""
    page = " ".join(plain_text(sheet(shipped(name, "3"))).split())

    assert shipped(name, "3").cautions
    for one in shipped(name, "3").cautions:
        assert f"- {one.title}. {one.text} [{one.citation}]" in page


def test_grave_cautions_come_first_and_are_painted(shipped: Shipped) -> None:
    """Warnings stand before notes, and a terminal may paint them."""
    lines = list(sheet(shipped()))
    heads = [one for one in lines if one.text.startswith("- ")]
    warned = [one.style is Style.WARN for one in heads]

    assert warned == sorted(warned, reverse=True) and any(warned) and not all(warned)


@pytest.mark.parametrize("name", shipped_recipes())
@pytest.mark.parametrize("factor", ["1", "1/7", "37"])
def test_no_line_is_over_80_columns(name: str, factor: str, shipped: Shipped) -> None:
    """Eighty columns hold every line at any size, exact amounts included."""
    broad = [one.text for one in sheet(shipped(name, factor), exact=True) if width(one.text) > 80]

    assert [] == broad


@pytest.mark.parametrize("name", shipped_recipes())
def test_short_has_the_amounts_the_figures_and_what_is_grave(name: str, shipped: Shipped) -> None:
    """Every line of amounts and figures as on the whole page; of cautions the grave ones alone."""
    done = shipped(name)
    whole, short = (plain_text(sheet(done, short=each)).splitlines() for each in (False, True))
    grave = [one.title for one in done.cautions if one.severity is not Severity.NOTE]
    up_to = whole.index(
        "Low to high holds nine batches of ten, if the recipe and the cut are as said."
    )
    minded = [line[2:].partition(". ")[0] for line in short if line.startswith("- ")]

    assert whole[: up_to + 1] == short[: up_to + 1]
    assert grave == minded and len(grave) < len(done.cautions)
    assert "The other cautions: the same command without --short." == short[-1]
    assert len(short) < 0.7 * len(whole)


def test_a_recipe_cannot_paint_the_screen(recipe_of: RecipeOf) -> None:
    """Control characters in titles and names reach no terminal, whoever let them in."""
    good = recipe_of()
    (one,) = good.ingredients
    bad = good._replace(
        title="Red \x1b[31m strips \u202e",
        ingredients=(one._replace(name="soy \x1b]0;x\x07", note="a\x1b[2Jb"),),
    )
    page = plain_text(sheet(worksheet(bad)))

    assert "Red" in page and "soy" in page
    assert not any(ord(c) < 32 and c != "\n" for c in page)
    assert "\u202e" not in page


def test_sodium_that_its_pack_does_not_print_is_told_of(
    recipe_of: RecipeOf, unwrapped: Unwrapped, own_home: Path
) -> None:
    """Borrowed from the food that it is like, on sheet and card; and no ceiling rests on it."""
    (own_home / "foods").mkdir(parents=True)
    (own_home / "foods" / "pale-soy.toml").write_text(
        'like = "soy-sauce"\n[panel]\nserving = "15 mL"\nsugars = "1 g"\n', encoding="utf-8"
    )
    done = worksheet(recipe_of(marinade={"pale-soy": "1/2 cup"}))
    told = (
        "Sodium of pale soy is not on its panel: borrowed from soy sauce, which it may be far from."
    )

    for page in (unwrapped(sheet(done)), unwrapped(text_card(done))):
        assert 1 == page.count(told)
        assert "at most about" not in page and "No ceiling is told" not in page
    assert told not in unwrapped(sheet(worksheet(recipe_of(marinade={"soy-sauce": "1/2 cup"}))))
