"""tarebook check: every fault of every recipe file, in one go."""

from __future__ import annotations

from typing import Annotated

import typer

from tarebook.cli import asking


def check(
    files: Annotated[
        list[str],
        typer.Argument(
            metavar="FILES...",
            help="Recipe files, folders of them, names of shipped recipes, or -.",
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
    from tarebook.findings import Finding, Severity
    from tarebook.recipe.read import find_recipes, read_file
    from tarebook.safety import check as check_safety

    everything: list[Finding] = []
    count = errors = 0
    for path in (path for name in files for path in find_recipes(name)):
        count += 1
        recipe, findings = read_file(path)
        if recipe is not None:
            findings = (*findings, *check_safety(recipe))
        errors += any(one.severity is Severity.ERROR for one in findings)
        if as_json:
            everything.extend(findings)
        elif findings:
            write("".join(f"{one}\n" for one in sorted(findings, key=_line)))
    if as_json:
        show_data({"files": count, "files_with_errors": errors, "findings": findings_data(everything)})
    else:
        write(_summary(count, errors))
    raise typer.Exit(1 if errors else 0)


def _line(one: object) -> int:
    return one.place.line or 0  # type: ignore[attr-defined, no-any-return]


def _summary(count: int, errors: int) -> str:
    files = "1 recipe" if count == 1 else f"{count:,} recipes"
    if not errors:
        return f"{files} checked, no errors\n"
    return f"{files} checked, {errors:,} with errors\n"
