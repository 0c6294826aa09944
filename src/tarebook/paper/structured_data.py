"""The card once more as linked data: Recipe and NutritionInformation of schema.org.

Only what the card itself says. A figure that is a floor, "less than" something or not known has no
field that could say so; it stands in the description alone.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from tarebook.cards.content import Content, FigureRow, Measured
from tarebook.cards.figures import NOT_KNOWN
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
    card: Content, found: Estimate, *, date: str | None = None
) -> dict[str, object]:
    """Return a card as a schema.org Recipe.

    Args:
        card: the words of the card.
        found: the estimate its figures come from.
        date: day the card was made (YYYY-MM-DD), or None.

    Returns:
        Plain data, ready to be written as JSON.
    """
    data: dict[str, object] = {
        "@context": "https://schema.org",
        "@type": "Recipe",
        "name": card.title,
        "description": card.about,
        "recipeYield": _finished(found),
        "recipeIngredient": [
            _meat(card),
            *(_ingredient(one) for group in card.groups for one in group.items),
        ],
        "recipeInstructions": list(_instructions(card)),
        "nutrition": _nutrition(card, found.ounce.words),
        "sdDatePublished": date,
    }
    return {key: value for key, value in data.items() if value}


def _finished(found: Estimate) -> str:
    low, likely, high = (format_mass_g(end) for end in found.finished_g[:3])
    if found.weighed:
        return f"{likely} dried, as weighed"
    return f"about {likely} dried (home estimate, {low} to {high})"


def _meat(card: Content) -> str:
    """Return today's meat as an ingredient, of the sentence that gives the card its size."""
    return card.size.removeprefix("For ").replace(" of ", " ", 1)


def _ingredient(one: Measured) -> str:
    """Return an ingredient in one line: no weight twice, and what is said of it behind it."""
    measure, _, missed = one.measure.partition(" (")
    measure = measure.removesuffix(", weighed")
    weighs = f"weight {NOT_KNOWN}" if one.weighs == NOT_KNOWN else one.weighs
    told = "; ".join(filter(None, ("" if weighs == measure else weighs, missed.rstrip(")"))))
    line = f"{measure} {one.name} ({told})" if told else f"{measure} {one.name}"
    return f"{line}; {one.note}" if one.note else line


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
