"""Ranges as pictures: variants side by side, and how far a soak has come."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import Any

from tarebook.cards.bars import scale_end
from tarebook.cards.beside import Variant
from tarebook.cards.figures import NAMES, NO_TOTAL, digits, likely, nothing_known
from tarebook.cards.lines import clean
from tarebook.cards.soak_page import limit_h
from tarebook.cards.words import listed, soak_place
from tarebook.cards.worksheet import Worksheet
from tarebook.nutrition.range import Range
from tarebook.nutrition.soaking import soaking_times
from tarebook.paper.press import Form, press
from tarebook.tuples import NamedTuple

FOOT = (
    "Home estimate. A line runs from low to high, nine batches of ten; the dot is the likely one."
)
_DRAWN = ("sodium_mg", "sugars_g", "energy_kcal", "protein_g")
_LETTERS = "ABCDEFGHIJ"
_SHARES = (
    ("Salt, toward its balance", "salt"),
    ("Sugar, toward its balance", "sugar"),
    ("Salt of the marinade that stays with the meat", "salt_kept"),
)


class Bar(NamedTuple):
    """One range of a picture.

    Attributes:
        name: what it is of.
        low, likely, high: on the axis; None where there is no total.
        told: the same in words and figures.
        open: whether more would come on top, so that it has no upper end.
    """

    name: str
    low: float | None
    likely: float | None
    high: float | None
    told: str
    open: bool = False


class Panel(NamedTuple):
    """Bars over one axis from zero."""

    heading: str
    unit: str
    end: float
    bars: tuple[Bar, ...]


class Chart(NamedTuple):
    """A picture: what it shows, its panels, and what to know with it."""

    title: str
    names: tuple[str, ...]
    panels: tuple[Panel, ...]
    notes: tuple[str, ...]
    foot: str = FOOT


def comparison_chart(variants: Sequence[Variant]) -> Chart:
    """Return variants side by side, figure by figure, as the page of ``compare`` tells them."""
    ounce = variants[0].sheet.estimate.ounce.words
    panels = [_panel(variants, figure, ounce) for figure in _DRAWN]
    missing = [
        f"{letter}: {NAMES[figure]} of {listed(found.missing)} not known, and comes on top."
        for letter, one in zip(_LETTERS, variants, strict=False)
        for figure in _DRAWN
        if (found := one.sheet.estimate.per_ounce[figure]) is not None and found.missing
    ]
    return Chart(
        title="Side by side",
        names=tuple(
            f"{letter}  {clean(one.name)}" for letter, one in zip(_LETTERS, variants, strict=False)
        ),
        panels=tuple(one for one in panels if one is not None),
        notes=tuple(clean(text) for text in missing),
    )


def soak_chart(sheet: Worksheet) -> Chart | None:
    """Return how far salt and sugar have come with the hours; None without anything to soak."""
    times = soaking_times(sheet.estimate.facts)
    if times is None:
        return None
    most = limit_h(sheet)
    panels = [
        Panel(
            heading,
            "%",
            100.0,
            tuple(
                _share(f"{one.hours} h" + (" *" if most and one.hours > most else ""), share)
                for one in times.after
                if (share := getattr(one, share_of)) is not None
            ),
        )
        for heading, share_of in _SHARES
    ]
    notes = [f"At {times.thickness_mm[1]:.3g} mm, {soak_place(sheet.recipe.soak)}."]
    if most:
        notes.append(f"* longer than the cautious limit of {most:g} h.")
    return Chart(
        title=clean(sheet.recipe.title),
        names=(),
        panels=tuple(one for one in panels if one.bars),
        notes=tuple(notes),
    )


def batches_chart(sheets: Sequence[tuple[str, Worksheet]]) -> Chart:
    """Return yield and sodium over batches, the oldest first.

    Args:
        sheets: what each batch is called, and what is known of it.
    """
    yields = tuple(
        _share(name, one.estimate.yield_fraction) for name, one in sheets if one.estimate.weighed
    )
    sodium = tuple(_bar(name, one.estimate.per_ounce["sodium_mg"]) for name, one in sheets)
    highest = [one.high for one in sodium if one.high is not None]
    ounce = sheets[0][1].estimate.ounce.words
    panels = [Panel("Finished over raw", "%", 100.0, yields)]
    if highest:
        heading = f"{NAMES['sodium_mg'].capitalize()} in one finished {ounce}"
        panels.append(Panel(heading, "mg", scale_end(max(highest)), sodium))
    notes = ("By the number of the batch, as weighed.",)
    return Chart("From batch to batch", (), tuple(panels), notes)


def draw(
    chart: Chart, *, form: Form = "pdf", tell: Callable[[str], object] | None = None
) -> tuple[bytes, ...]:
    """Return a picture as a document or as a drawing, one page long.

    Args:
        chart: what it shows.
        form: ``pdf``, ``svg`` or ``png``.
        tell: called with a sentence for the cook where a letter had to be borrowed.
    """
    data: dict[str, Any] = {
        **chart._asdict(),
        "panels": [
            {**one._asdict(), "bars": [bar._asdict() for bar in one.bars]} for one in chart.panels
        ],
    }
    if tell is None:
        return press("chart.typ", data, form=form)
    return press("chart.typ", data, form=form, tell=tell)


def draw_as(chart: Chart, form: str, *, tell: Callable[[str], object] | None = None) -> bytes:
    """Return the one page of a picture in a form given by name; see :func:`draw`."""
    made: Form = "svg" if form == "svg" else "png" if form == "png" else "pdf"
    page = draw(chart, form=made, tell=tell)[0]
    return _described(page, chart) if made == "svg" else page


def _described(drawing: bytes, chart: Chart) -> bytes:
    """Return a drawing with its words inside for who hears it read: its letters are shapes."""
    from xml.sax.saxutils import escape

    words = [*chart.names]
    for panel in chart.panels:
        words.append(panel.heading)
        words += [f"{bar.name}: {bar.told}" for bar in panel.bars]
    told = "; ".join((*words, *chart.notes, chart.foot))
    head, _, rest = drawing.partition(b">")
    inside = f"<title>{escape(chart.title)}</title><desc>{escape(told)}</desc>"
    return head + b' role="img">' + inside.encode() + rest


def _panel(variants: Sequence[Variant], figure: str, ounce: str) -> Panel | None:
    rows = [
        _bar(letter, one.sheet.estimate.per_ounce[figure])
        for letter, one in zip(_LETTERS, variants, strict=False)
    ]
    highest = [one.high for one in rows if one.high is not None]
    if not highest:
        return None
    unit = next(
        found.unit
        for one in variants
        if (found := one.sheet.estimate.per_ounce[figure]) is not None
    )
    heading = f"{NAMES[figure].capitalize()} in one finished {ounce}"
    return Panel(heading, unit, scale_end(max(highest)), tuple(rows))


def _bar(name: str, found: Range | None) -> Bar:
    if found is None or nothing_known(found):
        return Bar(name, None, None, None, NO_TOTAL if found is None else likely(found))
    ends = f"{digits(found.low, found.unit)}–{digits(found.high, found.unit)} {found.unit}"
    told = f"{likely(found)}, {ends}" if not found.at_least else likely(found)
    return Bar(name, found.low, found.likely, found.high, told, found.at_least)


def _share(name: str, found: Range) -> Bar:
    low, middle, high = (100 * one for one in found[:3])
    return Bar(name, low, middle, high, f"{middle:.0f} %, {low:.0f}–{high:.0f}")
