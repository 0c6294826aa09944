"""The "did you mean" of a misspelled word."""

from __future__ import annotations

from collections.abc import Iterable


def nearest(
    word: str, known: Iterable[str], *, most: int = 3, least: float = 0.6
) -> tuple[str, ...]:
    """Return the known words that look most like a misspelled one, best first.

    Args:
        word: what was typed; only its first 60 characters are compared.
        known: the words that would have been right.
        most: how many to offer.
        least: how much alike they must be, from 0 to 1.

    Returns:
        At most ``most`` words; empty where nothing is near.
    """
    from difflib import get_close_matches  # only when somebody mistyped

    return tuple(get_close_matches(word[:60].lower(), list(known), n=most, cutoff=least))
