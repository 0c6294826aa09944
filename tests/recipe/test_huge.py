"""Files made to take long: each is answered soon, with few findings."""

from __future__ import annotations

import time
from collections.abc import Callable

import pytest

from tarebook.recipe import read_recipe

GOOD = 'title = "x"\n[meat]\nfood = "elk"\namount = "1 lb"\n[rub]\nsalt = "3 g"\n'
SIZE = 950_000
SECONDS = 5.0  # four to ten times what was measured, for slow machines


def rows(make: Callable[[int], str], most: int = SIZE) -> str:
    """Return so many letters of rows, each made from its number."""
    text: list[str] = []
    length = 0
    while length < most:
        text.append(make(len(text)))
        length += len(text[-1]) + 1
    return "\n".join(text[:-1]) + "\n"


HUGE = {
    "unknown keys": rows(lambda n: f"key{n} = 1"),
    "unknown sections": rows(lambda n: f"[s{n}]"),
    "lists of tables": rows(lambda n: "[[rub]]"),
    "ingredients": GOOD + rows(lambda n: f'f{n} = "1 cup"'),
    "unknown foods": GOOD + rows(lambda n: f'"soy sause {n} {"garlik " * 20}" = "1 g"', 70_000),
    "faulty lines": rows(lambda n: f"a{n} = 1/2", 60_000),
    "faulty lines, many": rows(lambda n: f"a{n} = 1/2"),
    "keys twice": rows(lambda n: "a = 1", 60_000),
    "a key of many parts": "a" + ".a" * 400_000 + " = 1",
    "keys of many parts": rows(lambda n: f"a{n}{'.a' * 30} = 1"),
    "headers of many parts": rows(lambda n: f"[a{n}{'.a' * 30}]"),
    "points without a key": "a" + ".a" * 400_000,
    "a name of two words far apart": "a" + " " * 400_000 + "b" * 400_000,
    "equals signs": "= " * 400_000,
    "brackets": "[" * SIZE,
    "lists in a list": "a = " + "[" * 400_000,
    "empty lists": "a = [" + "[]," * 300_000 + "]",
    "tables in a table": "a = " + "{a=" * 100_000,
    "an inline table": "a = {" + ",".join(f"k{n}=1" for n in range(80_000)) + "}",
    "a long text": f'title = "{"x" * SIZE}"',
    "escapes": 'title = "' + "\\n" * 450_000 + '"',
    "quotes in a long text": 'title = """' + '"" ' * 300_000 + '"""',
    "quotes": "'" * SIZE,
    "double quotes": '"' * SIZE,
    "a comment": "#" * SIZE,
    "empty lines": "\n" * SIZE + "a = 1",
    "blanks": " " * SIZE + "a = 1",
    "digits": "a = " + "9" * SIZE,
    "digits with lines": "a = " + "9_" * 450_000 + "9",
    "hexadecimal digits": "a = 0x" + "F" * 900_000,
    "decimals": "a = 1." + "9" * 900_000,
    "an exponent": "a = 1e" + "9" * 900_000,
    "a long name": f'[rub]\n"{"k" * 900_000}" = "1 g"\n',
    "a long food": GOOD.replace('"elk"', f'"{"elk " * 200_000}"'),
    "a long amount": GOOD.replace('"3 g"', f'"{"1 g + " * 150_000}1 g"'),
    "a long choice": f'cup = "{"us" * 400_000}"\n{GOOD}',
    "steps": GOOD + "[method]\nsteps = [" + '"a",' * 230_000 + "]",
    "too large": "x" * 1_000_001,
}


@pytest.mark.parametrize("name", HUGE)
def test_huge_files_are_answered_soon(name: str) -> None:
    """Whatever a megabyte holds, an answer of at most a hundred errors comes in seconds."""
    began = time.process_time()
    recipe, findings = read_recipe(HUGE[name], file="huge.toml")
    assert time.process_time() - began < SECONDS
    assert recipe is None
    assert 1 <= len(findings) <= 101
    assert max(len(str(finding)) for finding in findings) < 600
