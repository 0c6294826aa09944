"""Putting a page where it was asked for: a file, a pipe, or the screen."""

from __future__ import annotations

import sys
from collections.abc import Sequence
from pathlib import Path

from tarebook.findings import AskedWrongly

PIPE = "-"


def put(data: bytes, out: str | None, *, binary: bool = False) -> None:
    """Write a page to the file that is named, whole or not at all, or to standard output.

    A file that is there already is written over, since it was named; that is told. Down a pipe go
    the same bytes as into a file.

    Args:
        data: the page.
        out: a file, ``-`` for standard output, or None for it too where it is text.
        binary: whether it is a document or a picture, which nobody reads as it stands.

    Raises:
        AskedWrongly: it is no text, and would go to a terminal, or down a pipe unasked.
        FileUnwritable: the file cannot be written.
    """
    from tarebook.cli.talk import complain, write_bytes, write_document
    from tarebook.files import write_whole

    if out is not None and out != PIPE:
        file = Path(out)
        there = file.exists()
        write_whole(file, data)
        complain(f"{file} is written{' over' if there else ''}")
    elif not binary:
        write_document(data.decode("utf-8"))
    elif sys.stdout is not None:
        if sys.stdout.isatty():
            raise AskedWrongly("this is no text for a screen: name a file with -o")
        if out is None:
            raise AskedWrongly(
                f"this is no text to read: name a file with -o, or -o {PIPE} for the pipe"
            )
        write_bytes(data)


def put_text(text: str, out: str | None) -> None:
    """Write text that is there to be read: UTF-8 in a file, as the terminal has it else.

    Args:
        text: lines, each with its end.
        out: as for :func:`put`.

    Raises:
        FileUnwritable: the file cannot be written.
    """
    from tarebook.cli.talk import write

    if out is None or out == PIPE:
        write(text)
    else:
        put(text.encode("utf-8"), out)


def put_pages(pages: Sequence[bytes], out: str | None) -> None:
    """Write pages: one as it is named, several with their number before the ending.

    Args:
        pages: documents or pictures, one or more.
        out: as for :func:`put`; ``labels.svg`` of three pages becomes ``labels-1.svg`` to
            ``labels-3.svg``.

    Raises:
        AskedWrongly: several pictures cannot go down one pipe, or to a terminal.
    """
    if len(pages) == 1:
        put(pages[0], out, binary=True)
        return
    if out is None or out == PIPE:
        raise AskedWrongly(
            f"these are {len(pages)} pictures: name a file with -o, or take --as pdf"
        )
    file = Path(out)
    for number, page in enumerate(pages, 1):
        put(page, str(file.with_name(f"{file.stem}-{number}{file.suffix}")), binary=True)


def form_of(said: str | None, out: str | None, forms: Sequence[str]) -> str:
    """Return which form a page is to have: as it is said, by the ending of the file, or the first.

    Args:
        said: what ``--as`` says, or None.
        out: the file it goes to, or None.
        forms: what there is.

    Raises:
        AskedWrongly: there is no such form here.
    """
    if said is None:
        ending = Path(out).suffix.lower().lstrip(".") if out else ""
        return ending if ending in forms else forms[0]
    form = said.strip().lower()
    if form not in forms:
        raise AskedWrongly(f'--as: "{said[:20]}" is no form of it; say {", ".join(forms)}')
    return form
