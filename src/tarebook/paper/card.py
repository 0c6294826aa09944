"""The recipe card on paper: its words from ``cards.content``, its look from ``card.typ``."""

from __future__ import annotations

import re
import warnings
from collections.abc import Callable, Iterable
from typing import Any
from unicodedata import bidirectional

from tarebook.cards.content import (
    CURE_HEAD,
    FIGURES_HEAD,
    Content,
    FigureRow,
    Group,
    Measured,
    content,
)
from tarebook.cards.worksheet import Worksheet
from tarebook.findings import Severity
from tarebook.nutrition import Estimate
from tarebook.nutrition.range import Range
from tarebook.paper.kitchen_fractions import kitchen_fractions
from tarebook.paper.press import Form, press
from tarebook.paper.reach import LEGEND, drawn, reach_of, shares
from tarebook.paper.sizes import CardSize
from tarebook.paper.who_says_so import Noted, who_says_so

_KEY_FIGURES = frozenset({"sodium_mg", "sugars_g", "added_sugars_g"})
_LONG, _TOO_LONG = re.compile(r"[^\s/-]{11,}"), re.compile(r"[^\s/-]{21,}")
"""A run of letters that a narrow column may not hold, and one that hardly any column holds."""
_MAY_BE_TALL = 150
"""Letters of a name with its remark that may fill a good part of a small card."""
_MAY_BREAK = "\N{ZERO WIDTH SPACE}"
_KEPT = "\N{NO-BREAK SPACE}"
_BEFORE_SIGN = re.compile(
    r"(?<=\d) (?=[%°]|(?:g|h|mg|mm|cm|ppm|in|oz|lb|tsp|Tbsp)\b)|(?<=_) (?=g\b)"
)


def card_pages(
    sheet: Worksheet,
    size: CardSize,
    *,
    form: Form = "pdf",
    date: str | None = None,
    ppi: float = 144.0,
    tell: Callable[[str], object] = warnings.warn,
) -> tuple[bytes, ...]:
    """Return a recipe card on paper: front, back, and further cards where the words need them.

    Args:
        sheet: the recipe at today's size.
        size: of the card or page.
        form: ``pdf``, ``svg`` or ``png``.
        date: day the card was made (YYYY-MM-DD); without it the card bears none.
        ppi: fineness of a picture in dots [1/in]; for ``png`` alone.
        tell: called with a sentence for the cook about letters that a font lacks.

    Returns:
        One document for ``pdf``, else one picture a side; the same bytes for the same card.
    """
    data = card_data(content(sheet), sheet.estimate, size, date=date)
    return press("card.typ", data, form=form, ppi=ppi, tell=tell)


def card_data(
    card: Content, found: Estimate, size: CardSize, *, date: str | None = None
) -> dict[str, Any]:
    """Return a card as the template takes it: plain values, every word of the card among them."""
    noted, notes = who_says_so(card.cautions)
    ranges = [drawn(one, found) for one in card.figures]
    return {
        "width_mm": size.width_mm,
        "height_mm": size.height_mm,
        "called": size.called,
        "title": _name(card.title),
        "heading": card.title,
        "size": _told(kitchen_fractions(card.size)),
        "about": _told(card.about),
        "groups": [_group(one) for one in card.groups],
        "cure": _all(card.cure),
        "cure_head": CURE_HEAD,
        "conditions": _all(card.conditions),
        "steps": _all(card.steps),
        "notes": _all(card.notes),
        "figures_head": FIGURES_HEAD,
        "figures_foot": _told(f"({card.figures_foot})"),
        "legend": LEGEND if any(one is not None for one in ranges) else "",
        "figures": [_figure(one, span) for one, span in zip(card.figures, ranges, strict=True)],
        "reach": reach_of(one for one in ranges if one is not None),
        "beneath": _all((*card.beneath, *card.allergens)),
        "cautions": [_caution(one) for one in noted],
        "who": _all(notes),
        "foot": card.foot,
        "date": date,
    }


def _group(group: Group) -> dict[str, Any]:
    return {"heading": group.heading, "items": [_item(one) for one in group.items]}


def _item(one: Measured) -> dict[str, Any]:
    return {
        "measure": _told(kitchen_fractions(one.measure)),
        "weighs": one.weighs,
        "name": _name(one.name),
        "note": _told(one.note),
        "long": len(one.name) + len(one.note) > _MAY_BE_TALL,
    }


def _figure(row: FigureRow, span: Range | None) -> dict[str, Any]:
    below, above = (0.0, 0.0) if span is None else shares(span)
    return {
        "name": row.name,
        "amount": row.amount,
        "share": row.share,
        "span": row.span,
        "key": row.figure in _KEY_FIGURES,
        "mark": None if span is None else [-below, 0.0, above],
    }


def _caution(one: Noted) -> dict[str, Any]:
    return {
        "title": one.caution.title,
        "text": _told(one.caution.text),
        "grave": one.caution.severity is not Severity.NOTE,
        "numbers": list(one.numbers),
    }


def _all(texts: Iterable[str]) -> list[str | dict[str, Any]]:
    return [_told(text) for text in texts]


def _told(text: str) -> str | dict[str, Any]:
    """Return a text as it is set: a word that no column holds may break, a sign stays put."""
    text = _breakable(_BEFORE_SIGN.sub(_KEPT, text), _TOO_LONG)
    return {"leftward": text} if _runs_leftward(text) else text


def _name(text: str) -> str | dict[str, Any]:
    """Return a name; one that has long words in two spellings, whole and breakable."""
    broken = _breakable(text, _LONG)
    if broken == text or _runs_leftward(text):
        return _told(text)
    return {"whole": text, "broken": broken, "long": _LONG.findall(text)}


def _breakable(text: str, runs: re.Pattern[str]) -> str:
    """Return a text that may break between any two letters of the runs that are too long."""
    return runs.sub(lambda found: _MAY_BREAK.join(found[0]), text)


def _runs_leftward(text: str) -> bool:
    """Whether the first letter with a direction belongs to a script written from right to left."""
    if text.isascii():
        return False
    return next((way for c in text if (way := bidirectional(c)) in ("L", "R", "AL")), "L") != "L"
