"""Every exception of the package, on one page.

    TarebookError
    ├── AskedWrongly        (ValueError)   the command line or a call asks for what cannot be
    │   └── QuantityError                  a number outside the range where it means anything
    ├── AmountError         (ValueError)   a cook's amount cannot be read
    ├── UnitError           (LookupError)  a unit is not known, or two units do not convert
    ├── FoodUnknown         (LookupError)  no food goes by that name
    ├── FileUnreadable      (OSError)      a file is missing, a folder, too large, or not text
    ├── FileUnwritable      (OSError)      a file cannot be written; what was there is as it was
    ├── LookupFailed        (OSError)      the food table on the net gave no answer that can be used
    ├── RecordFaulty        (ValueError)   a file someone wrote has errors; carries all of them
    │   └── RecipeFaulty                   that file is a recipe
    ├── PlanRefused         (ValueError)   no timetable is made for what published advice forbids
    └── CureRefused         (ValueError)   curing salt outside what may be printed; carries why

What is wrong with a *record* is a ``Finding`` value, collected and shown together. An exception
means the caller asked wrongly or the work cannot go on. ``AskedWrongly`` ends a command with
exit status 2, every other one with 1.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from tarebook.findings.finding import Finding


class TarebookError(Exception):
    """Base of all; its text is a sentence a cook can act on. Catch it to catch every one."""


class AskedWrongly(TarebookError, ValueError):
    """The question itself cannot be answered, whatever the record says."""


class QuantityError(AskedWrongly):
    """A number is outside the range where it means anything (a weight of zero, say)."""


class AmountError(TarebookError, ValueError):
    """A cook's amount cannot be read.

    Attributes:
        text: the amount as written.
        hint: what to try, or an empty string.
    """

    def __init__(self, message: str, *, text: str = "", hint: str = "") -> None:
        super().__init__(message)
        self.text = text
        self.hint = hint


class UnitError(TarebookError, LookupError):
    """A unit is not known, or one cannot be turned into the other.

    Attributes:
        given: the unit that was given.
        wanted: the unit that was wanted, or an empty string.
        hint: what to try, or an empty string.
    """

    def __init__(self, message: str, *, given: str = "", wanted: str = "", hint: str = "") -> None:
        super().__init__(message)
        self.given = given
        self.wanted = wanted
        self.hint = hint


class FoodUnknown(TarebookError, LookupError):
    """No food of the tables goes by that name.

    Attributes:
        name: the name as given.
        near: names that look like it, best first. They are looked for when they are asked for: it
            takes longer than all other work on an ingredient, and many only ask whether there is
            such a food.
    """

    def __init__(self, name: str, near: Callable[[], Sequence[str]] | Sequence[str] = ()) -> None:
        super().__init__(name)
        self.name = name
        self._near = near

    @property
    def near(self) -> tuple[str, ...]:
        if callable(self._near):
            self._near = self._near()
        return tuple(self._near)

    def __str__(self) -> str:
        tail = f"; did you mean {' or '.join(self.near)}?" if self.near else ""
        return f'no food is called "{self.name[:60]}"{tail}'


class FileUnreadable(TarebookError, OSError):
    """A file is missing, is a folder, is too large, or is not the text it should be."""


class FileUnwritable(TarebookError, OSError):
    """A file cannot be written; what was there before is as it was."""


class LookupFailed(TarebookError, OSError):
    """The food table on the net gave no answer that can be used.

    Attributes:
        passing: whether it may pass by itself, so that an answer kept from before can stand in.
        status: the answer's HTTP status, or None where there was no answer.
    """

    def __init__(self, message: str, *, passing: bool = False, status: int | None = None) -> None:
        super().__init__(message)
        self.passing = passing
        self.status = status


class RecordFaulty(TarebookError, ValueError):
    """A file that someone wrote has errors; all of them travel along, in file order.

    Attributes:
        findings: every finding of the file, errors and others.
    """

    def __init__(self, findings: Sequence[Finding]) -> None:
        super().__init__("\n".join(str(finding) for finding in findings))
        self.findings = tuple(findings)


class RecipeFaulty(RecordFaulty):
    """A recipe has errors."""


class PlanRefused(TarebookError, ValueError):
    """No timetable is made: what there is to dry on is outside all published advice for meat."""


class CureRefused(TarebookError, ValueError):
    """A curing salt is outside what this tool will print; nothing of the recipe is printed.

    Attributes:
        nitrite_ppm: ingoing sodium nitrite on green weight [ppm], or None if not known.
    """

    def __init__(self, message: str, *, nitrite_ppm: float | None = None) -> None:
        super().__init__(message)
        self.nitrite_ppm = nitrite_ppm
