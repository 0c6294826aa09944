"""tarebook scale: what to measure for today's meat, and what an ounce will hold.

Its annotations are plain values, not text to be read again: typer asks for every one of them twice.
"""

from typing import Annotated

import typer

from tarebook.cli import asking


def scale(
    recipe: asking.RecipeName,
    meat: asking.Meat = None,
    bought: asking.Bought = None,
    trim: asking.Trim = None,
    factor: asking.Factor = None,
    drawer: asking.DrawerName = None,
    finished: asking.Finished = None,
    soaked: asking.Soaked = None,
    leftover: asking.Leftover = None,
    towels: asking.Towels = None,
    heat: asking.Heat = None,
    nothing_poured_away: asking.NothingPoured = False,
    exact: Annotated[bool, typer.Option("--exact", help="Show exact amounts as well.")] = False,
    why: Annotated[
        bool, typer.Option("--why", help="Show every assumption, and what matters most.")
    ] = False,
    water_activity: Annotated[
        bool,
        typer.Option("--water-activity", help="Estimate the water activity, as a band."),
    ] = False,
    label_ounce: asking.LabelOunce = False,
    short: Annotated[
        bool,
        typer.Option("--short", help="Amounts, figures and grave cautions only."),
    ] = False,
    as_: Annotated[str | None, typer.Option("--as", metavar="FORM", help="text or csv.")] = None,
    out: asking.Out = None,
    as_json: asking.AsJson = False,
) -> None:
    """Scale a recipe to today's meat, with sodium and sugars per finished ounce.

    Example: tarebook scale juniper-venison --meat 6lb
    """
    from tarebook.cli.next_time import next_time_data, tell_next_time
    from tarebook.cli.talk import open_recipe, show, show_data
    from tarebook.cli.work import work_out

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

        data = worksheet_data(done)
        if why:
            from tarebook.cards.why import why_data

            data["why"] = why_data(done)
        if water_activity:
            from tarebook.cards.why import activity_data

            data["water_activity"] = activity_data(done)
        data["next_time"] = next_time_data(done.recipe)
        show_data(data)
        return
    if as_ is not None or out is not None:
        from tarebook.cli.put import form_of, put

        if form_of(as_, out, ("text", "csv")) == "csv":
            from tarebook.cards.spreadsheet import scale_rows
            from tarebook.cells import csv_text

            put(csv_text(scale_rows(done)).encode(), out)
            tell_next_time(done.recipe, aside=True)
            return
    from tarebook.cards.sheet import sheet

    lines = list(sheet(done, exact=exact, short=short))
    if why:
        from tarebook.cards.why import why as why_lines

        lines += why_lines(done)
    if water_activity:
        from tarebook.cards.why import activity_lines

        lines += activity_lines(done)
    if out is not None:
        from tarebook.cards.lines import plain_text
        from tarebook.cli.put import put_text

        put_text(plain_text(lines), out)
    else:
        show(lines)
    tell_next_time(done.recipe, aside=out is not None)
