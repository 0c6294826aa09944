"""Hours of the kitchen's own batches, and what they say of the next one."""

from __future__ import annotations

from collections.abc import Callable
from itertools import count
from math import exp, log
from random import Random
from typing import Any

import pytest

from tarebook.drying.time import Conditions
from tarebook.lessons.hours import Dried, learned_hours, own_dryings, times_inside
from tarebook.plan.hours import carried_hours
from tarebook.records.entry import Draft, Entry, Kind
from tarebook.records.keep import add_entry, start_batch
from tarebook.records.moment import Moment
from tarebook.records.store import writing

QUARTER = Conditions(thickness_mm=6.35, air_c=65.0)
HOUR = 3600
DAY = Moment(1_794_500_000, -360)
RecipeText = Callable[..., str]


def dried(hours: float, how: Conditions = QUARTER, number: int = 1) -> Dried:
    """Return a batch that dried so long."""
    return Dried(number, DAY, hours, 1, how, "at 150 \u00b0F (66 \u00b0C) as noted, 1/4 in")


def entry(kind: str, what: str, hour: float, number: int = 1) -> Entry:
    """Return an entry so many hours after the batch began."""
    at = Moment(DAY.utc_s + round(hour * HOUR), -360)
    return Entry(f"{number:016x}", 1, number, Kind(kind), at, at, what=what)


@pytest.mark.parametrize(
    ("moves", "found"),
    [
        ("in 0 out 6", (6, 1)),
        ("in 0 out 6 in 7 out 12", (5.5, 2)),
        ("in 0 out 5 in 5.5 out 7", (6.5, 1)),
        ("in 0 in 0.5 out 6", (6, 1)),
        ("in 0 out 5 out 6", (6, 1)),
        ("in 0 in 1 out 6 out 7", None),
        ("in 0 in 6 out 6 out 12", (6, 2)),
        ("in 0", None),
        ("out 6", None),
        ("in 6 out 0", None),
    ],
)
def test_loads_and_breaks(moves: str, found: tuple[float, int] | None) -> None:
    """Alike times are loads; a short one more is the same load again; a tangle tells nothing."""
    words = moves.split()
    numbers = count(1)
    told = [
        entry("dry", way, float(hour), next(numbers))
        for way, hour in zip(words[::2], words[1::2], strict=True)
    ]

    assert found == times_inside(told)


def test_one_batch_is_what_it_is_when_told_by_hand() -> None:
    """From the book or by an option, the same hours and the same doubt, carried over too."""
    thin = Conditions(thickness_mm=5.0, air_c=68.0)
    for planned in (QUARTER, thin, Conditions(thickness_mm=12.0, air_c=65.0)):
        by_book, by_hand = learned_hours([dried(6)], planned), carried_hours(6, QUARTER, planned)

        assert by_book is not None
        assert by_book[:3] == pytest.approx(by_hand[:3])
        assert by_book.corners_h == pytest.approx(by_hand.corners_h)


def test_more_batches_say_more() -> None:
    """Their mean is likely, and the range is narrower the more there are; by their own spread."""
    widths = []
    for batches in (1, 3, 10):
        found = learned_hours([dried(6, number=n) for n in range(batches)], QUARTER)
        assert found is not None
        assert found.likely_h == pytest.approx(6)
        widths.append(found.high_h - found.low_h)
    scattered = learned_hours([dried(4), dried(6), dried(9)], QUARTER)

    assert widths == sorted(widths, reverse=True)
    assert widths[0] == pytest.approx(3.0)
    assert scattered is not None
    assert scattered.likely_h == pytest.approx(6)
    assert scattered.high_h - scattered.low_h > widths[0]


def test_what_is_alike_goes_first() -> None:
    """A batch cut twice as thick is left out where others are alike, and else in doubt by two."""
    thick = dried(15, Conditions(thickness_mm=12.7, air_c=65.0), number=1)
    both = learned_hours([thick, dried(6, number=2)], QUARTER)
    alone = learned_hours([thick], QUARTER)

    assert both is not None and alone is not None
    assert (2,) == both.batches
    assert both.likely_h == pytest.approx(6)
    assert alone.high_h >= 2 * alone.likely_h > 0
    assert "so unlike this one that a factor of 2 either way stays" in alone.why


def test_it_says_whence_it_comes() -> None:
    """Day, time, heat and cut of one batch; count, days and times of several."""
    one = learned_hours([dried(6 + 1 / 6)], QUARTER)
    more = learned_hours([dried(6, number=2), dried(6.5, number=1)], QUARTER)

    assert one is not None and more is not None
    assert (
        "your batch of 12 Nov 2026: 6 h 10 min at 150 \u00b0F (66 \u00b0C) as noted, 1/4 in; "
        "at least 25% either way from one batch to the next"
    ) == one.why
    assert more.why.startswith(
        "your last 2 batches, 12 Nov to 12 Nov 2026: 6 h 30 min, 6 h at 150 \u00b0F (66 \u00b0C)"
    )
    assert (2, 1) == more.batches


def test_nothing_of_nothing() -> None:
    """Without batches nothing is said."""
    assert learned_hours([], QUARTER) is None
    assert () == own_dryings("lake", "Lake strips")


@pytest.mark.parametrize("n", [1, 3, 10])
def test_the_next_batch_is_covered(n: int) -> None:
    """In kitchens with a spread of a tenth, nine in ten of the next batches lie in the range."""
    chance, held = Random(n), 0
    for _ in range(400):
        true, spread = log(6) + chance.gauss(0, 0.3), 0.1 * exp(chance.gauss(0, 0.25))
        batches = [dried(exp(chance.gauss(true, spread)), number=k) for k in range(n)]
        found = learned_hours(batches, QUARTER)
        assert found is not None
        held += found.low_h <= exp(chance.gauss(true, spread)) <= found.high_h

    assert 0.85 <= held / 400 <= 0.97


def keep(
    text: str, *entries: tuple[float, str, dict[str, Any]], title: str = "Lake strips"
) -> None:
    """Keep a batch in the book of this test."""
    with writing() as db:
        draft = Draft(Kind.START, DAY, DAY, what="meat")
        begun = start_batch(db, recipe="lake", title="Lake strips", recipe_text=text, draft=draft)
        number = begun.batch
        for hour, kind, fields in entries:
            at = Moment(DAY.utc_s + round(hour * HOUR), -360)
            add_entry(db, number, Draft(Kind(kind), at, at, **fields))


def test_out_of_the_book(recipe_text: RecipeText) -> None:
    """Finished batches of this recipe alone: cut by the recipe that day, air as noted, else its."""
    text = recipe_text(title="Lake strips")
    done = (9, "finish", {})
    dry_in, dry_out = (1, "dry", {"what": "in"}), (7, "dry", {"what": "out"})
    keep(text, dry_in, dry_out, done)
    keep(text, dry_in, dry_out)  # still in hand
    keep(text, done)  # never told when it dried
    air = {"what": "air", "written": "150 F"}
    keep(
        text,
        dry_in,
        (2, "temp", {**air, "value": 148}),
        (3, "temp", {**air, "value": 152}),
        (3, "temp", {"what": "meat", "written": "120 F", "value": 120}),
        dry_out,
        done,
    )
    keep("no recipe", dry_in, dry_out, done)
    keep(text, dry_in, (1.5, "dry", {"what": "out"}), done)  # taken out at once
    keep(text, dry_in, (700, "dry", {"what": "out"}), done)  # told weeks later
    found = own_dryings("lake.toml", "Lake strips")

    assert [4, 1] == [one.batch for one in found]
    assert [6, 6] == [one.hours for one in found]
    assert found[0].how.startswith("at 150 \u00b0F (66 \u00b0C) as noted")
    assert found[0].conditions.air_c == pytest.approx((150 - 32) / 1.8)
    assert "as noted" not in found[1].how


def test_a_struck_entry_counts_no_more(recipe_text: RecipeText) -> None:
    """What was struck or replaced tells no hours."""
    keep(
        recipe_text(title="Lake strips"),
        (1, "dry", {"what": "in"}),
        (7, "dry", {"what": "out"}),
        (8, "dry", {"what": "out", "about": 3}),
        (9, "finish", {}),
    )

    assert [7] == [one.hours for one in own_dryings("lake", "Lake strips")]
