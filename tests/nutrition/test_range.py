"""Low, likely and high of a figure, and when a difference is smaller than its doubt."""

from __future__ import annotations

import numpy as np
import pytest
from scipy import stats

from tarebook.nutrition.range import (
    Range,
    _cornish_fisher,
    points_by_moments,
    range_of,
    range_of_ways,
)


def test_a_range_is_5_50_and_95_percent_of_the_draws() -> None:
    """Of a hundred even draws, in any order, low, likely and high stand at 5, 50 and 95."""
    draws = [float((37 * i) % 100) + 0.5 for i in range(100)]

    found = range_of(draws, "mg")

    assert (found.low, found.likely, found.high) == pytest.approx((5.0, 50.0, 95.0))
    assert found.unit == "mg"


def test_one_draw_is_its_own_range() -> None:
    """A figure known exactly has no width."""
    assert range_of([7.0, 7.0], "g") == Range(7.0, 7.0, 7.0, "g")


def test_a_missing_share_means_at_least() -> None:
    """With a name missing the figure can only be higher; with none it is what it is."""
    assert range_of([1.0], "g", missing=("hot-sauce",)).at_least
    assert not range_of([1.0], "g").at_least


def test_rough_is_kept() -> None:
    """A figure on a rougher rule is marked so."""
    assert range_of([1.0], "g", rough=True).rough
    assert not range_of([1.0], "g").rough


@pytest.mark.published
@pytest.mark.parametrize(
    ("z", "skew", "excess", "printed"),
    [
        (0.0, 1.0, 0.0, -0.1666667),
        (1.2815515655446004, 0.1, 0.0, 1.292868),
        (1.2815515655446004, 0.1, 1.0, 1.220374),
        (2.3263478740408408, 0.1, 1.0, 2.629904),
        (-2.3263478740408408, 0.1, -1.0, -2.015265),
    ],
)
def test_the_expansion_gives_what_others_print(
    z: float, skew: float, excess: float, printed: float
) -> None:
    """Source: examples of cornishFisherInvCDF in the documentation of a statistics library,
    opendlang.org/library, mir.stat."""
    assert printed == pytest.approx(_cornish_fisher([z], skew, excess)[0], abs=2e-6)


@pytest.mark.parametrize("shape", [0.05, 0.2, 0.4])
@pytest.mark.parametrize("law", ["lognorm", "gamma"])
def test_points_by_moments_meet_the_law_they_come_from(law: str, shape: float) -> None:
    """256 even quantiles of a log-normal and of a gamma: within 1 % of the law's own points."""
    found_law = stats.lognorm(shape) if law == "lognorm" else stats.gamma(1 / shape**2)
    draws = [float(found_law.ppf((i + 0.5) / 256)) for i in range(256)]
    found = points_by_moments(draws)

    assert found is not None
    assert found == pytest.approx([float(found_law.ppf(p)) for p in (0.05, 0.5, 0.95)], rel=0.01)


def test_what_is_far_from_log_normal_keeps_its_own_points() -> None:
    """Two heaps, a zero among the draws, and a handful: no expansion is trusted."""
    assert points_by_moments([1.0] * 60 + [9.0] * 60) is None
    assert points_by_moments([0.0] + [1.0] * 99) is None
    assert points_by_moments([1.0, 2.0, 3.0]) is None
    heaps = range_of([1.0] * 60 + [9.0] * 60, "mg", by_moments=True)
    assert (1.0, 9.0) == (heaps.low, heaps.high)


def test_no_point_lies_beyond_the_farthest_draw() -> None:
    """A share that ends at 1 ends there, however far its moments would have it go."""
    share = [
        min(1.0, float(stats.lognorm(0.2, scale=0.8).ppf((i + 0.5) / 256))) for i in range(256)
    ]
    found = range_of(share, "", by_moments=True)

    assert points_by_moments(share) is not None
    assert 1.0 == found.high
    assert share[0] <= found.low < found.likely < 1.0


@pytest.mark.parametrize("by_moments", [False, True])
def test_ways_are_thrown_together_by_how_likely_they_are(by_moments: bool) -> None:
    """Points of a mixture of three laws meet those of 300,000 draws of it, within 1 %."""
    laws = [stats.lognorm(s, scale=m) for s, m in ((0.2, 80.0), (0.15, 100.0), (0.25, 150.0))]
    likely = (0.25, 0.4, 0.35)
    ways = [
        (part, [float(law.ppf((i + 0.5) / 256)) for i in range(256)])
        for part, law in zip(likely, laws, strict=True)
    ]
    all_draws = np.concatenate(
        [
            law.ppf((np.arange(round(300_000 * part)) + 0.5) / round(300_000 * part))
            for part, law in zip(likely, laws, strict=True)
        ]
    )
    found = range_of_ways(ways, "mg", by_moments=by_moments)

    assert found[:3] == pytest.approx(list(np.quantile(all_draws, (0.05, 0.5, 0.95))), rel=0.01)


def test_one_way_is_no_mixture() -> None:
    """A single way has the range of its draws."""
    draws = [float(i * i) for i in range(1, 300)]

    assert range_of(draws, "g") == range_of_ways([(1.0, draws)], "g")
