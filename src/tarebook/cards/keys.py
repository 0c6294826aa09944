"""The same values as plain data with stable keys: what ``--json`` prints.

Every key that holds a measure names its unit. A figure that is not known is null; a figure that
can only be higher lists in ``missing`` whose share is not known.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from fractions import Fraction
from typing import Any

from tarebook.cards.beside import Variant
from tarebook.cards.worksheet import Worksheet
from tarebook.findings import Finding
from tarebook.nutrition import FIGURES, Estimate
from tarebook.nutrition.compare import Difference, difference
from tarebook.nutrition.range import Range
from tarebook.scaling import ScaledIngredient
from tarebook.scaling.measuring import exact_text

Data = dict[str, Any]


def worksheet_data(sheet: Worksheet) -> Data:
    """Return a scaled recipe as plain data, which ``json.dumps`` takes as it is.

    Args:
        sheet: the recipe at today's size, as ``worksheet`` makes it.
    """
    scaled, recipe = sheet.scaled, sheet.recipe
    return {
        "title": recipe.title,
        "meat": {"food": recipe.meat.food, "mass_g": _number(scaled.meat_mass_g)},
        "factor": _number(scaled.factor),
        "drawer": sheet.drawer.name,
        "ingredients": [_ingredient(one) for one in scaled.ingredients],
        "estimate": estimate_data(sheet.estimate),
        "allergens": {
            "contains": {k: list(v) for k, v in sheet.allergens.contains.items()},
            "check_the_pack": {k: list(v) for k, v in sheet.allergens.check.items()},
            "listed_elsewhere": {k: list(v) for k, v in sheet.allergens.elsewhere.items()},
        },
        "house_limits": _house_limits(sheet),
        "ingoing_nitrite_by_method": [
            {
                "method": one.method,
                "ppm": None if one.ppm is None else float(one.ppm),
                "missing": one.missing or None,
                "rule": one.cites,
            }
            for one in sheet.ingoing
        ],
        "ingoing_nitrite_ppm": None if sheet.cure is None else float(sheet.cure.guard_ppm),
        "keeping": sheet.keep_by.text,
        "soak_hours": list(recipe.soak.hours) if recipe.soak.stated else None,
        "heat_step": recipe.heat.value,
        "steps": list(recipe.steps),
        "steps_written_for": None if recipe.steps_heat is None else recipe.steps_heat.value,
        "notes": list(recipe.notes),
        "cautions": [
            {
                "code": one.code,
                "severity": one.severity.value,
                "title": one.title,
                "text": one.text,
                "rule": one.cites,
                "citation": one.citation,
            }
            for one in sheet.cautions
        ],
        "not_a_retail_label": True,
    }


def _house_limits(sheet: Worksheet) -> Data:
    if not sheet.of_a_day:
        return {}
    from tarebook.cards.a_day_words import a_day_data

    return a_day_data(sheet.of_a_day)


def estimate_data(found: Estimate) -> Data:
    """Return the figures of a batch as plain data."""
    return {
        "ounce_g": found.ounce.grams,
        "ounce": found.ounce.words,
        "per_ounce": {name: range_data(value) for name, value in found.per_ounce.items()},
        "per_batch": {name: range_data(value) for name, value in found.per_batch.items()},
        "finished_g": range_data(found.finished_g),
        "finished_weighed": found.weighed,
        "yield_fraction": range_data(found.yield_fraction),
        "moisture_fraction": range_data(found.moisture_fraction),
        "salt_kept_fraction": range_data(found.salt_kept_fraction),
        "sodium_ceiling_mg_per_oz": found.ceiling_sodium_mg_per_oz,
        "no_sodium_total": list(found.no_sodium_total),
        "percentiles": [5, 50, 95],
    }


def range_data(found: Range | None) -> Data | None:
    """Return a range as plain data, or None."""
    if found is None:
        return None
    return {
        "low": found.low,
        "likely": found.likely,
        "high": found.high,
        "missing": list(found.missing),
        "rough": found.rough,
    }


def comparison_data(variants: Sequence[Variant]) -> Data:
    """Return variants side by side as plain data; each difference is against the first."""
    return {
        "variants": [{"name": one.name, **worksheet_data(one.sheet)} for one in variants],
        "differences": [
            {
                "name": other.name,
                "per_ounce": _differences(variants[0], other, "ounce"),
                "per_batch": _differences(variants[0], other, "batch"),
            }
            for other in variants[1:]
        ],
    }


def findings_data(findings: Iterable[Finding]) -> list[Data]:
    """Return findings as plain data."""
    return [
        {
            "file": one.place.file,
            "line": one.place.line,
            "path": one.place.path,
            "severity": one.severity.value,
            "code": one.code,
            "message": one.message,
            "hint": one.hint,
            "rule": one.cites,
        }
        for one in findings
    ]


def _differences(first: Variant, other: Variant, per: str) -> Data:
    return {
        figure: _difference(difference(first.sheet.estimate, other.sheet.estimate, figure, per=per))
        for figure in FIGURES
    }


def _difference(found: Difference) -> Data:
    return {
        "change": range_data(found.change),
        "percent": range_data(found.percent),
        "only_at_least": found.only_at_least,
        "only_at_most": found.only_at_most,
        "smaller_than_doubt": found.smaller_than_doubt if found.change is not None else None,
    }


def _ingredient(one: ScaledIngredient) -> Data:
    return {
        "name": one.ingredient.name,
        "food": one.food.key,
        "part": one.ingredient.part.value,
        "measure": one.measure.text,
        "measure_within_tolerance": one.measure.within,
        "measure_error_fraction": _number(one.measure.error),
        "exact": exact_text(one.measure.exact),
        "mass_g": None if one.mass is None else _number(one.mass.middle_g),
        "mass_doubt_fraction": None if one.mass is None else one.mass.doubt,
        "density_g_per_ml": None
        if one.mass is None or one.mass.g_per_ml is None
        else _number(one.mass.g_per_ml),
        "density_source": None if one.mass is None else one.mass.source or None,
        "note": one.ingredient.note,
    }


def _number(value: Fraction) -> float:
    return float(value)
