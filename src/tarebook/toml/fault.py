"""Faults on their way to becoming findings: gathered while reading, put in file order last."""

from __future__ import annotations

from tarebook.findings import AmountError, Finding, Place, Severity
from tarebook.toml.locate import KeyPath, Lines, path_text
from tarebook.tuples import NamedTuple

MOST_ERRORS = 100
"""A file with more is not a recipe; the rest are not looked for, so that no file takes long."""


class TooManyErrors(Exception):
    """Ends the reading of a file that is nothing but faults."""


class Refused(Exception):
    """One value cannot be used; becomes a fault at the place of its key."""

    def __init__(self, code: str, message: str, *, hint: str = "") -> None:
        super().__init__(message)
        self.code = code
        self.message = message
        self.hint = hint


class Fault(NamedTuple):
    """One fault, its place known either as a line or as a key path."""

    severity: Severity
    code: str
    message: str
    hint: str = ""
    line: int | None = None
    path: KeyPath = ()


class Faults:
    """What has been found wrong in one file so far.

    Attributes:
        found: every fault, in the order of finding.
        errors: how many of them are errors.
    """

    __slots__ = ("errors", "found")

    def __init__(self) -> None:
        self.found: list[Fault] = []
        self.errors = 0

    def error(
        self,
        code: str,
        message: str,
        *,
        hint: str = "",
        line: int | None = None,
        path: KeyPath = (),
    ) -> None:
        """Add an error; the recipe cannot be used as it stands."""
        self.errors += 1
        self._add(Severity.ERROR, code, message, hint, line, path)

    def refuse(self, refused: Refused | AmountError, path: KeyPath) -> None:
        """Add what a getter refused as an error at its key."""
        if isinstance(refused, Refused):
            self.error(refused.code, refused.message, hint=refused.hint, path=path)
        else:  # may quote the cook's own text, at length
            message, hint = (shown(text, most=160) for text in (str(refused), refused.hint))
            self.error("amount", message, hint=hint, path=path)

    def warn(self, code: str, message: str, *, hint: str = "", path: KeyPath = ()) -> None:
        """Add a warning: a likely slip."""
        self._add(Severity.WARNING, code, message, hint, None, path)

    def note(
        self,
        code: str,
        message: str,
        *,
        hint: str = "",
        line: int | None = None,
        path: KeyPath = (),
    ) -> None:
        """Add a note on how something was read."""
        self._add(Severity.NOTE, code, message, hint, line, path)

    def _add(
        self,
        severity: Severity,
        code: str,
        message: str,
        hint: str,
        line: int | None,
        path: KeyPath,
    ) -> None:
        self.found.append(
            Fault(severity=severity, code=code, message=message, hint=hint, line=line, path=path)
        )
        if self.errors >= MOST_ERRORS:
            raise TooManyErrors

    def findings(self, file: str, lines: Lines | None) -> tuple[Finding, ...]:
        """Return everything found, in file order.

        Args:
            file: name of the file as the cook gave it.
            lines: the line of each key, asked only where a fault has none; None if it is no file.
        """
        placed = [(_line(fault, lines), fault) for fault in self.found]
        placed.sort(key=lambda pair: pair[0] or 0)
        found = [_finding(file, line, fault) for line, fault in placed]
        if self.errors >= MOST_ERRORS:
            found.append(_more(file))
        return tuple(found)


def shown(text: str, *, most: int = 60) -> str:
    r"""Return a cook's text fit to stand in a message: one line, clipped, nothing hidden.

    Args:
        text: as written.
        most: how many letters of it to show.

    Example:
        >>> print(shown("1 cup\x1b[2J"))
        1 cup\x1b[2J
    """
    clipped = text if len(text) <= most else text[: most - 1] + "…"
    return clipped if clipped.isprintable() else "".join(map(_visible, clipped))


def did_you_mean(near: tuple[str, ...]) -> str:
    """Return ``did you mean "a" or "b"?``, or nothing where nothing is near."""
    words = " or ".join(f'"{shown(word)}"' for word in near)
    return f"did you mean {words}?" if near else ""


def _visible(letter: str) -> str:
    return letter if letter.isprintable() else letter.encode("unicode_escape").decode("ascii")


def _line(fault: Fault, lines: Lines | None) -> int | None:
    """Return the line of a fault: its key's, that of the table it is missing from, or the first."""
    if fault.line is not None or lines is None:
        return fault.line
    return lines.nearest_line(fault.path) or 1


def _finding(file: str, line: int | None, fault: Fault) -> Finding:
    place = Place(file=file, line=line, path=shown(path_text(fault.path), most=160))
    return Finding(
        place=place,
        severity=fault.severity,
        code=fault.code,
        message=fault.message,
        hint=fault.hint,
    )


def _more(file: str) -> Finding:
    return Finding(
        place=Place(file=file),
        severity=Severity.ERROR,
        code="too-many-errors",
        message=f"{MOST_ERRORS} errors; more were not looked for",
    )
