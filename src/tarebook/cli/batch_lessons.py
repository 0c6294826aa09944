"""tarebook batch lessons, compare, labels: what batches teach, and what is printed of them."""

from __future__ import annotations

from typing import TYPE_CHECKING, Annotated

import typer

from tarebook.cli import asking, complete

if TYPE_CHECKING:
    from datetime import date

    from tarebook.records.entry import Batch

_FORMS = ("text", "csv", "pdf", "svg", "png")
_DRAWN = 20


def lessons(
    recipe: Annotated[
        str | None,
        typer.Argument(
            metavar="[RECIPE]",
            help="Only batches of this recipe.",
            autocompletion=complete.recipes,
            show_default=False,
        ),
    ] = None,
    as_: Annotated[
        str | None, typer.Option("--as", metavar="FORM", help="text, csv, pdf, svg or png.")
    ] = None,
    out: asking.Out = None,
    as_json: asking.AsJson = False,
) -> None:
    """Tell what your own batches came to: shrink, gain and hours, with counts and spread.

    As a picture it draws yield and sodium of the last batches, one line each.

    Example: tarebook batch lessons
    """
    from tarebook.cells import csv_text
    from tarebook.cli.batch_asking import name_asked, weighed_batch
    from tarebook.cli.put import form_of, put
    from tarebook.cli.talk import complain, show, show_data
    from tarebook.lessons.history import past
    from tarebook.lessons.page import lessons_data, lessons_page, lessons_rows
    from tarebook.lessons.tables import taught
    from tarebook.records.store import reading

    with reading() as db:
        name = name_asked(db, recipe)
    rows = past(name)
    form = form_of(as_, out, _FORMS)
    if as_json:
        show_data(lessons_data(taught(rows)))
    elif form == "csv":
        put(csv_text(lessons_rows(taught(rows))).encode(), out)
    elif form == "text":
        show(lessons_page(taught(rows)))
    else:
        from tarebook.findings import AskedWrongly
        from tarebook.paper.charts import batches_chart, draw_as

        if not rows:
            raise AskedWrongly("there is no finished batch to draw yet")
        numbers = [one.number for one in rows[:_DRAWN]][::-1]
        sheets = [(f"{one.number}", weighed_batch(one)) for one in _batches(numbers)]
        put(draw_as(batches_chart(sheets), form, tell=complain), out, binary=True)


def compare(
    first: Annotated[int, typer.Argument(metavar="A", help="One batch, by its number.")],
    second: Annotated[int, typer.Argument(metavar="B", help="The other.")],
    as_json: asking.AsJson = False,
) -> None:
    """Put two batches side by side, each by its own recipe and weights.

    Example: tarebook batch compare 1 1
    """
    from tarebook.cards.beside import Variant, beside
    from tarebook.cards.keys import comparison_data
    from tarebook.cli.batch_asking import weighed_batch
    from tarebook.cli.talk import show, show_data

    variants = [
        Variant(f"batch {one.number}, {one.title}", weighed_batch(one))
        for one in _batches([first, second])
    ]
    if as_json:
        show_data(comparison_data(variants))
    else:
        show(beside(variants))


def labels(
    number: Annotated[
        int | None,
        typer.Argument(metavar="[N]", help="Which batch; else the last.", show_default=False),
    ] = None,
    count: asking.LabelCount = 1,
    each: asking.EachBag = None,
    on: asking.LabelSheet = asking.USUAL_SHEET,
    start: asking.FirstLabel = 1,
    out: asking.Out = None,
    as_json: asking.AsJson = False,
) -> None:
    """Print labels of a batch, with its measured yield and the day it was packed.

    Example: tarebook batch labels 1 --count 10 -o labels.pdf
    """
    from tarebook.cli.batch_asking import weighed_batch
    from tarebook.cli.put import put
    from tarebook.cli.talk import complain, show_data
    from tarebook.cli.work import weighed
    from tarebook.paper.labels import label_sheets, label_words
    from tarebook.paper.sheets import sheet_named
    from tarebook.safety import keep_by

    sheet = sheet_named(on)
    (batch,) = _batches([number])
    done, day = weighed_batch(batch), _packed(batch)
    words = label_words(
        done,
        keep_by(done.case, packed_on=day),
        packed=day,
        each_g=weighed(each, "--each"),
        batch=f"batch {batch.number}",
    )
    if as_json:
        show_data({"sheet": sheet.name, "count": count, "start": start, **words._asdict()})
        return
    pages = label_sheets(words, sheet, count=count, start=start, tell=complain)
    put(pages[0], out, binary=True)


def _batches(numbers: list[int] | list[int | None]) -> list[Batch]:
    from tarebook.cli.batch_asking import batch_in_hand
    from tarebook.records.find import read_batch
    from tarebook.records.store import reading

    with reading() as db:
        return [read_batch(db, batch_in_hand(db, one, or_latest=True)) for one in numbers]


def _packed(batch: Batch) -> date:
    """Return the day a batch was packed or finished, or today where it is in hand."""
    from tarebook.cli.today import today
    from tarebook.records.standing import standing_of

    standing = standing_of(batch.entries)
    weights = standing.weights
    for entry in (weights.get("packed"), standing.finish, weights.get("finished")):
        if entry is not None:
            return entry.happened.local.date()
    return today()
