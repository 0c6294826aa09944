"""How long it keeps: the cautious times where they hold, and no date where they do not."""

from __future__ import annotations

from collections.abc import Callable
from datetime import date

import pytest

from tarebook.findings import Severity
from tarebook.recipe.model import Finish, FinishBy, HeatStep
from tarebook.safety.case import Case
from tarebook.safety.storage import keep_by, storage, vacuum

Cases = Callable[..., Case]


def test_the_cautious_times(case: Cases) -> None:
    """A batch with a heat step gets the shortest published time of each place, and the longest."""
    found = keep_by(case())

    assert [one.words for one in found.limits] == [
        "14 days at room temperature",
        "3 months in the refrigerator",
        "6 months frozen",
    ]
    assert found.text == (
        "Sealed, 14 days at room temperature, 3 months in the refrigerator, 6 months frozen: the "
        "shortest published times. The longest are 2 months at room temperature, 6 months in the "
        "refrigerator, 12 months frozen."
    )
    assert found.citation == (
        "own working, lowest of Wyoming, Michigan State, NCHFP, FSIS and Minnesota"
    )


@pytest.mark.parametrize(
    ("packed", "until"),
    [
        (date(2026, 11, 25), (date(2026, 12, 9), date(2027, 2, 25), date(2027, 5, 25))),
        # Months too short for the day end on their last.
        (date(2027, 8, 31), (date(2027, 9, 14), date(2027, 11, 30), date(2028, 2, 29))),
        (date(2026, 12, 31), (date(2027, 1, 14), date(2027, 3, 31), date(2027, 6, 30))),
    ],
)
def test_last_days(case: Cases, packed: date, until: tuple[date, ...]) -> None:
    """With the day it was packed, each place has its last day."""
    assert until == tuple(one.until for one in keep_by(case(), packed_on=packed).limits)


MOIST = Finish(by=FinishBy.MOISTURE_TO_PROTEIN, value=(0.8, 1.0, 1.2))


@pytest.mark.parametrize(
    ("changes", "reason"),
    [
        ({"heat": HeatStep.UNSTATED}, "no heat step is recorded"),
        (
            {"food": "turkey-breast", "heat": HeatStep.OVEN_AFTER},
            "its heat step is not published for such meat",
        ),
        (
            {"thickness_mm": None, "heat": HeatStep.OVEN_AFTER},
            "its heat step is not published for such meat",
        ),
        ({"finish": MOIST}, "it stops drying while too moist"),
        ({"food": "whitefish"}, "no published rule for drying fish at home is held"),
        ({"food": "mushroom-shiitake"}, "no published rule for drying mushrooms at home is held"),
        ({"food": "apple"}, "no published rule for drying this food at home is held"),
    ],
)
def test_no_date_where_none_holds(case: Cases, changes: dict[str, object], reason: str) -> None:
    """No time and no date at all, at no place, and the reason said; keep it cold."""
    found = keep_by(case(**changes), packed_on=date(2026, 11, 25))

    assert found.limits == ()
    assert reason == found.reason
    assert found.text == (f"Keep it cold and treat it as perishable: {reason}. No date is given.")


def test_the_card_says_the_times(case: Cases) -> None:
    """The caution on keeping says the times, the date on the pack, and mould."""
    (found,) = storage(case())

    assert found.severity is Severity.NOTE
    assert found.message == (
        "the shortest published times for sealed packs are 14 days at room temperature, 3 months "
        "in the refrigerator, 6 months frozen"
    )
    assert found.hint == "date every pack, and throw all of it away if mould shows"


@pytest.mark.parametrize("key", ["deer", "whitefish", "mushroom-shiitake"])
def test_without_times_the_card_says_keep_it_cold(case: Cases, key: str) -> None:
    """Where no time holds the caution is a warning and names none."""
    (found,) = storage(case(key, heat=HeatStep.UNSTATED))

    assert found.severity is Severity.WARNING
    assert found.message.startswith("keep it cold as perishable food, with no use-by date")
    assert "days" not in found.message and "months" not in found.message


def test_vacuum_packs_hear_of_what_they_do_not_do(case: Cases) -> None:
    """Only a batch packed without air is told what that does not replace."""
    assert vacuum(case(vacuum_packed=True)) != ()
    assert vacuum(case()) == ()
