"""Signs that a voice stumbles on, as words: ``5-7 h`` is 5 to 7 hours."""

from __future__ import annotations

import re
from collections.abc import Iterator

from tarebook.paper.elements import Inside, element

_BLANK = re.compile("(__+)")


def spelled(text: str) -> str:
    """Return words of our own with no sign in them that is left out or misread aloud.

    Args:
        text: a range, a measure or a sentence of the card; never a recipe's own words.

    Example:
        >>> spelled("Dry: 145-155 °F, 5-7 h"), spelled("1 cup + 2 x 1/3 cup")
        ('Dry: 145 to 155 °F, 5 to 7 h', '1 cup + 2 × 1/3 cup')
    """
    text = text.replace("≥ ", "at least ")
    return re.sub(r"(?<=\d)-(?=\d)", " to ", re.sub(r"(?<=\d) x (?=\d)", " × ", text))


def blanks(text: str) -> Iterator[Inside]:
    """Yield a text in which a line to write on is heard as one, not as so many underscores."""
    for one in _BLANK.split(text):
        if _BLANK.fullmatch(one):
            yield element("span", one, role="img", aria_label="a blank to fill in")
        elif one:
            yield one


def unbroken(text: str) -> Iterator[Inside]:
    """Yield a text in which an option of the command is never broken over two lines."""
    before, dashes, after = text.partition("--")
    yield from blanks(before)
    if dashes:
        option, space, rest = after.partition(" ")
        yield element("span", dashes + option, class_="whole")
        yield from unbroken(space + rest)


def unseen(text: str) -> Inside:
    """Return words that are heard and not seen: what an empty cell means."""
    return element("span", text, class_="unseen")
