"""What an exported book holds, checked before any of it goes into a book.

Both forms of it, TOML and CSV, come through here as raw fields with their place; every fault is
said at once, with file and line.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from datetime import datetime
from fractions import Fraction

from tarebook.findings import AmountError, AskedWrongly, nearest
from tarebook.records.entry import (
    LONGEST_TEXT,
    MAY_BE_ZERO,
    MEASURED,
    NEXT_TIME,
    OF_A_NOTE,
    WHAT,
    Entry,
    Kind,
)
from tarebook.records.keep import MOST_ENTRIES, digest_of
from tarebook.records.moment import Moment, moment_of, read_moment
from tarebook.records.values import exact_text, exact_value, read_temperature, read_weight
from tarebook.toml.fault import Faults, did_you_mean, shown
from tarebook.toml.locate import KeyPath
from tarebook.tuples import NamedTuple

BATCH_KEYS = ("number", "uid", "recipe", "title", "wording")
ENTRY_KEYS = (
    "number", "uid", "kind", "what", "written", "value", "happened", "recorded", "note", "about",
    "wording",
)  # fmt: skip
WORDING_KEYS = ("digest", "text")
_LONGEST_RECIPE = 1_000_000
_LARGEST_NUMBER = 2**31
_UID_LETTERS = 16
_NOWHERE = Moment(0, 0)


class Raw(NamedTuple):
    """Fields as they stand in a file, and where."""

    fields: Mapping[str, object]
    line: int | None = None
    path: KeyPath = ()


class RawBatch(NamedTuple):
    """A batch as it stands in a file, with its entries."""

    head: Raw
    entries: tuple[Raw, ...]


class Carried(NamedTuple):
    """A batch on its way from one book to another.

    Attributes:
        number, uid, recipe, title, wording: as in ``Batch``.
        entries: with the numbers they had.
        places: where each of them stands in the file, and the batch itself first.
    """

    number: int
    uid: str
    recipe: str
    title: str
    wording: str
    entries: tuple[Entry, ...]
    places: tuple[Raw, ...]


class Bundle(NamedTuple):
    """All that one file carries."""

    batches: tuple[Carried, ...]
    wordings: Mapping[str, str]


def checked(batches: Iterable[RawBatch], wordings: Iterable[Raw], faults: Faults) -> Bundle:
    """Return what a file carries; of use only where no fault was added.

    Args:
        batches, wordings: as they stand in the file.
        faults: where to add what is wrong.
    """
    texts = _wordings(wordings, faults)
    seen: set[str] = set()
    numbers: set[int] = set()
    found = []
    for raw in batches:
        batch = _batch(raw, texts, seen, faults)
        if batch.number in numbers:
            add_fault(faults, raw.head, "number", f"batch {batch.number} stands here twice")
        numbers.add(batch.number)
        found.append(batch)
    return Bundle(tuple(found), texts)


def add_fault(faults: Faults, raw: Raw, key: str, message: str, *, hint: str = "") -> None:
    """Add a fault at a field of a file."""
    path = (*raw.path, key) if key else raw.path
    faults.error("book", message, hint=hint, line=raw.line, path=path)


def _wordings(raws: Iterable[Raw], faults: Faults) -> dict[str, str]:
    found = {}
    for raw in raws:
        field = _Fields(raw, WORDING_KEYS, faults)
        digest, text = field.text("digest"), field.text("text", most=_LONGEST_RECIPE)
        if digest != digest_of(text):
            field.fault("digest", "that is not the digest of this text: one of them was changed")
        found[digest] = text
    return found


def _batch(raw: RawBatch, texts: Mapping[str, str], seen: set[str], faults: Faults) -> Carried:
    field = _Fields(raw.head, BATCH_KEYS, faults)
    number, uid = field.number("number"), field.uid(seen)
    wording = field.known_wording("wording", texts)
    recipe, title = field.text("recipe"), field.text("title")
    if not recipe:
        field.fault("recipe", "the batch names no recipe")
    entries: dict[int, Entry] = {}
    for one in raw.entries[:MOST_ENTRIES]:
        entry = _entry(_Fields(one, ENTRY_KEYS, faults), number, entries, texts, seen)
        entries[entry.number] = entry
    if len(raw.entries) > MOST_ENTRIES:
        field.fault("", f"{len(raw.entries):,} entries: that is no batch")
    first = next(iter(entries.values()), None)
    if first is None or first.kind is not Kind.START:
        field.fault("", "the batch does not begin with an entry of kind start")
    places = (raw.head, *raw.entries)
    return Carried(number, uid, recipe, title, wording, tuple(entries.values()), places)


def _entry(
    field: _Fields,
    batch: int,
    before: Mapping[int, Entry],
    texts: Mapping[str, str],
    seen: set[str],
) -> Entry:
    kind = field.kind(Kind.TURN if before else Kind.START)
    number = field.number("number")
    if before and number <= max(before):
        field.fault("number", f"entry {number} stands behind entry {max(before)}")
    entry = Entry(
        uid=field.uid(seen),
        batch=batch,
        number=number,
        kind=kind,
        happened=field.moment("happened"),
        recorded=field.moment("recorded"),
        what=field.what(kind),
        written=field.text("written"),
        value=field.value(kind),
        note=field.text("note"),
        about=field.about(kind, before),
        wording=field.known_wording("wording", texts) if field.text("wording") else None,
    )
    if kind is Kind.NOTE and not entry.note.strip():
        field.fault("note", "a note without words")
    if kind is Kind.START and before and entry.about is None:
        field.fault("kind", "the batch is started twice")
    if kind is not Kind.TAKEN and entry.wording is not None:
        field.fault("wording", f"an entry of kind {kind} has no wording")
    return entry


class _Fields:
    """The fields of one row or table; each that cannot be used adds a fault."""

    def __init__(self, raw: Raw, keys: tuple[str, ...], faults: Faults) -> None:
        self._raw, self._faults = raw, faults
        for key in raw.fields:
            if key not in keys:
                hint = did_you_mean(nearest(key, keys)) or f"its keys are {', '.join(keys)}"
                self.fault(key, f'"{shown(key)}" is no key here', hint=hint)

    def fault(self, key: str, message: str, *, hint: str = "") -> None:
        add_fault(self._faults, self._raw, key, message, hint=hint)

    def text(self, key: str, *, most: int = LONGEST_TEXT) -> str:
        value = self._raw.fields.get(key, "")
        if not isinstance(value, str):
            self.fault(key, "that is no text", hint="put it in quotes")
            return ""
        if len(value) > most:
            self.fault(key, f"{len(value):,} letters; at most {most:,} are kept")
        return value

    def number(self, key: str) -> int:
        value = self._raw.fields.get(key, "")
        if isinstance(value, str) and value.isascii() and value.isdigit() and len(value) < 12:
            value = int(value)
        if isinstance(value, bool) or not isinstance(value, int) or not 0 < value < _LARGEST_NUMBER:
            self.fault(key, f'"{shown(str(value))}" is no number of a batch or an entry')
            return 1
        return value

    def uid(self, seen: set[str]) -> str:
        uid = self.text("uid")
        if len(uid) != _UID_LETTERS or set(uid) - set("0123456789abcdef"):
            self.fault(
                "uid", f'"{shown(uid)}" is no uid: 16 of the letters 0-9 and a-f, made by an export'
            )
        elif uid in seen:
            self.fault("uid", f"uid {uid} stands here twice")
        seen.add(uid)
        return uid

    def kind(self, otherwise: Kind) -> Kind:
        text = self.text("kind")
        try:
            return Kind(text)
        except ValueError:
            known = [kind.value for kind in Kind]
            hint = did_you_mean(nearest(text, known)) or f"one of {', '.join(known)}"
            self.fault("kind", f'"{shown(text)}" is no kind of entry', hint=hint)
            return otherwise

    def what(self, kind: Kind) -> str:
        text, known = self.text("what"), WHAT.get(kind, ("",))
        if text not in known:
            words = ", ".join(one or "nothing" for one in known)
            self.fault("what", f'"{shown(text)}": an entry of kind {kind} is about {words}')
        return text

    def moment(self, key: str) -> Moment:
        value = self._raw.fields.get(key, "")
        try:
            if isinstance(value, datetime):
                return moment_of(value)
            return read_moment(value if isinstance(value, str) else str(value))
        except AskedWrongly as fault:
            self.fault(key, str(fault))
            return _NOWHERE

    def value(self, kind: Kind) -> Fraction | None:
        """Return the exact value, which must be what the writing of it means."""
        text, written = self.text("value"), self.text("written")
        if kind not in (*MEASURED, Kind.START):
            if text or written:
                self.fault("value", f"an entry of kind {kind} has no value")
            return None
        if kind is Kind.START and not (text or written):
            return None
        try:
            value, meant = exact_value(text), self._meant(kind, written)
        except AmountError as fault:
            self.fault("value" if not text else "written", shown(str(fault), most=160))
            return None
        if value != meant:
            self.fault(
                "value",
                f'"{shown(written)}" is {exact_text(meant)}, and the value says {shown(text)}',
                hint="put right whichever was changed",
            )
        return value

    def _meant(self, kind: Kind, written: str) -> Fraction:
        if kind is Kind.TEMP:
            return read_temperature(written)
        return read_weight(written, zero=self._raw.fields.get("what") in MAY_BE_ZERO)

    def about(self, kind: Kind, before: Mapping[int, Entry]) -> int | None:
        must = kind in (Kind.STRIKE, *OF_A_NOTE)
        if self._raw.fields.get("about", "") == "":
            if must:
                self.fault("about", f"an entry of kind {kind} says what it is about")
            return None
        number = self.number("about")
        target = before.get(number)
        if target is None:
            self.fault("about", f"there is no entry {number} before this one in its batch")
        elif kind in OF_A_NOTE:
            if target.kind is not Kind.NOTE or target.what != NEXT_TIME:
                self.fault("about", f"entry {number} is no note for next time")
        elif kind is not Kind.STRIKE and target.kind is not kind:
            self.fault("about", f"entry {number} is of kind {target.kind}, this one of kind {kind}")
        return number

    def known_wording(self, key: str, texts: Mapping[str, str]) -> str:
        digest = self.text(key)
        if digest not in texts:
            self.fault(key, f'the recipe as it was, "{shown(digest[:12])}", is not in this file')
        return digest
