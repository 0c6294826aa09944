"""What an animal, a fish or a mushroom may bring along: parasites, prions, dirt, poison."""

from __future__ import annotations

from tarebook.findings import Finding
from tarebook.safety.case import Animal, Case
from tarebook.safety.rulebook import degrees, foods_of, limit


def pork_freezing(case: Case) -> tuple[Finding, ...]:
    """Say how pork is frozen before it is dried."""
    if case.animal is not Animal.PORK:
        return ()
    return (
        case.warn(
            "pork-freezing",
            f"freeze pork up to 6 in (15 cm) thick at {degrees('pork-freezing', 'freezer')} or "
            "below for 30 days first",
            f"older advice is {degrees('pork-freezing-older', 'freezer')} for 20 days; "
            "neither replaces heat",
            cites="pork-freezing; pork-freezing-older",
        ),
    )


def freezing_rule(case: Case) -> str:
    """Return the rule by which such pork or fish is frozen first; nothing where none does."""
    if case.animal is Animal.PORK:
        return "pork-freezing"
    exempt = case.food.key in foods_of("fish-freezing-exempt")
    return "fish-freezing" if case.animal is Animal.FISH and not exempt else ""


def fish_freezing(case: Case) -> tuple[Finding, ...]:
    """Say how fish is frozen against parasites where it may not be cooked through."""
    if freezing_rule(case) != "fish-freezing":
        return ()
    return (
        case.warn(
            "fish-freezing",
            "fish that is not cooked through can hold live parasites: freeze it first at "
            f"{degrees('fish-freezing', 'freezer')} or below for 7 days",
            "freezing does not remove bacteria, so heat it too",
            cites="fish-freezing; freezing-bacteria",
        ),
    )


def deer_testing(case: Case) -> tuple[Finding, ...]:
    """Say what chronic wasting disease asks of those who eat deer and their kin."""
    if case.animal is not Animal.DEER:
        return ()
    return (
        case.warn(
            "deer-testing",
            "neither cooking nor drying removes the prions of chronic wasting disease",
            "follow state advice on testing, and eat no animal that tested positive or looked sick",
            cites="cwd; prions-heat",
        ),
    )


def gloves(case: Case) -> tuple[Finding, ...]:
    """Say who wears gloves to cut it raw: what comes through the skin no heat step undoes."""
    if case.animal is Animal.WILD_PORK:
        return (
            case.warn(
                "gloves",
                "wild pork may carry brucellosis, which comes in through a cut, the eyes or the "
                "mouth: wear gloves to cut it raw, above all with a cut on the hand",
                f"wash hands {limit('hand-wash', 'wash-time'):g} seconds after; heat kills it, and "
                "freezing, curing, smoking and drying do not",
                cites="gloves-wild-pork; hand-wash",
            ),
        )
    if case.animal is not Animal.DEER:
        return ()
    return (
        case.warn(
            "gloves",
            "wear gloves to cut deer and their kin raw",
            "take nothing of brain or spine, nor (from memory) of lymph nodes",
            cites="cwd; cwd-texas",
        ),
    )


def game_parasites(case: Case) -> tuple[Finding, ...]:
    """Say of game other than bear and wild pork that freezing is not relied upon."""
    if not case.maybe_game or case.animal not in (Animal.DEER, Animal.MEAT):
        return ()
    return (
        case.note(
            "game-parasites",
            "freezing is not reliable against the parasites of wild game, nor are curing, drying "
            "and smoking",
            "rely on the heat step",
            cites="game-freezing",
        ),
    )


def gut_shot(case: Case) -> tuple[Finding, ...]:
    """Say that dirtied game is not dried."""
    if not case.maybe_game:
        return ()
    return (
        case.note(
            "gut-shot",
            "gut-shot or dirtied game is not for drying",
            "cook it through instead, and chill a carcass fast",
            cites="gut-shot",
        ),
    )


def mushroom_poison(case: Case) -> tuple[Finding, ...]:
    """Say that nothing done in a kitchen makes a poisonous mushroom fit to eat."""
    if case.animal is not Animal.MUSHROOM or case.recipe.meat.wild is False:
        return ()
    return (
        case.warn(
            "mushroom-poison",
            "cooking, freezing and drying leave a poisonous mushroom poisonous",
            "use gathered ones only where an expert has named every one",
            cites="mushroom-toxins",
        ),
    )
