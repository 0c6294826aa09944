"""The fewest scoops, against 200 checked volumes and a table of every volume.

``kitchen_measures.csv`` was worked out apart from this code, by brute force and by integer
programming: fewest scoops at three tolerances for two drawers, and the nearest volume (blank where
no scoops are close enough). Any combination with as few scoops inside the tolerance is right.
"""

from __future__ import annotations

import csv
from fractions import Fraction
from functools import cache
from math import ceil, floor
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tarebook.findings import AskedWrongly, QuantityError
from tarebook.quantities.drawer import DRAWERS, Drawer, Scoops, Tool, choose_drawer, measure
from tarebook.quantities.units import factor

TEASPOON_ML = factor("teaspoon", "milliliter")
CUP_ML = factor("cup", "milliliter")
STEP_ML = {"basic": TEASPOON_ML / 4, "full": TEASPOON_ML / 16, "metric": Fraction(1, 6)}
TOLERANCES = (1, 2, 3)
SETS = ("full", "basic")


def rows() -> list[dict[str, str]]:
    """Return the 200 volumes of the check table."""
    file = Path(__file__).with_name("kitchen_measures.csv")
    return list(csv.DictReader(file.read_text(encoding="utf-8").splitlines()))


ROWS = rows()


def scooped(row: dict[str, str], name: str, percent: int) -> Scoops:
    """Return what we measure for a row."""
    volume_ml = Fraction(row["volume_tsp"]) * TEASPOON_ML
    return measure(volume_ml, DRAWERS[name], Fraction(percent, 100))


def held_ml(scoops: Scoops) -> Fraction:
    """Return what the scoops hold, added up from their tools."""
    return sum((count * tool.volume_ml for count, tool in scoops.parts), Fraction(0))


def test_the_check_table_is_whole() -> None:
    """200 volumes; so many can be measured at each tolerance, so many cannot."""
    possible = {
        f"{name} {percent}": sum(1 for row in ROWS if row[f"{name}_{percent}pct_scoops"])
        for name in SETS
        for percent in TOLERANCES
    }

    assert 200 == len(ROWS)
    assert {
        "full 1": 167, "full 2": 180, "full 3": 186, "basic 1": 129, "basic 2": 146, "basic 3": 154,
    } == possible  # fmt: skip


@pytest.mark.parametrize("percent", TOLERANCES)
@pytest.mark.parametrize("name", SETS)
@pytest.mark.parametrize("row", ROWS, ids=lambda row: f"{row['volume_tsp']} tsp")
def test_the_check_table_is_met(row: dict[str, str], name: str, percent: int) -> None:
    """As few scoops as the table says, inside the tolerance; the nearest volume where none is."""
    scoops = scooped(row, name, percent)
    fewest = row[f"{name}_{percent}pct_scoops"]

    if fewest:
        assert scoops.within
        assert int(fewest) == scoops.how_many
        assert abs(scoops.error) <= Fraction(percent, 100)
    else:
        assert not scoops.within
        assert Fraction(row[f"{name}_nearest_tsp"]) * TEASPOON_ML == scoops.volume_ml
        assert int(row[f"{name}_nearest_scoops"]) == scoops.how_many
    assert held_ml(scoops) == scoops.volume_ml
    assert scoops.volume_ml / (Fraction(row["volume_tsp"]) * TEASPOON_ML) - 1 == scoops.error


# --- against a table of every volume, by the plain method

Best = tuple[int, int] | None  # scoops, different tools


@cache
def table(name: str) -> list[Best]:
    """Return the best way to reach every whole step up to 22 cups, tool by tool."""
    step_ml = STEP_ML[name]
    sizes = [int(tool.volume_ml / step_ml) for tool in DRAWERS[name].tools]
    best: list[Best] = [(0, 0)] + [None] * int(22 * CUP_ML / step_ml)
    for size in sizes:
        using: list[Best] = [None] * len(best)  # the last scoop is of this size
        for total in range(size, len(best)):
            before, more = best[total - size], using[total - size]
            ways = [] if before is None else [(before[0] + 1, before[1] + 1)]
            ways += [] if more is None else [(more[0] + 1, more[1])]
            using[total] = min(ways, default=None)
        best = [
            min((way for way in both if way is not None), default=None)
            for both in zip(best, using, strict=True)
        ]
    return best


def by_table(
    name: str, volume_ml: Fraction, tolerance: Fraction
) -> tuple[bool, int, int, Fraction]:
    """Return within, scoops, different tools and total [mL] from the table."""
    best, steps = table(name), volume_ml / STEP_ML[name]
    low, high = max(1, ceil(steps * (1 - tolerance))), floor(steps * (1 + tolerance))
    ways = [(*way, abs(n - steps), n) for n in range(low, high + 1) if (way := best[n])]
    if ways:
        scoops, kinds, _, total = min(ways)
        return True, scoops, kinds, total * STEP_ML[name]
    around = range(1, ceil(steps) + 100)
    _, scoops, kinds, total = min((abs(n - steps), *way, n) for n in around if (way := best[n]))
    return False, scoops, kinds, total * STEP_ML[name]


def found(scoops: Scoops) -> tuple[bool, int, int, Fraction]:
    """Return the same four of what we measured."""
    return scoops.within, scoops.how_many, len(scoops.parts), scoops.volume_ml


@pytest.mark.parametrize("name", DRAWERS)
def test_every_row_is_as_the_table_of_all_volumes_has_it(name: str) -> None:
    """Scoops, different tools and total agree with the plain method for all 200 volumes."""
    for row in ROWS:
        volume_ml = Fraction(row["volume_tsp"]) * TEASPOON_ML
        for percent in (0, 1, 2, 3, 5):
            tolerance = Fraction(percent, 100)
            ours = measure(volume_ml, DRAWERS[name], tolerance)

            assert by_table(name, volume_ml, tolerance) == found(ours), row["volume_tsp"]


@settings(max_examples=150, deadline=None)
@given(
    st.sampled_from(sorted(DRAWERS)),
    st.fractions(min_value=Fraction(1, 10), max_value=4700, max_denominator=1000),
    st.sampled_from([Fraction(n, 100) for n in (0, 1, 2, 5, 10)]),
)
def test_any_volume_is_as_the_table_of_all_volumes_has_it(
    name: str, volume_ml: Fraction, tolerance: Fraction
) -> None:
    """Any volume up to nearly 20 cups, any drawer, any tolerance."""
    ours = measure(volume_ml, DRAWERS[name], tolerance)

    assert by_table(name, volume_ml, tolerance) == found(ours)


@given(st.sampled_from(sorted(DRAWERS)), st.integers(1, 90_000), st.integers(180, 400))
def test_whole_cups_add_one_scoop_each_when_exact(name: str, steps: int, cups: int) -> None:
    """Beyond any table: once every volume is reached, one more largest cup is one more scoop."""
    drawer, largest_ml = DRAWERS[name], DRAWERS[name].tools[0].volume_ml
    volume_ml = steps * STEP_ML[name] + 12 * largest_ml
    one = measure(volume_ml, drawer, Fraction(0))
    more = measure(volume_ml + cups * largest_ml, drawer, Fraction(0))

    assert one.within and more.within
    assert one.how_many + cups == more.how_many


# --- wording, the drawers, and what is refused


@pytest.mark.parametrize(
    ("name", "cups", "expected"),
    [
        ("basic", "2", "2 cups"),
        ("basic", "1/2", "1/2 cup"),
        ("basic", "2/3", "2 x 1/3 cup"),
        ("basic", "35/16", "2 cups + 3 Tbsp"),
        ("full", "2/3", "2/3 cup"),
        ("full", "3/2", "2 x 3/4 cup"),
    ],
)
def test_scoops_in_words(name: str, cups: str, expected: str) -> None:
    """The largest first; several of a whole measure as a cook says it, of a part with its count."""
    assert expected == str(measure(Fraction(cups) * CUP_ML, DRAWERS[name], Fraction(0)))


@pytest.mark.parametrize(
    ("ml", "expected"),
    [(500, "2 x 250 mL"), (22, "15 mL + 5 mL + 2 x 1 mL"), ("250/3", "83 mL (1/3 cup)")],
)
def test_metric_scoops_in_words(ml: int | str, expected: str) -> None:
    """The metric drawer is named in milliliters."""
    assert expected == str(measure(Fraction(ml), DRAWERS["metric"], Fraction(0)))


def test_the_drawers_hold_what_they_are_said_to_hold() -> None:
    """Number of tools, and the volume of all of them together."""
    held = {
        name: (len(drawer.tools), sum(tool.volume_ml for tool in drawer.tools))
        for name, drawer in DRAWERS.items()
    }

    assert {
        "basic": (8, 1676 * TEASPOON_ML / 16),
        "full": (15, 2899 * TEASPOON_ML / 16),
        "metric": (8, Fraction(250) * 25 / 12 + Fraction("23.5")),
    } == held


@pytest.mark.parametrize("name", DRAWERS)
def test_tools_lie_largest_first(name: str) -> None:
    """A drawer lists its tools by size, each size once."""
    volumes = [tool.volume_ml for tool in DRAWERS[name].tools]

    assert sorted(set(volumes), reverse=True) == volumes


def test_a_drawer_of_ones_own() -> None:
    """Any set of tools works, even a single one, or the same size twice."""
    cup = Tool(size=Fraction(1), unit="cup")
    twin = Tool(size=Fraction(16), unit="tablespoon")
    drawer = Drawer(name="camp", tools=(cup, twin))

    scoops = measure(Fraction(5, 4) * CUP_ML, drawer, Fraction(2, 100))

    assert (1, False, Fraction(-1, 5)) == (scoops.how_many, scoops.within, scoops.error)


def test_err_two_traditions_in_one_drawer() -> None:
    """US and metric tools have no common step small enough to reckon with."""
    mixed = Drawer(name="mixed", tools=(*DRAWERS["basic"].tools, *DRAWERS["metric"].tools))

    with pytest.raises(QuantityError, match='drawer "mixed" mixes measures of two traditions'):
        measure(Fraction(100), mixed, Fraction(2, 100))


def test_err_empty_drawer() -> None:
    """A drawer without tools measures nothing."""
    with pytest.raises(QuantityError, match="at least one tool"):
        measure(Fraction(100), Drawer(name="bare", tools=()), Fraction(1, 50))


@pytest.mark.parametrize(("volume", "tolerance"), [(0, "0.02"), (-1, "0.02"), (1, "1"), (1, "-1")])
def test_err_nothing_to_measure(volume: int, tolerance: str) -> None:
    """No volume, and a tolerance of everything or less than nothing, are refused."""
    with pytest.raises(QuantityError):
        measure(Fraction(volume), DRAWERS["basic"], Fraction(tolerance))


def test_drawers_are_chosen_by_name() -> None:
    """A name in any case finds its drawer; another says which there are."""
    assert DRAWERS["metric"] is choose_drawer(" Metric ")
    with pytest.raises(AskedWrongly, match='no drawer is called "metrc"; did you mean metric'):
        choose_drawer("metrc")
    with pytest.raises(AskedWrongly, match="there are basic, full, metric"):
        choose_drawer("zzz")
