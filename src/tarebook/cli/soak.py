"""tarebook soak: how long a soak still brings anything, and how long it may be."""

from __future__ import annotations

from typing import TYPE_CHECKING, Annotated

import typer

from tarebook.cli import asking
from tarebook.findings import AskedWrongly

if TYPE_CHECKING:
    from tarebook.recipe.model import Recipe


def soak(
    recipe: asking.RecipeName,
    meat: asking.Meat = None,
    bought: asking.Bought = None,
    trim: asking.Trim = None,
    factor: asking.Factor = None,
    drawer: asking.DrawerName = None,
    temperature: Annotated[
        str | None,
        typer.Option("--temperature", metavar="COLD", help="How cold it soaks today: '38 F'."),
    ] = None,
    as_: Annotated[
        str | None, typer.Option("--as", metavar="FORM", help="text, pdf, svg or png.")
    ] = None,
    out: asking.Out = None,
    as_json: asking.AsJson = False,
) -> None:
    """Say how far salt and sugar come with the hours, and when more stop mattering.

    Example: tarebook soak juniper-venison --meat 6lb
    """
    from tarebook.cards.lines import plain_text
    from tarebook.cards.soak_page import soak_data, soak_page
    from tarebook.cli.put import form_of, put, put_text
    from tarebook.cli.talk import complain, open_recipe, show, show_data
    from tarebook.cli.work import work_out

    opened = open_recipe(recipe)
    if temperature is not None:
        opened = _soaked_at(opened, temperature)
    done = work_out(opened, meat=meat, bought=bought, trim=trim, factor=factor, drawer=drawer)
    if as_json:
        show_data(soak_data(done))
        return
    form = form_of(as_, out, ("text", "pdf", "svg", "png"))
    if form != "text":
        from tarebook.paper.charts import draw_as, soak_chart

        chart = soak_chart(done)
        if chart is None:
            raise AskedWrongly("there is nothing to draw: no soak is told of this recipe")
        put(draw_as(chart, form, tell=complain), out, binary=True)
    elif out is not None:
        put_text(plain_text(soak_page(done)), out)
    else:
        show(soak_page(done))


def _soaked_at(recipe: Recipe, text: str) -> Recipe:
    """Return the recipe soaked at another temperature, within what a soak may have."""

    from tarebook.cli.talk import asked
    from tarebook.quantities.temperature import parse_temperature_f
    from tarebook.recipe.fields import SOAKS_F

    ends = asked(parse_temperature_f, text, "--temperature")
    coldest, warmest = SOAKS_F
    if not coldest <= ends[0] <= ends[1] <= warmest:
        raise AskedWrongly(
            "--temperature: a soak is at 28 to 100 °F (-2 to 38 °C); colder the meat is frozen"
        )
    soak = recipe.soak._replace(temperature_f=ends, temperature_written=text)
    return recipe._replace(soak=soak)
