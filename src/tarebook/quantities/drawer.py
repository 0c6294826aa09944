"""What is in the kitchen drawer, and how to measure a volume with the fewest scoops.

The least scoop count is found exactly, for any volume, without a table of all volumes up to it.
With L the largest tool, n scoops of sizes u₁ … uₙ fall short of n L by their *shortfall*
Σ (L − uᵢ). The largest tool adds none, so the totals of n scoops are n L less the shortfalls of up
to n smaller scoops. Those shortfalls are kept as bits of a whole number, one number for each count
of smaller scoops: shifting it adds a scoop to all of them at once. A volume of 200 cups then costs
no more than one of 2.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from fractions import Fraction
from functools import cache, lru_cache
from math import ceil, floor, gcd, lcm
from types import MappingProxyType

from tarebook.findings import AskedWrongly, QuantityError, nearest
from tarebook.quantities.number import format_fraction
from tarebook.quantities.units import factor, unit_text
from tarebook.tuples import NamedTuple

__all__ = ["DRAWERS", "Drawer", "Scoops", "Tool", "choose_drawer", "measure"]


class Tool(NamedTuple):
    """One spoon or cup.

    Attributes:
        size: how many of ``unit`` it holds (1/2 for a half cup).
        unit: our name of the unit.
        called: what is printed for it, where that is not size and unit.
    """

    size: Fraction
    unit: str
    called: str = ""

    @property
    def name(self) -> str:
        """A name without spaces, for machines (``1/2-cup``)."""
        return f"{self.size}-{self.unit}"

    @property
    def label(self) -> str:
        """What is printed for one (``1/2 cup``)."""
        return self.called or f"{format_fraction(self.size)} {unit_text(self.unit, self.size)}"

    @property
    def volume_ml(self) -> Fraction:
        """What it holds, level [mL], exact."""
        return self.size * factor(self.unit, "milliliter")

    def times(self, count: int) -> str:
        """Return what is printed for several (``2 cups``, ``2 x 1/4 cup``)."""
        if count == 1:
            return self.label
        if self.size == 1 and not self.called:
            return f"{count} {unit_text(self.unit, count)}"
        return f"{count} x {self.label}"


class Drawer(NamedTuple):
    """A set of spoons and cups.

    Attributes:
        name: what a cook chooses it by.
        tools: what is in it, the largest first; at least one.
    """

    name: str
    tools: tuple[Tool, ...]

    def __hash__(self) -> int:
        """Hash by name alone: quick, and drawers of one name are then told apart by their tools."""
        return hash(self.name)


class Scoops(NamedTuple):
    """What to take from the drawer.

    Attributes:
        parts: how many of which tool, the largest first.
        volume_ml: what they hold together [mL], exact.
        error: how far that is from the volume asked for, signed [-], exact.
        within: whether the error is inside the tolerance; if not, nothing in the drawer is nearer.
    """

    parts: tuple[tuple[int, Tool], ...]
    volume_ml: Fraction
    error: Fraction
    within: bool

    @property
    def how_many(self) -> int:
        """How many scoops there are."""
        return sum(count for count, _ in self.parts)

    def __str__(self) -> str:
        """Return them as printed: ``2 cups + 1/3 cup + 1 Tbsp``."""
        return " + ".join(tool.times(count) for count, tool in self.parts)


def measure(volume_ml: Fraction, drawer: Drawer, tolerance: Fraction) -> Scoops:
    """Return the fewest scoops that measure a volume closely enough.

    Args:
        volume_ml: volume wanted [mL], above zero, exact.
        drawer: the spoons and cups in the house.
        tolerance: how far off is close enough [-], 0 or more and under 1.

    Returns:
        The fewest scoops inside the tolerance; among those the fewest different tools, the
        smallest error, the smaller total. Where nothing is inside it, the nearest volume that the
        drawer reaches, marked so.

    Raises:
        QuantityError: volume or tolerance is outside its range.

    Example:
        >>> str(measure(Fraction(600), DRAWERS["basic"], Fraction(2, 100)))
        '2 cups + 1/2 cup'
        >>> str(measure(Fraction(300), DRAWERS["metric"], Fraction(2, 100)))
        '250 mL + 3 x 15 mL'
    """
    if volume_ml <= 0:
        raise QuantityError("a volume to measure must be above zero")
    if not 0 <= tolerance < 1:
        raise QuantityError("a tolerance is 0 or more, and under 1")
    return _measured(Fraction(volume_ml), drawer, Fraction(tolerance))


def choose_drawer(name: str) -> Drawer:
    """Return the spoons and cups that go by a name.

    Args:
        name: ``basic``, ``metric`` or another of ``DRAWERS``, in any case.

    Raises:
        AskedWrongly: no drawer is called so; says what is.
    """
    try:
        return DRAWERS[name.strip().lower()]
    except KeyError:
        near = nearest(name, DRAWERS)
        tail = f"did you mean {near[0]}?" if near else f"there are {', '.join(DRAWERS)}"
        raise AskedWrongly(f'no drawer is called "{name[:40]}"; {tail}') from None


def _drawer(name: str, **sizes: str) -> Drawer:
    """Return a drawer: for each unit the sizes there are, the largest first."""
    tools = [
        Tool(size=Fraction(size), unit=unit)
        for unit, listed in sizes.items()
        for size in listed.split()
    ]
    return Drawer(name=name, tools=tuple(tools))


DRAWERS: Mapping[str, Drawer] = MappingProxyType(
    {
        "basic": _drawer("basic", cup="1 1/2 1/3 1/4", tablespoon="1", teaspoon="1 1/2 1/4"),
        "full": _drawer(
            "full",
            cup="1 3/4 2/3 1/2 1/3 1/4 1/8",
            tablespoon="1 1/2",
            teaspoon="1 3/4 1/2 1/4 1/8 1/16",
        ),
        "metric": Drawer(
            name="metric",
            tools=(
                Tool(size=Fraction(1), unit="metric_cup", called="250 mL"),
                Tool(size=Fraction(1, 2), unit="metric_cup", called="125 mL"),
                Tool(size=Fraction(1, 3), unit="metric_cup", called="83 mL (1/3 cup)"),
                Tool(size=Fraction(1, 4), unit="metric_cup", called="62.5 mL (1/4 cup)"),
                Tool(size=Fraction(15), unit="milliliter"),
                Tool(size=Fraction(5), unit="milliliter"),
                Tool(size=Fraction(5, 2), unit="milliliter", called="2.5 mL"),
                Tool(size=Fraction(1), unit="milliliter", called="1 mL"),
            ),
        ),
    }
)
"""The drawers we know: the common US set, the full US set, and metric spoons with a 250 mL cup."""


# A US cup is 768 steps and a metric one 1500; mixed, they have no common step worth the name.
_MOST_STEPS = 20_000

# What the search looks for in a combination, the weightiest first.
_Key = tuple[int, int, Fraction, int]


class _Grid:
    """One drawer in whole steps, with the shortfalls worked out so far.

    ``level[m][i]`` has a bit for every shortfall that ``m`` scoops reach with tools from ``i`` on.
    """

    def __init__(self, drawer: Drawer) -> None:
        if not drawer.tools or any(tool.size <= 0 for tool in drawer.tools):
            raise QuantityError("a drawer holds at least one tool, and each holds something")
        by_volume = {tool.volume_ml: tool for tool in drawer.tools}  # each volume once
        volumes = sorted(by_volume, reverse=True)
        self.tools = [by_volume[volume] for volume in volumes]
        self.step_ml = _common_step(volumes)
        if volumes[0] / self.step_ml > _MOST_STEPS:
            raise QuantityError(f'drawer "{drawer.name}" mixes measures of two traditions')
        self.sizes = [int(volume / self.step_ml) for volume in volumes]
        self.largest = self.sizes[0]
        self.short = [self.largest - size for size in self.sizes]
        self.level = [[1] * (len(self.sizes) + 1)]
        # From here up every whole step is reached (Schur's bound on the coin problem).
        self.all_from = (self.sizes[-1] - 1) * (self.largest - 1)
        self._reached = self._reach(self.all_from)

    def fewest(self, low: int, high: int) -> list[tuple[int, ...]]:
        """Return every combination of the fewest scoops with a total from low to high steps.

        Some total between them must be reachable.
        """
        scoops = max(1, -(-low // self.largest))
        while True:
            least = scoops * self.largest - high
            most = scoops * self.largest - low
            found = [
                (scoops - smaller, *counts)
                for smaller in range(self._most_smaller(scoops, most) + 1)
                for counts in self._combinations(1, smaller, least, most)
            ]
            if found:
                return found
            scoops += 1

    def nearest(self, steps: Fraction) -> list[int]:
        """Return the reachable total next to a number of steps, or both where they tie."""
        below, above = floor(steps), ceil(steps)
        while below > 0 and not self.reaches(below):
            below -= 1
        while not self.reaches(above):
            above += 1
        if below <= 0 or above - steps < steps - below:
            return [above]
        return [below] if steps - below < above - steps else [below, above]

    def reaches(self, total: int) -> bool:
        """Return whether any scoops hold exactly so many steps."""
        return total > 0 and (total >= self.all_from or bool(self._reached >> total & 1))

    def reaches_between(self, low: int, high: int) -> bool:
        """Return whether any scoops hold a total from low to high steps."""
        if high < low or high <= 0:
            return False
        return high >= self.all_from or bool(_window(self._reached, max(low, 1), high))

    def _most_smaller(self, scoops: int, most: int) -> int:
        """Return how many scoops of smaller tools a shortfall leaves room for."""
        if len(self.sizes) == 1:
            return 0
        return min(scoops, most // self.short[1])

    def _combinations(
        self, tool: int, scoops: int, least: int, most: int
    ) -> Iterator[tuple[int, ...]]:
        """Yield the counts of tools from ``tool`` on with a shortfall from least to most."""
        if not _window(self._levels(scoops)[scoops][tool], max(least, 0), most):
            return
        if tool == len(self.sizes):
            yield ()
            return
        short = self.short[tool]
        for count in range(min(scoops, most // short) + 1):
            for rest in self._combinations(
                tool + 1, scoops - count, least - count * short, most - count * short
            ):
                yield (count, *rest)

    def _levels(self, scoops: int) -> list[list[int]]:
        """Return the levels, worked out at least up to that many scoops."""
        tools = len(self.sizes)
        while len(self.level) <= scoops:
            above, here = self.level[-1], [0] * (tools + 1)
            for tool in range(tools - 1, 0, -1):
                here[tool] = here[tool + 1] | above[tool] << self.short[tool]
            self.level.append(here)
        return self.level

    def _reach(self, limit: int) -> int:
        """Return a number with a bit for every total up to a limit that any scoops hold."""
        bits, mask = 1, (1 << (limit + 1)) - 1
        for size in self.sizes:
            shift = size
            while shift <= limit:  # 1, 2, 4 … scoops of this size
                bits |= bits << shift & mask
                shift *= 2
        return bits


def _window(bits: int, low: int, high: int) -> int:
    """Return the bits from low to high, or zero where there are none."""
    return bits >> low & (1 << (high - low + 1)) - 1 if high >= low else 0


def _common_step(volumes: list[Fraction]) -> Fraction:
    """Return the largest volume of which every tool holds a whole number [mL]."""
    bottom = lcm(*(volume.denominator for volume in volumes))
    return Fraction(gcd(*(int(volume * bottom) for volume in volumes)), bottom)


@cache
def _grid(drawer: Drawer) -> _Grid:
    return _Grid(drawer)


@lru_cache(maxsize=1024)
def _measured(volume_ml: Fraction, drawer: Drawer, tolerance: Fraction) -> Scoops:
    grid = _grid(drawer)
    steps = volume_ml / grid.step_ml
    low, high = ceil(steps * (1 - tolerance)), floor(steps * (1 + tolerance))
    within = grid.reaches_between(low, high)
    ranges = [(low, high)] if within else [(one, one) for one in grid.nearest(steps)]
    best = min(
        (counts for first, last in ranges for counts in grid.fewest(first, last)),
        key=lambda counts: _key(counts, grid.sizes, steps),
    )
    parts = ((count, tool) for count, tool in zip(best, grid.tools, strict=True) if count)
    total_ml = _total(best, grid.sizes) * grid.step_ml
    return Scoops(
        parts=tuple(parts),
        volume_ml=total_ml,
        error=total_ml / volume_ml - 1,
        within=within,
    )


def _key(counts: tuple[int, ...], sizes: list[int], steps: Fraction) -> _Key:
    total = _total(counts, sizes)
    return sum(counts), sum(1 for count in counts if count), abs(total - steps), total


def _total(counts: tuple[int, ...], sizes: list[int]) -> int:
    return sum(count * size for count, size in zip(counts, sizes, strict=True))
