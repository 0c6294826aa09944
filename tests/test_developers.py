"""The guide tells the truth: its code runs, and what it names is there."""

from __future__ import annotations

import doctest
import inspect
import re
from collections.abc import Iterator
from importlib import import_module
from pathlib import Path
from typing import Any

import pytest

import tarebook
from tarebook.cli.main import COMMANDS

SOURCE = Path(tarebook.__file__).parent
ROOT = SOURCE.parents[1]
GUIDE = ROOT / "DEVELOPERS.md"
FENCE = re.compile(r"^```(\w*)\n(.*?)^```$", re.M | re.S)
# Folders that a path in the guide may be said from.
PLACES = (ROOT, SOURCE, ROOT / "reference", ROOT / "tests", ROOT / "tests" / "records")

pytestmark = pytest.mark.skipif(not GUIDE.exists(), reason="needs the checkout")


def guide() -> str:
    """Return the guide."""
    return GUIDE.read_text(encoding="utf-8") if GUIDE.exists() else ""


def section(title: str) -> str:
    """Return what stands under a heading."""
    return guide().partition(f"\n## {title}\n")[2].partition("\n## ")[0]


def rows(title: str) -> list[list[str]]:
    """Return the cells of the table under a heading, without its own heading."""
    lines = [line for line in section(title).splitlines() if line.startswith("| ")]
    return [[cell.strip() for cell in line.strip("|").split("|")] for line in lines[2:]]


def words_in_code() -> Iterator[str]:
    """Yield what the guide sets in backticks, blocks left out."""
    yield from re.findall(r"`([^`\n]+)`", FENCE.sub("", guide()))


def test_every_block_runs_and_prints_what_is_shown() -> None:
    """The tour, run from top to bottom as one session, prints to the letter what it shows."""
    blocks = FENCE.findall(guide())
    test = doctest.DocTestParser().get_doctest(
        "\n".join(code for _, code in blocks), {}, GUIDE.name, str(GUIDE), 0
    )

    assert {language for language, _ in blocks} == {"python"}
    assert len(test.examples) > 30
    told: list[str] = []
    doctest.DocTestRunner(verbose=False).run(test, out=told.append)
    assert told == [], "".join(told)


def test_every_room_is_in_the_table_and_no_other() -> None:
    """Whoever looks for a room finds it, in the table as in the folder."""
    told = {name for row in rows("The rooms") for name in re.findall(r"`(\w+)`", row[0])}
    there = {path.stem for path in SOURCE.iterdir() if path.suffix == ".py" or _is_room(path)}

    assert told == there - {"__init__", "__main__"}


def _is_room(path: Path) -> bool:
    return (path / "__init__.py").exists()


def test_every_file_it_names_is_there() -> None:
    """A path in the guide leads somewhere, from the checkout, the package or the tables."""
    named = {
        word
        for text in words_in_code()
        for word in re.findall(r"(?<![\w.])[\w./-]+\.(?:py|csv|toml|typ|css|txt|u16|md)\b", text)
    }
    named |= {
        word for text in words_in_code() for word in re.findall(r"\btests/\w+(?![\w.])", text)
    }

    assert len(named) > 40
    missing = {one for one in named if not any((at / one).exists() for at in PLACES)}
    assert missing == set()


def test_every_command_it_names_is_there() -> None:
    """A command in the guide can be typed."""
    named = {word for text in words_in_code() for word in re.findall(r"\btarebook (\w+)", text)}

    assert named <= set(COMMANDS)


def public() -> list[str]:
    """Return the names of the public page."""
    return [row[0].strip("`") for row in rows("What a caller may import")]


def found(name: str) -> Any:
    """Return what goes by a name in the package, or fail."""
    module, _, attribute = name.rpartition(".")
    return getattr(import_module(f"tarebook.{module}"), attribute)


@pytest.mark.parametrize("name", public())
def test_what_may_be_imported_says_what_it_takes_and_returns(name: str) -> None:
    """Each name of the public page is there, and its docstring tells a caller all that is asked."""
    one = found(name)
    told = inspect.getdoc(one) or ""

    assert told, "has no docstring"
    if inspect.isclass(one):
        return
    signature = inspect.signature(one)
    arguments = told.partition("Args:")[2]
    for argument in signature.parameters:
        assert re.search(rf"\b{argument}\b", arguments), f"Args does not tell of {argument}"
    if signature.return_annotation not in (None, "None"):
        assert "Returns:" in told or re.match(r"Return|Yield|Open|Carry|Copy", told)


def test_the_public_page_is_in_order_of_the_rooms() -> None:
    """No name stands twice, and each room stands once, so that a reader finds it."""
    of_rooms = [name.partition(".")[0] for name in public()]
    changes = [
        room for before, room in zip(["", *of_rooms], of_rooms, strict=False) if room != before
    ]

    assert len(public()) == len(set(public())) > 60
    assert len(changes) == len(set(changes))
