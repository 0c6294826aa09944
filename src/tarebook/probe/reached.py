"""When a temperature was first reached, and how long it was held. No verdict."""

from __future__ import annotations

from tarebook.probe.log import Log, Reading
from tarebook.tuples import NamedTuple

THRESHOLDS_F = (145.0, 160.0, 165.0)
"""Temperatures that published advice names for dried meat [degF]."""


class Reached(NamedTuple):
    """What a log says of one temperature.

    Attributes:
        threshold_f: the temperature [degF].
        first: seconds from the first reading to the first at or above it [s], or None if never.
        longest_s: longest stretch between readings that were all at or above it [s].
        total_s: all such stretches together [s]. Gaps and spikes count for nothing.
    """

    threshold_f: float
    first: float | None
    longest_s: float
    total_s: float


def reached(log: Log, threshold_f: float) -> Reached:
    """Return when a temperature was first read, and for how long every reading was at or above.

    Args:
        log: readings in order.
        threshold_f: [degF].

    Returns:
        Nothing between two readings is guessed: a stretch counts only if both its ends are there.
    """
    after_gaps = {gap.end for gap in log.gaps}
    first: float | None = None
    longest = total = run = 0.0
    last: Reading | None = None
    for one in log.readings:
        if one.seconds in after_gaps:
            last, run = None, 0.0
        if one.spike:
            continue
        if one.temperature_f < threshold_f:
            last, run = None, 0.0
            continue
        if first is None:
            first = one.seconds
        if last is not None:
            step = one.seconds - last.seconds
            run += step
            total += step
            longest = max(longest, run)
        last = one
    return Reached(threshold_f, first, longest, total)
