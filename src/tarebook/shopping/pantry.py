"""The cook's own list: what is in the house, and how it is sold where they shop."""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction

from tarebook.findings import AmountError, Finding, FoodUnknown, nearest
from tarebook.quantities.amount import Amount, parse_amount
from tarebook.recipe.bottles import known_food
from tarebook.recipe.model import Pack
from tarebook.toml.document import read_document
from tarebook.toml.fault import Faults, did_you_mean, shown
from tarebook.toml.locate import KeyPath, Lines
from tarebook.toml.syntax import Parsed
from tarebook.tuples import NamedTuple

_DEAREST = 1_000_000
_LONGEST_CURRENCY = 8
_TABLES = ("have", "packs")
_EMPTY = 'it may hold [have] and [packs], as in soy-sauce = "1 cup"'
_ROWS = {
    "have": 'write [have], and under it soy-sauce = "1 cup"',
    "packs": 'write [packs], and under it soy-sauce = { size = "15 fl oz", price = 3.49 }',
}


class Pantry(NamedTuple):
    """What the cook wrote.

    Attributes:
        have: food key, or name of a bottle -> what of it is in the house.
        packs: food key, or name of a bottle -> how it is sold.
        currency: the cook's sign or word for money, or empty.
    """

    have: Mapping[str, Amount]
    packs: Mapping[str, Pack]
    currency: str


NOTHING = Pantry({}, {}, "")
"""The pantry of a cook who has written none."""


def read_pantry(source: bytes, *, file: str) -> tuple[Pantry | None, tuple[Finding, ...]]:
    """Return a pantry and everything there is to say about its file, in file order.

    Args:
        source: the bytes of the file.
        file: its name, for the findings.

    Returns:
        The pantry, or None where there is an error; and all findings.

    Example:
        >>> text = b'[have]\\nhoney = "1 cup"\\n[packs]\\nhoney = { size = "12 oz", price = 6 }'
        >>> pantry, _ = read_pantry(text, file="pantry.toml")
        >>> str(pantry.have["honey"]), pantry.packs["honey"].price
        ('1 cup', Fraction(6, 1))
    """
    return read_document(source, _pantry, file=file, empty_hint=_EMPTY)


def _pantry(parsed: Parsed, faults: Faults, _lines: Lines) -> Pantry:
    document = parsed.document
    for name in document:
        if name not in (*_TABLES, "currency"):
            hint = did_you_mean(nearest(name, (*_TABLES, "currency"))) or _EMPTY
            faults.error("unknown-key", f'"{shown(name)}" is no key here', hint=hint, path=(name,))
    have = {
        key: found
        for key, path, value in _foods(document, "have", faults)
        if (found := _amount(value, path, faults)) is not None
    }
    packs = {
        key: pack
        for key, path, value in _foods(document, "packs", faults)
        if (pack := _pack(value, path, faults)) is not None
    }
    return Pantry(have, packs, _currency(document.get("currency", ""), faults))


def _foods(
    document: Mapping[str, object], table: str, faults: Faults
) -> list[tuple[str, KeyPath, object]]:
    """Return the rows of a table by food; a food named twice by two of its names is a fault."""
    written = document.get(table, {})
    if not isinstance(written, dict):
        faults.error("type", f"[{table}] must be a table", hint=_ROWS[table], path=(table,))
        return []
    found: dict[str, tuple[str, KeyPath, object]] = {}
    for name, value in written.items():
        path = (table, name)
        try:
            key = known_food(name).shown.key
        except FoodUnknown as unknown:
            hint = did_you_mean(unknown.near)
            faults.error("food", f'no food is called "{shown(name)}"', hint=hint, path=path)
            continue
        if key in found:
            faults.error("twice", f'"{shown(name)}" is {key}, which stands here twice', path=path)
            continue
        found[key] = (key, path, value)
    return list(found.values())


def _amount(value: object, path: KeyPath, faults: Faults) -> Amount | None:
    if not isinstance(value, str):
        faults.error("type", "an amount is text", hint='as in "1 cup" or "12 oz"', path=path)
        return None
    try:
        amount = parse_amount(value, zero=True)
    except AmountError as fault:
        faults.refuse(fault, path)
        return None
    if amount.low is None or amount.is_range:
        faults.error("amount", "one amount is needed, not a range or a taste", path=path)
        return None
    return amount


def _pack(value: object, path: KeyPath, faults: Faults) -> Pack | None:
    if isinstance(value, str):
        value = {"size": value}
    if not isinstance(value, dict):
        hint = 'as in { size = "15 fl oz", price = 3.49 }'
        faults.error("type", "a pack has a size and may have a price", hint=hint, path=path)
        return None
    for name in value:
        if name not in ("size", "price"):
            faults.error("unknown-key", f'"{shown(name)}" is no key of a pack', path=(*path, name))
    if "size" not in value:
        faults.error("missing", "the size of the pack is missing", path=path)
        return None
    size = _amount(value["size"], (*path, "size"), faults)
    price = _price(value.get("price"), (*path, "price"), faults)
    if size is not None and not size.middle:
        faults.error("amount", "a pack holds more than nothing", path=(*path, "size"))
        return None
    return None if size is None else Pack(size, price)


def _price(value: object, path: KeyPath, faults: Faults) -> Fraction | None:
    if value is None:
        return None
    if isinstance(value, bool) or not isinstance(value, int | Fraction):
        faults.error("type", "a price is a number", hint="as in price = 3.49", path=path)
        return None
    if not 0 <= value <= _DEAREST:
        faults.error("price", f"a price lies between 0 and {_DEAREST:,}", path=path)
        return None
    return Fraction(value)


def _currency(value: object, faults: Faults) -> str:
    if not isinstance(value, str) or len(value) > _LONGEST_CURRENCY or not value.isprintable():
        hint = 'as in currency = "$"'
        faults.error("type", "a currency is a short sign or word", hint=hint, path=("currency",))
        return ""
    return value
