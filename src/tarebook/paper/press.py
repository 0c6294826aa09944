"""The typesetting engine: a template and data in, pages out.

A recipe reaches the engine as data alone, so whatever it says is set as text and never as markup.
Nothing is fetched, and no file is written here. The same input gives the same bytes: no clock is
asked, and the fonts come with the engine, except for a letter that none of them has.
"""

from __future__ import annotations

import json
import re
import warnings
from collections.abc import Callable, Iterable, Mapping
from pathlib import Path
from typing import Any, Literal
from unicodedata import category, normalize

__all__ = ["FALLBACKS", "Form", "press"]

Form = Literal["pdf", "svg", "png"]

FALLBACKS = (
    "Noto Serif",
    "Noto Serif CJK SC",
    "Noto Serif CJK JP",
    "Noto Sans CJK SC",
    "Noto Sans CJK JP",
    "Noto Sans",
    "Noto Sans Canadian Aboriginal",
    "Noto Sans Thai",
    "Noto Sans Tamil",
    "Noto Sans Bengali",
    "Noto Sans Ethiopic",
    "Noto Sans Symbols 2",
    "Noto Emoji",
    "DejaVu Serif",
    "DejaVu Sans",
)
"""Fonts of the computer that are tried by name, in this order, for a letter that the engine's own
fonts lack; after them, whatever else is installed."""

_HERE = Path(__file__).parent
_LACKS = re.compile(r'the text `"(.*?)"` could not be displayed')
_ESCAPED = re.compile(r"\\u\{([0-9a-f]+)\}")
_CIRCLE = "\N{DOTTED CIRCLE}"
_PNG_PPI = 144.0


def press(
    template: str,
    data: Mapping[str, Any],
    *,
    form: Form = "pdf",
    ppi: float = _PNG_PPI,
    tell: Callable[[str], object] = warnings.warn,
) -> tuple[bytes, ...]:
    """Return the pages that a template makes of data.

    Args:
        template: name of one of this room's own ``.typ`` files.
        data: what it prints, as plain values; the template finds it by ``house.typ``.
        form: ``pdf``, ``svg`` or ``png``.
        ppi: fineness of a picture in dots [1/in]; for ``png`` alone.
        tell: called with a sentence for the cook when a letter had to come from a font of this
            computer, or could not be had at all.

    Returns:
        One document for ``pdf``, tagged and checked as PDF/UA-1; else one picture a page.
    """
    words = normalize("NFC", json.dumps(data, ensure_ascii=False))
    return _pressed(template, words, form, ppi, tell)


def _pressed(
    template: str, words: str, form: Form, ppi: float, tell: Callable[[str], object]
) -> tuple[bytes, ...]:
    own = _Run(template, words, system=False)
    lacking = own.lacking()
    if not lacking:
        return own.pages(form, ppi)
    helped = _Run(template, words, system=True)
    lost = helped.lacking()
    marks = [one for one in lost if category(one).startswith("M")]
    if marks:
        # With an accent that no font has, its letter would be lost as well.
        tell(f"note: no font here has {_named(marks)}: printed without it")
        left = words.translate(dict.fromkeys(map(ord, marks)))
        return _pressed(template, left, form, ppi, tell)
    borrowed = [one for one in lacking if one not in lost]
    if borrowed:
        tell(f"note: {_named(borrowed)}: in a font of this computer; others may print it otherwise")
    if lost:
        tell(
            f"note: no font here has {_named(lost)}: printed as an empty box; a Noto font may help"
        )
    return helped.pages(form, ppi, checked=not lost)


class _Run:
    """One template with its data in the engine; laying out twice costs little more than once."""

    def __init__(self, template: str, words: str, *, system: bool) -> None:
        from typst import Compiler

        inputs = {"data": words, "fallbacks": json.dumps(FALLBACKS if system else ())}
        self._engine = Compiler(
            _HERE / template,
            root=_HERE,
            ignore_system_fonts=not system,
            sys_inputs=inputs,
        )
        self._document: bytes | None = None

    def lacking(self) -> str:
        """Return the characters that no font has; only the check of a PDF can tell."""
        from typst import TypstError

        try:
            self._document = self._compiled("pdf", checked=True)[0]
        except TypstError as fault:
            found = _LACKS.findall(fault.diagnostic)
            if not found:
                raise
            return "".join(dict.fromkeys("".join(map(_plain, found))))
        return ""

    def pages(self, form: Form, ppi: float, *, checked: bool = True) -> tuple[bytes, ...]:
        if form == "pdf" and checked and self._document is not None:
            return (self._document,)
        return self._compiled(form, ppi=ppi, checked=checked)

    def _compiled(
        self, form: Form, *, checked: bool, ppi: float | None = None
    ) -> tuple[bytes, ...]:
        found = self._engine.compile(
            format=form,
            ppi=ppi,
            pdf_standards=["ua-1"] if form == "pdf" and checked else [],
            timestamp=0,
        )
        return (found,) if isinstance(found, bytes) else tuple(found or ())


def _plain(shown: str) -> str:
    """Return what the engine shows in a message, with ``\\u{..}`` as the character it names."""
    return _ESCAPED.sub(lambda found: chr(int(found[1], 16)), shown)


def _named(characters: Iterable[str]) -> str:
    """Return characters for a message, each with its number; an accent over a dotted circle."""
    return ", ".join(
        f"{_CIRCLE if category(one).startswith('M') else ''}{one} (U+{ord(one):04X})"
        for one in characters
    )
