"""From the text of a recipe file to a ``Recipe``, with everything wrong said at once.

The road: ``text`` (bytes to text), ``syntax`` (text to TOML values), ``fields`` and
``ingredients`` (values understood), here (put together), ``fault`` (findings with their lines).
"""

from __future__ import annotations

from collections.abc import Mapping
from contextlib import suppress
from typing import Any

from tarebook.figures.foods import Food
from tarebook.findings import Finding
from tarebook.recipe import keys
from tarebook.recipe.fields import Reading, Written, read_table
from tarebook.recipe.ingredients import MOST_INGREDIENTS, read_part
from tarebook.recipe.model import (
    Drying,
    Finish,
    FinishBy,
    HeatStep,
    Ingredient,
    Meat,
    MeatForm,
    Part,
    Recipe,
    Soak,
    Surface,
)
from tarebook.toml.document import read_document
from tarebook.toml.fault import Faults, TooManyErrors
from tarebook.toml.locate import Lines
from tarebook.toml.syntax import Parsed

_EMPTY = '"tarebook new" starts a recipe'
FINISH_SPREAD: Mapping[FinishBy, tuple[float, float]] = {
    # Working values of ours: a cook who aims at a stated finish is taken to hit it about twice
    # as well as one who states none. Yield moves far less than the water behind it.
    FinishBy.MOISTURE_TO_PROTEIN: (0.80, 1.25),
    FinishBy.MOISTURE: (0.80, 1.25),
    FinishBy.YIELD: (0.94, 1.06),
    FinishBy.WATER_ACTIVITY: (0.94, 1.06),
}
"""Low and high of a finish stated as one value, as factors of it."""


def read_recipe(source: bytes | str, *, file: str) -> tuple[Recipe | None, tuple[Finding, ...]]:
    """Return a recipe and everything there is to say about its file, in file order.

    Args:
        source: the bytes of the file, or its text.
        file: its name as the cook gave it, for the findings.

    Returns:
        The recipe, or None where there is an error; and all findings, notes too.

    Example:
        >>> recipe, findings = read_recipe('title = "Strips"', file="strips.toml")
        >>> print(findings[0].message)
        [meat] is missing
    """

    def understand(parsed: Parsed, faults: Faults, lines: Lines) -> Recipe | None:
        return _recipe(parsed.document, Reading(faults, whole=parsed.whole), file, lines)

    return read_document(source, understand, file=file, empty_hint=_EMPTY)


def recipe_of(
    document: Mapping[str, object], *, file: str
) -> tuple[Recipe | None, tuple[Finding, ...]]:
    """Return the recipe of TOML values that never were a file, and its findings without lines.

    Args:
        document: the values of a recipe file, as ``tomllib`` would give them.
        file: the name to call it by.
    """
    faults = Faults()
    recipe: Recipe | None = None
    with suppress(TooManyErrors):
        recipe = _recipe(document, Reading(faults), file, {})
    return (None if faults.errors else recipe), faults.findings(file, None)


def _recipe(
    document: Mapping[str, object], reading: Reading, file: str, lines: Mapping[str, int]
) -> Recipe | None:
    top = _top(document, reading)
    reading.cup = top.get("cup", "us")
    sections = _sections(document, reading)
    ingredients = _ingredients(document, reading)
    meat = _meat(sections["meat"])
    drying = _drying(sections["drying"], reading)
    _check_activity(sections["meat"].get("food"), drying.finish, reading)
    if meat is None or reading.faults.errors:
        return None
    return Recipe(
        title=top["title"],
        about=top.get("about", ""),
        meat=meat,
        ingredients=ingredients,
        soak=_soak(sections["soak"]),
        heat=HeatStep(sections["heat"].get("step", HeatStep.UNSTATED)),
        drying=drying,
        steps=sections["method"].get("steps", ()),
        notes=sections["method"].get("notes", ()),
        cup=reading.cup,
        file=file,
        lines=lines,
    )


def _top(document: Mapping[str, object], reading: Reading) -> dict[str, Any]:
    own = {
        name: value
        for name, value in document.items()
        if name not in keys.SECTIONS and name not in keys.PARTS
    }
    return read_table(own, keys.TOP, (), reading)


def _sections(document: Mapping[str, object], reading: Reading) -> dict[str, dict[str, Any]]:
    if "meat" not in document and reading.whole:
        reading.faults.error(
            "missing-key",
            "[meat] is missing",
            hint="it says what is dried and the weight that the amounts are for",
            path=("meat",),
        )
    return {
        name: read_table(document[name], known, (name,), reading) if name in document else {}
        for name, known in keys.SECTIONS.items()
    }


def _ingredients(document: Mapping[str, object], reading: Reading) -> tuple[Ingredient, ...]:
    parts = [Part(name) for name in document if name in keys.PARTS]  # in file order
    tables = [table for part in parts if isinstance(table := document[part.value], dict)]
    count = sum(map(len, tables))
    if count > MOST_INGREDIENTS:
        reading.faults.error(
            "too-many",
            f"{count:,} ingredients, more than {MOST_INGREDIENTS}",
            hint="is this the right file?",
            path=(parts[0].value,),
        )
        return ()
    if not any(document[part.value] for part in parts) and reading.whole:
        reading.faults.warn(
            "no-ingredients", "nothing is put on the meat: no [marinade], [rub] or [mixed-in]"
        )
    return tuple(
        ingredient
        for part in parts
        for ingredient in read_part(document[part.value], part, reading)
    )


def _meat(values: Mapping[str, Any]) -> Meat | None:
    food = values.get("food")
    if food is None or "amount" not in values:
        return None
    amount, mass_g = values["amount"]
    thickness, thickness_mm = values.get("thickness", ("", None))
    return Meat(
        food=food.key,
        amount=amount,
        mass_g=mass_g,
        form=MeatForm(values.get("form", MeatForm.STRIPS)),
        thickness_mm=thickness_mm,
        thickness_written=thickness,
        wild=values.get("wild", food.wild),
    )


def _soak(values: Mapping[str, Any]) -> Soak:
    surface = Surface(values.get("surface", Surface.DRAINED))
    poured_away = values.get("poured-away", True)
    hours: Written | None = values.get("hours")
    temperature: Written | None = values.get("temperature")
    soak = Soak(
        surface=surface,
        poured_away=poured_away,
        temperature_f=_ends(temperature),
        temperature_written=temperature.text if temperature else "",
        used_before=values.get("used-before", False),
    )
    if hours is None:
        return soak
    return soak._replace(
        hours=(float(hours.low), float((hours.low + hours.high) / 2), float(hours.high)),
        stated=True,
        hours_written=hours.text,
    )


_BOILING_F, _MOST_HOURS = 212, 48
_FLESH = frozenset({"meat", "fish"})


def _drying(values: Mapping[str, Any], reading: Reading) -> Drying:
    temperature: Written | None = values.get("temperature")
    hours: Written | None = values.get("hours")
    _warn_unlikely(temperature, hours, reading)
    return Drying(
        temperature_f=_ends(temperature),
        temperature_written=temperature.text if temperature else "",
        hours=_ends(hours),
        hours_written=hours.text if hours else "",
        finish=_finish(values, reading),
    )


def _warn_unlikely(temperature: Written | None, hours: Written | None, reading: Reading) -> None:
    """Warn of a dryer hotter than boiling water, or days of it: a slip of the pen, most likely."""
    if temperature is not None and temperature.high > _BOILING_F:
        hint = "155 F is 68 C; is it the other scale?"
        reading.faults.warn(
            "unlikely",
            f"a dryer at {float(temperature.high):.0f} °F "
            f"({(float(temperature.high) - 32) / 1.8:.0f} °C) is hotter than boiling water",
            hint=hint,
            path=("drying", "temperature"),
        )
    if hours is not None and hours.high > _MOST_HOURS:
        reading.faults.warn(
            "unlikely",
            f"{float(hours.high):g} hours of drying are more than two days",
            hint="are they hours?",
            path=("drying", "hours"),
        )


def _ends(written: Written | None) -> tuple[float, float] | None:
    return None if written is None else (float(written.low), float(written.high))


def _finish(values: Mapping[str, Any], reading: Reading) -> Finish | None:
    stated = [by for by in FinishBy if by.value in values]
    for by in stated[1:]:
        reading.faults.error(
            "finish-twice",
            f"{by.value} beside {stated[0].value}: one of them decides when it is done",
            hint="keep the one you go by",
            path=("drying", by.value),
        )
    return _finish_by(stated[0], values[stated[0].value]) if stated else None


def _check_activity(dried: Food | None, finish: Finish | None, reading: Reading) -> None:
    """Refuse a water activity for what is no meat or fish: how that holds water is not held."""
    if dried is None or finish is None or finish.by is not FinishBy.WATER_ACTIVITY:
        return
    if dried.kind not in _FLESH:
        reading.faults.error(
            "finish-unknown",
            f"how {dried.key} holds water is not known here, so no {finish.by.value} can be its "
            "end",
            hint=f"state its {FinishBy.MOISTURE.value} or {FinishBy.YIELD.value} instead",
            path=("drying", finish.by.value),
        )


def _finish_by(by: FinishBy, written: Written) -> Finish:
    ratio = by in (FinishBy.MOISTURE_TO_PROTEIN, FinishBy.WATER_ACTIVITY)
    scale = 1 if ratio else 100
    low, high = float(written.low / scale), float(written.high / scale)
    middle = float((written.low + written.high) / 2 / scale)
    if low == high:
        below, above = FINISH_SPREAD[by]
        low, high = middle * below, middle * above
        high = high if by is FinishBy.MOISTURE_TO_PROTEIN else min(high, (1 + middle) / 2)
    return Finish(by=by, value=(low, middle, high), written=written.text)
