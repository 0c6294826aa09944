"""From a whole file to what it means: the one road of recipes, bottles, kitchens and pantries."""

from __future__ import annotations

from collections.abc import Callable
from contextlib import suppress
from typing import TypeVar

from tarebook.findings import Finding
from tarebook.toml.fault import Faults, TooManyErrors
from tarebook.toml.locate import Lines
from tarebook.toml.syntax import Parsed, parse
from tarebook.toml.text import text_of

Meaning = TypeVar("Meaning")


def read_document(
    source: bytes | str,
    understand: Callable[[Parsed, Faults, Lines], Meaning | None],
    *,
    file: str,
    empty_hint: str,
    strict: bool = True,
) -> tuple[Meaning | None, tuple[Finding, ...]]:
    """Return what a file means, and everything there is to say about it, in file order.

    Args:
        source: the bytes of the file, or its text.
        understand: makes a value of what was parsed, adds what is wrong to the faults, and may ask
            for the line of a key.
        file: its name, for the findings.
        empty_hint: what to try where the file is empty.
        strict: whether one error is enough to return nothing.

    Returns:
        The value, or None; and all findings.

    Example:
        >>> def title(parsed, faults, lines):
        ...     return parsed.document["title"]
        >>> read_document('title = "Strips"', title, file="strips.toml", empty_hint="")
        ('Strips', ())
    """
    faults = Faults()
    meaning: Meaning | None = None
    lines: Lines | None = None
    with suppress(TooManyErrors):
        text = text_of(source, faults, empty_hint=empty_hint)
        parsed = parse(text, faults) if text is not None else None
        if parsed is not None:
            lines = Lines(parsed.text)
            meaning = understand(parsed, faults, lines)
    return (None if strict and faults.errors else meaning), faults.findings(file, lines)
