"""What the cook's own weights tell of a batch.

A batch that came out heavier than was guessed has, as a rule, taken up more. Each draw is moved
along the line that ties a figure to the weights that draw itself foretold, to the weights that the
scale read (the analysis step of an ensemble Kalman filter, on logarithms; Evensen, Ocean Dynamics
53, 2003, 343-367, source id ``evensen-2003``). So a weight narrows every figure tied to it, and
never widens one.

The line holds as far as the draws reach. A batch lighter than any of them has lost more water than
was thought: its salt is that of the lightest draws, and not ever less.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from math import exp, log

from tarebook.tuples import NamedTuple


class Weighing(NamedTuple):
    """One weight from the scale, beside what the draws foretold of it.

    Attributes:
        name: what was weighed, as the findings call it.
        scale_g: what the scale read, with its own doubt, one a draw [g].
        foretold_g: what each draw foretold [g].
    """

    name: str
    scale_g: Sequence[float]
    foretold_g: Sequence[float]


def told(
    figures: Mapping[str, Sequence[float]],
    weighings: Sequence[Weighing],
    *,
    beyond: bool = False,
) -> dict[str, list[float]]:
    """Return figures moved by what the scale says of them.

    Args:
        figures: draws by name, any unit, zero or more.
        weighings: what was weighed; draws in the same order.
        beyond: follow the scale beyond all that was foretold, as what was weighed does itself.

    Returns:
        The moved draws; a figure that is zero in some draw stays as it is.
    """
    foretold = [[log(one) for one in each.foretold_g] for each in weighings]
    scale = [[log(one) for one in each.scale_g] for each in weighings]
    away = [
        [read - guess for read, guess in zip(reads, guesses, strict=True)]
        for reads, guesses in zip(
            scale if beyond else _held(scale, foretold), foretold, strict=True
        )
    ]
    spread = [
        [_product(a, b) + _product(s, t) for b, t in zip(foretold, scale, strict=True)]
        for a, s in zip(foretold, scale, strict=True)
    ]
    return {name: _moved(values, foretold, away, spread) for name, values in figures.items()}


def _held(
    scale: Sequence[Sequence[float]], foretold: Sequence[Sequence[float]]
) -> Iterator[list[float]]:
    """Yield what the scale read, brought within what the draws foretold."""
    for reads, guesses in zip(scale, foretold, strict=True):
        least, most = min(guesses), max(guesses)
        yield [min(max(read, least), most) for read in reads]


def _moved(
    values: Sequence[float],
    foretold: Sequence[Sequence[float]],
    away: Sequence[Sequence[float]],
    spread: Sequence[Sequence[float]],
) -> list[float]:
    if min(values) <= 0:
        return list(values)
    logs = [log(one) for one in values]
    slopes = _solved(spread, [_product(logs, guess) for guess in foretold])
    steps = [
        sum(slope * far for slope, far in zip(slopes, row, strict=True))
        for row in zip(*away, strict=True)
    ]
    return [exp(one + step) for one, step in zip(logs, steps, strict=True)]


def _product(a: Sequence[float], b: Sequence[float]) -> float:
    """Return the sum of products of two lists about their means."""
    middle_a, middle_b = sum(a) / len(a), sum(b) / len(b)
    return sum((x - middle_a) * (y - middle_b) for x, y in zip(a, b, strict=True))


def _solved(matrix: Sequence[Sequence[float]], right: Sequence[float]) -> list[float]:
    """Solve a small symmetric system; two weighings that say the same count once."""
    rows = [[*row, end] for row, end in zip(matrix, right, strict=True)]
    size = len(rows)
    for place in range(size):
        best = max(range(place, size), key=lambda at: abs(rows[at][place]))
        rows[place], rows[best] = rows[best], rows[place]
        pivot = rows[place][place]
        if abs(pivot) < 1e-12:
            return [0.0] * size
        rows[place] = [cell / pivot for cell in rows[place]]
        for other in range(size):
            if other != place:
                factor = rows[other][place]
                rows[other] = [
                    cell - factor * top for cell, top in zip(rows[other], rows[place], strict=True)
                ]
    return [row[-1] for row in rows]
