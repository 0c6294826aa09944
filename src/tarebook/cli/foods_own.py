"""tarebook foods own, remove: the cook's own bottles."""

from __future__ import annotations

from typing import Annotated

import typer

from tarebook.cli import asking, complete


def own(as_json: asking.AsJson = False) -> None:
    """List your own bottles, with sodium and sugars of a tablespoon, or of 100 g.

    Example: tarebook foods own
    """
    from tarebook.cards.bottles_page import bottles_data, bottles_page
    from tarebook.cli.talk import show, show_data
    from tarebook.findings import RecordFaulty
    from tarebook.recipe.own_bottles import every_bottle

    bottles, findings = every_bottle()
    if as_json:
        show_data(bottles_data(bottles))
    elif bottles or not findings:
        show(bottles_page(bottles))
    if findings:
        raise RecordFaulty(findings)


def remove(
    name: Annotated[
        str, typer.Argument(help="Which of your bottles.", autocompletion=complete.bottles)
    ],
    as_json: asking.AsJson = False,
) -> None:
    """Set a bottle of your own aside; its file is moved and not destroyed.

    Example: tarebook foods remove cove-soy
    """
    from tarebook.cards.food_page import file_lines
    from tarebook.cli.talk import complain, show, show_data
    from tarebook.figures.foods import normalised
    from tarebook.recipe.named_in import recipes_naming
    from tarebook.recipe.own_bottles import set_aside

    place = set_aside(name)
    users, unread = recipes_naming(name)
    if as_json:
        told = {"recipes": list(users), "recipes_unread": list(unread)}
        show_data({"food": normalised(name), "file": str(place), **told})
    else:
        show(file_lines(f"{normalised(name)} is set aside; its file is now", str(place)))
    if users:
        named = "names" if len(users) == 1 else "name"
        complain(f"warning: {_listed(users)} of your recipes {named} it; {_now(name)}")
    if unread:
        complain(f"warning: {_listed(unread)} of your recipes cannot be read, and may name it")


def _listed(names: tuple[str, ...]) -> str:
    """Return names, not more than a line of them."""
    most = 8
    more = f" and {len(names) - most} more" if len(names) > most else ""
    return ", ".join(names[:most]) + more


def _now(name: str) -> str:
    from tarebook.figures.foods import food
    from tarebook.findings import FoodUnknown

    try:
        return f"there it now means {food(name).key} of the tables"
    except FoodUnknown:
        return "they cannot be read until it is back"
