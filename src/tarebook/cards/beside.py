"""Variants side by side: what ``compare`` prints."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from tarebook.cards.bars import bars
from tarebook.cards.figures import NAMES, NOT_KNOWN, digits, likely, nothing_known, span
from tarebook.cards.lines import Line, Style, clean, row, wrap
from tarebook.cards.sheet import caution_lines, grave_lines, unknowns
from tarebook.cards.worksheet import Worksheet
from tarebook.findings import Severity
from tarebook.nutrition import FIGURES
from tarebook.nutrition.compare import Difference, difference
from tarebook.nutrition.range import Range
from tarebook.quantities.words import format_mass_g
from tarebook.safety import Caution
from tarebook.tuples import NamedTuple

COLUMNS = 80
_DRAWN = ("sodium_mg", "sugars_g")


class Variant(NamedTuple):
    """One side: how it is called, and its worksheet."""

    name: str
    sheet: Worksheet


def beside(variants: Sequence[Variant], *, short: bool = False) -> Iterator[Line]:
    """Yield variants side by side, the first one as the measure of the others.

    Args:
        variants: two or more.
        short: of what is to be minded, what is grave only.
    """
    yield Line("Side by side, home estimates", Style.TITLE)
    for letter, one in zip(_LETTERS, variants, strict=False):
        scaled = one.sheet.scaled
        size = format_mass_g(scaled.meat_mass_g)
        yield from _say(f"{letter}  {one.name}, {size} of meat", rest="   ")
    yield from _pictures(variants)
    for letter, other in zip(_LETTERS[1:], variants[1:], strict=False):
        yield from _pair(variants[0], other, letter)
    for letter, one in zip(_LETTERS, variants, strict=False):
        gaps = list(unknowns(one.sheet.estimate))
        if gaps:
            yield Line()
            yield Line(f"{letter}, not known", Style.HEAD)
            yield from gaps
    yield from (grave_lines if short else caution_lines)(_cautions(variants), COLUMNS)


_LETTERS = "ABCDEFGHIJ"
_SEVERITIES = tuple(Severity)


def _pictures(variants: Sequence[Variant]) -> Iterator[Line]:
    ounce = variants[0].sheet.estimate.ounce.words
    for figure in _DRAWN:
        yield Line()
        yield Line(f"{NAMES[figure].capitalize()} in one finished {ounce}", Style.HEAD)
        rows = [
            (letter, one.sheet.estimate.per_ounce[figure])
            for letter, one in zip(_LETTERS, variants, strict=False)
        ]
        yield from (Line(text) for text in bars(rows, COLUMNS - 4, name_columns=2))


def _pair(first: Variant, other: Variant, letter: str) -> Iterator[Line]:
    yield Line()
    yield Line(f"{letter} against A, one finished ounce", Style.HEAD)
    widths = (16, 15, 15, 17, 9)
    yield Line(row(("", "A", letter, f"{letter} less A", "percent"), widths, right=(1, 2, 3, 4)))
    doubtful = []
    for figure in FIGURES:
        found = difference(first.sheet.estimate, other.sheet.estimate, figure, per="ounce")
        yield Line(row(_cells(found), widths, right=(1, 2, 3, 4)))
        if found.smaller_than_doubt and not found.unshared and not _same(found):
            doubtful.append(NAMES[figure])
    yield from _verdict(first, other, letter, doubtful)
    yield from _batch(first, other, letter)


def _cells(found: Difference) -> tuple[str, str, str, str, str]:
    change, percent = NOT_KNOWN, ""
    if found.change is not None and not _neither_known(found):
        change = "same" if _same(found) else _signed(found)
        if found.percent is not None and not found.unshared and not _same(found):
            percent = _percent(found.percent)
    return NAMES[found.figure], likely(found.first), likely(found.second), change, percent


def _neither_known(found: Difference) -> bool:
    return all(one is None or nothing_known(one) for one in (found.first, found.second))


def _same(found: Difference) -> bool:
    """Whether a difference is too small for the digits it is told in."""
    return found.change is not None and not found.unshared and _signed(found) == "0 to 0"


def _signed(found: Difference) -> str:
    """Return low to high of a difference; open on the side where a share is missing."""
    change = found.change
    if change is None or (found.unshared and found.smaller_than_doubt):
        return NOT_KNOWN
    low, high = (_with_sign(end, change.unit) for end in (change.low, change.high))
    if found.only_at_least:
        return f"at least {low}"
    return f"at most {high}" if found.only_at_most else f"{low} to {high}"


def _with_sign(amount: float, unit: str) -> str:
    text = digits(abs(amount), unit)
    if float(text.replace(",", "")) == 0:
        return "0"
    return ("+" if amount > 0 else "−") + text


def _percent(found: Range) -> str:
    return f"{_with_sign(found.likely, '%')} %"


def _verdict(
    first: Variant, other: Variant, letter: str, doubtful: Sequence[str]
) -> Iterator[Line]:
    """Say plainly what differs, and what is smaller than the doubt."""
    for figure in _DRAWN:
        found = difference(first.sheet.estimate, other.sheet.estimate, figure, per="ounce")
        name = NAMES[figure]
        if found.change is None:
            yield from _say(f"{name.capitalize()}: no total on one side, so no difference.")
        elif _same(found):
            yield from _say(f"{name.capitalize()}: the same.")
        elif found.smaller_than_doubt and found.unshared:
            text = f"{name.capitalize()}: nobody can say which is lower, for that of "
            text += f"{', '.join(found.unshared)} is not known."
            yield from (Line(one, Style.WARN) for one in wrap(clean(text), COLUMNS))
        elif found.smaller_than_doubt:
            text = f"{name.capitalize()}: the difference is smaller than the doubt in it."
            yield from (Line(one, Style.WARN) for one in wrap(text, COLUMNS))
        else:
            way = "less" if found.change.high < 0 else "more"
            low, high = sorted((abs(found.change.low), abs(found.change.high)))
            unit = found.change.unit
            by = f"{digits(low, unit)} to {digits(high, unit)}"
            if found.unshared:
                by = f"at least {digits(low, unit)}"
            yield from _say(f"{name.capitalize()}: {letter} has {way}, by {by} {unit} an ounce.")
    others = [name for name in doubtful if name not in {NAMES[one] for one in _DRAWN}]
    if others:
        yield from _say(f"Smaller than the doubt as well: {', '.join(others)}.", rest="  ")


def _batch(first: Variant, other: Variant, letter: str) -> Iterator[Line]:
    yield Line()
    yield Line("Whole batch", Style.HEAD)
    for figure in _DRAWN:
        found = difference(first.sheet.estimate, other.sheet.estimate, figure, per="batch")
        change = _signed(found)
        unit = "" if change == NOT_KNOWN or found.change is None else found.change.unit
        text = (
            f"{NAMES[figure]}: A {_span(found.first)}, {letter} {_span(found.second)}, "
            f"{letter} less A {change} {unit}"
        )
        yield from _say(text, rest="  ")
    sizes = (
        f"{name} {format_mass_g(one.sheet.estimate.finished_g.likely)}"
        for name, one in (("A", first), (letter, other))
    )
    yield from _say(f"finished weight, likely: {', '.join(sizes)}")


def _span(found: Range | None) -> str:
    return f"{'at least ' if found is not None and found.at_least else ''}{span(found)}"


def _cautions(variants: Sequence[Variant]) -> tuple[Caution, ...]:
    """Return what is to be minded, once each and gravest first; not on all sides: on which."""
    found: dict[Caution, str] = {}
    for letter, variant in zip(_LETTERS, variants, strict=False):
        for one in variant.sheet.cautions:
            found[one] = found.get(one, "") + letter
    gravest = sorted(found, key=lambda one: _SEVERITIES.index(one.severity))
    everywhere = _LETTERS[: len(variants)]
    return tuple(
        one if found[one] == everywhere else one._replace(title=f"{found[one]}: {one.title}")
        for one in gravest
    )


def _say(text: str, rest: str = "") -> Iterator[Line]:
    return (Line(one) for one in wrap(clean(text), COLUMNS, rest=rest))
