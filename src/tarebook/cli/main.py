"""The program: its commands and its exit statuses."""

from __future__ import annotations

import gc
import sys
from importlib import import_module
from typing import Annotated

# A cook waits for a short program: looking for garbage while it loads took a twentieth of that.
gc.set_threshold(50_000, 50, 50)

import typer  # noqa: E402

FINE, FAULT, ASKED_WRONGLY, INTERRUPTED = 0, 1, 2, 130

COMMANDS = (
    "scale",
    "card",
    "labels",
    "compare",
    "soak",
    "drying",
    "check",
    "new",
    "convert",
    "foods",
    "probe",
    "shop",
    "list",
    "target",
    "kitchen",
    "plan",
    "batch",
)
"""Every command; each is a module of this room, with a group ``app`` in it, a function ``group``
that makes one, or a function of that name (``list_``, where the language has it for itself)."""


def program(words: list[str]) -> typer.Typer:
    """Return the program with the command that is asked for, or with all of them.

    Only what is asked for is built: reading the signatures of all the others would take longer
    than scaling a recipe.

    Args:
        words: what was typed after the program's name.
    """
    app = typer.Typer(
        name="tarebook",
        help="Scale, weigh and reckon home-dried marinated meat: measures, grams, and sodium and "
        "sugars per finished ounce, with how sure they are. Works offline.",
        no_args_is_help=True,
        rich_markup_mode=None,
        pretty_exceptions_enable=False,
        callback=_tarebook,
    )
    for name in words[:1] if words and words[0] in COMMANDS else COMMANDS:
        module = import_module(f"tarebook.cli.{name}")
        if hasattr(module, "group"):
            app.add_typer(module.group(words[1:]), name=name)
        elif hasattr(module, "app"):
            app.add_typer(module.app, name=name)
        else:
            app.command(name)(getattr(module, f"{name}_", None) or getattr(module, name))
    return app


def _print_version(wanted: bool) -> None:
    if wanted:
        from importlib.metadata import version

        from tarebook.cli.talk import write

        write(f"tarebook {version('tarebook')}\n")
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
    from tarebook.cli.talk import complain, complain_findings, drop_output
    from tarebook.findings import AskedWrongly, RecordFaulty, TarebookError

    _speak_utf8()
    try:
        words = sys.argv[1:] if args is None else args
        program(words)(words, prog_name="tarebook")
    except RecordFaulty as fault:
        complain_findings(fault.findings)
        sys.exit(FAULT)
    except AskedWrongly as fault:
        complain(f"tarebook: {fault}")
        sys.exit(ASKED_WRONGLY)
    except TarebookError as fault:
        hint = getattr(fault, "hint", "")
        complain(f"tarebook: {fault}{f'; {hint}' if hint else ''}")
        sys.exit(FAULT)
    except OSError as fault:
        # Faults of files that were asked for are named above: this is the output itself.
        drop_output()
        complain(f"tarebook: the output cannot be written: {fault.strerror or fault}")
        sys.exit(FAULT)
    except KeyboardInterrupt:
        sys.exit(INTERRUPTED)


def _speak_utf8() -> None:
    """Undo the ASCII that some shells hand to a program whose reader takes UTF-8 anyway."""
    for stream in (sys.stdout, sys.stderr):
        reconfigure = getattr(stream, "reconfigure", None)
        if reconfigure is not None:
            reconfigure(errors="replace")
