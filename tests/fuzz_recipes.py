"""Feeds the recipe reader mutated recipe files and sees that it always answers.

    python tests/fuzz_recipes.py --runs 50000

Every run must give a recipe or at least one error, quickly, with findings that fit on one visible
line. A recipe that is given must survive being written and read again; it is checked against the
safety rules, and every third one goes all the way to its card. Only the documented exceptions may
come out. The same seed makes the same files.
"""

from __future__ import annotations

import argparse
import random
import sys
import time
import traceback
from collections import Counter
from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass, field
from fractions import Fraction

from tarebook.cards.sheet import sheet
from tarebook.cards.text_card import text_card
from tarebook.cards.worksheet import worksheet
from tarebook.findings import Severity, TarebookError
from tarebook.recipe import Recipe, read_recipe
from tarebook.recipe.write import to_toml
from tarebook.safety import check
from tarebook.where import folder

SECONDS_ALLOWED = 1.0
CARD_EVERY = 3

KITCHEN_SINK = r"""
#:schema ../reference/recipe.schema.json
title = 'All of "it"'
about = '''
Two lines,
# not a comment'''
cup = "metric"
[meat]
food = "Venison" # by another name
amount = "2 kg 300 g"
thickness = "5–7 mm"
form = "ground"
wild = false
[mixed-in]
"dark \"soy\"" = { food = "soy-sauce", amount = "1 cup plus 2 T", scale = "fixed", note = "ö" }
brown-sugar.amount = "¼ cup packed"
bottle.food = "shoyu"
bottle.amount = "2 oz"
bottle.panel = { serving = "1 Tbsp (17 g)", sodium = "575 mg", sugars = "1 g" }
[mixed-in.curing-salt]
amount = "4 g"
strength = "5.9 %"
[rub]
black-pepper = "to taste"
[soak]
hours = 0.5
surface = "lifted out"
poured-away = false
[heat]
step = "simmered in its marinade"
[drying]
temperature = "60-70 °C"
hours = "5 to 8 h"
yield = "1/3-1/2 %"
[method]
steps = ["Mix.", # first
  "Form.", '''Dry.''' ]
notes = []
"""

SMALLEST = 'title="x"\n[meat]\nfood="elk"\namount="1lb"\n[rub]\nsalt="1 tsp"'

TOKENS = (
    *"\"'[]{}=,.#\n\r\t\0 -+/½⅓⁄–“”°µ×é中\ufeff\u202e\x1b\x9b\U0001f356",
    *("'''", '"""', "[[", "]]", "\\", "\\u0000", "\\ud800", "\r\n", "= 1/2", "= ½", "= 1 cup"),
    *("true", "false", "nan", "-inf", "1e999999999", "1e-400", "0.0", "-1", "9" * 25, "9" * 5000),
    *("0x" + "F" * 500, "1979-05-27", "07:32:00", "1979-05-27 07:32:00Z", "1_000", "+3"),
    *('"0 cups"', '"-2 tsp"', '"1 cpu"', '"3"', '"999999999 lb"', '"1/0 cup"', '"a pinch"'),
    *('"to taste"', '"2-3 T"', '"6 lb 4 oz"', '"1,5 cups"', '"6.25 %"', '"155"', '"8-5"', '""'),
    *("title", "meat", "food", "amount", "marinade", "rub", "soak", "hours", "panel", "strength"),
    *("soy-sauce", "curing-salt-2", "curing-salt-1", "salt", "deer", "dear", "scael", "[meat]"),
    *("[marinade]", "[[rub]]", "[method.steps]", "a.b.c.d.e.f.g.h.i.j.k = 1", "{ amount = 3 }"),
    *("[" * 400, "{a=" * 300, "a." * 60, "." * 200, "x" * 3000, "\n" * 500, "# " + "y" * 900),
)

WORDS = (
    *("1 T", "2 oz", "½ cup", "1-1/2 tsp", "1-2-3 cups", "2–3 T", "a pinch", "to taste", "0"),
    *("1e9 g", "1/0 cup", "1,5 kg", "999 gallons", "3", "cup", "1 cpu", "6 lb 4 oz", "1 in"),
    *("6.25 %", "101 %", "0 %", "25", "1/3 %", "155 F", "155 K", "-40 C", "8-12", "12-8", "-1 g"),
    *("us", "metric", "strips", "ground", "fixed", "whole", "with meat", "drained", "Drained"),
    *("elk", "shoyu", "SOY  sauce", "curing-salt", "curing-salt-2", "honey", "salt", "dear", " "),
    *("1 Tbsp (17 g)", "17 g", "9 crackers", "575 mg", "0.5 g", "<1 g", "10 kcal", "packed"),
    *("1" * 70, "1 cup + " * 60, "é" * 300, "½" * 30, "a" * 5000, "1 " * 90, "٣ cups", "１ cup"),
    *("2 days", "5 mm", "\\u001b", "\\n", "\\\\", "#", "[x]", "x = 1"),
)

TOKEN_ENDS = frozenset(" \n\t=,[]{}\"'#.")

Mutate = Callable[[random.Random, bytes, list[bytes]], bytes]


@dataclass
class Tally:
    """What has come back so far."""

    runs: int = 0
    recipes: int = 0
    cards: int = 0
    codes: Counter[str] = field(default_factory=Counter)
    slowest_s: float = 0.0
    failures: list[str] = field(default_factory=list)

    def __str__(self) -> str:
        """Return the tally for a person to read."""
        codes = "".join(f"  {count:>9,}  {code}\n" for code, count in self.codes.most_common())
        return (
            f"{self.runs:,} executions: {self.recipes:,} recipes, "
            f"{self.runs - self.recipes:,} refused, {self.cards:,} cards\n"
            f"{sum(self.codes.values()):,} findings:\n{codes}"
            f"slowest {self.slowest_s * 1000:.0f} ms\n{len(self.failures)} failures\n"
        )


def texts() -> list[bytes]:
    """Return the recipes to start from: the shipped ones and two of our own."""
    shipped = sorted(folder("recipes").glob("*.toml"))
    own = [KITCHEN_SINK, SMALLEST, KITCHEN_SINK.replace("\n", "\r\n")]
    return [path.read_bytes() for path in shipped] + [text.encode() for text in own]


def mutated(seed: int, runs: int) -> Iterator[bytes]:
    """Yield so many mutated files, the same ones for the same seed."""
    chance = random.Random(seed)
    sources = texts()
    for _ in range(runs):
        data = chance.choice(sources)
        for _ in range(chance.choice((1, 1, 1, 2, 3, 8))):
            data = chance.choice(MUTATIONS)(chance, data, sources)
        yield data


def fuzz(files: Iterable[bytes]) -> Tally:
    """Read every file and tell what came back; failures carry the file."""
    tally = Tally()
    for data in files:
        began = time.perf_counter()
        try:
            wrong = _wrong(data, tally)
        except Exception:  # any exception is what we are looking for
            wrong = traceback.format_exc()
        took_s = time.perf_counter() - began
        tally.runs += 1
        tally.slowest_s = max(tally.slowest_s, took_s)
        if took_s > SECONDS_ALLOWED:
            wrong = wrong or f"took {took_s:.2f} s"
        if wrong:
            tally.failures.append(f"{wrong}\n  {data!r}")
    return tally


def _wrong(data: bytes, tally: Tally) -> str:
    """Return what is wrong with the answer to a file, or nothing."""
    recipe, findings = read_recipe(data, file="fuzz.toml")
    tally.codes.update(finding.code for finding in findings)
    errors = [finding for finding in findings if finding.severity is Severity.ERROR]
    if (recipe is None) is not bool(errors):
        return "neither a recipe nor an error, or both"
    for finding in findings:
        if not str(finding).isprintable() or len(str(finding)) > 800:
            return f"a finding of more than one visible line: {finding!r}"
    lines = data.count(b"\n") + 1
    if any(not 1 <= (finding.place.line or 1) <= lines for finding in findings):
        return "a line that is not in the file"
    if recipe is None:
        return ""
    tally.recipes += 1
    again, _ = read_recipe(to_toml(recipe), file="fuzz.toml")
    check(recipe)
    if tally.recipes % CARD_EVERY == 0:
        tally.cards += _card(recipe)
    return "" if recipe == again else "written and read again it is another recipe"


def _card(recipe: Recipe) -> bool:
    """Take a recipe all the way to its card; return whether it could be scaled."""
    try:
        done = worksheet(recipe, factor=Fraction(12, 5))
        return bool(list(sheet(done)) and list(text_card(done)))
    except TarebookError:
        return False


def _flip(chance: random.Random, data: bytes, _: list[bytes]) -> bytes:
    at = chance.randrange(len(data) + 1)
    return data[:at] + bytes([chance.randrange(256)]) + data[at + 1 :]


def _insert(chance: random.Random, data: bytes, _: list[bytes]) -> bytes:
    at = chance.randrange(len(data) + 1)
    return data[:at] + bytes(chance.choices(range(256), k=chance.randint(1, 4))) + data[at:]


def _delete(chance: random.Random, data: bytes, _: list[bytes]) -> bytes:
    at = chance.randrange(len(data) + 1)
    return data[:at] + data[at + chance.choice((1, 1, 2, 5, 40)) :]


def _repeat(chance: random.Random, data: bytes, _: list[bytes]) -> bytes:
    at = chance.randrange(len(data) + 1)
    piece = data[at : at + chance.choice((1, 3, 20, 200))]
    return data[:at] + piece * chance.choice((2, 2, 3, 50)) + data[at:]


def _splice(chance: random.Random, data: bytes, sources: list[bytes]) -> bytes:
    other = chance.choice(sources)
    return data[: chance.randrange(len(data) + 1)] + other[chance.randrange(len(other)) :]


def _token(chance: random.Random, data: bytes, _: list[bytes]) -> bytes:
    """Put a word of ours in place of one of the file."""
    text = data.decode("utf-8", "replace")
    at = chance.randrange(len(text) + 1)
    end = at
    while end < len(text) and text[end] not in TOKEN_ENDS:
        end += 1
    return (text[:at] + chance.choice(TOKENS) + text[end:]).encode("utf-8", "surrogatepass")


def _value(chance: random.Random, data: bytes, _: list[bytes]) -> bytes:
    """Put a word of ours in place of all that stands behind an equals sign."""
    rows = data.split(b"\n")
    pairs = [at for at, row in enumerate(rows) if b"=" in row]
    if pairs:
        at = chance.choice(pairs)
        name = rows[at].partition(b"=")[0]
        rows[at] = name + b"= " + chance.choice(TOKENS).encode("utf-8", "surrogatepass")
    return b"\n".join(rows)


def _word(chance: random.Random, data: bytes, _: list[bytes]) -> bytes:
    """Put words of ours in place of a text in quotes; the file stays TOML."""
    parts = data.split(b'"')
    if len(parts) > 2:
        parts[2 * chance.randrange(len(parts) // 2) + 1] = chance.choice(WORDS).encode()
    return b'"'.join(parts)


def _rows(chance: random.Random, data: bytes, sources: list[bytes]) -> bytes:
    """Move, double, drop or borrow a line."""
    rows = data.split(b"\n")
    row = rows.pop(chance.randrange(len(rows)))
    kept = chance.choice(([], [row], [row, row], chance.choice(sources).split(b"\n")[:6]))
    at = chance.randrange(len(rows) + 1)
    return b"\n".join(rows[:at] + kept + rows[at:])


def _recode(chance: random.Random, data: bytes, _: list[bytes]) -> bytes:
    text = data.decode("utf-8", "replace")
    encoding = chance.choice(("utf-16", "utf-32", "utf-8-sig", "latin-1", "utf-16-le", "cp037"))
    return text.encode(encoding, "replace")


MUTATIONS: tuple[Mutate, ...] = (
    *(_flip, _insert, _delete, _repeat, _splice, _recode),
    *(_token, _token, _value, _value, _rows, _rows, _rows, _word, _word, _word, _word, _word),
)
"""More of those that leave the file TOML, since they get further in."""


def main(arguments: list[str]) -> int:
    """Run from the command line; return 1 if anything failed."""
    asked = argparse.ArgumentParser(description=__doc__)
    asked.add_argument("--runs", type=int, default=50_000)
    asked.add_argument("--seed", type=int, default=20_261_125)
    given = asked.parse_args(arguments)
    tally = fuzz(mutated(given.seed, given.runs))
    print(f"seed {given.seed}\n{tally}", end="")
    for failure in tally.failures[:20]:
        print(failure[:4000])
    return 1 if tally.failures else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
