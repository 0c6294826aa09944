"""What the list tells of one recipe."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping, Sequence
from fractions import Fraction

from tarebook.findings import TarebookError
from tarebook.nutrition import estimate, facts_of
from tarebook.nutrition.facts import OwnYield
from tarebook.nutrition.range import Range
from tarebook.quantities.drawer import choose_drawer
from tarebook.recipe.read import read_recipe
from tarebook.scaling import ScaledRecipe, scale_by_factor
from tarebook.tuples import NamedTuple

Three = tuple[float, float, float]


class Row(NamedTuple):
    """One recipe on the list, at its own size.

    Attributes:
        name: what to call it by on the command line.
        title: as its file has it; empty where the file has errors.
        meat: key of the food that is dried.
        sodium_mg: low, likely, high in a finished ounce of 28.35 g [mg]; None without a total.
        sugars_g: the same for total sugars [g].
        at_least: figures of these two to which something unknown would add.
        fault: why there is no figure at all; empty where there is.
    """

    name: str
    title: str
    meat: str
    sodium_mg: Three | None
    sugars_g: Three | None
    at_least: tuple[str, ...]
    fault: str = ""


class Kept(NamedTuple):
    """A row, and the names by which its recipe asks for foods; None where they cannot be told."""

    row: Row
    foods: tuple[str, ...] | None


def row_of(
    name: str,
    data: bytes,
    *,
    file: str,
    drawer: str = "basic",
    own_yield: OwnYield | None = None,
    in_arrays: bool = False,
) -> Row:
    """Return the row of a recipe file; a faulty one has a row that says so.

    Args:
        name: what the list calls it.
        data: the bytes of the file.
        file: its name, for the fault.
        drawer: name of the measuring set: sodium is reckoned from its scoops.
        own_yield: what the cook's own batches say of this recipe.
        in_arrays: as for ``nutrition.estimate``: the same row, quicker where there are hundreds.
    """
    recipe, findings = read_recipe(data, file=file)
    if recipe is None:
        return Row(name, "", "", None, None, (), _faulty(len(findings)))
    try:
        scaled = scale_by_factor(recipe, Fraction(1), choose_drawer(drawer))
        return _figured(name, scaled, own_yield, in_arrays=in_arrays)
    except TarebookError as fault:
        return Row(name, recipe.title, recipe.meat.food, None, None, (), str(fault))


def foods_named(data: bytes) -> tuple[str, ...]:
    """Return the names by which a recipe that could be read asks for foods."""
    import tomllib

    from tarebook.figures.foods import normalised
    from tarebook.recipe.named_in import foods_of

    document = tomllib.loads(data.decode("utf-8-sig"))
    return tuple(dict.fromkeys(normalised(name) for name in foods_of(document)))


def _faulty(count: int) -> str:
    faults = "a fault" if count == 1 else f"{count} faults"
    return f"its file has {faults}: see tarebook check"


def _figured(
    name: str, scaled: ScaledRecipe, own_yield: OwnYield | None, *, in_arrays: bool
) -> Row:
    from tarebook.safety.curing import guard_scaled

    guard_scaled(scaled)
    recipe = scaled.recipe
    found = estimate(facts_of(scaled, own_yield=own_yield), in_arrays=in_arrays).per_ounce
    sodium, sugars = found["sodium_mg"], found["sugars_g"]
    floors = [one for one in ("sodium_mg", "sugars_g") if _floor(found[one])]
    return Row(name, recipe.title, recipe.meat.food, _three(sodium), _three(sugars), tuple(floors))


def _three(found: Range | None) -> Three | None:
    # Plain floats, whatever kind of number the draws were: they are kept as text.
    return None if found is None else (float(found.low), float(found.likely), float(found.high))


def _floor(found: Range | None) -> bool:
    return found is not None and found.at_least


def _last(value: Three | None, place: int) -> tuple[bool, float]:
    """Return a key that puts what is not known behind everything that is."""
    return (True, 0.0) if value is None else (False, value[place])


SORTS: Mapping[str, Callable[[Row], tuple[bool, float] | str]] = {
    "name": lambda row: row.name,
    "title": lambda row: row.title.casefold() or row.name,
    "meat": lambda row: row.meat or "~",
    "sodium": lambda row: _last(row.sodium_mg, 1),
    "sugars": lambda row: _last(row.sugars_g, 1),
}
"""What the list can be sorted by; figures by their likely value, unknown ones last."""


def sort_rows(rows: Iterable[Row], by: str, *, backwards: bool = False) -> list[Row]:
    """Return rows in order; rows alike in that stay in order of their names.

    Args:
        rows: in any order.
        by: one of :data:`SORTS`.
        backwards: the other way round; what is not known still comes last.
    """
    key = SORTS[by]
    found = sorted(rows, key=lambda row: row.name)
    if not backwards:
        return sorted(found, key=key)
    known = [row for row in found if not _unknown(key(row))]
    unknown = [row for row in found if _unknown(key(row))]
    return sorted(known, key=key, reverse=True) + unknown


def under(rows: Sequence[Row], figure: str, limit: float) -> tuple[list[Row], int]:
    """Return the rows whose high estimate is at most a limit, and how many cannot be told.

    Args:
        rows: in any order.
        figure: ``sodium_mg`` or ``sugars_g``.
        limit: in the unit of the figure, for an ounce.

    Returns:
        Rows in the order given. One without a total, or with something missing from it, is never
        among them: it is counted apart.
    """
    known = [row for row in rows if getattr(row, figure) and figure not in row.at_least]
    return [row for row in known if getattr(row, figure)[2] <= limit], len(rows) - len(known)


def _unknown(key: tuple[bool, float] | str) -> bool:
    return isinstance(key, tuple) and key[0]
