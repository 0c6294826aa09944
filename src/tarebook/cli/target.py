"""tarebook target: which change brings sodium or sugars under a figure."""

from __future__ import annotations

from typing import Annotated

import typer

from tarebook.cli import asking


def target(
    recipe: asking.RecipeName,
    sodium: Annotated[
        str | None,
        typer.Option("--sodium", metavar="LIMIT", help="At most: '300 mg/oz', '4 g/batch', 30%."),
    ] = None,
    sugars: Annotated[
        str | None, typer.Option("--sugars", metavar="LIMIT", help="The same for total sugars.")
    ] = None,
    likely: Annotated[
        bool, typer.Option("--likely", help="Hold the likely value against it, not the high one.")
    ] = False,
    meat: asking.Meat = None,
    bought: asking.Bought = None,
    trim: asking.Trim = None,
    factor: asking.Factor = None,
    drawer: asking.DrawerName = None,
    label_ounce: asking.LabelOunce = False,
    as_json: asking.AsJson = False,
) -> None:
    """Say which change gets sodium or sugars under a figure, in measures, and what it costs.

    Example: tarebook target juniper-venison --meat 6lb --sodium "300 mg/oz"
    """
    from tarebook.cards.target_page import target_data, target_page
    from tarebook.cli.talk import asked, open_recipe, read_meat, show, show_data
    from tarebook.cli.work import drawer_name
    from tarebook.findings import AskedWrongly
    from tarebook.nutrition import Ounce
    from tarebook.quantities.drawer import choose_drawer
    from tarebook.target import answers, read_goal

    wanted = [
        ("--sodium", "sodium_mg", sodium),
        ("--sugars", "sugars_g", sugars),
    ]
    given = [(option, figure, text) for option, figure, text in wanted if text is not None]
    if len(given) != 1:
        raise AskedWrongly("give one of --sodium or --sugars, as in --sodium '300 mg/oz'")
    option, figure, text = given[0]
    goal = asked(lambda words: read_goal(figure, words, likely=likely), text, option)
    opened = open_recipe(recipe)
    mass_g, times = read_meat(opened, meat=meat, bought=bought, trim=trim, factor=factor)
    if times is None:
        times = (mass_g or opened.meat.mass_g) / opened.meat.mass_g
    found = answers(
        opened,
        goal,
        factor=times,
        drawer=choose_drawer(drawer_name(drawer)),
        ounce=Ounce.LABEL if label_ounce else Ounce.AVOIRDUPOIS,
    )
    if as_json:
        show_data(target_data(found))
    else:
        show(target_page(opened.title, found))
