"""From a recipe, today's meat and a kitchen to plain minutes and trays."""

from __future__ import annotations

from collections.abc import Callable
from fractions import Fraction
from functools import partial
from math import ceil

from tarebook.drying.time import Conditions
from tarebook.figures.task_times import minutes
from tarebook.findings import PlanRefused
from tarebook.kitchen.profile import CM2_PER_FT2, Kitchen, Vessel
from tarebook.plan.heat import TASKS, Choice, choose
from tarebook.plan.hours import (
    Hours,
    conditions,
    own_hours,
    published_hours,
    recipe_hours,
)
from tarebook.plan.place import GRID
from tarebook.plan.shares import Share, shares_of
from tarebook.plan.tasks import Batch, Portion, Task
from tarebook.plan.trays import QUARTER_INCH_MM, Dryer, Load, area_cm2, loads_of
from tarebook.quantities.drawer import choose_drawer
from tarebook.recipe.model import HeatStep, Recipe, Surface
from tarebook.safety import Case
from tarebook.safety.case import Animal
from tarebook.safety.curing import guard_scaled
from tarebook.safety.dryer import outbreak_words
from tarebook.safety.heat import least_oven_hours
from tarebook.safety.heated import as_heated
from tarebook.safety.rulebook import both_scales, citations, degrees, limit, span
from tarebook.scaling import ScaledRecipe, scale_to_meat
from tarebook.tuples import NamedTuple

USUAL_AIR_F = (145.0, 155.0)
"""Air of a recipe that states none [degF]: what Wisconsin and Minnesota publish."""
_DIAL = 0.05  # [degF] what the way from Celsius may take off
_SLACK_MIN = 120
"""How far the soak of a recipe with one figure may be moved for a night's rest [min] (W)."""
_G_PER_ML = 1.05  # meat and marinade together, near enough for a bowl
_HEADROOM = 1.15  # room to turn it in


class Job(NamedTuple):
    """One recipe of a plan, before it has times.

    Attributes:
        recipe: as written.
        case: what the safety rules look at, with heat, air, soak and cut as they are planned.
        meat_g: today's meat, trimmed and raw [g].
        frozen: whether it comes out of the freezer.
        choice: the heat step.
        air_f: coolest and hottest air that the dryer or the oven is set to [degF].
        held_f: air that it dries in [degF]: as set, or, where an oven cannot be set so cool, the
            recipe's, held with the door propped.
        wanted_f: what the recipe asks for [degF].
        hours: of drying, in the air that is held.
        shut: hours of drying with the oven's door shut; None where it is not propped, or where the
            hours are the cook's own.
        loads: what dries together.
        oven: whether it dries in the oven.
        needed_cm2: how much tray it takes in all [cm2].
        soak_capped: whether the recipe's soak was cut to the cautious limit.
        bowl: the smallest bowl or bag that a load's meat and marinade go into, or None.
        bowls_told: whether the cook told of any bowl.
        bowl_ml: what they take, with room to turn [mL]; 0 where nothing is soaked.
        altitude_m: height of the kitchen above the sea, or None [m].
        air_known: whether it is known what the dryer or the oven can be set to.
        batch: the same as plain minutes and trays.
        shares: what each load takes of marinade and curing salt; empty where it is one, or where
            all is kneaded in at once.
        by_load: whether the loads come out of the freezer one by one.
        left_g: meat that was asked for and is not planned, since it would wait raw too long [g].
    """

    recipe: Recipe
    case: Case
    meat_g: float
    frozen: bool
    choice: Choice
    air_f: tuple[float, float]
    held_f: tuple[float, float]
    wanted_f: tuple[float, float]
    hours: Hours
    loads: tuple[Load, ...]
    oven: bool
    needed_cm2: float
    soak_capped: bool
    bowl: Vessel | None
    bowls_told: bool
    bowl_ml: float
    altitude_m: float | None
    air_known: bool
    batch: Batch
    shares: tuple[Share, ...] = ()
    by_load: bool = False
    left_g: float = 0.0
    shut: Hours | None = None

    @property
    def propped(self) -> bool:
        """Whether the oven's door is propped, to hold air that it cannot be set to."""
        return self.held_f != self.air_f

    @property
    def cured_by_load(self) -> bool:
        """Whether each load's own curing salt is weighed, where it is enough for the scale."""
        return any(share.cures for share in self.shares)

    @property
    def uncured(self) -> tuple[int, ...]:
        """Loads that go without curing salt, too little for the scale, counted from 1."""
        if not self.cured_by_load:
            return ()
        return tuple(at for at, share in enumerate(self.shares, start=1) if not share.cured)

    @property
    def thickness_mm(self) -> float:
        """How thick a strip is, a quarter inch where the recipe does not say [mm]."""
        return thickness_of(self.case.recipe)


def job_of(
    recipe: Recipe,
    *,
    meat_g: Fraction,
    kitchen: Kitchen,
    dryer: Dryer,
    heat: str | None = None,
    frozen: bool = False,
    hours: tuple[float, float] | None = None,
    learned: Callable[[Conditions], Hours | None] | None = None,
    by: str = "high",
) -> Job:
    """Return what there is to do for one recipe.

    Args:
        recipe: as read.
        meat_g: today's meat, trimmed and raw [g], above zero.
        kitchen: as the cook told.
        dryer: what there is to dry on.
        heat: the heat step asked for, as ``heat.WORDS`` has it, or None.
        frozen: whether the meat comes out of the freezer.
        hours: what a batch like this took in this dryer [h], or None.
        learned: what the kitchen's own batches say of a cut and an air, where ``hours`` do not.
        by: which drying hours to plan with: ``low``, ``likely`` or ``high``.

    Raises:
        AskedWrongly: the heat step may not be had for such food.
        PlanRefused: raw meat or fish, and a dryer cooler than anybody publishes for it.
        CureRefused: curing salt beyond what is printed; then nothing of the recipe is.
    """
    scaled = scale_to_meat(recipe, meat_g, choose_drawer(kitchen.drawer or "basic"))
    guard_scaled(scaled)
    written = _in_house(Case.of(recipe, factor=scaled.factor), kitchen, dryer)
    choice = choose(written, heat)
    wanted_f = recipe.drying.temperature_f or USUAL_AIR_F
    asked_f = hot_enough(written, wanted_f)
    air_f = air_of(asked_f, dryer)
    held_f = asked_f if dryer.oven and air_f[0] > asked_f[1] else air_f
    _refuse_cool(written, air_f, dryer)
    soak, capped = soak_minutes(written)
    thick = written.is_meat and written.too_thick
    planned = _as_planned(as_heated(written, choice.step), air_f, capped=capped, thick=thick)
    case = written._replace(recipe=planned)
    told = partial(_hours, recipe, hours, learned, wanted_f)
    found = told(conditions(thickness_of(planned), held_f))
    if choice.step is HeatStep.OVEN_AFTER and case.is_meat:
        found = found.at_least(least_oven_hours(), "the oven after drying asks for")
    found = found.as_told()
    loads = loads_of(float(meat_g), thickness_of(planned), dryer)
    bowl_ml = _bowl_ml(scaled, loads[0]) if case.soaked and not case.ground else 0.0
    return Job(
        recipe=recipe,
        case=case,
        meat_g=float(meat_g),
        frozen=frozen,
        choice=choice,
        air_f=air_f,
        held_f=held_f,
        wanted_f=wanted_f,
        hours=found,
        loads=loads,
        oven=dryer.oven,
        needed_cm2=area_cm2(float(meat_g), thickness_of(planned)),
        soak_capped=capped,
        bowl=_bowl(kitchen, bowl_ml),
        bowls_told=bool(kitchen.bowls),
        bowl_ml=bowl_ml,
        altitude_m=kitchen.altitude_m,
        air_known=dryer.heat_f is not None,
        shut=None
        if held_f == air_f or hours is not None
        else told(conditions(thickness_of(planned), air_f)),
        shares=shares_of(scaled, loads, kitchen.scale_g)
        if len(loads) > 1 and _steep(case, 0.0)
        else (),
        batch=Batch(
            prep=prep_of(case, float(meat_g) / 1000, frozen=frozen),
            mix=_task("mix").minutes if recipe.ingredients and not case.ground else 0,
            steep=_steep(case, loads[0].meat_g / 1000),
            wash=_wash(case, soak),
            flesh=case.is_flesh,
            soak=soak,
            air=held_f,
            raw=case.is_meat and choice.step in (HeatStep.OVEN_AFTER, HeatStep.UNSTATED),
            portions=tuple(
                _portion(case, choice.step, load, found, by, oven=dryer.oven) for load in loads
            ),
        ),
    )


def thickness_of(recipe: Recipe) -> float:
    """Return how thick a strip is [mm]; a quarter inch where the recipe does not say."""
    stated = recipe.meat.thickness_mm
    return QUARTER_INCH_MM if stated is None else stated[1]


def air_of(wanted_f: tuple[float, float], dryer: Dryer) -> tuple[float, float]:
    """Return the air to dry in: what the recipe asks for, as near as the dryer comes [degF].

    Example:
        >>> air_of((145, 155), Dryer(heat_f=(170, 550)))
        (170, 170)
    """
    if dryer.heat_f is None:
        return wanted_f
    coolest, hottest = dryer.heat_f
    low, high = (min(max(end, coolest), hottest) for end in wanted_f)
    return low, high


def hot_enough(case: Case, wanted_f: tuple[float, float]) -> tuple[float, float]:
    """Return the air to plan flesh with: the recipe's, or the cautious one where that is cooler.

    Source:
        Rules ``dryer-145`` and ``oven-after``: 145 degF or more; 145 to 155.
    """
    least = limit("dryer-145", "dryer-air")
    if not case.is_flesh or wanted_f[0] >= least - _DIAL:
        return wanted_f
    return least, max(wanted_f[1], span("oven-after", "dryer-air")[1])


def soak_minutes(case: Case) -> tuple[tuple[int, int, int], bool]:
    """Return least, wanted and most time in the marinade or rub [min], and whether it was cut.

    A soak of raw flesh never goes over the cautious limit, whatever the recipe says; rubbed meat
    rests for the hours of the table, and ground meat lies in nothing.
    """
    if case.ground or not (case.soaked or case.rubbed):
        return (0, 0, 0), False
    if case.soaked:
        hours = case.recipe.soak.hours
        least, wanted, most = (round(hour * 60 / GRID) * GRID for hour in hours)
        if least == most:
            least, most = max(least - _SLACK_MIN, min(least, 60)), most + _SLACK_MIN
    else:
        least, wanted, most = (int(minutes("rest", end=end)) for end in ("low", "likely", "high"))
    limit_min = int(limit("soak-day", "soak") * 60) if case.is_flesh else most
    capped = wanted > limit_min or (case.soaked and case.recipe.soak.hours[0] * 60 > limit_min)
    return (min(least, limit_min), min(wanted, limit_min), min(most, limit_min)), capped


def prep_of(case: Case, kg: float, *, frozen: bool) -> tuple[Task, ...]:
    """Return what is done once to meat of so many kilograms, before it is parted into loads."""
    tasks = []
    if frozen:
        thaw = max(minutes("thaw", kg=kg, end="high"), minutes("thaw-least"))
        tasks.append(Task("thaw", whole_minutes(thaw), attended=False))
    if case.ground:
        return (*tasks, _task("mix"), *_washed(_task("knead"), case))
    return (*tasks, *_washed(_task("trim", kg=kg), case))


def _washed(task: Task, case: Case) -> tuple[Task, ...]:
    """Return work and, where it is on raw meat, the washing up right after it."""
    if not case.is_flesh:
        return (task,)
    return task._replace(raw=True, tied=True), _task("wash", raw=True)


def held_hot_min(case: Case) -> int:
    """Return how long food is held at its heat [min]: fish as the rule for smoked fish asks."""
    return int(limit("fish-smoked", "time")) if case.animal is Animal.FISH else 0


def whole_minutes(value: float) -> int:
    """Return minutes rounded up to the grid that plans keep; half a minute over is nothing."""
    return ceil((value - 0.5) / GRID) * GRID


def _in_house(case: Case, kitchen: Kitchen, dryer: Dryer) -> Case:
    low, top = dryer.heat_f or (None, None)
    return case._replace(
        dryer_low_f=low,
        dryer_top_f=top,
        dryer_settable=dryer.adjustable,
        scale_g=kitchen.scale_g,
    )


def _as_planned(recipe: Recipe, air_f: tuple[float, float], *, capped: bool, thick: bool) -> Recipe:
    """Return a heated recipe as it is planned, whatever it says: its air, its soak in the cold.

    The marinade is made fresh; a soak over the limit is cut to it, and meat over a quarter inch to
    a quarter inch.
    """
    meat = recipe.meat
    if thick:
        meat = meat._replace(thickness_mm=(QUARTER_INCH_MM,) * 3, thickness_written="1/4 in")
    soak = recipe.soak._replace(temperature_f=None, used_before=False)
    if capped:
        soak = soak._replace(hours=(limit("soak-day", "soak"),) * 3)
    drying = recipe.drying._replace(temperature_f=air_f)
    return recipe._replace(drying=drying, soak=soak, meat=meat)


def _refuse_cool(case: Case, air_f: tuple[float, float], dryer: Dryer) -> None:
    """Refuse to plan flesh in air that is cooler than published even for heated meat.

    Raises:
        PlanRefused: the air stays under it.
    """
    if not case.is_flesh or air_f[1] >= limit("dryer-after-heat", "dryer-air") - _DIAL:
        return
    least = both_scales(limit("dryer-after-heat", "dryer-air"))
    raise PlanRefused(
        f"no days are planned here: the dryer goes no hotter than {both_scales(air_f[1])}, and "
        f"nobody publishes less than {least}, for heated meat; {outbreak_words()} "
        f"[{citations('dryer-after-heat; outbreak-venison')}]; dry it in an oven or another dryer "
        f"that holds {degrees('dryer-145', 'dryer-air')}: tarebook kitchen set dryer.trays 0 plans "
        "for the oven"
    )


def _hours(
    recipe: Recipe,
    own: tuple[float, float] | None,
    learned: Callable[[Conditions], Hours | None] | None,
    wanted_f: tuple[float, float],
    planned: Conditions,
) -> Hours:
    if own is not None:
        return own_hours(*own)
    found = None if learned is None else learned(planned)
    if found is not None:
        return found
    stated = recipe.drying.hours
    if stated is None:
        return published_hours(planned)
    return recipe_hours(*stated, conditions(thickness_of(recipe), wanted_f), planned)


def _lead(case: Case, kg: float) -> tuple[Task, ...]:
    """Return how a load is sliced; firm from the freezer, where it is flesh."""
    if case.ground:
        return ()
    if not case.is_flesh:
        return (_task("slice", kg=kg),)
    chilled = whole_minutes(minutes("part-freeze"))
    return (
        Task("part-freeze", chilled, attended=False, tied=True, raw=True, begun=True),
        _task("slice", kg=kg, raw=True),
    )


def _wash(case: Case, soak: tuple[int, int, int]) -> int:
    """Return how long washing up takes in the first minutes of a soak, where it fits into them."""
    each = _task("wash").minutes
    return each if case.is_flesh and soak[0] >= each else 0


def _steep(case: Case, kg: float) -> int:
    if case.ground or not (case.soaked or case.rubbed):
        return 0
    return _task("steep" if case.soaked else "rub", kg=kg).minutes


def _portion(
    case: Case, step: HeatStep, load: Load, hours: Hours, by: str, *, oven: bool
) -> Portion:
    kg = load.meat_g / 1000
    dry_h = {"low": hours.low_h, "likely": hours.likely_h, "high": hours.high_h}[by]
    after = step is HeatStep.OVEN_AFTER
    return Portion(
        trays=load.trays,
        lead=_lead(case, kg),
        front=tuple(_front(case, step, load)),
        dry=whole_minutes(dry_h * 60),
        clean=_task("clean").minutes if case.is_flesh else 0,
        unload=_task("unload").minutes,
        oven=_task("oven", kg=kg).minutes if after else 0,
        cool=whole_minutes(minutes("cool")),
        pack=_task("pack", kg=kg).minutes,
        preheat=whole_minutes(minutes("preheat")),
        in_oven=oven,
    )


def _front(case: Case, step: HeatStep, load: Load) -> list[Task]:
    kg = load.meat_g / 1000
    feet = ceil(area_cm2(load.meat_g, thickness_of(case.recipe)) / CM2_PER_FT2)
    tasks = []
    raw = case.is_flesh
    if case.ground:
        tasks.append(_task("form", kg=kg, raw=raw))
    elif case.soaked and step is not HeatStep.BOILED_DOWN:
        tasks.append(_task("drain", kg=kg, raw=raw))
    if step in TASKS:
        if tasks and raw:
            tasks.append(_task("wash", raw=raw))
        heated = _task(TASKS[step], kg=kg, raw=raw)
        tasks.append(heated._replace(minutes=heated.minutes + held_hot_min(case)))
    return [*tasks, _task("load", trays=load.trays if load.known else feet, raw=raw)]


def _task(key: str, *, kg: float = 0.0, trays: int = 0, raw: bool = False) -> Task:
    return Task(key, whole_minutes(minutes(key, kg=kg, trays=trays)), raw=raw)


def _bowl_ml(scaled: ScaledRecipe, load: Load) -> float:
    """Return what one load's meat and marinade take, with room to turn them [mL]."""
    wet_g = sum(float(one.mass.middle_g) for one in scaled.ingredients if one.mass is not None)
    share = load.meat_g / float(scaled.meat_mass_g)
    return (float(scaled.meat_mass_g) + wet_g) * share / _G_PER_ML * _HEADROOM


def _bowl(kitchen: Kitchen, needed_ml: float) -> Vessel | None:
    fits = [one for one in kitchen.bowls if one.volume_ml >= needed_ml > 0]
    return min(fits, key=lambda one: one.volume_ml, default=None)


def patted(recipe: Recipe) -> bool:
    """Whether the recipe pats the meat dry after its soak."""
    return recipe.soak.surface is Surface.PATTED
