"""Notes for next time, shown by every command that brings a recipe up again."""

from __future__ import annotations

from functools import cache
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from tarebook.recipe.model import Recipe
    from tarebook.records import Known


def tell_next_time(recipe: Recipe, *, aside: bool = False, by_name: bool = False) -> None:
    """Show the open notes for next time of a recipe, where there are any.

    Without a batch book nothing is loaded. A book that cannot be read is told of on standard
    error, and stops nothing: the cook asked for something else.

    Args:
        recipe: as it was opened.
        aside: whether standard output holds something else, so that notes go to standard error.
        by_name: whether to say of which recipe they are.
    """
    found = _known(recipe)
    if not found.notes:
        return
    from tarebook.cards.lines import Line
    from tarebook.cards.next_notes import next_lines
    from tarebook.cli.talk import complain, show

    lines = next_lines(found.notes, title=recipe.title if by_name else "")
    if not aside:
        show([Line(), *lines])
        return
    for line in lines:
        complain(line.text)


def next_time_data(recipe: Recipe) -> list[dict[str, Any]]:
    """Return the same as plain data; empty where there is nothing."""
    return [one._asdict() for one in _known(recipe).notes]


@cache
def complain_of_book(fault: str) -> None:
    """Tell on standard error of a book that cannot be read: once, however often it is asked."""
    from tarebook.cli.talk import complain

    complain(f"note: {fault}")


def _known(recipe: Recipe) -> Known:
    """Return what the book has on a recipe; tell on standard error what stands in the way."""
    from tarebook.findings import FileUnreadable, FileUnwritable
    from tarebook.records import Known, next_time

    try:
        found = next_time(recipe.file, recipe.title)
    except (FileUnreadable, FileUnwritable) as fault:
        complain_of_book(str(fault))
        return Known()
    if found.other:
        from tarebook.cli.talk import complain

        complain(
            f'note: in the batch book this file name is that of "{found.other}", another title: '
            "its batches and notes are not counted here"
        )
    return found
