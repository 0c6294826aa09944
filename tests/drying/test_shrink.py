"""The balance of solids against worked examples and the published yields."""

from __future__ import annotations

import pytest

from tarebook.drying import (
    finished_at_moisture,
    finished_at_moisture_to_protein,
    finished_at_yield,
    moisture,
    moisture_to_protein,
    solids,
)
from tarebook.uptake import PLAIN

OUNCE_G = 28.349523
# The worked example: 1360 g of meat (0.73 water, 0.22 protein), leak and drip 1 % each.
TAKEN_G = 28.4060 + 47.6445 + 19.8403
SODIUM_MG = 0.99 * 11174.1 + 0.58 * 1360


@pytest.mark.parametrize(
    ("ratio", "finished", "share", "wet", "sodium", "sugar"),
    [
        (0.50, 608.060, 0.44710, 0.24603, 552.53, 2.1991),
        (0.58, 631.996, 0.46470, 0.27458, 531.61, 2.1158),
        (0.75, 682.860, 0.50210, 0.32862, 492.01, 1.9582),
    ],
)
def test_worked_example_dries_as_computed(
    ratio: float, finished: float, share: float, wet: float, sodium: float, sugar: float
) -> None:
    """The worked example at three finishes is met within 0.1 %."""
    left = solids(
        raw_mass_g=1360,
        water_fraction=0.73,
        solubles_lost_g=0.01 * 0.27 * 1360,
        fat_drip_g=0,
        taken_g=TAKEN_G,
        drip_fraction=0.01,
    )
    weight = finished_at_moisture_to_protein(
        solids_g=left.total_g, protein_g=0.22 * 1360, ratio=ratio
    )

    assert weight == pytest.approx(finished, rel=1e-3)
    assert weight / 1360 == pytest.approx(share, rel=1e-3)
    assert moisture(finished_g=weight, solids_g=left.total_g) == pytest.approx(wet, rel=1e-3)
    assert SODIUM_MG / weight * OUNCE_G == pytest.approx(sodium, rel=1e-3)
    assert 0.99 * 47.6445 / weight * OUNCE_G == pytest.approx(sugar, rel=1e-3)


@pytest.mark.parametrize(
    ("water", "protein", "ratio", "share", "wet"),
    [
        (73, 22.5, 0.30, "0.3375", "0.2000"),
        (73, 22.5, 0.50, "0.3825", "0.2941"),
        (73, 22.5, 0.75, "0.4388", "0.3846"),
        (72.96, 23.59, 0.40, "0.3648", "0.2587"),
        (72.96, 23.59, 0.60, "0.4119", "0.3436"),
    ],
)
def test_lean_meat_with_nothing_taken_up(
    water: float, protein: float, ratio: float, share: str, wet: str
) -> None:
    """Yield and moisture of lean meat alone, to the last printed digit."""
    dry = 100 - water
    weight = finished_at_moisture_to_protein(solids_g=dry, protein_g=protein, ratio=ratio)

    assert weight / 100 == pytest.approx(float(share), abs=6e-5)
    assert moisture(finished_g=weight, solids_g=dry) == pytest.approx(float(wet), abs=6e-5)


# Raw and dried rows of USDA SR26 that are the same kind of animal (source usda-sr26): protein raw
# and dried, raw protein + fat + ash, salt gained, dried water as printed, all per 100 g; and how
# near we come. Only water may leave.
RAW_AND_DRIED = [
    ("chum salmon, 15079 to 35171", 20.14, 62.09, 25.09, 0.1, 22.79, 0.5),
    ("caribou, 17162 to 35160", 22.63, 52.06, 27.13, 0.7, 38.04, 1.5),
]


@pytest.mark.published
@pytest.mark.parametrize(
    ("row", "raw", "dried", "raw_solids", "salt", "water", "within"), RAW_AND_DRIED
)
def test_drying_meets_raw_and_dried_rows(
    row: str,
    raw: float,
    dried: float,
    raw_solids: float,
    salt: float,
    water: float,
    within: float,
) -> None:
    """Dried to the dried row's protein, the raw row is left with the dried row's water."""
    raw_mass = 100 * dried / raw
    left = solids(
        raw_mass_g=raw_mass,
        water_fraction=1 - raw_solids / 100,
        solubles_lost_g=0,
        fat_drip_g=0,
        taken_g=salt,
        drip_fraction=0,
    )

    found = 100 * moisture(finished_g=100, solids_g=left.total_g)

    assert found == pytest.approx(water, abs=within), row


def test_floor_of_a_yield_is_the_solids() -> None:
    """No yield takes a batch below its own solids."""
    assert finished_at_yield(raw_mass_g=1000, yield_fraction=0.2, solids_g=270, maths=PLAIN) == 270
    assert finished_at_yield(raw_mass_g=1000, yield_fraction=0.4, solids_g=270, maths=PLAIN) == 400


def test_ways_of_saying_done_agree() -> None:
    """A weight from moisture has that moisture, and one from a ratio that ratio."""
    by_moisture = finished_at_moisture(solids_g=300, moisture=0.25)
    by_ratio = finished_at_moisture_to_protein(solids_g=300, protein_g=220, ratio=0.6)

    assert moisture(finished_g=by_moisture, solids_g=300) == pytest.approx(0.25)
    assert moisture_to_protein(finished_g=by_ratio, solids_g=300, protein_g=220) == pytest.approx(
        0.6
    )


# What extension services print for the yield of home-dried meat, in per cent of raw weight.
PUBLISHED_YIELDS = [
    ("USDA FSIS: 1 lb to about 4 oz", 25, "usda-fsis"),
    ("PNW 632: 16 oz to about 4 oz", 25, "pnw-632"),
    ("Novi Sad chamber process", 40.4, "novi-sad-2016"),
]


@pytest.mark.published
@pytest.mark.parametrize(("what", "percent", "source"), PUBLISHED_YIELDS)
def test_published_yields_against_the_solids_of_lean_meat(
    what: str, percent: float, source: str
) -> None:
    """A quarter of lean meat's weight is less than its solids: we say so, and do not fit it."""
    lean_solids_percent = 100 - 72.96

    assert (percent < lean_solids_percent) == (percent == 25), (what, source)


def test_every_loss_is_taken_off_the_solids() -> None:
    """1000 g with 700 of water: 300 less 12 leaked and 8 of fat; 50 taken up, a tenth drips."""
    left = solids(
        raw_mass_g=1000,
        water_fraction=0.7,
        solubles_lost_g=12,
        fat_drip_g=8,
        taken_g=50,
        drip_fraction=0.1,
    )

    assert (280, 45, 325) == tuple(map(pytest.approx, (left.meat_g, left.taken_g, left.total_g)))
