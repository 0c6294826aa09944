"""Every recipe of the house, worked out or taken from what is kept."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from pathlib import Path

from tarebook.findings import FileUnreadable
from tarebook.recipe.load import find_recipes, own_names, recipe_bytes, shipped_recipes
from tarebook.shelf.kept import digest_of, fingerprint, keep_rows, kept_rows
from tarebook.shelf.rows import Row, row_of

_AT_ONCE = 200


def gather(folders: Iterable[Path] = (), *, tell: Callable[[int], None] | None = None) -> list[Row]:
    """Return a row for every recipe.

    Args:
        folders: folders of recipes, or files; the cook's own and the shipped ones where none.
        tell: called once with how many must be worked out, before a long wait.

    Returns:
        Rows in order of their names.

    Raises:
        FileUnreadable: what was named is missing, or a folder without a recipe in it.
    """
    named = {str(where) for where in folders}
    names = [str(path) for where in sorted(named) for path in find_recipes(where)]
    if not names:
        names = sorted({*own_names(), *shipped_recipes()})
    ground = fingerprint()
    rows: list[Row] = []
    read: dict[str, tuple[bytes, bytes, str]] = {}
    for name in names:
        try:
            data, file = recipe_bytes(name)
        except FileUnreadable as fault:
            if name in named:
                raise
            rows.append(Row(name, "", "", None, None, (), str(fault)))
        else:
            read[name] = (digest_of(data, ground), data, file)
    kept = kept_rows(digest for digest, _, _ in read.values())
    wanting = [name for name, (digest, _, _) in read.items() if digest not in kept]
    if tell is not None and len(wanting) > _AT_ONCE:
        tell(len(wanting))
    rows += [_kept(name, kept[one[0]]) for name, one in read.items() if one[0] in kept]
    for start in range(0, len(wanting), _AT_ONCE):
        fresh = {}
        for name in wanting[start : start + _AT_ONCE]:
            digest, data, file = read[name]
            fresh[digest] = row_of(name, data, file=file)
            rows.append(fresh[digest])
        keep_rows(fresh)
    return sorted(rows, key=lambda row: row.name)


def _kept(name: str, values: list[object]) -> Row:
    tuples = (tuple(one) if isinstance(one, list) else one for one in values)
    return Row(name, *tuples)  # type: ignore[arg-type]
