"""What is wrong with findings and faults, whichever reader gives them."""

from __future__ import annotations

from collections.abc import Sequence

from tarebook.findings import Finding, RecordFaulty, Severity, TarebookError


class Refused(Exception):
    """A file was refused as it should be: with findings, and no value."""


def findings_wrong(findings: Sequence[Finding], data: bytes, *, found: bool) -> str:
    """Return what is wrong with findings, or nothing; ``found`` is whether a value came too."""
    errors = [one for one in findings if one.severity is Severity.ERROR]
    if found is bool(errors):
        return "neither a value nor an error, or both"
    for one in findings:
        if not str(one).isprintable() or len(str(one)) > 800:
            return f"a finding of more than one visible line: {one!r}"
    lines = data.count(b"\n") + 1
    if any(not 1 <= (one.place.line or 1) <= lines for one in findings):
        return "a line that is not in the file"
    return ""


def fault_wrong(fault: TarebookError) -> str:
    """Return what is wrong with a fault; marks that steer a terminal are taken out at the door."""
    if isinstance(fault, RecordFaulty):
        longest = max((len(str(one)) for one in fault.findings), default=0)
    else:
        longest = len(str(fault))
    return f"a fault of {longest} letters" if longest > 900 else ""
