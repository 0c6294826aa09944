"""Writes a recipe as the clean, commented TOML that a cook would like to find."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from fractions import Fraction
from pathlib import Path

from tarebook.figures.foods import food, normalised
from tarebook.findings import FoodUnknown
from tarebook.quantities.number import format_fraction
from tarebook.recipe import keys
from tarebook.recipe.model import (
    Drying,
    Finish,
    FinishBy,
    HeatStep,
    Ingredient,
    Meat,
    MeatForm,
    Panel,
    Recipe,
    ScaleBy,
    Soak,
    Surface,
)
from tarebook.recipe.panel import PANEL_FIELDS
from tarebook.toml.layout import list_text
from tarebook.toml.locate import key_text, quoted

SCHEMA = "../reference/recipe.schema.json"
"""Where the schema lies, seen from a shipped recipe."""

Row = tuple[str, str]
"""A key and its value, the value already in TOML."""


def schema_beside(file: Path) -> str:
    """Return the way to the schema from a recipe inside this project, or nothing outside of it.

    The path of one machine means nothing on another, nor on this one after the next install.

    Args:
        file: where the recipe is written.
    """
    from tarebook.where import folder

    reference, place = folder("reference"), file.resolve().parent
    if reference.parent not in (place, *place.parents):
        return ""
    up = "../" * len(place.relative_to(reference.parent).parts)
    return f"{up}{reference.name}/{Path(SCHEMA).name}"


def to_toml(recipe: Recipe, *, schema: str = SCHEMA, hints: bool = False) -> str:
    """Return the text of a recipe file; reading it gives the same recipe.

    Args:
        recipe: what to write.
        schema: path or address of the JSON Schema, for editors that complete and check; empty
            for none.
        hints: whether to show what was left unsaid, as lines to uncomment.
    """
    blocks = [
        (f"#:schema {schema}\n" if schema else "") + _rows(_top(recipe), keys.TOP, hints),
        _section("meat", _meat(recipe.meat), hints),
        *_parts(recipe.ingredients, hints),
        _section("soak", _soak(recipe.soak), hints),
        _section("heat", _heat(recipe.heat), hints),
        _section("drying", _drying(recipe.drying), hints),
        _section("method", _method(recipe), hints),
    ]
    return "\n".join(block for block in blocks if block)


def plain_number(value: Fraction) -> str:
    """Return a number exactly: as a decimal where it ends, otherwise as a fraction.

    Example:
        >>> plain_number(Fraction(25, 4)), plain_number(Fraction(5, 3))
        ('6.25', '1 2/3')
    """
    rest, places = value.denominator, 0
    while rest % 10 == 0 or rest % 5 == 0 or rest % 2 == 0:
        rest //= 10 if rest % 10 == 0 else 5 if rest % 5 == 0 else 2
        places += 1
    if rest != 1:
        return format_fraction(value)
    digits = f"{value.numerator * 10**places // value.denominator:0{places + 1}d}"
    whole, part = (digits[:-places], digits[-places:]) if places else (digits, "")
    return f"{whole}.{part}".rstrip("0").rstrip(".") if places else whole


def _section(name: str, rows: Iterable[Row], hints: bool) -> str:
    body = _rows(rows, keys.SECTIONS[name], hints)
    return f"# {keys.SAYS_OF_SECTION[name]}\n[{name}]\n{body}" if body else ""


def _rows(rows: Iterable[Row], known: Mapping[str, keys.Key], hints: bool) -> str:
    written = dict(rows)
    lines = [f"{name} = {value}\n" for name, value in written.items()]
    if hints:
        unsaid = [key for key in known.values() if key.name not in written]
        lines += [f"# {key.name} = {key.example}  # {key.says}\n" for key in unsaid]
    return "".join(lines)


def _top(recipe: Recipe) -> Iterable[Row]:
    yield "title", quoted(recipe.title)
    if recipe.about:
        yield "about", quoted(recipe.about)
    if recipe.cup != "us":
        yield "cup", quoted(recipe.cup)


def _meat(meat: Meat) -> Iterable[Row]:
    yield "food", quoted(meat.food)
    yield "amount", quoted(meat.amount.text.strip())
    if meat.thickness_mm is not None:
        yield "thickness", quoted(meat.thickness_written or _millimetres(meat.thickness_mm))
    if meat.form is not MeatForm.STRIPS:
        yield "form", quoted(meat.form.value)
    if meat.wild is not None and meat.wild is not food(meat.food).wild:
        yield "wild", _flag(meat.wild)


def _millimetres(thickness_mm: tuple[float, float, float]) -> str:
    low, _, high = thickness_mm
    return f"{low} mm" if low == high else f"{low}-{high} mm"


def _parts(ingredients: Iterable[Ingredient], hints: bool) -> Iterable[str]:
    """Return a block for each part, in the order in which they first come up."""
    parts: dict[str, list[str]] = {}
    for ingredient in ingredients:
        line = f"{key_text(ingredient.name)} = {_ingredient(ingredient)}\n"
        parts.setdefault(ingredient.part.value, []).append(line)
    for part, lines in parts.items():
        yield f"# {keys.PARTS[part]}\n[{part}]\n{''.join(lines)}"


def _ingredient(ingredient: Ingredient) -> str:
    rows = dict(_ingredient_rows(ingredient))
    return rows["amount"] if len(rows) == 1 else _inline(rows)


def _ingredient_rows(ingredient: Ingredient) -> Iterable[Row]:
    if not _is_its_name(ingredient):
        yield "food", quoted(ingredient.known_as)
    yield "amount", quoted(ingredient.amount.text.strip())
    if ingredient.scale is not ScaleBy.MEAT:
        yield "scale", quoted(ingredient.scale.value)
    form = [word for word in ingredient.form if word not in ingredient.amount.form]
    if form:
        yield "form", quoted(", ".join(form))
    if ingredient.note:
        yield "note", quoted(ingredient.note)
    if ingredient.strength_percent is not None:
        yield "strength", quoted(f"{plain_number(ingredient.strength_percent)} %")
    own = ingredient.bottle
    if ingredient.panel is not None and (own is None or ingredient.panel != own.panel):
        yield "panel", _inline(dict(panel_rows(ingredient.panel)))


def _is_its_name(ingredient: Ingredient) -> bool:
    if ingredient.bottle is not None:
        return normalised(ingredient.name) == ingredient.bottle.key
    try:
        return food(ingredient.name).key == ingredient.food
    except FoodUnknown:
        return False


def _inline(rows: Mapping[str, str]) -> str:
    return "{ " + ", ".join(f"{name} = {value}" for name, value in rows.items()) + " }"


def panel_rows(panel: Panel) -> Iterable[Row]:
    """Yield the rows of a panel: its serving, and every figure that it prints."""
    yield "serving", quoted(_serving(panel))
    for name, field in PANEL_FIELDS.items():
        figure: Fraction | None = getattr(panel, field)
        if figure is not None:
            unit = _UNITS[field.rpartition("_")[2]]
            sign = "<" if field in panel.under else ""
            yield name, quoted(f"{sign}{plain_number(figure)} {unit}")


_UNITS = {"g": "g", "mg": "mg", "ug": "mcg", "kcal": "kcal"}


def _serving(panel: Panel) -> str:
    volume = "" if panel.serving_ml is None else _spoons(panel.serving_ml)
    mass = "" if panel.serving_g is None else f"{plain_number(panel.serving_g)} g"
    return f"{volume} ({mass})" if volume and mass else volume or mass


# A panel's own measures [mL]; whole ones, and the parts of them that panels print.
_LABEL_MEASURES = (("cup", 240, (4, 3, 2, 1)), ("Tbsp", 15, (2, 1)), ("tsp", 5, (4, 2, 1)))


def _spoons(volume_ml: Fraction) -> str:
    """Return the volume of a serving as panels print it where it is one, exactly."""
    for word, measure_ml, parts in _LABEL_MEASURES:
        number = volume_ml / measure_ml
        if number <= 4 and number.denominator in parts:
            return f"{format_fraction(number)} {word}"
    return f"{plain_number(volume_ml)} mL"


def _soak(soak: Soak) -> Iterable[Row]:
    if soak.stated:
        low, _, high = soak.hours
        yield "hours", _hours(soak.hours_written, low, high)
    if soak.surface is not Surface.DRAINED:
        yield "surface", quoted(soak.surface.value)
    if not soak.poured_away:
        yield "poured-away", _flag(soak.poured_away)
    if soak.temperature_f is not None:
        yield "temperature", quoted(soak.temperature_written or _degrees(soak.temperature_f))
    if soak.used_before:
        yield "used-before", _flag(soak.used_before)


def _heat(heat: HeatStep) -> Iterable[Row]:
    if heat is not HeatStep.UNSTATED:
        yield "step", quoted(heat.value)


def _drying(drying: Drying) -> Iterable[Row]:
    if drying.temperature_f is not None:
        yield "temperature", quoted(drying.temperature_written or _degrees(drying.temperature_f))
    if drying.hours is not None:
        yield "hours", _hours(drying.hours_written, *drying.hours)
    if drying.finish is not None:
        yield drying.finish.by.value, _finish(drying.finish)


def _finish(finish: Finish) -> str:
    low, _, high = finish.value
    if finish.by in (FinishBy.MOISTURE_TO_PROTEIN, FinishBy.WATER_ACTIVITY):
        return _number_or_quoted(finish.written or f"{low}-{high}")
    return quoted(finish.written or f"{_percent(low)}-{_percent(high)} %")


def _percent(fraction: float) -> str:
    return plain_number(Fraction(repr(fraction)) * 100)


def _degrees(temperature_f: tuple[float, float]) -> str:
    low, high = temperature_f
    return f"{low} F" if low == high else f"{low}-{high} F"


def _hours(written: str, low: float, high: float) -> str:
    return _number_or_quoted(written or (f"{low}" if low == high else f"{low}-{high}"))


def _number_or_quoted(text: str) -> str:
    """Return a plain number as it is; anything else, however near to one, in quotes."""
    whole = text.isascii() and text.isdigit() and text == str(int(text[:15]))
    return text if whole or _is_shortest_decimal(text) else quoted(text)


def _is_shortest_decimal(text: str) -> bool:
    whole, point, part = text.partition(".")
    digits = text.isascii() and whole.isdigit() and part.isdigit() and bool(point)
    return digits and text == repr(float(text))


def _flag(value: bool) -> str:
    return "true" if value else "false"


def _method(recipe: Recipe) -> Iterable[Row]:
    if recipe.steps:
        yield "steps", list_text(recipe.steps, "steps = ")
    if recipe.notes:
        yield "notes", list_text(recipe.notes, "notes = ")
