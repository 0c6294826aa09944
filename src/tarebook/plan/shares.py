"""What each of several loads takes of the marinade, and its own weighed curing salt."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from tarebook.plan.trays import Load
from tarebook.quantities.words import format_mass_g, format_pounds
from tarebook.safety.curing import Cure, cure_of, guard, round_down_cure_g
from tarebook.scaling import ScaledRecipe
from tarebook.tuples import NamedTuple


class Share(NamedTuple):
    """What one load takes.

    Attributes:
        meat_g: raw meat of the load [g].
        part: its meat over that of all loads [-].
        cures: its curing salts as they are weighed, rounded down; empty where there are none.
        nitrite_ppm: sodium nitrite going in, all counted as absorbed [ppm of its raw meat].
    """

    meat_g: float
    part: float
    cures: tuple[Cure, ...] = ()
    nitrite_ppm: float = 0.0

    @property
    def percent(self) -> str:
        """Its part of what is mixed, by weight: ``73 %``."""
        return f"{self.part:.0%}".replace("%", " %")

    @property
    def cure_words(self) -> str:
        """What is weighed for this load: ``1.6 g of curing salt 1 for 1 lb 10.2 oz (743 g) ...``"""
        amounts = " and ".join(
            f"{float(one.mass_g):.1f} g of {one.name.replace('-', ' ')}"
            if one.mass_g
            else f"no {one.name.replace('-', ' ')}, since it takes less than a scale shows"
            for one in self.cures
        )
        meat = f"{format_pounds(self.meat_g)} ({format_mass_g(self.meat_g)})"
        return f"{amounts} for {meat} of it, rounded down: {self.nitrite_ppm:,.0f} ppm of nitrite"


def shares_of(scaled: ScaledRecipe, loads: Sequence[Load]) -> tuple[Share, ...]:
    """Return what each load takes, each held to the limit by itself.

    Nobody can part a bowl that has its curing salt in it by eye, so each load's own is weighed, for
    that load's meat; rounded down, no load takes in more than the whole batch would.

    Args:
        scaled: the recipe at today's size.
        loads: what dries together.

    Raises:
        CureRefused: a load would take in more than is printed.
    """
    whole_g = sum(load.meat_g for load in loads)
    return tuple(_share(scaled, load.meat_g, whole_g) for load in loads)


def _share(scaled: ScaledRecipe, meat_g: float, whole_g: float) -> Share:
    exact_g = Fraction(meat_g)
    cures = tuple(
        _for_load(cure_of(one), exact_g / scaled.meat_mass_g)
        for one in scaled.ingredients
        if one.food.curing
    )
    ppm = float(guard(cures, exact_g)) if cures else 0.0
    return Share(meat_g=meat_g, part=meat_g / whole_g, cures=cures, nitrite_ppm=ppm)


def _for_load(cure: Cure, part: Fraction) -> Cure:
    return cure._replace(mass_g=round_down_cure_g(cure.mass_g * part))
