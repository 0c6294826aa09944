"""What a rule looks at: a recipe at one size, and what is dried in it."""

from __future__ import annotations

from enum import StrEnum
from fractions import Fraction

from tarebook.figures.foods import Food, food
from tarebook.findings import Finding, Place, Severity
from tarebook.recipe.model import FinishBy, HeatStep, Ingredient, MeatForm, Part, Recipe
from tarebook.safety.rulebook import air_words, degrees, foods_of, limit, span
from tarebook.tuples import NamedTuple

MM_PER_INCH = 25.4
_DIAL = 0.05  # [degF] what the way from Celsius may take off
_NEARLY = 1e-6  # a quarter inch that went through floats is still a quarter inch


class Animal(StrEnum):
    """What is dried, as far as the rules tell kinds apart."""

    MEAT = "meat"
    DEER = "deer and their kin"
    PORK = "pork"
    WILD_PORK = "wild pork"
    BEAR = "bear"
    POULTRY = "poultry"
    FISH = "fish"
    MUSHROOM = "mushrooms"
    OTHER = "this food"


_GROUPS = {
    "venison": Animal.DEER,
    "pork": Animal.PORK,
    "wild-boar": Animal.WILD_PORK,
    "bear": Animal.BEAR,
    "poultry": Animal.POULTRY,
    "fish": Animal.FISH,
    "mushroom": Animal.MUSHROOM,
}
_HOTTER = frozenset({Animal.POULTRY, Animal.BEAR, Animal.WILD_PORK})
_HEATED_FIRST = frozenset({HeatStep.SIMMERED, HeatStep.STEAMED, HeatStep.BOILED_DOWN})
_NO_MEAT = frozenset({Animal.FISH, Animal.MUSHROOM, Animal.OTHER})


class Case(NamedTuple):
    """A recipe at one size, with what the rules ask about it.

    Attributes:
        recipe: as written.
        food: what is dried.
        animal: its kind.
        foods: the food of each ingredient, in the recipe's order.
        ground: whether it is ground, by its form or by the food itself.
        factor: today's meat over the recipe's [-]; 1 for the recipe as written.
        sodium_mg_per_oz: high end of sodium in a finished ounce [mg/oz], or None.
        vacuum_packed: whether it will be packed without air.
        moisture_to_protein: likely water over protein of the weighed batch [-], or None.
        yield_fraction: weighed finished batch over raw meat [-], or None.
        dryer_top_f: hottest that the dryer in the house goes [degF], or None where not known.
        dryer_settable: whether its heat can be set, or None where not known.
        dryer_low_f: coolest that the dryer or oven in the house goes [degF], or None.
        scale_g: step that the scale in the house shows [g], or None where not known.
    """

    recipe: Recipe
    food: Food
    animal: Animal
    foods: tuple[Food, ...]
    ground: bool
    factor: Fraction = Fraction(1)
    sodium_mg_per_oz: float | None = None
    vacuum_packed: bool = False
    moisture_to_protein: float | None = None
    yield_fraction: float | None = None
    dryer_top_f: float | None = None
    dryer_settable: bool | None = None
    dryer_low_f: float | None = None
    scale_g: Fraction | None = None

    @classmethod
    def of(
        cls,
        recipe: Recipe,
        *,
        factor: Fraction = Fraction(1),
        sodium_mg_per_oz: float | None = None,
        vacuum_packed: bool = False,
        moisture_to_protein: float | None = None,
        yield_fraction: float | None = None,
    ) -> Case:
        """Return the case of a recipe.

        Args:
            recipe: as read.
            factor: today's meat over the recipe's [-].
            sodium_mg_per_oz: high end of sodium in a finished ounce [mg/oz], or None.
            vacuum_packed: whether it will be packed without air.
            moisture_to_protein: likely water over protein of the weighed batch [-], or None.
            yield_fraction: weighed finished batch over raw meat [-], or None.

        Raises:
            FoodUnknown: the recipe names a food that the tables do not have.
        """
        dried = food(recipe.meat.food)
        return cls(
            recipe=recipe,
            food=dried,
            animal=_animal(dried, recipe.meat.wild),
            foods=tuple(food(one.food) for one in recipe.ingredients),
            ground=recipe.meat.form is MeatForm.GROUND or "ground" in dried.key.split("-"),
            factor=factor,
            sodium_mg_per_oz=sodium_mg_per_oz,
            vacuum_packed=vacuum_packed,
            moisture_to_protein=moisture_to_protein,
            yield_fraction=yield_fraction,
        )

    @property
    def is_meat(self) -> bool:
        """Whether the published rules on dried meat and poultry are about it."""
        return self.animal not in _NO_MEAT

    @property
    def is_flesh(self) -> bool:
        """Whether it is raw meat, poultry or fish, whose juices carry germs."""
        return self.is_meat or self.animal is Animal.FISH

    @property
    def soaked(self) -> bool:
        """Whether anything is put on it as a marinade."""
        return any(one.part is Part.MARINADE for one in self.recipe.ingredients)

    @property
    def rubbed(self) -> bool:
        """Whether it is rubbed, so that it rests and lets liquid run."""
        return any(one.part is Part.RUB for one in self.recipe.ingredients)

    @property
    def cures(self) -> tuple[tuple[Ingredient, Food], ...]:
        """Every curing salt with its food."""
        pairs = zip(self.recipe.ingredients, self.foods, strict=True)
        return tuple((one, item) for one, item in pairs if item.curing)

    @property
    def inside(self) -> str:
        """The temperature to reach inside, in both scales."""
        return degrees(*self.inside_rule)

    @property
    def inside_rule(self) -> tuple[str, str]:
        """The rule and the figure of it that say how hot it must get inside."""
        if self.animal is Animal.POULTRY:
            return "heat-before", "poultry-inside"
        if self.animal is Animal.FISH:
            return "fish-smoked", "fish-inside"
        if self.hotter:
            return "game-165", "meat-inside"
        return "heat-before", "meat-inside"

    @property
    def hotter(self) -> bool:
        """Whether 165 degF is asked of it in place of 160."""
        return self.animal in _HOTTER

    @property
    def heated_first(self) -> bool:
        """Whether the recipe heats it before it dries."""
        return self.recipe.heat in _HEATED_FIRST

    @property
    def too_thick(self) -> bool:
        """Whether a piece is thicker than the published times are for."""
        stated = self.recipe.meat.thickness_mm
        most_mm = limit("thickness-quarter-inch", "thickness") * MM_PER_INCH
        return stated is not None and stated[2] > most_mm + _NEARLY

    @property
    def not_for_oven_after(self) -> str:
        """Why heating in the oven after drying is not published for it; empty where it is."""
        if self.hotter or not self.is_meat:
            return self.animal.value
        if self.ground:
            return "ground meat"
        if self.recipe.meat.form is not MeatForm.STRIPS:
            return "pieces that are not strips"
        if self.recipe.meat.thickness_mm is None:
            return "strips of unstated thickness"
        return "thicker strips" if self.too_thick else ""

    @property
    def air_f(self) -> tuple[float, float] | None:
        """What it dries in, as near as the house comes to it [degF]; None where nobody said."""
        low, high = self.dryer_low_f, self.dryer_top_f
        stated = self.recipe.drying.temperature_f
        if stated is None:
            if low is None and high is None:
                return None
            stated = span("oven-after", "dryer-air")
        ends = [end if low is None else max(end, low) for end in stated]
        cool, hot = (end if high is None else min(end, high) for end in ends)
        return cool, hot

    @property
    def air_not_for_oven_after(self) -> str:
        """Air that the oven after drying is not published with; empty where it is, or not known."""
        air = self.air_f
        if air is None:
            return ""
        low, high = span("oven-after", "dryer-air")
        held = low - _DIAL <= air[0] and air[1] <= high + _DIAL
        return "" if held else f"air of {air_words(air)}"

    @property
    def oven_after_refusal(self) -> str:
        """Why the oven after drying may not be had here; empty where it may."""
        return self.not_for_oven_after or self.air_not_for_oven_after

    @property
    def heat_holds(self) -> bool:
        """Whether the recipe has a heat step that some body publishes for such meat."""
        after = self.recipe.heat is HeatStep.OVEN_AFTER and not self.not_for_oven_after
        return self.is_meat and (self.heated_first or after)

    @property
    def too_moist(self) -> bool:
        """Whether the recipe's own finish is wetter than what goes by the name of jerky."""
        finish = self.recipe.drying.finish
        if finish is None:
            return False
        likely = finish.value[1]
        if finish.by is FinishBy.MOISTURE_TO_PROTEIN:
            return likely > limit("too-moist", "moisture-to-protein")
        if finish.by is FinishBy.WATER_ACTIVITY:
            return likely > limit("dry-air-pack", "water-activity") + _NEARLY
        quantity = "yield" if finish.by is FinishBy.YIELD else "moisture"
        return likely * 100 > limit("too-moist", quantity) + _NEARLY

    @property
    def weighed_too_moist(self) -> bool:
        """Whether the finished batch, put on the scale, is wetter than jerky goes by.

        Its yield speaks only where its protein is not known: what a marinade leaves weighs too.
        """
        if self.moisture_to_protein is not None:
            return self.moisture_to_protein > limit("too-moist", "moisture-to-protein") + _NEARLY
        if self.yield_fraction is None:
            return False
        return self.yield_fraction * 100 > limit("too-moist", "yield") + _NEARLY

    @property
    def maybe_game(self) -> bool:
        """Whether it is a land animal that was hunted, or may have been."""
        return self.is_meat and self.recipe.meat.wild is not False

    def holds(self, rule: str) -> tuple[Ingredient, ...]:
        """Return the ingredients that a rule is about by name."""
        named = foods_of(rule)
        return tuple(one for one in self.recipe.ingredients if one.food in named)

    def warn(self, code: str, says: str, do: str, *, cites: str, path: str = "") -> Finding:
        """Return a warning: what is wrong or dangerous, and what to do."""
        return self.finding(Severity.WARNING, code, says, do, cites=cites, path=path)

    def note(self, code: str, says: str, do: str, *, cites: str, path: str = "") -> Finding:
        """Return a note: what is good to know, and what to do."""
        return self.finding(Severity.NOTE, code, says, do, cites=cites, path=path)

    def finding(
        self, severity: Severity, code: str, says: str, do: str, *, cites: str, path: str = ""
    ) -> Finding:
        """Return a finding of this case; its line is looked up only when it is reported.

        Args:
            severity: how much it matters.
            code: short and stable; ``caution.TITLES`` has a title for it.
            says: what is so, a clause without capital or stop.
            do: what to do, likewise.
            cites: id of the rule it stands on, or several joined by ``; ``.
            path: key path in the recipe, empty where it is about no line of it.
        """
        place = Place(file=self.recipe.file, path=path)
        return Finding(
            place=place, severity=severity, code=code, message=says, hint=do, cites=cites
        )


def _animal(dried: Food, wild: bool | None) -> Animal:
    known = _GROUPS.get(dried.species_group)
    if known is Animal.PORK and wild:
        return Animal.WILD_PORK
    if known is not None:
        return known
    if dried.kind == "fish":
        return Animal.FISH
    return Animal.MEAT if dried.species_group else Animal.OTHER
