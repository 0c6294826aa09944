"""tarebook labels: labels for the bags and jars of one batch."""

from __future__ import annotations

from typing import TYPE_CHECKING, Annotated

import typer

from tarebook.cli import asking

if TYPE_CHECKING:
    from datetime import date

    from tarebook.paper.press import Form

_FORMS: tuple[Form, ...] = ("pdf", "svg", "png")


def labels(
    recipe: asking.RecipeName,
    count: asking.LabelCount = 1,
    each: asking.EachBag = None,
    meat: asking.Meat = None,
    factor: asking.Factor = None,
    finished: asking.Finished = None,
    soaked: asking.Soaked = None,
    leftover: asking.Leftover = None,
    towels: asking.Towels = None,
    heat: asking.Heat = None,
    packed: Annotated[
        str | None, typer.Option("--packed", metavar="DAY", help="2026-11-25; today if not told.")
    ] = None,
    shelf: Annotated[
        str | None,
        typer.Option("--use-by-shelf", metavar="WORDS", help="Your own last day on the shelf."),
    ] = None,
    fridge: Annotated[
        str | None,
        typer.Option("--use-by-fridge", metavar="WORDS", help="The same for the refrigerator."),
    ] = None,
    freezer: Annotated[
        str | None, typer.Option("--use-by-freezer", metavar="WORDS", help="The same, frozen.")
    ] = None,
    name: Annotated[
        str, typer.Option("--name", metavar="WORDS", help="In place of the recipe's title.")
    ] = "",
    batch: Annotated[
        str, typer.Option("--batch", metavar="WORDS", help="Your own mark for the batch.")
    ] = "",
    on: asking.LabelSheet = asking.USUAL_SHEET,
    start: asking.FirstLabel = 1,
    alignment: Annotated[
        bool, typer.Option("--alignment", help="Print the outlines alone, to try a sheet.")
    ] = False,
    as_: Annotated[str, typer.Option("--as", metavar="FORM", help="pdf, svg or png.")] = "pdf",
    out: Annotated[
        str | None, typer.Option("-o", "--out", metavar="FILE", help="Where to; - for a pipe.")
    ] = None,
    as_json: asking.AsJson = False,
) -> None:
    """Print labels for the bags of a batch: name, dates, weight, sodium, sugars, allergens.

    Example: tarebook labels juniper-venison --meat 6lb --count 10 --each 3oz -o labels.pdf
    """
    from tarebook.cli.put import put_pages
    from tarebook.cli.talk import complain, open_recipe, show_data
    from tarebook.cli.work import weighed, work_out
    from tarebook.paper.labels import alignment_page, label_sheets, label_words
    from tarebook.paper.sheets import sheet_named
    from tarebook.safety import keep_by

    form = _form(as_)
    sheet = sheet_named(on)
    if alignment:
        put_pages(alignment_page(sheet, form=form), out)
        return
    done = work_out(
        open_recipe(recipe),
        meat=meat,
        factor=factor,
        finished=finished,
        soaked=soaked,
        leftover=leftover,
        towels=towels,
        heat=heat,
    )
    day = _day(packed)
    own = {"room": shelf, "refrigerator": fridge, "freezer": freezer}
    words = label_words(
        done,
        keep_by(done.case, packed_on=day),
        packed=day,
        each_g=weighed(each, "--each"),
        batch=batch,
        name=name,
        own_dates={place: said for place, said in own.items() if said is not None},
    )
    if as_json:
        show_data({"sheet": sheet.name, "count": count, "start": start, **words._asdict()})
        return
    pages = label_sheets(words, sheet, count=count, start=start, form=form, tell=complain)
    put_pages(pages, out)


def _form(said: str) -> Form:
    from tarebook.findings import AskedWrongly

    for form in _FORMS:
        if said == form:
            return form
    raise AskedWrongly(f'--as: "{said[:20]}" is no form of labels; say {", ".join(_FORMS)}')


def _day(said: str | None) -> date:
    """Return the day that was said, or today by the clock or SOURCE_DATE_EPOCH."""
    from tarebook.cli.today import read_day, today

    return today() if said is None else read_day(said, "--packed")
