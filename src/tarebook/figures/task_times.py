"""How long the work of a batch takes: published where somebody published it, else our estimate."""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache

from tarebook.figures.table import Row, cells, keys, rows_of
from tarebook.tuples import NamedTuple

_FILE = "task-times.csv"
_PER = {"minute": "", "minute per kg": "kg", "minute per tray": "tray"}


class TaskTime(NamedTuple):
    """One line of the table: minutes, once or for each kilogram or tray.

    Attributes:
        key: the task; several lines of one task add up.
        low, likely, high: minutes [min], or minutes for each.
        per: ``kg`` of raw meat, ``tray``, or nothing.
        attended: whether somebody has to be there.
        code: P published, W a working value of ours.
        reason: what is done in that time, or who says so.
        source: id of the source.
    """

    key: str
    low: float
    likely: float
    high: float
    per: str
    attended: bool
    code: str
    reason: str
    source: str


@cache
def task_times(key: str) -> tuple[TaskTime, ...]:
    """Return the lines of one task.

    Raises:
        KeyError: the table has no such task, which is a fault of the caller.
    """
    rows = rows_of(_FILE, key)
    if not rows:
        raise KeyError(key)
    return tuple(_time(row) for row in rows)


def minutes(key: str, *, kg: float = 0.0, trays: int = 0, end: str = "likely") -> float:
    """Return how long a task takes [min].

    Args:
        key: the task.
        kg: raw meat [kg].
        trays: how many trays.
        end: ``low``, ``likely`` or ``high``.

    Example:
        >>> minutes("slice", kg=2)
        28.0
    """
    times: Mapping[str, float] = {"": 1.0, "kg": kg, "tray": float(trays)}
    return sum(float(getattr(one, end)) * times[one.per] for one in task_times(key))


def task_keys() -> tuple[str, ...]:
    """Return every task of the table, in its order."""
    return keys(_FILE)


def _time(row: Row) -> TaskTime:
    text = cells(_FILE, row)
    return TaskTime(
        key=text["key"],
        low=float(text["low"]),
        likely=float(text["likely"]),
        high=float(text["high"]),
        per=_PER[text["unit"]],
        attended=text["attended"] == "yes",
        code=text["code"],
        reason=text["reason"],
        source=text["source"],
    )
