"""What a cook typed or pasted, in plain characters.

Fraction glyphs become ``1/2``, every kind of dash one of two, odd spaces plain ones. What has no
place in an amount (direction marks, control characters, other scripts' digits) is refused here, by
name, before anything is read.
"""

from __future__ import annotations

from tarebook.findings import AmountError

__all__ = ["LONGEST", "plain", "quoted", "refuse_comma"]

LONGEST = 200
"""How many characters are read; no amount is that long, and reading stays short."""

_GLYPHS = {
    "¼": "1/4", "½": "1/2", "¾": "3/4", "⅐": "1/7", "⅑": "1/9", "⅒": "1/10", "⅓": "1/3",
    "⅔": "2/3", "⅕": "1/5", "⅖": "2/5", "⅗": "3/5", "⅘": "4/5", "⅙": "1/6", "⅚": "5/6",
    "⅛": "1/8", "⅜": "3/8", "⅝": "5/8", "⅞": "7/8",
}  # fmt: skip

_SAME = str.maketrans(
    {
        "⁄": "/",  # fraction slash
        "∕": "/",  # division slash
        "‐": "-",  # hyphen
        "‑": "-",  # hyphen that does not break
        "‒": "–",  # figure dash
        "—": "–",
        "−": "-",  # minus sign
        "\u00a0": " ",
        "\u2007": " ",
        "\u2009": " ",
        "\u200a": " ",
        "\u202f": " ",
        "\t": " ",
        "’": "'",
        "º": "°",
    }
)

_MARKS = frozenset("–°″”“×…")


def plain(text: str, what: str = "amount") -> str:
    """Return an amount in plain characters, or say which character has no place in one.

    Args:
        text: as typed.
        what: what it is meant to be, for the message (``amount``, ``weight``).

    Returns:
        The same with plain fractions, dashes and spaces, and no space at either end.

    Raises:
        AmountError: it is empty, longer than 200 characters, or has a character that cannot be
            read.

    Example:
        >>> plain("1½ cups"), plain("2⁄3 cup"), plain("½—1 tsp")
        ('1 1/2 cups', '2/3 cup', '1/2–1 tsp')
    """
    if len(text) > LONGEST:
        raise AmountError(
            f"{what} {quoted(text)} is {len(text)} characters long",
            text=text[:LONGEST],
            hint="write an amount such as 1 1/2 cups",
        )
    if not (text.isascii() and text.isprintable()):
        text = _opened(text.translate(_SAME), what, text)
    text = text.strip()
    if not text:
        raise AmountError(f"{what} is empty", hint="write an amount such as 1 1/2 cups")
    return text


def quoted(text: str) -> str:
    """Return the text in quotation marks for a message: short, and without control characters."""
    shown = "".join(char if char.isprintable() else "?" for char in text[:40])
    return f'"{shown}…"' if len(text) > 40 else f'"{shown}"'


def refuse_comma(before: str, after: str, what: str, text: str) -> AmountError:
    """Return the error of a comma between digits, which may mean either of two things."""
    hint = f"write {before}.{after}"
    if len(after) == 3:
        hint = f"write {before}{after} or {before}.{after}"
    return AmountError(f"{what} {quoted(text)} has a comma inside a number", text=text, hint=hint)


def _opened(text: str, what: str, written: str) -> str:
    """Return the text with its glyphs opened, each set apart from a digit beside it."""
    found: list[str] = []
    before = ""
    for char in text:
        if char in _GLYPHS:
            apart = " " if before.isdigit() or before in _GLYPHS else ""
            found.append(apart + _GLYPHS[char])
        else:
            apart = " " if before in _GLYPHS and char.isdigit() else ""
            found.append(apart + _known(char, what, written))
        before = char or " "
    return "".join(found)


def _known(char: str, what: str, written: str) -> str:
    """Return the character, or refuse it by name."""
    ascii_one = char.isascii() and char.isprintable()
    if ascii_one or char in _MARKS or (char.isalpha() and not char.isnumeric()):
        return char
    from unicodedata import name  # only when something odd was pasted

    called = name(char, "without a name").lower()
    raise AmountError(
        f"{what} {quoted(written)} has a character that cannot be read: "
        f"U+{ord(char):04X} ({called})",
        text=written,
        hint="type the amount again in plain letters and digits",
    )
