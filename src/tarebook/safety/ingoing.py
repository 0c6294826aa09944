"""Ingoing nitrite by each published method, beside the guard that stands whatever the method."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from typing import TYPE_CHECKING

from tarebook.recipe.model import Part
from tarebook.safety.curing import (
    Cure,
    all_absorbed_ppm,
    cure_of,
    immersion_one_ppm,
    immersion_two_ppm,
    nitrite_g,
)
from tarebook.safety.rulebook import citations, limit
from tarebook.tuples import NamedTuple

if TYPE_CHECKING:
    from tarebook.scaling import ScaledIngredient, ScaledRecipe

_ABSORBED = {
    Part.RUB: ("rubbed on, all counted", "ingoing-rub"),
    Part.MIXED_IN: ("mixed in, all counted", "ingoing-ground"),
}


class Ingoing(NamedTuple):
    """What one published method makes of the curing salts of one part.

    Attributes:
        method: in words.
        ppm: sodium nitrite [ppm of green weight], or None where it cannot be told.
        missing: what would have to be known; empty where ``ppm`` is.
        cites: id of its rule.
    """

    method: str
    ppm: Fraction | None
    missing: str
    cites: str

    def __str__(self) -> str:
        told = self.missing if self.ppm is None else f"{float(self.ppm):,.0f} ppm"
        return f"{self.method}: {told} [{citations(self.cites)}]"


def ingoing(scaled: ScaledRecipe, *, soaked_g: float | None = None) -> tuple[Ingoing, ...]:
    """Return ingoing nitrite by the methods that fit where the curing salts go in.

    Args:
        scaled: the recipe at today's size, its curing salts rounded down.
        soaked_g: weight of the meat after its soak [g], if it was weighed: the pick-up of the
            short soak comes from it and from nothing else.

    Returns:
        A figure for each part that holds curing salt, two for a soak; none without any.

    Source:
        FSIS calculations handbook: rules ``ingoing-rub``, ``ingoing-ground``,
        ``ingoing-immersion-one`` and ``ingoing-immersion-two``.
    """
    found: list[Ingoing] = []
    for part in Part:
        held = [one for one in scaled.ingredients if one.ingredient.part is part]
        cures = [cure_of(one) for one in held if one.food.curing]
        if cures:
            found += _of_part(part, cures, held, scaled, soaked_g)
    return tuple(found)


def too_little(ppm: Fraction) -> str:
    """Return what is published of so little nitrite, or nothing where it is not little.

    Args:
        ppm: ingoing sodium nitrite, all counted as absorbed [ppm of green weight].

    Source:
        Rule ``nitrite-floor``: FSIS calculations handbook, p. 12.
    """
    refrigerated = limit("nitrite-floor", "refrigerated")
    if ppm >= refrigerated:
        return ""
    some = limit("nitrite-floor", "some-effect")
    lead = (
        f"under {refrigerated:g} ppm, the floor for cured products that are kept refrigerated; "
        "none is published for shelf-stable ones"
    )
    if ppm >= some:
        return lead
    return f"{lead}; and under {some:g} ppm, where some preserving effect begins"


def _of_part(
    part: Part,
    cures: list[Cure],
    held: list[ScaledIngredient],
    scaled: ScaledRecipe,
    soaked_g: float | None,
) -> Iterator[Ingoing]:
    nitrite = nitrite_g(cures)
    if part in _ABSORBED:
        method, cites = _ABSORBED[part]
        ppm = all_absorbed_ppm(nitrite_g=nitrite, meat_mass_g=scaled.meat_mass_g)
        yield Ingoing(method, ppm, "", cites)
        return
    unknown = [one.ingredient.name for one in held if one.mass is None]
    pickle_g = sum((one.mass.middle_g for one in held if one.mass is not None), Fraction(0))
    yield _short_soak(nitrite, pickle_g, unknown, scaled.meat_mass_g, soaked_g)
    two = "soaked long, balance of meat and liquid"
    if unknown:
        yield Ingoing(two, None, _no_weight(unknown), "ingoing-immersion-two")
        return
    ppm = immersion_two_ppm(nitrite_g=nitrite, pickle_g=pickle_g, meat_mass_g=scaled.meat_mass_g)
    yield Ingoing(two, ppm, "", "ingoing-immersion-two")


def _short_soak(
    nitrite: Fraction,
    pickle_g: Fraction,
    unknown: list[str],
    meat_mass_g: Fraction,
    soaked_g: float | None,
) -> Ingoing:
    method, cites = "soaked briefly, by the weight gained", "ingoing-immersion-one"
    if unknown:
        return Ingoing(method, None, _no_weight(unknown), cites)
    if soaked_g is None:
        return Ingoing(method, None, "needs the meat weighed after its soak", cites)
    gained = max(Fraction(soaked_g) / meat_mass_g - 1, Fraction(0))
    ppm = immersion_one_ppm(nitrite_g=nitrite, pickle_g=pickle_g, pick_up_fraction=gained)
    return Ingoing(method, ppm, "", cites)


def _no_weight(names: list[str]) -> str:
    return f"{' and '.join(names)} has no weight"
