"""Hours carried over from an earlier batch, what is promised of them, and a first batch."""

from __future__ import annotations

from dataclasses import FrozenInstanceError, dataclass, fields
from math import sqrt

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tarebook.drying.time import (
    CarriedOver,
    Conditions,
    DryingTime,
    FirstBatch,
    carried_over,
    first_batch_hours,
    promise,
    time_factor,
)
from tarebook.figures.drying_times import drying_times
from tarebook.figures.working import value

EXPONENT = (1.0, 1.5, 2.0)
ACTIVATION = (18.0, 30.0, 45.0)
BATCHES = st.builds(Conditions, thickness_mm=st.floats(2, 15), air_c=st.floats(40, 90))
HOURS = st.floats(0.5, 60)


def at(thickness_mm: float, air_f: float) -> Conditions:
    """Return conditions with the air in degF, as home dryers are set."""
    return Conditions(thickness_mm=thickness_mm, air_c=(air_f - 32) / 1.8)


def carry(hours: float, before: Conditions, after: Conditions) -> CarriedOver:
    """Carry hours over with the usual values."""
    return carried_over(hours, before, after, exponent=EXPONENT, activation_kj_per_mol=ACTIVATION)


def first(planned: Conditions) -> FirstBatch:
    """Return the hours of a first batch from every printed time."""
    return first_batch_hours(
        drying_times(),
        planned,
        exponent=EXPONENT,
        activation_kj_per_mol=ACTIVATION,
        usual_thickness_mm=(4.5, 8),
        factor=2,
    )


@pytest.mark.parametrize(
    ("before", "after", "factors"),
    [
        (145, 155, (0.900, 0.840, 0.769)),
        (145, 160, (0.856, 0.771, 0.677)),
        (145, 165, (0.814, 0.709, 0.597)),
        (160, 145, (1.169, 1.297, 1.477)),
    ],
)
def test_hotter_air_by_the_computed_factors(
    before: float, after: float, factors: tuple[float, float, float]
) -> None:
    """Air set to another temperature changes the hours by the factors of the table."""
    found = [
        time_factor(at(6.35, before), at(6.35, after), exponent=1.5, activation_kj_per_mol=energy)
        for energy in ACTIVATION
    ]

    assert found == pytest.approx(list(factors), abs=5.1e-4)


@pytest.mark.parametrize(
    ("before", "after", "factors"),
    [
        (6.35, 4.76, (0.750, 0.649, 0.562)),
        (6.35, 8, (1.260, 1.414, 1.587)),
        (5, 6, (1.200, 1.315, 1.440)),
    ],
)
def test_thicker_strips_by_the_computed_factors(
    before: float, after: float, factors: tuple[float, float, float]
) -> None:
    """Strips of another thickness change the hours by the factors of the table."""
    found = [
        time_factor(at(before, 150), at(after, 150), exponent=power, activation_kj_per_mol=30)
        for power in EXPONENT
    ]

    assert found == pytest.approx(list(factors), abs=5.1e-4)


@pytest.mark.parametrize(
    ("hours", "before", "after", "likely", "low", "high"),
    [
        (6, at(6.35, 145), at(4.76, 145), 3.894, 3.371, 4.498),
        (6, at(6.35, 145), at(6.35, 160), 4.626, 4.062, 5.133),
        (7, at(5, 160), at(6.5, 145), 13.456, 10.636, 17.473),
    ],
)
def test_batch_is_carried_over_as_computed(
    hours: float, before: Conditions, after: Conditions, likely: float, low: float, high: float
) -> None:
    """Three batches are carried over to the hours and the range of the table."""
    found = carry(hours, before, after)

    assert [found.low_h, found.likely_h, found.high_h] == pytest.approx(
        [low, likely, high], abs=5.1e-4
    )


# Hours of beef by temperature as printed [degC, h]: the activation energy of 56.6 kJ/mol that
# follows from the ends lies above our range, so their ratio lies outside what we carry over.
PRINTED_HOURS = ((55, 16.5), (65, 10.0), (75, 5.0))


@pytest.mark.published
def test_one_published_series_is_steeper_than_our_range() -> None:
    """Ultrasonic vacuum drying sped up more from 55 to 75 degC than the usual values allow."""
    cool, hot = (Conditions(thickness_mm=6, air_c=degrees) for degrees in (55, 75))
    found = carry(PRINTED_HOURS[0][1], cool, hot)

    assert found.low_h == pytest.approx(6.39, abs=0.01)
    assert PRINTED_HOURS[-1][1] < found.low_h
    assert 16.5 * time_factor(cool, hot, exponent=1, activation_kj_per_mol=56.6) == pytest.approx(
        5.0, abs=0.02
    )


# Activation energies of beef that dries in warm air [kJ/mol], as printed.
PRINTED_ENERGIES = [
    (17.71, "muga-2021", False),
    (28.21, "muga-2021", True),
    (32.83, "beef-infrared-2015", True),
    (41.0, "muga-2021", True),
    (59.2, "muga-2021", False),
]


@pytest.mark.published
@pytest.mark.parametrize(("energy", "source", "inside"), PRINTED_ENERGIES)
def test_printed_energies_against_the_working_range(
    energy: float, source: str, inside: bool
) -> None:
    """Our range holds the middle of what was printed, and leaves out its two ends."""
    low, _, high = value("drying-activation").range

    assert inside == (low <= energy <= high), source


def test_tables_were_made_with_the_working_values() -> None:
    """Exponent and activation energy here are those that the model uses."""
    assert value("drying-thickness-exponent").range == EXPONENT
    assert value("drying-activation").range == ACTIVATION


@given(HOURS, BATCHES)
def test_same_conditions_are_the_same_batch(hours: float, batch: Conditions) -> None:
    """Carried over to its own conditions, a batch takes what it took, without doubt."""
    found = carry(hours, batch, batch)

    assert (hours,) * 4 == found.corners_h
    assert (hours, hours, hours) == (found.low_h, found.likely_h, found.high_h)
    assert found.near


@given(HOURS, BATCHES, BATCHES)
def test_carrying_over_goes_back(hours: float, one: Conditions, other: Conditions) -> None:
    """There and back with the likely values gives the hours one started with."""
    factor = time_factor(one, other, exponent=1.5, activation_kj_per_mol=30)
    back = time_factor(other, one, exponent=1.5, activation_kj_per_mol=30)

    assert hours * factor * back == pytest.approx(hours, rel=1e-12)


@given(HOURS, BATCHES, BATCHES)
def test_range_is_that_of_its_corners(hours: float, one: Conditions, other: Conditions) -> None:
    """The likely hours lie within the corners, and the range is the corners' own."""
    found = carry(hours, one, other)

    assert found.low_h == min(found.corners_h)
    assert found.high_h == max(found.corners_h)
    assert found.low_h <= found.likely_h * (1 + 1e-12)
    assert found.likely_h <= found.high_h * (1 + 1e-12)


@given(BATCHES, st.floats(1, 2), st.floats(0, 20))
def test_thicker_and_cooler_take_longer(batch: Conditions, by: float, cooler: float) -> None:
    """Thicker strips and cooler air never shorten a batch."""
    slow = Conditions(thickness_mm=batch.thickness_mm * by, air_c=batch.air_c - cooler)

    assert carry(6, batch, slow).low_h >= 6 * (1 - 1e-12)


@given(HOURS, BATCHES, BATCHES)
def test_promise_is_never_tighter(hours: float, one: Conditions, other: Conditions) -> None:
    """What is promised is a quarter wide either way, a factor two where batches are unlike."""
    found = carry(hours, one, other)
    told = promise(found, doubt=0.25, far_factor=2)

    assert told.likely_h == found.likely_h
    assert told.low_h <= min(found.low_h, 0.75 * found.likely_h)
    assert told.high_h >= max(found.high_h, 1.25 * found.likely_h)
    if not found.near:
        assert told.low_h <= found.likely_h / 2
        assert told.high_h >= found.likely_h * 2


@pytest.mark.parametrize(
    ("before", "after", "near"),
    [
        (at(6, 150), at(7.5, 165), True),
        (at(6, 150), at(4.5, 135), True),
        (at(6, 150), at(7.6, 150), False),
        (at(6, 150), at(6, 166), False),
        (at(6, 150), at(6, 134), False),
    ],
)
def test_alike_is_a_quarter_and_fifteen_degrees(
    before: Conditions, after: Conditions, near: bool
) -> None:
    """Batches are alike up to a quarter in thickness and 15 degF in the air."""
    assert near == carry(6, before, after).near


def test_first_batch_holds_the_published_span() -> None:
    """For 1/4 in at 145 to 165 degF printed times run from 4 to 12 h; a first batch holds that."""
    for air_f in (145, 150, 155, 160, 165):
        found = first(at(6.35, air_f))

        assert found.low_h <= 4 and found.high_h >= 12
    assert 5 <= first(at(6.35, 155)).likely_h <= 8
    assert 5 <= first(at(6.35, 165)).likely_h <= 8


@given(BATCHES)
def test_first_batch_is_never_tighter_than_a_factor_two(planned: Conditions) -> None:
    """Nobody is promised a first batch to better than half and twice the likely hours."""
    found = first(planned)

    assert found.low_h <= found.likely_h / 2 * (1 + 1e-12)
    assert found.high_h >= found.likely_h * 2 * (1 - 1e-12)


@given(BATCHES, st.floats(1, 2), st.floats(0, 20))
def test_first_batch_of_thicker_strips_takes_longer(
    planned: Conditions, by: float, cooler: float
) -> None:
    """Thicker strips or cooler air never shorten what is told of a first batch."""
    slow = Conditions(thickness_mm=planned.thickness_mm * by, air_c=planned.air_c - cooler)

    assert first(slow).likely_h >= first(planned).likely_h * (1 - 1e-12)
    assert first(slow).high_h >= first(planned).high_h * (1 - 1e-12)


@dataclass(frozen=True, kw_only=True)
class Printed:
    """One printed time for a test."""

    low_h: float | None
    high_h: float | None
    thickness_mm: tuple[float, float] | None = (6, 6)
    air_c: tuple[float, float] = (60, 70)
    source: str = "somebody"


def first_from(rows: list[Printed], *, factor: float = 2) -> FirstBatch:
    """Return the hours of 6 mm strips at 65 degC from a few rows."""
    return first_batch_hours(
        rows,
        Conditions(thickness_mm=6, air_c=65),
        exponent=EXPONENT,
        activation_kj_per_mol=ACTIVATION,
        usual_thickness_mm=(4.5, 8),
        factor=factor,
    )


def test_first_batch_from_one_time_is_still_a_factor_two() -> None:
    """One printed figure alone is widened to half and twice of it."""
    found = first_from([Printed(low_h=6, high_h=6)])

    assert (3, 6, 12) == (found.low_h, found.likely_h, found.high_h)
    assert ("somebody",) == found.sources


def test_first_batch_takes_open_ends_for_what_they_are() -> None:
    """A time printed as "at least" moves the near edge only, and has no middle."""
    found = first_from([Printed(low_h=4, high_h=9), Printed(low_h=1, high_h=None, source="b")])

    assert (1, 6, 12) == (found.low_h, pytest.approx(found.likely_h), found.high_h)
    assert ("somebody", "b") == found.sources


def test_first_batch_without_a_whole_range_is_refused() -> None:
    """No printed time, only open ones, or a promise tighter than a factor two are refused."""
    with pytest.raises(ValueError, match="both ends"):
        first_from([])
    with pytest.raises(ValueError, match="both ends"):
        first_from([Printed(low_h=4, high_h=None)])
    with pytest.raises(ValueError, match="factor of 2"):
        first_from([Printed(low_h=4, high_h=9)], factor=1.5)


@pytest.mark.parametrize("thickness_mm", [0, -6, 0.25, 635, float("nan")])
def test_thickness_that_cannot_be_is_refused(thickness_mm: float) -> None:
    """A strip of no thickness, or one given in another unit, is refused with the likely slip."""
    with pytest.raises(ValueError, match="inches or centimeters"):
        Conditions(thickness_mm=thickness_mm, air_c=65)


@pytest.mark.parametrize("air_c", [-5, 155, 340, float("nan")])
def test_air_that_cannot_be_is_refused(air_c: float) -> None:
    """Air given in degrees Fahrenheit is taken for nothing else."""
    with pytest.raises(
        ValueError, match=r"to 248 °F \(120 °C\) can be reckoned; was it the other scale"
    ):
        Conditions(thickness_mm=6, air_c=air_c)


@pytest.mark.parametrize("hours", [0, -1, 501, float("nan")])
def test_hours_that_cannot_be_are_refused(hours: float) -> None:
    """A batch of no hours, or of three weeks, is refused."""
    with pytest.raises(ValueError, match="above 0, at most 500 h"):
        carry(hours, at(6, 150), at(6, 150))


def test_doubt_that_cannot_be_is_refused() -> None:
    """Faster for being thicker, doubt above the whole, a factor below one: all refused."""
    found = carry(6, at(6, 150), at(6, 150))
    with pytest.raises(ValueError, match="never dries faster"):
        time_factor(at(6, 150), at(6, 150), exponent=-1, activation_kj_per_mol=30)
    with pytest.raises(ValueError, match="between 0 and 1"):
        promise(found, doubt=1, far_factor=2)
    with pytest.raises(ValueError, match="1 or more"):
        promise(found, doubt=0.25, far_factor=0.5)


@pytest.mark.parametrize(
    ("thickness_mm", "air_c"), [(0.5, 65), (50, 65), (6, 10), (6, 120)], ids=str
)
def test_the_limits_themselves_can_be_reckoned(thickness_mm: float, air_c: float) -> None:
    """Strips of 0.5 and 50 mm, air of 10 and 120 degC: the limits are as they are told."""
    found = Conditions(thickness_mm=thickness_mm, air_c=air_c)

    assert (thickness_mm, air_c) == (found.thickness_mm, found.air_c)


@pytest.mark.parametrize(("thickness_mm", "air_c"), [(0.49, 65), (50.1, 65), (6, 9.9), (6, 120.1)])
def test_just_beyond_the_limits_is_refused(thickness_mm: float, air_c: float) -> None:
    """A hair beyond either limit is refused."""
    with pytest.raises(ValueError, match="can be reckoned"):
        Conditions(thickness_mm=thickness_mm, air_c=air_c)


def test_a_batch_of_the_longest_hours_is_carried_over() -> None:
    """500 h are let in, as the refusal says."""
    assert carry(500, at(6, 150), at(6, 150)).likely_h == 500


def test_what_sets_no_pace_changes_nothing() -> None:
    """With no power of the thickness and no energy, neither counts: the factor is one."""
    thin, thick = at(3, 165), at(12, 145)

    assert time_factor(thin, thick, exponent=0, activation_kj_per_mol=0) == 1
    assert time_factor(thin, thick, exponent=0.5, activation_kj_per_mol=0) == 2
    assert time_factor(at(6, 150), at(6, 150), exponent=0.5, activation_kj_per_mol=0.5) == 1


def test_energy_alone_follows_arrhenius() -> None:
    """At R times 1300 K from 300 to 390 K it is exp(-1): 1300 / 300 less 1300 / 390."""
    cool, hot = (Conditions(thickness_mm=6, air_c=kelvin - 273.15) for kelvin in (300, 390))
    energy = 8.314462618e-3 * 1300

    found = time_factor(cool, hot, exponent=2, activation_kj_per_mol=energy)

    assert found == pytest.approx(0.36787944, rel=1e-7)


def test_promise_of_a_batch_alike_is_its_doubt() -> None:
    """Eight hours to be done again, doubted by a quarter: six to ten."""
    told = promise(carry(8, at(6, 150), at(6, 150)), doubt=0.25, far_factor=3)

    assert (6, 8, 10) == (told.low_h, told.likely_h, told.high_h)


def test_promise_of_an_unlike_batch_is_its_factor() -> None:
    """Where strips are a third thicker and four is the factor: a quarter of it to four times."""
    found = carry(6, at(6, 150), at(8, 150))
    told = promise(found, doubt=0.25, far_factor=4)

    assert told.low_h == pytest.approx(found.likely_h / 4)
    assert told.high_h == pytest.approx(found.likely_h * 4)


def test_no_doubt_and_a_factor_of_one_leave_the_corners() -> None:
    """The least that may be asked for adds nothing to what carrying over doubts."""
    far, near = carry(6, at(6, 150), at(9, 130)), carry(6, at(6, 150), at(6.6, 150))

    for found in (far, near):
        told = promise(found, doubt=0, far_factor=1)
        assert (found.low_h, found.high_h) == (told.low_h, told.high_h)


@pytest.mark.parametrize(
    ("hours", "likely"), [((4, 9), 6.5), ((9, 4, 5), 5), ((10, 3, 6, 4), 5), ((1, 2, 4, 7, 90), 4)]
)
def test_likely_hours_are_the_middle_of_the_middles(
    hours: tuple[float, ...], likely: float
) -> None:
    """Of an odd number the middle one, of an even number the mean of the two."""
    found = first_from([Printed(low_h=one, high_h=one) for one in hours])

    assert found.likely_h == pytest.approx(likely)


def test_the_middle_of_a_range_is_its_geometric_one() -> None:
    """From 4 to 9 h is 6 in the middle: as many times the one as the other is times it."""
    assert first_from([Printed(low_h=4, high_h=9)]).likely_h == pytest.approx(sqrt(4 * 9))


HELD = [
    Conditions(thickness_mm=6, air_c=65),
    DryingTime(low_h=3, likely_h=6, high_h=12),
    carry(6, at(6, 150), at(6, 150)),
    first_from([Printed(low_h=4, high_h=9)]),
]


@pytest.mark.parametrize("held", HELD, ids=lambda held: type(held).__name__)
def test_hours_once_told_stay_as_told(held: object) -> None:
    """Nobody changes a value in place, hangs another on it, or mixes up low and high by place."""
    values = {one.name: getattr(held, one.name) for one in fields(held)}  # type: ignore[arg-type]
    assert held == type(held)(**values)
    with pytest.raises(FrozenInstanceError):
        setattr(held, next(iter(values)), 1.0)
    with pytest.raises(TypeError, match="positional"):
        type(held)(*values.values())
    assert not hasattr(held, "__dict__")
