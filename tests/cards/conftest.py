"""Worksheets, and what a page says once its lines are unwrapped."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from fractions import Fraction
from functools import cache

import pytest

from tarebook.cards.lines import Line
from tarebook.cards.worksheet import Worksheet, worksheet
from tarebook.recipe.load import load_recipe


@cache
def shipped_sheet(name: str = "juniper-venison", factor: str = "1") -> Worksheet:
    """Return a shipped recipe at so many times its size."""
    recipe, _ = load_recipe(name)
    return worksheet(recipe, factor=Fraction(factor))


def said(lines: Iterable[Line]) -> str:
    """Return what lines say, with all wrapping undone."""
    return " ".join(" ".join(line.text for line in lines).split())


@pytest.fixture
def shipped() -> Callable[..., Worksheet]:
    """The worksheets of the shipped recipes."""
    return shipped_sheet


@pytest.fixture
def unwrapped() -> Callable[[Iterable[Line]], str]:
    """The reader of whole pages."""
    return said
