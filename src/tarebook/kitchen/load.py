"""Where the kitchen's file lies, and what other commands ask of it."""

from __future__ import annotations

from pathlib import Path

from tarebook.files import holds, read_bytes
from tarebook.findings import Finding, RecordFaulty, Severity
from tarebook.kitchen.profile import UNKNOWN, Kitchen
from tarebook.kitchen.read import read_kitchen
from tarebook.toml.text import MOST_BYTES
from tarebook.where import home


def kitchen_file() -> Path:
    """Return where the kitchen's file lies; it may not be there yet."""
    return home() / "kitchen.toml"


def load_kitchen(*, strict: bool = True) -> tuple[Kitchen, tuple[Finding, ...]]:
    """Return the cook's kitchen and the findings on its file; an unknown kitchen where none is.

    Args:
        strict: whether to stop at a fault; otherwise what is faulty counts as not known.

    Raises:
        RecordFaulty: strict, and the file has errors; carries every finding.
        FileUnreadable: strict, and the file is there but cannot be read.
    """
    file = kitchen_file()
    if not holds(file.exists):
        return UNKNOWN, ()
    kitchen, findings = read_kitchen(
        read_bytes(file, most=MOST_BYTES, what="kitchen"), file=str(file)
    )
    if strict and any(one.severity is Severity.ERROR for one in findings):
        raise RecordFaulty(findings)
    return kitchen, findings
