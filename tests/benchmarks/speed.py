"""How long a cook waits, and how many files a second ``check`` reads.

A script, not a test: machines differ, so each command is told beside a yardstick of the same run,
``python -c "import typer, pint"``.

    python tests/benchmarks/speed.py [--runs 15] [--files 10000] [--pin 0]
"""

from __future__ import annotations

import argparse
import os
import random
import shutil
import statistics
import subprocess
import sys
import tempfile
import time
from collections.abc import Sequence
from pathlib import Path

YARDSTICK = ["-c", "import typer, pint"]
COMMANDS = {
    "scale": ["scale", "juniper-venison", "--meat", "6lb"],
    "card --as text": ["card", "juniper-venison", "--meat", "6lb"],
    "card --as pdf": ["card", "juniper-venison", "--meat", "6lb", "--as", "pdf", "-o", "-"],
    "compare": ["compare", "juniper-venison", "--swap", "soy-sauce=low-sodium-soy"],
    "check": ["check", "juniper-venison"],
    "convert": ["convert", "3/4 cup packed", "brown-sugar"],
    "--help": ["--help"],
    "--version": ["--version"],
}
MOST = {"scale": 0.45, "card --as pdf": 1.2, "--help": 0.35}
LEAST_FILES_A_SECOND, MOST_MEGABYTES = 1000, 200

AMOUNTS = (
    "1 Tbsp",
    "3/4 cup",
    "1 1/2 tsp",
    "2-3 tsp",
    "20 g",
    "½ cup",
    "1 cup + 2 Tbsp",
    "8 fl oz",
)
FOODS = (
    "soy-sauce", "worcestershire", "honey", "cider-vinegar", "onion-powder", "garlic-powder",
    "smoked-paprika", "salt-table", "maple-syrup", "apple-juice", "liquid-smoke", "allspice",
)  # fmt: skip
MEATS = ("deer", "elk", "turkey-breast", "bison-top-round", "salmon-coho", "moose")


def main() -> None:
    """Time the commands and the checker, and print what was found."""
    asked = _asked()
    if asked.pin is not None and hasattr(os, "sched_setaffinity"):
        os.sched_setaffinity(0, {asked.pin})
    print(f"Python {sys.version.split()[0]}, {asked.runs} runs each, taken in turn")
    commands(asked.runs)
    with tempfile.TemporaryDirectory() as folder:
        files(Path(folder), asked.files)


def commands(runs: int) -> None:
    """Print the median of each command as a whole process, and its ratio to the yardstick."""
    python = [sys.executable]
    lines = {"import typer, pint": [*python, *YARDSTICK], "python -c pass": [*python, "-c", "pass"]}
    lines |= {name: [_program(), *args] for name, args in COMMANDS.items()}
    times: dict[str, list[float]] = {name: [] for name in lines}
    for turn in range(runs + 1):
        for name, line in lines.items():
            seconds = _seconds(line)
            if turn:  # the first one warms the disk and writes the byte code
                times[name].append(seconds)
    yard = statistics.median(times["import typer, pint"])
    print(f"{'':20}{'median':>10}{'fastest':>10}{'ratio':>8}")
    for name, found in times.items():
        median = statistics.median(found)
        limit = f"  at most {MOST[name]}" if name in MOST else ""
        ms = f"{1000 * median:7.0f} ms{1000 * min(found):7.0f} ms"
        print(f"{name:20}{ms}{median / yard:8.2f}{limit}")


def files(folder: Path, count: int) -> None:
    """Print how many generated recipe files a second ``check`` reads, and its peak memory."""
    chance = random.Random(20_260_901)
    for number in range(count):
        here = folder / f"{number // 1000:03}"
        here.mkdir(exist_ok=True)
        (here / f"{number:05}.toml").write_text(recipe(chance, number), encoding="utf-8")
    empty = _seconds([_program(), "--version"])
    seconds, megabytes = _measured([_program(), "check", str(folder)])
    print(f"\ncheck of {count:,} files: {seconds:.1f} s, start-up included")
    print(f"{count / (seconds - empty):,.0f} files a second, at least {LEAST_FILES_A_SECOND:,}")
    print(f"{megabytes:.0f} MB at the most, under {MOST_MEGABYTES}")


def recipe(chance: random.Random, number: int) -> str:
    """Return the text of a recipe like those that families keep, no two alike."""
    foods = chance.sample(FOODS, chance.randint(4, 10))
    lines = [
        "#:schema ../reference/recipe.schema.json",
        f'title = "Strips no. {number}"',
        'about = "As we always made them at the lake."',
        "",
        "[meat]",
        f'food = "{chance.choice(MEATS)}"',
        f'amount = "{chance.randint(1, 12)} lb {chance.randint(1, 15)} oz"',
        'thickness = "1/4 in"',
        "",
        "[marinade]",
        *(f'{food} = "{_amount(chance)}"' for food in foods),
        "",
        "[soak]",
        f"hours = {chance.randint(4, 24)}",
        'surface = "drained"',
        "",
        "[heat]",
        'step = "simmered in its marinade"',
        "",
        "[drying]",
        'temperature = "155 F"',
        'hours = "5-8"',
        "",
        "[method]",
        'steps = ["Slice across the grain.", "Soak overnight.", "Simmer, drain and dry."]',
    ]
    return "\n".join(lines) + "\n"


def _amount(chance: random.Random) -> str:
    """Return an amount: one of the common ones, or one that few other recipes have."""
    if chance.random() < 0.5:
        return chance.choice(AMOUNTS)
    return (
        f"{chance.randint(1, 9)} {chance.randint(1, 7)}/8 {chance.choice(('tsp', 'Tbsp', 'cups'))}"
    )


def _program() -> str:
    """Return the installed command of this Python."""
    beside = Path(sys.executable).with_name("tarebook")
    found = str(beside) if beside.exists() else shutil.which("tarebook")
    if not found:
        raise SystemExit("tarebook is not installed: pip install -e .")
    return found


def _environment() -> dict[str, str]:
    """Return the environment, byte code allowed: that is how a cook runs it."""
    return {k: v for k, v in os.environ.items() if k != "PYTHONDONTWRITEBYTECODE"}


def _seconds(line: Sequence[str]) -> float:
    start = time.perf_counter()
    subprocess.run(line, stdout=subprocess.DEVNULL, env=_environment(), check=True)
    return time.perf_counter() - start


def _measured(line: Sequence[str]) -> tuple[float, float]:
    """Return how long a process takes [s] and the most memory it held [MB]."""
    start = time.perf_counter()
    child = subprocess.Popen(line, stdout=subprocess.DEVNULL, env=_environment())
    if hasattr(os, "wait4"):
        _, status, used = os.wait4(child.pid, 0)
        child.returncode = os.waitstatus_to_exitcode(status)
        kilobytes = used.ru_maxrss / (1024 if sys.platform == "darwin" else 1)
    else:
        child.wait()
        kilobytes = float("nan")
    if child.returncode:
        raise SystemExit("check found errors in generated recipes")
    return time.perf_counter() - start, kilobytes / 1000


def _asked() -> argparse.Namespace:
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0] if __doc__ else "")
    parser.add_argument("--runs", type=int, default=15, help="runs of each command")
    parser.add_argument("--files", type=int, default=10_000, help="recipe files to check")
    parser.add_argument("--pin", type=int, help="run on this processor only (Linux)")
    return parser.parse_args()


if __name__ == "__main__":
    main()
