"""tarebook batch show, list: what stands in the book."""

from __future__ import annotations

from typing import TYPE_CHECKING, Annotated

import typer

from tarebook.cli import asking, complete
from tarebook.cli.batch_asking import BatchNumber

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from tarebook.cards.worksheet import Worksheet
    from tarebook.records.entry import Batch

_SHOWN = 20
_QUICK = 1  # of nine levels of packing


def show(
    number: Annotated[
        int | None,
        typer.Argument(
            metavar="[N]",
            help="Which batch; else the one in hand, or the last.",
            show_default=False,
        ),
    ] = None,
    batch: BatchNumber = None,
    recipe: Annotated[
        bool, typer.Option("--recipe", help="Print its recipe instead, as it was that day.")
    ] = False,
    as_json: asking.AsJson = False,
) -> None:
    """Show a batch with all its entries.

    Those struck or replaced are marked; then what was weighed, and how long things took.

    Example: tarebook batch show 1
    """
    from tarebook.cards.a_day_words import a_day_data
    from tarebook.cards.batch_page import batch_data, batch_page
    from tarebook.cli.batch_asking import batch_in_hand, print_recipe
    from tarebook.cli.talk import show as show_lines
    from tarebook.cli.talk import show_data
    from tarebook.findings import AskedWrongly
    from tarebook.lessons.page import figures_data as figures
    from tarebook.lessons.page import figures_so_far
    from tarebook.records.find import read_batch
    from tarebook.records.store import reading

    if number is not None and batch is not None and number != batch:
        raise AskedWrongly(f"{number} and --batch {batch} are two batches; name one")
    wanted = batch if number is None else number
    with reading() as db:
        found = read_batch(db, batch_in_hand(db, wanted, or_latest=True))
    if as_json:
        sheet = _weighed(found)
        told = {"per_ounce": None if sheet is None else figures(sheet)}
        limits = {} if sheet is None else a_day_data(sheet.of_a_day)
        show_data({**batch_data(found), **told, "house_limits": limits})
    elif recipe:
        print_recipe(found.recipe_text)
    else:
        sheet = _weighed(found)
        more = [] if sheet is None else figures_so_far(sheet)
        show_lines([*batch_page(found), *more])


def list_(
    recipe: Annotated[
        str | None,
        typer.Option(
            "--recipe",
            metavar="RECIPE",
            help="Only batches of this recipe.",
            autocompletion=complete.recipes,
        ),
    ] = None,
    every: Annotated[bool, typer.Option("--all", help="All, and not the newest 20.")] = False,
    as_json: asking.AsJson = False,
) -> None:
    """List batches, the newest first, with raw and finished weight.

    Example: tarebook batch list --recipe juniper-venison
    """
    from tarebook.cards.batch_page import list_page, row_data
    from tarebook.cards.lines import Line
    from tarebook.cli.batch_asking import name_asked
    from tarebook.cli.talk import listed_data, painted, write, write_document
    from tarebook.records.find import each_row, how_many
    from tarebook.records.store import reading

    with reading() as db:
        key = name_asked(db, recipe)
        of = how_many(db, recipe=key)
        found = each_row(db, recipe=key, most=None if every else _SHOWN)
        if as_json:
            kept = _packed(listed_data(map(row_data, found)))
        elif not of:
            tail = "" if key is None else f" of {key}"
            lines = [f"No batches{tail} yet.", "tarebook batch start RECIPE --meat 6lb starts one."]
            kept = _packed(painted(map(Line, lines)))
        else:
            kept = _packed(painted(list_page(found, of=of)))
    for text in kept:
        (write_document if as_json else write)(text)


def _packed(texts: Iterable[str]) -> Iterator[str]:
    """Keep a text of any length small until the book is let go, and yield it then.

    Whoever reads the output slowly, page by page, must not keep others from writing.
    """
    from codecs import getincrementaldecoder
    from zlib import compressobj, decompressobj

    pack = compressobj(_QUICK)
    kept = [part for text in texts if (part := pack.compress(text.encode()))]
    kept.append(pack.flush())
    unpack, decode = decompressobj(), getincrementaldecoder("utf-8")().decode
    return (decode(unpack.decompress(part)) for part in kept)


def _weighed(batch: Batch) -> Worksheet | None:
    """Return a batch with its figures by the weights so far; what forbids them is told."""
    from tarebook.cli.batch_asking import weighed_batch
    from tarebook.cli.talk import complain
    from tarebook.findings import TarebookError

    try:
        return weighed_batch(batch)
    except TarebookError as fault:
        complain(f"no figures: {fault}")
        return None
