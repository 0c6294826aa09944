"""Everything about one recipe at one size, gathered from the rooms below."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from fractions import Fraction
from typing import TYPE_CHECKING

from tarebook.figures.foods import Food, food
from tarebook.nutrition import Estimate, Ounce, estimate, facts_of
from tarebook.nutrition.facts import OwnYield
from tarebook.quantities.drawer import Drawer, choose_drawer
from tarebook.recipe.model import Ingredient, Recipe
from tarebook.safety import Case, Caution, KeepBy, cautions, keep_by
from tarebook.safety.curing import CureReport, guard_scaled
from tarebook.scaling import ScaledRecipe, scale_by_factor, scale_to_meat
from tarebook.tuples import NamedTuple

if TYPE_CHECKING:
    from tarebook.nutrition.a_day import OfADay
    from tarebook.safety.ingoing import Ingoing


class Allergens(NamedTuple):
    """Major allergens by the kinds of ingredient, and packs to read.

    Attributes:
        contains: allergen -> names of ingredients that bring it.
        check: allergen -> names of ingredients whose pack may list it.
        elsewhere: what other countries list (mollusc, barley, mustard) -> names.
    """

    contains: dict[str, tuple[str, ...]]
    check: dict[str, tuple[str, ...]]
    elsewhere: dict[str, tuple[str, ...]]

    def packs(self) -> dict[str, tuple[str, ...]]:
        """Return each ingredient whose pack to read, with what to look for."""
        names = dict.fromkeys(name for found in self.check.values() for name in found)
        return {
            name: tuple(what for what, found in self.check.items() if name in found)
            for name in names
        }


class Worksheet(NamedTuple):
    """One recipe at one size, with all that is known of it.

    Attributes:
        scaled: what to measure.
        estimate: figures per finished ounce and per batch.
        cautions: every caution that applies, gravest first.
        keep_by: how long it keeps, or why no date is given.
        allergens: from the ingredients and the meat.
        cure: ingoing nitrite, or None where there is no curing salt.
        drawer: the measuring set the scoops are for.
        case: what the rules looked at.
        ingoing: ingoing nitrite by each published method; empty without curing salt.
        of_a_day: an ounce held against the house's own figures for a day; empty without any.
    """

    scaled: ScaledRecipe
    estimate: Estimate
    cautions: tuple[Caution, ...]
    keep_by: KeepBy
    allergens: Allergens
    cure: CureReport | None
    drawer: Drawer
    case: Case
    ingoing: tuple[Ingoing, ...] = ()
    of_a_day: tuple[OfADay, ...] = ()

    @property
    def recipe(self) -> Recipe:
        """The recipe as written."""
        return self.scaled.recipe


def worksheet(
    recipe: Recipe,
    *,
    meat_mass_g: Fraction | None = None,
    factor: Fraction | None = None,
    drawer: str = "basic",
    ounce: Ounce = Ounce.AVOIRDUPOIS,
    finished_g: float | None = None,
    soaked_g: float | None = None,
    leftover_g: float | None = None,
    own_yield: OwnYield | None = None,
    dryer_top_f: float | None = None,
    dryer_settable: bool | None = None,
    dryer_low_f: float | None = None,
    scale_g: Fraction | None = None,
    a_day: Mapping[str, float] | None = None,
) -> Worksheet:
    """Return everything about a recipe for today's meat.

    Args:
        recipe: as read.
        meat_mass_g: today's trimmed raw meat [g]; the recipe's own where neither is given.
        factor: how many times the recipe instead [-].
        drawer: name of the measuring set.
        ounce: which ounce the figures are for.
        finished_g: weight of the finished batch, if it was weighed [g].
        soaked_g: weight of the meat after its soak, if it was weighed [g].
        leftover_g: marinade left, towels included, if it was weighed [g].
        own_yield: what the kitchen's own batches say of this one.
        dryer_top_f: hottest that the dryer in the house goes [degF], where that is known.
        dryer_settable: whether its heat can be set, where that is known.
        dryer_low_f: coolest that the dryer or oven in the house goes [degF], where that is known.
        scale_g: step that the scale in the house shows [g], where that is known.
        a_day: the house's own figures for a day, where the cook set any.

    Returns:
        The worksheet.

    Raises:
        CureRefused: curing salt beyond what is printed; then nothing of the recipe is.
        QuantityError: a weight or factor outside where it means anything.
    """
    tools = choose_drawer(drawer)
    if factor is not None:
        scaled = scale_by_factor(recipe, factor, tools)
    else:
        scaled = scale_to_meat(recipe, meat_mass_g or recipe.meat.mass_g, tools)
    cure = guard_scaled(scaled)
    facts = facts_of(
        scaled,
        finished_g=finished_g,
        soaked_g=soaked_g,
        leftover_g=leftover_g,
        own_yield=own_yield,
    )
    figures = estimate(facts, ounce=ounce)
    sodium = figures.per_ounce["sodium_mg"]
    case = Case.of(
        recipe,
        factor=scaled.factor,
        sodium_mg_per_oz=None if sodium is None else sodium.high,
        moisture_to_protein=_moisture_to_protein(figures),
        yield_fraction=figures.yield_fraction.likely if figures.weighed else None,
    )._replace(
        dryer_top_f=dryer_top_f,
        dryer_settable=dryer_settable,
        dryer_low_f=dryer_low_f,
        scale_g=scale_g,
    )
    return Worksheet(
        scaled=scaled,
        estimate=figures,
        cautions=cautions(case),
        keep_by=keep_by(case),
        allergens=allergens_of(recipe),
        cure=cure,
        drawer=tools,
        case=case,
        ingoing=_by_method(scaled, soaked_g) if cure else (),
        of_a_day=_of_a_day(figures, a_day) if a_day else (),
    )


def _by_method(scaled: ScaledRecipe, soaked_g: float | None) -> tuple[Ingoing, ...]:
    from tarebook.safety.ingoing import ingoing

    return ingoing(scaled, soaked_g=soaked_g)


def _of_a_day(figures: Estimate, a_day: Mapping[str, float]) -> tuple[OfADay, ...]:
    from tarebook.nutrition.a_day import of_a_day

    return of_a_day(figures, a_day)


def allergens_of(recipe: Recipe) -> Allergens:
    """Return the major allergens of a recipe by kind of ingredient; the pack always wins."""
    named = [(recipe.meat.food, food(recipe.meat.food))]
    named += [(one.name, _as_on_pack(one)) for one in recipe.ingredients]
    contains = _gather(named, "allergens")
    check = _gather(named, "check_for")
    return Allergens(
        contains=contains,
        check={what: names for what, names in check.items() if what not in contains},
        elsewhere=_gather(named, "other_allergens"),
    )


def _as_on_pack(one: Ingredient) -> Food:
    """Return an ingredient's food with the allergens that its own bottle lists, if it lists any."""
    item, bottle = food(one.food), one.bottle
    if bottle is None or bottle.contains is None:
        return item
    return item._replace(allergens=bottle.contains, check_for=bottle.check)


def _moisture_to_protein(figures: Estimate) -> float | None:
    """Return water over protein of a weighed batch [-]; an unweighed one is not yet known."""
    protein = figures.per_ounce["protein_g"]
    if not figures.weighed or protein is None or protein.likely <= 0:
        return None
    return figures.moisture_fraction.likely * figures.ounce.grams / protein.likely


def _gather(named: Iterable[tuple[str, Food]], field: str) -> dict[str, tuple[str, ...]]:
    found: dict[str, list[str]] = {}
    for name, item in named:
        for allergen in getattr(item, field):
            found.setdefault(allergen, []).append(name)
    return {allergen: tuple(dict.fromkeys(names)) for allergen, names in found.items()}
