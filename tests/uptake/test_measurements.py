"""The whole chain against every complete measurement that was found.

No row measures sodium in a batch that was marinated in a known way and then dried. The errors
pinned here are therefore never the accuracy of sodium per finished ounce, and are not to be cited
for it. They say how far off the parts of the road are where somebody measured them, mostly on
thicker pieces than strips, and they guard it: no change may make their mean grow unseen.

No constant was tuned to these rows, and none may be. Where a mean grows for a good reason (a value
with a published source, say), pin the new one and let the sentence beside it give the reason.
"""

from __future__ import annotations

import csv
from pathlib import Path

import chain
import numpy as np
import pytest
import water_held

HERE = Path(__file__).parent

ROWS, COMPLETE = 101, 21
# A change in the draws alone moves a mean by less than this.
DRIFT_PERCENT = 0.5


def pinned() -> dict[str, dict[str, str]]:
    """Return what every source said of the chain when it was last pinned."""
    with (HERE / "measurement_errors.csv").open(newline="", encoding="utf-8") as file:
        return {row["source"]: row for row in csv.DictReader(file)}


def test_table_is_whole() -> None:
    """Every row found is carried, once, with who says so and what was measured."""
    rows = chain.measurements()

    assert ROWS == len({row["id"] for row in rows}) == len(rows)
    assert COMPLETE == sum(row["chain"] == "complete" for row in rows)
    assert [] == [
        row["id"]
        for row in rows
        if not (row["citation"] and row["quantity"] and row["unit"] and row["measured_on"])
    ]
    assert all(float(row["sd"] or 0) < abs(float(row["value"])) for row in rows)


def test_conditions_are_plain_numbers() -> None:
    """What can be had as a number is one, low before high, and nothing is assumed that is blank."""
    for row in chain.measurements():
        for name in row:
            if name.endswith(("_g", "_mm", "_c", "_h", "_percent", "_low", "_high")) and row[name]:
                assert float(row[name]) >= 0, (row["id"], name)
        lows = [name for name in row if "_low" in name and row[name]]
        for low in lows:
            assert float(row[low]) <= float(row[low.replace("_low", "_high")]), (row["id"], low)
        for name in row["assumed"].split():
            assert row[name], (row["id"], name)


def test_each_row_is_run_or_says_why_not() -> None:
    """Each row says whether it is run and why; only complete rows are run."""
    rows = chain.measurements()

    assert {"yes", "no"} == {row["run"] for row in rows}
    assert [] == [row["id"] for row in rows if not row["why"]]
    assert [] == [row["id"] for row in rows if row["run"] == "yes" and row["chain"] != "complete"]
    left_out = [row["id"] for row in rows if row["run"] == "no" and row["chain"] == "complete"]
    assert ["S03-03"] == left_out  # an untouched control: there is no bath to reckon with


def test_no_row_that_is_run_measures_sodium_after_drying() -> None:
    """So none of them is the accuracy of sodium per finished ounce; both tables say so."""
    salty = ("sodium", "salt")
    dried = [
        one.row["id"]
        for one in chain.verdicts()
        if one.row["measured_on"] == "dried" and one.row["quantity"].startswith(salty)
    ]

    assert [] == dried
    assert "None of these measures sodium after drying" in chain.table()


@pytest.mark.published
@pytest.mark.parametrize("source", list(pinned()))
def test_mean_error_does_not_grow(source: str, record_property: pytest.RecordProperty) -> None:
    """The mean error against each source stays at or below the pinned one."""
    score, pin = chain.scores()[source], pinned()[source]
    record_property("mean_error_percent", round(score.mean_error_percent, 1))
    record_property("inside", f"{score.inside} of {score.rows}")
    print(chain.table())

    assert int(pin["rows"]) == score.rows
    assert score.mean_error_percent <= float(pin["mean_error_percent"]) + DRIFT_PERCENT
    assert score.inside >= int(pin["inside"])


def test_every_source_is_pinned() -> None:
    """A source that is run has its figures pinned, with a sentence on what they are worth."""
    assert set(chain.scores()) == set(pinned())
    assert all(row["sentence"].endswith(".") for row in pinned().values())


def test_table_shows_every_row_that_is_run() -> None:
    """The printed table has each row once, with its range, the measured value and a verdict."""
    lines = chain.table().splitlines()

    for one in chain.verdicts():
        (line,) = [line for line in lines if line.startswith(one.row["id"])]
        assert one.row["value"] in line.split()
        assert ("yes" if one.inside else "no") in line.split()
        assert one.foretold.low <= one.foretold.likely <= one.foretold.high


@pytest.mark.parametrize(
    ("activity", "salt", "sucrose"),
    [(0.85, 4.2503, 0.49088), (0.80, 3.3367, 0.38307), (0.75, 2.7619, 0.31451)],
)
def test_water_held_meets_the_computed_table(activity: float, salt: float, sucrose: float) -> None:
    """Water held by a gram of salt and of sucrose is that of an independent computation."""
    assert water_held.held_by_salt(activity) == pytest.approx(salt, rel=1e-4)
    assert water_held.held_by_sucrose(activity) == pytest.approx(sucrose, rel=1e-4)


@pytest.mark.parametrize(
    ("gab", "grams"),
    [
        ((0.055, 10, 0.90), (152.85, 182.78, 228.27)),
        ((0.062, 12, 0.93), (165.21, 198.54, 249.52)),
        ((0.068, 15, 0.955), (177.34, 214.48, 272.02)),
    ],
    ids=["low", "likely", "high"],
)
def test_water_held_by_a_batch_meets_the_computed_one(
    gab: tuple[float, float, float], grams: tuple[float, float, float]
) -> None:
    """30 g of salt, 48 g of sucrose and 340 g of meat solids hold as much as computed apart."""
    held = water_held.water_held(salt_g=30, sugars_g=48, other_g=340, gab=gab)

    found = np.interp([0.75, 0.80, 0.85], water_held.ACTIVITIES, held)

    assert list(found) == pytest.approx(grams, abs=0.02)
