"""tarebook convert."""

from __future__ import annotations

import json
from collections.abc import Callable
from typing import Any

import pytest

Tarebook = Callable[..., Any]


@pytest.mark.parametrize(
    ("args", "first"),
    [
        (["3/4 cup packed", "brown-sugar"], "3/4 cup packed brown sugar = 165 grams"),
        (["¾ cup packed", "brown sugar"], "3/4 cup packed brown sugar = 165 grams"),
        (["220 g packed", "brown-sugar"], "220 g packed brown sugar = 1 cup"),
        (["220 g packed", "brown-sugar", "--to", "cups"], "220 g packed brown sugar = 1 cup"),
        (["110 g packed", "brown-sugar", "--to", "Tbsp"], "110 g packed brown sugar = 8 tables"),
        (["1 cup", "honey", "--to", "kg"], "1 cup honey = 0.339 kilogram"),
        (["1 cup", "honey", "--to", "fl oz"], "1 cup honey = 8 fluid ounces"),
        (["1 lb", "salt", "--to", "g"], "1 lb salt, kind of crystal not said = 453.6 grams"),
    ],
    ids=lambda value: " ".join(value) if isinstance(value, list) else "",
)
def test_both_ways(args: list[str], first: str, tarebook: Tarebook) -> None:
    """Volume to mass, mass to volume, and to the unit asked for."""
    status, out, err = tarebook("convert", *args)

    assert (0, "") == (status, err)
    assert out.splitlines()[0].startswith(first)


def test_who_says_so(tarebook: Tarebook) -> None:
    """The density, its form, its source and how sure it is stand below the answer."""
    out = tarebook("convert", "3/4 cup packed", "brown-sugar").out

    assert "density 0.9299 g/mL, packed" in out
    assert "source sr26 (measured); good to about 7%" in out


def test_as_data(tarebook: Tarebook) -> None:
    """The same as JSON, its unit named."""
    data = json.loads(tarebook("convert", "3/4 cup packed", "brown-sugar", "--json").out)

    assert ("brown-sugar", "gram", 165.0, 165.0) == (
        data["food"],
        data["unit"],
        data["low"],
        data["high"],
    )


def test_a_hint_is_not_kept_back(tarebook: Tarebook) -> None:
    """What to write instead is said with what is wrong."""
    assert "write 1.5" in tarebook("convert", "1,5 cups", "honey").err
    assert "did you mean" in tarebook("convert", "1 cpu", "honey").err
