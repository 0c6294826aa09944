"""tarebook soak: how long a soak still brings anything, and how long it may be."""

from __future__ import annotations

from tarebook.cli import asking


def soak(
    recipe: asking.RecipeName,
    meat: asking.Meat = None,
    bought: asking.Bought = None,
    trim: asking.Trim = None,
    factor: asking.Factor = None,
    drawer: asking.DrawerName = None,
    as_json: asking.AsJson = False,
) -> None:
    """Say how far salt and sugar come with the hours, and when more stop mattering.

    Example: tarebook soak juniper-venison --meat 6lb
    """
    from tarebook.cards.soak_page import soak_data, soak_page
    from tarebook.cli.talk import open_recipe, show, show_data
    from tarebook.cli.work import work_out

    done = work_out(
        open_recipe(recipe), meat=meat, bought=bought, trim=trim, factor=factor, drawer=drawer
    )
    if as_json:
        show_data(soak_data(done))
    else:
        show(soak_page(done))
