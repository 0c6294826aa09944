"""A recipe as it is made with a heat step: one answer for plan, card and label."""

from __future__ import annotations

from tarebook.recipe.model import Drying, HeatStep, Recipe
from tarebook.safety.case import Case
from tarebook.safety.heat import least_oven_hours


def as_heated(case: Case, step: HeatStep) -> Recipe:
    """Return a recipe as it is made with a heat step that may be had for it.

    Args:
        case: the recipe as written, in this house.
        step: the heat step, the recipe's own or another.

    Returns:
        The recipe with that step, dried as long before the oven as is published where it is the
        oven after drying; notes say what is not as written, and ``steps_heat`` what heat step its
        own steps were written for, where that is another.
    """
    recipe = case.recipe
    drying = _long_enough(recipe.drying) if case.is_meat and _AFTER is step else recipe.drying
    notes = list(recipe.notes)
    if step is not recipe.heat:
        notes.append(f"Heat step asked for: {step.value}. The recipe's own: {recipe.heat.value}.")
    if drying is not recipe.drying:
        notes.append(
            f"It dries {least_oven_hours():g} h at least before the oven; the recipe says "
            f"{_said(recipe.drying)} h."
        )
    return recipe._replace(
        heat=step,
        drying=drying,
        notes=tuple(notes),
        steps_heat=recipe.steps_heat if step is recipe.heat else recipe.heat,
    )


_AFTER = HeatStep.OVEN_AFTER


def _long_enough(drying: Drying) -> Drying:
    """Return drying with hours raised to the least before the oven; the same where none are less.

    Source:
        :func:`tarebook.safety.heat.least_oven_hours`.
    """
    least = least_oven_hours()
    if drying.hours is None or drying.hours[0] >= least:
        return drying
    raised = drying._replace(hours=(least, max(drying.hours[1], least)))
    return raised._replace(hours_written=_said(raised))


def _said(drying: Drying) -> str:
    return "-".join(dict.fromkeys(f"{end:g}" for end in drying.hours or ()))
