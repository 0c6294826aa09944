"""Feeds every reader spoiled files and sees that it always answers.

    python tests/fuzz recipe probe --runs 200000

A reader gives a value or a fault that is documented, quickly, in lines that can be shown; what is
written again reads as the same; nothing of a recipe gets out of its place in what is printed. The
same seed makes the same files.
"""

from __future__ import annotations

import argparse
import sys
import time
import traceback

from mutations import mutated
from readers import READERS, Reader, wrong_with

SECONDS_ALLOWED = 1.0
MOST_SHOWN = 10


def main(arguments: list[str]) -> int:
    """Run from the command line; return 1 if anything failed."""
    asked = argparse.ArgumentParser(description=__doc__)
    asked.add_argument("readers", nargs="*", metavar="READER", help=", ".join(READERS))
    asked.add_argument("--runs", type=int, default=20_000, help="of each reader")
    asked.add_argument("--seed", type=int, default=20_261_125)
    given = asked.parse_args(arguments)
    unknown = set(given.readers) - {*READERS}
    if unknown:
        asked.error(f"no reader is called {', '.join(sorted(unknown))}")
    failed = 0
    for name in given.readers or READERS:
        failed += fuzz(name, READERS[name], given.seed, given.runs)
    return 1 if failed else 0


def fuzz(name: str, reader: Reader, seed: int, runs: int) -> int:
    """Try one reader, print what came back, and return how many answers were wrong."""
    values, slowest_s, failures = 0, 0.0, []
    began = time.perf_counter()
    for data in mutated(reader.sources(), f"{seed}:{name}", runs):
        started = time.process_time()
        try:
            wrong, found = wrong_with(reader, data)
            values += bool(found)
        except Exception:  # any other exception is what we are looking for
            wrong = traceback.format_exc()
        took_s = time.process_time() - started
        slowest_s = max(slowest_s, took_s)
        if took_s > SECONDS_ALLOWED:
            wrong = wrong or f"took {took_s:.2f} s"
        if wrong:
            failures.append(f"{wrong}\n  {data[:2000]!r}")
    print(
        f"{name}: {runs:,} executions, {values:,} read, {runs - values:,} refused; "
        f"slowest {slowest_s * 1000:.0f} ms; {len(failures)} failures; "
        f"{time.perf_counter() - began:.0f} s",
        flush=True,
    )
    for failure in failures[:MOST_SHOWN]:
        print(failure[:4000])
    return len(failures)


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
