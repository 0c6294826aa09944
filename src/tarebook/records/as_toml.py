"""The batch book as TOML, there and back, exactly."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from typing import Any

from tarebook.records.carry import Bundle, Raw, RawBatch, add_fault, checked
from tarebook.records.entry import Batch, Entry
from tarebook.records.values import exact_text
from tarebook.toml.fault import Faults
from tarebook.toml.locate import KeyPath, quoted
from tarebook.toml.syntax import parse

FORM = 1
_HEAD = """\
# A batch book of tarebook. Entries are never changed: one that was wrong is struck or replaced by
# a later one. "value" is exact: grams, or degrees Fahrenheit of a temperature.
tarebook-book = {form}
"""
_TOP = ("tarebook-book", "batch", "wording")


def to_toml(batches: Iterable[Batch], wordings: Mapping[str, str]) -> Iterator[str]:
    """Yield batches as the text of a TOML file.

    Args:
        batches: in the order to write them.
        wordings: the recipes as they were, by digest.
    """
    yield _HEAD.format(form=FORM)
    for batch in batches:
        yield "\n[[batch]]\n"
        yield _pairs(
            number=batch.number,
            uid=batch.uid,
            recipe=batch.recipe,
            title=batch.title,
            wording=batch.wording,
        )
        for entry in batch.entries:
            yield "\n[[batch.entry]]\n"
            yield _pairs(**_entry(entry))
    for digest, text in wordings.items():
        yield f"\n[[wording]]\ndigest = {quoted(digest)}\ntext = {_long(text)}\n"


def from_toml(text: str, faults: Faults) -> Bundle:
    """Return what such a file carries; of use only where no fault was added."""
    document = _document(text, faults)
    for name in document:
        if name not in _TOP:
            add_fault(faults, Raw({}), name, "that is no part of a book")
    if "tarebook-book" not in document:
        faults.error("book", "this is no exported book", hint="tarebook batch export writes one")
    elif document["tarebook-book"] != FORM:
        add_fault(
            faults, Raw({}), "tarebook-book", "written by a newer tarebook: bring this one up"
        )
    batches = [
        RawBatch(
            Raw({k: v for k, v in table.items() if k != "entry"}, path=path),
            tuple(
                Raw(entry, path=place)
                for entry, place in _tables(table.get("entry", []), (*path, "entry"), faults)
            ),
        )
        for table, path in _tables(document.get("batch", []), ("batch",), faults)
    ]
    wordings = [
        Raw(table, path=path)
        for table, path in _tables(document.get("wording", []), ("wording",), faults)
    ]
    return checked(batches, wordings, faults)


def _document(text: str, faults: Faults) -> dict[str, Any]:
    import tomllib

    try:
        return tomllib.loads(text)
    except (ValueError, RecursionError):
        parse(text, faults)  # says it in a cook's words
        if not faults.errors:
            faults.error("syntax", "this is no TOML", line=1)
        return {"tarebook-book": FORM}


def _tables(
    found: object, path: KeyPath, faults: Faults
) -> Iterator[tuple[dict[str, object], KeyPath]]:
    if not isinstance(found, list):
        add_fault(faults, Raw({}, path=path), "", "that is no list of tables", hint="write [[...]]")
        return
    for place, table in enumerate(found):
        if isinstance(table, dict):
            yield table, (*path, place)
        else:
            add_fault(faults, Raw({}, path=(*path, place)), "", "that is no table")


def _entry(entry: Entry) -> dict[str, object]:
    return {
        "number": entry.number,
        "uid": entry.uid,
        "kind": entry.kind.value,
        "what": entry.what,
        "written": entry.written,
        "value": "" if entry.value is None else exact_text(entry.value),
        "happened": entry.happened,
        "recorded": entry.recorded,
        "note": entry.note,
        "about": entry.about,
        "wording": entry.wording,
    }


def _pairs(**pairs: object) -> str:
    """Return keys and values, a line each; what is empty is left out."""
    return "".join(
        f"{key} = {quoted(value) if isinstance(value, str) else value}\n"
        for key, value in pairs.items()
        if value not in ("", None)
    )


def _long(text: str) -> str:
    """Return a text of many lines as TOML shows it best, and reads it back the same."""
    body, last = (text[:-1], '\\"') if text.endswith('"') else (text, "")
    lines = (quoted(line)[1:-1].replace('\\"', '"') for line in body.split("\n"))
    return '"""\n' + "\n".join(lines).replace('"""', '""\\"') + last + '"""'
