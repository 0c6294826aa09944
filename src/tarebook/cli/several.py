"""Several recipes asked of at once, each with its meat: what ``plan`` and ``shop`` share."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Annotated

import typer

from tarebook.cli import complete
from tarebook.findings import AskedWrongly

RecipeNames = Annotated[
    list[str],
    typer.Argument(
        metavar="RECIPE...",
        help="Recipe files, names of your own or shipped ones, or - for standard input.",
        autocompletion=complete.recipes,
        show_default=False,
    ),
]
Meats = Annotated[
    list[str] | None,
    typer.Option(
        "--meat",
        metavar="WEIGHT",
        help="Today's trimmed raw meat: 6lb, 2.7kg; once for each recipe, in order.",
    ),
]


def a_weight_each(names: Sequence[object], meat: Sequence[str] | None) -> list[str | None]:
    """Return the weight that was said for each recipe, or None for all where none was.

    Raises:
        AskedWrongly: there are more or fewer weights than recipes.
    """
    if not meat:
        return [None for _ in names]
    if len(meat) != len(names):
        raise AskedWrongly(f"--meat: {len(names)} recipes take as many weights, in their order")
    return [*meat]
