"""A recipe, or a bottle, set down as our format has it, with every remark kept.

Tables and keys come in the order of the format, fractions in plain digits; ingredients stay in the
cook's own order, and what the cook wrote in words stays as it was worded. The result is read again
before it is given out: it makes the very same recipe, and holds every remark, or there is none.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from tarebook.findings import AmountError, RecordFaulty, TarebookError
from tarebook.quantities.plain import plain
from tarebook.recipe import keys
from tarebook.recipe.keys import Key, Takes
from tarebook.toml.anew import set_down
from tarebook.toml.locate import quoted
from tarebook.toml.pieces import Braces, Keys, Page, Table, Value, Words
from tarebook.tuples import NamedTuple

_MARK = b"\xef\xbb\xbf"
_IN_WORDS = frozenset(
    {Takes.LINE, Takes.TEXT, Takes.TEXTS, Takes.CHOICE, Takes.FOOD, Takes.DRIED, Takes.FORM}
)
"""What is left as it is worded; the rest are amounts, which have one plain spelling."""
_LAST = 1_000


class _Form(NamedTuple):
    """Which keys a file may have.

    Attributes:
        top: those before the first table.
        tables: table to its keys, in order.
        loose: tables that come in the file's own order, at the place of the first.
    """

    top: Mapping[str, Key]
    tables: Mapping[str, Mapping[str, Key]]
    loose: tuple[str, ...] = ()


def tidied(data: bytes, *, file: str) -> bytes:
    """Return the bytes of a recipe or of a bottle as they would be tidy.

    Lines end as the first one of the file does. A byte order mark is left out.

    Args:
        data: the file as it stands.
        file: its name, for the findings.

    Returns:
        The same bytes where it is tidy already.

    Raises:
        RecordFaulty: it has errors; carries every finding.
        TarebookError: it could not be set down so that it reads the same.
    """
    before = _read(data, file)
    after = set_down(
        data,
        lambda page: _in_order(page, _form(page)),
        same=lambda new: _same(before, new, file),
    )
    if after is None:
        raise TarebookError(f"{file} is left as it is: set down anew it would not read the same")
    return after


def _same(before: object, after: bytes, file: str) -> bool:
    """Whether nothing was changed but how it looks."""
    try:
        return bool(_bare(_read(after, file)) == _bare(before))
    except RecordFaulty:
        return False


def _read(data: bytes, file: str) -> object:
    from tarebook.recipe.bottle import read_bottle
    from tarebook.recipe.read import read_recipe

    recipe, findings = read_recipe(data, file=file)
    if recipe is not None:
        return recipe
    if _is_bottle(data):
        bottle, findings = read_bottle(data, key="bottle", file=file)
        if bottle is not None:
            return bottle
    raise RecordFaulty(findings)


def _is_bottle(data: bytes) -> bool:
    """Whether a file is meant as a bottle: before its first table it says what it is like."""
    rows = data.removeprefix(_MARK).partition(b"\n[")[0].splitlines()
    return any(row.partition(b"=")[0].strip(b" \t\"'") == b"like" for row in rows)


def _bare(value: Any) -> Any:
    """Return a value without how its amounts were spelled, and without where it stood."""
    if not isinstance(value, tuple):
        return value
    names = getattr(value, "_fields", None)
    if names is None:
        return [_bare(one) for one in value]
    kept = [name for name in names if name not in _SPELLED and not name.endswith("written")]
    return [type(value).__name__, *((name, _bare(getattr(value, name))) for name in kept)]


_SPELLED = ("text", "file", "lines")


def _form(page: Page) -> _Form:
    from tarebook.recipe import bottle

    names = {row.keys[0] for row in page.tables[0].rows}
    if "like" in names:
        return _Form(bottle.TOP, {"panel": keys.PANEL, **bottle.TABLES})
    parts = dict.fromkeys(keys.PARTS, keys.INGREDIENT)
    meat, *rest = keys.SECTIONS
    tables = {meat: keys.MEAT, **parts, **{name: keys.SECTIONS[name] for name in rest}}
    return _Form(keys.TOP, tables, tuple(keys.PARTS))


def _in_order(page: Page, form: _Form) -> Page:
    first, *others = (_table(one, form) for one in page.tables)
    others.sort(key=lambda table: _place(table.keys[:1], form))
    return page._replace(tables=(first, *others))


def _table(table: Table, form: _Form) -> Table:
    rows = [
        row._replace(value=_value(row.value, (*table.keys, *row.keys), form)) for row in table.rows
    ]
    rows.sort(key=lambda row: _places(table.keys, row.keys, form))
    return table._replace(rows=tuple(rows))


def _value(value: Value, path: Keys, form: _Form) -> Value:
    if isinstance(value, Words):
        return _respelled(value, path, form)
    if not isinstance(value, Braces):
        return value
    rows = [(name, _value(one, (*path, *name), form)) for name, one in value.rows]
    rows.sort(key=lambda row: _places(path, row[0], form))
    return Braces(tuple(rows))


def _places(path: Keys, names: Keys, form: _Form) -> tuple[int, ...]:
    """Return where a key of a table comes, each of its parts; an ingredient's by its first."""
    several = len(names) if (*path, *names)[0] not in form.loose else 1
    return tuple(_place((*path, *names[: at + 1]), form) for at in range(several))


def _place(path: Keys, form: _Form) -> int:
    """Return where a key comes among its likes; those alike stay as they stand."""
    known = [*_known(path[:-1], form)]
    name = path[-1]
    if len(path) == 1 and name in form.loose:
        name = form.loose[0]
    return known.index(name) if name in known else _LAST


def _known(path: Keys, form: _Form) -> Mapping[str, Any]:
    """Return the keys that a table may have, in order; none where the cook names them."""
    if not path:
        return {**form.top, **form.tables}
    if path[0] not in form.loose:
        return form.tables.get(path[0], {}) if len(path) == 1 else {}
    if len(path) == 2:
        return keys.INGREDIENT
    return keys.PANEL if len(path) == 3 and path[2] == "panel" else {}


def _respelled(value: Words, path: Keys, form: _Form) -> Words:
    """Return an amount with its fractions and spaces in plain characters."""
    key = _known(path[:-1], form).get(path[-1])
    if len(path) == 2 and path[0] in form.loose:
        key = keys.INGREDIENT["amount"]
    if not isinstance(key, Key) or key.takes in _IN_WORDS:
        return value
    try:
        text = " ".join(plain(value.text).split())
    except AmountError:
        return value
    return value if text == value.text else Words(quoted(text), text)
