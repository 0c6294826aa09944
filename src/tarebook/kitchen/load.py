"""Where the kitchen's file lies, and what other commands ask of it."""

from __future__ import annotations

from pathlib import Path

from tarebook.files import holds, read_bytes
from tarebook.findings import Finding, RecordFaulty, Severity
from tarebook.kitchen.profile import UNKNOWN, Kitchen
from tarebook.kitchen.read import read_kitchen
from tarebook.toml.text import MOST_BYTES
from tarebook.where import home

DEFAULT_DRAWER = "basic"
"""The measuring set of a cook who named none."""


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


def drawer_of(said: str | None) -> tuple[str, tuple[Finding, ...]]:
    """Return the measuring set to use, and what is to be said of the kitchen's file.

    Args:
        said: what was asked for, or None.

    Returns:
        What was asked for; else the set of the kitchen; else the basic one. A kitchen with faults
        never stops a recipe from being scaled, but each fault is told with its file and line.
    """
    if said is not None:
        return said, ()
    kitchen, findings = load_kitchen(strict=False)
    return kitchen.drawer or DEFAULT_DRAWER, findings
