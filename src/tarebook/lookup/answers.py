"""The documented answers of the service, read into values.

Shapes:
    ``/v1/foods/search`` and ``/v1/food/{fdcId}``: the service's OpenAPI description (FoodData
    Central API 1.0). A search lists each food with ``fdcId``, ``description``, ``dataType`` and
    ``foodNutrients`` of ``nutrientNumber``, ``unitName``, ``value``; the description names the
    same ``number`` and ``amount``, and both are read. A food lists ``foodNutrients`` of
    ``nutrient`` (``number``, ``unitName``) and ``amount``; ``foodPortions`` of ``amount``,
    ``measureUnit``, ``modifier``, ``gramWeight``; a pack's label has ``servingSize``,
    ``servingSizeUnit``, ``householdServingFullText`` and ``labelNutrients``.
    From memory: that a food sold by volume has its figures per 100 mL, that ``MLT`` and ``GRM``
    stand for mL and g, and the units of ``labelNutrients``, which is why those figures are
    only compared, never taken by themselves.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from fractions import Fraction
from typing import Any

from tarebook.findings import LookupFailed
from tarebook.lookup.amounts import exact, read_figures, spoken
from tarebook.lookup.unpack import read_json
from tarebook.tuples import NamedTuple

LABEL = "Branded"
_LONGEST, _LONGEST_LIST, _MOST_ID = 200, 1500, 10**10
_MOST_FOODS, _MOST_PORTIONS = 50, 30
_GRAMS, _MILLILITRES = ("g", "grm"), ("ml", "mlt")
_LABELS: Mapping[str, str] = {
    "calories": "energy_kcal",
    "fat": "fat_g",
    "saturatedFat": "saturated_g",
    "cholesterol": "cholesterol_mg",
    "sodium": "sodium_mg",
    "carbohydrates": "carbohydrate_g",
    "fiber": "fiber_g",
    "sugars": "sugars_g",
    "protein": "protein_g",
    "calcium": "calcium_mg",
    "iron": "iron_mg",
    "potassium": "potassium_mg",
    "postassium": "potassium_mg",  # as the documentation's own example spells it
}
_NEAR, _NEAR_LEAST = Fraction(3, 100), Fraction(1, 2)


class Hit(NamedTuple):
    """One food of a search.

    Attributes:
        fdc_id: its number in the table.
        description: what the table calls it.
        kind: ``Foundation``, ``SR Legacy``, ``Survey (FNDDS)`` or ``Branded``.
        brand: whose label it is, or empty.
        per: what the figures are per: ``100 g`` or ``100 mL``.
        figures: by our names; None where not known.
        remarks: what was refused.
    """

    fdc_id: int
    description: str
    kind: str
    brand: str
    per: str
    figures: Mapping[str, Fraction | None]
    remarks: tuple[str, ...]


class Found(NamedTuple):
    """What a search found.

    Attributes:
        foods: the likeliest first, as the service ranks them.
        total: how many there are, or None where it does not say.
        unread: how many of the answer could not be read.
    """

    foods: tuple[Hit, ...]
    total: int | None
    unread: int


class Portion(NamedTuple):
    """A measure of a food and what it weighs [g]."""

    measure: str
    mass_g: Fraction


class Serving(NamedTuple):
    """The serving of a label.

    Attributes:
        size: in its unit.
        unit: ``g`` or ``mL``.
        household: the same as the label says it, or empty.
    """

    size: Fraction
    unit: str
    household: str


class TableFood(NamedTuple):
    """One food of the table, with every figure that we read.

    Attributes:
        fdc_id, description, kind, brand, per, figures, remarks: as of a search.
        published: when the table took it up, as it says, or empty.
        portions: measures with their weights.
        serving: of a label, or None.
        ingredients: as a label lists them, or empty.
    """

    fdc_id: int
    description: str
    kind: str
    brand: str
    per: str
    figures: Mapping[str, Fraction | None]
    remarks: tuple[str, ...]
    published: str
    portions: tuple[Portion, ...]
    serving: Serving | None
    ingredients: str


def read_search(data: bytes) -> Found:
    """Return what a search found.

    Raises:
        LookupFailed: the answer is none of a search.
    """
    answer = read_json(data)
    listed = answer.get("foods") if isinstance(answer, dict) else None
    if not isinstance(listed, list):
        raise _undocumented()
    hits = [_hit(one) for one in listed[:_MOST_FOODS]]
    foods = tuple(hit for hit in hits if hit is not None)
    if listed and not foods:
        raise _undocumented()
    return Found(foods, _count(answer.get("totalHits")), len(hits) - len(foods))


def read_food(data: bytes, *, fdc_id: int) -> TableFood:
    """Return a food of the table.

    Args:
        data: the answer.
        fdc_id: the number that was asked for; an answer about another is refused.

    Raises:
        LookupFailed: the answer is none about this food.
    """
    answer = read_json(data)
    hit = _hit(answer)
    if hit is None or not isinstance(answer.get("foodNutrients"), list):
        raise _undocumented()
    if hit.fdc_id != fdc_id:
        raise LookupFailed(f"the answer is about number {hit.fdc_id}, not {fdc_id}", passing=True)
    serving = _serving(answer) if hit.kind == LABEL else None
    remarks = (*hit.remarks, *_against_label(answer, hit.figures, serving))
    return TableFood(
        *hit._replace(remarks=remarks),
        published=_text(answer.get("publicationDate")),
        portions=tuple(_portions(answer.get("foodPortions"))),
        serving=serving,
        ingredients=_text(answer.get("ingredients"), most=_LONGEST_LIST),
    )


def _undocumented() -> LookupFailed:
    return LookupFailed("the answer is not what the service documents", passing=True)


def _hit(one: Any) -> Hit | None:
    if not isinstance(one, dict):
        return None
    fdc_id, description = _count(one.get("fdcId")), _text(one.get("description"))
    if fdc_id is None or not description:
        return None
    per_ml = _folded(one.get("servingSizeUnit")) in _MILLILITRES
    kind = _text(one.get("dataType")) or "kind not told"
    per_ml = per_ml and kind == LABEL
    read = read_figures(one.get("foodNutrients"), per_ml=per_ml)
    return Hit(
        fdc_id=fdc_id,
        description=description,
        kind=kind,
        brand=_text(one.get("brandName")) or _text(one.get("brandOwner")),
        per="100 mL" if per_ml else "100 g",
        figures=read.figures,
        remarks=read.remarks,
    )


def _count(value: object) -> int | None:
    if isinstance(value, bool) or not isinstance(value, int):
        return None
    return value if 0 <= value < _MOST_ID else None


def _text(value: object, *, most: int = _LONGEST) -> str:
    """Return a text of the answer fit for a screen and a file: one line, nothing that steers."""
    if not isinstance(value, str):
        return ""
    plain = "".join(c if c.isprintable() else " " for c in value[: most * 4])
    words = " ".join(plain.split())
    return words if len(words) <= most else words[: most - 1].rstrip() + "…"


def _folded(value: object) -> str:
    return _text(value).lower()


def _serving(answer: Mapping[str, Any]) -> Serving | None:
    size, unit = exact(answer.get("servingSize")), _folded(answer.get("servingSizeUnit"))
    if size is None or not 0 < size <= 5000 or unit not in (*_GRAMS, *_MILLILITRES):
        return None
    household = _text(answer.get("householdServingFullText"), most=60)
    return Serving(size, "g" if unit in _GRAMS else "mL", household)


def _against_label(
    answer: Mapping[str, Any], figures: Mapping[str, Fraction | None], serving: Serving | None
) -> Iterator[str]:
    """Yield where a label's own figure and the one per 100 g or mL are not of the same food."""
    label = answer.get("labelNutrients")
    if serving is None or not isinstance(label, dict):
        return
    for word, field in _LABELS.items():
        inner = label.get(word)
        printed = exact(inner.get("value")) if isinstance(inner, dict) else None
        figure = figures[field]
        if printed is None or figure is None:
            continue
        reckoned = figure * serving.size / 100
        if abs(printed - reckoned) > max(reckoned * _NEAR, _NEAR_LEAST):
            yield (
                f"{spoken(field)} by the label is {float(printed):g} in a serving, by the "
                f"figure per 100 {serving.unit} {float(reckoned):g}"
            )


def _portions(listed: object) -> Iterator[Portion]:
    for one in listed[:_MOST_PORTIONS] if isinstance(listed, list) else []:
        if not isinstance(one, dict):
            continue
        mass_g, measure = exact(one.get("gramWeight")), _measure(one)
        if mass_g is not None and 0 < mass_g < 100_000 and measure:
            yield Portion(measure, mass_g)


def _measure(one: Mapping[str, Any]) -> str:
    """Return a portion's measure in words; each kind of row says it in another place."""
    told = _text(one.get("portionDescription"), most=60)
    if told:
        return told
    unit = one.get("measureUnit")
    name = _text(unit.get("name"), most=40) if isinstance(unit, dict) else ""
    name = "" if name == "undetermined" else name
    modifier = _text(one.get("modifier"), most=40)
    amount = exact(one.get("amount"))
    number = "" if amount is None else f"{float(amount):g}"
    words = " ".join(part for part in (name, modifier) if part)
    return f"{number} {words}".strip() if words else ""
