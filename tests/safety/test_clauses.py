"""Sentences taken apart: clauses, their "no", and their temperatures."""

from __future__ import annotations

import pytest

from tarebook.safety.clauses import Clause, degrees_in, number_of, sentences


def test_a_text_is_taken_apart_at_its_stops_and_small_words() -> None:
    """Each sentence by itself; a clause knows the word that opened it."""
    first, second = sentences("Roast it (not long) until done, and cool. Pack 1.5 lb!")

    assert [" ".join(one.words) for one in first] == ["roast it", "not long", "done", "cool"]
    assert [one.opens for one in first] == ["", "", "until", "and"]
    assert [one.words for one in second] == [("pack", "1.5", "lb")]


def test_a_no_before_words_counts_and_one_behind_does_not() -> None:
    """ "Never on the counter" asks for nothing."""
    (asked,), (forbidden,) = sentences("On the counter, or never. Never on the counter.")

    assert asked.asks("on the counter") and not forbidden.asks("on the counter")
    assert not asked.asks("in the sun")


@pytest.mark.parametrize(
    ("text", "found"),
    [
        ("reads 160 °F (71 °C)", [160, 159.8]),
        ("at 145-155 °F", [145]),
        ("at 68c", [154.4]),
        ("to 130 degrees", [130]),
        ("to 60 degrees celsius", [140]),
        ("120 minutes at 150", [150]),
        ("for 6 h", []),
    ],
)
def test_temperatures_are_read_in_both_scales(text: str, found: list[float]) -> None:
    """The lower end of a range counts; a bare number only where it can be nothing else."""
    ((clause, *_),) = sentences(text)

    assert list(degrees_in(clause, bare=True)) == pytest.approx(found)
    assert number_of("cup") is None and number_of("145–155") == 145


def test_a_bare_number_is_none_where_none_is_asked_for() -> None:
    """A clause about something else has no temperature without its scale."""
    assert list(degrees_in(Clause.of(("at", "150")), bare=False)) == []
