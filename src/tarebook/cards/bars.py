"""Ranges drawn with characters, so that overlapping ones look overlapping."""

from __future__ import annotations

from collections.abc import Sequence

from tarebook.nutrition.range import Range

# No figure of an ounce is told finer than this; an axis would only show noise.
_NOTHING = 0.001
_ROUND_STEPS = (1, 2, 2.5, 5, 10)


def scale_end(highest: float) -> float:
    """Return a round end for an axis that starts at zero and holds a value."""
    if highest < _NOTHING:
        return 1.0
    power = 1.0
    while power * 10 <= highest:
        power *= 10
    while power > highest:
        power /= 10
    return next(
        power * step for step in _ROUND_STEPS if power * step >= highest * 1.02 or step == 10
    )


def bar(found: Range, end: float, columns: int, *, plain: bool = False) -> str:
    """Return one range on an axis from zero.

    Args:
        found: the range.
        end: value at the right end of the axis.
        columns: width of the axis.
        plain: draw with ASCII only.

    Returns:
        Low and high as ends, the likely value as a dot between them.
    """
    left, middle, right = (
        min(max(round(value / end * (columns - 1)), 0), columns - 1)
        for value in (found.low, found.likely, found.high)
    )
    ends, dash, dot = (("[", "]"), "-", "o") if plain else (("├", "┤"), "─", "●")
    drawn = [" "] * columns
    drawn[left : right + 1] = dash * (right - left + 1)
    drawn[left], drawn[right] = ends
    drawn[middle] = dot
    return "".join(drawn).rstrip()


def axis(end: float, columns: int, unit: str) -> str:
    """Return the foot of the axis: zero at the left, its end with the unit at the right."""
    label = f"{end:g} {unit}"
    return "0" + label.rjust(columns - 1)


def bars(
    rows: Sequence[tuple[str, Range | None]],
    columns: int,
    *,
    name_columns: int,
    plain: bool = False,
) -> list[str]:
    """Return named ranges over one another on a shared axis.

    A side without a total says so; one that can only be higher has ``≥`` behind its name.
    """
    known = [found for _, found in rows if found is not None]
    if not known:
        return []
    end = scale_end(max(found.high for found in known))
    drawn = [
        f"{_named(name, found, name_columns)} "
        + (bar(found, end, columns, plain=plain) if found else "no total")
        for name, found in rows
    ]
    return [*drawn, " " * (name_columns + 1) + axis(end, columns, known[0].unit)]


def _named(name: str, found: Range | None, columns: int) -> str:
    mark = "≥" if found is not None and found.at_least else ""
    return f"{name[: columns - len(mark)]}{mark}".ljust(columns)
