"""The recipe's own steps on a card, where nothing of the marinade is poured away today.

A recipe whose steps throw the marinade away is sometimes made otherwise: all of it stays with the
meat, and the figures count all of it. A card must not tell the cook to throw it away then.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator

__all__ = ["NOTHING_POURED", "without_pouring"]

NOTHING_POURED = (
    "Pour nothing away: what is left of the marinade stays with the meat and is heated through "
    "with it."
)


def without_pouring(steps: Iterable[str]) -> Iterator[str]:
    """Yield steps without what they say of pouring away, draining and patting dry.

    Args:
        steps: as the recipe has them.

    Yields:
        Each step; one that spoke of it tells what else it said, and that nothing is poured away.
    """
    told = NOTHING_POURED
    for step in steps:
        sentences = [_sentence(one) for one in re.split(r"(?<=[.!?]) +", step)]
        if all(left is None for _, left in sentences):
            yield step
            continue
        kept = (whole if left is None else left for whole, left in sentences)
        yield " ".join((*filter(None, kept), told))
        told = "Pour nothing away."


_SEAM = r"((?:[,;] +(?:and +)?(?:then +)?| +and +(?:then +)?)(?=\w))"
"""What stands between two clauses of a sentence."""
_POURS = (
    r"(?:drain|discard|strain)\b|(?:throw|pour|tip|empty)\b.*\b(?:away|off|out)\b|pat\b.*\bdry\b"
)


def _sentence(text: str) -> tuple[str, str | None]:
    """Return a sentence, and what is left of it without its clauses of pouring away, if any."""
    parts = re.split(_SEAM, text.rstrip(".!"))
    clauses, seams = parts[::2], ["", *parts[1::2]]
    kept = [one for one in zip(seams, clauses, strict=True) if not re.match(_POURS, one[1].lower())]
    if len(kept) == len(clauses):
        return text, None
    left = "".join(seam + clause for seam, clause in kept).removeprefix(kept[0][0] if kept else "")
    return text, f"{left[0].upper()}{left[1:]}." if left else ""
