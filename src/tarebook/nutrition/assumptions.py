"""Every uncertain input of the estimate: how far off it could be, and who says so.

One function a group of inputs; each returns ``Assumption`` values by name. The model reads the
draws by these names, and ``--why`` prints them.
"""

from __future__ import annotations

from collections.abc import Iterator

from tarebook.figures.spoken import spoken
from tarebook.figures.working import Working, value
from tarebook.nutrition.draws import Distribution, Fixed, LogNormal, LogPert, Pert, Uniform
from tarebook.nutrition.facts import Facts, Line
from tarebook.recipe.model import FinishBy, HeatStep, Part, Surface
from tarebook.tuples import NamedTuple

_FILM = {
    Surface.LIFTED: "film-lifted",
    Surface.DRAINED: "film-drained",
    Surface.PATTED: "film-patted",
}


class Assumption(NamedTuple):
    """One uncertain input.

    Attributes:
        name: how the model calls it.
        distribution: how far off it could be.
        unit: of the distribution.
        code: P published, C computed, W working value, M from memory; F a fact of this recipe.
        reason: why this range, in a cook's words.
        source: source id, or empty.
    """

    name: str
    distribution: Distribution
    unit: str
    code: str
    reason: str
    source: str = ""


def assumptions(facts: Facts) -> dict[str, Assumption]:
    """Return every uncertain input of a batch, by name.

    Args:
        facts: what is known of the batch.

    Returns:
        Inputs by name, in the order of the road from bowl to scale.
    """
    groups = (_measuring, _meat, _soaking, _weighing, _heating, _drying, _model)
    return {one.name: one for group in groups for one in group(facts)}


def _measuring(facts: Facts) -> Iterator[Assumption]:
    if facts.lines:
        yield _cv("measure", "marinade-measured-cv", "the hand that measures the whole of it")
    for line in facts.lines:
        yield Assumption(
            name=f"mass:{line.name}",
            distribution=LogNormal(line.doubt),
            unit="factor",
            code="W",
            reason=f"how far {spoken(line.name)} may be off in measuring and density",
        )
        if line.makeup.sodium_mg:
            yield Assumption(
                name=f"sodium:{line.figures_of}",
                distribution=LogNormal(line.makeup.sodium_cv),
                unit="factor",
                code="W",
                reason=_sodium_reason(line),
            )
        if line.makeup.sugars_off is not None:
            yield Assumption(
                name=f"sugars:{line.figures_of}",
                distribution=line.makeup.sugars_off,
                unit="factor",
                code="C" if line.makeup.sugars_bounded else "F",
                reason=_sugars_reason(line),
            )


def _sugars_reason(line: Line) -> str:
    if line.makeup.sugars_bounded:
        most = 200 * (line.makeup.sucrose + line.makeup.hexose)
        return (
            f"sugars of {spoken(line.figures_of)}, which nobody states: anything from none to its "
            f"carbohydrate less its fiber, {most:.3g} g in 100 g; a factor on half of that"
        )
    return f"what rounding on the panel of {line.figures_of} leaves open of its sugars"


def _sodium_reason(line: Line) -> str:
    if line.makeup.sodium_borrowed:
        return (
            f"how far the sodium of {spoken(line.figures_of)} may be from that of "
            f"{spoken(line.food)}, taken since its panel prints none"
        )
    return f"how far the sodium figure of {spoken(line.figures_of)} may be off"


def _meat(_facts: Facts) -> Iterator[Assumption]:
    yield _pert("raw-solids", "raw-solids-factor", "solids of the raw meat against the table")
    yield _pert("raw-protein", "raw-protein-factor", "its protein against the table")
    yield _pert("own-sodium", "meat-sodium-factor", "the meat's own salts against the table")


def _soaking(facts: Facts) -> Iterator[Assumption]:
    yield _pert("salt-reach", "accessible-water-salt", "meat water that salt reaches")
    yield _pert("other-reach", "accessible-water-other", "meat water that sugar reaches")
    yield _pert("thickness-factor", "thickness-factor", "how evenly the meat is cut")
    if not facts.has(Part.MARINADE):
        yield _pert("purge", "rub-purge", "liquid that a rub draws and that runs off")
        return
    for name, key, what in (
        ("salt-diffusivity", "diffusivity-salt", "salt"),
        ("sucrose-diffusivity", "diffusivity-sucrose", "sucrose"),
        ("hexose-diffusivity", "diffusivity-hexose", "glucose and fructose"),
    ):
        found = value(key)
        reason = f"how fast {what} travels in meat ({found.reason})"
        yield _from(found, name, LogPert(found.low, found.likely, found.high), reason)
    if facts.thickness_mm is None:
        yield _pert(
            "thickness", "default-thickness-mm", "thickness, which the recipe does not state"
        )
    else:
        yield _fact("thickness", facts.thickness_mm, "mm", "thickness as the recipe states it")
    yield _fact("hours", facts.hours, "h", "hours in the marinade")
    if facts.soak_c is not None:
        energy = value("diffusivity-activation").likely
        why = f"how cold it soaks; everything travels faster when warmer, by {energy:g} kJ/mol"
        yield _fact("soak-temperature", facts.soak_c, "degC", why)
    yield _pert("free-share", "mixing-weight", "strips that lie free rather than stuck together")
    yield _pert("gain", "water-gain", "water drawn in or out")
    yield _pert("gain-weak", "water-gain-weak-brine", "the same in a weak brine")
    yield _pert("film", _FILM[facts.surface], f"liquid on the surface, {facts.surface.value}")
    yield _pert("other-uptake", "uptake-factor-other", "pace of dissolved matter other than sugar")
    yield _pert("suspended-kept", "spice-kept", "pepper, garlic and pulp that cling")
    yield _pert("oil-factor", "oil-film-factor", "oil on the surface against the film")
    yield _pert("solubles", "meat-solubles-leak", "the meat's own matter that can leak")


def _weighing(facts: Facts) -> Iterator[Assumption]:
    if facts.soaked_g is not None:
        yield _cv("soaked", "scale-cv", "the scale under the soaked meat")
    if facts.leftover_g is not None:
        yield _cv("leftover", "scale-cv", "the scale under the marinade left")
        yield _pert("bowl-film", "film-on-bowl", "marinade that sticks to bowl and towels")
    if facts.own_yield is not None and facts.finished_g is None:
        own = facts.own_yield
        many = "batch" if own.batches == 1 else f"{own.batches} batches"
        yield Assumption(
            name="own-batches",
            distribution=LogNormal(own.doubt, own.middle),
            unit="share of raw meat",
            code="F",
            reason=f"the kitchen's own yield, by {many}",
        )
        yield Assumption(
            name="batch-chance",
            distribution=LogNormal(own.chance),
            unit="factor",
            code="W",
            reason="how far one batch lies from the kitchen's own yield",
        )


def _heating(facts: Facts) -> Iterator[Assumption]:
    steps = (HeatStep.OVEN_AFTER, HeatStep.BOILED_DOWN)
    if facts.heat not in steps:
        yield _pert("juice", "cooking-juice", "juice that cooking presses out")
        yield _pert("boiled-off", "boiled-off", "water boiled off the marinade meanwhile")
    if facts.heat is HeatStep.UNSTATED:
        yield Assumption(
            name="heat-case",
            distribution=Uniform(),
            unit="",
            code="W",
            reason="the heat step is not stated: simmered, steamed or oven after, all counted",
        )


def _drying(facts: Facts) -> Iterator[Assumption]:
    yield _pert("drip", "solute-drip", "salt and sugar that drip off in the dryer")
    fatty = (facts.meat.get("fat_g") or 0.0) / 100 >= value("fatty-meat").likely
    key = "fat-drip-fatty" if fatty else "fat-drip-lean"
    yield _pert("fat-drip", key, "fat that melts and drips off")
    if facts.finished_g is not None:
        yield _cv("finished", "scale-cv", "the scale under the finished batch")
    if facts.finish is not None:
        ratios = (FinishBy.MOISTURE_TO_PROTEIN, FinishBy.WATER_ACTIVITY)
        unit = "" if facts.finish.by in ratios else "fraction"
        yield _fact("finish", facts.finish.value, unit, f"finish by {facts.finish.by.value}")
        if facts.finish.by is FinishBy.WATER_ACTIVITY:
            yield _activity_error()
    elif facts.moisture_food:
        yield _pert("finish", "finish-moisture-mushroom", "moisture when crisp enough")
    else:
        yield _pert("finish", "finish-moisture-to-protein", "water over protein when dry enough")


def _activity_error() -> Assumption:
    """How far the water activity is off that the water of a batch is reckoned from."""
    found = value("water-activity-model-error")
    reason = "how far a reckoned water activity may be off"
    return _from(found, "activity-error", Pert(-found.likely, 0.0, found.likely), reason)


def _model(facts: Facts) -> Iterator[Assumption]:
    """Doubt of the model's own form, beside that of its inputs; widest where little is known."""
    yield _cv("model", _model_doubt(facts), "the model itself: no batch of this kind was analysed")


def _model_doubt(facts: Facts) -> str:
    if not facts.has(Part.MARINADE) or not facts.poured_away:
        return "model-doubt-nothing-poured"
    if facts.soaked_g is not None and facts.finished_g is not None:
        return "model-doubt-weighed"
    return "model-doubt-hard-case" if _hard_case(facts) else "model-doubt-recipe-only"


def _hard_case(facts: Facts) -> bool:
    """Soaked under 4 h, over 8 mm thick, or in more marinade than half the meat's weight."""
    marinade = sum(line.mass_g for line in facts.lines if line.part is Part.MARINADE)
    thick = facts.thickness_mm is not None and facts.thickness_mm[1] > 8
    return facts.hours[1] < 4 or thick or marinade > facts.meat_mass_g / 2


def _pert(name: str, key: str, reason: str) -> Assumption:
    found = value(key)
    return _from(found, name, Pert(found.low, found.likely, found.high), reason)


def _cv(name: str, key: str, reason: str) -> Assumption:
    found = value(key)
    return _from(found, name, LogNormal(found.likely), reason)


def _fact(name: str, stated: tuple[float, float, float], unit: str, reason: str) -> Assumption:
    low, likely, high = stated
    distribution = Fixed(likely) if low == high else Pert(low, likely, high)
    return Assumption(name=name, distribution=distribution, unit=unit, code="F", reason=reason)


def _from(found: Working, name: str, distribution: Distribution, reason: str = "") -> Assumption:
    return Assumption(
        name=name,
        distribution=distribution,
        unit=found.unit,
        code=found.code,
        reason=reason or found.reason,
        source=found.source,
    )
