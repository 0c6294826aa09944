"""Salt, potassium, alcohol, allergens, estimates: when each is said."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from tarebook.findings import Severity
from tarebook.safety.case import Case
from tarebook.safety.caution import TITLES
from tarebook.safety.eaters import (
    alcohol,
    allergens,
    check_salt_crystal,
    enhanced_meat,
    estimate,
    higher_risk,
    home_card,
    much_sodium,
    potassium,
    salt_by_spoon,
    scaling,
)

Cases = Callable[..., Case]


@pytest.mark.parametrize("sodium_mg", [None, 0.0, 459.9])
def test_little_or_unknown_sodium_is_not_told(case: Cases, sodium_mg: float | None) -> None:
    """Under a fifth of a day's sodium, or not known, nothing is said."""
    assert much_sodium(case(sodium_mg_per_oz=sodium_mg)) == ()


def test_a_fifth_of_the_day_is_told(case: Cases) -> None:
    """From 460 mg an ounce, a fifth of 2,300, it is said."""
    (found,) = much_sodium(case(sodium_mg_per_oz=460.0))

    assert found.message == ("an ounce may hold 20 % of the 2,300 mg sodium of a day's reference")
    assert found.hint == "people on a diet low in salt ask their clinician"


def test_potassium_chloride_is_a_warning(case: Cases) -> None:
    """A potassium-based salt brings its caution along."""
    (found,) = potassium(case(rub={"potassium-chloride": "1 tsp"}))

    assert found.severity is Severity.WARNING
    assert potassium(case()) == ()


def test_alcohol_is_said(case: Cases) -> None:
    """Beer, wine, spirits and mirin are alcohol; ginger ale is not."""
    for key in ("beer", "wine-red", "whiskey", "mirin"):
        assert alcohol(case(marinade={key: "1 cup"})) != ()
    assert alcohol(case(marinade={"ginger-ale": "1 cup"})) == ()


def test_enhanced_meat_is_said(case: Cases) -> None:
    """Meat with added solution is told of its sodium, plain meat is not."""
    assert enhanced_meat(case("turkey-breast-enhanced")) != ()
    assert enhanced_meat(case("turkey-breast")) == ()


def test_a_spoon_of_unsaid_salt_is_noted(case: Cases) -> None:
    """Plain salt by the spoon is noted at its line; weighed, or of a named kind, it is not."""
    (found,) = check_salt_crystal(case(rub={"salt": "1 Tbsp"}))

    assert found.severity is Severity.NOTE
    assert found.place.path == "rub.salt"
    assert check_salt_crystal(case(rub={"salt": "18 g"})) == ()
    assert check_salt_crystal(case(rub={"salt-table": "1 Tbsp"})) == ()


def test_a_spoon_of_known_salt_is_said_on_the_card(case: Cases) -> None:
    """Salt of a known kind by the spoon is better weighed, and the card says so."""
    assert salt_by_spoon(case(rub={"salt-kosher-fine-flake": "1 Tbsp"})) != ()
    assert salt_by_spoon(case(rub={"salt-kosher-fine-flake": "18 g"})) == ()
    assert salt_by_spoon(case(rub={"salt": "1 Tbsp"})) == ()


def test_scaling_is_said_where_something_was_scaled(case: Cases) -> None:
    """A scaled recipe is told that hours and temperatures were not; an unscaled one is not."""
    (found,) = scaling(case(factor="5/2"))

    assert found.message == "only amounts were scaled, never hours, temperatures or thickness"
    assert scaling(case()) == ()


@pytest.mark.parametrize("key", ["deer", "salmon-sockeye", "mushroom-shiitake"])
def test_what_is_said_of_everything(case: Cases, key: str) -> None:
    """Allergens, estimate, those at more risk and the standing of the card are always said."""
    batch = case(key)

    assert "read every pack" == allergens(batch)[0].hint
    assert "are estimates" in estimate(batch)[0].message
    assert "pregnant, under 5, over 65" in higher_risk(batch)[0].message
    assert home_card(batch)[0].hint == (
        "local codes and licensed practice stand over it; its figures come from stored copies, so "
        "check the current official text"
    )


def test_no_title_reads_as_a_claim() -> None:
    """No caution is titled in the words that regulations keep for claims on packs of food."""
    claims = ("high in", "low in", "rich in", "source of", "free of", "reduced", "light ")

    assert [] == [title for title in TITLES.values() if title.lower().startswith(claims)]
    assert "Much sodium" == TITLES["much-sodium"]
