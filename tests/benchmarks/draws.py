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

from tarebook.nutrition import Facts, estimate, facts_of
from tarebook.nutrition.model import FIGURES
from tarebook.quantities.drawer import choose_drawer
from tarebook.recipe.load import load_recipe, shipped_recipes
from tarebook.scaling import scale_by_factor

RUNS = 9


def main() -> None:
    """Time the draws, and print how far the default ones are from twenty thousand."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--recipes", type=int, default=1000)
    asked = parser.parse_args()
    known = {name: facts(name) for name in shipped_recipes()}
    one = known["juniper-venison"]

    import numpy as np  # its own loading is no part of the draws

    assert np.__version__
    first = once(lambda: headline(one, 5000))
    print(f"5,000 draws, salt and sugars: {ms(lambda: headline(one, 5000))} (first {first:.0f} ms)")
    print(f"5,000 draws, all figures:     {ms(lambda: every(one, 5000))}")
    print(f"default range, all figures:   {ms(lambda: every(one, None))}")
    began = time.perf_counter()
    for place in range(asked.recipes):
        every(known[shipped_recipes()[place % len(known)]], None)
    spent = time.perf_counter() - began
    print(f"{asked.recipes:,} recipes with their default ranges: {spent:.1f} s")
    print(f"most memory: {resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024:.0f} MB")
    print("\nfarthest from 20,000 draws at 5, 50 and 95 %, over all figures")
    for name, each in known.items():
        print(f"  {name:22}{100 * farthest(each):5.2f} %")


def facts(name: str) -> Facts:
    """Return the facts of a shipped recipe at its own size."""
    return facts_of(scale_by_factor(load_recipe(name)[0], Fraction(1), choose_drawer("basic")))


def headline(known: Facts, draws: int) -> None:
    """Work out sodium and sugars."""
    found = estimate(known, draws=draws).per_ounce
    assert found["sodium_mg"] and found["sugars_g"] and found["added_sugars_g"]


def every(known: Facts, draws: int | None) -> None:
    """Work out every figure."""
    found = estimate(known) if draws is None else estimate(known, draws=draws)
    assert all(found.per_ounce.values())


def farthest(known: Facts) -> float:
    """Return the largest relative difference between the default and 20,000 draws [-]."""
    shown, many = estimate(known).per_ounce, estimate(known, draws=20_000).per_ounce
    return max(
        abs(a / b - 1)
        for figure in FIGURES
        if (ours := shown[figure]) and (theirs := many[figure])
        for a, b in zip(ours[:3], theirs[:3], strict=True)
        if b > 1e-9
    )


def ms(work: Callable[[], None]) -> str:
    """Return the median and the slowest of some runs."""
    times = [once(work) for _ in range(RUNS)]
    return f"{statistics.median(times):.1f} ms (slowest {max(times):.1f})"


def once(work: Callable[[], None]) -> float:
    """Return how long one run took [ms]."""
    began = time.perf_counter()
    work()
    return 1000 * (time.perf_counter() - began)


if __name__ == "__main__":
    main()
