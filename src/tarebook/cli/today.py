"""The day that a page carries: as it is said, as the build has it, or today by the clock."""

from __future__ import annotations

import os
from datetime import UTC, date, datetime

from tarebook.findings import AskedWrongly


def today() -> date:
    """Return today: by SOURCE_DATE_EPOCH where that is set, so that pages come out the same."""
    epoch = os.environ.get("SOURCE_DATE_EPOCH", "")
    if epoch.isdecimal() and len(epoch) <= 11:
        return datetime.fromtimestamp(int(epoch), UTC).date()
    return datetime.now().astimezone().date()


def read_day(text: str, option: str) -> date:
    """Return a day written year first, as 2026-11-25.

    Raises:
        AskedWrongly: it is no such day.
    """
    try:
        return date.fromisoformat(text.strip())
    except ValueError:
        hint = "write it year first, as 2026-11-25"
        raise AskedWrongly(f'{option}: "{text[:20]}" is no day; {hint}') from None
