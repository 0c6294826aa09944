"""tarebook drying: how long a batch may dry, before anybody has dried it."""

from __future__ import annotations

from typing import TYPE_CHECKING, Annotated

import typer

from tarebook.cli import asking

if TYPE_CHECKING:
    from tarebook.drying.time import Conditions
    from tarebook.recipe.model import Recipe

_USUAL_AIR_F = (145.0, 155.0)
_OTHERS = "times that others published for meat strips, the nearest of each carried over"


def drying(
    recipe: asking.RecipeName,
    thickness: Annotated[
        str | None, typer.Option("--thickness", metavar="LENGTH", help="Today's cut: '1/4 in'.")
    ] = None,
    temperature: Annotated[
        str | None,
        typer.Option("--temperature", metavar="HEAT", help="Today's air: '155 F', '68 C'."),
    ] = None,
    took: Annotated[
        str | None,
        typer.Option("--took", metavar="HOURS", help="What your last batch took in this dryer."),
    ] = None,
    took_thickness: Annotated[
        str | None,
        typer.Option("--took-thickness", metavar="LENGTH", help="How thick that batch was cut."),
    ] = None,
    took_temperature: Annotated[
        str | None,
        typer.Option("--took-temperature", metavar="HEAT", help="How hot the air was then."),
    ] = None,
    as_json: asking.AsJson = False,
) -> None:
    """Say how long a batch may dry, from your own last batch, the recipe, and what others printed.

    Example: tarebook drying juniper-venison --took 6.5 --took-thickness 5mm
    """
    from tarebook.cards.drying_page import DryingSheet, drying_data, drying_page
    from tarebook.cli.talk import open_recipe, show, show_data
    from tarebook.findings import AskedWrongly
    from tarebook.plan.hours import carried_hours, published_hours, recipe_hours
    from tarebook.safety.case import Case

    if took is None and (took_thickness or took_temperature):
        raise AskedWrongly("--took-thickness and --took-temperature go with --took")
    opened = open_recipe(recipe)
    written = _written(opened)
    planned = _changed(written, thickness, temperature, "--thickness", "--temperature")
    answers = []
    if took is not None:
        before = _changed(
            written, took_thickness, took_temperature, "--took-thickness", "--took-temperature"
        )
        answers.append(("your last batch", carried_hours(_hours(took), before, planned)))
    if opened.drying.hours is not None:
        hours = recipe_hours(*opened.drying.hours, written, planned)
        answers.append(("the recipe", hours))
    if printed := Case.of(opened).is_meat:
        published = published_hours(planned)._replace(why=_OTHERS)
        answers.append(("others", published))
    if not answers:
        raise AskedWrongly(
            "nothing is known of how long this dries: give --took, or hours under [drying]"
        )
    stated = (
        thickness is not None or opened.meat.thickness_mm is not None,
        temperature is not None or opened.drying.temperature_f is not None,
    )
    sheet = DryingSheet(
        opened.title, planned.thickness_mm, planned.air_c, stated, tuple(answers), printed
    )
    if as_json:
        show_data(drying_data(sheet))
    else:
        show(drying_page(sheet))


def _written(recipe: Recipe) -> Conditions:
    """Return the conditions that a recipe states, or the usual ones."""
    from tarebook.plan.hours import conditions

    stated = recipe.meat.thickness_mm
    return conditions(
        None if stated is None else stated[1], recipe.drying.temperature_f or _USUAL_AIR_F
    )


def _changed(
    usual: Conditions,
    thickness: str | None,
    temperature: str | None,
    thickness_option: str,
    temperature_option: str,
) -> Conditions:
    """Return conditions with what an option says in place of the usual."""
    from tarebook.cli.talk import asked
    from tarebook.drying.time import Conditions
    from tarebook.findings import AskedWrongly
    from tarebook.quantities.amount import parse_length_mm
    from tarebook.quantities.temperature import parse_temperature_f

    mm, air_c = usual.thickness_mm, usual.air_c
    if thickness is not None:
        mm = asked(parse_length_mm, thickness, thickness_option)[1]
    if temperature is not None:
        low, high = asked(parse_temperature_f, temperature, temperature_option)
        air_c = ((low + high) / 2 - 32) / 1.8
    try:
        return Conditions(thickness_mm=mm, air_c=air_c)
    except ValueError as fault:
        option = thickness_option if thickness is not None else temperature_option
        raise AskedWrongly(f"{option}: {fault}") from None


def _hours(text: str) -> float:
    from tarebook.cli.talk import read_number
    from tarebook.findings import AskedWrongly

    hours = float(read_number(text.strip().lower().removesuffix("h").strip(), "--took"))
    if not 0 < hours <= 500:
        raise AskedWrongly("--took: hours above 0 and at most 500")
    return hours
