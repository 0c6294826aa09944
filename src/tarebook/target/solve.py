"""The least of a change that reaches a goal: in exact grams, and in what the drawer measures."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from tarebook.figures.foods import Food, food
from tarebook.figures.measures import density
from tarebook.figures.nutrients import values
from tarebook.figures.working import value
from tarebook.nutrition import Estimate, Ounce, estimate, facts_of
from tarebook.nutrition.facts import Line
from tarebook.nutrition.makeup import SODIUM_IN_SALT
from tarebook.quantities.drawer import Drawer
from tarebook.recipe.model import Ingredient, Part, Recipe
from tarebook.safety.curing import guard_scaled
from tarebook.scaling import ScaledRecipe, scale_by_factor
from tarebook.scaling.by_meat_weight import bottle_density
from tarebook.scaling.volume_and_mass import mass_of
from tarebook.target.changes import CHANGES, LOW_SODIUM, Change, both
from tarebook.target.goal import Goal
from tarebook.target.own_bottles import KEY as OWN_BOTTLE
from tarebook.target.own_bottles import own_bottle_change
from tarebook.tuples import NamedTuple

_HALVINGS = 24
_SYRUP_G = 10  # [g of water per 100 g]: brown sugar has under 2, honey 17
_STEPS = 64  # how finely a share is tried once it has to fit the drawer


class Answer(NamedTuple):
    """A changed recipe at today's size, with what it holds.

    Attributes:
        share: of the change, 0 to 1 [-].
        scaled: what to measure.
        estimate: what an ounce and the batch then hold.
    """

    share: Fraction
    scaled: ScaledRecipe
    estimate: Estimate


class Option(NamedTuple):
    """One way to the goal, or why it does not get there.

    Attributes:
        change: what is changed.
        exact: the answer in exact grams, or None where even the most of it is not enough.
        scooped: the answer in what the drawer measures, or None likewise.
        most: the most of the change, for how far it gets.
    """

    change: Change
    exact: Answer | None
    scooped: Answer | None
    most: Answer

    @property
    def reaches(self) -> bool:
        """Whether it gets there with what the drawer measures."""
        return self.scooped is not None


class Answers(NamedTuple):
    """Everything that was found.

    Attributes:
        goal: with its limit worked out.
        now: the recipe as it is.
        options: single changes, in order; combined ones only where no single one gets there.
    """

    goal: Goal
    now: Answer
    options: tuple[Option, ...]

    @property
    def met_already(self) -> bool:
        """Whether nothing needs to change."""
        held = self.goal.value(self.now.estimate)
        return held is not None and held <= self.goal.limit


def answers(
    recipe: Recipe,
    goal: Goal,
    *,
    factor: Fraction = Fraction(1),
    drawer: Drawer,
    ounce: Ounce = Ounce.AVOIRDUPOIS,
) -> Answers:
    """Return every change that could reach a goal, with the least of it that does.

    Args:
        recipe: as read; its figure must have a total.
        goal: what to reach.
        factor: today's meat over the recipe's [-].
        drawer: the spoons and cups in the house.
        ounce: which ounce a goal per ounce is for.

    Returns:
        The answers. Where no single change is enough, two of them together are tried.
    """
    kitchen = _Kitchen(recipe, factor, drawer, ounce)
    now = kitchen.scooped(recipe, Fraction(0))
    goal = goal.set_from(now.estimate)
    found = Answers(goal, now, ())
    if found.met_already or goal.value(now.estimate) is None:
        return found
    own = own_bottle_change(recipe, goal.figure)
    fitting = [one for one in CHANGES if goal.figure in one.figures and one.applies(recipe)]
    options = [kitchen.option(one, goal) for one in (*filter(None, (own,)), *fitting)]
    if not any(one.reaches for one in options):
        options += [kitchen.option(one, goal) for one in _pairs(options, recipe, goal)]
    return found._replace(options=tuple(options))


def _pairs(options: list[Option], recipe: Recipe, goal: Goal) -> Iterator[Change]:
    """Yield the first change in full with a share of each other.

    Of two bottles that could take the sauce's place, the one that gets further comes first.
    """
    if not options:
        return
    bottles = [one for one in options if one.change.key in (OWN_BOTTLE, LOW_SODIUM)]
    first = min(bottles, key=lambda one: goal.value(one.most.estimate) or 0.0, default=options[0])
    for other in options:
        pair = both(first.change, other.change)
        if other is not first and pair.applies(recipe):
            yield pair


class _Kitchen(NamedTuple):
    """One recipe at one size in one kitchen."""

    recipe: Recipe
    factor: Fraction
    drawer: Drawer
    ounce: Ounce

    def option(self, change: Change, goal: Goal) -> Option:
        most = self.scooped(change.apply(self.recipe, Fraction(1)), Fraction(1))
        exact = self._exact(change, goal)
        return Option(change, exact, self._fitted(change, goal, exact), most)

    def scooped(self, recipe: Recipe, share: Fraction) -> Answer:
        scaled = scale_by_factor(recipe, self.factor, self.drawer)
        guard_scaled(scaled)
        return Answer(share, scaled, estimate(facts_of(scaled), ounce=self.ounce))

    def weighed(self, recipe: Recipe, share: Fraction) -> Answer:
        """Return an answer whose every ingredient of known weight is weighed, none scooped."""
        return self.scooped(_in_grams(recipe), share)

    def _exact(self, change: Change, goal: Goal) -> Answer | None:
        """Return the least share that reaches the goal when all is weighed: halving a bracket."""
        found = self.weighed(change.apply(self.recipe, Fraction(1)), Fraction(1))
        if not _reached(goal, found):
            return None
        if change.all_or_nothing:
            return found
        low, high = Fraction(0), Fraction(1)
        near = value("target-met-within").likely
        for _ in range(_HALVINGS):
            held = goal.value(found.estimate)
            if held is not None and goal.limit * (1 - near / 4) <= held <= goal.limit:
                break
            middle = (low + high) / 2
            tried = self.weighed(change.apply(self.recipe, middle), middle)
            if _reached(goal, tried):
                high, found = middle, tried
            else:
                low = middle
        return found

    def _fitted(self, change: Change, goal: Goal, exact: Answer | None) -> Answer | None:
        """Return the least share, in steps, that holds once it is rounded to the drawer."""
        start = Fraction(0) if exact is None else exact.share
        steps = range(int(start * _STEPS), _STEPS + 1)
        for step in [_STEPS] if change.all_or_nothing else steps:
            share = Fraction(step, _STEPS)
            tried = self.scooped(change.apply(self.recipe, share), share)
            if _reached(goal, tried):
                return tried
            if exact is None:
                # Weighing narrows the doubt: what fails weighed will not do with spoons.
                return None
        return None


def _reached(goal: Goal, answer: Answer) -> bool:
    held = goal.value(answer.estimate)
    return held is not None and held <= goal.limit


def _in_grams(recipe: Recipe) -> Recipe:
    return recipe._replace(ingredients=tuple(_weighed(one) for one in recipe.ingredients))


def _weighed(one: Ingredient) -> Ingredient:
    """Return an ingredient by its weight, where it has one; curing salt is weighed already."""
    item = food(one.food)
    if item.curing:
        return one
    mass = mass_of(one.amount, item, one.form, g_per_ml=bottle_density(one.panel))
    if mass is None:
        return one
    amount = one.amount._replace(low=mass.low_g, high=mass.high_g, unit="gram", form=())
    return one._replace(amount=amount)


def marinade_ml(scaled: ScaledRecipe) -> float | None:
    """Return the liquid of a marinade as it is measured [mL]; None where a part has no density.

    Syrups and honey are counted with the sauces: they run, and wet the meat as those do.
    """
    total = 0.0
    for one in scaled.ingredients:
        if one.ingredient.part is not Part.MARINADE or not _runs(one.food):
            continue
        g_per_ml = _density(one.ingredient, one.food.key)
        if one.mass is None or g_per_ml is None:
            return None
        total += float(one.mass.middle_g) / g_per_ml
    return total


def marinade_g(answer: Answer) -> float | None:
    """Return what a marinade weighs [g], all of known weight in it; None without one."""
    return sum(line.mass_g for line in _bathed(answer)) or None


def marinade_salt_percent(answer: Answer) -> float | None:
    """Return the salt in a marinade, by its sodium, over all that is in it [%]; None without one.

    How salty it tastes goes by this; ingredients of unknown weight are left out of both.
    """
    total_g = marinade_g(answer)
    sodium_mg = sum(line.mass_g * line.makeup.sodium_mg for line in _bathed(answer))
    return None if total_g is None else sodium_mg / 1000 / SODIUM_IN_SALT / total_g * 100


def _bathed(answer: Answer) -> list[Line]:
    return [one for one in answer.estimate.facts.lines if one.part is Part.MARINADE]


def _runs(item: Food) -> bool:
    """Whether a food is a liquid in the bowl: one that is poured, or a sweetener with water."""
    water_g = values(item.key)["water_g"] or 0.0
    return item.poured or (item.kind == "sweetener" and water_g >= _SYRUP_G)


def _density(one: Ingredient, key: str) -> float | None:
    own = bottle_density(one.panel)
    if own is not None:
        return float(own)
    found = density(key, one.form)
    return None if found is None else float(found.g_per_ml)
