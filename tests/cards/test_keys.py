"""The same values as plain data with stable keys."""

from __future__ import annotations

import json
from collections.abc import Callable
from typing import Any

from tarebook.cards.beside import Variant
from tarebook.cards.keys import comparison_data, findings_data, range_data, worksheet_data
from tarebook.cards.worksheet import Worksheet, worksheet
from tarebook.findings import Finding, Place, Severity
from tarebook.nutrition import FIGURES
from tarebook.nutrition.range import Range
from tarebook.recipe.model import Recipe

Shipped = Callable[..., Worksheet]
RecipeOf = Callable[..., Recipe]

# A key that is taken away or renamed breaks somebody's script; new ones may come.
TOP = {
    "title",
    "meat",
    "factor",
    "drawer",
    "ingredients",
    "estimate",
    "allergens",
    "ingoing_nitrite_by_method",
    "ingoing_nitrite_ppm",
    "keeping",
    "soak_hours",
    "heat_step",
    "steps",
    "notes",
    "cautions",
    "not_a_retail_label",
}
INGREDIENT = {
    "name",
    "food",
    "part",
    "measure",
    "measure_within_tolerance",
    "measure_error_fraction",
    "exact",
    "mass_g",
    "mass_doubt_fraction",
    "density_g_per_ml",
    "density_source",
    "note",
}
ESTIMATE = {
    "ounce_g",
    "ounce",
    "per_ounce",
    "per_batch",
    "finished_g",
    "finished_weighed",
    "yield_fraction",
    "moisture_fraction",
    "salt_kept_fraction",
    "sodium_ceiling_mg_per_oz",
    "no_sodium_total",
    "percentiles",
}
RANGE = {"low", "likely", "high", "missing", "rough"}
CAUTION = {"code", "severity", "title", "text", "rule", "citation"}


def through_json(data: Any) -> Any:
    """Return data as somebody reads it who has only the JSON; NaN and infinity are no JSON."""
    return json.loads(json.dumps(data, allow_nan=False))


def test_a_worksheet_keeps_its_keys(shipped: Shipped) -> None:
    """Every documented key of a scaled recipe is there."""
    data = through_json(worksheet_data(shipped("cranberry-moose", "2")))

    assert TOP <= set(data)
    assert {"food", "mass_g"} <= set(data["meat"])
    assert all(INGREDIENT <= set(one) for one in data["ingredients"])
    assert ESTIMATE <= set(data["estimate"])
    assert all(CAUTION <= set(one) for one in data["cautions"])
    for per in ("per_ounce", "per_batch"):
        assert list(FIGURES) == list(data["estimate"][per])
        assert all(RANGE <= set(one) for one in data["estimate"][per].values())


def test_the_data_says_what_the_page_says(shipped: Shipped) -> None:
    """Measures, grams and figures are the worksheet's own."""
    sheet = shipped(factor="12/5")
    data = through_json(worksheet_data(sheet))
    soy, sodium = data["ingredients"][0], sheet.estimate.per_ounce["sodium_mg"]

    assert ("soy-sauce", "1 cup + 3 Tbsp", "1 1/5 cups") == (
        soy["food"],
        soy["measure"],
        soy["exact"],
    )
    assert sodium is not None
    assert sodium.likely == data["estimate"]["per_ounce"]["sodium_mg"]["likely"]
    assert 2.4 == data["factor"]
    assert ("ounce of 28.35 g", 28.349523125) == (
        data["estimate"]["ounce"],
        data["estimate"]["ounce_g"],
    )


def test_nitrite_is_there_where_there_is_cure(shipped: Shipped) -> None:
    """Ingoing nitrite in ppm, or null where no curing salt is in it."""
    assert 137 < worksheet_data(shipped("cranberry-moose"))["ingoing_nitrite_ppm"] < 138
    assert worksheet_data(shipped())["ingoing_nitrite_ppm"] is None


def test_no_total_is_null(recipe_of: RecipeOf) -> None:
    """Sodium without a total is null, and whose doing it is stands beside it."""
    data = worksheet_data(worksheet(recipe_of(marinade={"salt": "1 Tbsp"})))

    assert data["estimate"]["per_ounce"]["sodium_mg"] is None
    assert data["estimate"]["sodium_ceiling_mg_per_oz"] is None
    assert ["salt"] == data["estimate"]["no_sodium_total"]
    assert data["ingredients"][0]["mass_g"] is None


def test_a_range_is_plain() -> None:
    """Low, likely, high, who is missing, and whether it is rough."""
    found = Range(low=1, likely=2, high=3, unit="g", missing=("allspice",), rough=True)

    assert {"low": 1, "likely": 2, "high": 3, "missing": ["allspice"], "rough": True} == (
        range_data(found)
    )
    assert range_data(None) is None


def test_a_comparison_keeps_its_keys(shipped: Shipped) -> None:
    """Each side is a whole worksheet with a name; each difference is against the first."""
    sides = [Variant("one", shipped()), Variant("two", shipped("cabin-rub-elk"))]
    data = through_json(comparison_data(sides))
    (found,) = data["differences"]

    assert ["one", "two"] == [one["name"] for one in data["variants"]]
    assert all(TOP <= set(one) for one in data["variants"])
    assert "two" == found["name"]
    for per in ("per_ounce", "per_batch"):
        assert set(FIGURES) == set(found[per])
        for one in found[per].values():
            assert {"change", "percent", "smaller_than_doubt"} <= set(one)
            assert {"only_at_least", "only_at_most"} <= set(one)


def test_a_finding_keeps_its_keys() -> None:
    """Where, how badly, what, and what to try."""
    found = Finding(
        place=Place(file="a.toml", line=3, path="meat.food"),
        severity=Severity.ERROR,
        code="food",
        message="no food",
        hint="did you mean",
    )

    assert [
        {
            "file": "a.toml",
            "line": 3,
            "path": "meat.food",
            "severity": "error",
            "code": "food",
            "message": "no food",
            "hint": "did you mean",
            "rule": "",
        }
    ] == findings_data([found])
