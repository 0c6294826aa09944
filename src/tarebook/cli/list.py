"""tarebook list: every recipe of the house, with sodium and sugars of an ounce."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from tarebook.cli import asking

_TOLD_AFTER_S, _TOLD_EVERY_S = 2.0, 5.0

if TYPE_CHECKING:
    from collections.abc import Callable, Sequence

    from tarebook.nutrition.facts import OwnYield


def list_(
    folders: Annotated[
        list[Path] | None,
        typer.Argument(
            metavar="[FOLDERS]...",
            help="Folders of recipes; your own and the shipped ones if none is named.",
            show_default=False,
        ),
    ] = None,
    sort: Annotated[
        str, typer.Option("--sort", help="By name, title, meat, sodium or sugars.")
    ] = "name",
    backwards: Annotated[bool, typer.Option("--backwards", help="The other way round.")] = False,
    under: Annotated[
        str | None,
        typer.Option(
            "--under", metavar="SODIUM", help="Only those whose high estimate is at most: 320mg."
        ),
    ] = None,
    under_sugars: Annotated[
        str | None,
        typer.Option("--under-sugars", metavar="SUGARS", help="The same for total sugars: 2g."),
    ] = None,
    as_: Annotated[str, typer.Option("--as", metavar="FORM", help="text or csv.")] = "text",
    as_json: asking.AsJson = False,
) -> None:
    """List recipes with sodium and sugars of a finished ounce.

    Example: tarebook list --under 320mg --sort sodium
    """
    from tarebook.cards.shelf_page import shelf_data, shelf_page, shelf_rows
    from tarebook.cells import csv_text
    from tarebook.cli.talk import asked, show, show_data, write_document
    from tarebook.cli.work import drawer_name
    from tarebook.findings import AskedWrongly, nearest
    from tarebook.quantities.amount import parse_mass
    from tarebook.shelf import SORTS, gather, sort_rows
    from tarebook.shelf import under as at_most

    if sort not in SORTS:
        near = nearest(sort, SORTS)
        hint = f"; did you mean {near[0]}?" if near else f"; one of {', '.join(SORTS)}"
        raise AskedWrongly(f'--sort: "{sort[:20]}" is nothing to sort by{hint}')
    if as_ not in ("text", "csv"):
        raise AskedWrongly(f'--as: "{as_[:20]}" is no form of a list; say text or csv')
    limits = {
        figure: None if text is None else float(asked(parse_mass, text, option)) * each
        for figure, text, option, each in (
            ("sodium_mg", under, "--under", 1000),
            ("sugars_g", under_sugars, "--under-sugars", 1),
        )
    }
    rows = gather(
        folders or (),
        drawer=drawer_name(None),
        own_yields=_own_yields,
        tell=_teller(),
    )
    not_told = 0
    for figure, limit in limits.items():
        if limit is not None:
            rows, missing = at_most(rows, figure, limit)
            not_told += missing
    rows = sort_rows(rows, sort, backwards=backwards)
    if as_json:
        show_data(shelf_data(rows))
    elif as_ == "csv":
        write_document(csv_text(shelf_rows(rows)))
    else:
        show(shelf_page(rows, not_told=not_told))


def _teller() -> Callable[[int, int], None]:
    """Return what tells on a terminal how far a long wait is, from two seconds on."""
    import sys
    from time import monotonic

    from tarebook.cli.talk import complain

    next_s = monotonic() + _TOLD_AFTER_S

    def tell(done: int, of: int) -> None:
        nonlocal next_s
        now_s = monotonic()
        if done < of and now_s >= next_s and sys.stderr is not None and sys.stderr.isatty():
            next_s = now_s + _TOLD_EVERY_S
            complain(f"{done:,} of {of:,} recipes are worked out; they are kept for the next time")

    return tell


def _own_yields(recipes: Sequence[tuple[str, bytes]]) -> dict[str, OwnYield]:
    """Return what the batch book says of recipes; a book that cannot be read stops nothing."""
    from tarebook.records.place import is_there

    if not is_there():
        return {}
    from functools import partial

    from tarebook.cli.next_time import complain_of_book
    from tarebook.findings import FileUnreadable, FileUnwritable
    from tarebook.lessons.history import own_yields
    from tarebook.recipe.read import read_recipe

    def titled(file: str, data: bytes) -> str:
        recipe, _ = read_recipe(data, file=file)
        return "" if recipe is None else recipe.title

    try:
        return own_yields((file, partial(titled, file, data)) for file, data in recipes)
    except (FileUnreadable, FileUnwritable) as fault:
        complain_of_book(str(fault))
        return {}
