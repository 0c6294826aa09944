"""The dryer, the cut and the end: air temperature, thickness, and a finish that is dry enough."""

from __future__ import annotations

from tarebook.findings import Finding
from tarebook.recipe.model import FinishBy
from tarebook.safety.case import MM_PER_INCH, Animal, Case
from tarebook.safety.rulebook import both_scales, degrees, limit, span

BENDS = "a cooled strip bends and cracks, and does not break"
"""The test of dried strips; rule ``bend-test``."""
_DIAL = 0.05  # [degF] what the way from Celsius may take off


def check_dryer(case: Case) -> tuple[Finding, ...]:
    """Warn where meat dries cooler than published; less gravely where it was heated first."""
    stated = case.recipe.drying.temperature_f
    if not case.is_meat or stated is None:
        return ()
    if stated[0] >= limit("dryer-145", "dryer-air") - _DIAL:
        return ()
    if case.heated_first and not too_cool(case):
        return (_mild(case, stated[0]),)
    after = degrees("dryer-after-heat", "dryer-air")
    return (
        case.warn(
            "dryer-cool",
            f"{both_scales(stated[0])} is under the {degrees('dryer-145', 'dryer-air')} of "
            f"Wisconsin; FSIS gives {after}, and only once the meat has been heated",
            f"dry at {degrees('oven-after', 'dryer-air')}, by a thermometer among the trays",
            cites="dryer-145; dryer-after-heat; oven-after",
            path="drying.temperature",
        ),
    )


def too_cool(case: Case) -> bool:
    """Return whether the dryer is cooler than published for the recipe's heat step."""
    air = case.air_f
    rule = "dryer-after-heat" if case.heated_first else "dryer-145"
    return air is not None and air[0] < limit(rule, "dryer-air") - _DIAL


def too_cold_for_any(case: Case) -> bool:
    """Return whether raw flesh or heated dries cooler than anybody publishes."""
    least = limit("dryer-after-heat", "dryer-air")
    return case.is_flesh and case.air_f is not None and case.air_f[1] < least - _DIAL


def cannot_hold(case: Case) -> bool:
    """Return whether the dryer in the house is one that published advice keeps meat out of."""
    least = limit("fixed-dryer", "dryer-air")
    weak = case.dryer_top_f is not None and case.dryer_top_f < least - _DIAL
    return weak or case.dryer_settable is False


def check_thickness(case: Case) -> tuple[Finding, ...]:
    """Warn of meat cut thicker than the published times are for; note where none is stated."""
    if not case.is_meat:
        return ()
    meat = case.recipe.meat
    if meat.thickness_mm is None:
        return (
            case.note(
                "thickness-blank",
                "no thickness is stated; the published times hold up to 1/4 in (6 mm)",
                'write thickness = "1/4 in" under [meat], or less',
                cites="thickness-quarter-inch",
                path="meat.thickness",
            ),
        )
    if not case.too_thick:
        return ()
    return (
        case.warn(
            "thickness-over",
            f"{_length(meat.thickness_mm[2])} is thicker than the 1/4 in (6 mm) that the published "
            "times are for",
            "cut it to 1/4 in; for what is thicker no times are held, and no keeping time is given",
            cites="thickness-quarter-inch",
            path="meat.thickness",
        ),
    )


def check_finish(case: Case) -> tuple[Finding, ...]:
    """Warn where the recipe stops drying before the meat is as dry as the keeping times ask."""
    finish = case.recipe.drying.finish
    if not case.is_meat or finish is None or not case.too_moist:
        return ()
    if finish.by is FinishBy.WATER_ACTIVITY:
        return (_too_active(case),)
    return (
        case.warn(
            "finish-moist",
            f"this {finish.by.value} cannot meet the moisture-to-protein ratio of 0.75 that jerky "
            "is named by, so no keeping time holds",
            "dry it further, or keep it cold as perishable food",
            cites="too-moist",
            path=f"drying.{finish.by.value}",
        ),
    )


def _too_active(case: Case) -> Finding:
    return case.warn(
        "finish-moist",
        "this water activity is over the 0.85 that FSIS gives for dried meat packed in air, so no "
        "keeping time holds",
        "dry it further, or keep it cold as perishable food; and an estimate is no measurement",
        cites="dry-air-pack",
        path="drying.water-activity",
    )


def weighed_moist(case: Case) -> tuple[Finding, ...]:
    """Warn where the finished batch, put on the scale, is still too moist to keep."""
    if not case.is_meat or not case.weighed_too_moist:
        return ()
    return (
        case.warn(
            "weighed-moist",
            "by its weight this batch is too moist to be jerky, so no keeping time holds",
            "dry it further and weigh it again, or keep it cold as perishable food",
            cites="too-moist",
        ),
    )


def dryer(case: Case) -> tuple[Finding, ...]:
    """Say what the dryer must hold, and what is no dryer for meat; fish only what is held."""
    if case.animal is Animal.FISH:
        return (_fish_dryer(case),)
    if not case.is_meat:
        return ()
    return (
        case.warn(
            "dryer",
            f"the dryer must hold {degrees('fixed-dryer', 'dryer-air')} or more, by a thermometer "
            "and not by its dial",
            "a dryer whose heat cannot be set is not for meat; nor is the sun or a cool oven",
            cites="fixed-dryer; sun-and-cool-oven",
        ),
    )


def own_dryer(case: Case) -> tuple[Finding, ...]:
    """Warn where the dryer in the house cannot be set, or does not get hot enough."""
    if not case.is_flesh:
        return ()
    least = limit("fixed-dryer", "dryer-air")
    if case.dryer_settable is False:
        return (
            case.warn(
                "dryer-fixed",
                "the dryer in this house cannot be set, and one that cannot is not for meat",
                f"borrow one that holds {degrees('fixed-dryer', 'dryer-air')}, or dry in an oven "
                "that does, by a thermometer",
                cites="fixed-dryer; sun-and-cool-oven",
            ),
        )
    if case.dryer_top_f is not None and case.dryer_top_f < least - _DIAL:
        return (
            case.warn(
                "dryer-weak",
                f"the dryer in this house goes to {both_scales(case.dryer_top_f)}, under the "
                f"{degrees('fixed-dryer', 'dryer-air')} of one for meat{_outbreak(case)}",
                "dry in another, or in an oven that holds it, by a thermometer",
                cites="fixed-dryer; outbreak-venison" if _outbreak(case) else "fixed-dryer",
            ),
        )
    return ()


def outbreak_words() -> str:
    """Return what came of venison that was dried too cool."""
    cases, hours = limit("outbreak-venison", "cases"), span("outbreak-venison", "drying-time")
    return (
        f"{cases:g} people fell ill of venison dried at "
        f"{degrees('outbreak-venison', 'dryer-air')} for {hours[0]:g} to {hours[1]:g} hours"
    )


def _outbreak(case: Case) -> str:
    """Return the outbreak where the dryer in the house goes no hotter than that one did."""
    top = case.dryer_top_f
    as_cool = top is not None and top <= span("outbreak-venison", "dryer-air")[1]
    return f"; {outbreak_words()}" if as_cool and case.is_meat else ""


def _mild(case: Case, stated_f: float) -> Finding:
    after = degrees("dryer-after-heat", "dryer-air")
    return case.note(
        "dryer-mild",
        f"{both_scales(stated_f)} is within the {after} of FSIS for meat that has been heated; "
        f"Wisconsin asks for {degrees('dryer-145', 'dryer-air')} or more",
        "take the hotter, by a thermometer among the trays",
        cites="dryer-after-heat; dryer-145",
        path="drying.temperature",
    )


def _fish_dryer(case: Case) -> Finding:
    return case.warn(
        "dryer",
        f"a dryer must hold {degrees('fixed-dryer', 'dryer-air')} or more for meat, by a "
        "thermometer and not by its dial",
        "no figure for fish is held: take no cooler one",
        cites="fixed-dryer; fish-none-held",
    )


def _length(mm: float) -> str:
    return f"{mm / MM_PER_INCH:.2g} in ({mm:.2g} mm)"
