"""tarebook check: every fault of every recipe file, in one go."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from typing import TYPE_CHECKING, Annotated

import typer

from tarebook.cli import asking, complete
from tarebook.findings import FileUnreadable

if TYPE_CHECKING:
    from pathlib import Path

    from tarebook.findings import Finding


def check(
    files: Annotated[
        list[str],
        typer.Argument(
            metavar="FILES...",
            help="Recipe files, folders of them, names of shipped recipes, or -.",
            autocompletion=complete.recipes,
            show_default=False,
        ),
    ],
    as_json: asking.AsJson = False,
) -> None:
    """Check recipe files: faults, how things were read, and the safety rules.

    Notes and warnings exit with 0, errors with 1.

    Example: tarebook check recipes
    """
    from tarebook.cards.keys import findings_data
    from tarebook.cli.talk import show_data, write
    from tarebook.findings import Severity

    everything: list[Finding] = []
    count = errors = 0
    for findings in _every(files):
        count += 1
        errors += any(one.severity is Severity.ERROR for one in findings)
        if as_json:
            everything.extend(findings)
        elif findings:
            write("".join(f"{one}\n" for one in sorted(findings, key=_line)))
    if as_json:
        show_data(
            {"files": count, "files_with_errors": errors, "findings": findings_data(everything)}
        )
    else:
        write(_summary(count, errors))
    raise typer.Exit(1 if errors else 0)


def _every(files: Iterable[str]) -> Iterator[tuple[Finding, ...]]:
    """Yield everything to say of each file; one that cannot be read stops no other."""
    from tarebook.recipe.load import find_recipes

    for name in files:
        try:
            paths = find_recipes(name)
        except FileUnreadable as fault:
            yield _unreadable(name, fault)
        else:
            yield from (_checked(path) for path in paths)


def _checked(path: Path) -> tuple[Finding, ...]:
    from tarebook.cli.talk import slips_in_panels
    from tarebook.recipe.load import recipe_bytes
    from tarebook.recipe.read import read_recipe
    from tarebook.safety import check as check_safety

    try:
        data, file = recipe_bytes(path)
    except FileUnreadable as fault:
        return _unreadable(path, fault)
    recipe, findings = read_recipe(data, file=file)
    if recipe is None:
        return findings
    return (*findings, *slips_in_panels(recipe), *check_safety(recipe))


def _unreadable(path: Path | str, fault: FileUnreadable) -> tuple[Finding, ...]:
    from tarebook.findings import Finding, Place, Severity

    place = Place(file=str(path))
    return (Finding(place=place, severity=Severity.ERROR, code="unreadable", message=str(fault)),)


def _line(one: Finding) -> int:
    return one.place.line or 0


def _summary(count: int, errors: int) -> str:
    files = "1 recipe" if count == 1 else f"{count:,} recipes"
    if not errors:
        return f"{files} checked, no errors\n"
    return f"{files} checked, {errors:,} with errors\n"
