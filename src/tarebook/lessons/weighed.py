"""A batch of the book as a worksheet: its recipe as it was that day, its weights as they stand."""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction

from tarebook.cards.worksheet import Worksheet, worksheet
from tarebook.findings import QuantityError, RecipeFaulty
from tarebook.recipe.read import read_recipe
from tarebook.records.entry import THINGS, Batch
from tarebook.records.standing import Standing, standing_of

ENTRIES = " (entries "
"""Behind what is wrong with some weights, before the entries of all of them."""


def weighed(
    batch: Batch, *, drawer: str = "basic", a_day: Mapping[str, float] | None = None
) -> Worksheet:
    """Return everything that is known of a batch by now.

    Args:
        batch: as it stands in the book.
        drawer: name of the measuring set.
        a_day: the house's own figures for a day, where the cook set any.

    Raises:
        RecipeFaulty: its recipe cannot be read today.
        QuantityError: its weights cannot all be true; tells by how much, the likeliest slip, and
            which entries they stand in.
    """
    recipe, findings = read_recipe(batch.recipe_text, file=f"batch {batch.number}")
    if recipe is None:
        raise RecipeFaulty(findings)
    standing = standing_of(batch.entries)

    def grams(thing: str) -> float | None:
        found = standing.weight_g(thing)
        return None if found is None else float(found)

    raw = standing.weight_g("raw")
    leftover = grams("leftover")
    if leftover is not None:
        leftover += grams("towels") or 0.0
    try:
        return worksheet(
            recipe,
            meat_mass_g=Fraction(raw) if raw else None,
            drawer=drawer,
            finished_g=grams("finished"),
            soaked_g=grams("soaked"),
            leftover_g=leftover,
            a_day=a_day,
        )
    except QuantityError as fault:
        told = str(fault).replace("--soaked", "soaked").replace("--leftover", "leftover")
        raise QuantityError(told + _entries(batch.number, standing)) from None


def _entries(number: int, standing: Standing) -> str:
    """Return which entries the weights stand in, and how one of them is put right."""
    found = {thing: standing.weights[thing] for thing in THINGS if thing in standing.weights}
    if standing.start is not None and standing.start.value is not None:
        found.setdefault(THINGS[0], standing.start)
    found.pop("packed", None)
    if not found:
        return ""
    named = [f"{thing} {number}.{found[thing].number}" for thing in THINGS if thing in found]
    return f"{ENTRIES}{', '.join(named)}; tarebook batch edit ENTRY WEIGHT puts one right)"
