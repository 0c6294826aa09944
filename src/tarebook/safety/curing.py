"""Curing salts: how much nitrite goes in, and when nothing is printed.

"Ingoing" nitrite is counted on green weight, the raw trimmed meat before anything is added. All
functions take plain exact numbers, grams and percent, so that nothing is rounded before it is
compared.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from fractions import Fraction
from typing import TYPE_CHECKING

from tarebook.figures.spoken import spoken
from tarebook.findings import CureRefused, QuantityError
from tarebook.quantities.amount import Amount
from tarebook.quantities.units import Dimension, dimension, factor
from tarebook.tuples import NamedTuple

if TYPE_CHECKING:
    from tarebook.scaling import ScaledIngredient, ScaledRecipe

LIMIT_PPM = Fraction(156)
"""The most ingoing nitrite that is printed [ppm of green weight]; rule ``cure-guard``."""

STEP_G = Fraction(1, 10)
"""Curing salt is rounded down to this [g], what a kitchen scale for it can show."""

_MILLION = 1_000_000


class Cure(NamedTuple):
    """One weighed curing salt.

    Attributes:
        name: what the cook calls it.
        mass_g: how much [g].
        nitrite_percent: sodium nitrite in it [g per 100 g], or None where not stated.
        nitrate_percent: sodium nitrate in it [g per 100 g], or None where not stated.
    """

    name: str
    mass_g: Fraction
    nitrite_percent: Fraction | None
    nitrate_percent: Fraction | None = None


class CureReport(NamedTuple):
    """What a batch takes in by its curing salts, within the guard.

    Attributes:
        cures: every curing salt as it will be weighed.
        meat_mass_g: green weight [g].
        guard_ppm: sodium nitrite, all of it counted as absorbed [ppm of green weight].
    """

    cures: tuple[Cure, ...]
    meat_mass_g: Fraction
    guard_ppm: Fraction

    @property
    def nitrate(self) -> str:
        """What is known of nitrate: any that is known of is refused before this."""
        unknown = [spoken(cure.name) for cure in self.cures if cure.nitrate_percent is None]
        return f"not known of {' and '.join(unknown)}" if unknown else "none"

    def lines(self) -> tuple[str, ...]:
        """Return what a cook must read beside the weighed curing salt, one paragraph each."""
        return (
            f"Curing salt, weighed and rounded down: {_list_of(self.cures)}.",
            f"Sodium nitrite going in, all counted as absorbed: {_whole_ppm(self.guard_ppm)} ppm "
            f"of the raw meat; nothing is printed over {LIMIT_PPM} ppm.",
            f"Sodium nitrate going in: {self.nitrate}.",
        )


def nitrite_g(cures: Iterable[Cure]) -> Fraction:
    """Return the sodium nitrite in some curing salts together [g].

    Raises:
        CureRefused: the strength of one is not stated.
    """
    return sum((_nitrite_in(cure) for cure in cures), Fraction(0))


def all_absorbed_ppm(*, nitrite_g: Fraction, meat_mass_g: Fraction) -> Fraction:
    """Return ingoing nitrite where all of it stays with the meat: ground meat and dry rubs.

    Args:
        nitrite_g: sodium nitrite [g].
        meat_mass_g: green weight of the meat [g], above zero.

    Returns:
        Ingoing sodium nitrite [ppm of green weight].

    Raises:
        QuantityError: the meat does not weigh more than nothing.

    Source:
        Rules ``ingoing-ground`` and ``ingoing-rub``: FSIS calculations handbook, pp. 15 and 24.
    """
    return _parts_per_million(nitrite_g, meat_mass_g)


def immersion_one_ppm(
    *, nitrite_g: Fraction, pickle_g: Fraction, pick_up_fraction: Fraction
) -> Fraction:
    """Return ingoing nitrite of a short soak whose pick-up is known (method one).

    Args:
        nitrite_g: sodium nitrite in the liquid [g].
        pickle_g: the liquid, everything in it [g], above zero.
        pick_up_fraction: weight gained in the soak, over green weight [-].

    Source:
        Rule ``ingoing-immersion-one``: FSIS calculations handbook, before p. 22.
    """
    return _parts_per_million(nitrite_g * _share(pick_up_fraction), pickle_g)


def immersion_two_ppm(
    *, nitrite_g: Fraction, pickle_g: Fraction, meat_mass_g: Fraction
) -> Fraction:
    """Return ingoing nitrite of a long soak, where meat and liquid reach balance (method two).

    Args:
        nitrite_g: sodium nitrite in the liquid [g].
        pickle_g: the liquid, everything in it [g].
        meat_mass_g: green weight of the meat [g], above zero.

    Source:
        Rule ``ingoing-immersion-two``: FSIS calculations handbook, p. 22.
    """
    if pickle_g < 0:
        raise QuantityError("the liquid cannot weigh less than nothing")
    return _parts_per_million(nitrite_g, meat_mass_g + pickle_g)


def most_cure_g(*, meat_mass_g: Fraction, nitrite_percent: Fraction) -> Fraction:
    """Return the most of a curing salt that the guard lets through, rounded down to 0.1 g [g].

    Args:
        meat_mass_g: green weight of the meat [g], above zero.
        nitrite_percent: sodium nitrite in the curing salt [g per 100 g], above zero.
    """
    if meat_mass_g <= 0 or nitrite_percent <= 0:
        raise QuantityError("meat and strength must be above zero")
    return round_down_cure_g(LIMIT_PPM * meat_mass_g * 100 / (nitrite_percent * _MILLION))


def round_down_cure_g(mass_g: Fraction) -> Fraction:
    """Return a weight of curing salt rounded down to a tenth of a gram, never up [g].

    Example:
        >>> round_down_cure_g(Fraction("2.79"))
        Fraction(27, 10)
    """
    if mass_g < 0:
        raise QuantityError("curing salt cannot weigh less than nothing")
    return mass_g // STEP_G * STEP_G


def guard(cures: Sequence[Cure], meat_mass_g: Fraction) -> Fraction:
    """Return the ingoing nitrite of all curing salts together, or refuse.

    All of it is counted as absorbed, whatever the method: the lowest limit that could apply to
    strips is held against the highest figure that could be true.

    Args:
        cures: every curing salt of the batch, as weighed.
        meat_mass_g: green weight of the meat [g], above zero.

    Returns:
        Ingoing sodium nitrite [ppm of green weight], at most :data:`LIMIT_PPM`.

    Raises:
        CureRefused: over the limit, of unknown strength, or with any nitrate.
        QuantityError: the meat does not weigh more than nothing.
    """
    _refuse_nitrate(cures)
    ppm = all_absorbed_ppm(nitrite_g=nitrite_g(cures), meat_mass_g=meat_mass_g)
    if ppm > LIMIT_PPM:
        raise CureRefused(_too_much(cures, meat_mass_g, ppm), nitrite_ppm=float(ppm))
    return ppm


def guard_scaled(scaled: ScaledRecipe) -> CureReport | None:
    """Return what a scaled recipe takes in by its curing salts, or refuse; see :func:`guard`.

    The exact amounts must pass as well as the rounded ones, or a recipe over the limit would be
    printed at some sizes and refused at others.

    Args:
        scaled: the recipe at today's size, its curing salts already rounded down.

    Returns:
        The report, or None where the recipe has no curing salt.

    Raises:
        CureRefused: then nothing of the recipe may be printed.
    """
    salts = [one for one in scaled.ingredients if one.food.curing]
    if not salts:
        return None
    guard([cure_of(one, one.measure.exact) for one in salts], scaled.meat_mass_g)
    weighed = tuple(cure_of(one) for one in salts)
    ppm = guard(weighed, scaled.meat_mass_g)
    return CureReport(cures=weighed, meat_mass_g=scaled.meat_mass_g, guard_ppm=ppm)


def grams_of(name: str, amount: Amount) -> Fraction:
    """Return what an amount of curing salt weighs at most [g].

    Raises:
        CureRefused: it is not given by weight.
    """
    if amount.high is None or dimension(amount.unit) is not Dimension.MASS:
        raise CureRefused(f"{name}: a curing salt is given by weight, and only by weight")
    return amount.high * factor(amount.unit, "gram")


def cure_of(one: ScaledIngredient, exact: Amount | None = None) -> Cure:
    """Return a scaled curing salt as it will be weighed, or at an exact amount.

    Raises:
        CureRefused: nobody knows what it weighs.
    """
    name = one.ingredient.name
    if exact is not None:
        mass_g = grams_of(name, exact)
    elif one.mass is not None:
        mass_g = one.mass.high_g
    else:
        raise CureRefused(f"{name}: nobody knows what it weighs")
    return Cure(
        name=name,
        mass_g=mass_g,
        nitrite_percent=one.ingredient.strength_percent,
        nitrate_percent=one.food.nitrate_percent,
    )


def _nitrite_in(cure: Cure) -> Fraction:
    if cure.mass_g < 0:
        raise QuantityError(f"{cure.name} cannot weigh less than nothing")
    if cure.nitrite_percent is None:
        raise CureRefused(
            f"{cure.name}: its strength is not stated, and packs differ twelvefold; "
            "copy the percentage of sodium nitrite from the pack"
        )
    if not 0 < cure.nitrite_percent <= 100:
        raise CureRefused(
            f"{cure.name}: {float(cure.nitrite_percent):g} % sodium nitrite is no curing salt; "
            "copy the percentage from the pack"
        )
    return cure.mass_g * cure.nitrite_percent / 100


def _refuse_nitrate(cures: Iterable[Cure]) -> None:
    for cure in cures:
        if cure.nitrate_percent:
            raise CureRefused(
                f"{cure.name} holds nitrate, which is for dry cures of many weeks and for nothing "
                "dried within days; take a curing salt with nitrite alone"
            )


def _too_much(cures: Sequence[Cure], meat_mass_g: Fraction, ppm: Fraction) -> str:
    return (
        f"{_list_of(cures)} in {_grams(meat_mass_g)} g of meat is {_over_ppm(ppm)} ppm of sodium "
        f"nitrite if all of it is absorbed, and nothing is printed over {LIMIT_PPM} ppm: the "
        "lowest US limit that could apply to strips (9 CFR 424.21(c), ground meat, on raw "
        f"weight){_at_most(cures, meat_mass_g)}. A brine meant to leave part of its curing salt in "
        "the liquid is refused too: how much stays there hangs on hours, cut and weights that "
        "nobody has measured yet"
    )


def _at_most(cures: Sequence[Cure], meat_mass_g: Fraction) -> str:
    """Return what to weigh instead; with several curing salts there is no one answer."""
    if len(cures) != 1 or cures[0].nitrite_percent is None:
        return ""
    most = most_cure_g(meat_mass_g=meat_mass_g, nitrite_percent=cures[0].nitrite_percent)
    return f"; take at most {float(most):.1f} g"


def _list_of(cures: Sequence[Cure]) -> str:
    return " and ".join(
        f"{_grams(one.mass_g)} g of {spoken(one.name)} ({_strength(one.nitrite_percent)} nitrite)"
        for one in cures
    )


def _strength(percent: Fraction | None) -> str:
    return "unknown" if percent is None else f"{float(percent):g} %"


def _grams(mass_g: Fraction) -> str:
    return f"{float(mass_g):,.2f}".rstrip("0").rstrip(".")


def _whole_ppm(ppm: Fraction) -> str:
    """Return ppm in whole numbers, rounded up: what goes in is never understated."""
    return f"{-(-ppm // 1):,}"


def _over_ppm(ppm: Fraction) -> str:
    """Return ppm that is over the limit so that it reads as over it: 156.25, not 156."""
    return f"{float(-(-ppm * 100 // 1)) / 100:,.2f}".rstrip("0").rstrip(".")


def _share(fraction: Fraction) -> Fraction:
    if fraction < 0:
        raise QuantityError("a share taken up cannot be below zero")
    return fraction


def _parts_per_million(nitrite_g: Fraction, of_g: Fraction) -> Fraction:
    if of_g <= 0:
        raise QuantityError("the meat must weigh more than nothing")
    return nitrite_g * _MILLION / of_g
