"""How long the draws take, and how near the default ones come to twenty thousand.

A script, not a test: machines differ. What is held whatever the machine is in
``tests/nutrition/test_many.py``.

    python tests/benchmarks/draws.py [--recipes 1000]
"""

from __future__ import annotations

import argparse
import resource
import statistics
import time
from collections.abc import Callable
from fractions import Fraction

from tarebook.nutrition import Estimate, Facts, Range, estimate, facts_of
from tarebook.nutrition.estimate import DRAWS
from tarebook.nutrition.model import FIGURES
from tarebook.quantities.drawer import choose_drawer
from tarebook.recipe.load import load_recipe, shipped_recipes
from tarebook.recipe.model import HeatStep
from tarebook.scaling import scale_by_factor
from tarebook.uptake.crank import uptake_fraction
from tarebook.uptake.table import uptake_fractions

RUNS = 9
REFERENCE = 20_000
WEIGHTS = ("finished_g", "yield_fraction", "moisture_fraction", "salt_kept_fraction")


def main() -> None:
    """Time the draws, and print how far the default ones are from twenty thousand."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--recipes", type=int, default=1000)
    asked = parser.parse_args()
    known = {name: facts(name) for name in shipped_recipes()}
    one = known["juniper-venison"]
    first = once(lambda: every(one, None))
    print(f"default range, all figures, the first time: {first:.1f} ms")
    defaults(known, asked.recipes)
    thousands(one)
    fractions()
    agreement(known)


def facts(name: str) -> Facts:
    """Return the facts of a shipped recipe at its own size."""
    return facts_of(scale_by_factor(load_recipe(name)[0], Fraction(1), choose_drawer("basic")))


def defaults(known: dict[str, Facts], recipes: int) -> None:
    """Print what the range shown by default costs."""
    print(f"\ndefault range of all figures, {DRAWS} draws: heat step as it stands, and not stated")
    for name, each in known.items():
        unstated = each._replace(heat=HeatStep.UNSTATED)
        print(
            f"  {name:22}{ms(lambda each=each: every(each, None)):28}"
            f"{ms(lambda unstated=unstated: every(unstated, None))}"
        )
    names = shipped_recipes()
    began = time.perf_counter()
    for place in range(recipes):
        every(known[names[place % len(names)]], None)
    print(f"  {recipes:,} recipes: {time.perf_counter() - began:.1f} s; most memory {megabytes()}")


def thousands(one: Facts) -> None:
    """Print what many draws cost, and whether their memory grows in line with them."""
    import numpy as np  # its own loading is no part of the draws

    assert np.__version__
    first = once(lambda: headline(one, 5000))
    print("\n5,000 draws in arrays")
    print(f"  salt and sugars: {ms(lambda: headline(one, 5000))}; the first time {first:.0f} ms")
    print(f"  all figures:     {ms(lambda: every(one, 5000))}; most memory {megabytes()}")
    for draws in (20_000, 80_000):
        every(one, draws)
        print(f"  {draws:,} draws: most memory {megabytes()}")


def fractions() -> None:
    """Print what an uptake fraction costs, by the series and out of the table."""
    taus = [0.01 * 1.02**place for place in range(DRAWS)]
    alphas = [0.2 + 0.001 * place for place in range(DRAWS)]
    uptake_fractions(taus, alphas)
    series = ms(lambda: list(map(uptake_fraction, taus, alphas)))
    print(f"\n{DRAWS} uptake fractions: by the series {series}, ", end="")
    print(f"from the table {ms(lambda: uptake_fractions(taus, alphas))}")


def agreement(known: dict[str, Facts]) -> None:
    """Print, for each recipe, the figure farthest off at each point, and sodium and sugars."""
    print(f"\noff from {REFERENCE:,} draws, in %, at 5 / 50 / 95 %")
    print(f"  {'':22}{'sodium':20}{'total sugars':20}{'farthest of all ranges shown'}")
    for name, each in known.items():
        shown, many = estimate(each), estimate(each, draws=REFERENCE)
        off = {
            figure: [100 * (a / b - 1) if b else 0.0 for a, b in zip(ours, theirs, strict=True)]
            for figure, ours, theirs in pairs(shown, many)
        }
        worst = max(off, key=lambda figure: max(map(abs, off[figure])))
        told = "".join(f"{signed(off[figure]):20}" for figure in ("sodium_mg", "sugars_g"))
        print(f"  {name:22}{told}{signed(off[worst])}  {worst}")


def pairs(
    shown: Estimate, many: Estimate
) -> list[tuple[str, tuple[float, ...], tuple[float, ...]]]:
    """Return the points of every range that both have."""
    found: list[tuple[str, Range | None, Range | None]] = [
        (figure, shown.per_ounce[figure], many.per_ounce[figure]) for figure in FIGURES
    ]
    found += [(one, getattr(shown, one), getattr(many, one)) for one in WEIGHTS]
    return [
        (name, ours[:3], theirs[:3])
        for name, ours, theirs in found
        if ours is not None and theirs is not None
    ]


def signed(three: list[float]) -> str:
    """Return three numbers with their signs."""
    return " / ".join(f"{one:+.2f}" for one in three)


def headline(known: Facts, draws: int) -> None:
    """Work out sodium and sugars."""
    found = estimate(known, draws=draws).per_ounce
    assert found["sodium_mg"] and found["sugars_g"] and found["added_sugars_g"]


def every(known: Facts, draws: int | None) -> None:
    """Work out every figure."""
    found = estimate(known) if draws is None else estimate(known, draws=draws)
    assert all(found.per_ounce.values())


def ms(work: Callable[[], object]) -> str:
    """Return the median and the slowest of some runs."""
    times = [once(work) for _ in range(RUNS)]
    return f"{statistics.median(times):.2f} ms (slowest {max(times):.2f})"


def once(work: Callable[[], object]) -> float:
    """Return how long one run took [ms]."""
    began = time.perf_counter()
    work()
    return 1000 * (time.perf_counter() - began)


def megabytes() -> str:
    """Return the most memory that this process has had so far."""
    return f"{resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024:.0f} MB"


if __name__ == "__main__":
    main()
