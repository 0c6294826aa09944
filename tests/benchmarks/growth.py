"""How time and memory grow with what a cook keeps: eight times as much, in three doublings.

A script, not a test. Each kind of thing is made in a folder of its own and read by a command as a
whole process; its processor seconds are told with the power that the last doubling grew by: 1.00
is in proportion.

    python tests/benchmarks/growth.py [recipes foods batches ingredients probe] [--share 1]
"""

from __future__ import annotations

import argparse
import math
import os
import random
import runpy
import subprocess
import tempfile
from collections.abc import Callable, Iterator
from datetime import datetime, timedelta
from pathlib import Path

from tarebook.figures.foods import food, food_keys

HERE = Path(__file__).parent
DOUBLINGS = 3
SPEED = runpy.run_path(str(HERE / "speed.py"))
Lines = dict[str, list[str]]


def main() -> None:
    """Print a curve for each kind of thing that is asked for."""
    asked = _asked()
    for kind in asked.kinds or KINDS:
        whole, make = KINDS[kind]
        print(f"\n{kind}: processor seconds, megabytes and the power of the last doubling")
        curve(max(int(whole * asked.share), 8), make)


def curve(whole: int, make: Callable[[Path, int], Lines]) -> None:
    """Make an eighth, a quarter, a half and the whole, and time the commands on each."""
    before: dict[str, float] = {}
    for size in (whole >> (DOUBLINGS - step) for step in range(DOUBLINGS + 1)):
        with tempfile.TemporaryDirectory() as folder:
            os.environ["TAREBOOK_HOME"] = folder
            for name, args in make(Path(folder), size).items():
                seconds, megabytes = measured([SPEED["_program"](), *args])
                power = math.log2(seconds / before[name]) if name in before else math.nan
                before[name] = seconds
                told = "" if math.isnan(power) else f"{power:7.2f}"
                print(f"{size:9,} {name:24}{seconds:8.2f} s{megabytes:7.0f} MB{told}", flush=True)


def measured(line: list[str]) -> tuple[float, float]:
    """Return the processor seconds of a process and the most memory it held [MB]."""
    silent = subprocess.DEVNULL
    child = subprocess.Popen(line, stdout=silent, stderr=silent, env=SPEED["_environment"]())
    _, status, used = os.wait4(child.pid, 0)
    child.returncode = os.waitstatus_to_exitcode(status)
    if child.returncode:
        raise SystemExit(f"{line[1:]} exits with {child.returncode}")
    return used.ru_utime + used.ru_stime, used.ru_maxrss / 1000


def recipes(home: Path, count: int) -> Lines:
    """Keep recipes of the cook's own; list them twice, and check them."""
    chance = random.Random(20_261_125)
    folder = home / "recipes"
    folder.mkdir()
    for number in range(count):
        text = SPEED["recipe"](chance, number)
        (folder / f"strips-{number:05}.toml").write_text(text, encoding="utf-8")
    listed = ["list", "--under", "300mg"]
    return {"list, first time": listed, "list, again": listed, "check": ["check", str(folder)]}


def foods(home: Path, count: int) -> Lines:
    """Keep bottles of the cook's own; list them, and scale a recipe that names one."""
    folder = home / "foods"
    folder.mkdir()
    for number in range(count):
        (folder / f"lake-soy-{number:04}.toml").write_text(
            'like = "soy-sauce"\n[panel]\nserving = "1 Tbsp (17 g)"\n'
            f'sodium = "{500 + number % 60 * 10} mg"\nsugars = "1 g"\n'
        )
    recipe = home / "one.toml"
    text = SPEED["recipe"](random.Random(1), 1)
    recipe.write_text(text.replace("[marinade]\n", '[marinade]\nlake-soy-0001 = "1/2 cup"\n'))
    return {"foods own": ["foods", "own"], "scale": ["scale", str(recipe)]}


def batches(home: Path, count: int) -> Lines:
    """Keep a batch book; list it, show a batch, and note one thing more."""
    runpy.run_path(str(HERE / "book.py"))["fill"](home / "book.sqlite3", count)
    middle = str(max(count // 2, 1))
    return {
        "batch list": ["batch", "list"],
        "batch show": ["batch", "show", middle],
        "batch note": ["batch", "note", "turned the bags"],
        "batch list --all": ["batch", "list", "--all"],
    }


def ingredients(home: Path, count: int) -> Lines:
    """Write one recipe with so many ingredients; scale it, and print its card."""
    keys = [key for key in food_keys() if not food(key).curing and food(key).kind != "meat"]
    lines = [
        f'"part {n}" = {{ food = "{keys[n % len(keys)]}", amount = "{1 + n % 7} g" }}'
        for n in range(count)
    ]
    head = 'title = "Everything in the cupboard"\n[meat]\nfood = "deer"\namount = "90 lb"\n'
    file = home / "many.toml"
    file.write_text(f"{head}[marinade]\n" + "\n".join(lines) + '\n[soak]\nhours = "8-12"\n')
    paper = ["card", str(file), "--as", "pdf", "-o", str(home / "card.pdf")]
    return {"check": ["check", str(file)], "scale": ["scale", str(file)], "card --as pdf": paper}


def probe(home: Path, count: int) -> Lines:
    """Write a thermometer's log of so many rows, one every two seconds."""
    file = home / "log.csv"
    rows = "".join(f"{at:%Y-%m-%d %H:%M:%S},{warm:.1f}\n" for at, warm in _rows(count))
    file.write_text(f"time,meat F\n{rows}")
    return {"probe": ["probe", str(file), "--in", "meat"]}


def _rows(count: int) -> Iterator[tuple[datetime, float]]:
    start = datetime(2026, 11, 21, 8, 0)
    for number in range(count):
        yield start + timedelta(seconds=2 * number), 40 + 130 * (1 - math.exp(-4 * number / count))


KINDS: dict[str, tuple[int, Callable[[Path, int], Lines]]] = {
    "recipes": (10_000, recipes),
    "foods": (1_000, foods),
    "batches": (100_000, batches),
    "ingredients": (200, ingredients),
    "probe": (50_000, probe),
}


def _asked() -> argparse.Namespace:
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0] if __doc__ else "")
    parser.add_argument("kinds", nargs="*", choices=[[], *KINDS], help="all of them if none")
    parser.add_argument("--share", type=float, default=1.0, help="of the whole size")
    return parser.parse_args()


if __name__ == "__main__":
    main()
