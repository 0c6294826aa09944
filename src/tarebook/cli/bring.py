"""tarebook bring: a recipe from a saved page or JSON-LD file, as TOML of ours to finish."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from tarebook.cli import asking

_MOST_TOLD = 20

if TYPE_CHECKING:
    from collections.abc import Sequence

    from tarebook.exchange.brought import Brought
    from tarebook.findings import Finding


def bring(
    file: Annotated[
        str,
        typer.Argument(
            metavar="FILE",
            help="A JSON-LD file with a schema.org Recipe, a saved page that holds one, or -.",
            show_default=False,
        ),
    ],
    out: Annotated[
        str | None,
        typer.Option("-o", "--out", metavar="FILE", help="Write the recipe there; - for a pipe."),
    ] = None,
    as_json: asking.AsJson = False,
) -> None:
    """Bring a recipe in from schema.org JSON-LD, with nothing made up.

    Lines that cannot be read stay in it as they stood; what it does not tell is a place to fill
    in. Nothing is fetched: a page is read as the file you saved.

    Example: tarebook bring page.json -o recipe.toml
    """
    from tarebook.cli.put import PIPE, put
    from tarebook.cli.talk import show_data
    from tarebook.exchange.brought import bring as brought_of
    from tarebook.exchange.page import MOST_BYTES, find_recipe
    from tarebook.exchange.taken import take
    from tarebook.files import read_bytes
    from tarebook.findings import AskedWrongly
    from tarebook.recipe.read import read_recipe
    from tarebook.recipe.write import schema_beside

    if as_json and out == PIPE:
        raise AskedWrongly("--json goes to standard output: name a file with -o, or leave it out")
    data = read_bytes(file, most=MOST_BYTES, what="page")
    file = "standard input" if file == PIPE else file
    recipe, others = find_recipe(data, file)
    schema = "" if out in (None, PIPE) else schema_beside(Path(str(out)))
    brought = brought_of(take(recipe, file), file, schema=schema)
    data = brought.text.encode("utf-8")
    name = out if out not in (None, PIPE) else "<recipe>"
    _, findings = read_recipe(data, file=str(name))
    if out is not None or not as_json:
        put(data, out)
    if as_json:
        show_data(_data(brought, findings, out, others))
    else:
        _tell(brought, findings, others)


def _tell(brought: Brought, findings: Sequence[Finding], others: int) -> None:
    """Say on standard error what was read, what was not, and what check will say."""
    from tarebook.cli.talk import complain, complain_findings

    if not (findings or others or brought.not_read or brought.unknown or brought.to_fill_in):
        return  # all of it was taken: there is nothing to see to
    lines = "1 line" if brought.read == 1 else f"{brought.read:,} lines"
    complain(f"{lines} read, {len(brought.not_read):,} kept as they stood")
    for line in brought.not_read[:_MOST_TOLD]:
        complain(f"  not read: {line[:120]}")
    if len(brought.not_read) > _MOST_TOLD:
        complain(f"  and {len(brought.not_read) - _MOST_TOLD:,} more, which are in the file")
    for name, near in brought.unknown[:_MOST_TOLD]:
        tail = f"; near: {', '.join(near)}" if near else ""
        complain(f'  no food is called "{name[:60]}"{tail}')
    if brought.to_fill_in:
        complain(f"To fill in: {', '.join(brought.to_fill_in)}.")
    if others:
        complain(f"The file holds {others:,} more; only the first was taken.")
    if findings:
        complain("Until it is finished, tarebook check will say:")
        complain_findings(findings)


def _data(
    brought: Brought, findings: Sequence[Finding], out: str | None, others: int
) -> dict[str, object]:
    from tarebook.cards.keys import findings_data

    return {
        "file": out,
        "text": brought.text,
        "read": brought.read,
        "not_read": list(brought.not_read),
        "unknown_foods": [{"name": name, "near": list(near)} for name, near in brought.unknown],
        "to_fill_in": list(brought.to_fill_in),
        "others": others,
        "findings": findings_data(findings),
    }
