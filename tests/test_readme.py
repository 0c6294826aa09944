"""README tells the truth: its commands exist, and its examples print what it shows.

After a change of figures or wording, ``python tests/test_readme.py`` writes the examples anew.
"""

from __future__ import annotations

import json
import os
import re
import shlex
import subprocess
import sys
import tempfile
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
import typer

from tarebook.cli.main import program

ROOT = Path(__file__).resolve().parents[1]
README = ROOT / "README.md"
BLOCK = re.compile(r"^```text\n(.*?)^```$", re.M | re.S)
PROMPT = "$ tarebook "
USUAL_HOME = "~/.local/share/tarebook"
DAY = "1795608000"
"""2026-11-25, in the seconds that builds set for pages that must come out the same."""

pytestmark = pytest.mark.skipif(not README.exists(), reason="needs the checkout")


def text() -> str:
    """Return README."""
    return README.read_text(encoding="utf-8")


def examples() -> Iterator[tuple[str, str]]:
    """Yield each command line shown with a prompt, and the output shown below it."""
    for block in BLOCK.findall(text()):
        _, *shown = re.split(rf"^{re.escape(PROMPT)}", block, flags=re.M)
        for one in shown:
            line, _, output = one.partition("\n")
            yield line, output


def printed(line: str) -> str:
    """Return what a command line prints, on standard output and standard error.

    It has a folder of its own, which README calls as Linux does, and one day.
    """
    with tempfile.TemporaryDirectory() as home:
        done = subprocess.run(
            [sys.executable, "-m", "tarebook", *shlex.split(line)],
            stdout=subprocess.PIPE,
            stderr=subprocess.STDOUT,
            cwd=ROOT,
            env={**os.environ, "TAREBOOK_HOME": home, "SOURCE_DATE_EPOCH": DAY},
            encoding="utf-8",
            timeout=60,
        )
        return done.stdout.replace(home, USUAL_HOME)


def commands(group: Any = None, road: tuple[str, ...] = ()) -> Iterator[tuple[str, ...]]:
    """Yield the words of every command of the program."""
    group = typer.main.get_command(program([], whole=True)) if group is None else group
    for name, command in group.commands.items():
        if hasattr(command, "commands"):
            yield from commands(command, (*road, name))
        else:
            yield (*road, name)


def named() -> set[tuple[str, ...]]:
    """Return the commands that README names anywhere."""
    words = re.findall(r"tarebook ((?:(?:foods|batch) )?[a-z]+)", text())
    return {tuple(one.split()) for one in words}


def test_there_are_examples() -> None:
    """README shows real output, a whole card among it."""
    lines = [line for line, _ in examples()]

    assert len(lines) >= 4
    assert any(line.startswith("card ") for line in lines)


@pytest.mark.parametrize(("line", "output"), list(examples()), ids=lambda value: str(value)[:40])
def test_an_example_prints_what_is_shown(line: str, output: str) -> None:
    """Each example, run, prints to the letter what README shows."""
    assert output == printed(line)


def test_every_command_is_named() -> None:
    """Each command of the program stands in README."""
    assert set(commands()) <= named()


def test_every_named_command_is_there() -> None:
    """README names no command that the program does not have."""
    shell = set(re.findall(r"tarebook (?:(?:foods|batch) )?[a-z]+", "\n".join(_code())))
    known = {" ".join(("tarebook", *one)) for one in commands()}

    assert shell <= known | {"tarebook foods"}


def files() -> Iterator[tuple[str, str]]:
    """Yield each command of a shell block that prints a card to a file, and the file."""
    for block in re.findall(r"^```sh\n(.*?)^```$", text(), re.M | re.S):
        for line in block.splitlines():
            if line.startswith("tarebook card ") and " -o " in line:
                yield line.removeprefix("tarebook "), line.rpartition(" -o ")[2]


@pytest.mark.parametrize(("line", "file"), list(files()), ids=lambda value: str(value)[:40])
def test_a_card_that_is_shown_printed_is_printed(line: str, file: str, tmp_path: Path) -> None:
    """Each printing command, run as it stands, writes its file and complains of nothing."""
    command = [sys.executable, "-m", "tarebook", *shlex.split(line)]
    done = subprocess.run(command, cwd=tmp_path, capture_output=True, encoding="utf-8", timeout=60)

    assert (0, f"{file} is written\n") == (done.returncode, done.stderr)
    assert (tmp_path / file).stat().st_size > 5000


def _code() -> Iterator[str]:
    yield from re.findall(r"`([^`\n]+)`", text())
    yield from re.findall(r"^```sh\n(.*?)^```$", text(), re.M | re.S)


def test_the_job_comes_first_and_then_two_commands() -> None:
    """README opens with the job in one paragraph; the first two commands each set themselves up."""
    title, paragraph, *_ = text().split("\n\n")
    first, second = re.findall(r"^```sh\n(.*?)^```$", text(), re.M | re.S)[:2]

    assert "# tarebook" == title and 300 < len(paragraph) < 1000
    assert all("venv" in one and "pip install" in one for one in (first, second))
    assert "tarebook scale" in first and "pytest" in second
    assert text().index("```sh") < text().index("```text")


CALLS = {
    "`scale`, `card`": ["scale", "juniper-venison"],
    "`compare`": ["compare", "juniper-venison", "cabin-rub-elk"],
    "`soak`": ["soak", "juniper-venison"],
    "`kitchen`": ["kitchen"],
    "`plan`": ["plan", "juniper-venison"],
    "`drying`": ["drying", "juniper-venison"],
    "`labels`": ["labels", "juniper-venison"],
    "`list`": ["list"],
    "`target`": ["target", "juniper-venison", "--sodium", "300 mg/oz"],
    "`shop`": ["shop", "juniper-venison"],
    "`probe`": ["probe", "tests/probe/oven.csv"],
    "`bring`": ["bring", "tests/exchange/page.html"],
    "`check`": ["check", "juniper-venison"],
    "`tidy`": ["tidy", "juniper-venison"],
    "`convert`": ["convert", "1 cup", "honey"],
    "`foods find`": ["foods", "find", "honey"],
    "`foods show`": ["foods", "show", "honey"],
    "`foods add`": ["foods", "add", "cove-soy", "--like", "soy-sauce"],
    "`foods own`": ["foods", "own"],
    "`foods remove`": ["foods", "remove", "lake-soy"],
    "`foods lookup`": ["foods", "lookup", "soy", "sauce"],
    "`foods lookup --id`": ["foods", "lookup", "--id", "174278"],
    "`batch start`, and each that writes an entry": ["batch", "note", "turned the bags"],
    "`batch show`": ["batch", "show"],
    "`batch list`": ["batch", "list"],
    "`batch next`": ["batch", "next"],
    "`batch wordings`": ["batch", "wordings", "juniper-venison"],
    "`batch check`": ["batch", "check"],
    "`batch import`": ["batch", "import", "FOLDER/book.toml"],
    "`batch backup`": ["batch", "backup", "FOLDER/again.sqlite3"],
    "`batch restore`": ["batch", "restore", "FOLDER/kept.sqlite3"],
}
BOOK = (
    ["start", "juniper-venison", "--meat", "6lb"],
    ["note", "less pepper", "--next-time"],
    ["export", "-o", "FOLDER/book.toml"],
    ["backup", "FOLDER/kept.sqlite3"],
)
"""What is in the book before the commands of the book are called."""


@pytest.mark.parametrize("row", CALLS)
def test_the_json_keys_are_those_documented(
    row: str, tmp_path: Path, request: pytest.FixtureRequest
) -> None:
    """Every key that README promises is in the JSON, and every key in the JSON is promised."""
    (cell,) = (line.split("|")[2] for line in text().splitlines() if line.startswith(f"| {row} |"))
    promised = set(re.findall(r"`([a-z_0-9]+)`", cell.split("(each with")[0]))
    if row == "`compare`":
        promised = {"variants", "differences"}
    if "lookup" in row:
        request.getfixturevalue("kept_answers")
    if row in ("`foods own`", "`foods remove`"):
        _called(["foods", "add", "lake-soy", "--like", "soy-sauce"], tmp_path)
    for before in BOOK if row.startswith("`batch") else ():
        _called(["batch", *before], tmp_path)
    data = json.loads(_called([*CALLS[row], "--json"], tmp_path))

    assert promised == set(data[0] if isinstance(data, list) else data)


def test_the_book_is_kept_as_shown(tmp_path: Path) -> None:
    """The day that README writes down can be written down so, line by line."""
    (block,) = (
        one for one in re.findall(r"^```sh\n(.*?)^```$", text(), re.M | re.S) if "soak\n" in one
    )
    lines = block.splitlines()

    assert len(lines) > 8
    for line in lines:
        assert b"1." in _called(shlex.split(line)[1:], tmp_path)


def _called(args: list[str], folder: Path) -> bytes:
    """Return what a command prints; FOLDER in its words is a folder of this test."""
    words = [word.replace("FOLDER", str(folder)) for word in args]
    done = subprocess.run(
        [sys.executable, "-m", "tarebook", *words],
        capture_output=True,
        cwd=ROOT,
        check=True,
        timeout=60,
    )
    return done.stdout


def _written_anew(block: re.Match[str]) -> str:
    lines = [one for one in block[1].splitlines() if one.startswith(PROMPT)]
    if not lines:
        return block[0]
    shown = "".join(f"{line}\n{printed(line.removeprefix(PROMPT))}" for line in lines)
    return f"```text\n{shown}```"


if __name__ == "__main__":
    README.write_text(BLOCK.sub(_written_anew, text()), encoding="utf-8")
