"""The house: imports go one way, nothing reaches the net, and starting loads little."""

from __future__ import annotations

import ast
import re
import subprocess
import sys
from pathlib import Path

import pytest

import tarebook
from tarebook.cli.main import COMMANDS

SOURCE = Path(tarebook.__file__).parent

# What each room may import of the others, from the ground up.
GROUND = {"where", "files", "findings", "toml", "cells"}
MAY_IMPORT: dict[str, set[str]] = {
    "tuples": set(),  # and every room may import it
    "where": set(),
    "cells": set(),
    "findings": set(),
    "files": {"findings"},
    "toml": {"findings"},
    "clocks": {"findings"},
    "uptake": set(),
    "drying": {"uptake"},
    "quantities": {"where", "findings"},
    "figures": {"where", "findings", "quantities"},
    "recipe": {*GROUND, "quantities", "figures"},
    "scaling": {*GROUND, "quantities", "figures", "recipe"},
    "probe": {*GROUND, "quantities"},
    "kitchen": {*GROUND, "quantities"},
    "records": {*GROUND, "clocks", "quantities", "figures", "recipe"},
}
ASIDE = {"probe", "kitchen", "records", "clocks"}  # rooms that no reckoning stands on
MAY_IMPORT["nutrition"] = {*MAY_IMPORT} - ASIDE
MAY_IMPORT["shopping"] = {*MAY_IMPORT} - ASIDE - {"uptake", "drying"}
MAY_IMPORT["safety"] = {*MAY_IMPORT} - ASIDE - {"uptake", "drying", "shopping"}
MAY_IMPORT["target"] = {*MAY_IMPORT} - {"probe", "shopping", "target"}
MAY_IMPORT["shelf"] = {*MAY_IMPORT} - {"probe", "shopping", "target", "shelf"}
MAY_IMPORT["plan"] = {*MAY_IMPORT} - {"probe", "shopping", "target", "shelf", "uptake"}
MAY_IMPORT["lookup"] = {"where", "files", "findings", "quantities", "figures", "recipe"}
MAY_IMPORT["cards"] = {*MAY_IMPORT} - {"uptake", "drying", "cards"}
MAY_IMPORT["exchange"] = {*GROUND, "quantities", "figures", "recipe"}
MAY_IMPORT["paper"] = {*MAY_IMPORT} - {"paper"}
MAY_IMPORT["lessons"] = {*MAY_IMPORT} - {"paper", "exchange", "lessons"}
MAY_IMPORT["cli"] = {*MAY_IMPORT} - {"cli"}

NETWORK = {"socket", "ssl", "http", "urllib", "requests", "requests_cache", "ftplib", "smtplib"}
HEAVY = (
    *(
        "pandas",
        "numpy",
        "pint",
        "requests",
        "requests_cache",
        "rich",
        "typst",
        "pydantic",
        "tomlkit",
    ),
    *("dataclasses", "sqlite3", "json", "logging", "argparse", "importlib.metadata"),
)


def modules() -> list[Path]:
    """Return every module of the package."""
    return sorted(SOURCE.rglob("*.py"))


def room_of(path: Path) -> str:
    """Return the room a module belongs to."""
    first = path.relative_to(SOURCE).parts[0]
    return first.removesuffix(".py")


def imports_of(path: Path) -> set[str]:
    """Return every module that a module imports, inside its functions too."""
    found = set()
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(node, ast.Import):
            found |= {alias.name for alias in node.names}
        elif isinstance(node, ast.ImportFrom) and node.module:
            assert node.level == 0, f"{path}: name rooms in full"
            found.add(node.module)
            if node.module == "tarebook":
                found |= {f"tarebook.{alias.name}" for alias in node.names}
    return found


@pytest.mark.parametrize("path", modules(), ids=lambda path: str(path.relative_to(SOURCE)))
def test_imports_go_one_way(path: Path) -> None:
    """A room imports only what lies below it, as DEVELOPERS.md draws it."""
    room = room_of(path)
    if room in ("__init__", "__main__"):
        return
    others = {
        name.split(".")[1]
        for name in imports_of(path)
        if name.startswith("tarebook.") and name.split(".")[1] not in (room, "tuples")
    }

    assert others <= MAY_IMPORT[room], f"{room} imports {others - MAY_IMPORT[room]}"


def test_no_cycles_between_modules() -> None:
    """No module reaches itself through what it imports, inside its functions too."""
    names = {
        ".".join(("tarebook", *path.relative_to(SOURCE).with_suffix("").parts)): path
        for path in modules()
    }
    names = {name.removesuffix(".__init__"): path for name, path in names.items()}
    graph: dict[str, set[str]] = {}
    for name, path in names.items():
        graph[name] = {target for target in imports_of(path) if target in names} - {name}
    pages = {name for name, path in names.items() if path.name == "__init__.py"}

    def reaches(start: str) -> bool:
        seen, todo = set(), [n for n in graph[start] if n not in pages]
        while todo:
            here = todo.pop()
            if here == start:
                return True
            if here not in seen:
                seen.add(here)
                todo += [n for n in graph[here] if n not in pages]
        return False

    assert [name for name in graph if reaches(name)] == []


def test_one_room_alone_talks_to_the_network() -> None:
    """No module outside the look-up's room imports anything that talks to a network."""
    talkers = {
        str(path.relative_to(SOURCE)): hits
        for path in modules()
        if (hits := {name.split(".")[0] for name in imports_of(path)} & NETWORK)
        and room_of(path) != "lookup"
    }

    assert talkers == {}


def test_one_command_alone_looks_things_up() -> None:
    """What asks over the network is named by its own command, and by nothing else."""
    asking = {f"tarebook.lookup.{name}" for name in ("client", "wire", "kept")}
    others = {
        str(path.relative_to(SOURCE))
        for path in modules()
        if imports_of(path) & asking and room_of(path) != "lookup"
    }

    assert others <= {"cli/foods_lookup.py"}


@pytest.mark.parametrize(
    "args",
    [
        ["scale", "juniper-venison", "--meat", "6lb"],
        ["card", "juniper-venison"],
        ["check", "juniper-venison"],
        ["foods", "show", "soy-sauce"],
        ["--help"],
        ["--version"],
    ],
    ids=lambda args: args[0],
)
def test_commands_start_without_heavy_libraries(args: list[str]) -> None:
    """What a cook waits for loads no large library, and none of the slow standard ones."""
    code = (
        "import sys\n"
        "from tarebook.cli.main import run\n"
        "try:\n    run(sys.argv[1:])\nexcept SystemExit:\n    pass\n"
        f"print([m for m in {HEAVY!r} if m in sys.modules], file=sys.stderr)\n"
    )

    done = subprocess.run(
        [sys.executable, "-c", code, *args], capture_output=True, text=True, check=True
    )

    assert done.stderr.splitlines()[-1] == "[]"


def test_a_recipe_runs_with_sockets_refused() -> None:
    """From file to card with no socket to be had."""
    code = (
        "import socket, sys\n"
        "def refuse(*a, **k):\n    raise AssertionError('a socket was opened')\n"
        "socket.socket = refuse\n"
        "from tarebook.cli.main import run\n"
        "run(['card', 'juniper-venison', '--meat', '6lb'])\n"
    )

    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True)

    assert done.returncode == 0, done.stderr
    assert "Home estimate, not a retail label." in done.stdout


@pytest.mark.parametrize("room", sorted(path.parent for path in SOURCE.glob("*/__init__.py")))
def test_the_page_of_a_room_names_its_files(room: Path) -> None:
    """Each room's own page tells of every file in it; of commands it is enough to have the file."""
    page = ast.get_docstring(ast.parse((room / "__init__.py").read_text(encoding="utf-8"))) or ""
    there = {path.stem for path in room.glob("*.py")} - {"__init__"}
    if room.name == "cli":
        there = {name for name in there if name.partition("_")[0] not in COMMANDS}

    assert there - set(re.findall(r"``(\w+)``", page)) == set(), "add a line to its __init__.py"
