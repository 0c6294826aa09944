"""How long a batch dries: the cook's own earlier batch carried over, or a wide range before that.

No formula knows a cook's dryer. A batch once dried in it does: its hours are carried over to
another thickness or another temperature, with the doubt of both steps. Before there is such a
batch, times that others published are all there is, and they lie more than a factor of two
apart. Load, the room's humidity and crowded trays are in none of this: a batch is done by its
weight, not by the clock.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from math import exp, sqrt
from typing import Protocol

# Exact since the units of 2019.
_GAS_CONSTANT = 8.314462618  # J/(mol K)
_FREEZING_K = 273.15

# What a home dryer, an oven or a drying room can be; outside it a unit was mixed up.
_COLDEST_AIR_C, _HOTTEST_AIR_C = 10.0, 120.0
_THINNEST_MM, _THICKEST_MM = 0.5, 50.0
_LONGEST_H = 500.0

NEAR_THICKNESS = 0.25
"""Greatest change in thickness [-] over which a cook's own batch carries over well (W)."""
NEAR_AIR_C = 15 / 1.8
"""Greatest change in the air's temperature [degC], 15 degF, over which it does (W)."""

Range = tuple[float, float, float]
"""A low, a likely and a high value."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Conditions:
    """How a batch is dried, as far as it sets the time.

    Attributes:
        thickness_mm: of the strips, both faces open [mm], 0.5 to 50.
        air_c: temperature of the air, not of the meat [degC], 10 to 120.

    Raises:
        ValueError: outside those limits; the text names the usual slip.
    """

    thickness_mm: float
    air_c: float

    def __post_init__(self) -> None:
        if not _THINNEST_MM <= self.thickness_mm <= _THICKEST_MM:
            raise ValueError(
                f"strips of {self.thickness_mm:g} mm: from {_THINNEST_MM:g} to {_THICKEST_MM:g} mm"
                " can be reckoned; was the unit inches or centimeters?"
            )
        if not _COLDEST_AIR_C <= self.air_c <= _HOTTEST_AIR_C:
            raise ValueError(
                f"air of {_both(self.air_c)}: from {_both(_COLDEST_AIR_C)} to"
                f" {_both(_HOTTEST_AIR_C)} can be reckoned; was it the other scale?"
            )


@dataclass(frozen=True, slots=True, kw_only=True)
class DryingTime:
    """Hours until a batch is as dry as the one they were taken from.

    Attributes:
        low_h, likely_h, high_h: the estimate [h].
    """

    low_h: float
    likely_h: float
    high_h: float


@dataclass(frozen=True, slots=True, kw_only=True)
class CarriedOver(DryingTime):
    """Hours carried over from an earlier batch.

    Attributes:
        corners_h: hours [h] with exponent and activation energy low and low, low and high, high
            and low, high and high; the range runs from the least to the greatest.
        near: the two batches are alike enough for the doubt of a cook's own dryer to hold.
    """

    corners_h: tuple[float, float, float, float]
    near: bool


class PublishedTime(Protocol):
    """A drying time that somebody printed, with the conditions it was printed for.

    Attributes:
        low_h, high_h: hours [h]; None where that end was left open.
        thickness_mm: thinnest and thickest strips [mm]; None where not printed.
        air_c: coolest and hottest air [degC].
        source: id of the source.
    """

    @property
    def low_h(self) -> float | None: ...
    @property
    def high_h(self) -> float | None: ...
    @property
    def thickness_mm(self) -> tuple[float, float] | None: ...
    @property
    def air_c(self) -> tuple[float, float]: ...
    @property
    def source(self) -> str: ...


@dataclass(frozen=True, slots=True, kw_only=True)
class FirstBatch(DryingTime):
    """Hours for a batch in a dryer that nobody has used yet, and who says so.

    Attributes:
        sources: ids of the sources whose times were used, each once.
    """

    sources: tuple[str, ...]


def time_factor(
    before: Conditions, after: Conditions, *, exponent: float, activation_kj_per_mol: float
) -> float:
    """Return how many times as long a batch takes under other conditions.

    Args:
        before, after: conditions of the batch that is known and of the one that is not.
        exponent: power of the thickness [-]: 1 if the surface sets the pace, 2 if travel inside.
        activation_kj_per_mol: how strongly heat hastens drying [kJ/mol].

    Returns:
        Time after over time before [-].

    Raises:
        ValueError: exponent or activation energy is below zero.

    Source:
        Power of the thickness, and the law of Arrhenius at the temperature of the air. Published
        activation energies for beef: source ids "muga-2021", "beef-infrared-2015".

    Example:
        >>> thick = Conditions(thickness_mm=6, air_c=65)
        >>> thin = Conditions(thickness_mm=3, air_c=65)
        >>> time_factor(thick, thin, exponent=1, activation_kj_per_mol=30)
        0.5
    """
    _refuse(exponent >= 0 and activation_kj_per_mol >= 0, "thicker and cooler never dries faster")
    colder = 1 / (after.air_c + _FREEZING_K) - 1 / (before.air_c + _FREEZING_K)
    thicker = after.thickness_mm / before.thickness_mm
    return float(thicker**exponent * exp(activation_kj_per_mol * 1000 / _GAS_CONSTANT * colder))


def carried_over(
    hours: float,
    before: Conditions,
    after: Conditions,
    *,
    exponent: Range,
    activation_kj_per_mol: Range,
) -> CarriedOver:
    """Carry the hours of an earlier batch over to another thickness and temperature.

    Args:
        hours: what the earlier batch took [h], above zero and at most 500.
        before: its conditions.
        after: the conditions planned, in the same dryer, as full, to the same finish.
        exponent: power of the thickness [-], low, likely and high.
        activation_kj_per_mol: how strongly heat hastens drying [kJ/mol], low, likely, high.

    Returns:
        The likely hours, the four corners, and their range [h]: the doubt of the carrying over
        alone. With the conditions unchanged it is the earlier batch itself. What may be told a
        cook is wider: :func:`promise`.

    Raises:
        ValueError: hours are not above zero, or above 500, or a working value is below zero.

    Source:
        As :func:`time_factor`.

    Example:
        >>> quarter = Conditions(thickness_mm=6.35, air_c=62.78)
        >>> thinner = Conditions(thickness_mm=4.76, air_c=62.78)
        >>> found = carried_over(
        ...     6, quarter, thinner, exponent=(1, 1.5, 2), activation_kj_per_mol=(18, 30, 45)
        ... )
        >>> round(found.low_h, 3), round(found.likely_h, 3), round(found.high_h, 3)
        (3.371, 3.894, 4.498)
    """
    _refuse(0 < hours <= _LONGEST_H, f"a batch of {hours:g} h: above 0, at most {_LONGEST_H:g} h")

    def at(power: float, energy: float) -> float:
        return hours * time_factor(before, after, exponent=power, activation_kj_per_mol=energy)

    (p_low, p, p_high), (e_low, e, e_high) = exponent, activation_kj_per_mol
    corners = (at(p_low, e_low), at(p_low, e_high), at(p_high, e_low), at(p_high, e_high))
    return CarriedOver(
        low_h=min(corners),
        likely_h=at(p, e),
        high_h=max(corners),
        corners_h=corners,
        near=_alike(before, after),
    )


def promise(found: CarriedOver, *, doubt: float, far_factor: float) -> DryingTime:
    """Return what may be told a cook of a batch that was carried over.

    Args:
        found: hours carried over from the cook's own batch.
        doubt: doubt of one's own dryer from batch to batch [-]; 0.25 is usual.
        far_factor: least factor either way where the batches are not alike [-]; 2 is usual.

    Returns:
        The same likely hours, with the wider of both ranges [h].

    Raises:
        ValueError: the doubt is not between 0 and 1, or the factor is below 1.
    """
    _refuse(0 <= doubt < 1, "the doubt of a batch lies between 0 and 1")
    _refuse(far_factor >= 1, "a factor of doubt is 1 or more")
    likely = found.likely_h
    low, high = (1 - doubt, 1 + doubt) if found.near else (1 / far_factor, far_factor)
    return DryingTime(
        low_h=min(found.low_h, likely * low),
        likely_h=likely,
        high_h=max(found.high_h, likely * high),
    )


def first_batch_hours(
    published: Iterable[PublishedTime],
    planned: Conditions,
    *,
    exponent: Range,
    activation_kj_per_mol: Range,
    usual_thickness_mm: tuple[float, float],
    factor: float,
) -> FirstBatch:
    """Return how long a first batch may take, from the times that others published.

    Each printed time is taken for somebody's earlier batch and carried over, from the nearest
    of the conditions it was printed for.

    Args:
        published: printed times; at least one with both ends.
        planned: thickness and air of the batch planned.
        exponent: power of the thickness [-], low, likely and high.
        activation_kj_per_mol: how strongly heat hastens drying [kJ/mol], low, likely, high.
        usual_thickness_mm: strips meant where no thickness was printed [mm], thin and thick.
        factor: least factor either way from the likely time [-], 2 or more.

    Returns:
        From the least to the greatest of all that was printed, with the middle one of their
        middles as the likely time [h]; never nearer to it than the factor.

    Raises:
        ValueError: the factor is below 2, or no printed time has both ends.
    """
    _refuse(factor >= 2, "a first batch cannot be told better than a factor of 2 either way")
    low, middle, high, sources = [], [], [], []
    for row in published:
        there = _nearest(row, planned, usual_thickness_mm)
        ends = [
            carried_over(
                hours,
                there,
                planned,
                exponent=exponent,
                activation_kj_per_mol=activation_kj_per_mol,
            )
            for hours in (row.low_h, row.high_h)
            if hours is not None
        ]
        low += [end.low_h for end in ends]
        high += [end.high_h for end in ends]
        if len(ends) == 2:
            middle.append(sqrt(ends[0].likely_h * ends[1].likely_h))
        sources.append(row.source)
    _refuse(bool(middle), "no published time with both ends")
    likely = _middle_one(middle)
    return FirstBatch(
        low_h=min(*low, likely / factor),
        likely_h=likely,
        high_h=max(*high, likely * factor),
        sources=tuple(dict.fromkeys(sources)),
    )


def _nearest(
    row: PublishedTime, planned: Conditions, usual_thickness_mm: tuple[float, float]
) -> Conditions:
    return Conditions(
        thickness_mm=_clamp(planned.thickness_mm, row.thickness_mm or usual_thickness_mm),
        air_c=_clamp(planned.air_c, row.air_c),
    )


def _alike(before: Conditions, after: Conditions) -> bool:
    thicker = abs(after.thickness_mm / before.thickness_mm - 1)
    hotter = abs(after.air_c - before.air_c)
    return thicker <= NEAR_THICKNESS + 1e-9 and hotter <= NEAR_AIR_C + 1e-9


def _both(celsius: float) -> str:
    return f"{celsius * 1.8 + 32:.0f} °F ({celsius:.0f} °C)"


def _clamp(value: float, ends: tuple[float, float]) -> float:
    low, high = ends
    return min(max(value, low), high)


def _middle_one(values: Sequence[float]) -> float:
    ordered = sorted(values)
    half = len(ordered) // 2
    return ordered[half] if len(ordered) % 2 else (ordered[half - 1] + ordered[half]) / 2


def _refuse(sensible: bool, why: str) -> None:
    if not sensible:
        raise ValueError(why)
