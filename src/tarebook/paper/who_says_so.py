"""Who says so, as numbered notes: each body once, in the order the cautions name it."""

from __future__ import annotations

from collections.abc import Iterable

from tarebook.safety import Caution
from tarebook.safety.rulebook import rule
from tarebook.tuples import NamedTuple


class Noted(NamedTuple):
    """A caution with the numbers of the notes that say who says so.

    Attributes:
        caution: as the card has it.
        numbers: of its notes, from 1, in the order the caution cites them.
    """

    caution: Caution
    numbers: tuple[int, ...]


def who_says_so(cautions: Iterable[Caution]) -> tuple[tuple[Noted, ...], tuple[str, ...]]:
    """Return the cautions with their note numbers, and the notes themselves.

    Args:
        cautions: in the order of the card.

    Returns:
        Each caution with its numbers; and the text of note 1, note 2 and so on. A body that
        several cautions cite has one number.
    """
    numbers: dict[str, int] = {}
    noted = tuple(
        Noted(
            caution,
            tuple(numbers.setdefault(one, len(numbers) + 1) for one in citations_of(caution)),
        )
        for caution in cautions
    )
    return noted, tuple(numbers)


def citations_of(caution: Caution) -> tuple[str, ...]:
    """Return who says so, body by body, each once."""
    return tuple(dict.fromkeys(rule(one).citation for one in caution.cites.split("; ")))
