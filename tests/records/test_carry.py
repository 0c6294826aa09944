"""What an exported book may hold, field by field."""

from __future__ import annotations

from typing import Any

import pytest

from tarebook.records.carry import Raw, RawBatch, checked
from tarebook.records.entry import LONGEST_TEXT
from tarebook.records.keep import digest_of
from tarebook.toml.fault import Faults

AT = "2026-11-25T18:00:00-06:00"
DIGEST = digest_of("text")


def entry(number: int, kind: str, **more: Any) -> dict[str, Any]:
    """Return the fields of an entry."""
    uid = f"{number:016x}"
    return {"number": number, "uid": uid, "kind": kind, "happened": AT, "recorded": AT, **more}


START = entry(1, "start", what="meat", written="2500 g", value="2500")
NOTE = entry(2, "note", what="next-time", note="less pepper")
HEAD = {"number": 1, "uid": "f" * 16, "recipe": "lake", "title": "Lake", "wording": DIGEST}


def faults_of(*entries: dict[str, Any], **head: Any) -> list[str]:
    """Return what is found wrong with a batch of such entries."""
    faults = Faults()
    raws = tuple(Raw(one, line) for line, one in enumerate(entries, start=10))
    batch = RawBatch(Raw({**HEAD, **head}, 9), raws)
    checked([batch], [Raw({"digest": DIGEST, "text": "text"}, 99)], faults)
    return [str(one) for one in faults.findings("book", None)]


def test_nothing_wrong() -> None:
    """A batch as it is exported has no faults."""
    told = (
        START,
        NOTE,
        entry(3, "weigh", what="towels", written="0 g", value="0"),
        entry(4, "temp", what="air", written="71.5 C", value="160.7"),
        entry(5, "strike", about=2),
        entry(6, "strike", about=5),
        entry(7, "taken", about=2, wording=DIGEST),
        entry(8, "start", what="meat", about=1),
    )

    assert [] == faults_of(*told)


@pytest.mark.parametrize(
    ("wrong", "says"),
    [
        (entry(2, "wiegh", what="raw"), 'kind of entry (kind); did you mean "weigh"?'),
        (entry(2, "weigh", what="rwa", written="1 g", value="1"), '"rwa": an entry of kind weigh'),
        (entry(2, "weigh", what="raw", written="1 lb", value="1"), '"1 lb" is 453.59237, and the'),
        (entry(2, "weigh", what="raw", written="1 lb"), '"" is no exact number (value)'),
        (entry(2, "weigh", what="raw", value="1"), "(written)"),
        (entry(2, "weigh", what="raw", written="0 g", value="0"), "is zero (written)"),
        (entry(2, "temp", what="meat", written="160", value="160"), "names no scale (written)"),
        (entry(2, "turn", written="1 lb"), "an entry of kind turn has no value"),
        (entry(2, "turn", what="in"), '"in": an entry of kind turn is about nothing'),
        (entry(2, "turn", happened="yesterday"), '"yesterday" is no moment with its zone'),
        (entry(2, "turn", happened=5), '"5" is no moment'),
        (entry(2, "turn", uid="abc"), '"abc" is no uid'),
        (entry(2, "turn", uid=f"{1:016x}"), "stands here twice (uid)"),
        (entry(1, "turn", uid="a" * 16), "entry 1 stands behind entry 1"),
        (entry(2, "turn") | {"number": "two"}, '"two" is no number'),
        (entry(2, "turn") | {"number": True}, '"True" is no number'),
        (entry(2, "turn", song="x"), '"song" is no key here'),
        (entry(2, "turn", nte="x"), 'did you mean "note"?'),
        (entry(2, "turn", note=5), "that is no text (note); put it in quotes"),
        (entry(2, "turn", note="x" * (LONGEST_TEXT + 1)), "4,001 letters; at most 4,000"),
        (entry(2, "turn", wording=DIGEST), "an entry of kind turn has no wording"),
        (entry(2, "note", note=" "), "a note without words"),
        (entry(2, "start", what="meat"), "the batch is started twice"),
        (entry(2, "strike"), "an entry of kind strike says what it is about"),
        (entry(2, "strike", about=2), "there is no entry 2 before this one"),
        (entry(2, "dropped", about=1), "entry 1 is no note for next time"),
        (entry(2, "turn", about=1), "entry 1 is of kind start, this one of kind turn"),
    ],
)
def test_faults_of_an_entry(wrong: dict[str, Any], says: str) -> None:
    """Each fault is told with its line and what is wrong."""
    found = faults_of(START, wrong)

    assert any(says in one and one.startswith("book:11: error: ") for one in found), found


@pytest.mark.parametrize(
    ("head", "says"),
    [
        ({"number": 0}, '"0" is no number'),
        ({"recipe": ""}, "the batch names no recipe"),
        ({"wording": "0" * 64}, 'the recipe as it was, "000000000000", is not in this file'),
        ({"uid": f"{1:016x}"}, "stands here twice"),
        ({"colour": "x"}, '"colour" is no key here'),
    ],
)
def test_faults_of_a_batch(head: dict[str, Any], says: str) -> None:
    """Of the batch itself as well."""
    found = faults_of(START, **head)

    assert any(says in one for one in found), found


def test_a_batch_that_does_not_begin() -> None:
    """A batch without entries, or without its start, is none."""
    for told in ((), (NOTE,)):
        assert "does not begin with an entry of kind start" in faults_of(*told)[-1]


def test_a_recipe_that_was_changed() -> None:
    """A recipe that does not go with its digest was changed on the way."""
    faults = Faults()
    checked([], [Raw({"digest": DIGEST, "text": "other"}, 3)], faults)

    (found,) = faults.findings("book", None)
    assert "book:3: error: that is not the digest of this text" in str(found)


def test_a_number_that_stands_twice() -> None:
    """Two batches of one number are told."""
    faults = Faults()
    heads = [{**HEAD, "uid": letter * 16} for letter in "ab"]
    starts = [{**START, "uid": letter * 16} for letter in "cd"]
    batches = [
        RawBatch(Raw(head, line), (Raw(one, line),))
        for line, (head, one) in enumerate(zip(heads, starts, strict=True), start=1)
    ]
    checked(batches, [Raw({"digest": DIGEST, "text": "text"})], faults)

    assert ["book:2: error: batch 1 stands here twice (number)"] == [
        str(one) for one in faults.findings("book", None)
    ]
