"""Ground meat: each rule with a batch it accepts and one it refuses."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from tarebook.findings import Severity
from tarebook.recipe.model import MeatForm
from tarebook.safety.case import Case
from tarebook.safety.ground import check_ground_lean, check_ground_soak, ground

Cases = Callable[..., Case]


def test_seasoning_mixed_in_is_accepted(case: Cases) -> None:
    """Ground meat with its seasoning mixed in is as published."""
    good = case("deer-ground", marinade={}, mixed_in={"salt-table": "10 g"})

    assert check_ground_soak(good) == ()


def test_ground_meat_in_a_marinade_is_a_warning(case: Cases) -> None:
    """Ground meat in a soak is told why not, and where to put the seasoning."""
    (found,) = check_ground_soak(case("deer", form=MeatForm.GROUND))

    assert found.severity is Severity.WARNING
    assert found.place.path == "marinade"
    assert found.message == (
        "ground meat is never soaked: what it lies in carries germs all through it"
    )
    assert found.hint == ("season it by mixing in: move what is under [marinade] to [mixed-in]")


def test_strips_may_be_soaked(case: Cases) -> None:
    """Whole strips in a marinade are no fault."""
    assert check_ground_soak(case()) == ()


@pytest.mark.parametrize("key", ["beef-ground-93", "beef-ground-95", "deer"])
def test_lean_ground_meat_is_accepted(case: Cases, key: str) -> None:
    """93 % lean and up is as published, and so is venison ground at home."""
    assert check_ground_lean(case(key, marinade={}, form=MeatForm.GROUND)) == ()


@pytest.mark.parametrize(
    ("key", "lean"), [("beef-ground-85", "85"), ("bison-ground", "84"), ("deer-ground", "92.8")]
)
def test_fat_ground_meat_is_a_warning(case: Cases, key: str, lean: str) -> None:
    """Fatter ground meat is told how lean it is, by the food table, and what is published."""
    (found,) = check_ground_lean(case(key, marinade={}))

    assert found.severity is Severity.WARNING
    assert f"about {lean} % lean, under the 93 % that is published" in found.message


def test_whole_meat_is_not_asked_how_lean(case: Cases) -> None:
    """A fat cut of whole meat is no business of this rule."""
    assert check_ground_lean(case("beef-brisket-flat-with-fat")) == ()


def test_ground_meat_hears_of_its_risk(case: Cases) -> None:
    """Every card of ground meat says lean, unsoaked and heated; other cards do not."""
    (found,) = ground(case("turkey-ground-93", marinade={}))

    assert found.message == (
        "ground meat carries more risk: at least 93 % lean, and 165 °F (74 °C) inside"
    )
    assert found.hint == "season it by mixing in, never soak it, and heat it before it dries"
    assert ground(case()) == ()
