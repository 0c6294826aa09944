"""How a TOML file of ours looks: the one way of setting its pieces down.

A blank line between tables, none doubled; one space around ``=``; names and texts in double
quotes, names only where they need them; a list on one line where that fits and it is no list of
sentences; remarks two spaces behind what they are of. Nothing is lined up in columns.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

from tarebook.toml.locate import key_text, quoted
from tarebook.toml.pieces import Braces, Item, Keys, Listed, Page, Raw, Remarks, Table, Value, Words

COLUMNS = 80
"""A list that would make a line longer goes on several."""
INDENT = "    "
_ENDS = (".", "!", "?")


def text_of_page(page: Page) -> str:
    """Return the text of a page, its lines ended by line feeds."""
    first, *others = page.tables
    rows = list(_rows(first))
    head = [*page.head, ""] if page.head and rows and page.head_apart else page.head
    blocks = [[*head, *rows], *(list(_table(one)) for one in others), page.tail]
    return "\n\n".join("\n".join(block) for block in blocks if block) + "\n"


def list_text(texts: Sequence[str], lead: str = "") -> str:
    """Return a list of texts as it stands behind its key.

    Args:
        texts: in their order.
        lead: what stands before it on its line.

    Example:
        >>> list_text(["soybeans", "wheat"])
        '["soybeans", "wheat"]'
    """
    return _list(Listed(tuple(Item(Words(quoted(text), text)) for text in texts)), lead)


def _table(table: Table) -> Iterator[str]:
    yield from table.above
    name = ".".join(map(key_text, table.keys))
    yield _with(f"[[{name}]]" if table.one_of_many else f"[{name}]", table.beside)
    yield from table.below
    if table.below and table.rows:
        yield ""
    yield from _rows(table)


def _rows(table: Table) -> Iterator[str]:
    parted = False
    for place, row in enumerate(table.rows):
        if place and (parted or row.apart):
            yield ""
        yield from row.above
        lead = f"{_name(row.keys)} = "
        yield _with(lead + _value(row.value, lead), row.beside)
        yield from row.below
        parted = bool(row.below)


def _value(value: Value, lead: str = "") -> str:
    if isinstance(value, Raw):
        return value.raw
    if isinstance(value, Words):
        # What no screen shows is not turned into signs for it behind the cook's back.
        plain = value.text.isprintable() and not (
            value.raw[0] == "'" and set('"\\') & {*value.text}
        )
        return quoted(value.text) if plain else value.raw
    if isinstance(value, Listed):
        return _list(value, lead)
    return _braces(value)


def _braces(value: Braces) -> str:
    rows = [
        f"{_name(keys)} = {_on_one_line(one) if isinstance(one, Listed) else _value(one)}"
        for keys, one in value.rows
    ]
    return f"{{ {', '.join(rows)} }}" if rows else "{}"


def _list(value: Listed, lead: str) -> str:
    row = _on_one_line(value)
    if not value.remarks() and not _sentences(value.items) and len(lead) + len(row) <= COLUMNS:
        return row
    if not value.items and not value.end:
        return row
    return "\n".join(("[", *_item_lines(value.items), *_indented(value.end), "]"))


def _item_lines(items: Iterable[Item]) -> Iterator[str]:
    for item in items:
        yield from _indented(item.above)
        yield _with(f"{INDENT}{_value(item.value)},", item.beside)


def _sentences(items: Sequence[Item]) -> bool:
    """Whether a list is of sentences, which nobody wants to read side by side."""
    texts = [one.value.text for one in items if isinstance(one.value, Words)]
    return len(items) > 1 and any(text.rstrip().endswith(_ENDS) for text in texts)


def _on_one_line(value: Listed) -> str:
    return f"[{', '.join(_value(item.value) for item in value.items)}]"


def _indented(remarks: Remarks) -> Iterator[str]:
    return (INDENT + one for one in remarks)


def _name(keys: Keys) -> str:
    return ".".join(map(key_text, keys))


def _with(text: str, remark: str) -> str:
    return f"{text}  {remark}" if remark else text
