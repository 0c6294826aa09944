"""The recipe card as text."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable

import pytest

from tarebook.cards.content import content, rounded
from tarebook.cards.lines import Line, plain_text, width
from tarebook.cards.text_card import text_card
from tarebook.cards.worksheet import Worksheet, worksheet
from tarebook.nutrition.range import Range
from tarebook.recipe.load import shipped_recipes
from tarebook.recipe.model import Recipe

Shipped = Callable[..., Worksheet]
Unwrapped = Callable[[Iterable[Line]], str]
RecipeOf = Callable[..., Recipe]


@pytest.mark.parametrize("name", shipped_recipes())
@pytest.mark.parametrize("factor", ["1", "1/7", "37"])
def test_no_line_is_over_60_columns(name: str, factor: str, shipped: Shipped) -> None:
    """Sixty columns hold every line of every card."""
    broad = [one.text for one in text_card(shipped(name, factor)) if width(one.text) > 60]

    assert [] == broad


@pytest.mark.parametrize("name", shipped_recipes())
def test_a_card_holds_all_of_its_recipe(name: str, shipped: Shipped, unwrapped: Unwrapped) -> None:
    """Title, size, every measure, step, note, figure, caution, and that it is no label."""
    card, page = shipped(name), unwrapped(text_card(shipped(name)))

    assert card.recipe.title.upper() in page
    for one in card.scaled.ingredients:
        assert one.measure.text in page or not one.measure.within
    for number, step in enumerate(card.recipe.steps, 1):
        assert f"{number}. {step}" in page
    for note in card.recipe.notes:
        assert f"Note: {note}" in page
    for caution in card.cautions:
        assert f"{caution.title}. {caution.text} [{caution.citation}]" in page
    assert page.endswith("Home estimate, not a retail label.")


def test_the_card_says_for_how_much_meat(shipped: Shipped, unwrapped: Unwrapped) -> None:
    """Pounds and grams of which meat."""
    assert "For 6 lb (2,722 g) of venison" in unwrapped(text_card(shipped(factor="12/5")))


def test_hours_and_temperatures_are_never_scaled(shipped: Shipped, unwrapped: Unwrapped) -> None:
    """However much meat, it soaks and dries as long and as hot as written."""
    for factor in ("1", "7"):
        page = unwrapped(text_card(shipped(factor=factor)))
        assert "Soak: 10 to 14 h in the refrigerator, then patted." in page
        assert "Dry: 150-155 °F (66-68 °C), 5-7 h, until a cooled strip bends" in page


def test_the_likely_value_is_rounded_as_labels_round(
    shipped: Shipped, unwrapped: Unwrapped
) -> None:
    """Sodium above 140 mg goes to tens, with its share of the day and the range beside it."""
    found = shipped().estimate.per_ounce["sodium_mg"]
    page = unwrapped(text_card(shipped()))

    assert found is not None and found.likely > 140
    tens = 10 * int(found.likely / 10 + 0.5)
    share = int(found.likely / 2300 * 100 + 0.5)
    assert f"sodium {tens} mg {share} % DV {found.low:.0f}-{found.high:.0f} mg" in page


@pytest.mark.parametrize("name", shipped_recipes())
def test_no_amount_lies_outside_its_own_range(name: str, shipped: Shipped) -> None:
    """Where the steps of a label would lead outside low to high, the likely value stands."""
    ranges = [one for one in content(shipped(name)).figures if one.span and one.share]

    assert len(ranges) > 7
    for one in ranges:
        low, _, high = one.span.split()[0].partition("-")
        amount = float(one.amount.split()[0].replace(",", ""))
        assert float(low) <= amount <= float(high or low), one


def test_calcium_that_a_label_rounds_away_stands_as_it_is(shipped: Shipped) -> None:
    """7.3 mg of 6.3 to 8.5 is not 10 mg on a card that tells the range beside it."""
    (calcium,) = [one for one in content(shipped()).figures if one.figure == "calcium_mg"]

    assert ("7.3 mg", "6.3-8.5 mg") == (calcium.amount, calcium.span)


@pytest.mark.parametrize(
    ("figure", "unit", "ends", "told"),
    [
        ("sugars_g", "g", (0.5, 0.7, 0.9), "less than 1"),
        ("cholesterol_mg", "mg", (2.5, 3.0, 3.6), "less than 5"),
        ("sugars_g", "g", (0.9, 1.2, 1.6), "1"),
        ("sugars_g", "g", (1.5, 1.6, 1.8), "1.6"),
        ("calcium_mg", "mg", (1006.0, 1014.0, 1022.0), "1010"),
        ("sodium_mg", "mg", (0.0, 0.0, 0.0), "0"),
    ],
)
def test_a_likely_value_as_it_is_printed(
    figure: str, unit: str, ends: tuple[float, float, float], told: str
) -> None:
    """By the steps of a label, by its words, or as it stands."""
    assert told == rounded(figure, Range(*ends, unit=unit))


def test_what_is_at_least_so_much_has_its_likely_value_and_its_range(
    recipe_of: RecipeOf, unwrapped: Unwrapped
) -> None:
    """A spoon of liquid smoke does not pull sodium down to its low end; all three are marked."""
    done = worksheet(recipe_of(marinade={"soy-sauce": "1 cup", "liquid-smoke": "1 Tbsp"}))
    found = done.estimate.per_ounce["sodium_mg"]
    page = unwrapped(text_card(done))

    assert found is not None and found.low < found.likely < found.high
    told = f"at least {found.likely:.0f} mg ≥ {found.low:.0f}-{found.high:.0f} mg"
    assert f"sodium {told}" in page


def test_figures_without_a_daily_value_have_no_share(
    shipped: Shipped, unwrapped: Unwrapped
) -> None:
    """Total sugars have no Daily Value, and none is made up."""
    lines = [one.text for one in text_card(shipped()) if one.text.startswith("total sugars")]

    assert lines and all("DV" not in line for line in lines)


def test_no_source_is_not_known(shipped: Shipped, unwrapped: Unwrapped) -> None:
    """Trans fat, and the vitamin D of venison, are not known rather than none."""
    page = unwrapped(text_card(shipped()))

    assert "trans fat not known" in page
    assert "vitamin D not known" in page


def test_plain_salt_leaves_no_total_on_the_card(recipe_of: RecipeOf, unwrapped: Unwrapped) -> None:
    """A spoon of plain salt: the card says that there is no sodium total, and why."""
    page = unwrapped(text_card(worksheet(recipe_of(marinade={"salt": "1 Tbsp"}))))

    assert "sodium no total" in page
    assert "No sodium total: salt has no weight: weigh it." in page


@pytest.mark.parametrize(
    "name", [name for name in shipped_recipes() if "mushroom" in name or "salmon" in name]
)
def test_no_use_by_where_no_rule_is_published(
    name: str, shipped: Shipped, unwrapped: Unwrapped
) -> None:
    """Where no rule is held, the card gives no date, says to keep it cold, and how long."""
    page = unwrapped(text_card(shipped(name)))

    assert "Keep cold" in page
    assert "no published rule" in page.lower()
    keeping = page[page.index("- Keeping.") :].partition("[")[0]
    assert "no use-by date" in keeping
    assert not any(word in page for word in ("room temperature", " months"))


def test_nothing_is_ever_called_safe(shipped: Shipped) -> None:
    """No card says it; only the title of somebody's paper may."""
    for name in shipped_recipes():
        page = " ".join(plain_text(text_card(shipped(name))).split())
        ours = re.sub(r"\[[^]]*\]", "", page)
        assert [] == re.findall(r"(?i)\bsafe(?:ly)?\b", ours)


def test_the_allergens_stand_on_the_card(shipped: Shipped, unwrapped: Unwrapped) -> None:
    """Each allergen with the ingredient that brings it."""
    page = unwrapped(text_card(shipped()))

    assert "Allergens: soybeans (soy sauce); wheat (soy sauce); fish (anchovy)" in page
    assert "Check the bottle of worcestershire for" in page
