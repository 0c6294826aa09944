"""Thousands of recipes worked out on every core of the machine."""

from __future__ import annotations

import os
from collections.abc import Iterator, Sequence
from functools import partial

from tarebook.nutrition.facts import OwnYield
from tarebook.shelf.rows import Kept, foods_named, row_of
from tarebook.tuples import NamedTuple

_A_TASK = 25
_MOST_CORES = 8


class Wanted(NamedTuple):
    """A recipe to work out: what to call it, its file's name and bytes, and what batches say."""

    name: str
    file: str
    data: bytes
    own_yield: OwnYield | None = None


def cores() -> int:
    """Return how many processes may work at once."""
    able = getattr(os, "sched_getaffinity", None)  # where some are given to others
    return min(len(able(0)) if able else os.cpu_count() or 1, _MOST_CORES)


def rows_of(wanted: Sequence[Wanted], drawer: str, *, in_arrays: bool = False) -> list[Kept]:
    """Return the row of each recipe, one after the other, with the foods that it asks for.

    Args:
        wanted: the recipes.
        drawer: name of the measuring set.
        in_arrays: the same rows, quicker where there are hundreds: numpy is loaded for it.
    """
    return [_kept(one, drawer, in_arrays=in_arrays) for one in wanted]


def _kept(one: Wanted, drawer: str, *, in_arrays: bool) -> Kept:
    row = row_of(
        one.name,
        one.data,
        file=one.file,
        drawer=drawer,
        own_yield=one.own_yield,
        in_arrays=in_arrays,
    )
    return Kept(row, None if row.fault else foods_named(one.data))


def rows_of_many(wanted: Sequence[Wanted], drawer: str, *, at_once: int) -> Iterator[list[Kept]]:
    """Yield the rows of recipes by the hundred, in the order given, on every core, in arrays.

    Where no further process can be had, this one does it.

    Args:
        wanted: the recipes.
        drawer: name of the measuring set.
        at_once: how many to a heap.
    """
    from concurrent.futures import ProcessPoolExecutor
    from concurrent.futures.process import BrokenProcessPool

    done = 0
    try:
        with ProcessPoolExecutor(cores(), initializer=_leave_stopping_to_the_first) as pool:
            for start in range(0, len(wanted), at_once):
                heap = wanted[start : start + at_once]
                tasks = [heap[at : at + _A_TASK] for at in range(0, len(heap), _A_TASK)]
                found = list(pool.map(partial(rows_of, drawer=drawer, in_arrays=True), tasks))
                yield [row for rows in found for row in rows]
                done = start + len(heap)
    except (OSError, ImportError, NotImplementedError, BrokenProcessPool):
        for start in range(done, len(wanted), at_once):
            yield rows_of(wanted[start : start + at_once], drawer, in_arrays=True)


def _leave_stopping_to_the_first() -> None:
    """Ignore Ctrl-C, which every process gets: the first one tells of it, and ends the others."""
    import signal

    signal.signal(signal.SIGINT, signal.SIG_IGN)
