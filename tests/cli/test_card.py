"""tarebook card."""

from __future__ import annotations

import json
from collections.abc import Callable
from typing import Any

Tarebook = Callable[..., Any]


def test_a_card_ends_as_no_label(tarebook: Tarebook) -> None:
    """The last line of a card says what it is not."""
    status, out, err = tarebook("card", "juniper-venison", "--meat", "6lb")

    assert (0, "") == (status, err)
    assert "Home estimate, not a retail label." == out.splitlines()[-1]
    assert out.startswith("JUNIPER VENISON STRIPS\n")


def test_card_and_scale_hold_the_same_data(tarebook: Tarebook) -> None:
    """As data, a card is the scaled recipe."""
    card = json.loads(tarebook("card", "cabin-rub-elk", "--meat", "6lb", "--json").out)
    scaled = json.loads(tarebook("scale", "cabin-rub-elk", "--meat", "6lb", "--json").out)

    assert scaled == card


def test_the_same_question_has_the_same_answer(tarebook: Tarebook) -> None:
    """Nothing on a card is left to chance from one printing to the next."""
    args = ("card", "trail-sticks-venison", "--meat", "5 lb")

    assert tarebook(*args).out == tarebook(*args).out


def test_nothing_poured_away_is_for_the_card_too(tarebook: Tarebook) -> None:
    """The same answer as from scale."""
    asked = ("juniper-venison", "--nothing-poured-away", "--json")
    card, scaled = (json.loads(tarebook(command, *asked).out) for command in ("card", "scale"))
    poured = json.loads(tarebook("card", "juniper-venison", "--json").out)

    assert scaled == card
    assert poured["estimate"] != card["estimate"]
