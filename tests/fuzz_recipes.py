"""Mutates recipe files, byte by byte and word by word: no traceback, no hang.

    python tests/fuzz_recipes.py --runs 50000

Every mutated file is read, checked against the safety rules, and, where it still is a recipe,
scaled and estimated. Only the documented exceptions may come out. Prints how many runs there were
and what was found; exits with 1 on any finding.
"""

from __future__ import annotations

import argparse
import sys
import time
import traceback
from collections import Counter
from fractions import Fraction
from random import Random

from tarebook.cards.sheet import sheet
from tarebook.cards.text_card import text_card
from tarebook.cards.worksheet import worksheet
from tarebook.findings import TarebookError
from tarebook.recipe.read import read_recipe
from tarebook.safety import check
from tarebook.where import folder

SLOWEST_S = 1.0
SPICE = [
    b"\x00", b"\xff", b"\xef\xbb\xbf", b"\xe2\x80\xae", b"\r\n", b"=", b"[", b"]", b"{", b"}", b'"',
    b"'", b"#", b"1e999999999", b"-1", b"0", b"nan", b"inf", b"true", b"9" * 400, b"1/0", b"1/2",
    "½".encode(), b"1 cpu", b"cup", b"salt", b"[[marinade]]", b"[meat]", b"amount", b"[" * 300,
    b"a." * 200, b'"""', b"1-", b"to taste", b"a pinch", b"1,5 cup", "٣ cups".encode(), b"e" * 500,
    b"{ food = 1 }", b"panel = { serving = '0 g' }", b"2 to 1 tsp", b"10000 kg", b"1e-300 g",
]  # fmt: skip


def mutate(chance: Random, text: bytes) -> bytes:
    """Return a text with one to four changes."""
    data = bytearray(text)
    for _ in range(chance.randint(1, 4)):
        at = chance.randrange(len(data) + 1)
        match chance.randrange(6):
            case 0:
                data[at:at] = chance.choice(SPICE)
            case 1:
                del data[at : at + chance.randint(1, 30)]
            case 2:
                data[at : at + 1] = bytes([chance.randrange(256)])
            case 3:
                data = _swap_words(chance, data)
            case 4:
                lines = data.split(b"\n")
                lines.insert(chance.randrange(len(lines)), chance.choice(lines))
                data = bytearray(b"\n".join(lines))
            case _:
                data[at : at + chance.randint(1, 12)] = chance.choice(SPICE)
    return bytes(data)


def _swap_words(chance: Random, data: bytearray) -> bytearray:
    words = data.split(b" ")
    place = chance.randrange(len(words))
    words[place] = bytearray(
        chance.choice(SPICE) if chance.random() < 0.5 else chance.choice(words)
    )
    return bytearray(b" ".join(words))


def try_one(data: bytes, *, deep: bool) -> str:
    """Return what became of one file; anything undocumented escapes as an exception."""
    recipe, findings = read_recipe(data, file="fuzz.toml")
    for one in findings:
        str(one)
    if recipe is None:
        assert findings, "a file was refused without a word"
        return "refused"
    check(recipe)
    if deep:
        try:
            done = worksheet(recipe, factor=Fraction(12, 5))
            list(sheet(done))
            list(text_card(done))
        except TarebookError:
            return "read, not scaled"
        return "scaled"
    return "read"


def fuzz(runs: int, seed: int, *, deep_every: int = 5) -> tuple[Counter[str], list[str]]:
    """Return what became of ``runs`` mutated files, and every finding."""
    chance = Random(seed)
    kept = [path.read_bytes() for path in sorted(folder("recipes").glob("*.toml"))]
    outcomes: Counter[str] = Counter()
    found: list[str] = []
    for run in range(runs):
        data = mutate(chance, chance.choice(kept))
        start = time.perf_counter()
        try:
            outcomes[try_one(data, deep=run % deep_every == 0)] += 1
        except Exception:
            found.append(f"run {run}, seed {seed}:\n{traceback.format_exc()}\n{data!r}")
        if time.perf_counter() - start > SLOWEST_S:
            found.append(f"run {run}, seed {seed}: slower than {SLOWEST_S} s\n{data!r}")
    return outcomes, found


def main() -> int:
    """Run from the command line."""
    parser = argparse.ArgumentParser(description="Mutate recipe files.")
    parser.add_argument("--runs", type=int, default=50_000)
    parser.add_argument("--seed", type=int, default=1)
    asked = parser.parse_args()
    outcomes, found = fuzz(asked.runs, asked.seed)
    print(f"{asked.runs:,} files: " + ", ".join(f"{n:,} {what}" for what, n in outcomes.items()))
    print(f"{len(found)} findings")
    for one in found[:5]:
        print(one)
    return 1 if found else 0


if __name__ == "__main__":
    sys.exit(main())
