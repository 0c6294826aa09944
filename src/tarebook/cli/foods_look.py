"""tarebook foods find, show: find a food, and see every figure of it with its source."""

from __future__ import annotations

from typing import Annotated

import typer

from tarebook.cli import asking, complete


def find(
    words: Annotated[list[str], typer.Argument(help="Words of its name, in any order.")],
    as_json: asking.AsJson = False,
) -> None:
    """Find foods by name or alias.

    Example: tarebook foods find green onion
    """
    from tarebook.cards.lines import Line, table
    from tarebook.cli.talk import show as show_lines
    from tarebook.cli.talk import show_data
    from tarebook.figures.foods import find_foods
    from tarebook.findings import FoodUnknown

    found = find_foods(" ".join(words))
    if not found:
        raise FoodUnknown(" ".join(words))
    if as_json:
        show_data([{"food": one.key, "name": one.name, "kind": one.kind} for one in found])
        return
    broad = max(len(one.key) for one in found)
    rows = [(one.key, one.name) for one in found]
    show_lines(Line(text) for text in table(rows, (broad, 78 - broad)))


def show(
    food: Annotated[str, typer.Argument(help="Which food.", autocompletion=complete.foods)],
    as_json: asking.AsJson = False,
) -> None:
    """Show every figure of a food with its source, and every measure with its grams.

    Example: tarebook foods show soy-sauce
    """
    from tarebook.cards.food_page import food_data, food_page
    from tarebook.cli.talk import show as show_lines
    from tarebook.cli.talk import show_data

    if as_json:
        show_data(food_data(food))
    else:
        show_lines(food_page(food))
