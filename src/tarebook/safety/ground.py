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
            "season it by mixing in: move what is under [marinade] to [mixed-in]",
            cites="ground-meat",
            path="marinade",
        ),
    )


def check_ground_lean(case: Case) -> tuple[Finding, ...]:
    """Warn where ground meat is fatter than published, going by the fat in the food table."""
    lean = _lean_percent(case)
    least = limit("ground-meat", "lean")
    if lean is None or not too_fat(case):
        return ()
    return (
        case.warn(
            "ground-fat",
            f"{case.food.name} is about {_floored(lean):g} % lean, under the {least:.0f} % that is "
            "published",
            "take a leaner kind",
            cites="ground-meat",
            path="meat.food",
        ),
    )


def too_fat(case: Case) -> bool:
    """Return whether ground meat is fatter than published; no, where its fat is not known."""
    lean = _lean_percent(case)
    return lean is not None and lean < limit("ground-meat", "lean")


def ground(case: Case) -> tuple[Finding, ...]:
    """Say what holds for all ground meat."""
    if not case.ground or not case.is_meat:
        return ()
    lean = limit("ground-meat", "lean")
    return (
        case.warn(
            "ground",
            f"ground meat carries more risk: at least {lean:.0f} % lean, and {case.inside} inside",
            "season it by mixing in, never soak it, and heat it before it dries",
            cites=f"ground-meat; {case.inside_rule[0]}",
        ),
    )


def _floored(percent: float) -> float:
    """Return tenths of a percent, rounded down so that what falls short never prints as met."""
    return int(percent * 10) / 10


def _lean_percent(case: Case) -> float | None:
    """Return lean in percent, never rounded up; None where its fat is not known."""
    if not case.ground or not case.is_meat:
        return None
    fat_g = values(case.food.key)["fat_g"]
    return None if fat_g is None else 100 - fat_g
