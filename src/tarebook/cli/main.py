"""The program: its commands and its exit statuses."""

from __future__ import annotations

import atexit
import gc
import os
import sys
from contextlib import suppress
from importlib import import_module
from typing import Annotated, NoReturn

# A cook waits for a short program: looking for garbage while it loads took a twentieth of that.
gc.set_threshold(200_000, 50, 50)

import typer  # noqa: E402

FINE, FAULT, ASKED_WRONGLY, INTERRUPTED = 0, 1, 2, 130
COMPLETING = "_TAREBOOK_COMPLETE"  # what a shell sets that wants the rest of a line

COMMANDS = {
    "scale": "Scale a recipe to today's meat, with sodium and sugars an ounce.",
    "card": "Print a recipe card: text, paper, or a page for a browser.",
    "labels": "Print labels for the bags: name, dates, weight, figures.",
    "compare": "Compare variants of a recipe, or recipes, ounce by ounce.",
    "soak": "Say how far salt and sugars come with the hours.",
    "drying": "Say how long a batch may dry, from your own last one.",
    "check": "Check recipe files: faults, and how things were read.",
    "new": "Start a recipe by answering questions.",
    "bring": "Bring a recipe in from a saved page (schema.org JSON-LD).",
    "tidy": "Set recipes down in the usual order and spacing.",
    "convert": "Turn a volume of a food into mass, or back.",
    "foods": "Find foods and see every figure of one, with its source.",
    "probe": "Read a thermometer's log: when 145, 160, 165 °F was reached.",
    "shop": "Say what to buy, less what is in the house, and what it costs.",
    "list": "List recipes with sodium and sugars of a finished ounce.",
    "target": "Say which change gets sodium or sugars under a figure.",
    "kitchen": "Tell what the kitchen has: trays, oven, spoons, scale.",
    "plan": "Plan the days, with clock times: thaw, soak, heat, dry, pack.",
    "batch": "Keep the batch book: what was weighed, what happened and when.",
}
"""Every command, and its line on the page of help.

Each is a module of this room, with a group ``app`` in it, a function ``group`` that makes one, or
a function of that name (``list_``, where the language has it for itself)."""


def program(words: list[str], *, whole: bool = False) -> typer.Typer:
    """Return the program with the command that is asked for.

    Only that is built: reading the signatures of all the others would take longer than scaling a
    recipe. Of the others there is the name and the line of help; a shell that completes a line
    gets them all.

    Args:
        words: what was typed after the program's name.
        whole: build all of them.
    """
    asked = next((word for word in words if not word.startswith("-")), None)
    app = typer.Typer(
        name="tarebook",
        help="Scale, weigh and reckon home-dried marinated meat: measures, grams, and sodium and "
        "sugars per finished ounce, with how sure they are. Works offline.",
        no_args_is_help=True,
        rich_markup_mode=None,
        pretty_exceptions_enable=False,
        callback=_tarebook,
        add_completion=asked not in COMMANDS,
    )
    for name, says in COMMANDS.items():
        if whole or name == asked:
            _add(app, name, words[words.index(name) + 1 :] if name == asked else [])
        elif asked not in COMMANDS:
            app.command(name, help=says)(_named_only)
    if sys.flags.optimize > 1:
        from tarebook.cli.docstrings import put_back

        put_back(app)
    return app


def _add(app: typer.Typer, name: str, words: list[str]) -> None:
    module = import_module(f"tarebook.cli.{name}")
    if hasattr(module, "group"):
        app.add_typer(module.group(words), name=name)
    elif hasattr(module, "app"):
        app.add_typer(module.app, name=name)
    else:
        app.command(name)(getattr(module, f"{name}_", None) or getattr(module, name))


def _named_only() -> None:
    raise AssertionError("a command was asked for that was not built")


def _print_version(wanted: bool) -> None:
    if wanted:
        import tarebook
        from tarebook.cli.talk import write

        write(f"tarebook {tarebook.__version__}\n")
        raise typer.Exit(FINE)


def _tarebook(
    version: Annotated[
        bool,
        typer.Option(
            "--version", callback=_print_version, is_eager=True, help="Print the version and stop."
        ),
    ] = False,
) -> None:
    pass


def run(args: list[str] | None = None) -> None:
    """Run the program and leave with its exit status.

    Args:
        args: words after the program's name; those of the command line where not given.
    """
    try:
        _run(sys.argv[1:] if args is None else args)
    except KeyboardInterrupt:
        status: object = INTERRUPTED
    except SystemExit as ended:
        status = ended.code
    else:
        status = FINE
    if args is None:
        _leave(status)
    sys.exit(status)  # type: ignore[arg-type]


def _leave(status: object) -> NoReturn:
    """End the process.

    What it holds is not taken down piece by piece: that takes a thirtieth of scaling a recipe. A
    profiler, which looks on till the end, is left to do so.
    """
    if type(status) is not int or sys.getprofile() is not None:
        sys.exit(status)  # type: ignore[arg-type]
    atexit._run_exitfuncs()
    for stream in (sys.stdout, sys.stderr):
        # All was written and flushed, or its fault was told of: nothing is left to be said here.
        with suppress(OSError, ValueError, AttributeError):
            stream.flush()
    os._exit(status)


def _run(words: list[str]) -> None:
    _speak_utf8()
    try:
        program(words, whole=COMPLETING in os.environ)(words, prog_name="tarebook")
    except Exception as fault:
        sys.exit(_told(fault))


def _told(fault: Exception) -> int:
    """Say what went wrong, and return the exit status; a fault of our own is raised again."""
    from tarebook.cli.talk import complain, complain_findings, drop_output
    from tarebook.findings import AskedWrongly, RecordFaulty, TarebookError

    if isinstance(fault, RecordFaulty):
        complain_findings(fault.findings)
    elif isinstance(fault, AskedWrongly):
        complain(f"tarebook: {fault}")
        return ASKED_WRONGLY
    elif isinstance(fault, TarebookError):
        hint = getattr(fault, "hint", "")
        complain(f"tarebook: {fault}{f'; {hint}' if hint else ''}")
    elif isinstance(fault, OSError) and fault.filename is not None:
        from pathlib import Path

        from tarebook.files import named

        file = named(Path(str(fault.filename)))
        complain(f"tarebook: {file} cannot be used: {(fault.strerror or str(fault)).lower()}")
    elif isinstance(fault, OSError):
        # Faults of files name them: this is the output itself.
        drop_output()
        complain(f"tarebook: the output cannot be written: {fault.strerror or fault}")
    else:
        raise fault
    return FAULT


def _speak_utf8() -> None:
    """Undo the ASCII that some shells hand to a program whose reader takes UTF-8 anyway."""
    for stream in (sys.stdout, sys.stderr):
        reconfigure = getattr(stream, "reconfigure", None)
        if reconfigure is not None:
            reconfigure(errors="replace")
