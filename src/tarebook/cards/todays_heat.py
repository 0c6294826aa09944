"""The recipe's own steps on a card, where today's heat step is another than they were written for.

Whoever follows numbers from one to the last must come by today's heat step at its place: steps for
meat that was roasted first go from the dryer straight to the bag.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

from tarebook.cards.own_steps import NOTHING_POURED
from tarebook.recipe.model import HeatStep
from tarebook.safety.case import Case
from tarebook.safety.method import for_another_heat, heat_line
from tarebook.safety.steps import NOT_SO

__all__ = ["LEAVE_OUT", "NOW", "with_todays_heat"]

NOW = "Now today's heat step:"
"""What begins the step that a card puts among the recipe's own."""
LEAVE_OUT = "(Leave the heating of this step out today.)"
"""What stands before a step that heats as the recipe's own heat step does."""

_SEAMS = re.compile(r"(?<=[.!?;:]) |[,;]? (?:and|then) (?:then )?|, ")
_DRIES = re.compile(
    r"(?:dry|dehydrate|air-dry)\b(?!.* paper)|(?!pre-?heat).*\b(?:dryer|dehydrator)\b"
)
_ENDS = re.compile(
    r"(?:cool|weigh|pack|store|seal|bag|jar|wrap|keep|cut|eat|serve|taste|condition|"
    r"let (?:it|them) cool|put (?:it|them) (?:away|in))\b(?! (?:a|one)\b)"
)
_PACKS = re.compile(r"(?:pack|store|seal|jar|vacuum)\b|weigh the batch")
_DRAINS = re.compile(r"(?:drain|lift|throw|discard|strain|pour|pat)\b")
_HEATS = re.compile(
    r"\b(?:roast|steam|simmer|bake|boil|poach|cook|heat)(?:s|ed|ing)?\b|\boven\b|\breads?\b"
)
_LIQUID = re.compile(r"\b(?:marinade|brine|juice|liquid|water|syrup|honey|sugar|spices)\b")
_MEAT = re.compile(r"\b(?:strips?|meat|pieces?|slices?|them|it)\b")
_Place = tuple[int, int]
"""A step, counted from 0, and a letter of it."""


def with_todays_heat(steps: Sequence[str], case: Case) -> tuple[str, ...]:
    """Return a recipe's own steps with today's heat step among them, where they lack it.

    Args:
        steps: as the card would print them.
        case: the batch, with today's heat step.

    Returns:
        The same where they were written for today's heat step and come by it. Else a step more,
        at its place: the oven before cooling and packing, wet heat before drying. A step that
        holds both is parted there, and one that heats otherwise is told to be left out.
    """
    line = heat_line(case).removeprefix("Heat: ")
    another = for_another_heat(case)
    if not (steps and line and case.is_flesh and (another or _lacks_oven(steps, case))):
        return tuple(steps)
    told = [" ".join(step.split()) for step in steps]
    told = [_left_out(step) if another else step for step in told]
    at = _place(told, case)
    before, after = _parted(told[at[0]] if at[0] < len(told) else "", at[1])
    return tuple(filter(None, (*told[: at[0]], before, f"{NOW} {line}", after, *told[at[0] + 1 :])))


def _lacks_oven(steps: Sequence[str], case: Case) -> bool:
    """Return whether steps for the oven after drying never come by it."""
    oven = case.recipe.heat is HeatStep.OVEN_AFTER
    return oven and not any(map(_heated, steps)) and any(_clauses(steps, _DRIES, _PACKS))


def _left_out(step: str) -> str:
    # What is not to be followed at all needs no second mark, which would read as leave to follow.
    heated = _heated(step) and not step.startswith(NOT_SO)
    return f"{LEAVE_OUT} {step}" if heated else step


def _heated(step: str) -> bool:
    """Return whether a step heats the meat: not only what it lies in, nor in the dryer."""
    return any(
        _HEATS.search(text)
        and not _DRIES.match(text)
        and (_MEAT.search(text) or not _LIQUID.search(text))
        for text in map(str.lower, _SEAMS.split(step.replace(NOTHING_POURED, "")))
    )


def _place(steps: Sequence[str], case: Case) -> _Place:
    """Return where today's heat step comes."""
    end = len(steps), 0
    dries = next(_clauses(steps, _DRIES), None)
    if case.recipe.heat is HeatStep.OVEN_AFTER and not case.oven_after_refusal:
        if dries is None:
            return next(_clauses(steps, _PACKS), end)
        return next((at for at in _clauses(steps, _ENDS) if at > dries), end)
    first = dries or next(_clauses(steps, _PACKS), end)
    if case.recipe.heat is HeatStep.SIMMERED:
        # It is simmered in what the next step throws away.
        return min(first, next(_clauses(steps, _DRAINS), first))
    return first


def _clauses(steps: Sequence[str], *patterns: re.Pattern[str]) -> Iterator[_Place]:
    """Yield where the clauses stand that begin as one of some patterns does, in order."""
    for number, step in enumerate(steps):
        lead = _lead(step)
        at = len(lead)
        starts = [at, *(found.end() for found in _SEAMS.finditer(step, at))]
        for start in starts:
            if any(one.match(step[start:].lower()) for one in patterns):
                yield number, (start if start > at else 0)


def _lead(step: str) -> str:
    """Return the marks before a step."""
    lead = ""
    for mark in (LEAVE_OUT, NOT_SO):
        if step[len(lead) :].startswith(mark):
            lead += f"{mark} "
    return lead


def _parted(step: str, at: int) -> tuple[str, str]:
    """Return a step in two; a mark before it stands before both."""
    if not at:
        return "", step
    before = step[:at].rstrip()
    for seam in ("then", "and"):
        before = before.removesuffix(f" {seam}")
    before = before.rstrip(",;:")
    before = before if before.endswith((".", "!", "?")) else f"{before}."
    lead = NOT_SO + " " if NOT_SO in _lead(step) else ""
    return before, f"{lead}{step[at].upper()}{step[at + 1 :]}"
