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
        (["--thickness", "80mm"], "was the unit inches or centimeters?"),
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
