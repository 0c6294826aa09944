"""tarebook drying, as it is typed."""

from __future__ import annotations

import json
from collections.abc import Callable
from typing import Any

import pytest

Tarebook = Callable[..., Any]


def hours(done: Any) -> dict[str, Any]:
    """Return the hours by where they come from."""
    return {one["from"]: one for one in json.loads(done.out)["hours"]}


def test_a_first_batch_is_never_told_better_than_a_factor_of_two(tarebook: Tarebook) -> None:
    """Neither from the recipe nor from others."""
    for one in hours(tarebook("drying", "juniper-venison", "--json")).values():
        assert one["low"] <= one["likely"] / 2 * 1.0001
        assert one["high"] >= one["likely"] * 2 * 0.9999


def test_the_last_batch_carries_over(tarebook: Tarebook) -> None:
    """As thick and as hot: as long, a quarter either way. Thinner takes less."""
    same = hours(tarebook("drying", "juniper-venison", "--took", "6", "--json"))["your last batch"]
    thin = hours(
        tarebook("drying", "juniper-venison", "--took", "6", "--thickness", "6 mm", "--json")
    )["your last batch"]

    assert (4.5, 6.0, 7.5) == pytest.approx((same["low"], same["likely"], same["high"]))
    assert thin["likely"] < 6.0


def test_a_batch_that_was_quite_another_keeps_a_factor_of_two(tarebook: Tarebook) -> None:
    """Twice as thick is not near."""
    found = hours(
        tarebook("drying", "juniper-venison", "--took", "3h", "--took-thickness", "3mm", "--json")
    )["your last batch"]

    assert found["high"] >= 2 * found["likely"] * 0.9999


def test_mushrooms_go_by_the_recipe_alone(tarebook: Tarebook) -> None:
    """No time for meat is told of them."""
    assert ["the recipe"] == list(hours(tarebook("drying", "woodland-mushrooms", "--json")))


@pytest.mark.parametrize(
    ("args", "says"),
    [
        (["--took", "0"], "--took: hours above 0 and at most 500"),
        (["--took", "soon"], "--took"),
        (["--took-thickness", "5mm"], "go with --took"),
        (["--thickness", "80mm"], "--thickness: strips of 80 mm"),
        (["--took", "6", "--took-thickness", "80mm"], "--took-thickness: strips of 80 mm"),
        (
            ["--took", "6", "--took-thickness", "5mm", "--took-temperature", "300 F"],
            "--took-temperature: air of 300 °F (149 °C)",
        ),
        (["--meat", "6 miles"], "--meat"),
        (["--thickness", "thin"], "--thickness"),
        (["--temperature", "155"], "names no scale"),
        (["--temperature", "900 F"], "--temperature"),
    ],
)
def test_err_asked_wrongly(args: list[str], says: str, tarebook: Tarebook) -> None:
    """Which option, and what to write; exit status 2."""
    done = tarebook("drying", "juniper-venison", *args)

    assert (2, "") == (done.status, done.out)
    assert says in done.err


def test_err_nothing_is_known(tarebook: Tarebook) -> None:
    """Mushrooms without hours in their recipe."""
    text = (
        'title = "x"\n[meat]\nfood = "mushroom-portabella"\namount = "1 kg"\n[rub]\nhoney = "1 T"\n'
    )
    done = tarebook("drying", "-", typed=text)

    assert 2 == done.status
    assert "nothing is known of how long this dries" in done.err


@pytest.mark.parametrize(
    ("drying", "thickness", "says"),
    [
        ('temperature = "400 F"', "1/4 in", "the recipe: air of 400 °F (204 °C)"),
        ('temperature = "30 F"', "1/4 in", "the recipe: air of 30 °F (-1 °C)"),
        ("hours = 6", "3 in", "the recipe: strips of 76.2 mm"),
    ],
)
def test_err_a_recipe_that_no_hours_are_told_of(
    drying: str, thickness: str, says: str, written: Callable[..., str], tarebook: Tarebook
) -> None:
    """Named as the recipe's, and never a traceback."""
    done = tarebook("drying", written(drying=drying, thickness=thickness))

    assert (2, "") == (done.status, done.out)
    assert says in done.err


def test_an_option_stands_in_for_what_the_recipe_has_wrong(
    written: Callable[..., str], tarebook: Tarebook
) -> None:
    """Where no hours of the recipe have to be carried over from it."""
    path = written(drying='temperature = "400 F"', thickness="3 in")
    done = tarebook("drying", path, "--temperature", "150 F", "--thickness", "6mm", "--json")

    assert (0, ["others"]) == (done.status, list(hours(done)))


def test_todays_meat_is_weighed_against(tarebook: Tarebook) -> None:
    """Twice the meat leaves twice the weight, in as many hours: load is in no figure."""
    one, two = (
        json.loads(tarebook("drying", "juniper-venison", "--meat", m, "--json").out)
        for m in ("3 lb", "6 lb")
    )

    assert two["meat"]["mass_g"] == pytest.approx(2 * one["meat"]["mass_g"])
    assert two["finished_g"]["likely"] == pytest.approx(2 * one["finished_g"]["likely"], rel=0.03)
    assert two["hours"] == one["hours"]


def test_todays_heat_is_minded(tarebook: Tarebook) -> None:
    """A cool dryer given as an option is warned of like one in the recipe."""
    data = json.loads(tarebook("drying", "cabin-rub-elk", "--temperature", "110 F", "--json").out)

    assert "dryer-cool" in {one["code"] for one in data["cautions"]}
    assert data["air_c"] == pytest.approx(43.33, abs=0.01)


def test_hours_of_the_batch_book(tarebook: Tarebook) -> None:
    """Where --took is not given the book tells, and says of which batch; --took goes before it."""
    tarebook("batch", "start", "juniper-venison", "--at", "2026-11-12 06:00")
    tarebook("batch", "dry", "in", "--at", "2026-11-12 08:00")
    tarebook("batch", "dry", "out", "--at", "2026-11-12 14:10")
    tarebook("batch", "finish", "--at", "2026-11-12 15:00")
    done = tarebook("drying", "juniper-venison")
    data = json.loads(tarebook("drying", "juniper-venison", "--json").out)["hours"]

    assert "Your own batches: 4.6 to 7.7 h, likely 6.2 h (an estimate)" in done.out
    assert "By your batch of 12 Nov 2026: 6 h 10 min at the recipe's 150-155 °F" in done.out
    assert ["your own batches", "the recipe", "others"] == [one["from"] for one in data]
    assert [[1], [], []] == [one["batches"] for one in data]
    told = tarebook("drying", "juniper-venison", "--took", "7")
    assert "Your last batch: 5.2 to 8.8 h" in told.out
    assert "Your own batches" not in told.out + tarebook("drying", "cabin-rub-elk").out


def test_hours_of_the_book_at_another_cut(tarebook: Tarebook) -> None:
    """Carried over with all four corners."""
    for moment, what in (("08:00", "in"), ("14:00", "out")):
        if what == "in":
            tarebook("batch", "start", "juniper-venison", "--at", "2026-11-12 06:00")
        tarebook("batch", "dry", what, "--at", f"2026-11-12 {moment}")
    tarebook("batch", "finish", "--at", "2026-11-12 15:00")
    thin = ("--thickness", "5mm")
    own, said = (
        json.loads(tarebook("drying", "juniper-venison", *thin, *more, "--json").out)["hours"][0]
        for more in ([], ["--took", "6"])
    )

    assert own["corners"] == pytest.approx(said["corners"])
    assert [own[end] for end in ("low", "likely", "high")] == pytest.approx(
        [said[end] for end in ("low", "likely", "high")]
    )
