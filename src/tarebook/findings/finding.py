"""A finding: one thing wrong, or worth knowing, in a record someone wrote."""

from __future__ import annotations

from enum import StrEnum

from tarebook.tuples import NamedTuple


class Severity(StrEnum):
    """How much a finding matters.

    An *error* means the record cannot be used as it stands (exit status 1). A *warning* is a
    danger or a likely slip; a *note* tells how something was read. The last two exit with 0.
    """

    ERROR = "error"
    WARNING = "warning"
    NOTE = "note"


class Place(NamedTuple):
    """Where in a file: the name as the user gave it, and the line and key path where known."""

    file: str
    line: int | None = None
    path: str = ""

    def __str__(self) -> str:
        return self.file if self.line is None else f"{self.file}:{self.line}"


class Finding(NamedTuple):
    """One finding: place, severity, short code, sentence, and what to try.

    ``cites`` names the row of ``reference/rules.csv`` that a safety finding stands on.
    """

    place: Place
    severity: Severity
    code: str
    message: str
    hint: str = ""
    cites: str = ""

    def __str__(self) -> str:
        """Return ``file:line: error: message (path); hint``, place first, on one line."""
        path = f" ({self.place.path})" if self.place.path else ""
        hint = f"; {self.hint}" if self.hint else ""
        return f"{self.place}: {self.severity.value}: {self.message}{path}{hint}"
