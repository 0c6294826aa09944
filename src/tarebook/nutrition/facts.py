"""What is known of a batch before it is dried: the recipe at today's size, and any weighing."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from tarebook.figures.nutrients import values
from tarebook.findings import QuantityError
from tarebook.nutrition.makeup import Makeup, makeup
from tarebook.recipe.model import (
    Finish,
    FinishBy,
    HeatStep,
    Ingredient,
    Panel,
    Part,
    Recipe,
    Surface,
)
from tarebook.scaling import ScaledIngredient, ScaledRecipe
from tarebook.scaling.volume_and_mass import salt_mass_bounds
from tarebook.tuples import NamedTuple

_MOISTURE_FOODS = frozenset({"fresh", "other", "starch"})


class Line(NamedTuple):
    """One ingredient as the model sees it: so many grams of a makeup.

    Attributes:
        name: as the recipe writes it, a second one of that name numbered: draws of measuring go
            by this name, and each spoon is off by its own.
        food: key of the food.
        mass_g: what will really be measured [g].
        doubt: relative standard deviation of that mass [-].
        makeup: what one gram brings.
        part: marinade, rub or mixed in.
        own: whose figures they are, where they are not those of the food: a bottle's, or those of
            the panel that stands in this line of the recipe; else empty.
    """

    name: str
    food: str
    mass_g: float
    doubt: float
    makeup: Makeup
    part: Part
    own: str = ""

    @property
    def figures_of(self) -> str:
        """Whose figures they are; draws of sodium and of a panel's sugars go by this name."""
        return self.own or self.food


class OwnYield(NamedTuple):
    """What a kitchen's own batches say of the yield of the next one.

    Attributes:
        middle: finished over raw weight [-].
        doubt: how far the kitchen's own mean may lie from it, relative, one sigma [-].
        chance: how far one batch lies from that mean, relative, one sigma [-].
        batches: how many there were.
        same_recipe: whether they were of this recipe.
    """

    middle: float
    doubt: float
    chance: float
    batches: int
    same_recipe: bool = True


class Facts(NamedTuple):
    """Everything the estimate starts from.

    Attributes:
        meat_mass_g: trimmed raw meat [g].
        meat: its figures per 100 g; None where not known.
        moisture_food: True where dryness is told by moisture (mushrooms), not by protein.
        lines: ingredients whose mass is known.
        missing: for each figure, names of ingredients (or the meat) that leave it "at least".
        no_sodium_total: names of bare salts without a weight; then sodium has no total at all.
        hours: low, likely, high hours in the marinade [h].
        thickness_mm: low, likely, high thickness of a piece [mm], or None if not stated.
        surface, heat, poured_away: as in the recipe.
        soak_c: low, likely, high temperature of the soak [degC], or None if not stated.
        finish: as in the recipe, or None for the usual.
        finished_g: weight of the finished batch on the scale [g], or None.
        soaked_g: weight of the meat after its soak, before any heat [g], or None.
        leftover_g: marinade left, with what the towels took up if they were weighed [g], or None.
        own_yield: what the kitchen's own batches say of this one, where it is not weighed yet.
    """

    meat_mass_g: float
    meat: Mapping[str, float | None]
    meat_name: str
    moisture_food: bool
    lines: tuple[Line, ...]
    missing: Mapping[str, tuple[str, ...]]
    no_sodium_total: tuple[str, ...]
    hours: tuple[float, float, float]
    thickness_mm: tuple[float, float, float] | None
    surface: Surface
    heat: HeatStep
    poured_away: bool
    finish: Finish | None
    finished_g: float | None = None
    soaked_g: float | None = None
    leftover_g: float | None = None
    soak_c: tuple[float, float, float] | None = None
    own_yield: OwnYield | None = None

    def has(self, part: Part) -> bool:
        """Whether any known ingredient goes into a part."""
        return any(line.part is part for line in self.lines)

    def finish_by(self) -> FinishBy:
        """What decides when the batch is dry enough, where it is not weighed."""
        if self.finish is not None:
            return self.finish.by
        return FinishBy.MOISTURE if self.moisture_food else FinishBy.MOISTURE_TO_PROTEIN

    def weighed(self, finished_g: float) -> Facts:
        """Return the same facts with the finished batch on the scale [g]."""
        return self._replace(finished_g=finished_g)


def facts_of(
    scaled: ScaledRecipe,
    *,
    finished_g: float | None = None,
    soaked_g: float | None = None,
    leftover_g: float | None = None,
    own_yield: OwnYield | None = None,
) -> Facts:
    """Return the facts of a scaled recipe.

    Args:
        scaled: the recipe for today's meat.
        finished_g: weight of the finished batch [g], if it was weighed.
        soaked_g: weight of the meat after its soak [g], if it was weighed.
        leftover_g: marinade left, towels included [g], if it was weighed.
        own_yield: what the kitchen's own batches say of this one.

    Returns:
        The facts, with every gap named.

    Raises:
        QuantityError: the recipe ends at a water activity, and how its food holds water is not
            known.
    """
    recipe = scaled.recipe
    _check_finish(recipe)
    meat = values(recipe.meat.food)
    known = [one for one in map(_bounded, scaled.ingredients) if one.mass is not None]
    return Facts(
        meat_mass_g=float(scaled.meat_mass_g),
        meat=meat,
        meat_name=recipe.meat.food,
        moisture_food=_dries_by_moisture(recipe),
        lines=_lines(known),
        missing=_missing(scaled, meat),
        no_sodium_total=tuple(one.ingredient.name for one in scaled.ingredients if _bare_salt(one)),
        hours=recipe.soak.hours,
        thickness_mm=recipe.meat.thickness_mm,
        surface=recipe.soak.surface,
        heat=recipe.heat,
        poured_away=recipe.soak.poured_away,
        finish=recipe.drying.finish,
        finished_g=finished_g,
        soaked_g=soaked_g,
        leftover_g=leftover_g,
        soak_c=_soak_c(recipe),
        own_yield=own_yield if finished_g is None else None,
    )


def _soak_c(recipe: Recipe) -> tuple[float, float, float] | None:
    stated = recipe.soak.temperature_f
    if stated is None:
        return None
    low, high = ((end - 32) / 1.8 for end in stated)
    return low, (low + high) / 2, high


def _check_finish(recipe: Recipe) -> None:
    """Refuse a water activity for what a swap has made of a recipe for meat."""
    finish = recipe.drying.finish
    aims = finish is not None and finish.by is FinishBy.WATER_ACTIVITY
    if aims and _dries_by_moisture(recipe):
        raise QuantityError(
            f"how {recipe.meat.food} holds water is not known here, so no water activity can be "
            "its end; state its moisture or yield instead"
        )


def _bounded(one: ScaledIngredient) -> ScaledIngredient:
    """Return plain salt by the spoon with its mass between bounds: it has no sodium total, but
    it does lie on the tray, and every figure of an ounce thins out by it."""
    if one.mass is None and one.food.crystal_unknown:
        return one._replace(mass=salt_mass_bounds(one.measure.exact))
    return one


def _dries_by_moisture(recipe: Recipe) -> bool:
    from tarebook.figures.foods import food

    return food(recipe.meat.food).kind in _MOISTURE_FOODS


def _lines(known: Iterable[ScaledIngredient]) -> tuple[Line, ...]:
    found: list[Line] = []
    named: dict[str, int] = {}
    for one in known:
        line = _line(one)
        named[line.name] = count = named.get(line.name, 0) + 1
        found.append(line if count == 1 else line._replace(name=f"{line.name} ({count})"))
    return tuple(found)


def _line(one: ScaledIngredient) -> Line:
    assert one.mass is not None
    middle = float(one.mass.middle_g)
    # A written range is taken for its 5 and 95 % points.
    written = float(one.mass.high_g - one.mass.low_g) / (2 * 1.645 * middle) if middle else 0.0
    return Line(
        name=one.ingredient.name,
        food=one.food.key,
        mass_g=middle,
        doubt=(one.mass.doubt**2 + written**2) ** 0.5,
        makeup=makeup(one.food.key, _panel(one.ingredient)),
        part=one.ingredient.part,
        own=_own(one.ingredient),
    )


def _panel(one: Ingredient) -> Panel | None:
    """Return its bottle's panel; of a bottle that has none, one that prints nothing."""
    return Panel() if one.panel is None and one.bottle is not None else one.panel


def _own(one: Ingredient) -> str:
    """Return whose figures a line has: its own panel's, its bottle's, or the food's (empty)."""
    if one.own_panel is not None:
        return one.name
    return "" if one.bottle is None else one.bottle.key


def _bare_salt(one: ScaledIngredient) -> bool:
    """Whether this is salt itself without a weight: by a spoon of unknown crystal, or to taste."""
    if one.mass is not None:
        return False
    holds_sodium = values(one.food.key)["sodium_mg"] != 0
    return one.food.crystal_unknown or (one.food.kind == "salt" and holds_sodium)


def _missing(scaled: ScaledRecipe, meat: Mapping[str, float | None]) -> dict[str, tuple[str, ...]]:
    gaps: dict[str, list[str]] = {}
    for figure, amount in meat.items():
        if amount is None:
            gaps.setdefault(figure, []).append(scaled.recipe.meat.food)
    for one in map(_bounded, scaled.ingredients):
        if one.mass is None:
            for figure in _figures_without_mass(one):
                gaps.setdefault(figure, []).append(one.ingredient.name)
            continue
        for figure in makeup(one.food.key, _panel(one.ingredient)).missing:
            gaps.setdefault(figure, []).append(one.ingredient.name)
    return {figure: tuple(names) for figure, names in gaps.items()}


def _figures_without_mass(one: ScaledIngredient) -> tuple[str, ...]:
    """Return the figures an unweighed ingredient could add to; those it has none of stay whole."""
    stated = values(one.food.key)
    found = [name for name, amount in stated.items() if amount is None or amount > 0]
    if "sugars_g" in found:
        found.append("added_sugars_g")
    return tuple(name for name in found if name not in ("water_g", "ash_g"))
