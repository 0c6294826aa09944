"""How long a load dries, as far as anybody can tell beforehand."""

from __future__ import annotations

from math import sqrt

from tarebook.drying.time import (
    Conditions,
    carried_over,
    first_batch_hours,
    promise,
    time_factor,
)
from tarebook.figures.drying_times import drying_times
from tarebook.figures.working import value
from tarebook.findings import QuantityError
from tarebook.plan.trays import QUARTER_INCH_MM
from tarebook.tuples import NamedTuple

_THINNEST_MM, _THICKEST_MM = 0.5, 50.0
_PER_HOUR = 6  # times ten minutes
_USUAL_MM = (4.76, 6.35)  # what is meant where a source prints no thickness


class Hours(NamedTuple):
    """Drying hours, with where they come from.

    Attributes:
        low_h, likely_h, high_h: [h].
        why: where they come from, a sentence.
        sources: ids of the sources; empty where they are the cook's own.
        corners_h: where a batch was carried over, hours [h] with the thickness counting little
            and heat little, little and much, much and little, much and much.
        batches: numbers of the batches of the book that tell them; empty where it was not asked.
    """

    low_h: float
    likely_h: float
    high_h: float
    why: str
    sources: tuple[str, ...] = ()
    corners_h: tuple[float, float, float, float] | None = None
    batches: tuple[int, ...] = ()

    def as_told(self) -> Hours:
        """Return the same to ten minutes: nobody knows them better.

        A plan tells and reckons with these, so that a start and a length always make the end.
        """
        low, likely, high = (
            max(round(one * _PER_HOUR), 1) / _PER_HOUR
            for one in (self.low_h, self.likely_h, self.high_h)
        )
        return self._replace(low_h=low, likely_h=likely, high_h=high)

    def at_least(self, hours: float, why: str) -> Hours:
        """Return the same with none of the three under some hours."""
        if self.low_h >= hours:
            return self
        low, likely, high = (max(one, hours) for one in (self.low_h, self.likely_h, self.high_h))
        return self._replace(
            low_h=low,
            likely_h=likely,
            high_h=high,
            why=f"{self.why}; at least {hours:g} h, which {why}",
        )


def conditions(thickness_mm: float | None, air_f: tuple[float, float]) -> Conditions:
    """Return how a load is dried: its thickness, a quarter inch where not stated, and its air.

    Raises:
        QuantityError: the air is colder or hotter than any hours are told of.
    """
    mm = thickness_mm if thickness_mm is not None else QUARTER_INCH_MM
    middle = (air_f[0] + air_f[1]) / 2
    try:
        return Conditions(
            thickness_mm=min(max(mm, _THINNEST_MM), _THICKEST_MM), air_c=(middle - 32) / 1.8
        )
    except ValueError as fault:
        raise QuantityError(str(fault)) from None


def own_hours(low_h: float, high_h: float) -> Hours:
    """Return the hours of a cook's own batch in this dryer, with the doubt of the next one.

    Args:
        low_h, high_h: what such a batch took [h]; the same where it was one.

    Source:
        ``working-values.csv``, row ``drying-rescale-error``.
    """
    same = conditions(None, (150.0, 150.0))
    carried = carried_over(
        sqrt(low_h * high_h),
        same,
        same,
        exponent=value("drying-thickness-exponent").range,
        activation_kj_per_mol=value("drying-activation").range,
    )
    doubt = value("drying-rescale-error").likely
    found = promise(carried, doubt=doubt, far_factor=value("drying-first-batch-factor").likely)
    return Hours(
        min(found.low_h, low_h),
        found.likely_h,
        max(found.high_h, high_h),
        f"your own batch in this dryer, give or take {doubt:.0%}",
    )


def carried_hours(hours: float, before: Conditions, planned: Conditions) -> Hours:
    """Return the hours of a cook's own batch, carried over to another thickness and heat.

    Args:
        hours: what that batch took [h].
        before: its thickness and air.
        planned: thickness and air of this batch, in the same dryer, as full.

    Returns:
        The hours with all four corners of the carrying over, and the doubt of the next batch.

    Raises:
        ValueError: the hours mean nothing.

    Source:
        ``working-values.csv``, rows ``drying-thickness-exponent``, ``drying-activation``,
        ``drying-rescale-error`` and ``drying-first-batch-factor``.
    """
    carried = carried_over(
        hours,
        before,
        planned,
        exponent=value("drying-thickness-exponent").range,
        activation_kj_per_mol=value("drying-activation").range,
    )
    doubt = value("drying-rescale-error").likely
    far = value("drying-first-batch-factor").likely
    found = promise(carried, doubt=doubt, far_factor=far)
    why = f"your own batch of {hours:g} h"
    if planned != before:
        why = f"{why}, carried over to this cut and heat"
    if carried.near:
        why = f"{why}, and at least {doubt:.0%} either way from one batch to the next"
    else:
        why = f"{why}, which is so unlike it that a factor of {far:g} either way stays"
    return Hours(
        found.low_h,
        found.likely_h,
        found.high_h,
        why,
        corners_h=None if planned == before else carried.corners_h,
    )


def recipe_hours(low_h: float, high_h: float, written: Conditions, planned: Conditions) -> Hours:
    """Return the hours that a recipe states, as far as they hold for a dryer not yet tried.

    Args:
        low_h, high_h: as the recipe states [h].
        written: thickness and air that the recipe states them for.
        planned: thickness and air of this plan.

    Returns:
        The recipe's hours in the middle, with a factor of doubt either way, or more where they
        are carried over far.

    Source:
        ``working-values.csv``, rows ``drying-thickness-exponent``, ``drying-activation`` and
        ``drying-first-batch-factor``.
    """
    low, times, high = _times(written, planned)
    factor = value("drying-first-batch-factor").likely
    likely = sqrt(low_h * high_h) * times
    carried = "" if planned == written else ", carried over to this cut and heat"
    return Hours(
        min(low_h * low, likely / factor),
        likely,
        max(high_h * high, likely * factor),
        f"the recipe's {_span(low_h, high_h)} h{carried}, and twice as much or half for a dryer "
        "not tried with it",
    )


def _times(written: Conditions, planned: Conditions) -> tuple[float, float, float]:
    """Return how many times as long it takes: least and most of the four corners, and likely."""
    power, energy = value("drying-thickness-exponent"), value("drying-activation")

    def at(exponent: float, activation: float) -> float:
        return time_factor(written, planned, exponent=exponent, activation_kj_per_mol=activation)

    corners = [at(p, e) for p in (power.low, power.high) for e in (energy.low, energy.high)]
    return min(corners), at(power.likely, energy.likely), max(corners)


def published_hours(planned: Conditions) -> Hours:
    """Return what others printed for such strips, where neither cook nor recipe says."""
    found = first_batch_hours(
        drying_times(),
        planned,
        exponent=value("drying-thickness-exponent").range,
        activation_kj_per_mol=value("drying-activation").range,
        usual_thickness_mm=_USUAL_MM,
        factor=value("drying-first-batch-factor").likely,
    )
    return Hours(
        found.low_h,
        found.likely_h,
        found.high_h,
        "times that others published for meat strips, since neither you nor the recipe says",
        found.sources,
    )


def _span(low: float, high: float) -> str:
    return f"{low:g}" if low == high else f"{low:g}-{high:g}"
