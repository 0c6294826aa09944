"""From the text of ``kitchen.toml`` to a ``Kitchen``; one bad line hides no other."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

from tarebook.findings import AmountError, Finding, UnitError, nearest
from tarebook.kitchen.keys import BOWLS, KEYS, TABLES, Key
from tarebook.kitchen.profile import UNKNOWN, Kitchen, Vessel
from tarebook.kitchen.values import read_volume_ml
from tarebook.toml.document import read_document
from tarebook.toml.fault import Faults, Refused, did_you_mean, shown
from tarebook.toml.locate import KeyPath

_EMPTY = '"tarebook kitchen ask" asks the questions'
_MOST_BOWLS = 100


def read_kitchen(source: bytes | str, *, file: str) -> tuple[Kitchen, tuple[Finding, ...]]:
    """Return a kitchen and everything there is to say about its file, in file order.

    Args:
        source: the bytes of the file, or its text.
        file: its name, for the findings.

    Returns:
        What could be understood, everything else not known; and all findings. Where one of them
        is an error, whoever needs that very thing must not go on.

    Example:
        >>> kitchen, findings = read_kitchen("[dryer]\\ntrays = 5", file="kitchen.toml")
        >>> kitchen.trays, kitchen.tray, findings
        (5, None, ())
    """
    kitchen, findings = read_document(
        source,
        lambda parsed, faults, _: _kitchen(parsed.document, faults),
        file=file,
        empty_hint=_EMPTY,
        strict=False,
    )
    return kitchen or UNKNOWN, findings


def syntax_findings(source: bytes, *, file: str) -> tuple[Finding, ...]:
    """Return what keeps a file from being TOML at all, whatever its keys hold."""
    return read_document(source, lambda *_: None, file=file, empty_hint=_EMPTY)[1]


def read_value(key: Key, value: Any) -> Any:
    """Return one value understood.

    Raises:
        Refused: it is not what the key takes.
        AmountError: it is an amount that cannot be read.
    """
    try:
        return key.read(value)
    except UnitError as fault:
        raise Refused("kitchen", str(fault), hint=fault.hint or f"as in {key.example}") from None


def _kitchen(document: Mapping[str, object], faults: Faults) -> Kitchen:
    for name in document:
        if name not in TABLES:
            hint = did_you_mean(nearest(name, TABLES)) or f"the tables are {', '.join(TABLES)}"
            faults.error(
                "unknown-key", f'"{shown(name)}" is no part of a kitchen', hint=hint, path=(name,)
            )
    found: dict[str, Any] = {}
    for table in TABLES[:-1]:
        known = {key.name: key for key in KEYS if key.table == table}
        for name, value in _rows(document, table, faults):
            _take(name, value, known, (table, name), found, faults)
    kitchen = Kitchen(**found, bowls=_bowls(document, faults))
    return _without_impossible(kitchen, faults)


def _rows(
    document: Mapping[str, object], table: str, faults: Faults
) -> Iterator[tuple[str, object]]:
    rows = document.get(table, {})
    if isinstance(rows, dict):
        yield from rows.items()
    else:
        faults.error(
            "wrong-type",
            f"{table} is a table",
            hint=f"begin it with [{table}] on a line of its own",
            path=(table,),
        )


def _take(
    name: str,
    value: object,
    known: Mapping[str, Key],
    path: KeyPath,
    found: dict[str, Any],
    faults: Faults,
) -> None:
    key = known.get(name)
    if key is None:
        meant = next((one.name for one in known.values() if name in one.also), None)
        near = (meant,) if meant else nearest(name, known)
        hint = did_you_mean(near) or f"its keys are {', '.join(known)}"
        faults.error(
            "unknown-key", f'"{shown(name)}" is no key of [{path[0]}]', hint=hint, path=path
        )
        return
    try:
        found[key.field] = read_value(key, value)
    except (Refused, AmountError) as refused:
        faults.refuse(refused, path)


def _bowls(document: Mapping[str, object], faults: Faults) -> tuple[Vessel, ...]:
    found = []
    for name, value in list(_rows(document, BOWLS, faults))[:_MOST_BOWLS]:
        try:
            found.append(Vessel(name, read_volume_ml(value)))
        except (Refused, AmountError) as refused:
            faults.refuse(refused, (BOWLS, name))
        except UnitError as fault:
            faults.error("kitchen", str(fault), hint="as in 4 qt, 3 L", path=(BOWLS, name))
    return tuple(found)


def _without_impossible(kitchen: Kitchen, faults: Faults) -> Kitchen:
    """Return the kitchen without a hole that leaves nothing of its tray."""
    left_cm2 = kitchen.tray_cm2
    if left_cm2 is not None and left_cm2 <= 0:
        faults.error(
            "kitchen",
            "the hole is as large as the tray",
            hint="measure both again",
            path=("dryer", "hole"),
        )
        return kitchen._replace(hole=None, tray=None)
    return kitchen
