"""Cautions as paper says them: what to do with the meat, where the screen says what to write.

On the screen a caution may tell which line of the recipe would answer it. Beside the stove nobody
has the recipe's file at hand.
"""

from __future__ import annotations

from collections.abc import Iterable

from tarebook.safety import Caution

__all__ = ["on_paper"]

_INSTEAD = {
    "heat-missing": (
        "Heat step missing",
        "Heat it through before it dries, in wet heat, as told under Heat the meat.",
    ),
    "thickness-blank": ("Thickness of the cut", "Cut it to 1/4 in, or thinner."),
    "ground-soaked": (
        "Ground meat in a marinade",
        "Mix the seasoning into the meat instead, and let it lie in nothing.",
    ),
}
"""By code: the title on paper, and what to do."""


def on_paper(cautions: Iterable[Caution]) -> tuple[Caution, ...]:
    """Return cautions with nothing in them that only helps somebody who edits the recipe."""
    return tuple(map(_told, cautions))


def _told(one: Caution) -> Caution:
    if one.code not in _INSTEAD:
        return one
    title, do = _INSTEAD[one.code]
    says = one.text.partition(". ")[0]
    return one._replace(title=title, text=f"{says}. {do}")
