"""Where in a recipe file each key stands, so that a finding can name its line.

The TOML reader of the standard library keeps no positions. This finder walks the text a second
time, only once something is to be reported, and only over text that reader has accepted: it may
therefore trust the grammar and has no errors of its own.
"""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Iterator, Mapping
from functools import cache
from itertools import accumulate
from typing import TYPE_CHECKING

from tarebook.tuples import NamedTuple

if TYPE_CHECKING:
    from re import Match, Pattern

KeyPath = tuple[str | int, ...]
"""The keys that lead to a value, from the outside in; places in a list count from 0."""


def lines(text: str) -> dict[KeyPath, int]:
    """Return the line on which each key of a valid TOML text stands.

    A table is at its own header, or where it is first named if it has none.

    Args:
        text: a text that ``tomllib`` accepts.

    Returns:
        The line of every key path, counted from 1; the same paths that ``tomllib`` reads.
    """
    return _Finder(text.replace("\r\n", "\n")).walk()


def path_text(path: KeyPath) -> str:
    """Return a key path as a cook would write it; places in a list count from 1.

    Example:
        >>> path_text(("marinade", "dark soy", "amount"))
        'marinade."dark soy".amount'
        >>> path_text(("method", "steps", 0))
        'method.steps[1]'
    """
    written = ""
    for key in path:
        if isinstance(key, int):
            written += f"[{key + 1}]"
        else:
            written += f".{key_text(key)}" if written else key_text(key)
    return written


def key_text(key: str) -> str:
    """Return a key as TOML wants it, in quotes only where it needs them."""
    if key.isascii() and (key.replace("-", "0").replace("_", "0")).isalnum():
        return key
    return quoted(key)


def quoted(text: str) -> str:
    r"""Return a text in TOML's double quotes.

    Example:
        >>> print(quoted('a "dark" one'))
        "a \"dark\" one"
    """
    return '"' + "".join(_ESCAPES.get(letter) or _plain(letter) for letter in text) + '"'


class Lines(Mapping[str, int]):
    """The line of each key as it is written, found when the first one is asked for."""

    __slots__ = ("_found", "_text", "_written")

    def __init__(self, text: str) -> None:
        self._text = text
        self._found: dict[KeyPath, int] | None = None
        self._written: dict[str, int] | None = None

    def nearest_line(self, path: KeyPath) -> int | None:
        """Return the line of a key, or of the table it is missing from; None for the whole file."""
        found = self._lines()
        while path and path not in found:
            path = path[:-1]
        return found.get(path)

    def __getitem__(self, path: str) -> int:
        return self._by_text()[path]

    def __iter__(self) -> Iterator[str]:
        return iter(self._by_text())

    def __len__(self) -> int:
        return len(self._lines())

    def _by_text(self) -> dict[str, int]:
        if self._written is None:
            self._written = {path_text(path): line for path, line in self._lines().items()}
        return self._written

    def _lines(self) -> dict[KeyPath, int]:
        if self._found is None:
            try:
                self._found = lines(self._text)
            except RecursionError:  # nested nearly too deep for tomllib too: no line is known
                self._found = {}
        return self._found


_ESCAPES = {'"': '\\"', "\\": "\\\\", "\n": "\\n", "\t": "\\t", "\r": "\\r"}


def _plain(letter: str) -> str:
    if letter.isprintable():
        return letter
    code = ord(letter)
    return f"\\u{code:04X}" if code <= 0xFFFF else f"\\U{code:08X}"


class Grammar(NamedTuple):
    """What a valid TOML text is made of."""

    space: Pattern[str]
    blank: Pattern[str]
    key: Pattern[str]
    string: Pattern[str]
    atom: Pattern[str]


@cache
def grammar() -> Grammar:
    """Return the patterns of it; made when first asked for."""
    import re

    basic, literal = r'"(?:[^"\\\n]++|\\.)*+"', r"'[^'\n]*+'"
    long_basic = r'"""(?:[^"\\]++|\\.|"{1,2}(?!"))*+"{3,5}'
    long_literal = r"'''(?:[^']++|'{1,2}(?!'))*+'{3,5}"
    return Grammar(
        space=re.compile(r"[ \t]*+"),
        blank=re.compile(r"(?:[ \t\n]++|#[^\n]*+)*+"),
        key=re.compile(rf"[A-Za-z0-9_-]++|{basic}|{literal}"),
        string=re.compile(f"{long_basic}|{long_literal}|{basic}|{literal}", re.DOTALL),
        atom=re.compile(r"[^,\]}#\n]++"),
    )


class Walk:
    """One walk over one text; each method takes a position and returns the one behind it."""

    __slots__ = ("grammar", "text")

    def __init__(self, text: str) -> None:
        self.text = text
        self.grammar = grammar()

    def keys(self, at: int) -> tuple[int, tuple[str, ...]]:
        keys: tuple[str, ...] = ()
        while True:
            found = self._found(self.grammar.key, self.space(at))
            keys += (unquoted(found.group()),)
            at = self.space(found.end())
            if self.text[at] != ".":
                return at, keys
            at += 1

    def scalar(self, at: int) -> Match[str]:
        return self._found(self.grammar.string if self.text[at] in "\"'" else self.grammar.atom, at)

    def blank(self, at: int) -> int:
        return self._found(self.grammar.blank, at).end()

    def space(self, at: int) -> int:
        return self._found(self.grammar.space, at).end()

    def _found(self, pattern: Pattern[str], at: int) -> Match[str]:
        found = pattern.match(self.text, at)
        assert found is not None, "tomllib accepted this text"
        return found


class _Finder(Walk):
    """A walk that notes the line of every key."""

    __slots__ = ("arrays", "ends", "found")

    def __init__(self, text: str) -> None:
        super().__init__(text)
        # Where each line ends, one behind its last letter.
        self.ends = list(accumulate(len(row) + 1 for row in text.split("\n")))
        self.found: dict[KeyPath, int] = {}
        self.arrays: dict[KeyPath, int] = {}  # how many [[tables]] each path has so far

    def walk(self) -> dict[KeyPath, int]:
        table: KeyPath = ()
        at = self.blank(0)
        while at < len(self.text):
            if self.text.startswith("[[", at):
                at, table = self.list_header(at)
            elif self.text[at] == "[":
                at, table = self.header(at)
            else:
                at = self.pair(at, table)
            at = self.blank(at)
        return self.found

    def header(self, at: int) -> tuple[int, KeyPath]:
        end, keys = self.keys(at + 1)
        path = self.inside(keys, at)
        self.found[path] = self.line(at)  # its own header, wherever it was named before
        return end + 1, path

    def list_header(self, at: int) -> tuple[int, KeyPath]:
        end, keys = self.keys(at + 2)
        path = (*self.inside(keys[:-1], at), keys[-1])
        place = self.arrays.get(path, 0)
        self.arrays[path] = place + 1
        self.found.setdefault(path, self.line(at))
        self.found[(*path, place)] = self.line(at)
        return end + 2, (*path, place)

    def inside(self, keys: tuple[str, ...], at: int) -> KeyPath:
        """Return the path that a header's keys mean: inside a list, its newest table."""
        path: KeyPath = ()
        for key in keys:
            path = (*path, key)
            self.found.setdefault(path, self.line(at))
            if path in self.arrays:
                path = (*path, self.arrays[path] - 1)
        return path

    def pair(self, at: int, table: KeyPath) -> int:
        line = self.line(at)
        at, keys = self.keys(at)
        path = table
        for key in keys:
            path = (*path, key)
            self.found.setdefault(path, line)
        return self.value(self.space(at + 1), path)

    def value(self, at: int, path: KeyPath) -> int:
        first = self.text[at]
        if first == "[":
            return self.array(at, path)
        if first == "{":
            return self.inline_table(at, path)
        return self.scalar(at).end()

    def array(self, at: int, path: KeyPath) -> int:
        at, place = self.blank(at + 1), 0
        while self.text[at] != "]":
            self.found[(*path, place)] = self.line(at)
            at = self.after_comma(self.value(at, (*path, place)))
            place += 1
        return at + 1

    def inline_table(self, at: int, path: KeyPath) -> int:
        at = self.blank(at + 1)
        while self.text[at] != "}":
            at = self.after_comma(self.pair(at, path))
        return at + 1

    def after_comma(self, at: int) -> int:
        at = self.blank(at)
        return self.blank(at + 1) if self.text[at] == "," else at

    def line(self, at: int) -> int:
        return bisect_right(self.ends, at) + 1


def unquoted(key: str) -> str:
    """Return a key, or a text on one line, without its quotes."""
    if key[0] == "'":
        return key[1:-1]
    if key[0] != '"':
        return key
    if "\\" not in key:
        return key[1:-1]
    import tomllib

    return str(tomllib.loads(f"key = {key}")["key"])
