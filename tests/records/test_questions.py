"""What looks like a slip is asked, and never changed."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import pytest

from tarebook.records.entry import Entry
from tarebook.records.find import entries_of
from tarebook.records.questions import questions
from tarebook.records.standing import standing_of
from tarebook.records.store import reading

Start = Callable[..., Entry]
Add = Callable[..., Entry]
Asked = Callable[..., tuple[str, ...]]


@pytest.fixture
def asked(start: Start, add: Add) -> Asked:
    """Start a batch of 2500 g, enter weights, and return what is asked of the last entry."""

    def ask(
        kind: str, *before: tuple[str, int], hours: float = 10, **fields: Any
    ) -> tuple[str, ...]:
        start()
        for thing, grams in before:
            add("weigh", what=thing, value=grams)
        with reading() as db:
            old = standing_of(entries_of(db, 1))
        entry = add(kind, hours=hours, **fields)
        with reading() as db:
            return questions(entry, old, standing_of(entries_of(db, 1)))

    return ask


@pytest.mark.parametrize(
    ("thing", "grams", "before", "says"),
    [
        ("finished", 2600, (), "finished is heavier than raw was"),
        ("finished", 2600, (("soaked", 2550),), "finished is heavier than raw was"),
        ("packed", 950, (("finished", 900),), "packed is heavier than finished was"),
        ("soaked", 800, (("finished", 900),), "soaked is lighter than finished is"),
        ("soaked", 5200, (), "more than twice the raw weight"),
        ("soaked", 2400, (), "a rub draws water out"),
        ("raw", 4000, (), "far from the weight the batch was started with"),
        ("finished", 100, (), "less than a twentieth"),
        ("towels", 2600, (), "more liquid on the towels"),
        (
            "finished",
            890,
            (("finished", 900),),
            "weighed before (entry 2): the later weight counts",
        ),
    ],
)
def test_odd_weights(
    thing: str, grams: int, before: tuple[tuple[str, int], ...], says: str, asked: Asked
) -> None:
    """A weight that does not go with the others is asked about."""
    found = asked("weigh", *before, what=thing, value=grams)

    assert says in found[0] and len(found) <= 2


@pytest.mark.parametrize(
    ("thing", "grams", "before"),
    [
        ("raw", 2520, ()),
        ("soaked", 2700, ()),
        ("finished", 900, (("soaked", 2700),)),
        ("packed", 890, (("finished", 900),)),
        ("leftover", 0, ()),
        ("towels", 40, ()),
    ],
)
def test_ordinary_weights(
    thing: str, grams: int, before: tuple[tuple[str, int], ...], asked: Asked
) -> None:
    """An ordinary batch is not asked anything."""
    assert () == asked("weigh", *before, what=thing, value=grams)


def test_times(asked: Asked) -> None:
    """A day before the batch began is asked about."""
    assert ("that is 20 h before the batch was started",) == asked("turn", hours=-20)


def test_a_time_to_come(asked: Asked, at: Callable[..., Any]) -> None:
    """What is written down before it happens is asked about."""
    assert ("that time is still to come",) == asked("turn", hours=2, recorded=at(1))


def test_temperatures(asked: Asked) -> None:
    """Meat hotter than boiling water may have been the air; the air may be so hot."""
    assert 1 == len(asked("temp", what="meat", value=300))


def test_hot_air(asked: Asked) -> None:
    """Air may be hotter than boiling water."""
    assert () == asked("temp", what="air", value=300)


def test_out_without_in(asked: Asked) -> None:
    """Out of the soak without having gone in: the length would not be known."""
    assert ("when it went in is not told: tarebook batch soak in --at TIME",) == asked(
        "soak", what="out"
    )


def test_out_before_in(asked: Asked, start: Start, add: Add) -> None:
    """Out before in is asked about."""
    start()
    add("dry", hours=5, what="out")
    with reading() as db:
        old = standing_of(entries_of(db, 1))
    entry = add("dry", hours=6, what="in")
    with reading() as db:
        assert ("out is before in",) == questions(entry, old, standing_of(entries_of(db, 1)))


def test_finished_without_its_weight(asked: Asked) -> None:
    """Of a batch that is done the weight is asked for, with how to tell it."""
    (found,) = asked("finish")

    assert "tarebook batch weigh finished WEIGHT --batch 1" in found


def test_finished_with_its_weight(asked: Asked) -> None:
    """Once it was weighed, nothing is asked."""
    assert () == asked("finish", ("finished", 900))


@pytest.mark.parametrize(("kind", "many"), [("soak", 1), ("heat", 1), ("dry", 0)])
def test_in_twice(kind: str, many: int, asked: Asked, add: Add) -> None:
    """Into the soak a second time may have been meant as out of it; loads follow each other."""
    assert () == asked(kind, what="in")
    with reading() as db:
        old = standing_of(entries_of(db, 1))
    entry = add(kind, hours=12, what="in")
    with reading() as db:
        found = questions(entry, old, standing_of(entries_of(db, 1)))

    assert many == len([one for one in found if f"tarebook batch {kind} out" in one])


@pytest.mark.parametrize(
    ("out_h", "says"),
    [
        (1.1, "that makes 6 min in the dryer, and the next batch is planned by it"),
        (1.9, "that makes 54 min in the dryer"),
        (7, None),
        (25, None),
        (31, "that makes 30 h in the dryer"),
    ],
)
def test_odd_hours_in_the_dryer(out_h: float, says: str | None, start: Start, add: Add) -> None:
    """Nothing is dry within the hour, and who comes home after a day and a night forgot to tell."""
    start()
    add("dry", what="in", hours=1)
    with reading() as db:
        old = standing_of(entries_of(db, 1))
    entry = add("dry", what="out", hours=out_h)
    with reading() as db:
        found = questions(entry, old, standing_of(entries_of(db, 1)))

    assert (0 if says is None else 1) == len(found)
    assert says is None or says in found[0]
