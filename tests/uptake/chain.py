"""Every complete measurement run through the whole chain: foretold, measured, inside?

Run as ``python tests/uptake/chain.py`` for the table. From a row of ``measurements.csv`` the
bath and the pieces are built, every uncertain input is drawn as the estimate draws it, and the
batch is reckoned by the package's own formulae. Nothing is tuned to these rows.

No row measures sodium in a batch that was marinated in a known way and then dried. So none of
them tells how accurate sodium per finished ounce is, and they are never to be cited for it.

Columns that need a word: ``food`` is the record of our tables that stands in for the meat;
``bath_*_g`` are grams on 100 g of raw meat; ``given_*`` is a figure printed beside the row, which
goes in (moisture, to tell protein); ``assumed`` names the columns that nobody measured.
"""

from __future__ import annotations

import csv
from collections.abc import Callable, Iterator
from functools import cache
from pathlib import Path
from typing import NamedTuple

import numpy as np
from water_held import ACTIVITIES, water_held

from tarebook.figures.nutrients import values
from tarebook.figures.working import value
from tarebook.nutrition.assumptions import assumptions
from tarebook.nutrition.draws import Fixed, LogNormal, Pert, column
from tarebook.nutrition.facts import Facts, Line
from tarebook.nutrition.makeup import Makeup, makeup
from tarebook.nutrition.model import Batch, batch
from tarebook.nutrition.range import Range, range_of
from tarebook.recipe.model import Finish, FinishBy, HeatStep, Part, Surface
from tarebook.uptake import COLUMNS, Column

HERE = Path(__file__).parent
DRAWS = 1000
MEAT_G = 100.0

Row = dict[str, str]

_PARTS = {"brine": Part.MARINADE, "dry cure": Part.RUB, "mixed-in dose": Part.MIXED_IN}
_HEAT = {"pan-cooked": HeatStep.STEAMED}
_DRIED = "dried"
# Half of the band of 90 %, as one standard deviation.
_HALF_BAND = 1.645


class Verdict(NamedTuple):
    """One measurement beside what the chain foretold of it."""

    row: Row
    foretold: Range

    @property
    def measured(self) -> float:
        """What was measured, in the unit of the row."""
        return float(self.row["value"])

    @property
    def inside(self) -> bool:
        """Whether the measured value lies between the 5 and 95 % points."""
        return self.foretold.low <= self.measured <= self.foretold.high

    @property
    def error_percent(self) -> float:
        """How far the likely value is off [% of the measured one], whichever way."""
        return 100 * abs(self.foretold.likely - self.measured) / abs(self.measured)


class Score(NamedTuple):
    """What one source says of the chain: rows run, how many inside, and the mean error [%]."""

    rows: int
    inside: int
    mean_error_percent: float


class Run(NamedTuple):
    """A batch on 100 g of raw meat, with the draws it was made from."""

    facts: Facts
    drawn: dict[str, Column]
    done: Batch


@cache
def measurements() -> tuple[Row, ...]:
    """Return every row of the table, run or not."""
    with (HERE / "measurements.csv").open(newline="", encoding="utf-8") as file:
        return tuple(csv.DictReader(file))


@cache
def verdicts() -> tuple[Verdict, ...]:
    """Return every row that is run, with what the chain foretold."""
    return tuple(Verdict(row, foretold(row)) for row in measurements() if row["run"] == "yes")


def source_of(row: Row) -> str:
    """Return the source a row comes from: ``S07`` of ``S07-03``."""
    return row["id"].split("-")[0]


def scores() -> dict[str, Score]:
    """Return the score of every source that is run."""
    found: dict[str, list[Verdict]] = {}
    for one in verdicts():
        found.setdefault(source_of(one.row), []).append(one)
    return {
        source: Score(
            len(group),
            sum(one.inside for one in group),
            sum(one.error_percent for one in group) / len(group),
        )
        for source, group in found.items()
    }


def foretold(row: Row) -> Range:
    """Return what the chain foretells of a measurement, at 5, 50 and 95 % of the draws.

    Args:
        row: a row of the table that is run.

    Returns:
        The range, in the unit of the row.
    """
    run = run_of(row)
    drawn = _READ[row["quantity"]](row, run)
    return range_of([float(one) for one in drawn], row["unit"])


def run_of(row: Row) -> Run:
    """Return the batch of a row, for a column of draws."""
    facts = facts_of(row)
    inputs = {name: one.distribution for name, one in assumptions(facts).items()}
    if row["measured_on"] != _DRIED:
        inputs["drip"] = Fixed(0.0)  # nothing was hung up to dry
    drawn = {name: Column(column(name, one, DRAWS)) for name, one in inputs.items()}
    return Run(facts, drawn, batch(facts, drawn, COLUMNS))


def facts_of(row: Row) -> Facts:
    """Return what is known of the batch of a row, for 100 g of raw meat."""
    thickness = _ends(row, "thickness", "mm")
    return Facts(
        meat_mass_g=MEAT_G,
        meat=_meat(row),
        meat_name=row["food"],
        moisture_food=False,
        lines=tuple(_lines(row)),
        missing={},
        no_sodium_total=(),
        hours=_ends(row, "hours", "") or (0.0, 0.0, 0.0),
        thickness_mm=thickness,
        surface=Surface.DRAINED,
        heat=_HEAT.get(row["measured_on"], HeatStep.OVEN_AFTER),
        poured_away=True,
        finish=_finish(row),
    )


def table() -> str:
    """Return the table of all rows that are run, and under it the score of every source."""
    head = f"{'row':8}{'what':16}{'5 %':>8}{'50 %':>8}{'95 %':>8}{'measured':>10}  inside?  error"
    lines = [head, *(_line_of(one) for one in verdicts()), ""]
    lines += [
        f"{source}: {one.inside} of {one.rows} inside, mean error {one.mean_error_percent:.1f} %"
        for source, one in scores().items()
    ]
    lines += ["", "None of these measures sodium after drying: they say nothing of its accuracy."]
    return "\n".join(lines)


def _line_of(one: Verdict) -> str:
    digits = 3 if one.measured < 1 and one.row["quantity"] == "water activity" else 1
    shown = (one.foretold.low, one.foretold.likely, one.foretold.high)
    points = "".join(f"{point:8.{digits}f}" for point in shown)
    inside = "yes" if one.inside else "no"
    return (
        f"{one.row['id']:8}{one.row['quantity']:16}{points}{one.row['value']:>10}"
        f"  {inside:7}{one.error_percent:6.0f} %"
    )


def _meat(row: Row) -> dict[str, float | None]:
    """Return the record that stands in for the meat, with what the row states of it."""
    stated = {
        f"{name}_g": float(row[f"raw_{name}_percent"])
        for name in ("water", "protein", "fat")
        if row[f"raw_{name}_percent"]
    }
    return {**values(row["food"]), **stated}


def _lines(row: Row) -> Iterator[Line]:
    """Yield what the bath holds on 100 g of meat, weighed in a laboratory or a kitchen."""
    plain = makeup("water")
    for name, food, one in (
        ("water", "water", plain),
        ("salt", "salt-table", makeup("salt-table")),
        ("sugar", "sugar", makeup("sugar")),
        ("phosphate", "sodium-tripolyphosphate", makeup("sodium-tripolyphosphate")),
        ("gelatin", "gelatin", makeup("gelatin")),
        ("other", "water", plain._replace(water=0.0, other=1.0)),
    ):
        if row[f"bath_{name}_g"]:
            yield _line(name, food, float(row[f"bath_{name}_g"]), one, _PARTS[row["process"]])


def _line(name: str, food: str, mass_g: float, one: Makeup, part: Part) -> Line:
    doubt = value("measure-weighed-cv").likely
    return Line(name=name, food=food, mass_g=mass_g, doubt=doubt, makeup=one, part=part)


def _ends(row: Row, name: str, unit: str) -> tuple[float, float, float] | None:
    low, high = (row["_".join(filter(None, (name, end, unit)))] for end in ("low", "high"))
    if not low:
        return None
    return float(low), (float(low) + float(high)) / 2, float(high)


def _finish(row: Row) -> Finish | None:
    if row["given_quantity"] != "yield":
        return None
    part = float(row["given_value"]) / 100
    return Finish(FinishBy.YIELD, (part, part, part))


def _sodium(_row: Row, run: Run) -> Column:
    """Return sodium of the cooked meat, which has lost its juice [mg per 100 g]."""
    cooked_g = run.done.soaked_g - run.drawn["juice"] * run.facts.meat_mass_g
    return run.done.figures["sodium_mg"] / cooked_g * 100


def _weight_gain(_row: Row, run: Run) -> Column:
    return (run.done.soaked_g / run.facts.meat_mass_g - 1) * 100


def _moisture(row: Row, run: Run) -> Column:
    """Return moisture [%], told from the yield, protein or water activity printed beside it."""
    given = float(row["given_value"])
    if row["given_quantity"] == "water activity":
        water = Column([np.interp(given, ACTIVITIES, held).item() for held in _held(run)])
        return water / (water + run.done.solids_g) * 100
    finished = run.done.finished_g
    if row["given_quantity"] == "protein":
        finished = run.done.protein_g / (given / 100)
    return (1 - run.done.solids_g / finished) * 100


def _part_of_finished(name: str) -> Callable[[Row, Run], Column]:
    def read(row: Row, run: Run) -> Column:
        return run.done.figures[name] / _finished(row, run) * 100

    return read


def _ash(row: Row, run: Run) -> Column:
    """Return ash [%]: the meat's own, and the salt and phosphate that were put in."""
    put_in = float(row["bath_salt_g"]) + float(row["bath_phosphate_g"])
    ash = (run.facts.meat["ash_g"] or 0.0) + put_in * (1 - run.drawn["drip"])
    return ash / _finished(row, run) * 100


def _water_activity(row: Row, run: Run) -> Column:
    water = _finished(row, run) - run.done.solids_g
    spread = value("water-activity-model-error").likely / _HALF_BAND
    doubt = column("water-activity-model", LogNormal(spread), DRAWS)
    return Column(
        [
            np.interp(grams, held, ACTIVITIES).item() + off - 1
            for grams, held, off in zip(water, _held(run), doubt, strict=True)
        ]
    )


def _finished(row: Row, run: Run) -> Column:
    """Return the finished weight at the moisture printed beside the row [g]."""
    return run.done.solids_g / (1 - float(row["given_value"]) / 100)


def _held(run: Run) -> Iterator[np.ndarray]:
    """Yield the water each draw of a batch holds over the range of water activity [g]."""
    gab = [_pert(key) for key in ("gab-monolayer", "gab-c", "gab-k")]
    stays = 1 - run.drawn["drip"]
    put_in = {line.name: line.mass_g for line in run.facts.lines}
    salt, sugars = put_in["salt"] * stays, put_in["sugar"] * stays
    other = run.done.solids_g - run.done.figures["fat_g"] - salt - sugars
    for a, b, c, *constants in zip(salt, sugars, other, *gab, strict=True):
        yield water_held(salt_g=a, sugars_g=b, other_g=c, gab=tuple(constants))


def _pert(key: str) -> tuple[float, ...]:
    return column(key, Pert(*value(key).range), DRAWS)


_READ: dict[str, Callable[[Row, Run], Column]] = {
    "sodium": _sodium,
    "weight gain": _weight_gain,
    "moisture": _moisture,
    "protein": _part_of_finished("protein_g"),
    "fat": _part_of_finished("fat_g"),
    "ash": _ash,
    "water activity": _water_activity,
}

if __name__ == "__main__":
    print(table())
