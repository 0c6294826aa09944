"""Asks the real service, once in a while and by hand, whether it still answers as documented.

``python tests/lookup/live.py`` asks four questions with your key, or with the demonstration key,
keeps nothing, and prints what came. No test runs it: tests use no network.
"""

from __future__ import annotations

import sys
import tempfile
from pathlib import Path

from tarebook.findings import TarebookError
from tarebook.lookup.client import Client
from tarebook.lookup.key import find_key


def main() -> int:
    """Print what was found of plain foods and of labels; 1 where sodium is not known of either."""
    found_sodium = True
    with (
        tempfile.TemporaryDirectory() as folder,
        Client(find_key(), file=Path(folder) / "live.sqlite3") as table,
    ):
        for labels in (False, True):
            hits = table.search("soy sauce", labels=labels).found
            kind = "labels" if labels else "plain foods"
            print(f"{kind}: {hits.total} found, {len(hits.foods)} read, {hits.unread} not read")
            food = table.food(hits.foods[0].fdc_id).found
            known = {name: float(one) for name, one in food.figures.items() if one is not None}
            print(f"  {food.fdc_id}, {food.kind}, per {food.per}: {food.description}")
            print(f"  figures {known}")
            print(f"  remarks {food.remarks}; serving {food.serving}; {food.portions}")
            found_sodium = found_sodium and "sodium_mg" in known
    return 0 if found_sodium else 1


if __name__ == "__main__":
    try:
        sys.exit(main())
    except TarebookError as fault:
        sys.exit(f"not reached: {fault}")
