"""tarebook probe: what a thermometer's log says."""

from __future__ import annotations

import sys
from typing import Annotated

import typer

from tarebook.cli import asking


def probe(
    log: Annotated[
        str,
        typer.Argument(
            metavar="LOG", help="Rows of times and temperatures, or - for standard input."
        ),
    ],
    where: Annotated[
        str, typer.Option("--in", metavar="PLACE", help="Where the tip was: meat or air.")
    ] = "",
    column: Annotated[
        str, typer.Option("--column", metavar="NAME", help="Column of temperatures, by heading.")
    ] = "",
    scale: Annotated[
        str, typer.Option("--scale", metavar="F|C", help="Scale, where the log does not say.")
    ] = "",
    day_first: Annotated[
        bool, typer.Option("--day-first", help="3/4 is the third of April.")
    ] = False,
    as_json: asking.AsJson = False,
) -> None:
    """Draw a thermometer's log, and say when 145, 160 and 165 °F were reached and for how long.

    Example: tarebook probe oven.csv --in meat
    """
    from tarebook.cards.probe_page import probe_data, probe_page
    from tarebook.cli.talk import complain_findings, show, show_data
    from tarebook.files import read_bytes
    from tarebook.findings import AskedWrongly
    from tarebook.probe import MOST_BYTES, read_log

    place, letter = where.strip().lower(), scale.strip().lower()[:1]
    if place not in ("", "meat", "air"):
        raise AskedWrongly(f'--in: "{where[:20]}" is no place for a probe; say meat or air')
    if scale and letter not in ("f", "c"):
        raise AskedWrongly(f'--scale: "{scale[:20]}" is no scale; say F or C')
    data = read_bytes(log, most=MOST_BYTES, what="log")
    found = read_log(
        data,
        file="<standard input>" if log == "-" else log,
        column=column,
        scale=letter,
        place=place,
        day_first=True if day_first else None,
    )
    if not found.place and log != "-" and sys.stdin is not None and sys.stdin.isatty():
        found = found._replace(place=_ask_place())
    complain_findings(found.findings)
    if as_json:
        show_data(probe_data(found))
    else:
        show(probe_page(found))


def _ask_place() -> str:
    """Ask where the tip was until it is said; an empty answer says that nobody knows."""
    while True:
        sys.stderr.write("Was the tip in the meat or in the air? Enter alone: nobody knows\n> ")
        sys.stderr.flush()
        said = sys.stdin.readline().strip().lower()
        if said in ("", "meat", "air"):
            return said
