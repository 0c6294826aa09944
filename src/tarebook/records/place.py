"""Where the batch book lies, asked before anything of it is loaded."""

from __future__ import annotations

from pathlib import Path

from tarebook.files import holds
from tarebook.where import home

FILE = "book.sqlite3"


def book_file() -> Path:
    """Return where the batch book lies; it may not exist."""
    return home() / FILE


def is_there(path: Path | None = None) -> bool:
    """Whether there is a book: a file that holds something."""
    file = path or book_file()
    return holds(lambda: file.stat().st_size)
