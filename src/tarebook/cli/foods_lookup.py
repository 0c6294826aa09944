"""tarebook foods lookup: ask the open table of foods on the net, and keep a food of it."""

from __future__ import annotations

from typing import TYPE_CHECKING, Annotated, Any

import typer

from tarebook.cli import asking, complete

if TYPE_CHECKING:
    from tarebook.lookup.client import Answer, Client
    from tarebook.lookup.key import Key


def lookup(
    words: Annotated[
        list[str] | None,
        typer.Argument(help="Words of the food's name, in English.", show_default=False),
    ] = None,
    number: Annotated[
        int | None, typer.Option("--id", metavar="N", help="Show the food of this number.")
    ] = None,
    keep: Annotated[
        str | None,
        typer.Option("--keep", metavar="NAME", help="Keep it as a food of your own; with --id."),
    ] = None,
    like: Annotated[
        str | None,
        typer.Option(
            "--like",
            metavar="FOOD",
            help="The food it is a kind of; what the table lacks is taken from there.",
            autocompletion=complete.foods,
        ),
    ] = None,
    replace: Annotated[
        bool, typer.Option("--replace", help="Write over a food of your own of that name.")
    ] = False,
    labels: Annotated[
        bool, typer.Option("--labels", help="Look among labels of packs, not plain foods.")
    ] = False,
    offline: Annotated[
        bool, typer.Option("--offline", help="Only what was asked before and is kept.")
    ] = False,
    again: Annotated[
        bool, typer.Option("--again", help="Ask even where a fresh answer is kept.")
    ] = False,
    as_json: asking.AsJson = False,
) -> None:
    """Look a food up in the US government's open table on the net, FoodData Central.

    This is the only command that uses a network.

    Example: tarebook foods lookup soy sauce
    """
    from tarebook.findings import AskedWrongly
    from tarebook.lookup.taken import refuse_name

    said = " ".join(words or ())
    if bool(said.strip()) == (number is not None):
        raise AskedWrongly("name the food in a word or two, or give its number with --id")
    if (keep is None) != (like is None) or (keep is not None and number is None):
        raise AskedWrongly("--keep NAME goes with --id N and --like FOOD")
    if replace and keep is None:
        raise AskedWrongly("--replace goes with --keep")
    if labels and number is not None:
        raise AskedWrongly("--labels goes with words")
    if offline and again:
        raise AskedWrongly("give one of --offline and --again")
    if keep is not None and like is not None:
        refuse_name(keep, like)
    with _opened(offline=offline, again=again) as table:
        if number is None:
            _search(table, said, labels, as_json)
        else:
            _show(table, number, keep, like, replace, as_json)


def _opened(*, offline: bool, again: bool) -> Client:
    """Return the table, open; what there is to say of the kept answers is said first."""
    from tarebook.lookup.client import Client
    from tarebook.lookup.key import find_key

    key: Key | None = None if offline else find_key()
    return Client(key, again=again)


def _search(table: Client, words: str, labels: bool, as_json: bool) -> None:
    from tarebook.cards.lookup_page import hits_data, hits_page
    from tarebook.cli.talk import show, show_data
    from tarebook.findings import LookupFailed

    answer = _told(table, lambda: table.search(words, labels=labels))
    if not answer.found.foods:
        other = "plain foods, without --labels" if labels else "labels of packs, with --labels"
        raise LookupFailed(f"the table has nothing for that; try fewer words, or {other}")
    if as_json:
        show_data(hits_data(answer.found, day=answer.day, kept=answer.kept))
    else:
        show(hits_page(words, answer.found, day=answer.day, kept=answer.kept))


def _show(
    table: Client, number: int, keep: str | None, like: str | None, replace: bool, as_json: bool
) -> None:
    from tarebook.cards.lookup_page import table_food_data, table_food_page
    from tarebook.cli.talk import complain, show, show_data
    from tarebook.files import named
    from tarebook.lookup.taken import bottle_of, not_known
    from tarebook.recipe.write_bottle import keep_bottle

    answer = _told(table, lambda: table.food(number))
    found = answer.found
    file = None
    if keep is not None and like is not None:
        bottle = bottle_of(found, name=keep, like=like, day=answer.day)
        file = keep_bottle(bottle, replace=replace)
    if as_json:
        kept_as = {"file": None if file is None else str(file)}
        show_data(table_food_data(found, day=answer.day, kept=answer.kept) | kept_as)
    else:
        show(table_food_page(found, day=answer.day, kept=answer.kept))
    if file is not None:
        lacks = ", ".join(not_known(found))
        complain(f"{named(file)} is written" + (f"; from {like} it takes {lacks}" if lacks else ""))


def _told(table: Client, ask: Any) -> Answer[Any]:
    """Return an answer; what the cook should know of it, or of the fault, goes beside the page."""
    from tarebook.cli.talk import complain

    try:
        answer: Answer[Any] = ask()
    finally:
        for one in table.said:
            complain(f"note: {one}")
    if answer.why:
        complain(f"note: {answer.why}; this is the answer of {answer.day}")
    return answer
