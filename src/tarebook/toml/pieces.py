"""A TOML text taken apart, remarks and all, so that it can be put together again.

The TOML reader of the standard library drops remarks. This walks a text that reader has accepted
a second time, trusts its grammar as :mod:`tarebook.toml.locate` does, and keeps each remark with
the line that it stands by: the one below it, where no blank line parts them; else the one above.
"""

from __future__ import annotations

from tarebook.toml.locate import Walk, unquoted
from tarebook.tuples import NamedTuple

Keys = tuple[str, ...]
Remarks = tuple[str, ...]
"""Remarks as written, ``#`` and all; an empty one stands for a blank line between them."""


class Words(NamedTuple):
    """A text in quotes, as written and as read."""

    raw: str
    text: str


class Raw(NamedTuple):
    """A value that is left as it is written: a number, a flag, a date, a nest of lists."""

    raw: str


class Item(NamedTuple):
    """A text in a list, with remarks above it and behind it."""

    value: Words | Raw
    above: Remarks = ()
    beside: str = ""


class Listed(NamedTuple):
    """A list of texts, with remarks before its end."""

    items: tuple[Item, ...]
    end: Remarks = ()

    def remarks(self) -> list[str]:
        """Return every remark in it."""
        found = [one for item in self.items for one in (*item.above, item.beside)]
        return [one for one in (*found, *self.end) if one]


class Braces(NamedTuple):
    """A table on one line."""

    rows: tuple[tuple[Keys, Words | Raw | Listed | Braces], ...]


Value = Words | Raw | Listed | Braces


class Row(NamedTuple):
    """A key and its value.

    Attributes:
        above: remarks over it; a last empty one parts them from it.
        beside: the remark behind it.
        below: remarks right under it, of which the next line is parted by a blank one.
        apart: whether a blank line stands over it and its remarks.
    """

    keys: Keys
    value: Value
    above: Remarks = ()
    beside: str = ""
    below: Remarks = ()
    apart: bool = False


class Table(NamedTuple):
    """A table with its rows; the first of a page has no header.

    Attributes:
        keys: of its header.
        one_of_many: whether it stands in double brackets.
        above, beside, below: remarks of its header, as for a row.
    """

    keys: Keys
    rows: tuple[Row, ...]
    one_of_many: bool = False
    above: Remarks = ()
    beside: str = ""
    below: Remarks = ()


class Page(NamedTuple):
    """A whole text.

    Attributes:
        head: remarks that the page begins with.
        head_apart: whether a blank line follows them.
        tables: the first has no header, and may have no rows.
        tail: remarks that nothing follows.
    """

    head: Remarks
    head_apart: bool
    tables: tuple[Table, ...]
    tail: Remarks


def pieces(text: str) -> Page:
    """Return what a text is made of.

    Args:
        text: what ``tomllib`` accepts, its lines ended by line feeds.
    """
    return _put_together(*_Gatherer(text).walk())


def remarks_of(page: Page) -> list[str]:
    """Return every remark of a page that is not part of a value left as written, in order."""
    found = [*page.head]
    for table in page.tables:
        found += [*table.above, table.beside, *table.below]
        for row in table.rows:
            inside = row.value.remarks() if isinstance(row.value, Listed) else []
            found += [*row.above, *inside, row.beside, *row.below]
    return [one for one in (*found, *page.tail) if one]


class _Said(NamedTuple):
    """A row or a header, before it is known which remarks are its own."""

    keys: Keys
    value: Value | None
    beside: str
    one_of_many: bool = False


_Gap = list[str]


def _put_together(said: list[_Said], gaps: list[_Gap]) -> Page:
    """Deal the remarks between the lines out to them; there is one more gap than lines."""
    head, head_apart, first = _head(gaps[0], is_all=not said)
    above, apart = [first], [False]
    below: list[Remarks] = []
    for gap in gaps[1:-1]:
        under, over, parted = _shared(gap)
        below.append(under)
        above.append(over)
        apart.append(parted)
    under, tail, _ = _shared([*gaps[-1], ""]) if said else ((), (), False)
    below.append(under)
    tables = [Table((), ())]
    for at, one in enumerate(said):
        if one.value is None:
            tables.append(Table(one.keys, (), one.one_of_many, above[at], one.beside, below[at]))
        else:
            row = Row(one.keys, one.value, above[at], one.beside, below[at], apart[at])
            tables[-1] = tables[-1]._replace(rows=(*tables[-1].rows, row))
    return Page(head, head_apart, tuple(tables), _stripped(tail))


def _head(gap: _Gap, *, is_all: bool) -> tuple[Remarks, bool, Remarks]:
    """Return what a page begins with, whether a blank line follows, and its first line's own."""
    if is_all:
        return _stripped(gap), False, ()
    cut = max((at + 1 for at, one in enumerate(gap) if not one), default=0)
    apart = cut > 0
    if not apart:  # what tells editors of a schema stands first, whatever comes first
        cut = next((at for at, one in enumerate(gap) if not one.startswith("#:")), len(gap))
    return _stripped(gap[:cut]), apart, tuple(gap[cut:])


def _shared(gap: _Gap) -> tuple[Remarks, Remarks, bool]:
    """Return remarks of the line above, of the line below, and whether a blank parts them."""
    if "" not in gap:
        return (), tuple(gap), False
    at = gap.index("")
    over = _squeezed(gap[at:])
    return tuple(gap[:at]), over, True


def _squeezed(gap: _Gap) -> Remarks:
    """Return remarks with one blank line where there were more, and none before them."""
    found: list[str] = []
    for one in gap:
        if one or (found and found[-1]):
            found.append(one)
    return tuple(found)


def _stripped(remarks: _Gap | Remarks) -> Remarks:
    found = _squeezed(list(remarks))
    return found[:-1] if found and not found[-1] else found


class _Gatherer(Walk):
    """A walk that keeps everything: statements, and the remarks before, beside and within them."""

    __slots__ = ()

    def __init__(self, text: str) -> None:
        super().__init__(text if text.endswith("\n") else f"{text}\n")

    def walk(self) -> tuple[list[_Said], list[_Gap]]:
        said: list[_Said] = []
        gaps: list[_Gap] = [[]]
        at = 0
        while at < len(self.text):
            at = self.space(at)
            if self.text[at] == "\n":
                gaps[-1].append("")
                at += 1
            elif self.text[at] == "#":
                at, remark = self.remark(at)
                gaps[-1].append(remark)
            else:
                at, one = self.statement(at)
                said.append(one)
                gaps.append([])
        return said, gaps

    def statement(self, at: int) -> tuple[int, _Said]:
        value: Value | None = None
        many = self.text.startswith("[[", at)
        if self.text[at] == "[":
            at, keys = self.keys(at + 1 + many)
            at += 1 + many
        else:
            at, keys = self.keys(at)
            at, value = self.value(self.space(at + 1))
        at, beside = self.remark(self.space(at))
        return at, _Said(keys, value, beside, many)

    def remark(self, at: int) -> tuple[int, str]:
        """Return the start of the next line, and the rest of this one."""
        end = self.text.index("\n", at)
        return end + 1, self.text[at:end].rstrip(" \t")

    def value(self, at: int) -> tuple[int, Value]:
        first = self.text[at]
        if first == "[":
            return self.array(at)
        if first == "{":
            return self.inline_table(at)
        found = self.scalar(at)
        raw = found.group()
        if first not in "\"'":
            return found.end(), Raw(raw.strip())
        return found.end(), Raw(raw) if raw.startswith(_LONG) else Words(raw, unquoted(raw))

    def array(self, start: int) -> tuple[int, Value]:
        at, waiting, _ = self.between(start + 1)
        items: list[Item] = []
        nested = False
        above = [remark for remark, _ in waiting]
        while self.text[at] != "]":
            at, value = self.value(at)
            nested |= not isinstance(value, (Words, Raw))
            at, waiting, fresh = self.between(at)
            if self.text[at] == ",":
                at, more, _ = self.between(at + 1)
                waiting += [(remark, here or fresh) for remark, here in more]
            beside = waiting.pop(0)[0] if waiting and not waiting[0][1] else ""
            if isinstance(value, (Words, Raw)):
                items.append(Item(value, tuple(above), beside))
            above = [remark for remark, _ in waiting]
        raw = self.text[start : at + 1]
        return at + 1, Raw(raw) if nested else Listed(tuple(items), tuple(above))

    def between(self, at: int) -> tuple[int, list[tuple[str, bool]], bool]:
        """Return the next place that holds something, remarks before it, and if its line is new.

        Each remark comes with whether it stands on a line that begins after ``at``.
        """
        found: list[tuple[str, bool]] = []
        fresh = False
        while True:
            at = self.space(at)
            if self.text[at] == "\n":
                at, fresh = at + 1, True
            elif self.text[at] == "#":
                at, remark = self.remark(at)
                found.append((remark, fresh))
                fresh = True
            else:
                return at, found, fresh

    def inline_table(self, start: int) -> tuple[int, Value]:
        rows: list[tuple[Keys, Value]] = []
        at, remarks, odd = self.between(start + 1)
        while self.text[at] != "}":
            at, keys = self.keys(at)
            at, value = self.value(self.space(at + 1))
            rows.append((keys, value))
            odd |= isinstance(value, Listed) and bool(value.remarks())
            for _ in range(2):  # before and after the comma
                at, remarks, fresh = self.between(at)
                odd |= fresh or bool(remarks)
                if self.text[at] != ",":
                    break
                at += 1
        raw = self.text[start : at + 1]
        return at + 1, Raw(raw) if odd else Braces(tuple(rows))


_LONG = ('"""', "'''")
