"""A batch book built in a few words, in a folder that is nobody's."""

from __future__ import annotations

from collections.abc import Callable
from datetime import datetime, timedelta, timezone
from fractions import Fraction
from typing import Any

import pytest

from tarebook.records.entry import MEAT, Draft, Entry, Kind
from tarebook.records.keep import add_entry, start_batch
from tarebook.records.moment import Moment, moment_of
from tarebook.records.store import writing

Start = Callable[..., Entry]
Add = Callable[..., Entry]
At = Callable[..., Moment]

NOON = datetime(2026, 11, 25, 12, 0, tzinfo=timezone(timedelta(hours=-6)))
TEXT = 'title = "Lake strips"\r\n[meat]\nfood = "deer" # ours\n'


def moment(hours: float = 0) -> Moment:
    """Return a moment so many hours after noon of a day in November."""
    return moment_of(NOON + timedelta(hours=hours))


def draft_of(kind: Kind | str, hours: float = 0, **fields: Any) -> Draft:
    """Return a draft of an entry; a whole number will do as its value."""
    if isinstance(fields.get("value"), int | str):
        fields["value"] = Fraction(fields["value"])
        fields.setdefault("written", f"{fields['value']} g")
    at = moment(hours)
    return Draft(**{"kind": Kind(kind), "happened": at, "recorded": at, **fields})


@pytest.fixture
def at() -> At:
    """A moment so many hours after noon."""
    return moment


@pytest.fixture
def start() -> Start:
    """Start a batch in the book of this test."""

    def begin(
        recipe: str = "lake",
        *,
        title: str = "Lake strips",
        meat: int | None = 2500,
        text: str = TEXT,
        hours: float = 0,
    ) -> Entry:
        draft = draft_of("start", hours, what=MEAT)
        if meat is not None:
            draft = draft_of("start", hours, what=MEAT, value=meat)
        with writing() as db:
            return start_batch(db, recipe=recipe, title=title, recipe_text=text, draft=draft)

    return begin


@pytest.fixture
def add() -> Add:
    """Add an entry to a batch in the book of this test."""

    def enter(kind: str, batch: int = 1, hours: float = 1, **fields: Any) -> Entry:
        with writing() as db:
            return add_entry(db, batch, draft_of(kind, hours, **fields))

    return enter


@pytest.fixture
def draft() -> Callable[..., Draft]:
    """A draft of an entry."""
    return draft_of
