"""tarebook soak."""

from __future__ import annotations

import json
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

Tarebook = Callable[..., Any]
Written = Callable[..., str]


def test_a_shipped_recipe(tarebook: Tarebook) -> None:
    """Hours against salt and sugar, in 80 columns, nothing on standard error."""
    status, out, err = tarebook("soak", "juniper-venison", "--meat", "6lb")

    assert (0, "") == (status, err)
    assert out.startswith("Juniper venison strips\nAt 6.35 mm thick, as the recipe states.\n")
    assert "How far salt has come to balance" in out
    assert max(len(line) for line in out.splitlines()) <= 80


@pytest.mark.parametrize("name", ["cabin-rub-elk", "trail-sticks-venison"])
def test_no_marinade_is_no_fault(name: str, tarebook: Tarebook) -> None:
    """A recipe without a marinade ends well, with one sentence."""
    status, out, err = tarebook("soak", name)

    assert (0, "") == (status, err)
    assert 1 == out.count(".") and "no marinade" in out


def test_todays_meat_leaves_the_hours_alone(tarebook: Tarebook) -> None:
    """Twice the meat in twice the marinade comes as far in the same time, but for scoops."""
    one, two = (
        json.loads(tarebook("soak", "juniper-venison", "--factor", factor, "--json").out)
        for factor in ("1", "2")
    )

    assert two["meat"]["mass_g"] == pytest.approx(2 * one["meat"]["mass_g"])
    for once, twice in zip(one["after"], two["after"], strict=True):
        likely = (each["salt_toward_balance_fraction"]["likely"] for each in (once, twice))
        assert next(likely) == pytest.approx(next(likely), abs=0.02)


def test_json(tarebook: Tarebook) -> None:
    """Plain data with stable keys, each length with its ranges and its mark."""
    status, out, _ = tarebook("soak", "juniper-venison", "--json")
    data = json.loads(out)

    assert 0 == status
    assert [2, 4, 8, 12, 24, 48] == [one["hours"] for one in data["after"]]
    assert {
        "hours",
        "over_limit",
        "salt_toward_balance_fraction",
        "sugar_toward_balance_fraction",
        "salt_kept_fraction",
    } == set(data["after"][0])
    assert {"cold-soak", "used-marinade"} <= {one["code"] for one in data["cautions"]}


def test_asked_wrongly(tarebook: Tarebook) -> None:
    """A weight that cannot be read is the asker's slip."""
    status, out, err = tarebook("soak", "juniper-venison", "--meat", "6 miles")

    assert (2, "") == (status, out)
    assert err.startswith("tarebook: --meat: ")


def test_a_faulty_recipe(tarebook: Tarebook, written: Written) -> None:
    """A fault of the recipe comes with its file and ends with 1."""
    path = written(marinade={"soy-sauce": "1 cpu"})

    status, out, err = tarebook("soak", path)

    assert (1, "") == (status, out)
    assert err.startswith(f"{path}:")


def test_refused_curing_salt_prints_nothing(tarebook: Tarebook, written: Written) -> None:
    """Where curing salt is beyond what is printed, nothing of the recipe is."""
    path = written(
        marinade={"soy-sauce": "1 cup", "curing-salt-1": '{ amount = "80 g", strength = "6.25 %" }'}
    )

    status, out, _ = tarebook("soak", path)

    assert (1, "") == (status, out)


def test_a_soak_as_a_picture(tarebook: Tarebook, tmp_path: Path) -> None:
    """A document by the ending of the file."""
    file = tmp_path / "soak.pdf"

    assert 0 == tarebook("soak", "juniper-venison", "-o", str(file)).status
    assert file.read_bytes().startswith(b"%PDF")


def test_err_nothing_to_draw(tarebook: Tarebook, tmp_path: Path) -> None:
    """A rub has no soak; no file is made."""
    done = tarebook("soak", "cabin-rub-elk", "-o", str(tmp_path / "soak.pdf"))

    assert 2 == done.status and "nothing to draw" in done.err
    assert [] == list(tmp_path.glob("*.pdf"))


def test_todays_temperature(tarebook: Tarebook) -> None:
    """Warmer is faster, and over a refrigerator's it is warned of."""
    cold, warm = (
        json.loads(tarebook("soak", "juniper-venison", "--temperature", t, "--json").out)
        for t in ("34 F", "15 C")
    )
    likely = [one["after"][0]["salt_toward_balance_fraction"]["likely"] for one in (cold, warm)]

    assert likely[0] < likely[1]
    assert "soak-warm" not in {one["code"] for one in cold["cautions"]}
    assert "soak-warm" in {one["code"] for one in warm["cautions"]}


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("38", "names no scale"),
        ("20 F", "colder the meat is frozen"),
        ("160 F", "a soak is at 28 to 100 °F (-2 to 38 °C)"),
        ("cold", "--temperature"),
    ],
)
def test_err_no_temperature_of_a_soak(text: str, says: str, tarebook: Tarebook) -> None:
    """What is wrong with it; exit status 2."""
    done = tarebook("soak", "juniper-venison", "--temperature", text)

    assert (2, "") == (done.status, done.out)
    assert says in done.err
