"""Every recipe of the house, worked out or taken from what is kept."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from pathlib import Path

from tarebook.files import read_bytes
from tarebook.findings import FileUnreadable
from tarebook.nutrition.facts import OwnYield
from tarebook.recipe.load import (
    SUFFIX,
    find_recipes,
    own_names,
    own_recipes,
    recipe_bytes,
    shipped_recipes,
)
from tarebook.shelf.kept import Ground, digest_of, ground_of, keep_rows, kept_rows
from tarebook.shelf.many import Wanted, cores, rows_of, rows_of_many
from tarebook.shelf.rows import Kept, Row
from tarebook.toml.text import MOST_BYTES
from tarebook.where import folder

_AT_ONCE = 200
_MANY = 400  # fewer are there before further processes, and numpy in them, would be

Tell = Callable[[int, int], None]
"""Told how many recipes are worked out by now, and how many must be in all."""

OwnYields = Callable[[Sequence[tuple[str, bytes]]], Mapping[str, OwnYield]]
"""What the cook's own batches say of recipes: file name and bytes of each, to what is said."""


def gather(
    folders: Iterable[Path] = (),
    *,
    drawer: str = "basic",
    own_yields: OwnYields | None = None,
    tell: Tell | None = None,
) -> list[Row]:
    """Return a row for every recipe.

    Args:
        folders: folders of recipes, or files; the cook's own and the shipped ones where none.
        drawer: name of the measuring set.
        own_yields: asks what the cook's own batches say of recipes.
        tell: called again and again while recipes are worked out: how many are, and of how many.

    Returns:
        Rows in order of their names.

    Raises:
        FileUnreadable: what was named is missing, or a folder without a recipe in it.
    """
    rows: list[Row] = []
    read: list[Wanted] = []
    for one in _all_read({str(where) for where in folders}):
        if isinstance(one, Row):
            rows.append(one)
        else:
            read.append(one)
    said = own_yields([(one.file, one.data) for one in read]) if own_yields else {}
    read = [one._replace(own_yield=said.get(one.file)) for one in read] if said else read
    ground = ground_of(drawer)
    digests = [digest_of(one.data, ground, one.own_yield) for one in read]
    kept = kept_rows(digests, ground)
    wanting = []
    for one, digest in zip(read, digests, strict=True):
        if digest in kept:
            rows.append(_kept(one.name, kept[digest]))
        else:
            wanting.append((digest, one))
    rows += _worked_out(wanting, drawer, ground, tell)
    return sorted(rows, key=lambda row: row.name)


def _all_read(named: set[str]) -> Iterator[Wanted | Row]:
    """Yield every recipe with its bytes; one that cannot be read is a row that says so."""
    for name, path in _named(named) if named else _of_the_house():
        try:
            if path is None:
                data, file = recipe_bytes(name)
            else:
                data, file = read_bytes(path, most=MOST_BYTES, what="recipe"), f"{name}{SUFFIX}"
        except FileUnreadable as fault:
            if name in named:
                raise
            yield Row(name, "", "", None, None, (), str(fault))
        else:
            yield Wanted(name, file, data)


def _named(folders: set[str]) -> Iterator[tuple[str, None]]:
    return ((str(path), None) for where in sorted(folders) for path in find_recipes(where))


def _of_the_house() -> Iterator[tuple[str, Path]]:
    """Yield the name and the file of each recipe; the cook's own wins over a shipped one."""
    shipped, own = folder("recipes"), own_recipes()
    places = {**dict.fromkeys(shipped_recipes(), shipped), **dict.fromkeys(own_names(), own)}
    return ((name, place / f"{name}{SUFFIX}") for name, place in sorted(places.items()))


def _worked_out(
    wanting: Sequence[tuple[bytes, Wanted]], drawer: str, ground: Ground, tell: Tell | None
) -> Iterator[Row]:
    """Yield rows; each few hundred are kept as soon as they are there."""
    digests = [digest for digest, _ in wanting]
    done = 0
    for some in _in_heaps([one for _, one in wanting], drawer):
        keep_rows(dict(zip(digests[done : done + len(some)], some, strict=True)), ground)
        done += len(some)
        if tell is not None:
            tell(done, len(wanting))
        yield from (one.row for one in some)


def _in_heaps(recipes: Sequence[Wanted], drawer: str) -> Iterator[list[Kept]]:
    many = len(recipes) >= _MANY
    if many and cores() > 1:
        yield from rows_of_many(recipes, drawer, at_once=2 * _AT_ONCE)
        return
    for start in range(0, len(recipes), _AT_ONCE):
        yield rows_of(recipes[start : start + _AT_ONCE], drawer, in_arrays=many)


def _kept(name: str, values: list[object]) -> Row:
    tuples = (tuple(one) if isinstance(one, list) else one for one in values)
    return Row(name, *tuples)  # type: ignore[arg-type]
