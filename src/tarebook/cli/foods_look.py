"""tarebook foods find, show: find a food, and see every figure of it with its source."""

from __future__ import annotations

from typing import Annotated

import typer

from tarebook.cli import asking, complete


def find(
    words: Annotated[list[str], typer.Argument(help="Words of its name, in any order.")],
    as_json: asking.AsJson = False,
) -> None:
    """Find foods by name or alias; bottles of your own first.

    Example: tarebook foods find green onion
    """
    from tarebook.cards.lines import Line, table
    from tarebook.cli.talk import show as show_lines
    from tarebook.cli.talk import show_data
    from tarebook.figures.foods import find_foods, food
    from tarebook.findings import FoodUnknown
    from tarebook.recipe.bottles import find_bottles

    own = find_bottles(" ".join(words))
    _note_unread()
    found = [(one.key, one.name, food(one.like).kind, one.like) for one in own]
    found += [(one.key, one.name, one.kind, "") for one in find_foods(" ".join(words))]
    if not found:
        raise FoodUnknown(" ".join(words))
    if as_json:
        names = ("food", "name", "kind", "like")
        show_data([dict(zip(names, one, strict=True)) for one in found])
        return
    broad = max(len(key) for key, *_ in found)
    rows = [
        (key, f"{name}: your own, like {like}" if like else name) for key, name, _, like in found
    ]
    show_lines(Line(text) for text in table(rows, (broad, 78 - broad)))


def _note_unread() -> None:
    """Say so where bottles of the cook's own were passed over."""
    from tarebook.cli.talk import complain
    from tarebook.recipe.own_bottles import every_bottle

    files = {one.place.file for one in every_bottle()[1]}
    if files:
        some = "one" if len(files) == 1 else f"{len(files)}"
        complain(f"note: {some} of your own bottles cannot be read; tarebook foods own says why")


def show(
    food: Annotated[str, typer.Argument(help="Which food.", autocompletion=complete.foods)],
    as_json: asking.AsJson = False,
) -> None:
    """Show every figure of a food with its source, and every measure with its grams.

    Of a bottle of your own: what each printed figure may stand for, and what is taken from the
    food it is like.

    Example: tarebook foods show soy-sauce
    """
    from tarebook.cards.bottle_page import bottle_data, bottle_page
    from tarebook.cards.food_page import food_data, food_page
    from tarebook.cli.talk import show as show_lines
    from tarebook.cli.talk import show_data
    from tarebook.recipe.bottles import known_food

    bottle = known_food(food).bottle
    if bottle is not None and as_json:
        show_data(bottle_data(bottle))
    elif bottle is not None:
        show_lines(bottle_page(bottle))
    elif as_json:
        show_data(food_data(food))
    else:
        show_lines(food_page(food))
