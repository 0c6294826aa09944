"""How long raw meat is out of the cold, and how long it waits in it."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from math import ceil

from tarebook.plan.jobs import Job
from tarebook.plan.tasks import Placed
from tarebook.safety.rulebook import limit
from tarebook.safety.soak import raw_days
from tarebook.tuples import NamedTuple

AT_THE_BOARD = ("trim", "slice", "knead")
"""Work in which raw meat lies on the board."""
_IN_HAND = ("steep", "rub", "drain", "form")
_HEATED = ("simmer", "steam", "boil-down")
_DAY_MIN = 24 * 60


class Warm(NamedTuple):
    """Minutes between 40 and 140 degF, of the load that has most of them.

    Attributes:
        board_min: trimming all of it and slicing one load, counted as if it lay out all the while
            [min].
        hands_min: putting in its marinade, draining, forming, laying out raw [min].
        heating_min: from the first piece into the heat to the last onto the trays [min].
        held_min: from thawed, or from the plan's start, until it is heated or dries [min], cold.
        heated_at: when the last load is heated, or begins to dry [min].
    """

    board_min: int
    hands_min: int
    heating_min: int
    held_min: int
    heated_at: int

    @property
    def out_min(self) -> int:
        """Board and hands together [min]."""
        return self.board_min + self.hands_min

    @property
    def too_long(self) -> bool:
        """Whether it would be over the limit if all of it lay out all the while.

        Source:
            rule ``out-of-cold``.
        """
        return self.out_min > limit("out-of-cold", "out") * 60

    @property
    def lots(self) -> int:
        """In how many lots to work so that each is out for an hour at most."""
        return max(ceil(self.out_min / 60), 1)


def warm_of(job: Job, at: int, placed: Sequence[Placed]) -> Warm:
    """Return how long the raw meat of one job is out of the cold, and how long it waits.

    Args:
        job: the recipe.
        at: which batch it is.
        placed: the plan.
    """
    own = [one for one in placed if one.batch == at]
    loads = range(1, len(job.loads) + 1)
    board, hands = max(_out(job, own, load) for load in loads)
    return Warm(
        board_min=board,
        hands_min=hands,
        heating_min=max(_heating(own, load) for load in loads),
        held_min=max(held_min(job, at, placed, load) for load in loads),
        heated_at=max(_heated_at(job, [one for one in own if one.load == load]) for load in loads),
    )


def held_min(job: Job, at: int, placed: Sequence[Placed], load: int) -> int:
    """Return how long the raw meat of one load waits in the cold [min].

    Args:
        job: the recipe.
        at: which batch it is.
        placed: the plan.
        load: counted from 1.
    """
    own = [one for one in placed if one.batch == at and one.load in (0, load)]
    thawed = max((one.end for one in own if one.kind == "thaw"), default=None)
    begun = min(one.start for one in own if one.kind != "mix") if thawed is None else thawed
    return _heated_at(job, [one for one in own if one.load == load]) - begun


def longest_held_min(job: Job) -> int:
    """Return how long raw meat may wait in the refrigerator, by the cautious end [min].

    Source:
        rule ``raw-holding``: 2 days for ground meat and poultry, 3 to 5 for cuts of red meat.
    """
    return int(raw_days(job.case) * _DAY_MIN)


def _out(job: Job, own: Iterable[Placed], load: int) -> tuple[int, int]:
    """Return minutes at the board and in hand of one load."""
    kinds = (*_IN_HAND, "load") if job.batch.raw else _IN_HAND
    mine = [one for one in own if one.load in (0, load)]
    board = sum(_length(one) for one in mine if one.kind in AT_THE_BOARD)
    return board, sum(_length(one) for one in mine if one.kind in kinds)


def _heating(own: Iterable[Placed], load: int) -> int:
    """Return how long the heat and the laying out after it take; nothing where it goes in raw."""
    mine = {one.kind: one for one in own if one.load == load}
    hot = next((mine[kind] for kind in _HEATED if kind in mine), None)
    return 0 if hot is None else mine["load"].end - hot.start


def _heated_at(job: Job, own: Iterable[Placed]) -> int:
    """Return when a load is heated, or begins to dry if it is not heated first."""
    return min(one.start for one in own if one.kind in (*_HEATED, "dry"))


def _length(one: Placed) -> int:
    return one.end - one.start
