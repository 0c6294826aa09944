"""The card once more as linked data: Recipe and NutritionInformation of schema.org.

Only what the card itself says. A figure that is a floor, "less than" something or not known has no
field that could say so; it stands in the description alone. Ingredients are exact, not in scoops:
who reads them, our own ``bring`` too, gets the recipe back.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from tarebook.cards.content import Content, FigureRow
from tarebook.cards.worksheet import Worksheet
from tarebook.exchange.sent import recipe_lines
from tarebook.nutrition import Estimate
from tarebook.paper.who_says_so import citations_of
from tarebook.quantities.words import format_mass_g
from tarebook.safety import Caution

_FIELDS: Mapping[str, str] = {
    "energy_kcal": "calories",
    "fat_g": "fatContent",
    "saturated_g": "saturatedFatContent",
    "cholesterol_mg": "cholesterolContent",
    "sodium_mg": "sodiumContent",
    "carbohydrate_g": "carbohydrateContent",
    "fiber_g": "fiberContent",
    "sugars_g": "sugarContent",
    "protein_g": "proteinContent",
}


def structured_data(
    card: Content, sheet: Worksheet, *, date: str | None = None
) -> dict[str, object]:
    """Return a card as a schema.org Recipe; the same in a page and in a file of its own.

    Args:
        card: the words of the card.
        sheet: the recipe at the card's size, with the estimate its figures come from.
        date: day the card was made (YYYY-MM-DD), or None.

    Returns:
        Plain data, ready to be written as JSON.
    """
    data: dict[str, object] = {
        "@context": "https://schema.org",
        "@type": "Recipe",
        "name": card.title,
        "description": card.about,
        "recipeYield": _finished(sheet.estimate),
        "recipeIngredient": recipe_lines(sheet.recipe, sheet.scaled.factor),
        "recipeInstructions": list(_instructions(card)),
        "nutrition": _nutrition(card, sheet.estimate.ounce.words),
        "sdDatePublished": date,
    }
    return {key: value for key, value in data.items() if value}


def _finished(found: Estimate) -> str:
    low, likely, high = (format_mass_g(end) for end in found.finished_g[:3])
    if found.weighed:
        return f"{likely} dried, as weighed"
    return f"about {likely} dried (home estimate, {low} to {high})"


def _instructions(card: Content) -> Iterator[dict[str, object]]:
    """Yield the recipe's steps, in which a cook can go; then soak, heat and drying in short."""
    for text in card.steps or card.conditions:
        yield {"@type": "HowToStep", "text": text}
    if card.steps:
        yield from _tips("Times and heat", card.conditions)
    yield from _tips("Notes", card.notes)
    # Who collects the recipe collects its cautions.
    yield {
        "@type": "HowToSection",
        "name": "Mind",
        "itemListElement": [_tip(one) for one in card.cautions],
    }


def _tips(name: str, texts: tuple[str, ...]) -> Iterator[dict[str, object]]:
    tips = [{"@type": "HowToTip", "text": text} for text in texts]
    if tips:
        yield {"@type": "HowToSection", "name": name, "itemListElement": tips}


def _tip(caution: Caution) -> dict[str, object]:
    return {
        "@type": "HowToTip",
        "name": caution.title,
        "text": caution.text,
        "citation": list(citations_of(caution)),
    }


def _nutrition(card: Content, ounce: str) -> dict[str, object]:
    known = {_FIELDS[one.figure]: one.amount for one in card.figures if _is_plain(one)}
    return {
        "@type": "NutritionInformation",
        "name": "Home estimate",
        "description": f"{card.foot} {_told(card)}",
        "servingSize": f"1 finished ounce ({ounce})",
        **known,
    }


def _is_plain(row: FigureRow) -> bool:
    """Whether a figure is a bare number with its unit, which is all that a field can hold."""
    return row.figure in _FIELDS and row.amount[:1].isdigit()


def _told(card: Content) -> str:
    rows = "; ".join(
        f"{one.name} {one.amount}{f' ({one.span})' if one.span else ''}" for one in card.figures
    )
    return f"Likely value (low-high): {rows}."
