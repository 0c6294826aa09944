"""What commands say of themselves, where Python dropped it: ``python -OO``."""

from __future__ import annotations

import ast
from collections.abc import Callable
from pathlib import Path
from typing import Any

import typer


def put_back(app: typer.Typer) -> None:
    """Give every command of a program its help again, from the file it was written in.

    ``python -OO`` and PYTHONOPTIMIZE=2 drop docstrings when they load a module, and the page of
    help is made of them.

    Args:
        app: the program, with its commands built.
    """
    for command in app.registered_commands:
        if command.help is None and command.callback is not None:
            command.help = _as_written(command.callback)
    for group in app.registered_groups:
        if group.typer_instance is not None:
            put_back(group.typer_instance)


def _as_written(command: Callable[..., Any]) -> str | None:
    file = Path(command.__code__.co_filename)
    tree = ast.parse(file.read_text(encoding="utf-8"))
    written = (one for one in tree.body if isinstance(one, ast.FunctionDef))
    (found,) = (one for one in written if one.name == command.__name__)
    return ast.get_docstring(found)
