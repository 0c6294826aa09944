"""Exceptions that carry more than their words."""

from __future__ import annotations

from tarebook.findings import FoodUnknown


def test_names_near_an_unknown_food_are_looked_for_when_asked_for_and_once() -> None:
    """Who only asks whether there is such a food does not wait for names like it."""
    looked: list[str] = []

    def near() -> tuple[str, ...]:
        looked.append("looked")
        return ("honey", "maple-syrup")

    fault = FoodUnknown("hony", near)
    assert [] == looked
    assert 'no food is called "hony"; did you mean honey or maple-syrup?' == str(fault)
    assert ("honey", "maple-syrup") == fault.near
    assert ["looked"] == looked
