"""The table of figures on the HTML card, each range drawn as a line with end ticks and a dot."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from tarebook.cards.content import FigureRow
from tarebook.cards.figures import NO_TOTAL, NOT_KNOWN
from tarebook.figures.daily_values import daily_values
from tarebook.nutrition import Estimate
from tarebook.nutrition.range import Range
from tarebook.paper.elements import Inside, Markup, element
from tarebook.paper.reach import drawn, reach_of, shares
from tarebook.paper.spelled import spelled, unseen

DV = "DV: the daily value on US labels."


def figures_table(rows: Iterable[FigureRow], found: Estimate, *, labelled_by: str) -> Markup:
    """Return the table of an ounce.

    Args:
        rows: as the card words them.
        found: the estimate they come from, for the lines.
        labelled_by: id of the heading that names the table.
    """
    rows = tuple(rows)
    ranges = [drawn(one, found) for one in rows]
    reach = reach_of(one for one in ranges if one is not None)
    heads = (("name", "figure"), ("amount", "likely"), ("share", "of a day"))
    return element(
        "table",
        element(
            "thead",
            element(
                "tr",
                *(element("th", text, scope="col", class_=name) for name, text in heads),
                element("th", "low to high", scope="col", class_="span"),
            ),
        ),
        element("tbody", *(_row(one, span, reach) for one, span in zip(rows, ranges, strict=True))),
        aria_labelledby=labelled_by,
    )


def mark(found: Range, reach: float) -> Markup:
    """Return a range as a drawing: the likely value a dot in the middle, low and high ticks.

    It is not heard: the ends stand beside it in words.

    Args:
        found: the range; its likely value is above zero.
        reach: share of the likely value at either edge of the drawing [-].
    """
    below, above = shares(found)
    left, right = (f"{50 + 50 * end / reach:.1f}%" for end in (-below, above))
    return element(
        "svg",
        element("line", x1=left, x2=right, y1="50%", y2="50%"),
        *(element("line", x1=end, x2=end, y1="10%", y2="90%") for end in (left, right)),
        element("circle", cx="50%", cy="50%", r="2.5"),
        class_="mark",
        aria_hidden="true",
    )


def _row(row: FigureRow, drawn: Range | None, reach: float) -> Markup:
    return element(
        "tr",
        element("th", row.name, scope="row", class_="name"),
        element("td", row.amount, class_="amount"),
        element("td", row.share or unseen(_no_share(row)), class_="share"),
        element("td", *_span(row, drawn, reach), class_="span"),
    )


def _no_share(row: FigureRow) -> str:
    """Return why no share of a day stands in a row: three things that one empty cell would mean."""
    if row.amount in (NOT_KNOWN, NO_TOTAL):
        return NOT_KNOWN
    daily = daily_values().get(row.figure)
    return "no daily value" if daily is None or daily.amount is None else "not reckoned"


def _span(row: FigureRow, drawn: Range | None, reach: float) -> Iterator[Inside]:
    if not row.span:
        known = row.amount not in (NOT_KNOWN, NO_TOTAL)
        yield unseen("no upper figure" if known else NOT_KNOWN)
        return
    yield element("span", spelled(row.span))
    if drawn is not None:
        yield " "
        yield mark(drawn, reach)
