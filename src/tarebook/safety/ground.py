"""Ground meat: what was outside is inside, so that it is leaner, unsoaked and heated through."""

from __future__ import annotations

from tarebook.figures.nutrients import values
from tarebook.findings import Finding
from tarebook.safety.case import Case
from tarebook.safety.rulebook import limit


def check_ground_soak(case: Case) -> tuple[Finding, ...]:
    """Warn where ground meat is put in a marinade."""
    if not case.ground or not case.is_meat or not case.soaked:
        return ()
    return (
        case.warn(
            "ground-soaked",
            "ground meat is never soaked: what it lies in carries germs all through it",
            "move what is under [marinade] to [mixed-in], dry",
            cites="ground-meat",
            path="marinade",
        ),
    )


def check_ground_lean(case: Case) -> tuple[Finding, ...]:
    """Warn where ground meat is fatter than published, going by the fat in the food table."""
    lean = _lean_percent(case)
    least = limit("ground-meat", "lean")
    if lean is None or lean >= least:
        return ()
    return (
        case.warn(
            "ground-fat",
            f"{case.food.name} is about {lean} % lean, under the {least:.0f} % that is published",
            "take a leaner kind",
            cites="ground-meat",
            path="meat.food",
        ),
    )


def ground(case: Case) -> tuple[Finding, ...]:
    """Say what holds for all ground meat."""
    if not case.ground or not case.is_meat:
        return ()
    lean = limit("ground-meat", "lean")
    return (
        case.warn(
            "ground",
            f"ground meat carries more risk: at least {lean:.0f} % lean, and {case.inside} inside",
            "mix dry seasoning and cure in, never soak it, and heat it before it dries",
            cites="ground-meat",
        ),
    )


def _lean_percent(case: Case) -> int | None:
    """Return lean in whole percent, as packs print it; None where its fat is not known."""
    if not case.ground or not case.is_meat:
        return None
    fat_g = values(case.food.key)["fat_g"]
    return None if fat_g is None else int(100 - fat_g + 0.5)
