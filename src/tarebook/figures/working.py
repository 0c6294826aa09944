"""The assumptions of the model, in one table: no number is buried in the code.

Codes: P published, C computed, M from memory, W a working value chosen by us inside the published
range. A working value is an assumption and is shown as one; no test claims that it is true.
"""

from __future__ import annotations

from functools import cache

from tarebook.figures.table import keys as keys_of
from tarebook.figures.table import rows_of
from tarebook.tuples import NamedTuple

_FILE = "working-values.csv"


class Working(NamedTuple):
    """One assumption, as a low, a likely and a high value.

    Attributes:
        key: its name in the table.
        low, likely, high: the values, never falling; all equal where only one is held.
        unit: what they are measured in.
        code: C, P, W or M.
        reason: why these values, in one sentence.
        source: id of the source.
    """

    key: str
    low: float
    likely: float
    high: float
    unit: str
    code: str
    reason: str
    source: str

    @property
    def range(self) -> tuple[float, float, float]:
        """Low, likely and high together."""
        return self.low, self.likely, self.high


@cache
def value(key: str) -> Working:
    """Return one assumption of the model by its key.

    Args:
        key: as in the first column of ``working-values.csv``.

    Raises:
        KeyError: the table has no such key, which is a fault of the caller.
    """
    rows = rows_of(_FILE, key)
    if not rows:
        raise KeyError(key)
    _, low, likely, high, unit, code, reason, source = rows[0]
    return Working(
        key=key,
        low=float(low),
        likely=float(likely),
        high=float(high),
        unit=unit,
        code=code,
        reason=reason,
        source=source,
    )


def keys() -> tuple[str, ...]:
    """Return the key of every assumption, in table order."""
    return keys_of(_FILE)
