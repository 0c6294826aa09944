"""One line of ``[marinade]``, ``[rub]`` or ``[mixed-in]``: a food, how much, and how it grows."""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction
from typing import Any

from tarebook.figures.foods import Food, food, normalised
from tarebook.findings import AmountError, FileUnreadable, FoodUnknown, RecordFaulty, nearest
from tarebook.quantities.amount import Amount, parse_amount
from tarebook.recipe import keys
from tarebook.recipe.bottles import Known, bottle_on, can_name, near_bottles, shelf
from tarebook.recipe.cure import check_cure
from tarebook.recipe.fields import (
    LONGEST_LINE,
    Reading,
    named_food,
    read_table,
    refuse_steering,
)
from tarebook.recipe.key_faults import kind_of, not_a_table, number_text
from tarebook.recipe.model import Bottle, Ingredient, Panel, Part, ScaleBy
from tarebook.toml.fault import Faults, Refused, did_you_mean, shown
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
    known, amount = values["food"], values["amount"]
    food = known.food
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
        panel=_panel(values, known.bottle),
        note=values.get("note", ""),
        path=path_text(path),
        bottle=known.bottle,
    )


def _panel(values: Mapping[str, Any], bottle: Bottle | None) -> Panel | None:
    """Return the panel that stands in the recipe, or that of its bottle."""
    written: Panel | None = values.get("panel")
    return bottle.panel if written is None and bottle is not None else written


def _values(name: str, written: object, path: KeyPath, reading: Reading) -> Mapping[str, Any]:
    """Return what is said of an ingredient; a text alone is its amount."""
    if isinstance(written, dict):
        values = read_table(written, keys.INGREDIENT, path, reading)
        if "food" not in written:
            values["food"] = _by_name(name, path, reading)
        elif "food" in values:
            values["food"] = _by_name(values["food"], (*path, "food"), reading)
        return {key: value for key, value in values.items() if value is not None}
    food = _by_name(name, path, reading)
    amount = _amount(written, reading)
    return {"food": food, "amount": amount} if food else {}


def _by_name(name: str, path: KeyPath, reading: Reading) -> Known | None:
    """Return what goes by a name: a bottle of the cook's own first, then a food of the tables."""
    try:
        bottle = _bottle(name, reading)
        if bottle is not None:
            return Known(named_food(bottle.like), bottle)
        return Known(_table_food(name, path), None)
    except Refused as refused:
        reading.faults.refuse(refused, path)
        return None


def _bottle(name: str, reading: Reading) -> Bottle | None:
    if reading.shelf is None:
        reading.shelf = shelf()
    if not reading.shelf:
        return None
    try:
        return bottle_on(reading.shelf, name)
    except RecordFaulty as faulty:
        first, *others = faulty.findings
        raise Refused(
            "bottle",
            f'your own bottle "{shown(name)}" is faulty: {shown(str(first), most=300)}',
            hint="tarebook foods own tells of the rest" if others else "",
        ) from None
    except FileUnreadable as fault:
        raise Refused("bottle", shown(str(fault), most=300)) from None


def _table_food(name: str, path: KeyPath) -> Food:
    """Return a food of the tables; of an unknown one, say how to make it known."""
    try:
        return food(name)
    except FoodUnknown as unknown:
        own = near_bottles(name)
        raise Refused(
            "unknown-food",
            f'no food is called "{shown(name)}"',
            hint=did_you_mean(own) or _make_known(name, unknown.near, named=path[-1] == "food"),
        ) from None


_A_SLIP = 0.8  # as much alike as this, and the food of the tables was meant


def _make_known(name: str, near: tuple[str, ...], *, named: bool) -> str:
    """Return what to try for a name that is neither a food nor like a bottle."""
    meant = did_you_mean(near)
    if not can_name(name) or nearest(normalised(name), near, least=_A_SLIP):
        return meant or _OWN_NAME
    add = f"tarebook foods add {normalised(name)} keeps a bottle of your own"
    if meant:
        return f"{meant} {add}"
    return add if named else f"{add}; or {_OWN_NAME}"


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
    if amount.unit in _CONTAINERS:
        _note_size(food, amount, path, faults)


def _note_size(food: Food, amount: Amount, path: KeyPath, faults: Faults) -> None:
    """Say how much a can or a packet is taken to hold: they are sold in more sizes than one."""
    from tarebook.figures.measures import count_mass  # few recipes count by the can

    one = count_mass(food.key, amount.unit, amount.form)
    if one is not None:
        faults.note(
            "reading",
            f"one {amount.unit} of {food.name} taken as {float(one.grams):,.4g} g",
            hint="where yours holds another weight or volume, write that",
            path=path,
        )


_OUNCES = "oz read as weight"
_CONTAINERS = frozenset(
    {"can", "bottle", "packet", "package", "box", "tub", "envelope", "glass", "drink"}
)
