"""Where the tables and the demo recipes lie.

A room of its own at the ground, so that every other may ask; it imports none of them. In a wheel
the two folders lie inside the package; in a checkout and an editable install, beside ``src``.
"""

from __future__ import annotations

from pathlib import Path

__all__ = ["folder"]


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
    for home in _homes():
        if (home / name).is_dir():
            return home / name
    raise FileNotFoundError(f'the "{name[:40]}" folder is missing from this installation')


def _homes() -> tuple[Path, ...]:
    """Return the places to look: inside the package first, then beside ``src``."""
    here = Path(__file__).resolve()
    package, source = here.parent, here.parents[1]
    # Beside ``site-packages`` lies nothing of ours, so only a ``src`` folder is looked beside.
    return (package, source.parent) if source.name == "src" else (package,)
