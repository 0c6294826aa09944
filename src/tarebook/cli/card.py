"""tarebook card: the recipe card for today's meat."""

from __future__ import annotations

from tarebook.cli import asking


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
    nothing_poured_away: asking.NothingPoured = False,
    label_ounce: asking.LabelOunce = False,
    as_json: asking.AsJson = False,
) -> None:
    """Print a labelled recipe card as text, 60 columns.

    Example: tarebook card juniper-venison --meat 6lb
    """
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
        label_ounce=label_ounce,
        nothing_poured=nothing_poured_away,
    )
    if as_json:
        from tarebook.cards.keys import worksheet_data

        show_data(worksheet_data(done))
        return
    from tarebook.cards.text_card import text_card

    show(text_card(done))
