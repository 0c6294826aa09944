"""What a spoon, a cup or a clove of a food weighs, and how sure that is.

Every measure of ``reference/measures.csv`` stays readable; one for each food and form is preferred.
The doubt of a weight (``spread``, relative, one sigma) stands on the row where it is known to be
wide, else it follows the row's confidence, from the working values ``density-spread-...``.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from fractions import Fraction
from functools import cache, lru_cache

from tarebook.figures.foods import food
from tarebook.figures.table import Row, cells, rows_of
from tarebook.figures.working import value as working
from tarebook.tuples import NamedTuple

_FILE = "measures.csv"


class Density(NamedTuple):
    """How much a measured volume of a food weighs.

    Attributes:
        g_per_ml: density [g/mL], exact as the weight and the volume on the row give it.
        form: form the weight is for, or an empty string.
        source: id of the source.
        confidence: measured, handbook, common practice or from memory.
        spread: relative doubt, one sigma (0.03 is 3 %).
        note: which form was taken where none was said, and what to keep in mind.
    """

    g_per_ml: Fraction
    form: str
    source: str
    confidence: str
    spread: float
    note: str


class CountMass(NamedTuple):
    """What one of a food weighs: one clove, one slice, one dash. As ``Density``, but in grams."""

    grams: Fraction
    form: str
    source: str
    confidence: str
    spread: float
    note: str


class Measure(NamedTuple):
    """One row of the table.

    Attributes:
        measure: in words, such as ``1/4 cup`` or ``cup, packed``.
        quantity: how many units it is.
        unit: teaspoon, cup, clove, slice and so on.
        form: form of the food, or size of the piece.
        volume_ml: volume of the whole measure [mL], or None for a count.
        grams: weight of the whole measure [g].
        density_g_per_ml: as printed, 4 digits, or an empty string.
        source: id of the source.
        confidence: measured, handbook, common practice or from memory.
        preferred: the row to convert with, for this food and form.
        when_form_not_said: the row to convert with where the cook named no form.
        spread: relative doubt, one sigma.
        note: what to keep in mind.
    """

    measure: str
    quantity: Fraction
    unit: str
    form: str
    volume_ml: Fraction | None
    grams: Fraction
    density_g_per_ml: str
    source: str
    confidence: str
    preferred: bool
    when_form_not_said: bool
    spread: float
    note: str


@cache
def measures(food_key: str) -> tuple[Measure, ...]:
    """Return every measure of a food, in table order.

    Raises:
        FoodUnknown: no food goes by that name.
    """
    return tuple(_measure(row) for row in rows_of(_FILE, food(food_key).key))


@lru_cache(maxsize=4096)
def density(food_key: str, form: tuple[str, ...] = ()) -> Density | None:
    """Return the density to turn a volume of a food into a weight, or None where none is held.

    Args:
        food_key: key of the food, or any name it goes by.
        form: words for its form, such as ``("packed",)``; other words do no harm.

    Returns:
        The preferred density of the form; of the usual form, with a wider doubt and a note, where
        the form was not said. None for salt of unknown crystal and for curing salts: weigh those.

    Raises:
        FoodUnknown: no food goes by that name.
    """
    known = food(food_key)
    if known.curing or known.crystal_unknown:
        return None
    rows = [row for row in measures(known.key) if row.preferred and row.volume_ml]
    if not rows:
        return None
    named = _named(rows, form)
    if named is None and len(rows) > 1:
        return _density(*_usual(rows))
    return _density(named or rows[0], 0.0, "")


@lru_cache(maxsize=1024)
def count_mass(food_key: str, unit: str, form: tuple[str, ...] = ()) -> CountMass | None:
    """Return what one clove, slice, stalk, dash … of a food weighs, or None where none is held.

    Args:
        food_key: key of the food, or any name it goes by.
        unit: singular name of what is counted.
        form: words for its size or form, such as ``("medium",)``.

    Returns:
        The weight for that size; where the size was not said, of a medium one, else of the middle
        one, with a note.

    Raises:
        FoodUnknown: no food goes by that name.
    """
    rows = [row for row in measures(food_key) if row.unit == unit and row.volume_ml is None]
    if not rows:
        return None
    named = _named(rows, form)
    if named is None and len({row.form for row in rows}) > 1:
        return _count_mass(*_middle(rows))
    return _count_mass(named or max(rows, key=_fewest_rounding), 0.0, "")


def _fewest_rounding(row: Measure) -> Fraction:
    return row.quantity


def _named(rows: Sequence[Measure], form: Sequence[str]) -> Measure | None:
    asked = {part for word in form for part in _form_words(word)}
    ranked = [(len(asked & _form_words(row.form)), row.when_form_not_said, row) for row in rows]
    hits = [entry for entry in ranked if entry[0]]
    return max(hits, key=_shared_words)[2] if hits else None


def _shared_words(entry: tuple[int, bool, Measure]) -> tuple[int, bool, int]:
    shared, usual, row = entry
    return shared, usual, -len(row.form)


def _form_words(text: str) -> frozenset[str]:
    bare = text.lower().replace(",", " ").replace(";", " ")
    return frozenset(bare.split()) - {"or", "of", "and", "by", "one"}


def _usual(rows: Sequence[Measure]) -> tuple[Measure, float, str]:
    taken = next(row for row in rows if row.when_form_not_said)
    mean = taken.grams / (taken.volume_ml or 1)
    gap = max(abs(row.grams / (row.volume_ml or 1) / mean - 1) for row in rows)
    others = _listed(row.form for row in rows if row.form and row is not taken)
    note = f"form not said: taken as {taken.form or 'the general row'}; also held: {others}"
    return taken, float(gap) * working("density-spread-form").likely, note


def _middle(rows: Sequence[Measure]) -> tuple[Measure, float, str]:
    ordered = sorted(rows, key=_one)
    medium = [row for row in ordered if "medium" in row.form]
    taken = medium[0] if medium else ordered[len(ordered) // 2]
    gap = max(abs(float(_one(row) / _one(taken)) - 1) for row in rows)
    others = _listed(row.form for row in ordered if row.form and row is not taken)
    note = f"size not said: taken as {taken.form or taken.measure}; also held: {others}"
    return taken, gap * working("density-spread-form").likely, note


def _one(row: Measure) -> Fraction:
    return row.grams / row.quantity


def _listed(forms: Iterable[str]) -> str:
    return " / ".join(dict.fromkeys(forms)) or "none"


def _density(row: Measure, more: float, note: str) -> Density:
    return Density(
        g_per_ml=row.grams / (row.volume_ml or 1),
        form=row.form,
        source=row.source,
        confidence=row.confidence,
        spread=row.spread + more,
        note="; ".join(part for part in (note, row.note) if part),
    )


def _count_mass(row: Measure, more: float, note: str) -> CountMass:
    return CountMass(
        grams=_one(row),
        form=row.form,
        source=row.source,
        confidence=row.confidence,
        spread=row.spread + more,
        note="; ".join(part for part in (note, row.note) if part),
    )


def _measure(row: Row) -> Measure:
    text = cells(_FILE, row)
    return Measure(
        measure=text["measure"],
        quantity=Fraction(text["quantity"]),
        unit=text["unit"],
        form=text["form"],
        volume_ml=Fraction(text["volume_ml"]) if text["volume_ml"] else None,
        grams=Fraction(text["grams"]),
        density_g_per_ml=text["density_g_per_ml"],
        source=text["source"],
        confidence=text["confidence"],
        preferred=text["preferred"] == "yes",
        when_form_not_said=text["when_form_not_said"] == "yes",
        spread=float(text["spread"] or _spread(text["confidence"])),
        note=text["note"],
    )


def _spread(confidence: str) -> float:
    return working(f"density-spread-{confidence.replace(' ', '-')}").likely
