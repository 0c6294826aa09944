"""Rows of cells as CSV that a spreadsheet opens without running anything.

A room at the ground: it knows nothing of what the cells hold.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence

__all__ = ["csv_text", "defused"]

_STARTS = ("=", "+", "-", "@", "\t", "\r")


def csv_text(rows: Iterable[Sequence[str]]) -> str:
    """Return rows as CSV (RFC 4180), lines ended by CR LF, cells defused.

    Example:
        >>> csv_text([["name", "note"], ["honey", "=1+1"]])
        "name,note\\r\\nhoney,'=1+1\\r\\n"
    """
    import csv
    import io

    out = io.StringIO()
    csv.writer(out).writerows([defused(cell) for cell in row] for row in rows)
    return out.getvalue()


def defused(cell: str) -> str:
    """Return a cell that no spreadsheet takes for a formula: an apostrophe before what might be.

    Numbers stay as they are, negative ones too.
    """
    if not cell.startswith(_STARTS) or _is_number(cell):
        return cell
    return f"'{cell}"


def _is_number(cell: str) -> bool:
    body = cell[1:] if cell[:1] in "+-" else cell
    return body.replace(".", "", 1).isdecimal() and body.isascii()
