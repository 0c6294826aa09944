"""Curing salts in a recipe: dose, strength, nitrate, handling, and what they do not do."""

from __future__ import annotations

from fractions import Fraction

from tarebook.findings import CureRefused, Finding, Severity
from tarebook.recipe.model import HeatStep, Ingredient, ScaleBy
from tarebook.safety.case import Case
from tarebook.safety.caution import TITLES
from tarebook.safety.clauses import NO, sentences, words_of
from tarebook.safety.curing import (
    LIMIT_PPM,
    STEP_G,
    Cure,
    all_absorbed_ppm,
    grams_of,
    guard,
    nitrite_g,
)
from tarebook.safety.rulebook import limit


def check_cure_dose(case: Case) -> tuple[Finding, ...]:
    """Refuse a recipe whose curing salts together bring too much nitrite, or any nitrate.

    Curing salt grows with the meat alone, so that the recipe as written answers for every size.
    """
    if not case.cures:
        return ()
    try:
        guard(
            [_cure(one, item.nitrate_percent) for one, item in case.cures],
            case.recipe.meat.mass_g,
        )
    except CureRefused as refused:
        return (
            case.finding(
                Severity.ERROR,
                "cure-refused",
                str(refused),
                "",
                cites="cure-guard",
                path=case.cures[0][0].path,
            ),
        )
    return ()


def check_cure_scale(case: Case) -> tuple[Finding, ...]:
    """Refuse a curing salt that does not grow with the meat."""
    return tuple(
        case.finding(
            Severity.ERROR,
            "cure-scale",
            f"{one.name} would not grow with the meat",
            "leave its scale out",
            cites="cure-guard",
            path=one.path,
        )
        for one, _ in case.cures
        if one.scale is not ScaleBy.MEAT
    )


def check_cure_nitrate(case: Case) -> tuple[Finding, ...]:
    """Warn of a curing salt whose nitrate nobody has stated."""
    return tuple(
        case.warn(
            "cure-nitrate",
            f"whether {one.name} holds nitrate as well is not known here",
            "read its pack; a curing salt with nitrate is not for meat dried within days",
            cites="nitrate-none",
            path=one.path,
        )
        for one, item in case.cures
        if item.nitrate_percent is None
    )


def check_cure_little(case: Case) -> tuple[Finding, ...]:
    """Note where there is too little nitrite for what is published of it."""
    cures = [_cure(one, item.nitrate_percent) for one, item in case.cures]
    if not cures or any(cure.nitrite_percent is None for cure in cures):
        return ()
    from tarebook.safety.ingoing import too_little  # few recipes are cured

    ppm = all_absorbed_ppm(nitrite_g=nitrite_g(cures), meat_mass_g=case.recipe.meat.mass_g)
    little = too_little(ppm)
    if not little:
        return ()
    return (
        case.note(
            "cure-little",
            f"{float(ppm):,.0f} ppm of nitrite is {little}",
            "count on it for colour at most; take no more than the recipe was tried with",
            cites="nitrite-floor",
            path=case.cures[0][0].path,
        ),
    )


def check_cure_food(case: Case) -> tuple[Finding, ...]:
    """Warn of curing salt on what the limits are not about."""
    if case.is_meat or not case.cures:
        return ()
    return (
        case.warn(
            "cure-no-meat",
            f"the limits held here for curing salt are for meat and poultry, not for "
            f"{case.animal.value}",
            "leave it out",
            cites="home-cure-nitrite",
            path=case.cures[0][0].path,
        ),
    )


def check_cure_words(case: Case) -> tuple[Finding, ...]:
    """Refuse steps and notes that name curing salt where none is listed, or take it by the spoon.

    What stands in a step alone is neither weighed nor counted, and nothing holds its dose.
    """
    listed = bool(case.cures)
    return tuple(
        _by_spoon(case, kind, number) if listed else _unlisted(case, kind, number)
        for kind, number in cure_words(case)
    )


def cure_words(case: Case) -> tuple[tuple[str, int], ...]:
    """Return which steps and notes speak of curing salt that the recipe does not list by weight.

    Args:
        case: the batch.

    Returns:
        ``step`` or ``note``, and its number from 1. Where a curing salt is listed, only those that
        measure it by the spoon.
    """
    listed = bool(case.cures)
    texts = (("step", case.recipe.steps), ("note", case.recipe.notes))
    return tuple(
        (kind, number)
        for kind, several in texts
        for number, text in enumerate(several, start=1)
        if _names_cure(text, by_spoon=listed)
    )


def called(case: Case, kind: str, number: int) -> str:
    """Return what to call a step or a note: by its first words too, where a card numbers anew.

    A card puts today's heat step among steps that were written for another: its number must not
    be taken for that of a step that is not to be followed.
    """
    heat = case.recipe.heat
    if kind == "note" or (heat is not _AFTER and case.recipe.steps_heat in (None, heat)):
        return f"{kind} {number}"
    words = case.recipe.steps[number - 1].split()
    first = "".join(one for one in " ".join(words[:4]) if one.isprintable())
    return f'step "{first}{" ..." if len(words) > 4 else ""}"'


_AFTER = HeatStep.OVEN_AFTER


def cure_handling(case: Case) -> tuple[Finding, ...]:
    """Say how curing salt is handled."""
    if not case.cures:
        return ()
    return (
        case.warn(
            "cure-handling",
            "curing salt is toxic in excess: weigh it, by the weight of the meat, on a scale that "
            f"shows {float(STEP_G):g} g, and use no spoon",
            "keep it from children and apart from table salt",
            cites="cure-handling; home-cure-pack",
        ),
    )


def cure_is_no_heat(case: Case) -> tuple[Finding, ...]:
    """Say that curing salt, or its absence, changes nothing about the heat step."""
    if not case.is_meat:
        return ()
    says = (
        "curing salt does not replace the heat step"
        if case.cures or cure_words(case)
        else "there is no curing salt in this recipe, and adding some would not replace heat"
    )
    return (
        case.note(
            "cure-is-no-heat",
            says,
            f"bring the meat to {case.inside} inside with it or without",
            cites=f"cure-no-heat; {case.inside_rule[0]}",
        ),
    )


def own_scale(case: Case) -> tuple[Finding, ...]:
    """Warn where one step of the scale is much of the curing salt that is to be weighed.

    Where nothing is told of the scale, it is taken to show a tenth of a gram, the finest that the
    amounts are printed for.
    """
    step_g = STEP_G if case.scale_g is None else case.scale_g
    return tuple(
        _too_coarse(case, cure, step_g)
        for cure in (_cure(one, item.nitrate_percent) for one, item in case.cures)
        if too_little_to_weigh(cure.mass_g * case.factor, step_g)
    )


def too_little_to_weigh(dose_g: Fraction, step_g: Fraction) -> bool:
    """Whether a dose of curing salt is too little to weigh on a scale.

    Args:
        dose_g: what is to be weighed [g].
        step_g: the step that the scale shows [g].

    Source:
        Rule ``cure-scale-step``.
    """
    return step_g > dose_g * Fraction(limit("cure-scale-step", "share")) / 100


def _unlisted(case: Case, kind: str, number: int) -> Finding:
    return case.finding(
        Severity.ERROR,
        "cure-unlisted",
        f"{called(case, kind, number)} speaks of curing salt, and no ingredient is one: it is not "
        "weighed, not counted and not held to any limit here",
        "put it among the ingredients by weight, with its strength, or leave it out; a spoon is "
        "never right",
        cites="cure-guard; cure-handling",
        path=f"method.{kind}s",
    )


def _by_spoon(case: Case, kind: str, number: int) -> Finding:
    return case.finding(
        Severity.ERROR,
        "cure-by-spoon",
        f"{called(case, kind, number)} measures curing salt by the spoon",
        "weigh what stands among the ingredients, and no other",
        cites="cure-handling",
        path=f"method.{kind}s",
    )


_CURES = (
    "curing salt", "pink salt", "pink cure", "pink curing", "curing powder", "curing mix",
    "cure mix", "cure #", "cure no 1", "cure no 2", "cure number", "#1 cure", "#2 cure", "powder #",
    "powder no ", "of cure ", "tinted cure", "nitrite", "nitrate", "saltpeter", "saltpetre",
    "salt peter", "salt petre",
)  # fmt: skip
_TABLE_SALT = "himalaya"
_OWN_TITLES = frozenset(TITLES.values())
_SPOONS = words_of(
    "tsp tbsp teaspoon teaspoons tablespoon tablespoons spoon spoons spoonful pinch cup cups"
)


def _names_cure(text: str, *, by_spoon: bool) -> bool:
    """Return whether a text asks for curing salt: not only says that there is none."""
    if _TABLE_SALT in text.lower():
        return False
    title, _, rest = text.partition(": ")
    if title in _OWN_TITLES:  # a caution that came back as a note of a recipe brought in
        text = rest
    return any(
        any(one.asks(name) for name in _CURES)
        and not _without(one.words)
        and (not by_spoon or one.has(_SPOONS))
        for sentence in sentences(text)
        for one in sentence
    )


def _without(words: tuple[str, ...]) -> bool:
    """Return whether words say that there is none, or what it does not do."""
    told = [
        word for at, word in enumerate(words)
        if not (word == "no" and at and words[at - 1] in ("cure", "powder", "salt"))
    ]  # fmt: skip
    return not NO.isdisjoint(told) or any(one == "free" or one.endswith("-free") for one in told)


def _too_coarse(case: Case, cure: Cure, step_g: Fraction) -> Finding:
    dose_g = cure.mass_g * case.factor
    meat_g = case.recipe.meat.mass_g * case.factor
    says = f"a scale that shows {float(step_g):g} g cannot weigh {float(dose_g):.2g} g"
    if cure.nitrite_percent is not None:
        one = cure._replace(mass_g=step_g)
        ppm = all_absorbed_ppm(nitrite_g=nitrite_g([one]), meat_mass_g=meat_g)
        says += f" of {cure.name.replace('-', ' ')}: one step is {float(ppm):,.0f} ppm of "
        says += f"nitrite, and {float(LIMIT_PPM):g} is the most that is printed here"
    finer = step_g > STEP_G
    return case.warn(
        "cure-scale-step",
        says,
        f"use one that shows {float(STEP_G):g} g, or leave the curing salt out"
        if finer
        else "make more at once, or leave the curing salt out",
        cites="cure-scale-step; cure-guard",
    )


def _cure(one: Ingredient, nitrate_percent: Fraction | None) -> Cure:
    return Cure(
        name=one.name,
        mass_g=grams_of(one.name, one.amount),
        nitrite_percent=one.strength_percent,
        nitrate_percent=nitrate_percent,
    )
