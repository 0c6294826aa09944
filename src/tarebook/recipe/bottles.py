"""Finds the cook's own bottles: one file each, named as recipes name it.

To look one up reads that one file, so that a thousand of them cost no more than one; a name that
has no bottle costs a look whether there is such a file, and nothing at all where there is no
folder of them.
"""

from __future__ import annotations

from fractions import Fraction
from functools import lru_cache
from pathlib import Path

from tarebook.figures.foods import Food, food, normalised
from tarebook.files import holds, read_bytes
from tarebook.findings import FileUnreadable, Finding, FoodUnknown, RecordFaulty, nearest
from tarebook.recipe.model import Bottle
from tarebook.toml.text import MOST_BYTES
from tarebook.tuples import NamedTuple
from tarebook.where import home

SUFFIX = ".toml"
LONGEST_NAME = 60


class Known(NamedTuple):
    """A food by any name it goes by.

    Attributes:
        food: of the tables; of a bottle, the one that it is like.
        bottle: the cook's own, or None.
    """

    food: Food
    bottle: Bottle | None

    @property
    def shown(self) -> Food:
        """The food under the name it was asked for: a bottle's own, where it is one."""
        if self.bottle is None:
            return self.food
        return self.food._replace(key=self.bottle.key, name=self.bottle.name)

    @property
    def g_per_ml(self) -> Fraction | None:
        """The density that a bottle's own panel states [g/mL], or None."""
        panel = None if self.bottle is None else self.bottle.panel
        return None if panel is None else panel.g_per_ml


def foods_folder() -> Path:
    """Return the folder of the cook's own bottles; it may not exist."""
    return home() / "foods"


def bottle_file(name: str) -> Path:
    """Return where the bottle of a name lies; it may not exist."""
    return foods_folder() / f"{normalised(name)}{SUFFIX}"


def can_name(name: str) -> bool:
    """Whether a bottle can go by a name: letters, digits and hyphens, not too many."""
    stem = normalised(name)
    return 0 < len(stem) <= LONGEST_NAME and stem.replace("-", "").isalnum()


def own_foods() -> tuple[str, ...]:
    """Return the names of the cook's own bottles, in alphabetical order."""
    try:
        found = [entry.name for entry in foods_folder().iterdir()]
    except OSError:
        return ()
    stems = (name.removesuffix(SUFFIX) for name in found if name.endswith(SUFFIX))
    return tuple(sorted(stem for stem in stems if can_name(stem) and stem == normalised(stem)))


def near_bottles(name: str) -> tuple[str, ...]:
    """Return names of bottles that are much like a name."""
    return tuple(nearest(normalised(name), own_foods(), most=2))


def shelf() -> str:
    """Return the folder of the cook's own bottles, or nothing where there is none."""
    place = foods_folder()
    return str(place) if holds(place.is_dir) else ""


def bottle_on(shelf: str, name: str) -> Bottle | None:
    """Return the bottle of a name, or None where there is none.

    Args:
        shelf: the folder of bottles, or nothing.
        name: as a cook writes it; case, blanks, hyphens and underscores do not matter.

    Raises:
        RecordFaulty: its file has errors; carries every finding.
        FileUnreadable: it is there, and cannot be read.
    """
    if not shelf or not can_name(name):
        return None
    stem = normalised(name)
    file = Path(shelf, stem + SUFFIX)
    try:
        state = file.stat()
    except (OSError, ValueError):
        return None
    bottle, findings = _read(str(file), stem, state.st_mtime_ns, state.st_size)
    if bottle is None:
        raise RecordFaulty(findings)
    return bottle


def own_bottle(name: str) -> Bottle | None:
    """Return the cook's own bottle of a name, or None; see :func:`bottle_on`."""
    return bottle_on(shelf(), name)


def known_food(name: str) -> Known:
    """Return what goes by a name: a bottle of the cook's own first, then a food of the tables.

    Args:
        name: of a bottle; or key, printed name or alias of a food.

    Raises:
        FoodUnknown: neither does; carries near names.
        RecordFaulty: the bottle's file has errors.
    """
    bottle = own_bottle(name)
    if bottle is not None:
        return Known(food(bottle.like), bottle)
    try:
        return Known(food(name), None)
    except FoodUnknown as fault:
        unknown = fault

    def near() -> tuple[str, ...]:
        return tuple(dict.fromkeys((*near_bottles(name), *unknown.near)))

    raise FoodUnknown(name, near)


def find_bottles(sought: str) -> tuple[Bottle, ...]:
    """Return the bottles whose name, or what they are like, holds all the words.

    Args:
        sought: one or more words, in any order; parts of words will do. Nothing finds all.

    Returns:
        Bottles in order of their names; those with faults are left out.
    """
    words = normalised(sought).split("-") if sought.strip() else []
    place, found = shelf(), []
    for name in own_foods():
        try:
            bottle = bottle_on(place, name)
        except (RecordFaulty, FileUnreadable):
            continue
        if bottle is not None and all(word in _spoken(bottle) for word in words):
            found.append(bottle)
    return tuple(found)


def _spoken(bottle: Bottle) -> str:
    return normalised(f"{bottle.key} {bottle.name} {bottle.like}")


@lru_cache(maxsize=1024)
def _read(file: str, stem: str, _changed_ns: int, _size: int) -> tuple[Bottle | None, _Findings]:
    """Read a file once for as long as it stays as it is: many recipes name the same bottle."""
    return _read_bottle(read_bytes(file, most=MOST_BYTES, what="bottle"), key=stem, file=file)


_Findings = tuple[Finding, ...]


def _read_bottle(data: bytes, *, key: str, file: str) -> tuple[Bottle | None, _Findings]:
    from tarebook.recipe.bottle import read_bottle  # most recipes name no bottle

    return read_bottle(data, key=key, file=file)
