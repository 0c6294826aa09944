"""Curing salt: what must be written before any rule can say how much is too much."""

from __future__ import annotations

import pytest

from tarebook.recipe import read_recipe

BASE = 'title = "x"\n[meat]\nfood = "moose"\namount = "1 kg"\n[mixed-in]\n'


@pytest.mark.parametrize(
    "line",
    [
        'curing-salt-1 = { amount = "2.5 g", strength = "6.25 %" }',
        'curing-salt-1 = { amount = "0.1 oz", strength = "25/4 %", scale = "with meat" }',
        'curing-salt = { amount = "20 g", strength = "0.5 %" }',
        '"our cure" = { food = "curing-salt", amount = "2 g", strength = "10 %" }',
    ],
)
def test_accepted(line: str) -> None:
    """Weighed, its strength stated, growing with the meat: nothing is said."""
    recipe, findings = read_recipe(BASE + line, file="x")
    assert () == findings
    assert recipe is not None
    assert recipe.ingredients[0].strength_percent


@pytest.mark.parametrize(
    ("line", "codes"),
    [
        ('curing-salt-1 = "2.5 g"', {"cure-strength"}),
        ('curing-salt-1 = { amount = "1/2 tsp", strength = "6.25 %" }', {"cure-by-weight"}),
        ('curing-salt-1 = { amount = "a pinch", strength = "6.25 %" }', {"cure-by-weight"}),
        ('curing-salt-1 = { amount = "to taste", strength = "6.25 %" }', {"cure-by-weight"}),
        ('curing-salt-1 = { amount = "2-3 g", strength = "6.25 %" }', {"cure-by-weight"}),
        ('curing-salt-1 = { amount = "2 g", strength = "0.5 %" }', {"cure-strength"}),
        ('curing-salt = { amount = "2 g", strength = "10.1 %" }', {"cure-strength"}),
        ('curing-salt = { amount = "2 g", strength = "0 %" }', {"out-of-range", "cure-strength"}),
        ('curing-salt = { amount = "2 g", strength = 6.25 }', {"no-unit", "cure-strength"}),
        (
            'curing-salt-1 = { amount = "2 g", strength = "6.25 %", scale = "fixed" }',
            {"cure-scale"},
        ),
        (
            'curing-salt-1 = { amount = "2 g", strength = "6.25 %", scale = "whole" }',
            {"cure-scale"},
        ),
        ('curing-salt-2 = { amount = "2 g", strength = "6.25 %" }', {"cure-nitrate"}),
        (
            'salt = { food = "curing-salt-2", amount = "2 g", strength = "6.25 %" }',
            {"cure-nitrate"},
        ),
        ('salt-table = { amount = "2 g", strength = "6.25 %" }', {"cure-strength"}),
    ],
)
def test_refused(line: str, codes: set[str]) -> None:
    """Each way of leaving the dose open is an error of its own, under any name."""
    recipe, findings = read_recipe(BASE + line, file="x")
    assert recipe is None
    assert codes == {finding.code for finding in findings}
