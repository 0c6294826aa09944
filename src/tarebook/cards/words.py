"""Words that several pages share: ingredients, allergens, finished weight, temperature."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from tarebook.cards.figures import NOT_KNOWN, percent
from tarebook.cards.lines import clean
from tarebook.cards.worksheet import Allergens, Worksheet
from tarebook.figures.spoken import spoken
from tarebook.nutrition import Estimate
from tarebook.quantities.words import format_mass_g
from tarebook.recipe.model import FinishBy, Part, Soak
from tarebook.safety.rulebook import limit
from tarebook.scaling import ScaledIngredient

PARTS = {Part.MARINADE: "Marinade", Part.RUB: "Rub", Part.MIXED_IN: "Mixed in"}
WEIGHED_ONCE = (
    "Weigh it once: for all of the meat where it lies in one bowl, or for each load as its plan "
    "says, and then none for all of it. Both would be twice the dose."
)
"""What stands beside curing salt: a card weighs it for all of the meat, a plan for each load."""
_MAJOR_ALLERGENS = 9
_WEIGH = "Weigh it, and give --finished."
_WEIGH_AND_WRITE = "Weigh it and write it here: ________ g."


def ingredient_name(one: ScaledIngredient) -> str:
    """Return what a card calls an ingredient, with its form where the name does not tell it."""
    name = spoken(one.ingredient.name)
    told = name.casefold().replace(",", "").split()
    form = (word for word in one.ingredient.form if word.casefold() not in told)
    return clean(", ".join((name, *form)))


def listed(names: Iterable[str]) -> str:
    """Return ingredients as a sentence lists them."""
    return clean(", ".join(map(spoken, names)))


def measure_words(one: ScaledIngredient) -> str:
    """Return what to take; a spoon that cannot come near enough says how far off it is."""
    if one.measure.within:
        return one.measure.text
    error = float(one.measure.error)
    way = "under" if error < 0 else "over"
    return f"{one.measure.text} ({percent(abs(error))} {way}: weigh it)"


def grams_words(one: ScaledIngredient) -> str:
    """Return what the scale should read; a curing salt to the tenth that its measure has too."""
    if one.mass is None:
        return NOT_KNOWN
    if one.food.curing:
        return one.measure.text.removesuffix(", weighed")
    return format_mass_g(one.mass.middle_g)


def allergen_sentences(found: Allergens) -> Iterator[str]:
    """Yield allergens by kind of ingredient, the packs to read, and what is listed elsewhere."""
    contains = "; ".join(_held(what, listed(names)) for what, names in found.contains.items())
    yield clean(f"Allergens: {contains or 'none by kind'}.")
    packs = "; ".join(f"{spoken(one)} for {_all_of(what)}" for one, what in found.packs().items())
    if packs:
        yield clean(f"Check the bottle of {packs}. The pack wins.")
    if found.elsewhere:
        others = "; ".join(f"{what} ({listed(n)})" for what, n in found.elsewhere.items())
        yield clean(f"Not one of the nine, but listed elsewhere: {others}.")


def cure_sentences(sheet: Worksheet) -> Iterator[str]:
    """Yield the curing salt, the nitrite that goes in, and each published method's figure."""
    if sheet.cure is None:
        return
    weighed, *rest = sheet.cure.lines()
    yield from (clean(text) for text in (weighed, WEIGHED_ONCE, *rest))
    for one in sheet.ingoing:
        yield clean(f"By published method, {one}.")


def borrowed_sentences(found: Estimate) -> Iterator[str]:
    """Yield whose sodium is not printed on its own pack, and what it was taken from instead."""
    lines = [one for one in found.facts.lines if one.makeup.sodium_borrowed]
    for name, food in dict.fromkeys((one.figures_of, one.food) for one in lines):
        yield clean(
            f"Sodium of {spoken(name)} is not on its panel: borrowed from {spoken(food)}, which it "
            "may be far from."
        )


def finished_words(found: Estimate, *, on_card: bool = False) -> str:
    """Return the finished weight in words, weighed or estimated.

    Args:
        found: the estimate of the batch.
        on_card: whether they stand on a card, where an option of the command helps nobody and a
            pen does.
    """
    weigh = _WEIGH_AND_WRITE if on_card else _WEIGH
    grams = found.finished_g
    if found.weighed:
        share = percent(found.yield_fraction.likely)
        return (
            f"Finished batch, as weighed: {format_mass_g(grams.likely)}, {share} of the raw meat."
        )
    low, high = (format_mass_g(end) for end in (grams.low, grams.high))
    if below_solids(found):
        return (
            "The yield the recipe states is below the batch's own dry solids. Figured at the "
            f"solids: about {format_mass_g(grams.likely)}. {weigh}"
        )
    own = found.facts.own_yield
    if own is not None:
        many = "batch" if own.batches == 1 else f"{own.batches} batches"
        ends = f"{100 * found.yield_fraction.low:.0f}-{100 * found.yield_fraction.high:.0f}"
        return (
            f"Finished batch: about {format_mass_g(grams.likely)} ({low} to {high}). From your "
            f"{many}: {percent(found.yield_fraction.likely)} of the raw meat, {ends}."
        )
    shares = f"{percent(found.yield_fraction.low)} to {percent(found.yield_fraction.high)}"
    return (
        f"Finished batch: about {format_mass_g(grams.likely)} ({low} to {high}, "
        f"{shares} of the raw meat).{_activity_words(found)} {weigh}"
    )


def _activity_words(found: Estimate) -> str:
    """Return what to think of a finish by water activity; nothing for the others."""
    finish = found.facts.finish
    if finish is None or finish.by is not FinishBy.WATER_ACTIVITY:
        return ""
    stated = finish.written or f"{finish.value[1]:.2f}"
    return (
        f" That is where its water activity is reckoned to be {stated}: an estimate, which "
        "measures nothing and is no test of keeping."
    )


def below_solids(found: Estimate) -> bool:
    """Whether the recipe states a yield that even a bone-dry batch would be above."""
    finish = found.facts.finish
    if finish is None or finish.by is not FinishBy.YIELD or found.weighed:
        return False
    return found.yield_fraction.low > finish.value[2]


def temperature_words(ends: tuple[float, float]) -> str:
    """Return a temperature or a span of them [°F] in both scales."""
    fahrenheit = "-".join(dict.fromkeys(f"{end:.0f}" for end in ends))
    celsius = "-".join(dict.fromkeys(f"{(end - 32) / 1.8:.0f}" for end in ends))
    return f"{fahrenheit} °F ({celsius} °C)"


def soak_place(soak: Soak) -> str:
    """Return where the meat soaks; a warm soak is never told as one in the refrigerator."""
    if soak.temperature_f is None:
        return "in the refrigerator"
    at = f"at {temperature_words(soak.temperature_f)}"
    cold = round(soak.temperature_f[1], 1) <= limit("cold-store", "refrigerator")
    return f"in the refrigerator {at}" if cold else at


def _held(what: str, names: str) -> str:
    """Return an allergen with what holds it; a fish that holds itself is named once."""
    return what if what.endswith(f"({names})") else f"{what} ({names})"


def _all_of(allergens: tuple[str, ...]) -> str:
    return "all nine" if len(allergens) >= _MAJOR_ALLERGENS else ", ".join(allergens)
