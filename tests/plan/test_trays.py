"""How much tray a batch takes, and how many loads that makes."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as some

from tarebook.figures.working import value
from tarebook.kitchen import Kitchen, Tray
from tarebook.plan.trays import Dryer, area_cm2, dryer_of, loads_of, trays_for

LB, FT2 = 453.59237, 929.0304

# Square feet of solid cover for a pound, worked out apart from this at 1065 kg/m3, by thickness.
SOLID_COVER = [(3, 1.5281), (5, 0.9169), (6.35, 0.7220), (8, 0.5731), (10, 0.4584)]


@pytest.mark.parametrize(("mm", "solid_ft2_per_lb"), SOLID_COVER)
def test_the_rule_against_solid_cover(mm: float, solid_ft2_per_lb: float) -> None:
    """A square foot a pound at a quarter inch leaves 28 % of the tray open, at every thickness."""
    ours = area_cm2(LB, mm) / FT2

    assert 1 / 0.7220 == pytest.approx(ours / solid_ft2_per_lb, rel=2e-3)
    low, _, high = value("tray-packing").range
    assert low <= solid_ft2_per_lb / ours <= high


def test_the_rule_itself() -> None:
    """1 sq ft a pound at 1/4 in; twice the meat or half the thickness takes twice the tray."""
    assert FT2 == pytest.approx(area_cm2(LB, 6.35))
    assert 2 * FT2 == pytest.approx(area_cm2(2 * LB, 6.35)) == pytest.approx(area_cm2(LB, 3.175))


@pytest.mark.parametrize(
    ("pounds", "mm", "trays"),
    [(4, 6.35, [4]), (5, 6.35, [5]), (5.01, 6.35, [5, 1]), (11, 6.35, [5, 5, 1]),
     (11, 3.175, [5, 5, 5, 5, 2]), (10, 6.35, [5, 5]), (0.1, 6.35, [1])],
)  # fmt: skip
def test_loads_on_five_trays_of_a_square_foot(pounds: float, mm: float, trays: list[int]) -> None:
    """Full loads first, what is left last; a load never takes more trays than there are."""
    found = loads_of(pounds * LB, mm, Dryer(trays=5, tray_cm2=FT2))

    assert trays == [load.trays for load in found]


@given(some.floats(10, 50_000), some.floats(1, 12), some.integers(1, 12), some.floats(200, 4000))
def test_loads_hold_all_the_meat(meat_g: float, mm: float, trays: int, tray_cm2: float) -> None:
    """Nothing is left over, no load is over its trays, and there is no load too many."""
    found = loads_of(meat_g, mm, Dryer(trays=trays, tray_cm2=tray_cm2))

    assert meat_g == pytest.approx(sum(load.meat_g for load in found))
    for load in found:
        assert 1 <= load.trays <= trays and load.meat_g > -1e-6
        assert area_cm2(max(load.meat_g, 0), mm) <= load.trays * tray_cm2 * (1 + 1e-6)
    assert sum(load.trays for load in found) == trays_for(area_cm2(meat_g, mm), tray_cm2)


@pytest.mark.parametrize("dryer", [Dryer(), Dryer(trays=5), Dryer(tray_cm2=FT2)])
def test_unknown_trays_are_one_load(dryer: Dryer) -> None:
    """Where trays or their size are not known nothing is guessed: it is one load."""
    (load,) = loads_of(20 * LB, 6.35, dryer)

    assert 20 * LB == load.meat_g
    assert (dryer.tray_cm2 is not None) == load.known


def test_what_there_is_to_dry_on() -> None:
    """The dryer's trays less their hole; the oven's racks where there is no dryer; or as asked."""
    kitchen = Kitchen(trays=4, tray=Tray(330.2), hole=Tray(76.2), dryer_f=(95, 160))
    oven = Kitchen(trays=0, oven_lowest_f=170, oven_racks=2, oven_rack=Tray(500, 350))

    assert (4, kitchen.tray_cm2, False) == (*dryer_of(kitchen)[:2], dryer_of(kitchen).oven)
    assert (2, 1750, (170, 550), True) == (
        dryer_of(oven).trays, dryer_of(oven).tray_cm2, dryer_of(oven).heat_f, dryer_of(oven).oven,
    )  # fmt: skip
    assert (6, 1000) == dryer_of(oven, trays=6, tray=Tray(500, 200))[:2]
    assert Dryer() == dryer_of(Kitchen())
