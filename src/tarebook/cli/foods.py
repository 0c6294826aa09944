"""tarebook foods: the foods of the tables, and bottles of the cook's own."""

from __future__ import annotations

from importlib import import_module

import typer

COMMANDS = {
    "find": "foods_look",
    "show": "foods_look",
    "add": "foods_add",
    "own": "foods_own",
    "remove": "foods_own",
    "lookup": "foods_lookup",
}
"""Every command of the group, and the module its function is in."""


def group(words: list[str]) -> typer.Typer:
    """Return the group with the command that is asked for, or with all of them.

    Args:
        words: what was typed after ``foods``.
    """
    app = typer.Typer(
        help="Find foods and see every figure of one, with its source.",
        no_args_is_help=True,
        rich_markup_mode=None,
    )
    for name in words[:1] if words and words[0] in COMMANDS else COMMANDS:
        module = import_module(f"tarebook.cli.{COMMANDS[name]}")
        app.command(name)(getattr(module, name))
    return app
