"""tarebook card: the recipe card for today's meat, on the screen, on paper or as a page."""

from __future__ import annotations

from typing import TYPE_CHECKING, Annotated

import typer

from tarebook.cli import asking, complete

if TYPE_CHECKING:
    from collections.abc import Callable

    from tarebook.cards.worksheet import Worksheet
    from tarebook.paper.sizes import CardSize

_ENDINGS = {
    "text": (".txt",),
    "pdf": (".pdf",),
    "html": (".html", ".htm"),
    "svg": (".svg",),
    "markdown": (".md", ".markdown"),
    "json-ld": (".jsonld", ".json"),
}
"""What a card can be, and the endings of a file by which that is taken where nobody says."""
_ON_PAPER = ("pdf", "svg")
_DATED = ("pdf", "svg", "html", "json-ld")
_NO_TEXT = ("pdf", "svg")
_USUAL_SIZE = "4x6in"


def card(
    recipe: asking.RecipeName,
    meat: asking.Meat = None,
    bought: asking.Bought = None,
    trim: asking.Trim = None,
    factor: asking.Factor = None,
    drawer: asking.DrawerName = "basic",
    finished: asking.Finished = None,
    soaked: asking.Soaked = None,
    leftover: asking.Leftover = None,
    towels: asking.Towels = None,
    heat: asking.Heat = None,
    nothing_poured_away: asking.NothingPoured = False,
    label_ounce: asking.LabelOunce = False,
    as_: Annotated[
        str | None,
        typer.Option(
            "--as",
            metavar="FORM",
            help="text, pdf, html, svg, markdown or json-ld; by the ending of FILE, else text.",
            autocompletion=complete.card_forms,
        ),
    ] = None,
    out: Annotated[
        str | None,
        typer.Option("-o", "--out", metavar="FILE", help="Write it there; - for a pipe."),
    ] = None,
    size: Annotated[
        str | None,
        typer.Option(
            "--size",
            metavar="SIZE",
            help="A card or page by name, as a6 or letter, or WIDTHxHEIGHT with in, mm or cm; "
            "'4x6in upright' turns it.",
            autocompletion=complete.card_sizes,
        ),
    ] = None,
    date: Annotated[
        str | None,
        typer.Option("--date", metavar="DAY", help="Day the card bears: 2026-11-25, or today."),
    ] = None,
    as_json: asking.AsJson = False,
) -> None:
    """Print a labelled recipe card: text of 60 columns, or paper, or a page.

    Example: tarebook card juniper-venison --meat 6lb --as pdf --size 4x6in -o card.pdf
    """
    from tarebook.cli.put import put, put_text
    from tarebook.cli.talk import open_recipe, show, show_data
    from tarebook.cli.work import work_out

    form = _form(as_, out, size=size, date=date, as_json=as_json)
    make = _maker(form, size=size, date=date)
    done = work_out(
        open_recipe(recipe),
        meat=meat,
        bought=bought,
        trim=trim,
        factor=factor,
        drawer=drawer,
        finished=finished,
        soaked=soaked,
        leftover=leftover,
        towels=towels,
        heat=heat,
        label_ounce=label_ounce,
        nothing_poured=nothing_poured_away,
    )
    if as_json:
        from tarebook.cards.keys import worksheet_data
        from tarebook.cli.next_time import next_time_data

        show_data({**worksheet_data(done), "next_time": next_time_data(done.recipe)})
    elif form == "text" and out is None:
        from tarebook.cards.text_card import text_card

        show(text_card(done))
    elif form == "text":
        put_text(_text(done).decode(), out)
    else:
        put(make(done), out, binary=form in _NO_TEXT)


def _form(
    as_: str | None, out: str | None, *, size: str | None, date: str | None, as_json: bool
) -> str:
    """Return what the card is to be, if all that is asked of it goes together."""
    from tarebook.findings import AskedWrongly, nearest

    if as_json and (as_ or out or size or date):
        raise AskedWrongly("--json goes without --as, -o, --size and --date")
    form = as_.strip().casefold() if as_ is not None else _by_ending(out)
    if form not in _ENDINGS:
        near = nearest(form, _ENDINGS)
        hint = f"did you mean {near[0]}?" if near else f"say {', '.join(_ENDINGS)}"
        raise AskedWrongly(f'--as: "{form[:20]}" is no form of a card; {hint}')
    if size is not None and form not in _ON_PAPER:
        raise AskedWrongly(f"--size goes with --as {' or '.join(_ON_PAPER)}")
    if date is not None and form not in _DATED:
        raise AskedWrongly(f"--date goes with --as {', '.join(_DATED)}")
    return form


def _by_ending(out: str | None) -> str:
    name = (out or "").casefold()
    return next((form for form, ends in _ENDINGS.items() if name.endswith(ends)), "text")


def _day(text: str | None) -> str | None:
    """Return the day that a card bears, year first, or None."""
    from tarebook.cli.today import read_day, today

    if text is None:
        return None
    return (today() if text.strip() == "today" else read_day(text, "--date")).isoformat()


def _maker(form: str, *, size: str | None, date: str | None) -> Callable[[Worksheet], bytes]:
    """Return what makes the file of a card; size and day are read before any work is done."""
    day = _day(date)
    if form in _ON_PAPER:
        from tarebook.paper.sizes import card_size

        asked = card_size(size or _USUAL_SIZE)
        return lambda sheet: _on_paper(sheet, form, asked, day)
    if form == "html":
        return lambda sheet: _html(sheet, day)
    if form == "json-ld":
        return lambda sheet: _linked(sheet, day)
    return _markdown if form == "markdown" else _text


def _html(sheet: Worksheet, date: str | None) -> bytes:
    from tarebook.paper.html_card import html_card

    return html_card(sheet, date=date).encode("utf-8")


def _markdown(sheet: Worksheet) -> bytes:
    from tarebook.paper.markdown_card import markdown_card

    return markdown_card(sheet).encode("utf-8")


def _linked(sheet: Worksheet, date: str | None) -> bytes:
    """Return the card as a Recipe of schema.org; its lines read back as the recipe's own."""
    import json

    from tarebook.cards.content import content
    from tarebook.paper.structured_data import structured_data

    data = structured_data(content(sheet), sheet, date=date)
    return (json.dumps(data, ensure_ascii=False, indent=2) + "\n").encode("utf-8")


def _text(sheet: Worksheet) -> bytes:
    from tarebook.cards.lines import plain_text
    from tarebook.cards.text_card import text_card

    return plain_text(text_card(sheet)).encode("utf-8")


def _on_paper(sheet: Worksheet, form: str, size: CardSize, date: str | None) -> bytes:
    from tarebook.cli.talk import complain
    from tarebook.paper.card import card_pages
    from tarebook.paper.svg_card import stacked

    if form == "pdf":
        return card_pages(sheet, size, date=date, tell=complain)[0]
    sides = card_pages(sheet, size, form="svg", date=date, tell=complain)
    return stacked(sides, title=sheet.recipe.title, text=_text(sheet).decode()).encode("utf-8")
