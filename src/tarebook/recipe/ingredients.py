"""One line of ``[marinade]``, ``[rub]`` or ``[mixed-in]``: a food, how much, and how it grows."""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction
from typing import Any

from tarebook.figures.foods import Food
from tarebook.findings import AmountError
from tarebook.quantities.amount import Amount, parse_amount
from tarebook.recipe import keys
from tarebook.recipe.cure import check_cure
from tarebook.recipe.fields import (
    LONGEST_LINE,
    Reading,
    named_food,
    read_table,
    refuse_steering,
)
from tarebook.recipe.key_faults import kind_of, not_a_table, number_text
from tarebook.recipe.model import Ingredient, Part, ScaleBy
from tarebook.toml.fault import Faults, Refused
from tarebook.toml.locate import KeyPath, path_text

MOST_INGREDIENTS = 500

_OWN_NAME = 'say what it is: { food = "...", amount = "..." }'


def read_part(value: object, part: Part, reading: Reading) -> list[Ingredient]:
    """Return the ingredients of one part, in file order, faulty ones left out.

    Args:
        value: what stands behind the part's name.
        part: which of the three it is.
        reading: the file being read.
    """
    if not isinstance(value, dict):
        not_a_table(value, (part.value,), reading.faults)
        return []
    found = []
    for name, written in value.items():
        path = (part.value, name)
        try:
            ingredient = _ingredient(name, written, part, path, reading)
        except (Refused, AmountError) as refused:
            reading.faults.refuse(refused, path)
            continue
        if ingredient is not None:
            found.append(ingredient)
    return found


def _ingredient(
    name: str, written: object, part: Part, path: KeyPath, reading: Reading
) -> Ingredient | None:
    _check_name(name)
    values = _values(name, written, path, reading)
    if "food" not in values or "amount" not in values:
        return None
    food, amount = values["food"], values["amount"]
    scale = ScaleBy(values.get("scale", ScaleBy.MEAT))
    check_cure(food, amount, scale, values.get("strength"), path, reading.faults)
    _note_readings(food, amount, path, reading.faults)
    return Ingredient(
        name=name,
        food=food.key,
        amount=amount,
        part=part,
        scale=scale,
        form=_form(amount, values.get("form", ())),
        strength_percent=values.get("strength"),
        panel=values.get("panel"),
        note=values.get("note", ""),
        path=path_text(path),
    )


def _values(name: str, written: object, path: KeyPath, reading: Reading) -> Mapping[str, Any]:
    """Return what is said of an ingredient; a text alone is its amount."""
    if isinstance(written, dict):
        values = read_table(written, keys.INGREDIENT, path, reading)
        if "food" not in written:
            values["food"] = _by_name(name, path, reading)
        return {key: value for key, value in values.items() if value is not None}
    food = _by_name(name, path, reading)
    amount = _amount(written, reading)
    return {"food": food, "amount": amount} if food else {}


def _by_name(name: str, path: KeyPath, reading: Reading) -> Food | None:
    try:
        return named_food(name, otherwise=_OWN_NAME)
    except Refused as refused:
        reading.faults.refuse(refused, path)
        return None


def _amount(written: object, reading: Reading) -> Amount:
    if isinstance(written, str):
        return parse_amount(written, cup=reading.cup)
    if isinstance(written, (int, Fraction)) and not isinstance(written, bool):
        raise Refused(
            "no-unit",
            f"amount {number_text(written)} has no unit",
            hint='write it in quotes with its unit, as in "3/4 cup"',
        )
    raise Refused(
        "wrong-type",
        f"{kind_of(written)} is no amount",
        hint='write it in quotes, as in "3/4 cup"',
    )


def _check_name(name: str) -> None:
    if len(name) > LONGEST_LINE:
        raise Refused("too-long", f"a name of {len(name):,} letters, more than {LONGEST_LINE}")
    if not name.strip():
        raise Refused("empty", "an ingredient without a name")
    if not name.isprintable():
        if "\n" in name or "\t" in name:
            raise Refused("wrong-type", "a name must be one line, without tabs")
        refuse_steering(name, "the name")


def _form(amount: Amount, stated: tuple[str, ...]) -> tuple[str, ...]:
    return amount.form + tuple(word for word in stated if word not in amount.form)


def _note_readings(food: Food, amount: Amount, path: KeyPath, faults: Faults) -> None:
    """Say how doubtful words were read; an ounce is doubtful only where it could be a fluid one."""
    for reading in amount.readings:
        if reading != _OUNCES:
            faults.note("reading", reading, path=path)
        elif food.poured:
            faults.note("reading", reading, hint="for a volume write fl oz", path=path)


_OUNCES = "oz read as weight"
