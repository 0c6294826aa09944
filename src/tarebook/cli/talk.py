"""Printing, painting, and reading what was asked."""

from __future__ import annotations

import os
import sys
from collections.abc import Iterable, Iterator
from contextlib import contextmanager
from fractions import Fraction
from typing import TYPE_CHECKING, Any

from tarebook.findings import AskedWrongly

if TYPE_CHECKING:
    from tarebook.cards.lines import Line
    from tarebook.findings import Finding
    from tarebook.recipe.model import Recipe

_PAINT = {"title": "1", "head": "1", "warn": "33", "quiet": "2"}
_CLOSED_PIPE = 0


def paints(stream: Any) -> bool:
    """Whether a stream takes colour: a terminal, and nobody said no."""
    if stream is None or not stream.isatty():
        return False
    return not os.environ.get("NO_COLOR") and os.environ.get("TERM") != "dumb"


def show(lines: Iterable[Line]) -> None:
    """Print styled lines: painted on a terminal, plain down a pipe."""
    write("".join(painted(lines)))


def painted(lines: Iterable[Line]) -> Iterator[str]:
    """Yield styled lines as they are printed, each with its end."""
    paint = paints(sys.stdout)
    for line in lines:
        code = _PAINT.get(line.style.value) if paint and line.text else None
        text = line.text.rstrip()
        yield f"\x1b[{code}m{text}\x1b[0m\n" if code else f"{text}\n"


def show_data(data: Any) -> None:
    """Print plain data as JSON, keys in the order given."""
    import json

    write_document(json.dumps(data, ensure_ascii=False, indent=2) + "\n")


def listed_data(items: Iterable[Any]) -> Iterator[str]:
    """Yield a list of plain data as ``show_data`` prints it, item by item."""
    import json

    lead = "[\n"
    for one in items:
        text = json.dumps(one, ensure_ascii=False, indent=2)
        yield lead + "  " + text.replace("\n", "\n  ")
        lead = ",\n"
    yield "[]\n" if lead == "[\n" else "\n]\n"


def write(text: str) -> None:
    """Write to standard output; a terminal that lacks a letter gets a stand-in for it."""
    if sys.stdout is None:  # closed by whoever started us
        return
    encoding = sys.stdout.encoding or "utf-8"
    try:
        text.encode(encoding)
    except UnicodeEncodeError:
        text = _plainer(text).encode(encoding, "replace").decode(encoding)
    with _enough_seen():
        sys.stdout.write(text)
        sys.stdout.flush()


def write_document(text: str) -> None:
    """Write what other programs read, as HTML or JSON: UTF-8, whatever the terminal's letters are.

    On a screen, where somebody reads it, it is text like any other.
    """
    if sys.stdout is None or sys.stdout.isatty():
        write(text)
    else:
        write_bytes(text.encode("utf-8", "replace"))


def write_bytes(data: bytes) -> None:
    """Write what is no text to standard output."""
    if sys.stdout is None:
        return
    with _enough_seen():
        sys.stdout.buffer.write(data)
        sys.stdout.buffer.flush()


@contextmanager
def _enough_seen() -> Iterator[None]:
    """End without a word where the reader has seen enough and is gone."""
    try:
        yield
    except BrokenPipeError:
        drop_output()
        raise SystemExit(_CLOSED_PIPE) from None


def drop_output() -> None:
    """Send what is left of the output nowhere: at exit it would be tried once more."""
    os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())


def complain(text: str) -> None:
    """Write to standard error."""
    if sys.stderr is None:
        return
    encoding = sys.stderr.encoding or "utf-8"
    # What was typed or read may hold marks that steer a terminal; none of them gets there.
    text = "".join(c if c.isprintable() else "\N{REPLACEMENT CHARACTER}" for c in text)
    plain = text.encode(encoding, "replace").decode(encoding)
    sys.stderr.write(plain + "\n")


def complain_findings(findings: Iterable[Finding]) -> None:
    """Write findings to standard error, one a line, place first."""
    for one in findings:
        complain(str(one))


def _plainer(text: str) -> str:
    stand_ins: dict[str, str | int | None] = {
        "├": "[", "┤": "]", "─": "-", "●": "o", "≥": ">=", "−": "-", "°": "deg ", "×": "x",
        "–": "-", "µ": "u", "’": "'", "½": "1/2", "⅓": "1/3", "¼": "1/4", "¾": "3/4",
    }  # fmt: skip
    return text.translate(str.maketrans(stand_ins))


def read_meat(
    recipe: Recipe,
    *,
    meat: str | None,
    bought: str | None,
    trim: str | None,
    factor: str | None,
) -> tuple[Fraction | None, Fraction | None]:
    """Return today's meat [g] or the factor [-], whichever was asked for; one of them is None.

    Raises:
        AskedWrongly: more than one way was given, or one cannot be read.
    """
    from tarebook.quantities.amount import parse_mass
    from tarebook.scaling import trimmed

    ways = [one for one in (meat, bought, factor) if one is not None]
    if len(ways) > 1:
        raise AskedWrongly("give one of --meat, --bought or --factor")
    if trim is not None and bought is None:
        raise AskedWrongly("--trim goes with --bought")
    if meat is not None:
        return asked(parse_mass, meat, "--meat"), None
    if bought is not None:
        part = read_share(trim, "--trim") if trim else Fraction(0)
        if not part:
            complain("note: nothing is trimmed off; add --trim, as in --trim 12%")
        return trimmed(asked(parse_mass, bought, "--bought"), part), None
    if factor is not None:
        return None, read_number(factor, "--factor")
    return recipe.meat.mass_g, None


def read_number(text: str, option: str) -> Fraction:
    """Return a number given to an option."""
    from tarebook.quantities.number import parse_number

    number: Fraction = asked(parse_number, text.strip(), option)
    return number


def read_share(text: str, option: str) -> Fraction:
    """Return a share given as ``12%`` or ``12`` (per cent) or ``0.12``."""
    body = text.strip()
    number = read_number(body.removesuffix("%").strip(), option)
    return number / 100 if body.endswith("%") or number >= 1 else number


def asked(read: Any, text: str, option: str) -> Any:
    """Return what a reader makes of a text; its complaint names the option, if it is one."""
    from tarebook.findings import AmountError, UnitError

    try:
        return read(text)
    except (AmountError, UnitError) as fault:
        hint = f"; {fault.hint}" if fault.hint else ""
        lead = f"{option}: " if option else ""
        raise AskedWrongly(f"{lead}{fault}{hint}") from None


def open_recipe(name: str) -> Recipe:
    """Return a recipe by path, shipped name or ``-``; warnings go to standard error."""
    from tarebook.recipe.load import load_recipe

    if not name.strip():
        raise AskedWrongly("no recipe is named")
    recipe, findings = load_recipe(name)
    told = (*findings, *slips_in_panels(recipe))
    complain_findings(one for one in told if one.severity.value != "note")
    return recipe


def slips_in_panels(recipe: Recipe) -> Iterable[Finding]:
    """Return what looks like a slip in the panels that stand in a recipe itself."""
    if all(one.own_panel is None for one in recipe.ingredients):
        return ()
    from tarebook.nutrition.odd_panel import odd_panels  # few recipes hold a panel

    return odd_panels(recipe)
