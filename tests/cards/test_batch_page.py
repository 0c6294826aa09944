"""The pages of the batch book."""

from __future__ import annotations

from fractions import Fraction
from typing import Any
from unicodedata import category

from hypothesis import given
from hypothesis import strategies as st

from tarebook.cards.batch_page import batch_data, batch_page, list_page, next_page
from tarebook.cards.lines import Style, plain_text, width
from tarebook.records.entry import Batch, Entry, Kind, Row
from tarebook.records.moment import Moment

TEXTS = st.text(st.characters(exclude_categories=["Cs"]), max_size=120)


def entry(number: int, kind: Kind, minutes: int = 0, late: int = 0, **fields: Any) -> Entry:
    """Return an entry some minutes after a start, written down so many minutes later."""
    at = 1_795_600_000 + minutes * 60
    return Entry(
        uid=f"{number:016x}",
        batch=12,
        number=number,
        kind=kind,
        happened=Moment(at, -360),
        recorded=Moment(at + late * 60, -360),
        **fields,
    )


def batch(*entries: Entry, title: str = "Lake strips") -> Batch:
    """Return a batch."""
    return Batch(12, "f" * 16, "lake", title, "d" * 64, "text", entries)


START = entry(1, Kind.START, what="meat", written="2500 g", value=Fraction(2500))


def test_in_the_order_of_the_day() -> None:
    """Entries stand as things happened, not as they were written; those late are told."""
    shown = plain_text(
        batch_page(
            batch(START, entry(2, Kind.DRY, 90, what="in"), entry(3, Kind.TURN, 30, late=120))
        )
    )

    assert shown.index("     3  ") < shown.index("     2  ")
    assert "Written down an hour or more later: 3." in shown
    assert "in hand" in shown


def test_what_does_not_stand_is_quiet() -> None:
    """Struck entries are marked in words and by a mark, not by colour alone."""
    lines = list(batch_page(batch(START, entry(2, Kind.TURN), entry(3, Kind.STRIKE, about=2))))
    (struck,) = (line for line in lines if "turned" in line.text)

    assert Style.QUIET == struck.style
    assert struck.text.startswith("x    2") and struck.text.endswith("(struck by 3)")


def test_not_weighed_is_not_zero() -> None:
    """What was not weighed is named as such, and without a raw weight no share is told."""
    told = batch(
        entry(1, Kind.START, what="meat"),
        entry(2, Kind.WEIGH, what="finished", written="900 g", value=Fraction(900)),
    )
    shown = plain_text(batch_page(told))

    assert "Not weighed: raw, soaked, leftover, towels, packed." in shown
    assert "of raw" not in shown
    data = batch_data(told)
    assert (None, 900.0, None) == (data["raw_g"], data["finished_g"], data["yield_fraction"])


def test_nothing_weighed_has_no_table() -> None:
    """A page without weights has no heading over nothing."""
    assert "What was weighed" not in plain_text(
        batch_page(batch(entry(1, Kind.START, what="meat")))
    )


def test_struck_as_a_whole() -> None:
    """A batch that was a mistake says so, on the page and in the list."""
    assert "struck as a whole" in plain_text(
        batch_page(batch(START, entry(2, Kind.STRIKE, about=1)))
    )
    row = Row(12, "lake", "Lake strips", "d", None, None, True, *(None,) * 9)
    assert "struck" in plain_text(list_page([row], of=1))


@given(st.lists(TEXTS, min_size=1, max_size=4), TEXTS)
def test_whatever_was_typed_fits(notes: list[str], title: str) -> None:
    """No line is broader than 80 columns, and none carries a mark that steers a terminal."""
    entries = [START, *(entry(n, Kind.NOTE, note=note) for n, note in enumerate(notes, start=2))]
    told = batch(*entries, title=title)
    open_notes = [(one, title) for one in entries[1:]]
    for lines in (batch_page(told), next_page(open_notes)):
        for line in lines:
            assert width(line.text) <= 80
            assert not {category(c) for c in line.text} & {"Cc", "Cf", "Zl", "Zp"}


def test_runs_are_drawn_together() -> None:
    """Many late entries are told in few words."""
    late = [entry(n, Kind.TURN, late=90 if n not in (4, 6) else 0) for n in range(2, 9)]

    assert "an hour or more later: 2-3, 5, 7-8." in plain_text(batch_page(batch(START, *late)))
