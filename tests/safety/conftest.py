"""A batch built in one line: a good venison recipe with whatever a test changes."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from fractions import Fraction
from types import EllipsisType
from typing import Any

import pytest

from tarebook.figures.foods import food as food_of
from tarebook.quantities.amount import parse_amount
from tarebook.recipe.model import (
    Drying,
    Finish,
    HeatStep,
    Ingredient,
    Meat,
    MeatForm,
    Part,
    Recipe,
    ScaleBy,
    Soak,
)
from tarebook.safety.case import Case

Batch = Callable[..., Recipe]


def batch_of(
    food: str = "deer",
    *,
    form: MeatForm = MeatForm.STRIPS,
    thickness_mm: float | None = 6.35,
    wild: bool | EllipsisType | None = ...,
    marinade: Mapping[str, str] | None = None,
    rub: Mapping[str, str] | None = None,
    mixed_in: Mapping[str, str] | None = None,
    strength: str | None = "6.25",
    scale: ScaleBy = ScaleBy.MEAT,
    hours: float | None = 12,
    heat: HeatStep = HeatStep.SIMMERED,
    temperature_f: float | None = 155,
    drying_hours: tuple[float, float] | None = None,
    finish: Finish | None = None,
    lines: Mapping[str, int] | None = None,
) -> Recipe:
    """Return a recipe for one kilogram of meat; unchanged, no rule finds fault with it."""
    parts = {
        Part.MARINADE: {"soy-sauce": "3/4 cup"} if marinade is None else marinade,
        Part.RUB: rub or {},
        Part.MIXED_IN: mixed_in or {},
    }
    return Recipe(
        title="Lake strips",
        file="strips.toml",
        lines=lines or {},
        meat=Meat(
            food=food,
            amount=parse_amount("1000 g"),
            mass_g=Fraction(1000),
            form=form,
            thickness_mm=None if thickness_mm is None else (thickness_mm,) * 3,
            wild=food_of(food).wild if isinstance(wild, EllipsisType) else wild,
        ),
        ingredients=tuple(
            _ingredient(part, name, amount, strength, scale)
            for part, listed in parts.items()
            for name, amount in listed.items()
        ),
        soak=Soak() if hours is None else Soak(hours=(hours, hours, hours), stated=True),
        heat=heat,
        drying=Drying(
            temperature_f=None if temperature_f is None else (temperature_f, temperature_f),
            hours=drying_hours,
            finish=finish,
        ),
    )


def _ingredient(
    part: Part, name: str, amount: str, strength: str | None, scale: ScaleBy
) -> Ingredient:
    curing = food_of(name).curing
    return Ingredient(
        name=name,
        food=name,
        amount=parse_amount(amount),
        part=part,
        scale=scale if curing else ScaleBy.MEAT,
        strength_percent=Fraction(strength) if curing and strength else None,
        path=f"{part.value}.{name}",
    )


@pytest.fixture
def batch() -> Batch:
    """The builder of batches."""
    return batch_of


@pytest.fixture
def case() -> Callable[..., Case]:
    """The builder of cases: what a batch may change, and what only a case has."""

    def build(
        food: str = "deer",
        *,
        factor: str = "1",
        sodium_mg_per_oz: float | None = None,
        vacuum_packed: bool = False,
        moisture_to_protein: float | None = None,
        yield_fraction: float | None = None,
        **changes: Any,
    ) -> Case:
        return Case.of(
            batch_of(food, **changes),
            factor=Fraction(factor),
            sodium_mg_per_oz=sodium_mg_per_oz,
            vacuum_packed=vacuum_packed,
            moisture_to_protein=moisture_to_protein,
            yield_fraction=yield_fraction,
        )

    return build
