"""tarebook foods."""

from __future__ import annotations

import json
import re
from collections.abc import Callable
from typing import Any

import pytest

Tarebook = Callable[..., Any]


@pytest.mark.parametrize(
    ("words", "first"),
    [
        (["shoyu"], "soy-sauce"),
        (["green", "onion"], "scallion"),
        (["venison"], "deer"),
        (["SOY", "low"], "soy-sauce-low-sodium"),
        (["brown sugar"], "brown-sugar"),
    ],
)
def test_a_food_is_found_by_any_of_its_names(
    words: list[str], first: str, tarebook: Tarebook
) -> None:
    """Aliases, capitals and the order of words do not matter; the likeliest stands first."""
    status, out, _ = tarebook("foods", "find", *words)

    assert 0 == status
    assert first == out.split()[0]


def test_found_foods_as_data(tarebook: Tarebook) -> None:
    """Key, name and kind of each; of a food of the tables, like nothing else."""
    found = json.loads(tarebook("foods", "find", "shoyu", "--json").out)

    named = {"food": "soy-sauce", "name": "soy sauce (shoyu)"}
    assert {**named, "kind": "sauce", "like": ""} == found[0]


@pytest.mark.parametrize("more", [[], ["--json"]])
def test_nothing_found_is_a_fault(more: list[str], tarebook: Tarebook) -> None:
    """No food: said on standard error, with 1, as text and as data."""
    assert (1, "", 'tarebook: no food is called "xyzzy"\n') == tarebook(
        "foods", "find", "xyzzy", *more
    )


def test_every_figure_with_its_source(tarebook: Tarebook) -> None:
    """Figures, measures in grams, and who says so."""
    out = tarebook("foods", "show", "shoyu").out

    assert "(sr26 16123)" in out and "5,493 mg" in out
    assert re.search(r"^ +tablespoon +16 g  sr26, measured$", out, re.M)


def test_a_food_as_data(tarebook: Tarebook) -> None:
    """The same as JSON."""
    data = json.loads(tarebook("foods", "show", "shoyu", "--json").out)

    assert 5493 == data["per_100_g"]["sodium_mg"]["value"]
    assert ["soybeans", "wheat"] == data["allergens"]
