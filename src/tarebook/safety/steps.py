"""The recipe's own steps: free words that nobody checks, but for some that speak of danger."""

from __future__ import annotations

from collections.abc import Iterator

from tarebook.findings import Finding
from tarebook.safety.case import Case
from tarebook.safety.cure import called, cure_words
from tarebook.safety.rulebook import degrees, limit, span
from tarebook.safety.step_words import Danger, Limits, dangers
from tarebook.tuples import NamedTuple

_MONTH_DAYS = 30.5


class Caught(NamedTuple):
    """A danger that a step or a note speaks of.

    Attributes:
        kind: ``step`` or ``note``.
        number: which one, from 1.
        danger: what it speaks of.
    """

    kind: str
    number: int
    danger: Danger


def caught(case: Case) -> tuple[Caught, ...]:
    """Return what the recipe's own steps and notes speak of that is danger for flesh.

    Args:
        case: the batch.

    Returns:
        Steps first, in their order; nothing for what is no flesh.
    """
    if not case.is_flesh:
        return ()
    held = _limits(case)
    texts = (("step", case.recipe.steps), ("note", case.recipe.notes))
    return tuple(
        Caught(kind, number, danger)
        for kind, several in texts
        for number, text in enumerate(several, start=1)
        for danger in dangers(text, held)
    )


def check_steps(case: Case) -> tuple[Finding, ...]:
    """Warn of steps and notes that ask for less heat or cold, or promise what nobody can."""
    return tuple(_warned(case, one) for one in caught(case))


def steps_say(case: Case, *asked: Danger) -> bool:
    """Return whether a step or a note speaks of one of some dangers."""
    return any(one.danger in asked for one in caught(case))


def steps_warm(case: Case) -> bool:
    """Return whether a step thaws, soaks or rests raw flesh outside the refrigerator."""
    return steps_say(case, Danger.WARM)


def steps_raw(case: Case) -> bool:
    """Return whether a step says that flesh needs no heat, whatever heat step stands above it."""
    return steps_say(case, Danger.RAW)


def steps_miss_heat(case: Case) -> bool:
    """Return whether a step heats flesh too little, or puts raw marinade back on it."""
    return steps_say(case, Danger.COOL_HEAT, Danger.USED)


def steps_cold_air(case: Case) -> bool:
    """Return whether a step dries flesh cooler than anybody publishes."""
    return steps_say(case, Danger.COLD_AIR)


def steps_cool_air(case: Case) -> bool:
    """Return whether a step dries flesh cooler than is asked of a dryer."""
    return steps_say(case, Danger.COOL_AIR)


def _limits(case: Case) -> Limits:
    return Limits(
        inside_f=limit(*case.inside_rule),
        air_f=limit("dryer-145", "dryer-air") if case.is_meat else 0.0,
        least_air_f=span("dryer-after-heat", "dryer-air")[0] if case.is_meat else 0.0,
        room_days=limit("storage-cautious", "room"),
        cold_days=limit("storage-cautious", "refrigerator") * _MONTH_DAYS,
        frozen_days=limit("storage-cautious", "freezer") * _MONTH_DAYS,
    )


def _warned(case: Case, one: Caught) -> Finding:
    says, do, cites = _words(case, one.danger)
    return case.warn(
        "step-words",
        f"{called(case, one.kind, one.number)} {says}",
        do,
        cites=cites,
        path=f"method.{one.kind}s",
    )


def _words(case: Case, danger: Danger) -> tuple[str, str, str]:
    """Return what a step speaks of, what to do, and the rules that stand against it."""
    if danger in (Danger.RAW, Danger.CLAIM):
        return (
            "promises more than anybody can: dried meat that missed its heat step has made people "
            "ill",
            "take the promise out, and heat the meat",
            "heat-before; outbreak-venison",
        )
    if danger is Danger.COOL_HEAT:
        return (
            "heats to less than the meat needs",
            f"heat every piece to {case.inside} inside",
            case.inside_rule[0],
        )
    if danger in (Danger.COOL_AIR, Danger.COLD_AIR):
        return (
            "dries cooler than published",
            f"dry in a dryer that holds {degrees('dryer-145', 'dryer-air')} or more, by a "
            "thermometer",
            "dryer-145; sun-and-cool-oven",
        )
    return _OTHERS[danger]


_OTHERS = {
    Danger.WARM: (
        "speaks of thawing, soaking or resting outside the refrigerator",
        "thaw, soak and rest in the refrigerator only",
        "thaw-cold; out-of-cold",
    ),
    Danger.TASTE: (
        "tastes raw meat",
        "taste the marinade before meat is in it, and meat only once it has been heated",
        "heat-before; raw-splash",
    ),
    Danger.USED: (
        "puts used marinade back on the meat, or keeps it",
        "throw it away, or bring it to a full boil first; for basting set a clean part aside",
        "marinade-discarded; marinade-boiled",
    ),
    Danger.LONG: (
        "keeps the dried meat longer than published",
        "keep it as long as this card and its label say",
        "storage-cautious",
    ),
}


def marked(case: Case, kind: str) -> Iterator[str]:
    """Yield each step or note of a recipe, with a mark before one that is not to be followed.

    Args:
        case: the batch.
        kind: ``step`` or ``note``.
    """
    told = (*((one.kind, one.number) for one in caught(case)), *cure_words(case))
    numbers = {number for one, number in told if one == kind}
    texts = case.recipe.steps if kind == "step" else case.recipe.notes
    for number, text in enumerate(texts, start=1):
        yield f"{NOT_SO} {text}" if number in numbers else text


NOT_SO = "NOT SO (see Mind):"
"""What stands before words of the recipe that are not to be followed."""
