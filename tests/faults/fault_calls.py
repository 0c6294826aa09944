"""Every command with one real call of it, and the places in that call where a file stands.

All of it is found out: commands from the program, the call from the example in a command's help,
what it reads and writes from its parameters. A new command falls in by itself.
"""

from __future__ import annotations

import inspect
import re
import shlex
from collections.abc import Iterator
from functools import cache
from pathlib import Path
from typing import Any, NamedTuple

import typer

from tarebook.cli.main import program

Road = tuple[str, ...]

_READS = ("RECIPE", "FILES", "FOLDERS", "LOG", "FILE")
_TIMES = ("WHEN", "DAY", "FROM-TO")
_FREE = "StringParamType"
_ANSWERS = (
    "Island strips", "", "venison", "2 1/2 lb", "strips", "1/4 in", "3/4 cup soy sauce", "", "",
    "10-14", "patted", "oven after drying", "155 F", "5-8", "Slice.", "", "",
)  # fmt: skip
_TYPED = {("new",): _ANSWERS}
_SPEAKS_ONLY = ("as_", "as_json")
ASKING = {
    ("new",): ["new", "ours.toml"],
    ("kitchen",): ["kitchen", "ask"],
    ("foods", "add"): ["foods", "add", "lake-soy"],
}
"""Calls that ask at the terminal."""


class Slot(NamedTuple):
    """A place in a call where a file's name stands.

    Attributes:
        name: of the parameter.
        option: what leads to it; empty for an argument.
        many: whether it takes several.
        writes: whether the file is made there, and not read.
        folder_too: whether a folder will do as well.
        by_name: whether what is no file counts as a name in the book.
    """

    name: str
    option: str
    many: bool
    writes: bool
    folder_too: bool
    by_name: bool


@cache
def commands() -> dict[Road, Any]:
    """Return every command of the program by the words that lead to it."""
    return dict(_commands(typer.main.get_command(program([], whole=True)), ()))


def _commands(group: Any, road: Road) -> Iterator[tuple[Road, Any]]:
    for name, command in group.commands.items():
        if hasattr(command, "commands"):
            yield from _commands(command, (*road, name))
        else:
            yield (*road, name), command


def call_of(road: Road) -> list[str]:
    """Return the words of a call that works, as the command's help shows it."""
    found = re.search(r"Example: tarebook (.*)", commands()[road].help)
    assert found, f"{' '.join(road)} shows no example"
    return shlex.split(found[1])


def typed_for(road: Road) -> bytes:
    """Return what is typed for the example of a command, where it asks."""
    return "".join(f"{line}\n" for line in _TYPED.get(road, ())).encode()


def named_in_examples(tests: Path) -> list[Path]:
    """Return the files of the other rooms' tests that an example names, as a log or a page."""
    words = {word for road in commands() for word in call_of(road) if Path(word).suffix}
    return [one for word in sorted(words) for one in sorted(tests.glob(f"*/{word}"))]


def slots_of(road: Road) -> list[Slot]:
    """Return where files stand in the call of a command."""
    return [_slot(road, one) for one in commands()[road].params if _names_file(one)]


def named_in(road: Road, slot: Slot, file: str) -> list[str]:
    """Return the call of a command with a file of ours in one of its places."""
    words = call_of(road)
    if slot.option:
        at = next((i for i, word in enumerate(words) if word in _spellings(road, slot)), None)
        if at is None:
            return [*words, slot.option, file]
        return [*words[: at + 1], file, *words[at + 2 :]]
    had = _value(road, slot)
    if had is None:
        return [*words, file]
    at = words.index(had, len(road))
    return [*words[:at], file, *words[at + 1 :]]


def times_of(road: Road) -> list[tuple[str, str]]:
    """Return the options of a command that take a time or a day, and which kind each takes."""
    found = commands()[road].params
    return [(one.opts[-1], one.metavar) for one in found if one.metavar in _TIMES]


def texts_of(road: Road) -> list[Slot]:
    """Return every place in the call of a command where words of any kind may stand."""
    found = [one for one in commands()[road].params if type(one.type).__name__ == _FREE]
    return [_slot(road, one) for one in found]


def asks(road: Road) -> bool:
    """Whether a command's module puts questions at the terminal."""
    module = inspect.getmodule(inspect.unwrap(commands()[road].callback))
    return "until_understood(" in inspect.getsource(module)  # type: ignore[arg-type]


def says_file(road: Road) -> set[str]:
    """Return which parameters of a command speak of a file in their help or by their kind."""
    return {
        one.name
        for one in commands()[road].params
        if one.name not in _SPEAKS_ONLY
        and not getattr(one, "is_flag", False)
        and ("file" in (one.help or "").lower().split() or "Path" in type(one.type).__name__)
    }


def _names_file(one: Any) -> bool:
    word = (one.metavar or "").strip("[].").rstrip(".").rstrip("]")
    return word in _READS or "Path" in type(one.type).__name__


def _slot(road: Road, one: Any) -> Slot:
    metavar = one.metavar or ""
    says = one.help or ""
    book_only = road[0] == "batch" and "RECIPE" in metavar
    return Slot(
        name=one.name,
        option="" if one.param_type_name == "argument" else one.opts[-1],
        many=one.nargs == -1,
        writes=one.name == "out" or "to write" in says or says.startswith("Where to"),
        folder_too="folder" in says.lower(),
        by_name=book_only and road[1] not in ("start", "take"),
    )


def _spellings(road: Road, slot: Slot) -> list[str]:
    return next(one.opts for one in commands()[road].params if one.name == slot.name)


def _value(road: Road, slot: Slot) -> str | None:
    """Return what stands in the place of an argument in the example."""
    words = call_of(road)[len(road) :]
    with commands()[road].make_context(road[-1], words, resilient_parsing=True) as context:
        value = context.params.get(slot.name)
    if isinstance(value, list | tuple):
        value = value[0] if value else None
    return None if value is None else str(value)
