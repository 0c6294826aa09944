"""tarebook batch: the batch book, one command for each thing that happens."""

from __future__ import annotations

from importlib import import_module

import typer

COMMANDS = {
    "start": "batch_enter",
    "weigh": "batch_enter",
    "temp": "batch_enter",
    "note": "batch_enter",
    "turn": "batch_steps",
    "soak": "batch_steps",
    "heat": "batch_steps",
    "dry": "batch_steps",
    "finish": "batch_steps",
    "show": "batch_look",
    "list": "batch_look",
    "lessons": "batch_lessons",
    "compare": "batch_lessons",
    "labels": "batch_lessons",
    "undo": "batch_mend",
    "edit": "batch_mend",
    "next": "batch_next",
    "take": "batch_next",
    "drop": "batch_next",
    "wordings": "batch_next",
    "check": "batch_keep",
    "export": "batch_keep",
    "import": "batch_keep",
    "backup": "batch_keep",
    "restore": "batch_keep",
}
"""Every command of the book, and the module its function is in (``list_``, ``import_``)."""

_HELP = """Keep the batch book: what was weighed, what happened and when.

Without --batch an entry goes to the batch in hand: the latest that is not finished. An entry is
named by its number, or by batch and number: 7, 12.7. What was wrong is struck (undo) or replaced
(edit), and stays to be seen."""


def group(words: list[str]) -> typer.Typer:
    """Return the group with the command that is asked for, or with all of them.

    Args:
        words: what was typed after ``batch``.
    """
    app = typer.Typer(help=_HELP, no_args_is_help=True, rich_markup_mode=None)
    for name in words[:1] if words and words[0] in COMMANDS else COMMANDS:
        module = import_module(f"tarebook.cli.{COMMANDS[name]}")
        app.command(name)(getattr(module, f"{name}_", None) or getattr(module, name))
    return app
