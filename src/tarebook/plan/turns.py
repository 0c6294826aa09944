"""When a soak is turned: twice, or once where it is short, and nobody gets up for it."""

from __future__ import annotations

from collections.abc import Sequence
from functools import partial

from tarebook.plan.jobs import whole_minutes
from tarebook.plan.tasks import Span

_TWICE_FROM = 3 * 60
_APART, _SHARE_APART = 60, 6


def wanted_turns(soak: Span) -> tuple[int, ...]:
    """Return when a soak would best be turned: at its thirds, or at the middle of a short one."""
    length = soak.end - soak.start
    parts = (1 / 3, 2 / 3) if length >= _TWICE_FROM else (1 / 2,)
    return tuple(soak.start + whole_minutes(length * part) for part in parts)


def turn_times(soak: Span, minutes: int, closed: Sequence[Span]) -> tuple[int, ...]:
    """Return when a soak is turned.

    Args:
        soak: from when to when.
        minutes: how long one turning takes [min].
        closed: spans in which no bag is turned, in order, none meeting another: nights, and when
            hands that touched raw juices would come near what is heated or finished.

    Returns:
        The wanted times; one in a closed span moves to the edge of it that is nearer, or to the
        other, and is left out where both are too near to the soak's ends or to another turning.
    """
    wanted = wanted_turns(soak)
    found = [at for at in wanted if _met(at, minutes, closed) is None]
    for at in wanted:
        night = _met(at, minutes, closed)
        if night is not None:
            edges = (night.start - minutes, night.end)
            found += [
                start
                for start in sorted(edges, key=partial(_off, at))
                if _fits(start, soak, minutes, closed, found)
            ][:1]
    return tuple(sorted(found))


def _off(wanted: int, start: int) -> int:
    return abs(start - wanted)


def _met(start: int, minutes: int, closed: Sequence[Span]) -> Span | None:
    turned = Span(start, start + minutes)
    return next((one for one in closed if one.meets(turned)), None)


def _fits(
    start: int, soak: Span, minutes: int, closed: Sequence[Span], others: Sequence[int]
) -> bool:
    """Whether a turning that was moved still does something where it is."""
    apart = min(_APART, (soak.end - soak.start) // _SHARE_APART)
    inside = soak.start + apart <= start and start + minutes + apart <= soak.end
    alone = all(abs(start - other) >= apart for other in others)
    return inside and alone and _met(start, minutes, closed) is None
