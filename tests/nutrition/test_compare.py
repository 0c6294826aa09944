"""Two variants side by side: paired draws, zero, and shares that nobody knows."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from tarebook.nutrition import Estimate, Facts, Range, estimate
from tarebook.nutrition.compare import Difference, difference

FactsOf = Callable[..., Facts]


@pytest.fixture
def soaked(known: FactsOf) -> Callable[..., Estimate]:
    """Return a maker of estimates of a marinade, by what is in it."""

    def make(**marinade: str) -> Estimate:
        named = {name.replace("_", "-"): amount for name, amount in marinade.items()}
        return estimate(known(marinade=named))

    return make


Soaked = Callable[..., Estimate]


def width(one: Range | None) -> float:
    """Return how wide a range is."""
    assert one is not None
    return one.high - one.low


def test_a_paired_difference_is_narrower(soaked: Soaked) -> None:
    """Low-sodium for plain soy sauce: narrower than either side, let alone the two apart."""
    found = difference(
        soaked(soy_sauce="200 mL"), soaked(soy_sauce_low_sodium="200 mL"), "sodium_mg", per="ounce"
    )

    assert width(found.change) < 0.6 * (width(found.first) + width(found.second))
    assert width(found.change) < max(width(found.first), width(found.second))
    assert found.change is not None
    assert found.change.high < 0
    assert not found.smaller_than_doubt


def test_overlapping_ranges_may_differ_beyond_doubt(soaked: Soaked) -> None:
    """A little less of the same sauce is less for certain, however the two ranges overlap."""
    more, less = soaked(soy_sauce="200 g"), soaked(soy_sauce="180 g")
    found = difference(more, less, "sodium_mg", per="ounce")

    assert found.first is not None
    assert found.second is not None
    assert found.second.high > found.first.low
    assert found.change is not None
    assert found.change.high < 0
    assert not found.smaller_than_doubt


def test_nothing_changed_is_no_difference(soaked: Soaked) -> None:
    """The same recipe twice differs by nothing in any draw, which includes zero."""
    found = difference(
        soaked(soy_sauce="200 g"), soaked(soy_sauce="200 g"), "sodium_mg", per="batch"
    )

    assert found.change == Range(0.0, 0.0, 0.0, "mg")
    assert found.smaller_than_doubt


def test_the_percent_is_of_the_first_side(soaked: Soaked) -> None:
    """Percent and change tell of the same difference: likely change over likely first."""
    found = difference(
        soaked(soy_sauce="200 mL"), soaked(soy_sauce_low_sodium="200 mL"), "sodium_mg", per="ounce"
    )

    assert found.first is not None
    assert found.change is not None
    assert found.percent is not None
    expected = 100 * found.change.likely / found.first.likely
    assert found.percent.likely == pytest.approx(expected, rel=0.05)


def test_no_percent_of_nothing(soaked: Soaked) -> None:
    """Sugar added where there was none is no percentage of anything."""
    found = difference(
        soaked(water="200 g"), soaked(water="200 g", honey="50 g"), "added_sugars_g", per="ounce"
    )

    assert found.percent is None
    assert found.change is not None
    assert found.change.low > 0


def test_per_batch_counts_the_batch(soaked: Soaked) -> None:
    """The difference of the batch is that of its ounces, so many times over."""
    first, second = soaked(soy_sauce="200 g"), soaked(soy_sauce="100 g")

    batch = difference(first, second, "sodium_mg", per="batch").change
    ounce = difference(first, second, "sodium_mg", per="ounce").change

    assert batch is not None
    assert ounce is not None
    ounces = first.finished_g.likely / first.ounce.grams
    assert batch.likely == pytest.approx(ounce.likely * ounces, rel=0.1)


def test_per_what_must_be_said() -> None:
    """Neither an ounce nor a batch is refused."""
    with pytest.raises(ValueError, match="ounce or batch"):
        difference(None, None, "sodium_mg", per="strip")  # type: ignore[arg-type]


def test_a_side_without_total_has_no_difference(known: FactsOf, soaked: Soaked) -> None:
    """Against a recipe with bare salt by the spoon, no sodium difference is told."""
    bare = estimate(known(marinade={"soy-sauce": "200 g", "salt": "1 Tbsp"}))

    found = difference(soaked(soy_sauce="200 g"), bare, "sodium_mg", per="ounce")

    assert found.second is None
    assert found.change is None
    assert not found.smaller_than_doubt


def test_a_missing_share_leaves_its_side_open(known: FactsOf, soaked: Soaked) -> None:
    """Less soy with a sauce to taste beside it: the second side can only be more."""
    open_side = estimate(known(marinade={"soy-sauce": "100 g", "hot-sauce": "to taste"}))
    closed = soaked(soy_sauce="200 g")

    found = difference(closed, open_side, "sodium_mg", per="ounce")

    assert found.unshared == ("hot-sauce",)
    assert (found.only_at_least, found.only_at_most) == (True, False)
    assert found.change is not None
    assert found.change.high < 0
    assert found.smaller_than_doubt
    back = difference(open_side, closed, "sodium_mg", per="ounce")
    assert (back.only_at_least, back.only_at_most) == (False, True)
    assert back.smaller_than_doubt


@pytest.mark.parametrize(
    ("first", "second", "change", "smaller"),
    [
        ((), (), (5.0, 9.0), False),
        ((), (), (-1.0, 9.0), True),
        (("salsa",), ("salsa",), (5.0, 9.0), False),  # missing on both: common, cancels
        ((), ("salsa",), (5.0, 9.0), False),  # can only be more still
        ((), ("salsa",), (-9.0, -5.0), True),  # may be more after all
        (("salsa",), (), (5.0, 9.0), True),  # may be less after all
        (("salsa",), (), (-9.0, -5.0), False),
        (("salsa",), ("ketchup",), (5.0, 9.0), True),  # open both ways
    ],
)
def test_doubt_counts_the_open_sides(
    first: tuple[str, ...], second: tuple[str, ...], change: tuple[float, float], smaller: bool
) -> None:
    """A difference is smaller than the doubt if its range, open sides counted, includes zero."""
    low, high = change
    found = Difference(
        figure="sodium_mg",
        first=Range(1.0, 2.0, 3.0, "mg", missing=first),
        second=Range(1.0, 2.0, 3.0, "mg", missing=second),
        change=Range(low, (low + high) / 2, high, "mg"),
        percent=None,
    )

    assert found.smaller_than_doubt is smaller
