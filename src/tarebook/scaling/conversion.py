"""One amount of one food in another unit, with the density that was used."""

from __future__ import annotations

from fractions import Fraction
from typing import Any

from tarebook.figures.foods import Food
from tarebook.figures.measures import density
from tarebook.findings import AmountError, AskedWrongly, UnitError
from tarebook.quantities.amount import Amount, AmountKind, parse_amount
from tarebook.quantities.number import format_fraction
from tarebook.quantities.units import Dimension, dimension, factor, near_units, read_unit
from tarebook.recipe.bottles import Known, known_food
from tarebook.scaling.volume_and_mass import OWN_PANEL, PRINTED, Mass, mass_of
from tarebook.tuples import NamedTuple

_DECIMAL = frozenset({"gram", "kilogram", "milligram", "milliliter", "deciliter", "liter"})
_NOT_SAID = "form not said: "


class Converted(NamedTuple):
    """An amount, what it is in another unit, and who says so.

    Attributes:
        amount: as given.
        food: of what.
        unit: the unit asked for.
        low, high: the amount in that unit, exact; equal unless a range was given.
        mass: the mass with its source, or None where only the unit changed.
    """

    amount: Amount
    food: Food
    unit: str
    low: Fraction
    high: Fraction
    mass: Mass | None

    def lines(self) -> tuple[str, ...]:
        """Return the answer as lines for a screen."""
        value = (
            _shown(self.low, self.unit)
            if self.low == self.high
            else (f"{_shown(self.low, self.unit)} to {_shown(self.high, self.unit)}")
        )
        first = f"{self.amount} {self.food.name} = {value} {_plural(self.unit, self.high)}"
        basis = ("exact: only the unit changes",) if self.mass is None else self._basis()
        return (first, *basis, *self.amount.readings)

    def data(self) -> dict[str, Any]:
        """Return the answer as plain data."""
        mass = self.mass
        return {
            "amount": str(self.amount),
            "food": self.food.key,
            "unit": self.unit,
            "low": float(self.low),
            "high": float(self.high),
            "how": "unit only" if mass is None else mass.how,
            "density_g_per_ml": float(mass.g_per_ml) if mass and mass.g_per_ml else None,
            "source": mass.source if mass else None,
            "confidence": mass.confidence if mass else None,
            "doubt_fraction": mass.doubt if mass else None,
            "note": mass.note if mass else "",
        }

    def _basis(self) -> tuple[str, ...]:
        assert self.mass is not None
        form, note = ", ".join(self.amount.form), self.mass.note
        if form and note.startswith(_NOT_SAID):
            note = f"no density of {form} is held: {note.removeprefix(_NOT_SAID)}"
            form = ""
        lines = []
        if self.mass.g_per_ml is not None:
            lines.append(
                f"density {float(self.mass.g_per_ml):.4g} g/mL{f', {form}' if form else ''}"
            )
        lines.append(
            f"source {self.mass.source} ({self.mass.confidence}); good to about "
            f"{1.645 * self.mass.doubt:.0%} either way, measuring included"
        )
        return (*lines, note) if note else tuple(lines)


def converted(text: str, food_name: str, to: str | None = None) -> Converted:
    """Return an amount of a food in another unit.

    Args:
        text: the amount as a cook writes it.
        food_name: key or alias of the food, or the name of a bottle of the cook's own.
        to: unit wanted; grams for a volume or count, cups for a mass, where not said.

    Returns:
        The answer with its density or count weight.

    Raises:
        AmountError: the amount cannot be read, or has no size ("to taste").
        AskedWrongly: the unit wanted is none of mass or volume.
        UnitError: no density is held for this food.
        FoodUnknown: no food goes by that name.
    """
    amount, item = parse_amount(text), known_food(food_name)
    if amount.kind is AmountKind.TO_TASTE or amount.low is None or amount.high is None:
        raise AmountError(f'"{text}" has no size to convert', text=text)
    given = dimension(amount.unit)
    wanted = _unit(to, given)
    if dimension(wanted) is given:
        by = factor(amount.unit, wanted)
        return Converted(
            amount=amount, food=item.shown, unit=wanted, low=amount.low * by,
            high=amount.high * by, mass=None,
        )  # fmt: skip
    if dimension(wanted) is Dimension.MASS:
        return _to_mass(amount, item, wanted)
    return _to_volume(amount, item, wanted)


def _unit(to: str | None, given: Dimension) -> str:
    if to is None:
        return "cup" if given is Dimension.MASS else "gram"
    unit = read_unit(to)
    if unit is None or dimension(unit) not in (Dimension.MASS, Dimension.VOLUME):
        near = near_units(to, (Dimension.MASS, Dimension.VOLUME))
        hint = (
            f"did you mean {near[0]}?" if near else "write cups, tsp, Tbsp, fl oz, mL, oz, lb or g"
        )
        raise AskedWrongly(f'"{to[:40]}" is no unit of mass or volume; {hint}')
    return unit


def _to_mass(amount: Amount, item: Known, wanted: str) -> Converted:
    mass = mass_of(amount, item.food, g_per_ml=item.g_per_ml)
    if mass is None:
        raise _unknown(amount, item.shown)
    by = factor("gram", wanted)
    return Converted(
        amount=amount, food=item.shown, unit=wanted, low=mass.low_g * by, high=mass.high_g * by,
        mass=mass,
    )  # fmt: skip


def _to_volume(amount: Amount, item: Known, wanted: str) -> Converted:
    """Return a mass (or a count, through its weight) as a volume."""
    mass = mass_of(amount, item.food)
    if mass is None or item.food.curing:
        raise _unknown(amount, item.shown)
    basis = _by_density(mass, item, amount.form)
    if basis is None or basis.g_per_ml is None:
        raise UnitError(f"no density of {item.shown.name} is held, so no volume", given=amount.unit)
    by = factor("milliliter", wanted) / basis.g_per_ml
    return Converted(
        amount=amount, food=item.shown, unit=wanted, low=mass.low_g * by, high=mass.high_g * by,
        mass=basis,
    )  # fmt: skip


def _by_density(mass: Mass, item: Known, form: tuple[str, ...]) -> Mass | None:
    """Return a mass with the density that turns it into a volume, the bottle's own first."""
    own = item.g_per_ml
    if own is not None:
        return mass._replace(
            how="by volume", g_per_ml=own, note="", source=OWN_PANEL, confidence=PRINTED
        )
    known = density(item.food.key, form)
    if known is None:
        return None
    return mass._replace(
        doubt=(mass.doubt**2 + known.spread**2) ** 0.5,
        how="by volume",
        source=known.source,
        confidence=known.confidence,
        note=known.note,
        g_per_ml=known.g_per_ml,
    )


def _unknown(amount: Amount, item: Food) -> UnitError:
    if item.curing:
        return UnitError(f"{item.name} is weighed, never measured by the spoon", given=amount.unit)
    hint = item.advice or "weigh it"
    return UnitError(
        f"nobody has stated what {amount} of {item.name} weighs; {hint}", given=amount.unit
    )


def _shown(value: Fraction, unit: str) -> str:
    """Return a number as its unit is written: kitchen fractions, but decimals of metric units."""
    if value.denominator == 1 or (unit not in _DECIMAL and value.denominator in (2, 3, 4, 8)):
        return format_fraction(value)
    return f"{float(value):.4g}"


def _plural(unit: str, value: Fraction) -> str:
    word = unit.replace("_", " ")
    return word if value <= 1 else f"{word}s"
