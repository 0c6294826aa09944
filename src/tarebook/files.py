"""Reading a file that somebody names, and writing one whole or not at all.

A room at the ground: it knows nothing of what the files hold.
"""

from __future__ import annotations

import os
import sys
from collections.abc import Callable
from contextlib import suppress
from pathlib import Path
from typing import Any

from tarebook.findings import FileUnreadable, FileUnwritable

__all__ = ["STANDARD_INPUT", "holds", "named", "read_bytes", "write_whole"]

STANDARD_INPUT = "-"
_MOST_SHOWN = 160


def read_bytes(
    name: str | Path,
    *,
    most: int,
    what: str = "file",
    missing: Callable[[Path], str] | None = None,
    folder: str = "name one file in it",
) -> bytes:
    """Return the bytes of a file, or of standard input for ``-``.

    Args:
        name: a path, or ``-``.
        most: how many bytes a file of this kind may have; one more is read, so that the caller
            can tell that it is longer.
        what: what the file is to be, for messages: ``recipe``, ``log``.
        folder: what to try where it is a folder.
        missing: words for a path that is not there, where there is more to say.

    Raises:
        FileUnreadable: it is missing, a folder, no ordinary file, or may not be read.
    """
    if str(name) == STANDARD_INPUT:
        if sys.stdin is None or sys.stdin.closed:
            raise FileUnreadable(f"there is no standard input to read a {what} from")
        return sys.stdin.buffer.read(most + 1)
    path = Path(name)
    try:
        with path.open("rb") as file:
            return file.read(most + 1)
    except (FileNotFoundError, NotADirectoryError):
        words = missing(path) if missing else f"there is no {what} {named(path)}"
        raise FileUnreadable(words) from None
    except IsADirectoryError:
        raise FileUnreadable(f"{named(path)} is a folder; {folder}") from None
    except PermissionError:
        if holds(path.is_dir):  # what some systems say of a folder
            raise FileUnreadable(f"{named(path)} is a folder; {folder}") from None
        raise FileUnreadable(f"{named(path)} may not be read: see who owns it") from None
    except (OSError, ValueError) as fault:  # a name with a NUL is a ValueError
        raise FileUnreadable(f"{named(path)} cannot be read: {_reason(fault)}") from None


def write_whole(path: Path, data: bytes) -> None:
    """Write a file whole or not at all: a crash leaves the old one, or the new one.

    Folders above it are made.

    Args:
        path: where; what was there is replaced.
        data: all of it.

    Raises:
        FileUnwritable: the folder is read-only or not there to make, the disk is full ...
    """
    target = Path(os.path.realpath(path)) if holds(path.is_symlink) else path
    beside = target.with_name(f".{target.name[:100]}.{os.getpid()}.new")
    try:
        if target.is_dir():
            raise FileUnwritable(f"{named(path)} is a folder; name a file in it")
        target.parent.mkdir(parents=True, exist_ok=True)
        if target.exists() and not target.is_file():  # a device or a pipe has no whole to keep
            target.write_bytes(data)
            return
        with beside.open("wb") as file:
            file.write(data)
            file.flush()
            os.fsync(file.fileno())
        if target.exists():
            beside.chmod(target.stat().st_mode & 0o777)
        beside.replace(target)
    except FileUnwritable:
        raise
    except (OSError, ValueError) as fault:
        _drop(beside)
        raise FileUnwritable(f"{named(path)} cannot be written: {_reason(fault)}") from None
    except BaseException:  # Ctrl-C, above all
        _drop(beside)
        raise


def holds(asked: Callable[[], Any]) -> bool:
    """Answer for a path that may be too long, or hold what no file name can."""
    try:
        return bool(asked())
    except (OSError, ValueError):
        return False


def named(path: Path) -> str:
    """Return a path in quotes as a message shows it: printable, and not too long."""
    text = "".join(c if c.isprintable() else c.encode("unicode_escape").decode() for c in str(path))
    if len(text) > _MOST_SHOWN:
        text = text[: _MOST_SHOWN - 3] + "..."
    return f'"{text}"'


def _drop(file: Path) -> None:
    with suppress(OSError, ValueError):
        file.unlink()


def _reason(fault: Exception) -> str:
    words = getattr(fault, "strerror", None)
    return str(words).lower() if words else "no file can have this name"
