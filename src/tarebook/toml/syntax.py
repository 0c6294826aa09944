"""From text to TOML values; a syntax fault is put in a cook's words, with what to write instead.

``tomllib`` stops at the first fault. Where that fault is one line long the line is left out and
the rest is read again, so that a cook sees all faults at once.
"""

from __future__ import annotations

from fractions import Fraction

from tarebook.toml.fault import Faults, shown
from tarebook.tuples import NamedTuple

DEEPEST_KEY = 8
"""Keys joined by more dots take ``tomllib`` a time that grows with their square."""

_MOST_SENTENCES = 200  # of one word each, one behind the other: more is a key without its end
_LARGEST_REREAD = 64_000  # letters: a file read some twenty times must stay quick
_MOST_REREADS = 20
_LONGEST_NUMBER = 40
_LONGEST_ROW = 1_000  # letters of a faulty line that are looked at
_LARGEST_EXPONENT = 30


class OddNumber(NamedTuple):
    """Stands for a number that is none (``nan``, ``inf``) or that is absurdly long."""

    text: str


class Parsed(NamedTuple):
    """What could be read of a text.

    Attributes:
        document: the TOML values; every number with a point is an exact ``Fraction``.
        text: the text they came from, with the same lines as the file.
        whole: False if faulty lines had to be left out, so that nothing is known to be missing.
    """

    document: dict[str, object]
    text: str
    whole: bool


def parse(text: str, faults: Faults) -> Parsed | None:
    """Return the TOML values of a text, or None where it cannot be read on.

    Args:
        text: the text of a recipe file.
        faults: where to add what is wrong.
    """
    if _too_deep(text, faults):
        return None
    import tomllib

    for reread in range(_MOST_REREADS):
        try:
            document = tomllib.loads(text, parse_float=exact)
        except RecursionError:
            _explain_nesting(text, faults)
            return None
        except ValueError as error:
            line, column = _place(error, text)
            if _in_open_list(str(error), text, line, column):
                opened = _line_of_opening(text, line - 1, "[")
                faults.error("syntax", _OPEN_LIST, hint="put ] at its end", line=opened)
                return None
            _explain(str(error), text, line, faults)
            shorter = _without(text, line, str(error))
            if shorter is None:
                return None
            text = shorter
        else:
            return Parsed(document, text, reread == 0)
    faults.error("syntax", f"{_MOST_REREADS} lines cannot be read; the rest was not looked at")
    return None


def exact(text: str) -> Fraction | OddNumber:
    """Return a TOML number with a point exactly, or a mark for what is no usable number.

    Example:
        >>> exact("0.1")
        Fraction(1, 10)
        >>> exact("1e999999999")
        OddNumber(text='1e999999999')
    """
    digits, _, exponent = text.replace("_", "").lower().partition("e")
    odd = digits.lstrip("+-") in ("nan", "inf") or len(text) > _LONGEST_NUMBER
    if odd or abs(int(exponent or 0)) > _LARGEST_EXPONENT:
        return OddNumber(text)
    return Fraction(digits) * Fraction(10) ** int(exponent or 0)


_TABLE_HINT = 'an ingredient is  name = "amount"  or  name = { amount = "...", ... }'
_ASKED_TWICE = "one line a food and part; give the second its own name with food = ..."
_STOPS = ("Unclosed array", "Unterminated", "Expected \"'''\"")


def _too_deep(text: str, faults: Faults) -> bool:
    if text.count(".") <= DEEPEST_KEY:
        return False
    import re

    part = r"""\.[ \t]*+(?:[\w-]++|"[^"\n]*+"|'[^'\n]*+')[ \t]*+"""
    for chain in re.finditer(f"(?:{part})++", text):  # words between points: a key, or sentences
        is_key = text[chain.end() : chain.end() + 1] in ("=", "]")
        if chain.group().count(".") > (DEEPEST_KEY if is_key else _MOST_SENTENCES):
            faults.error(
                "syntax",
                f"a key of more than {DEEPEST_KEY} parts",
                hint="a recipe's keys have at most four",
                line=text.count("\n", 0, chain.start()) + 1,
            )
            return True
    return False


def _explain_nesting(text: str, faults: Faults) -> None:
    openings = [row.count("[") + row.count("{") for row in text.split("\n")]
    faults.error(
        "syntax",
        "brackets inside brackets, far too many",
        hint=_TABLE_HINT,
        line=openings.index(max(openings)) + 1,
    )


def _place(error: ValueError, text: str) -> tuple[int, int]:
    """Return line and column of a fault; column 0 where only the line can be told."""
    import re

    found = re.search(r"\(at line (\d+), column (\d+)\)$", str(error))
    if found:
        return int(found[1]), int(found[2])
    # No place: a whole number of thousands of digits, which Python itself refuses.
    digits = re.search(r"\d[\d_]{4200}", text)
    if digits and "digits" in str(error):
        return text.count("\n", 0, digits.start()) + 1, 0
    last = text.rstrip().count("\n") + 1
    mark = next((mark for start, mark in _OPENINGS if str(error).startswith(start)), "")
    return (_line_of_opening(text, last, mark) if mark else last), 0


_OPENINGS = (
    ("Unterminated string", '"""'),
    ("Expected \"'''\"", "'''"),
    ('Expected "\'"', "'"),
    ("Unclosed", "["),
    ("Invalid value", "["),
)
_OPEN_LIST = "a list is not closed"


def _line_of_opening(text: str, before: int, mark: str) -> int:
    """Return where what is never closed was opened: behind it, its mark stands no more."""
    rows = text.split("\n")[:before]
    return next((at for at in range(before, 0, -1) if mark in rows[at - 1]), before)


def _in_open_list(error: str, text: str, line: int, column: int) -> bool:
    """Return whether a key was met where a list wants a value: the list was never closed."""
    return error.startswith("Invalid value") and 0 < column <= _line_text(text, line).find("=")


def _line_text(text: str, line: int) -> str:
    rows = text.split("\n")
    return rows[line - 1].rstrip("\r") if line <= len(rows) else ""


def _without(text: str, line: int, error: str) -> str | None:
    """Return the text with a faulty line left empty, or None where more than the line is lost."""
    row = _line_text(text, line).strip()
    alone = bool(row) and row[0] not in "[]{}," and '"""' not in row and "'''" not in row
    if len(text) > _LARGEST_REREAD or not alone or error.startswith(_STOPS):
        return None
    if row.count("[") > row.count("]"):
        return None
    rows = text.split("\n")
    rows[line - 1] = ""
    return "\n".join(rows)


def _explain(error: str, text: str, line: int, faults: Faults) -> None:
    row = _line_text(text, line)
    if "\r" in row:  # the whole file may be one such row, whatever else is said of it
        message, hint = _LONE_RETURN
    else:
        message, hint = _repeated(error, row) or _unquoted(error, row) or _other(error, row)
    faults.error("syntax", message, hint=hint, line=line)


def _repeated(error: str, row: str) -> tuple[str, str] | None:
    if error.startswith(("Cannot overwrite", "Duplicate inline table key")):
        return f'"{shown(_name(row))}" stands here a second time', _ASKED_TWICE
    if error.startswith(("Cannot declare", "Cannot redefine", "Cannot mutate")):
        return (
            f"{shown(row.strip())} stands here a second time",
            "put all of it under the first one",
        )
    return None


def _unquoted(error: str, row: str) -> tuple[str, str] | None:
    """Return what to say of a value that lacks its quotes, the commonest slip."""
    found = _pair(row)
    if found is None or not error.startswith(("Invalid value", "Expected newline")):
        return None
    name, value = found
    if not value:
        return f"nothing stands behind {shown(name)} =", ""
    if value[0] in "“”„«‘’":
        return "curly quotes", f'use straight ones: {shown(name)} = "{shown(value.strip(_CURLY))}"'
    if value[0] in "\"'":
        return "something stands behind the closing quotes", "put a # before a remark"
    if value[0] in "[{":
        return None
    message = f"{shown(value)} needs quotes"
    if value.lower() in ("true", "false", "yes", "no"):
        return f"{shown(value)} is no TOML word", "write true or false, in small letters"
    if value[0].isalpha() or any(letter.isalpha() for letter in value):
        return message, f'write {shown(name)} = "{shown(value)}"'
    return message, f'write the amount and its unit in quotes, {shown(name)} = "{shown(value)} cup"'


_CURLY = "“”„«»‘’"


def _other(error: str, row: str) -> tuple[str, str]:
    for start, message, hint in _IN_WORDS:
        if error.startswith(start):
            return message, hint
    if error.startswith(("Expected '=' after a key", "Invalid statement")):
        return _no_key(row)
    return "this line cannot be read as TOML", error.partition(" (at ")[0].lower()


_LONE_RETURN = ("a lone carriage return", "save the file with usual line ends")
_IN_WORDS = (
    ("Illegal character '\\n'", "the quotes are not closed on this line", 'end it with "'),
    ("Found invalid character", "the quotes are not closed on this line", "end it with '"),
    ("Unterminated string", "quotes that are opened are never closed", 'end the text with "'),
    ('Expected "\'"', "quotes that are opened are never closed", "end the text with '"),
    ("Expected \"'''\"", "quotes that are opened are never closed", "end the text with '''"),
    ("Invalid value (at end", _OPEN_LIST, "put ] at its end"),
    ("Invalid value", "words or an amount in a list or table need quotes", 'as in ["Slice."]'),
    ("Unclosed array", "a list is not closed", "put commas between its parts, and ] at its end"),
    ("Unclosed inline table", "a { table } is not closed", "put commas between its parts, } last"),
    ("Expected ']", "a section's name is not closed", "write it alone on its line, as in [rub]"),
    ("Unescaped '\\'", "a backslash in double quotes", "write two, or use single quotes"),
    ("Invalid hex value", "a backslash in double quotes", "write two, or use single quotes"),
    ("Escaped character", "a \\u escape that stands for no character", "leave it out"),
    ("Exceeds the limit", "a number of thousands of digits", "is this the right file?"),
    ("Invalid date", "this date does not exist", "put it in quotes"),
)


def _no_key(row: str) -> tuple[str, str]:
    name, colon, value = row.partition(":")
    if colon and "=" not in row:
        return "there is no = on this line", f"write {shown(name.strip())} = {shown(value.strip())}"
    name, equals, value = row.partition("=")
    if equals and name.strip():
        return (
            "a name of several words or with other letters than a to z needs quotes",
            f'write "{shown(name.strip())}" = {shown(value.strip())}',
        )
    return "there is no = on this line", 'a line is  name = "amount", or a # comment'


def _name(row: str) -> str:
    found = _pair(row)
    return found[0] if found else row.strip()


def _pair(row: str) -> tuple[str, str] | None:
    """Return the name and the value of a line without its remark, or None if it has no pair."""
    name, equals, value = row[:_LONGEST_ROW].partition("=")
    if not equals or not name.strip():
        return None
    return name.strip().strip("\"'"), value.partition("#")[0].strip()
