"""Salt, sugars and meat solids alone: printed tables, computed tables, and the way back."""

from __future__ import annotations

import csv
from math import exp, sqrt
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tarebook.drying.water_held import (
    FRUCTOSE,
    GLUCOSE,
    MOST_SALT_PERCENT,
    SUCROSE,
    WATER_G_PER_MOL,
    Gab,
    Sugar,
    salt_activity,
    salt_water_held,
    solids_water_held,
    sugar_activity,
    sugar_water_held,
)

HERE = Path(__file__).parent
SALT_G_PER_MOL = 58.443
SATURATED_MOLALITY = 6.144  # salt that 1 kg of water dissolves at 25 degC [mol/kg]
LOW = Gab(0.055, 10, 0.90)
LIKELY = Gab(0.062, 12, 0.93)
HIGH = Gab(0.068, 15, 0.955)
ACTIVITIES = st.floats(0.50, 0.9995)


def rows_of(name: str) -> list[dict[str, str]]:
    """Return the rows of a table beside this file."""
    with (HERE / name).open(newline="", encoding="utf-8") as file:
        return list(csv.DictReader(file))


def osmotic_coefficient(molality: float) -> float:
    """Return that of a brine at 25 degC by Pitzer's form: what our own fit is held against.

    Source: Pitzer and Mayorga 1973, source id pitzer-mayorga-1973 (constants from memory).
    """
    root = sqrt(molality)
    pairs = 0.0765 + 0.2664 * exp(-2 * root)
    return 1 - 0.3915 * root / (1 + 1.2 * root) + molality * pairs + molality * molality * 0.00127


def brine_activity(molality: float) -> float:
    """Return the water activity of a brine that is not yet saturated, by the same form."""
    return exp(-WATER_G_PER_MOL / 1000 * 2 * molality * osmotic_coefficient(molality))


BRINES = rows_of("brines.csv")
PRINTED = [row for row in BRINES if row["phi_printed"]]
DISSOLVED = [row for row in BRINES if row["phi_pitzer"]]
HELD = rows_of("water_held.csv")


@pytest.mark.published
@pytest.mark.parametrize("row", PRINTED, ids=lambda row: f"{row['molality']} mol/kg")
def test_osmotic_coefficient_meets_the_printed_table(row: dict[str, str]) -> None:
    """A brine's osmotic coefficient is within 0.0031 of Robinson and Stokes, source on the row."""
    found = osmotic_coefficient(float(row["molality"]))

    assert found == pytest.approx(float(row["phi_printed"]), abs=3.1e-3), row["source"]


@pytest.mark.published
def test_brine_is_never_far_from_the_printed_table() -> None:
    """Pitzer's form strays by 0.0004 in activity from the printed table, Tang's by 0.0013."""
    pitzer = [
        abs(brine_activity(float(row["molality"])) - float(row["activity_printed_phi"]))
        for row in PRINTED
    ]
    tang = [
        abs(salt_activity(float(row["salt_percent"])) - float(row["activity_printed_phi"]))
        for row in PRINTED
    ]

    assert len(PRINTED) == 23
    assert max(pitzer) == pytest.approx(0.00042, abs=3e-5)
    assert max(tang) == pytest.approx(0.00126, abs=1e-4)


@pytest.mark.parametrize("row", DISSOLVED, ids=lambda row: f"{row['molality']} mol/kg")
def test_brine_meets_the_computed_table(row: dict[str, str]) -> None:
    """Coefficient and activity agree with an independent computation to its last digit."""
    molality = float(row["molality"])

    assert osmotic_coefficient(molality) == pytest.approx(float(row["phi_pitzer"]), abs=6e-6)
    assert brine_activity(molality) == pytest.approx(float(row["activity_pitzer"]), abs=6e-6)


@pytest.mark.parametrize("row", DISSOLVED, ids=lambda row: f"{row['molality']} mol/kg")
def test_brine_meets_a_second_form(row: dict[str, str]) -> None:
    """The form of Hamer and Wu, source hamer-wu-1972, gives the same activity within 0.0007."""
    found = brine_activity(float(row["molality"]))

    assert found == pytest.approx(float(row["activity_hamer_wu"]), abs=7e-4)


@pytest.mark.parametrize("row", BRINES, ids=lambda row: f"{row['salt_percent']} %")
def test_strong_brine_meets_the_computed_table(row: dict[str, str]) -> None:
    """Up to 42 % salt, far beyond saturation, the activity is that of the table."""
    found = salt_activity(float(row["salt_percent"]))

    assert found == pytest.approx(float(row["activity_tang"]), abs=6e-6), row["source"]


SATURATED = [
    ("25 degC", 0.753, "greenspan-1977", 0.003),
    ("30 degC, the greatest of 0 to 50 degC", 0.756, "wexler-hasegawa-1954", 0.004),
    ("0 degC, the least of 0 to 50 degC", 0.749, "wexler-hasegawa-1954", 0.004),
]


@pytest.mark.published
@pytest.mark.parametrize(("when", "measured", "source", "within"), SATURATED)
def test_saturated_brine_meets_the_hygrometers(
    when: str, measured: float, source: str, within: float
) -> None:
    """Over saturated salt both forms give the humidity that hygrometers are set by."""
    percent = 100 * SATURATED_MOLALITY / (SATURATED_MOLALITY + 1000 / SALT_G_PER_MOL)

    assert brine_activity(SATURATED_MOLALITY) == pytest.approx(measured, abs=within), (when, source)
    assert salt_activity(percent) == pytest.approx(measured, abs=within), (when, source)


SYRUPS = [
    (0.25, 0.98594, 0.97431, 0.97436),
    (0.5, 0.97022, 0.94754, 0.94775),
    (1.0, 0.93476, 0.89234, 0.89308),
    (2.0, 0.85320, 0.78285, 0.78503),
]


@pytest.mark.parametrize(("strength", "sucrose", "glucose", "fructose"), SYRUPS)
def test_syrup_meets_the_computed_table(
    strength: float, sucrose: float, glucose: float, fructose: float
) -> None:
    """Syrups of each sugar have the activities of the table, within 1e-5."""
    found = [sugar_activity(sugar, strength) for sugar in (SUCROSE, GLUCOSE, FRUCTOSE)]

    assert found == pytest.approx([sucrose, glucose, fructose], abs=1e-5)


@pytest.mark.published
def test_saturated_syrup_meets_the_measured_activity() -> None:
    """Saturated sucrose, 2.077 g per g: 0.844 to 0.85 measured (from memory), 0.8466 here."""
    found = sugar_activity(SUCROSE, 2.077)

    assert found == pytest.approx(0.8466, abs=5e-5)
    assert 0.844 <= found <= 0.85


# Water held [g per 100 g] as printed, source sloan-labuza-1975 (amorphous sugars; salt that is
# drying), and how much more we give, in per cent. Sugars hold too much here the drier they are;
# glucose crystallised there. The printed salt at 0.80 would be a brine of activity 0.83.
PRINTED_WATER = [
    ("sucrose", 0.60, 14.0, 44),
    ("sucrose", 0.70, 20.0, 33),
    ("sucrose", 0.80, 35.0, 9),
    ("sucrose", 0.90, 65.0, 7),
    ("fructose", 0.60, 18.0, 39),
    ("fructose", 0.70, 30.0, 17),
    ("fructose", 0.80, 44.0, 22),
    ("fructose", 0.90, 80.0, 33),
    ("glucose", 0.90, 22.0, 388),
    ("salt", 0.80, 385.0, -13),
    ("salt", 0.90, 590.0, 2),
]


@pytest.mark.published
@pytest.mark.parametrize(("what", "activity", "printed", "more"), PRINTED_WATER)
def test_water_held_against_a_printed_table(
    what: str, activity: float, printed: float, more: int
) -> None:
    """How far the water held lies from the printed table is known, and no secret."""
    sugars = {"sucrose": SUCROSE, "fructose": FRUCTOSE, "glucose": GLUCOSE}
    found = 100 * (
        salt_water_held(activity) if what == "salt" else sugar_water_held(sugars[what], activity)
    )

    assert more == round(100 * (found / printed - 1))


def test_printed_salt_at_080_contradicts_the_printed_coefficients() -> None:
    """What one printed table calls a brine of 0.80 is 0.83 by the osmotic coefficients."""
    molality = 1000 / SALT_G_PER_MOL / 3.85

    assert brine_activity(molality) == pytest.approx(0.832, abs=1e-3)


@pytest.mark.parametrize("row", HELD, ids=lambda row: row["activity"])
def test_water_held_meets_the_computed_table(row: dict[str, str]) -> None:
    """Water held by salt, each sugar and meat solids is that of an independent computation."""
    activity = float(row["activity"])
    found = {
        "salt": salt_water_held(activity),
        "sucrose": sugar_water_held(SUCROSE, activity),
        "glucose": sugar_water_held(GLUCOSE, activity),
        "fructose": sugar_water_held(FRUCTOSE, activity),
        "solids_low": solids_water_held(activity, LOW),
        "solids_likely": solids_water_held(activity, LIKELY),
        "solids_high": solids_water_held(activity, HIGH),
    }

    expected = {name: float(row[name]) for name in found}
    assert found == pytest.approx(expected, abs=1e-5)


@pytest.mark.parametrize(
    ("activity", "low", "likely", "high"),
    [
        (0.5, 0.08911, 0.10575, 0.12130),
        (0.7, 0.14040, 0.17005, 0.19856),
        (0.8, 0.18908, 0.23544, 0.28232),
        (0.85, 0.22707, 0.28955, 0.35572),
        (0.9, 0.28284, 0.37429, 0.47877),
    ],
)
def test_solids_meet_the_computed_table(
    activity: float, low: float, likely: float, high: float
) -> None:
    """Meat solids hold what the GAB equation says with the low, likely and high constants."""
    found = [solids_water_held(activity, gab) for gab in (LOW, LIKELY, HIGH)]

    assert found == pytest.approx([low, likely, high], abs=1e-5)


@given(ACTIVITIES)
def test_salt_goes_there_and_back(activity: float) -> None:
    """The brine made of the water that salt holds has the activity it was asked for."""
    held = salt_water_held(activity)

    assert salt_activity(100 / (1 + held)) == pytest.approx(activity, abs=1e-10)


@given(ACTIVITIES, st.sampled_from([SUCROSE, GLUCOSE, FRUCTOSE]))
def test_sugar_goes_there_and_back(activity: float, sugar: Sugar) -> None:
    """The syrup made of the water that a sugar holds has the activity it was asked for."""
    held = sugar_water_held(sugar, activity)

    assert sugar_activity(sugar, 1 / held) == pytest.approx(activity, abs=1e-10)


@given(ACTIVITIES, ACTIVITIES)
def test_each_part_holds_more_the_moister_it_is(one: float, other: float) -> None:
    """More water activity means more water held, in salt, in sugar and in meat."""
    drier, moister = sorted((one, other))

    assert salt_water_held(drier) <= salt_water_held(moister)
    assert sugar_water_held(SUCROSE, drier) <= sugar_water_held(SUCROSE, moister)
    assert solids_water_held(drier, LIKELY) <= solids_water_held(moister, LIKELY)


@given(st.floats(0, MOST_SALT_PERCENT), st.floats(0, MOST_SALT_PERCENT))
def test_more_salt_leaves_less_activity(one: float, other: float) -> None:
    """The fit falls all the way to its strongest brine: it can be turned round."""
    weaker, stronger = sorted((one, other))

    assert salt_activity(stronger) <= salt_activity(weaker)


@pytest.mark.parametrize("activity", [-0.1, 0.0, 0.4999, 0.9996, 1.0, 1.2, float("nan")])
def test_activity_beyond_the_equations_is_refused(activity: float) -> None:
    """Outside 0.50 to 0.9995 nothing is made up."""
    with pytest.raises(ValueError, match=r"from 0\.5 to 0\.9995"):
        salt_water_held(activity)
    with pytest.raises(ValueError, match=r"from 0\.5 to 0\.9995"):
        sugar_water_held(SUCROSE, activity)
    with pytest.raises(ValueError, match=r"from 0\.5 to 0\.9995"):
        solids_water_held(activity, LIKELY)


def test_strength_that_cannot_be_is_refused() -> None:
    """No brine below nothing, beyond its equation, and no syrup of less than no sugar."""
    for percent in (-1, 48.1, float("nan")):
        with pytest.raises(ValueError, match="% salt"):
            salt_activity(percent)
    with pytest.raises(ValueError, match="less than no sugar"):
        sugar_activity(SUCROSE, -0.1)


@pytest.mark.parametrize(
    "gab",
    [Gab(0, 12, 0.9), Gab(0.06, 0, 0.9), Gab(0.06, -1, 0.9), Gab(0.06, 12, 0), Gab(0.06, 12, 1.01)],
)
def test_constants_that_mean_nothing_are_refused(gab: Gab) -> None:
    """Constants with which meat would hold no water, or without limit, are refused."""
    with pytest.raises(ValueError, match="above zero"):
        solids_water_held(0.8, gab)


def test_water_and_dry_sugar_are_the_ends() -> None:
    """Pure water has an activity of one, by every equation."""
    assert brine_activity(0) == salt_activity(0) == sugar_activity(GLUCOSE, 0) == 1


@pytest.mark.parametrize(
    ("gab", "held"),
    [
        # The equation by hand at an activity of one half.
        (Gab(0.1, 0.5, 1.0), 0.1 * 0.5 * 0.5 / (0.5 * 0.75)),
        (Gab(0.1, 12.0, 1.0), 0.1 * 12 * 0.5 / (0.5 * 6.5)),
        (Gab(1.5, 1.0, 0.8), 1.5 * 0.4 / 0.6),  # Langmuir's layers all alike
    ],
)
def test_constants_at_their_limits_are_taken(gab: Gab, held: float) -> None:
    """Layers held as free water is, and a first one held less than those above, are let in."""
    assert solids_water_held(0.5, gab) == pytest.approx(held, rel=1e-12)
