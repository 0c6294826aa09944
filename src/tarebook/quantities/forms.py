"""Words that say in what state a food is measured, and the small words around them.

A packed cup of brown sugar is not an unpacked one, so form words stay with the amount and choose
the density. The other words change nothing and are passed over, or cannot be scaled and are
refused.
"""

from __future__ import annotations

from tarebook.findings import AmountError, nearest
from tarebook.quantities.plain import plain, quoted

__all__ = [
    "BEFORE",
    "FILLERS",
    "FORMS",
    "LOOSE",
    "NUMBERS",
    "SIZES",
    "THEIR_OWN_NAME",
    "VAGUE",
    "parse_form",
    "place_of",
]

FORMS: dict[str, str] = {
    word: word
    for word in (
        "packed", "unpacked", "ground", "whole", "minced", "chopped", "grated", "coarse", "fine",
        "sliced", "crushed", "dried", "fresh", "leaves", "pressed", "diced", "crumbled", "shredded",
        "mashed", "melted", "pitted", "sifted", "unsifted", "raw", "thin", "thick", "peeled",
        "toasted", "pieces", "halves", "cubes", "sprigs", "chunks",
    )
} | {"coarsely": "coarse", "finely": "fine", "thinly": "thin", "thickly": "thick"}  # fmt: skip
"""Form words by their spelling."""

LOOSE = frozenset({"lightly", "loosely"})
"""Turn ``packed`` into ``unpacked``."""

SIZES = frozenset({"large", "medium", "small"})
"""Sizes count whole foods (``1 large``) and qualify other counts (``2 large cloves``)."""

BEFORE = SIZES | {"thin", "thick", "whole"}
"""Form words printed before a counted thing, not behind it."""

THEIR_OWN_NAME = frozenset(
    {"onion", "pepper", "tomato", "mushroom", "lemon", "lime", "egg", "fruit"}
)
"""Counts that only repeat the food's own name: ``1 medium onion`` is ``1 medium``."""

NUMBERS = {
    "a": "1", "an": "1", "one": "1", "two": "2", "three": "3", "four": "4", "five": "5",
    "six": "6", "seven": "7", "eight": "8", "nine": "9", "ten": "10", "eleven": "11",
    "twelve": "12", "half": "1/2",
}  # fmt: skip
"""Number words, in digits."""

FILLERS = frozenset(
    {"of", "the", "a", "an", "level", "firmly", "tightly", "well", "freshly", "roughly", "juice"}
)
"""Words that change nothing about how much is meant."""

VAGUE = frozenset(
    {
        "some", "few", "several", "couple", "bit", "little", "splash", "glug", "heaping", "heaped",
        "scant", "generous", "rounded", "more", "less", "enough",
    }
)  # fmt: skip
"""Words for how much that no one can scale."""


def parse_form(text: str) -> tuple[str, ...]:
    """Return the form words of a text that says nothing else.

    Args:
        text: form words with spaces or commas between them (``coarsely ground``).

    Returns:
        The words in the order they stand with an amount, each once.

    Raises:
        AmountError: a word is not one of them.

    Example:
        >>> parse_form("coarsely ground")
        ('coarse', 'ground')
    """
    found: dict[str, None] = {}
    loosely = False
    for word in plain(text, "form").lower().replace(",", " ").split():
        if word in LOOSE:
            loosely = True
        elif word in FORMS or word in SIZES:
            form = FORMS.get(word, word)
            found["unpacked" if loosely and form == "packed" else form] = None
        elif word not in FILLERS:
            near = " or ".join(quoted(one) for one in nearest(word, FORMS, most=2))
            hint = f"did you mean {near}?" if near else ""
            raise AmountError(
                f"form {quoted(text)} has a word I do not know: {quoted(word)}",
                text=text,
                hint=hint,
            )
    return tuple(sorted(found, key=place_of))


def place_of(form: str) -> int:
    """Return where a form word is said: a size first, then what stands before a counted thing."""
    return 0 if form in SIZES else 1 if form in BEFORE else 2
