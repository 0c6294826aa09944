"""The batch book as rows for a spreadsheet, there and back, exactly.

A cell that a spreadsheet might take for a formula gets an apostrophe before it; so does one that
begins with an apostrophe, which makes it possible to take off exactly those again.
"""

from __future__ import annotations

import csv
import io
from collections.abc import Iterable, Iterator, Mapping

from tarebook.findings import nearest
from tarebook.records.carry import Bundle, Raw, RawBatch, add_fault, checked
from tarebook.records.entry import Batch, Entry
from tarebook.records.values import exact_text
from tarebook.toml.fault import Faults, did_you_mean, shown

COLUMNS = (
    "batch", "recipe", "title", "entry", "kind", "what", "written", "value", "happened", "note",
    "about", "recorded", "batch_uid", "entry_uid", "wording", "batch_wording", "recipe_text",
)  # fmt: skip
_WORDING = "wording"
_FORMULA = ("=", "+", "-", "@", "\t", "\r", "\n", "＝", "＋", "－", "＠")
_LARGEST_CELL = 4_000_000
_BATCH = {
    "batch": "number", "batch_uid": "uid", "recipe": "recipe", "title": "title",
    "batch_wording": "wording",
}  # fmt: skip
_ENTRY = {
    "entry": "number", "entry_uid": "uid", "kind": "kind", "what": "what", "written": "written",
    "value": "value", "happened": "happened", "recorded": "recorded", "note": "note",
    "about": "about", "wording": "wording",
}  # fmt: skip


def to_csv(batches: Iterable[Batch], wordings: Mapping[str, str]) -> Iterator[str]:
    """Yield batches as the text of a CSV file (RFC 4180): an entry a row, the recipes last.

    Args:
        batches: in the order to write them.
        wordings: the recipes as they were, by digest.
    """
    yield _line(COLUMNS)
    for batch in batches:
        for entry in batch.entries:
            cells = _cells(batch, entry)
            yield _line([cells.get(name, "") for name in COLUMNS])
    for digest, text in wordings.items():
        cells = {"kind": _WORDING, "wording": digest, "recipe_text": text}
        yield _line([cells.get(name, "") for name in COLUMNS])


def from_csv(text: str, faults: Faults) -> Bundle:
    """Return what such a file carries; of use only where no fault was added."""
    batches: dict[str, tuple[Raw, list[Raw]]] = {}
    wordings = []
    for raw in _rows(text, faults):
        cells = {name: str(cell) for name, cell in raw.fields.items()}
        if cells["kind"] == _WORDING:
            fields = {"digest": cells["wording"], "text": cells["recipe_text"]}
            wordings.append(Raw(fields, raw.line))
            continue
        head = Raw({key: cells[name] for name, key in _BATCH.items()}, raw.line)
        first, entries = batches.setdefault(cells["batch_uid"], (head, []))
        if first.fields != head.fields:
            add_fault(
                faults, head, "", f"this row tells of its batch otherwise than line {first.line}"
            )
        entries.append(Raw({key: cells[name] for name, key in _ENTRY.items()}, raw.line))
    return checked(
        [RawBatch(head, tuple(entries)) for head, entries in batches.values()], wordings, faults
    )


def defused(cell: str) -> str:
    """Return a cell that no spreadsheet takes for a formula.

    Example:
        >>> defused("=1+1"), defused("'tis"), defused("less pepper")
        ("'=1+1", "''tis", 'less pepper')
    """
    return f"'{cell}" if cell.startswith((*_FORMULA, "'")) else cell


def restored(cell: str) -> str:
    """Return a cell as it was before :func:`defused`."""
    return cell.removeprefix("'")


def _cells(batch: Batch, entry: Entry) -> dict[str, str]:
    return {
        "batch": str(batch.number),
        "recipe": batch.recipe,
        "title": batch.title,
        "entry": str(entry.number),
        "kind": entry.kind.value,
        "what": entry.what,
        "written": entry.written,
        "value": "" if entry.value is None else exact_text(entry.value),
        "happened": str(entry.happened),
        "note": entry.note,
        "about": "" if entry.about is None else str(entry.about),
        "recorded": str(entry.recorded),
        "batch_uid": batch.uid,
        "entry_uid": entry.uid,
        "wording": entry.wording or "",
        "batch_wording": batch.wording,
    }


def _line(cells: Iterable[str]) -> str:
    out = io.StringIO()
    csv.writer(out).writerow([defused(cell) for cell in cells])
    return out.getvalue()


def _rows(text: str, faults: Faults) -> Iterator[Raw]:
    """Yield the rows by their columns, each at the line it begins on."""
    csv.field_size_limit(_LARGEST_CELL)
    reader = csv.reader(io.StringIO(text, newline=""), strict=True)
    names: list[str] | None = None
    line = 1
    try:
        for cells in reader:
            here, line = line, reader.line_num + 1
            if names is None:
                names = _names(cells, faults)
            elif not names:
                return
            elif len(cells) == len(names):
                yield Raw(dict(zip(names, map(restored, cells), strict=True)), here)
            elif cells:
                faults.error(
                    "book", f"{len(cells)} cells, where there are {len(names)} columns", line=here
                )
    except csv.Error as fault:
        faults.error("book", f"this is no CSV: {fault}", line=line)
    if names is None:
        faults.error("book", "the file is empty", line=1)


def _names(cells: list[str], faults: Faults) -> list[str]:
    """Return the columns in the order they stand in; none where they are not those of a book."""
    missing = [name for name in COLUMNS if name not in cells]
    if not missing and len(cells) == len(COLUMNS):
        return cells
    if len(cells) == 1 and ";" in cells[0]:
        faults.error(
            "book", "the cells are parted by semicolons", hint="save it with commas", line=1
        )
    for name in cells if len(cells) > 1 else ():
        if name not in COLUMNS or cells.count(name) > 1:
            hint = did_you_mean(nearest(name, missing))
            faults.error("book", f'"{shown(name)}" is no column of a book', hint=hint, line=1)
    if missing:
        faults.error("book", f"the columns {', '.join(missing)} are missing", line=1)
    return []
