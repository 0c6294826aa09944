"""The file of a kitchen set down as our format has it, with every remark kept."""

from __future__ import annotations

from tarebook.findings import RecordFaulty, Severity, TarebookError
from tarebook.kitchen.keys import BOWLS, BY_PATH, TABLES
from tarebook.kitchen.profile import Kitchen
from tarebook.kitchen.read import read_kitchen
from tarebook.toml.anew import set_down
from tarebook.toml.pieces import Page, Row, Table

_PLACES = {path: place for place, path in enumerate(BY_PATH)}


def tidied(data: bytes, *, file: str) -> bytes:
    """Return the bytes of ``kitchen.toml`` as they would be tidy; bowls keep the cook's order.

    Args:
        data: the file as it stands.
        file: its name, for the findings.

    Raises:
        RecordFaulty: it has errors; carries every finding.
        TarebookError: it could not be set down so that it reads the same.
    """
    before = _read(data, file)
    after = set_down(data, _in_order, same=lambda new: _read(new, file) == before)
    if after is None:
        raise TarebookError(f"{file} is left as it is: set down anew it would not read the same")
    return after


def _read(data: bytes, file: str) -> Kitchen:
    kitchen, findings = read_kitchen(data, file=file)
    if any(one.severity is Severity.ERROR for one in findings):
        raise RecordFaulty(findings)
    return kitchen


def _in_order(page: Page) -> Page:
    first, *others = map(_table, page.tables)
    others.sort(key=lambda one: TABLES.index(one.keys[0]))
    return page._replace(tables=(first, *others))


def _table(table: Table) -> Table:
    if table.keys[:1] in ((), (BOWLS,)):
        return table
    return table._replace(rows=tuple(sorted(table.rows, key=lambda row: _place(table, row))))


def _place(table: Table, row: Row) -> int:
    return _PLACES.get(".".join((*table.keys, *row.keys)), len(_PLACES))
