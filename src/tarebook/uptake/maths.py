"""Kinds of number that the formulae take: one float, a column of draws, or an array.

The formulae use + - * / and the four operations of ``Maths``. So the same lines run for a single
setting, for the default set of draws in plain Python, and for a large array.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Sequence
from operator import add, mul, sub, truediv
from typing import Any

from tarebook.tuples import NamedTuple
from tarebook.uptake.crank import uptake_fraction
from tarebook.uptake.table import uptake_fractions

# A float, a Column, or an array of floats with one entry a draw.
Number = Any


class Maths(NamedTuple):
    """Smaller of, larger of, choose, and the uptake fraction, for one kind of number."""

    smaller: Callable[[Number, Number], Number]
    larger: Callable[[Number, Number], Number]
    choose: Callable[[Number, Number, Number, Number], Number]
    uptake: Callable[[Number, Number], Number]


class Column:
    """A column of draws in plain Python: arithmetic goes entry by entry.

    The other side may be a number, which stands for a column of that number.

    Example:
        >>> list(1 + 2 * Column([1.0, 2.5]))
        [3.0, 6.0]
    """

    __slots__ = ("values",)

    def __init__(self, values: Sequence[float]) -> None:
        self.values = values

    def __iter__(self) -> Iterator[float]:
        return iter(self.values)

    def __len__(self) -> int:
        return len(self.values)

    def __add__(self, other: Number) -> Column:
        if isinstance(other, Column):
            return Column(list(map(add, self.values, other.values)))
        return Column([a + other for a in self.values])

    __radd__ = __add__

    def __sub__(self, other: Number) -> Column:
        if isinstance(other, Column):
            return Column(list(map(sub, self.values, other.values)))
        return Column([a - other for a in self.values])

    def __rsub__(self, other: float) -> Column:
        return Column([other - a for a in self.values])

    def __mul__(self, other: Number) -> Column:
        if isinstance(other, Column):
            return Column(list(map(mul, self.values, other.values)))
        return Column([a * other for a in self.values])

    __rmul__ = __mul__

    def __truediv__(self, other: Number) -> Column:
        if isinstance(other, Column):
            return Column(list(map(truediv, self.values, other.values)))
        return Column([a / other for a in self.values])

    def __rtruediv__(self, other: float) -> Column:
        return Column([other / a for a in self.values])


def each(function: Callable[..., float], *numbers: Number) -> Number:
    """Return a plain function applied entry by entry; a plain number if all are plain."""
    if any(getattr(n, "ndim", 0) for n in numbers):
        import numpy as np

        return np.frompyfunc(function, len(numbers), 1)(*numbers).astype(float)
    length = next((len(n) for n in numbers if isinstance(n, Column)), None)
    if length is None:
        return function(*numbers)
    columns = [n.values if isinstance(n, Column) else (n,) * length for n in numbers]
    return Column([function(*row) for row in zip(*columns, strict=True)])


def weighed_sum(parts: Iterable[tuple[float, Number]]) -> Number:
    """Return the sum of weight times number over some parts; 0.0 where there are none.

    Columns are added in one pass each, with nothing made in between: most of a batch is such sums.

    Args:
        parts: a plain weight and a number of any one kind, in pairs; weights of zero are skipped.
    """
    total: Number = 0.0
    for weight, number in parts:
        if not weight:
            continue
        if not isinstance(number, Column):
            total = total + weight * number
        elif isinstance(total, Column):
            values = [a + weight * b for a, b in zip(total.values, number.values, strict=True)]
            total = Column(values)
        else:
            values = [weight * b for b in number.values]
            total = Column(values) if not total else Column(values) + total
    return total


def _choose(at: float, edge: float, below: float, otherwise: float) -> float:
    return below if at < edge else otherwise


def _smaller(a: Number, b: Number) -> Number:
    if isinstance(a, Column) and isinstance(b, float):  # as most are, and thrice as quick
        return Column([one if one < b else b for one in a.values])
    return each(min, a, b)


def _larger(a: Number, b: Number) -> Number:
    if isinstance(a, Column) and isinstance(b, float):
        return Column([one if one > b else b for one in a.values])
    return each(max, a, b)


def _choose_each(at: Number, edge: Number, below: Number, otherwise: Number) -> Number:
    return each(_choose, at, edge, below, otherwise)


def _uptake_each(tau: Number, alpha: Number) -> Number:
    if isinstance(tau, Column) and isinstance(alpha, Column):
        return Column(uptake_fractions(tau.values, alpha.values))
    return each(uptake_fraction, tau, alpha)


PLAIN = Maths(min, max, _choose, uptake_fraction)
"""One setting, in plain floats."""

COLUMNS = Maths(_smaller, _larger, _choose_each, _uptake_each)
"""A column of draws in plain Python; single floats pass through as well."""
