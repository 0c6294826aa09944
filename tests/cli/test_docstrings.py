"""The help of a command does not hang on whether Python keeps docstrings."""

from __future__ import annotations

import subprocess
import sys

# Prints the page of help of every command, as the program does.
PAGES = """
import sys, typer
from tarebook.cli.main import program
def pages(command, road):
    print("=", *road)
    print(command.get_help(typer.Context(command, info_name=road[-1])))
    for name, one in getattr(command, "commands", {}).items():
        pages(one, (*road, name))
pages(typer.main.get_command(program([], whole=True)), ("tarebook",))
print(pages.__doc__, sys.flags.optimize, file=sys.stderr)
"""


def pages(*flags: str) -> str:
    """Return all pages of help, of a process started with such flags."""
    done = subprocess.run(
        [sys.executable, *flags, "-c", PAGES],
        capture_output=True,
        text=True,
        encoding="utf-8",
        timeout=60,
        check=True,
    )
    return done.stdout


def test_help_is_the_same_without_docstrings() -> None:
    """With ``-OO`` every command's page of help has all its words, example and all."""
    whole = pages()

    assert whole == pages("-OO")
    assert whole.count("Example: tarebook ") >= 40
