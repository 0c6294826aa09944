"""Finds a recipe: by its path, by the name of the cook's own or a shipped one, or piped in."""

from __future__ import annotations

from pathlib import Path

from tarebook.files import STANDARD_INPUT, holds, named, read_bytes
from tarebook.findings import FileUnreadable, Finding, RecipeFaulty, nearest
from tarebook.recipe.model import Recipe
from tarebook.recipe.read import read_recipe
from tarebook.toml.fault import did_you_mean
from tarebook.toml.text import MOST_BYTES
from tarebook.where import folder, home

SUFFIX = ".toml"
_WHOLE_FOLDER = "name one file in it, or check the whole folder with tarebook check"


def load_recipe(which: str | Path) -> tuple[Recipe, tuple[Finding, ...]]:
    """Return a recipe and the warnings and notes on its file.

    Args:
        which: a path, the name of the cook's own or a shipped recipe, or ``-``.

    Raises:
        FileUnreadable: there is no such file or recipe, or it cannot be read.
        RecipeFaulty: the recipe has errors; carries every finding.
    """
    data, file = recipe_bytes(which)
    recipe, findings = read_recipe(data, file=file)
    if recipe is None:
        raise RecipeFaulty(findings)
    return recipe, findings


def recipe_bytes(which: str | Path) -> tuple[bytes, str]:
    """Return the bytes of a recipe file and the name to call it by in findings.

    At most a little over ``MOST_BYTES`` are read; ``read_recipe`` refuses what is longer.

    Args:
        which: a path, the name of the cook's own or a shipped recipe, or ``-``.

    Raises:
        FileUnreadable: there is no such file or recipe, or it cannot be read.
    """
    file = "<standard input>" if str(which) == STANDARD_INPUT else str(which)
    path = which
    if not holds(Path(which).exists) and (by_name := _by_name(str(which))) is not None:
        path, file = by_name, f"{which}{SUFFIX}"
    data = read_bytes(
        path, most=MOST_BYTES, what="recipe", missing=_not_there, folder=_WHOLE_FOLDER
    )
    return data, file


def own_recipes() -> Path:
    """Return the folder of the cook's own recipes; it may not exist."""
    return home() / "recipes"


def _by_name(name: str) -> Path | None:
    """Return the file of a recipe by its name: the cook's own wins over a shipped one."""
    if Path(name).name != name:
        return None
    own = own_recipes() / f"{name}{SUFFIX}"
    if holds(own.exists) or holds(own.is_symlink):
        return own  # a folder, or a link to nothing, is told of: another recipe is not meant
    shipped = folder("recipes") / own.name
    return shipped if holds(shipped.is_file) else None


def shipped_recipes() -> tuple[str, ...]:
    """Return the names of the recipes that come with tarebook, in alphabetical order."""
    names = (entry.name for entry in folder("recipes").iterdir())
    return tuple(sorted(name.removesuffix(SUFFIX) for name in names if name.endswith(SUFFIX)))


def own_names() -> tuple[str, ...]:
    """Return the names of the cook's own recipes, in alphabetical order."""
    try:
        found = [entry.name for entry in own_recipes().iterdir()]
    except OSError:
        return ()
    return tuple(sorted(name.removesuffix(SUFFIX) for name in found if _is_recipe(name)))


def find_recipes(where: str | Path) -> tuple[Path, ...]:
    """Return every recipe file in a folder and the folders below it, in alphabetical order.

    Hidden folders and files are passed over, and links to folders are not followed. What is no
    folder is returned as it is, for ``recipe_bytes`` to find.

    Args:
        where: a folder, a file, the name of a shipped recipe, or ``-``.

    Raises:
        FileUnreadable: a folder without recipe files.
    """
    import os

    top = Path(where)
    if not holds(top.is_dir):
        return (top,)
    found: list[Path] = []
    for here, folders, files in os.walk(top):
        folders[:] = sorted(name for name in folders if not name.startswith("."))
        found += [Path(here, name) for name in sorted(files) if _is_recipe(name)]
    if not found:
        raise FileUnreadable(f"there is no {SUFFIX} file in the folder {named(top)}")
    return tuple(found)


def _is_recipe(name: str) -> bool:
    return name.endswith(SUFFIX) and not name.startswith(".")


def _not_there(path: Path) -> str:
    near = did_you_mean(_near(path))
    shipped = ", ".join(shipped_recipes())
    own = f"; the recipes that come with tarebook are {shipped}" if shipped and not near else ""
    return f"there is no recipe {named(path)}" + (f"; {near}" if near else own)


def _near(path: Path) -> tuple[str, ...]:
    """Return names much like the one asked for, of files beside it and of shipped recipes."""
    beside = path.parent
    try:
        files = {entry.name: str(beside / entry.name) for entry in beside.iterdir()}
    except OSError:
        files = {}
    recipes = {name: spelled for name, spelled in files.items() if _is_recipe(name)}
    stems = {name.removesuffix(SUFFIX): spelled for name, spelled in recipes.items()}
    known = {**dict.fromkeys((*shipped_recipes(), *own_names())), **stems}
    found = nearest(path.name.removesuffix(SUFFIX), known, most=2)
    return tuple(known[name] or name for name in found)
