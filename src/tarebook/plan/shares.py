"""What each of several loads takes of the marinade, and its own weighed curing salt."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from tarebook.figures.spoken import spoken
from tarebook.plan.trays import Load
from tarebook.quantities.words import format_mass_g, format_pounds
from tarebook.safety.cure import too_little_to_weigh
from tarebook.safety.curing import STEP_G, Cure, cure_of, guard, round_down_cure_g
from tarebook.scaling import ScaledRecipe
from tarebook.tuples import NamedTuple


class Share(NamedTuple):
    """What one load takes.

    Attributes:
        meat_g: raw meat of the load [g].
        part: its meat over that of all loads [-].
        cures: its curing salts as they are weighed, rounded down; empty where there are none. One
            that is too little for the scale weighs nothing: it is left out.
        nitrite_ppm: sodium nitrite going in, all counted as absorbed [ppm of its raw meat].
        doses_g: what each curing salt would be, exact [g].
        step_g: the step that the scale shows [g].
    """

    meat_g: float
    part: float
    cures: tuple[Cure, ...] = ()
    nitrite_ppm: float = 0.0
    doses_g: tuple[Fraction, ...] = ()
    step_g: Fraction = STEP_G

    @property
    def percent(self) -> str:
        """Its part of what is mixed, by weight: ``73 %``."""
        return f"{self.part:.0%}".replace("%", " %")

    @property
    def cured(self) -> bool:
        """Whether any curing salt is weighed for it."""
        return any(one.mass_g for one in self.cures)

    @property
    def left_out(self) -> str:
        """What is left out of this load, too little for the scale; or nothing."""
        return "; ".join(
            left_out_words(f"{spoken(one.name)} in this load", dose_g, self.step_g)
            for one, dose_g in zip(self.cures, self.doses_g, strict=True)
            if not one.mass_g
        )

    @property
    def cure_words(self) -> str:
        """What is weighed for this load: ``1.6 g of curing salt 1 for 1 lb 10.2 oz (743 g) ...``"""
        amounts = " and ".join(
            f"{float(one.mass_g):.1f} g of {spoken(one.name)}" for one in self.cures if one.mass_g
        )
        meat = f"{format_pounds(self.meat_g)} ({format_mass_g(self.meat_g)})"
        return f"{amounts} for {meat} of it, rounded down: {self.nitrite_ppm:,.0f} ppm of nitrite"


def left_out_words(what: str, dose_g: Fraction, step_g: Fraction) -> str:
    """Return that a dose of curing salt is left out, and why.

    Example:
        >>> left_out_words("curing salt in it", Fraction(1, 7), Fraction(1, 10))
        'no curing salt in it: 0.14 g is too little to weigh on a scale that shows 0.1 g'
    """
    return (
        f"no {what}: {float(dose_g):.2g} g is too little to weigh on a scale that shows "
        f"{float(step_g):g} g"
    )


def shares_of(
    scaled: ScaledRecipe, loads: Sequence[Load], step_g: Fraction | None = None
) -> tuple[Share, ...]:
    """Return what each load takes, each held to the limit by itself.

    Nobody can part a bowl that has its curing salt in it by eye, so each load's own is weighed, for
    that load's meat; rounded down, no load takes in more than the whole batch would. What is too
    little for the scale is left out: one step too many would be far more than was meant.

    Args:
        scaled: the recipe at today's size.
        loads: what dries together.
        step_g: the step that the scale shows [g]; where it is not known, the finest of kitchens.

    Raises:
        CureRefused: a load would take in more than is printed.
    """
    whole_g = sum(load.meat_g for load in loads)
    return tuple(_share(scaled, load.meat_g, whole_g, step_g or STEP_G) for load in loads)


def _share(scaled: ScaledRecipe, meat_g: float, whole_g: float, step_g: Fraction) -> Share:
    exact_g = Fraction(meat_g)
    part = exact_g / scaled.meat_mass_g
    salts = [cure_of(one) for one in scaled.ingredients if one.food.curing]
    doses_g = tuple(one.mass_g * part for one in salts)
    cures = tuple(
        one._replace(mass_g=_weighed_g(dose_g, step_g))
        for one, dose_g in zip(salts, doses_g, strict=True)
    )
    return Share(
        meat_g=meat_g,
        part=meat_g / whole_g,
        cures=cures,
        nitrite_ppm=float(guard(cures, exact_g)) if cures else 0.0,
        doses_g=doses_g,
        step_g=step_g,
    )


def _weighed_g(dose_g: Fraction, step_g: Fraction) -> Fraction:
    return Fraction(0) if too_little_to_weigh(dose_g, step_g) else round_down_cure_g(dose_g)
