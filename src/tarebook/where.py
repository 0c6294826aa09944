"""Where the tables and the demo recipes lie, and where the cook's own things are kept.

A room of its own at the ground, so that every other may ask; it imports none of them. In a wheel
the two folders lie inside the package; in a checkout and an editable install, beside ``src``.
"""

from __future__ import annotations

import functools
import os
import sys
from pathlib import Path

__all__ = ["cache", "folder", "home"]


@functools.cache
def folder(name: str) -> Path:
    """Return the folder of the tables (``reference``) or of the demo recipes (``recipes``).

    Args:
        name: ``reference`` or ``recipes``.

    Returns:
        The folder; it exists.

    Raises:
        FileNotFoundError: the installation is broken and lacks it.

    Example:
        >>> folder("reference").name
        'reference'
    """
    for place in _homes():
        if (place / name).is_dir():
            return place / name
    raise FileNotFoundError(f'the "{name[:40]}" folder is missing from this installation')


def home() -> Path:
    """Return the cook's own folder: kitchen, bottles, recipes and batch book.

    ``TAREBOOK_HOME`` if it is set; otherwise the data folder that this system keeps for programs.

    Returns:
        The folder; it may not exist yet, and nothing here makes it.
    """
    own = os.environ.get("TAREBOOK_HOME", "")
    return Path(own).expanduser() if own else _kept("data")


def cache() -> Path:
    """Return the folder for what can be worked out or fetched again; see :func:`home`."""
    own = os.environ.get("TAREBOOK_HOME", "")
    return Path(own).expanduser() / "cache" if own else _kept("cache")


def _kept(kind: str) -> Path:
    """Return where this system keeps a program's data or cache."""
    if sys.platform.startswith("linux"):
        # The same answer as the library's, by the XDG Base Directory rules, without the time that
        # importing it takes: every command that reads a recipe asks for this folder.
        named = os.environ.get(f"XDG_{kind.upper()}_HOME", "").strip()
        usual = {"data": ".local/share", "cache": ".cache"}[kind]
        # A relative path is invalid by those rules and passed over.
        above = Path(named) if named.startswith("/") else Path.home() / usual
        return above / "tarebook"
    import platformdirs

    asked = {"data": platformdirs.user_data_path, "cache": platformdirs.user_cache_path}[kind]
    return asked("tarebook", appauthor=False)


def _homes() -> tuple[Path, ...]:
    """Return the places to look: inside the package first, then beside ``src``."""
    here = Path(__file__).resolve()
    package, source = here.parent, here.parents[1]
    # Beside ``site-packages`` lies nothing of ours, so only a ``src`` folder is looked beside.
    return (package, source.parent) if source.name == "src" else (package,)
