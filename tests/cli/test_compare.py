"""tarebook compare."""

from __future__ import annotations

import csv
import io
import json
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

Tarebook = Callable[..., Any]
Written = Callable[..., str]

LESS = ("--swap", "soy-sauce=soy-sauce-low-sodium")


def data_of(tarebook: Tarebook, *args: str) -> dict[str, Any]:
    """Return a comparison as data."""
    found: dict[str, Any] = json.loads(tarebook("compare", *args, "--json").out)
    return found


def test_low_sodium_is_lower(tarebook: Tarebook) -> None:
    """A low-sodium sauce lowers sodium, surely: the range of the difference is below zero."""
    data = data_of(tarebook, "juniper-venison", "--meat", "6lb", *LESS)
    (found,) = data["differences"]

    assert found["per_ounce"]["sodium_mg"]["change"]["high"] < 0
    assert found["per_batch"]["sodium_mg"]["change"]["high"] < 0
    assert found["per_ounce"]["sodium_mg"]["smaller_than_doubt"] is False
    assert "Sodium: B has less" in tarebook("compare", "juniper-venison", *LESS).out


def test_several_swaps_in_one_variant_or_each_its_own(tarebook: Tarebook) -> None:
    """Swaps together make one variant; with --each, one apiece."""
    swaps = (*LESS, "--swap", "brown-sugar=maple-sugar", "--swap", "meat=elk")
    together = data_of(tarebook, "juniper-venison", *swaps)
    each = data_of(tarebook, "juniper-venison", *swaps, "--each")

    assert (2, 4) == (len(together["variants"]), len(each["variants"]))
    changed = together["variants"][1]
    assert "elk" == changed["meat"]["food"]
    assert {"soy-sauce-low-sodium", "maple-sugar"} <= {
        one["food"] for one in changed["ingredients"]
    }
    assert ["deer", "deer", "deer", "elk"] == [one["meat"]["food"] for one in each["variants"]]


@pytest.mark.parametrize(
    ("options", "grams_over"),
    [
        (["--swap", "soy-sauce=honey"], (1.2, 1.3)),  # volume for volume: honey is heavier
        (["--swap", "soy-sauce=honey", "--swap-by", "mass"], (0.999, 1.001)),
        (["--swap", "soy-sauce=honey:1/2", "--swap-by", "mass"], (0.499, 0.501)),
        (["--swap", "soy-sauce=honey:2"], (2.4, 2.6)),
    ],
    ids=lambda value: " ".join(value) if isinstance(value, list) else "",
)
def test_by_volume_by_mass_and_at_a_ratio(
    options: list[str], grams_over: tuple[float, float], tarebook: Tarebook, written: Written
) -> None:
    """Cup for cup unless asked gram for gram, and so many times as much."""
    path = written(marinade={"soy-sauce": "1 cup"})
    first, second = data_of(tarebook, path, "--drawer", "full", *options)["variants"]
    before, after = (one["ingredients"][0]["mass_g"] for one in (first, second))

    assert grams_over[0] < after / before < grams_over[1]


def test_several_recipes(tarebook: Tarebook) -> None:
    """Recipes side by side, each at its own size or all at today's."""
    names = ("juniper-venison", "cabin-rub-elk", "orchard-turkey")
    own = data_of(tarebook, *names)
    today = data_of(tarebook, *names, "--meat", "6lb")

    assert 3 == len(own["variants"]) and 2 == len(own["differences"])
    assert 1 < len({one["meat"]["mass_g"] for one in own["variants"]})
    assert 1 == len({one["meat"]["mass_g"] for one in today["variants"]})


def test_smaller_than_the_doubt(tarebook: Tarebook) -> None:
    """A difference whose range includes zero is said to be smaller than the doubt."""
    args = ("juniper-venison", "--swap", "soy-sauce=soy-sauce-tamari")
    found = data_of(tarebook, *args)["differences"][0]["per_ounce"]["sodium_mg"]

    assert found["change"]["low"] < 0 < found["change"]["high"]
    assert found["smaller_than_doubt"] is True
    said = tarebook("compare", *args).out
    assert "Sodium: the difference is smaller than the doubt in it." in said


def test_potassium_salt_carries_its_caution(tarebook: Tarebook) -> None:
    """Potassium chloride for salt: less sodium, and whom it can harm."""
    swaps = ("--swap", "salt-table=potassium-chloride", "--swap-by", "mass")
    out = " ".join(tarebook("compare", "cranberry-moose", *swaps).out.split())

    assert "Sodium: B has less" in out
    assert "kidney disease" in out and "clinician" in out


def test_too_much_nitrite_on_one_side_prints_nothing(written: Written, tarebook: Tarebook) -> None:
    """One side refused, nothing printed."""
    cure = '{ amount = "5 g", strength = "6.25 %" }'
    status, out, _ = tarebook("compare", "juniper-venison", written(rub={"curing-salt-1": cure}))

    assert (1, "") == (status, out)


def test_too_many_sides_are_told(tarebook: Tarebook) -> None:
    """More variants than letters are refused."""
    status, out, err = tarebook("compare", *["juniper-venison"] * 11)

    assert (2, "") == (status, out)
    assert "at most 10" in err


def test_a_comparison_as_cells(tarebook: Tarebook) -> None:
    """A row a figure and a side."""
    done = tarebook("compare", "juniper-venison", "cabin-rub-elk", "--as", "csv")
    rows = list(csv.reader(io.StringIO(done.out)))

    assert (0, "") == (done.status, done.err)
    assert {"Juniper venison strips", "Cabin pepper elk"} == {row[0] for row in rows[1:]}


def test_a_comparison_as_a_picture(tarebook: Tarebook, tmp_path: Path) -> None:
    """By the ending of the file; the file is told."""
    file = tmp_path / "sides.svg"
    done = tarebook("compare", "juniper-venison", "cabin-rub-elk", "-o", str(file))

    assert (0, "") == (done.status, done.out)
    assert file.read_bytes().startswith(b"<svg")


def test_err_a_form_there_is_none_of(tarebook: Tarebook) -> None:
    """Which there are."""
    done = tarebook("compare", "juniper-venison", "cabin-rub-elk", "--as", "gif")

    assert 2 == done.status and "say text, csv, pdf, svg, png" in done.err
