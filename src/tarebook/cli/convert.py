"""tarebook convert: one amount of one food as volume or mass."""

from __future__ import annotations

from typing import Annotated

import typer

from tarebook.cli import asking, complete


def convert(
    amount: Annotated[str, typer.Argument(help="As a cook writes it: '3/4 cup packed', '200 g'.")],
    food: Annotated[str, typer.Argument(help="Which food.", autocompletion=complete.foods)],
    to: Annotated[
        str | None,
        typer.Option("--to", metavar="UNIT", help="cups, tsp, Tbsp, fl oz, mL, oz, g …"),
    ] = None,
    as_json: asking.AsJson = False,
) -> None:
    """Turn a volume of a food into mass, or back, and say by which density.

    Example: tarebook convert "3/4 cup packed" brown-sugar
    """
    from tarebook.cards.lines import Line, wrap
    from tarebook.cli.talk import asked, show, show_data
    from tarebook.quantities.amount import parse_amount
    from tarebook.scaling.conversion import converted

    asked(parse_amount, amount, "")
    found = converted(amount, food, to)
    if as_json:
        show_data(found.data())
    else:
        show(Line(one) for text in found.lines() for one in wrap(text, 80, rest="  "))
