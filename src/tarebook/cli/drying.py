"""tarebook drying: how long a batch may dry, before anybody has dried it."""

from __future__ import annotations

from typing import TYPE_CHECKING, Annotated

import typer

from tarebook.cli import asking
from tarebook.findings import AskedWrongly

if TYPE_CHECKING:
    from tarebook.drying.time import Conditions
    from tarebook.plan.hours import Hours
    from tarebook.recipe.model import Recipe

_USUAL_AIR_F = (145.0, 155.0)
_LONGEST_H = 500
_OTHERS = "times that others published for meat strips, the nearest of each carried over"


def drying(
    recipe: asking.RecipeName,
    meat: asking.Meat = None,
    factor: asking.Factor = None,
    thickness: Annotated[
        str | None, typer.Option("--thickness", metavar="LENGTH", help="Today's cut: '1/4 in'.")
    ] = None,
    temperature: Annotated[
        str | None,
        typer.Option("--temperature", metavar="HEAT", help="Today's air: '155 F', '68 C'."),
    ] = None,
    took: Annotated[
        str | None,
        typer.Option(
            "--took",
            metavar="HOURS",
            help="What your last batch took in this dryer; as the batch book says, if left out.",
        ),
    ] = None,
    took_thickness: Annotated[
        str | None,
        typer.Option(
            "--took-thickness",
            metavar="LENGTH",
            help="How thick that batch was cut; as the recipe says, if left out.",
        ),
    ] = None,
    took_temperature: Annotated[
        str | None,
        typer.Option(
            "--took-temperature",
            metavar="HEAT",
            help="How hot the air was then; as the recipe says, if left out.",
        ),
    ] = None,
    as_json: asking.AsJson = False,
) -> None:
    """Say how long a batch may dry, from your own last batch, the recipe, and what others printed.

    Example: tarebook drying juniper-venison --took 6.5 --took-thickness 5mm
    """
    from tarebook.cards.drying_page import DryingSheet, drying_data, drying_page
    from tarebook.cli.next_time import next_time_data, tell_next_time
    from tarebook.cli.talk import open_recipe, show, show_data
    from tarebook.cli.work import work_out

    if took is None and (took_thickness or took_temperature):
        raise AskedWrongly("--took-thickness and --took-temperature go with --took")
    written = open_recipe(recipe)
    today = _changed(written, thickness, temperature, "--")
    planned = _conditions(today)
    before = None
    if took is not None:
        before = (
            _hours(took),
            _conditions(_changed(written, took_thickness, took_temperature, "--took-")),
        )
    sheet = DryingSheet(
        done=work_out(today, meat=meat, factor=factor),
        thickness_mm=planned.thickness_mm,
        air_c=planned.air_c,
        stated=(today.meat.thickness_mm is not None, today.drying.temperature_f is not None),
        answers=tuple(_answers(written, planned, before)),
    )
    if as_json:
        show_data({**drying_data(sheet), "next_time": next_time_data(written)})
        return
    show(drying_page(sheet))
    tell_next_time(written)


def _answers(
    written: Recipe,
    planned: Conditions,
    before: tuple[float, Conditions] | None,
) -> list[tuple[str, Hours]]:
    """Return each way of telling the hours, the best one first.

    Args:
        written: the recipe.
        planned: thickness and air of today.
        before: hours and conditions of the batch that was told of; else the book is asked.
    """
    from tarebook.cli.work import own_hours
    from tarebook.plan.hours import carried_hours, published_hours, recipe_hours
    from tarebook.safety.case import Case

    found = []
    if before is not None:
        found.append(("your last batch", carried_hours(*before, planned)))
    elif (own := own_hours(written, planned)) is not None:
        found.append(("your own batches", own))
    if written.drying.hours is not None:
        hours = recipe_hours(*written.drying.hours, _conditions(written), planned)
        found.append(("the recipe", hours))
    if Case.of(written).is_meat:
        found.append(("others", published_hours(planned)._replace(why=_OTHERS)))
    if not found:
        raise AskedWrongly(
            "nothing is known of how long this dries: give --took, or hours under [drying]"
        )
    return found


def _changed(recipe: Recipe, thickness: str | None, temperature: str | None, by: str) -> Recipe:
    """Return the recipe cut and heated as options say, each checked by itself."""

    from tarebook.cli.talk import asked
    from tarebook.quantities.amount import parse_length_mm
    from tarebook.quantities.temperature import parse_temperature_f

    if thickness is not None:
        option = f"{by}thickness"
        mm = asked(parse_length_mm, thickness, option)
        cut = recipe.meat._replace(thickness_mm=mm, thickness_written=thickness)
        recipe = recipe._replace(meat=cut)
        _conditions(recipe._replace(drying=recipe.drying._replace(temperature_f=None)), option)
    if temperature is not None:
        option = f"{by}temperature"
        ends = asked(parse_temperature_f, temperature, option)
        air = recipe.drying._replace(temperature_f=ends, temperature_written=temperature)
        recipe = recipe._replace(drying=air)
        _conditions(recipe, option)
    return recipe


def _conditions(recipe: Recipe, said_by: str = "the recipe") -> Conditions:
    """Return the conditions that a recipe states, or the usual ones."""
    from tarebook.drying.time import Conditions
    from tarebook.plan.trays import QUARTER_INCH_MM

    mm, air_f = recipe.meat.thickness_mm, recipe.drying.temperature_f or _USUAL_AIR_F
    try:
        return Conditions(
            thickness_mm=QUARTER_INCH_MM if mm is None else mm[1],
            air_c=(sum(air_f) / 2 - 32) / 1.8,
        )
    except ValueError as fault:
        raise AskedWrongly(f"{said_by}: {fault}") from None


def _hours(text: str) -> float:
    from tarebook.cli.talk import read_number

    hours = float(read_number(text.strip().lower().removesuffix("h").strip(), "--took"))
    if not 0 < hours <= _LONGEST_H:
        raise AskedWrongly(f"--took: hours above 0 and at most {_LONGEST_H}")
    return hours
