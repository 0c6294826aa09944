"""What still stands after all corrections."""

from __future__ import annotations

from collections.abc import Callable
from fractions import Fraction
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tarebook.records.entry import Draft, Entry, Kind
from tarebook.records.standing import ended_by, standing_of

DraftOf = Callable[..., Draft]
Book = Callable[..., tuple[Entry, ...]]


@pytest.fixture
def book(draft: DraftOf) -> Book:
    """Entries of one batch, numbered from 1; the first starts it with 2500 g."""

    def entries(*told: tuple[str, dict[str, Any]]) -> tuple[Entry, ...]:
        whole = [("start", {"what": "meat", "value": 2500}), *told]
        return tuple(
            Entry(uid=f"{n:016x}", batch=1, number=n, **draft(kind, n, **fields)._asdict())
            for n, (kind, fields) in enumerate(whole, start=1)
        )

    return entries


def weigh(thing: str, grams: int, **more: Any) -> tuple[str, dict[str, Any]]:
    """Return a weight as told."""
    return "weigh", {"what": thing, "value": grams, **more}


def strike(number: int) -> tuple[str, dict[str, Any]]:
    """Return a strike as told."""
    return "strike", {"about": number}


def test_raw_is_the_meat_of_the_start_until_it_is_weighed(book: Book) -> None:
    """The weight at the start counts, and a weighing of its own outdoes it."""
    assert 2500 == standing_of(book()).weight_g("raw")
    assert 2600 == standing_of(book(weigh("raw", 2600))).weight_g("raw")


def test_what_was_not_weighed_is_not_zero(book: Book) -> None:
    """Nothing told is None; nothing on the towels is zero."""
    found = standing_of(book(weigh("towels", 0)))

    assert found.weight_g("leftover") is None
    assert 0 == found.weight_g("towels")
    assert found.yield_fraction is None


def test_a_strike_and_a_strike_of_it(book: Book) -> None:
    """What is struck does not count, and does again once the strike is struck."""
    told = [weigh("finished", 900), strike(2)]
    assert standing_of(book(*told)).weight_g("finished") is None
    told.append(strike(3))
    assert 900 == standing_of(book(*told)).weight_g("finished")
    told.append(strike(4))
    assert standing_of(book(*told)).weight_g("finished") is None
    assert {2: 3, 4: 5} == {number: one.number for number, one in ended_by(book(*told)).items()}


def test_a_replacement_and_back(book: Book) -> None:
    """The later writing counts; struck, the earlier one stands again."""
    told = [weigh("finished", 9000), weigh("finished", 900, about=2)]
    assert 900 == standing_of(book(*told)).weight_g("finished")
    assert 9000 == standing_of(book(*told, strike(3))).weight_g("finished")


def test_a_late_correction_does_not_outdo_a_later_weight(book: Book) -> None:
    """Of two weighings the later counts, even where the earlier is corrected after it."""
    told = [weigh("finished", 950), weigh("finished", 900), weigh("finished", 940, about=2)]

    assert 900 == standing_of(book(*told)).weight_g("finished")


def test_a_replacement_that_tells_of_another_thing(book: Book) -> None:
    """What was taken for soaked and was finished counts as finished only."""
    found = standing_of(book(weigh("soaked", 900), weigh("finished", 900, about=2)))

    assert (None, 900) == (found.weight_g("soaked"), found.weight_g("finished"))
    assert 0.36 == found.yield_fraction


def test_a_batch_struck_as_a_whole(book: Book) -> None:
    """Without its start a batch is struck; what is told of it is still there."""
    found = standing_of(book(weigh("soaked", 2600), strike(1)))

    assert found.start is None and found.weight_g("raw") is None
    assert Fraction(2600) == found.weight_g("soaked")


def test_spans(book: Book) -> None:
    """From in to out; loads follow each other, so it is the first in and the last out."""
    told = [("soak", {"what": "in"}), ("soak", {"what": "out"}), ("dry", {"what": "in"}),
            ("dry", {"what": "in"}), ("dry", {"what": "out"}), ("dry", {"what": "out"}),
            ("heat", {"what": "out"})]  # fmt: skip
    found = standing_of(book(*told))

    assert (1.0, 3.0, None) == (found.soak.hours, found.dry.hours, found.heat.hours)


def test_out_before_in_is_no_length(book: Book) -> None:
    """What cannot be is no length of time, and none below zero."""
    found = standing_of(book(("soak", {"what": "out"}), ("soak", {"what": "in"})))

    assert found.soak.hours is None and found.soak.start is not None


def test_notes_for_next_time(book: Book) -> None:
    """A note is open until it is taken up, dropped or struck; its new wording is no second note."""
    note = ("note", {"what": "next-time", "note": "less pepper"})
    for end in (("taken", {"about": 2}), ("dropped", {"about": 2}), strike(2)):
        assert (2,) == tuple(one.number for one in standing_of(book(note)).open_notes)
        assert () == standing_of(book(note, end)).open_notes
        assert (2,) == tuple(
            one.number for one in standing_of(book(note, end, strike(3))).open_notes
        )
    again = ("note", {"what": "next-time", "note": "no pepper", "about": 2})
    assert (3,) == tuple(one.number for one in standing_of(book(note, again)).open_notes)
    assert () == standing_of(book(note, again, ("taken", {"about": 3}))).open_notes
    assert () == standing_of(book(note, ("taken", {"about": 2}), ("note", {**again[1]}))).open_notes


@given(st.data())
def test_an_entry_stands_or_exactly_one_ended_it(data: st.DataObject) -> None:
    """Whatever strikes and replaces what: an entry is over where one that stands ended it."""
    from tarebook.records.moment import Moment

    entries: list[Entry] = []
    for number in range(1, data.draw(st.integers(2, 12)) + 1):
        about = data.draw(st.none() | st.integers(1, number - 1)) if number > 1 else None
        kind = Kind.TURN if about is None else data.draw(st.sampled_from([Kind.STRIKE, Kind.TURN]))
        at = Moment(number, 0)
        entries.append(Entry("", 1, number, kind, at, at, about=about))
    ended = ended_by(entries)

    for one in entries:
        enders = [other for other in entries if other.about == one.number]
        standing = [other for other in enders if other.number not in ended]
        assert (one.number in ended) == bool(standing)
        if standing:
            assert ended[one.number] == standing[-1]
