"""tarebook target, as it is typed."""

from __future__ import annotations

import json
import re
from collections.abc import Callable
from typing import Any

import pytest

Tarebook = Callable[..., Any]
SMOKED = (
    'title = "Smoke"\n[meat]\nfood = "deer"\namount = "1 kg"\n[marinade]\nsoy-sauce = "1/2 cup"\n'
    'brown-sugar = "1/4 cup packed"\nliquid-smoke = "1 Tbsp"\n[soak]\nhours = 12\n'
)


def test_a_way_is_told(tarebook: Tarebook) -> None:
    """Today's meat, an ounce under 300 mg."""
    status, out, err = tarebook(
        "target", "juniper-venison", "--meat", "6lb", "--sodium", "300 mg/oz"
    )

    assert (0, "") == (status, err)
    assert "1. part of the sauce as its lower-sodium kind" in out


def test_sugars_whose_sum_has_a_gap_are_told_with_it(tarebook: Tarebook) -> None:
    """What is not known comes on top, and that is said."""
    _, out, _ = tarebook("target", "-", "--sugars", "20%", typed=SMOKED)

    assert "liquid smoke is not known and comes on top" in " ".join(out.split())


def test_a_figure_with_a_gap_is_at_least(tarebook: Tarebook) -> None:
    """Now, in each way, weighed instead, and where it is not enough: the mark is on the number."""
    for limit in ("20%", "0.1 g/oz"):
        told = " ".join(tarebook("target", "-", "--sugars", limit, typed=SMOKED).out.split())

        marks = re.findall(r"(at least )?[\d.]+ g \([\d.]+ to [\d.]+\)", told)
        assert {"at least "} == set(marks)


def test_the_label_ounce_is_another_goal(tarebook: Tarebook) -> None:
    """28 g hold less than 28.35 g."""
    both = [
        json.loads(tarebook("target", "juniper-venison", "--sodium", "9 g", *more, "--json").out)
        for more in ([], ["--label-ounce"])
    ]

    assert both[1]["now"]["high"] == pytest.approx(both[0]["now"]["high"] * 28 / 28.349523125)


@pytest.mark.parametrize(
    ("args", "says"),
    [
        ([], "give one of --sodium or --sugars"),
        (["--sodium", "30%", "--sugars", "30%"], "give one of"),
        (["--sodium", "300"], "--sodium"),
        (["--sodium", "300 mg/slice"], "write 300 mg/oz or 4 g/batch"),
        (["--sodium", "30%", "--meat", "6lb", "--factor", "2"], "give one of --meat"),
    ],
)
def test_err_asked_wrongly(args: list[str], says: str, tarebook: Tarebook) -> None:
    """Which option, and what to write; exit status 2."""
    done = tarebook("target", "juniper-venison", *args)

    assert (2, "") == (done.status, done.out)
    assert says in done.err


def test_salt_of_unknown_weight_is_asked_for(tarebook: Tarebook) -> None:
    """No figure stands in for what is not known."""
    text = 'title = "x"\n[meat]\nfood = "deer"\namount = "1 kg"\n[marinade]\n'
    done = tarebook("target", "-", "--sodium", "30%", typed=f'{text}salt = "1 Tbsp"\n')

    assert 0 == done.status
    assert "salt has no weight. Weigh it." in done.out
