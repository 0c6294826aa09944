"""How far the meat comes with the hours: the published grid, and what must rise and fall."""

from __future__ import annotations

import csv
from collections.abc import Callable
from pathlib import Path

import pytest

from tarebook.nutrition import Facts, assumptions, estimate
from tarebook.nutrition.draws import Pert
from tarebook.nutrition.soaking import (
    HOURS,
    Soaking,
    half_as_thick,
    salt_toward_balance,
    soaking_times,
    toward_balance,
)
from tarebook.uptake.maths import PLAIN

FactsOf = Callable[..., Facts]

GRID = Path(__file__).parents[1] / "uptake" / "uptake_fractions.csv"
SWEET = {"soy-sauce": "3/4 cup", "brown-sugar": "1/4 cup packed", "honey": "1 Tbsp"}


def small_bowl() -> list[dict[str, str]]:
    """Return the rows of the printed grid with three parts of water outside to ten inside."""
    with GRID.open(encoding="utf-8", newline="") as lines:
        return [row for row in csv.DictReader(lines) if row["alpha"] == "0.3"]


def times(known: FactsOf, **parts: object) -> tuple[Soaking, ...]:
    """Return the meat of a sweet marinade after each of the hours."""
    found = soaking_times(known(**({"marinade": SWEET} | parts)))
    assert found is not None
    return found.after


def test_the_grid_is_there() -> None:
    """Three solutes, five thicknesses and six times are held against the printed grid."""
    assert 90 == len(small_bowl())


@pytest.mark.published
@pytest.mark.parametrize("end", ["low", "likely", "high"])
@pytest.mark.parametrize(
    "row", small_bowl(), ids=lambda row: f"{row['solute']}-{row['thickness_mm']}-{row['time_h']}"
)
def test_the_printed_grid_is_met_with_no_strip_stuck(row: dict[str, str], end: str) -> None:
    """With all strips lying free, every printed fraction of the small bowl is met to its digits."""
    found = toward_balance(
        hours=float(row["time_h"]),
        thickness_mm=float(row["thickness_mm"]),
        diffusivity_m2_per_s=float(row[f"D_{end}_m2_s"]),
        alpha=float(row["alpha"]),
        free_share=1.0,
        maths=PLAIN,
    )

    assert found == pytest.approx(float(row[f"F_{end}"]), abs=6e-5)


def test_every_length_is_told_of(known: FactsOf) -> None:
    """A row for each of the hours, in order."""
    assert HOURS == tuple(one.hours for one in times(known))


@pytest.mark.parametrize("name", ["salt", "sugar"])
def test_more_hours_bring_more_and_never_more_than_all(known: FactsOf, name: str) -> None:
    """Low, likely and high rise with the hours, in that order, from above 0 to at most 1."""
    found = [getattr(one, name) for one in times(known)]

    for end in ("low", "likely", "high"):
        ends = [getattr(one, end) for one in found]
        assert sorted(ends) == ends and ends[0] < ends[-1]
    assert all(0 < one.low < one.likely < one.high <= 1 for one in found)


def test_salt_is_ahead_of_sugar(known: FactsOf) -> None:
    """At every length salt has come farther than sugar."""
    for one in times(known):
        assert one.sugar is not None
        assert one.sugar.likely < one.salt.likely


def test_thicker_meat_takes_longer(known: FactsOf) -> None:
    """Twice the thickness is less far along at every length, and more hours matter for longer."""
    thin, thick = (soaking_times(known(marinade=SWEET, thickness=t)) for t in ("5 mm", "10 mm"))

    assert thin is not None and thick is not None
    pairs = zip(thin.after, thick.after, strict=True)
    assert all(a.salt.likely > b.salt.likely for a, b in pairs)
    assert 2 * thin.enough_hours < thick.enough_hours


def test_half_as_thick_is_the_recipe_cut_so(known: FactsOf) -> None:
    """Half of 10 mm tells what a recipe of 5 mm tells; only the doubt of a thick cut differs."""
    halved = soaking_times(half_as_thick(known(marinade=SWEET, thickness="10 mm")))

    assert soaking_times(known(marinade=SWEET, thickness="5 mm")) == halved


@pytest.mark.parametrize("thickness", ["2 mm", "1/4 in", "20 mm", "150 mm"])
def test_twelve_more_hours_bring_little_from_there_on(known: FactsOf, thickness: str) -> None:
    """From the hour told twelve more gain salt under two points; an hour before, two or more."""
    facts = known(marinade=SWEET, thickness=thickness, form="pieces")
    found = soaking_times(facts)
    assert found is not None

    def gain(hours: int) -> float:
        later = salt_toward_balance(facts, hours + 12)
        return later.likely - salt_toward_balance(facts, hours).likely

    assert gain(found.enough_hours) < 0.02
    assert found.enough_hours == 0 or gain(found.enough_hours - 1) >= 0.02


def test_kept_is_what_the_estimate_keeps(known: FactsOf) -> None:
    """The share kept after twelve hours is that of the estimate for a soak of twelve."""
    facts = known(marinade=SWEET, soak='hours = 12\nsurface = "patted"')
    found = soaking_times(facts)
    assert found is not None

    assert estimate(facts).salt_kept_fraction == found.after[3].salt_kept


def test_nothing_poured_away_keeps_all(known: FactsOf) -> None:
    """Where nothing of the marinade is poured away all its salt is kept at any hour."""
    found = times(known, soak="hours = 12\npoured-away = false")

    assert {1.0} == {end for one in found for end in one.salt_kept[:3]}


def test_no_sugar_is_no_sugar(known: FactsOf) -> None:
    """Of a marinade without sugar nothing is told of sugar."""
    found = times(known, marinade={"water": "2 cups", "salt": "20 g"})

    assert all(one.sugar is None for one in found)


def test_unstated_thickness_is_the_working_range(known: FactsOf) -> None:
    """Without a thickness the working range stands in, is said to, and is doubted more."""
    stated = known(marinade=SWEET, thickness="6 mm")
    found, sure = soaking_times(stated._replace(thickness_mm=None)), soaking_times(stated)

    assert found is not None and sure is not None
    assert ((4.5, 6.0, 8.0), False) == (found.thickness_mm, found.stated)
    wide, narrow = found.after[1].salt, sure.after[1].salt
    assert wide.high - wide.low > narrow.high - narrow.low


@pytest.mark.parametrize("marinade", [{}, {"olive-oil": "1/2 cup"}])
def test_without_liquid_there_is_nothing_to_tell(known: FactsOf, marinade: dict[str, str]) -> None:
    """A rub alone, or oil alone, has no soaking time."""
    assert soaking_times(known(marinade=marinade, rub={"salt": "20 g"})) is None


@pytest.mark.parametrize("name", ["salt", "sugar", "salt_kept"])
def test_a_colder_soak_is_slower(known: FactsOf, name: str) -> None:
    """By a tenth or so within a refrigerator, in every column that is told of."""
    facts = known(marinade=SWEET)
    cold, untold, warm = (
        soaking_times(facts._replace(soak_c=each)) for each in ((1.0,) * 3, None, (10.0,) * 3)
    )

    assert cold is not None and untold is not None and warm is not None
    early = [getattr(one.after[0], name).likely for one in (cold, untold, warm)]
    assert sorted(early) == early and 0.7 * early[2] < early[0] < early[2]


def test_a_colder_soak_brings_less(known: FactsOf) -> None:
    """The estimate follows too, by no more than a refrigerator may."""
    facts = known(marinade=SWEET)
    cold, warm = (
        estimate(facts._replace(soak_c=(celsius,) * 3)).per_ounce["sodium_mg"]
        for celsius in (1.0, 8.0)
    )

    assert cold is not None and warm is not None
    assert 0.9 * warm.likely < cold.likely < warm.likely


def test_a_span_of_temperatures_is_an_input_like_any_other(known: FactsOf) -> None:
    """It is listed, as a fact of the recipe, from its low to its high end."""
    facts = known(marinade=SWEET)._replace(soak_c=(1.0, 3.0, 5.0))
    listed = assumptions(facts)["soak-temperature"]

    assert (Pert(1.0, 3.0, 5.0), "degC", "F") == (listed.distribution, listed.unit, listed.code)
    assert "soak-temperature" not in assumptions(known(marinade=SWEET))
