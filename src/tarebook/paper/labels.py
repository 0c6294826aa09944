"""Labels for the bags and jars of one batch, and the page that tries how they lie."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from datetime import date
from typing import Any

from tarebook.cards.content import NOT_A_LABEL, rounded
from tarebook.cards.figures import NAMES, NO_TOTAL, NOT_KNOWN, digits, nothing_known
from tarebook.cards.lines import clean
from tarebook.cards.worksheet import Worksheet
from tarebook.figures.spoken import spoken
from tarebook.findings import AskedWrongly
from tarebook.nutrition.range import Range
from tarebook.paper.press import Form, press
from tarebook.paper.sheets import Sheet, larger
from tarebook.quantities.words import format_pounds
from tarebook.safety import KeepBy
from tarebook.safety.rulebook import rule
from tarebook.tuples import NamedTuple

MOST = 500
DROPPED_FIRST = ("source", "bag", "ranges", "sugars", "sodium")
"""What a small label leaves out, in this order. The name, what to keep it by and on what
condition, the weight, the allergens and that it is no retail label are never left out."""

_PLACES = {"room": "on the shelf", "refrigerator": "in the refrigerator", "freezer": "frozen"}
IF_SEALED = "if sealed, dry by the bend test and"
_HELD = "\N{NO-BREAK SPACE}"  # what belongs together stays on one line
_TOO_SMALL = "the label is too small"


class LabelWords(NamedTuple):
    """What every label of a batch says.

    Attributes:
        name: of the recipe or the batch.
        packed: when it was packed.
        keep: where, and the last day there; or sentences that it is kept cold, and why.
        kept: what those days rest on.
        cold: whether that is all that can be said, so that it stands out.
        net: net weight, or a line to write it on.
        sodium, sugars: likely values of an ounce.
        sodium_range, sugars_range: low to high; empty where there is none.
        allergens: sentences.
        source: who says how long it keeps.
        batch: the cook's own mark for the batch, or empty.
        foot: that it is no retail label.
    """

    name: str
    packed: str
    keep: tuple[Any, ...]
    kept: str
    cold: bool
    net: str
    sodium: str
    sodium_range: str
    sugars: str
    sugars_range: str
    allergens: tuple[str, ...]
    source: str
    batch: str
    foot: str = NOT_A_LABEL


def label_words(
    sheet: Worksheet,
    keep: KeepBy,
    *,
    packed: date,
    each_g: float | None = None,
    batch: str = "",
    name: str = "",
    own_dates: Mapping[str, str] | None = None,
) -> LabelWords:
    """Return what the labels of a batch say.

    Args:
        sheet: everything about the batch.
        keep: how long it keeps, with the day it was packed.
        packed: that day.
        each_g: what one bag holds [g], or None for a line to write it on.
        batch: the cook's own mark for the batch.
        name: in place of the recipe's title.
        own_dates: the cook's own words for ``room``, ``refrigerator`` or ``freezer``.
    """
    found = sheet.estimate.per_ounce
    own = {place: clean(said) for place, said in (own_dates or {}).items()}
    cold = not keep.limits
    source = "" if cold else rule(keep.cites).citation
    return LabelWords(
        name=clean(name or sheet.recipe.title),
        packed=f"Packed {_day(packed)}",
        keep=_cold(keep, own) if cold else _days(keep, own),
        kept="" if cold else _whole(f"{IF_SEALED} {keep.heated}"),
        cold=cold,
        net=_net(each_g),
        sodium=f"{NAMES['sodium_mg']} {_likely('sodium_mg', found)}",
        sodium_range=_span(found["sodium_mg"]),
        sugars=f"{NAMES['sugars_g']} {_likely('sugars_g', found)}",
        sugars_range=_span(found["sugars_g"]),
        allergens=tuple(_allergens(sheet)),
        source=f"Shortest published times: {source}" if keep.limits else "",
        batch=clean(batch),
    )


def label_sheets(
    words: LabelWords,
    on: Sheet,
    *,
    count: int,
    start: int = 1,
    form: Form = "pdf",
    tell: Callable[[str], object] | None = None,
) -> tuple[bytes, ...]:
    """Return labels on as many sheets as they need.

    Args:
        words: what each says.
        on: the sheet.
        count: how many labels, 1 to 500.
        start: the first free label of the first sheet, from 1, along the rows.
        form: ``pdf``, ``svg`` or ``png``.
        tell: called with a sentence for the cook where a letter had to be borrowed.

    Returns:
        One document for ``pdf``, else one picture a sheet.

    Raises:
        AskedWrongly: a number outside its range, or words that no label of the sheet holds.
    """
    if not 1 <= count <= MOST:
        raise AskedWrongly(f"--count: from 1 to {MOST} labels at a time")
    if not 1 <= start <= on.places:
        raise AskedWrongly(f"--start: the sheet {on.name} has labels 1 to {on.places}")
    data = {**_page(on), "words": words._asdict(), "count": count, "start": start - 1,
            "dropped": list(DROPPED_FIRST)}  # fmt: skip
    return _pressed(data, on, form, tell)


def alignment_page(on: Sheet, *, form: Form = "pdf") -> tuple[bytes, ...]:
    """Return a page with the outline of every label, to lay over a sheet and hold to the light."""
    return _pressed({**_page(on), "words": None}, on, form, None)


def _pressed(
    data: Mapping[str, Any], on: Sheet, form: Form, tell: Callable[[str], object] | None
) -> tuple[bytes, ...]:
    from typst import TypstError

    try:
        if tell is None:
            return press("labels.typ", data, form=form)
        return press("labels.typ", data, form=form, tell=tell)
    except TypstError as fault:
        if _TOO_SMALL not in str(fault):
            raise
        room = [one.name for one in larger(on)]
        hint = f"try --sheet {room[0]}" if room else "leave something out of the name"
        raise AskedWrongly(f"the words do not fit a label of {on.name}; {hint}") from None


def _page(on: Sheet) -> dict[str, Any]:
    return {
        "sheet": on._asdict(),
        "corners": [on.corner(place) for place in range(on.places)],
        "title": f"Labels, {on.name}",
    }


def _days(keep: KeepBy, own: Mapping[str, str]) -> tuple[tuple[str, str], ...]:
    """Return the last day in each place; the cook's own words win, and are said to be theirs."""
    found = {one.place: _day(one.until) for one in keep.limits if one.until is not None}
    found |= {place: f"{said} (the cook's own)" for place, said in own.items()}
    return tuple((_PLACES[place], day) for place, day in found.items())


def _cold(keep: KeepBy, own: Mapping[str, str]) -> tuple[str, ...]:
    """Return that it is kept cold; a cook's own last day in the cold is theirs to give."""
    told = [keep.label]
    if not (keep.to_eat or keep.lost):
        told.append("Keep cold until it has been.")
    told += [
        f"Use by {said} {_PLACES[place]} (the cook's own)."
        for place, said in own.items()
        if place != "room" and keep.to_eat
    ]
    return tuple(map(_whole, told))


def _whole(text: str) -> str:
    """Return a text in which no temperature is parted from its degrees at the end of a line."""
    return text.replace(" \N{DEGREE SIGN}", f"{_HELD}\N{DEGREE SIGN}")


def _day(day: date) -> str:
    return f"{day.day}{_HELD}{day:%b}{_HELD}{day:%Y}"


def _net(each_g: float | None) -> str:
    if each_g is None:
        return "Net weight ____________"
    return f"Net weight {format_pounds(each_g)} ({each_g:,.0f} g)"


def _likely(figure: str, ranges: Mapping[str, Range | None]) -> str:
    found = ranges[figure]
    if found is None:
        return NO_TOTAL
    if nothing_known(found):
        return NOT_KNOWN
    if found.at_least:
        return f"at least{_HELD}{digits(found.likely, found.unit)}{_HELD}{found.unit}"
    return f"{rounded(figure, found)}{_HELD}{found.unit}"


def _span(found: Range | None) -> str:
    if found is None or nothing_known(found):
        return ""
    return f"{digits(found.low, found.unit)}–{digits(found.high, found.unit)}"


def _allergens(sheet: Worksheet) -> list[str]:
    found = sheet.allergens
    contains = ", ".join(found.contains) or "none of the nine by kind"
    texts = [clean(f"Contains: {contains}.")]
    if found.packs():
        names = ", ".join(map(spoken, found.packs()))
        texts.append(clean(f"Check the bottle: {names}."))
    return texts
