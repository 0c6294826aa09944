"""Notes for next time, shown by every command that brings a recipe up again."""

from __future__ import annotations


def tell_next_time(key: str) -> None:
    """Show the open notes for next time of a recipe, where there are any.

    Without a batch book nothing is loaded. A book that cannot be read is told of on standard
    error, and stops nothing: the cook asked for something else.

    Args:
        key: the name that the recipe goes by in the book (``records.recipe_key``).
    """
    from tarebook.cli.talk import complain, show
    from tarebook.findings import FileUnreadable, FileUnwritable
    from tarebook.records import next_time

    try:
        found = next_time(key)
    except (FileUnreadable, FileUnwritable) as fault:
        complain(f"note: {fault}")
        return
    if found:
        from tarebook.cards.batch_page import next_lines

        show(next_lines(found))
