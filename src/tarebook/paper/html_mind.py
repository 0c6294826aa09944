"""Cautions in HTML: a heading each, what to mind, and numbers that lead to who says so."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from tarebook.findings import Severity
from tarebook.paper.elements import Inside, Markup, element
from tarebook.paper.who_says_so import Noted


def caution_item(one: Noted, *, heard: bool = True) -> Markup:
    """Return a caution as an item of a list.

    Args:
        one: the caution, with the numbers of its notes.
        heard: whether a grave one is called important for who hears it; where its title says so
            already, it is not.
    """
    caution = one.caution
    plain = caution.severity is Severity.NOTE
    label = {"aria_label": f"Important: {caution.title}."} if heard and not plain else {}
    return element(
        "li",
        element("h3", f"{caution.title}.", **label),
        element("p", caution.text, *_note_marks(one.numbers)),
        class_="plain" if plain else "grave",
    )


def note_items(notes: Iterable[str]) -> list[Markup]:
    """Return the notes that the numbers lead to, as items of a list."""
    # What a link leads to takes the focus, so that reading goes on from there.
    return [
        element("li", text, id=f"note-{number}", tabindex="-1")
        for number, text in enumerate(notes, 1)
    ]


def _note_marks(numbers: tuple[int, ...]) -> Iterator[Inside]:
    for number in numbers:
        yield "\N{NO-BREAK SPACE}"
        yield element("a", str(number), href=f"#note-{number}", aria_label=f"{number}, who says so")
