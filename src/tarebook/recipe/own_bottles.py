"""All of the cook's own bottles: read together, and set aside one by one."""

from __future__ import annotations

from itertools import count
from pathlib import Path

from tarebook.files import holds, named
from tarebook.findings import (
    FileUnreadable,
    FileUnwritable,
    Finding,
    Place,
    RecordFaulty,
    Severity,
)
from tarebook.recipe.bottles import (
    SUFFIX,
    bottle_file,
    bottle_on,
    can_name,
    near_bottles,
    own_foods,
    shelf,
)
from tarebook.recipe.model import Bottle
from tarebook.toml.fault import did_you_mean, shown

ASIDE = "removed"
"""The folder, beside the bottles, of those that were removed."""


def every_bottle() -> tuple[tuple[Bottle, ...], tuple[Finding, ...]]:
    """Return all the cook's own bottles in order of their names, and what is wrong with others."""
    place = shelf()
    found: list[Bottle] = []
    findings: list[Finding] = []
    for name in own_foods():
        try:
            bottle = bottle_on(place, name)
        except RecordFaulty as faulty:
            findings += faulty.findings
        except FileUnreadable as fault:
            findings.append(
                Finding(
                    severity=Severity.ERROR,
                    code="unreadable",
                    message=str(fault),
                    place=Place(file=str(bottle_file(name))),
                )
            )
        else:
            found += [] if bottle is None else [bottle]
    return tuple(found), tuple(findings)


def set_aside(name: str) -> Path:
    """Move the file of a bottle to a folder beside, so that recipes know it no more.

    Args:
        name: of the bottle, faulty or not.

    Returns:
        Where it lies now; what was set aside before under that name is left as it is.

    Raises:
        FileUnreadable: there is no such bottle.
        FileUnwritable: it cannot be moved.
    """
    file = bottle_file(name)
    if not can_name(name) or not holds(file.is_file):
        hint = f"; {did_you_mean(near)}" if (near := near_bottles(name)) else ""
        raise FileUnreadable(f'no bottle of your own is called "{shown(name)}"{hint}')
    aside = file.parent / ASIDE
    try:
        aside.mkdir(exist_ok=True)
        numbers = (f"{file.stem}{f'-{number}' if number > 1 else ''}" for number in count(1))
        free = (aside / f"{stem}{SUFFIX}" for stem in numbers)
        place = next(one for one in free if not one.exists())
        return file.rename(place)
    except OSError as fault:
        words = (fault.strerror or "").lower()
        raise FileUnwritable(f"{named(file)} cannot be moved: {words}") from None
