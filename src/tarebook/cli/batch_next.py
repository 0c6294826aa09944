"""tarebook batch next, take, drop, wordings: notes for next time, and what became of them."""

from __future__ import annotations

from typing import TYPE_CHECKING, Annotated

import typer

from tarebook.cli import asking, complete
from tarebook.cli.batch_asking import BatchNumber, Note
from tarebook.findings import AskedWrongly

if TYPE_CHECKING:
    from tarebook.records.entry import Batch

_NAME_IT = "--recipe FILE names the recipe as it is now"
WhichNote = Annotated[
    str, typer.Argument(metavar="ENTRY", help="Which note: 12.7.", show_default=False)
]


def next_(
    recipe: Annotated[
        str | None,
        typer.Argument(
            metavar="[RECIPE]",
            help="Of this recipe only.",
            autocompletion=complete.recipes,
            show_default=False,
        ),
    ] = None,
    as_json: asking.AsJson = False,
) -> None:
    """List the notes for next time that are still open.

    Example: tarebook batch next juniper-venison
    """
    from tarebook.cards.batch_page import next_data, next_page
    from tarebook.cli.batch_asking import name_asked
    from tarebook.cli.talk import show, show_data
    from tarebook.records.find import open_notes
    from tarebook.records.store import reading

    with reading() as db:
        found = open_notes(db, name_asked(db, recipe))
    if as_json:
        show_data(next_data(found))
    else:
        show(next_page(found))


def wordings(
    recipe: Annotated[
        str,
        typer.Argument(
            metavar="RECIPE",
            help="A name as the book shows it, or a file.",
            autocompletion=complete.recipes,
            show_default=False,
        ),
    ],
    whole: Annotated[
        int | None,
        typer.Option(
            "--whole", metavar="N", help="Print this wording instead, whole.", show_default=False
        ),
    ] = None,
    as_json: asking.AsJson = False,
) -> None:
    """Show how a recipe was written from batch to batch, and what was changed for which note.

    Example: tarebook batch wordings juniper-venison
    """
    from tarebook.cards.batch_wordings import wordings_data, wordings_page
    from tarebook.cli.batch_asking import name_asked, print_recipe
    from tarebook.cli.talk import show, show_data
    from tarebook.records.store import reading
    from tarebook.records.wordings import wordings_of

    with reading() as db:
        name = name_asked(db, recipe) or ""
        found = wordings_of(db, name)
    if as_json:
        show_data(wordings_data(found))
    elif not found:
        raise AskedWrongly(f'the book has no batch of "{name}"; tarebook batch list shows them')
    elif whole is None:
        show(wordings_page(found, name))
    elif 1 <= whole <= len(found):
        print_recipe(found[whole - 1].text)
    else:
        raise AskedWrongly(f"--whole: there are wordings 1 to {len(found)} of {name}")


def take(
    entry: WhichNote,
    recipe: Annotated[
        str | None,
        typer.Option(
            "--recipe",
            metavar="RECIPE",
            help="The recipe as it is now, where it goes by another name.",
            autocompletion=complete.recipes,
        ),
    ] = None,
    batch: BatchNumber = None,
    note: Note = None,
    as_json: asking.AsJson = False,
) -> None:
    """Tell that a note is in the recipe now.

    It is not shown again; the recipe as it was and as it is now are both kept.

    Example: tarebook batch take 1.3
    """
    from tarebook.records.entry import Kind

    _settle(entry, batch, note, as_json, Kind.TAKEN, recipe)


def drop(
    entry: WhichNote,
    batch: BatchNumber = None,
    note: Note = None,
    as_json: asking.AsJson = False,
) -> None:
    """Strike out a note for next time.

    It is not shown again, and stays in its batch.

    Example: tarebook batch drop 1.3
    """
    from tarebook.records.entry import Kind

    _settle(entry, batch, note, as_json, Kind.DROPPED, None)


def _settle(
    entry: str, batch: int | None, note: str | None, as_json: bool, kind: str, recipe: str | None
) -> None:
    from tarebook.cli.batch_asking import batch_in_hand, clock_now, read_entry, tell
    from tarebook.records.entry import Kind
    from tarebook.records.find import read_batch
    from tarebook.records.keep import settle_note
    from tarebook.records.moment import moment_of
    from tarebook.records.store import writing

    at = moment_of(clock_now())
    from_batch, number = read_entry(entry, batch)
    with writing(begun=True) as db:
        from_batch = batch_in_hand(db, from_batch, or_latest=True)
        found = read_batch(db, from_batch)
        taken = Kind(kind) is Kind.TAKEN
        settled, by = settle_note(
            db,
            from_batch,
            number,
            Kind(kind),
            at=at,
            note=note or "",
            recipe_text=_recipe_now(recipe, found) if taken else None,
        )
    asked = []
    if taken and by.wording == found.wording:
        asked.append(f"the recipe reads as it did in batch {by.batch}: has the change been saved?")
    tell(by, found.title, as_json=as_json, about=settled, asked=asked)


def _recipe_now(said: str | None, batch: Batch) -> str:
    """Return the recipe as it is now, whole.

    Args:
        said: as given to ``--recipe``; else it is looked for by the name of the batch.
        batch: whose note is taken up.
    """
    from tarebook.findings import FileUnreadable
    from tarebook.recipe.load import recipe_bytes
    from tarebook.recipe.read import read_recipe
    from tarebook.toml.text import MOST_BYTES

    which = batch.recipe if said is None else said
    try:
        data, file = recipe_bytes(which)
    except FileUnreadable as fault:
        raise FileUnreadable(f"{fault} ({_NAME_IT})") from None
    recipe = read_recipe(data, file=file)[0] if said is None else None
    if recipe is not None and recipe.title != batch.title:
        raise AskedWrongly(
            f'{file} is "{recipe.title}" and batch {batch.number} was of "{batch.title}" '
            f"({_NAME_IT})"
        )
    try:
        if data.strip() and len(data) <= MOST_BYTES:
            return data.decode("utf-8")
    except UnicodeDecodeError:
        pass
    raise FileUnreadable(f'"{file}" is no recipe')
