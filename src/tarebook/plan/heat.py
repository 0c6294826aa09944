"""The heat step: which may be had, which is most cautious, and what each does to the strips."""

from __future__ import annotations

from collections.abc import Mapping

from tarebook.findings import AskedWrongly, nearest
from tarebook.recipe.model import HeatStep
from tarebook.safety.case import Case
from tarebook.safety.heat import not_published
from tarebook.safety.rulebook import citations
from tarebook.tuples import NamedTuple

WORDS: Mapping[str, HeatStep] = {
    "simmer": HeatStep.SIMMERED,
    "steam": HeatStep.STEAMED,
    "boil-down": HeatStep.BOILED_DOWN,
    "oven-after": HeatStep.OVEN_AFTER,
}
"""How a cook names each step to ``--heat``."""

COSTS: Mapping[HeatStep, str] = {
    HeatStep.SIMMERED: "greyer and more crumbly than strips dried raw; the marinade goes through",
    HeatStep.STEAMED: "firmer and paler, with less of the marinade; juice is lost in the pan",
    HeatStep.BOILED_DOWN: "darkest, sticky and saltiest: all of the marinade stays",
    HeatStep.OVEN_AFTER: "chewiest and most like strips dried raw; edges turn a little brittle",
}
"""What each does to the strips: common practice, no source."""

TASKS: Mapping[HeatStep, str] = {
    HeatStep.SIMMERED: "simmer",
    HeatStep.STEAMED: "steam",
    HeatStep.BOILED_DOWN: "boil-down",
}
"""What each is called in ``task-times.csv``, where it comes before drying."""


class Choice(NamedTuple):
    """The heat step of a plan.

    Attributes:
        step: which; unstated only where nothing published asks for one.
        why: who chose it.
        refused: why the recipe's own may not be had, or nothing where it may.
        others: what else may be had for such food.
    """

    step: HeatStep
    why: str
    refused: str
    others: tuple[HeatStep, ...]


def offered(case: Case) -> tuple[HeatStep, ...]:
    """Return the heat steps that may be had for such food, the most cautious first.

    The oven after drying is published for whole-muscle strips up to a quarter inch only, dried at
    145 to 155 degF, and neither for poultry nor for wild pork or bear.
    """
    soaked = case.soaked and not case.ground
    first = (
        (HeatStep.SIMMERED, HeatStep.STEAMED, HeatStep.BOILED_DOWN)
        if soaked
        else (HeatStep.STEAMED,)
    )
    after = case.is_meat and not case.oven_after_refusal
    return (*first, HeatStep.OVEN_AFTER) if after else first


def choose(case: Case, asked: str | None = None) -> Choice:
    """Return the heat step to plan with.

    Args:
        case: the recipe as written.
        asked: what the cook asks for instead of what the recipe says, or None.

    Returns:
        What was asked for; else what the recipe says, where it may be had; else the most cautious.

    Raises:
        AskedWrongly: there is no such step, or it may not be had for such food.
    """
    steps = offered(case)
    if asked is not None:
        return _choice(_asked(asked, case, steps), "as you asked", steps)
    stated = case.recipe.heat
    if stated in steps:
        return _choice(stated, "as the recipe says", steps)
    if not case.is_flesh and stated is not HeatStep.UNSTATED:
        return _choice(stated, "as the recipe says; no published rule is held for it", steps)
    if stated is HeatStep.UNSTATED:
        return _choice(steps[0], "the most cautious, since the recipe states none", steps)
    why = "the most cautious, in place of the recipe's"
    return _choice(steps[0], why, steps, refused=_instead(case, stated))


def _asked(word: str, case: Case, steps: tuple[HeatStep, ...]) -> HeatStep:
    found = WORDS.get(word.strip().lower())
    if found is None:
        near = nearest(word, WORDS)
        hint = f"did you mean {near[0]}?" if near else f"there are {', '.join(WORDS)}"
        raise AskedWrongly(f'--heat: no step is called "{word[:40]}"; {hint}')
    if found not in steps:
        may = ", ".join(word for word, step in WORDS.items() if step in steps)
        raise AskedWrongly(f"--heat: {_instead(case, found)}; for it there are {may}")
    return found


def _instead(case: Case, step: HeatStep) -> str:
    if step is HeatStep.OVEN_AFTER:
        if not case.oven_after_refusal:
            return f"nothing is published on heating {case.animal.value} after drying"
        return f"{not_published(case)} [{citations('oven-after')}]"
    return f"{step.value} needs a marinade that it has soaked in"


def _choice(step: HeatStep, why: str, steps: tuple[HeatStep, ...], *, refused: str = "") -> Choice:
    others = tuple(one for one in steps if one is not step)
    return Choice(step=step, why=why, refused=refused, others=others)
