"""Ways of spoiling a file: bytes, words, values and lines, the same ones for the same seed."""

from __future__ import annotations

import random
from collections.abc import Callable, Iterator, Sequence

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

Mutate = Callable[[random.Random, bytes, Sequence[bytes]], bytes]


MOST_BYTES = 200_000
"""How long a spoiled file may grow: longer ones only take longer."""


def mutated(sources: Sequence[bytes], seed: str, runs: int) -> Iterator[bytes]:
    """Yield so many spoiled files, made of the sources; the same for the same seed."""
    chance = random.Random(seed)
    for _ in range(runs):
        data = chance.choice(sources)
        for _ in range(chance.choice((1, 1, 1, 2, 3, 8))):
            data = chance.choice(MUTATIONS)(chance, data, sources)[:MOST_BYTES]
        yield data


def _flip(chance: random.Random, data: bytes, _: Sequence[bytes]) -> bytes:
    at = chance.randrange(len(data) + 1)
    return data[:at] + bytes([chance.randrange(256)]) + data[at + 1 :]


def _insert(chance: random.Random, data: bytes, _: Sequence[bytes]) -> bytes:
    at = chance.randrange(len(data) + 1)
    return data[:at] + bytes(chance.choices(range(256), k=chance.randint(1, 4))) + data[at:]


def _delete(chance: random.Random, data: bytes, _: Sequence[bytes]) -> bytes:
    at = chance.randrange(len(data) + 1)
    return data[:at] + data[at + chance.choice((1, 1, 2, 5, 40)) :]


def _repeat(chance: random.Random, data: bytes, _: Sequence[bytes]) -> bytes:
    at = chance.randrange(len(data) + 1)
    piece = data[at : at + chance.choice((1, 3, 20, 200))]
    return data[:at] + piece * chance.choice((2, 2, 3, 50)) + data[at:]


def _splice(chance: random.Random, data: bytes, sources: Sequence[bytes]) -> bytes:
    other = chance.choice(sources)
    return data[: chance.randrange(len(data) + 1)] + other[chance.randrange(len(other)) :]


def _token(chance: random.Random, data: bytes, _: Sequence[bytes]) -> bytes:
    """Put a word of ours in place of one of the file."""
    text = data.decode("utf-8", "replace")
    at = chance.randrange(len(text) + 1)
    end = at
    while end < len(text) and text[end] not in TOKEN_ENDS:
        end += 1
    return (text[:at] + chance.choice(TOKENS) + text[end:]).encode("utf-8", "surrogatepass")


def _value(chance: random.Random, data: bytes, _: Sequence[bytes]) -> bytes:
    """Put a word of ours in place of all that stands behind an equals sign."""
    rows = data.split(b"\n")
    pairs = [at for at, row in enumerate(rows) if b"=" in row]
    if pairs:
        at = chance.choice(pairs)
        name = rows[at].partition(b"=")[0]
        rows[at] = name + b"= " + chance.choice(TOKENS).encode("utf-8", "surrogatepass")
    return b"\n".join(rows)


def _word(chance: random.Random, data: bytes, _: Sequence[bytes]) -> bytes:
    """Put words of ours in place of a text in quotes; the file stays TOML."""
    parts = data.split(b'"')
    if len(parts) > 2:
        parts[2 * chance.randrange(len(parts) // 2) + 1] = chance.choice(WORDS).encode()
    return b'"'.join(parts)


def _rows(chance: random.Random, data: bytes, sources: Sequence[bytes]) -> bytes:
    """Move, double, drop or borrow a line."""
    rows = data.split(b"\n")
    row = rows.pop(chance.randrange(len(rows)))
    kept = chance.choice(([], [row], [row, row], chance.choice(sources).split(b"\n")[:6]))
    at = chance.randrange(len(rows) + 1)
    return b"\n".join(rows[:at] + kept + rows[at:])


def _recode(chance: random.Random, data: bytes, _: Sequence[bytes]) -> bytes:
    text = data.decode("utf-8", "replace")
    encoding = chance.choice(("utf-16", "utf-32", "utf-8-sig", "latin-1", "utf-16-le", "cp037"))
    return text.encode(encoding, "replace")


MUTATIONS: tuple[Mutate, ...] = (
    *(_flip, _insert, _delete, _repeat, _splice, _recode),
    *(_token, _token, _value, _value, _rows, _rows, _rows, _word, _word, _word, _word, _word),
)
"""More of those that leave the file TOML, since they get further in."""
