"""The recipe card as one HTML file: for phone and desk, light and dark, and for the printer.

Nothing is fetched and nothing runs: the page's own policy forbids everything but its one style
sheet, named by its hash. Words come from ``cards.content``, markup from ``elements``.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from functools import cache
from pathlib import Path

from tarebook.cards.content import FIGURES_HEAD, Content, Group, Measured, content
from tarebook.cards.worksheet import Worksheet
from tarebook.nutrition import Estimate
from tarebook.paper.elements import Markup, data_block, element, page, style
from tarebook.paper.html_figures import DV, figures_table
from tarebook.paper.html_mind import caution_item, note_items
from tarebook.paper.kitchen_fractions import kitchen_fractions
from tarebook.paper.reach import LEGEND, drawn
from tarebook.paper.spelled import spelled, unbroken
from tarebook.paper.structured_data import structured_data
from tarebook.paper.who_says_so import Noted, who_says_so


def html_card(sheet: Worksheet, *, date: str | None = None) -> str:
    """Return a recipe card as the text of one HTML file.

    Args:
        sheet: the recipe at today's size.
        date: day the card was made (YYYY-MM-DD); without it the card bears none.

    Returns:
        A whole document; the same for the same sheet and date.
    """
    card = content(sheet)
    return page(_head(card, sheet, date), _body(card, sheet.estimate, date))


def _head(card: Content, sheet: Worksheet, date: str | None) -> Markup:
    return element(
        "head",
        element("meta", charset="utf-8"),
        element("meta", http_equiv="Content-Security-Policy", content=_policy()),
        element("meta", name="viewport", content="width=device-width, initial-scale=1"),
        # A phone would make telephone links of 208-364.
        element("meta", name="format-detection", content="telephone=no"),
        element("meta", name="color-scheme", content="light dark"),
        element("title", card.title),
        style(_css()),
        data_block(structured_data(card, sheet, date=date)),
    )


@cache
def _css() -> str:
    return Path(__file__).with_name("card.css").read_text(encoding="utf-8")


def _policy() -> str:
    from base64 import b64encode
    from hashlib import sha256

    digest = b64encode(sha256(_css().encode()).digest()).decode()
    return f"default-src 'none'; style-src 'sha256-{digest}'; base-uri 'none'; form-action 'none'"


def _body(card: Content, found: Estimate, date: str | None) -> Markup:
    noted, notes = who_says_so(card.cautions)
    return element(
        "body",
        element(
            "header",
            element("h1", card.title, dir="auto"),
            element("p", kitchen_fractions(card.size), class_="size"),
            *_told((card.about,), class_="about"),
        ),
        element(
            "main",
            _measures(card),
            _method(card),
            _figures(card, found),
            _mind(noted),
            _notes(notes),
        ),
        element("footer", element("p", card.foot), *_dated(date)),
    )


def _measures(card: Content) -> Markup:
    return element(
        "div",
        *(_group(number, one) for number, one in enumerate(card.groups, 1)),
        *(element("p", text, class_="cure") for text in card.cure),
        class_="measures",
    )


def _group(number: int, group: Group) -> Markup:
    heads = (("measure", "measure"), ("name", "ingredient"), ("weighs", "weighs"))
    return _section(
        f"group-{number}",
        group.heading,
        element(
            "table",
            element(
                "thead",
                element("tr", *(element("th", a, scope="col", class_=b) for b, a in heads)),
            ),
            element("tbody", *(_measured(one) for one in group.items)),
            aria_labelledby=f"group-{number}",
        ),
    )


def _measured(one: Measured) -> Markup:
    note = (" ", element("span", one.note, class_="note", dir="auto")) if one.note else ()
    return element(
        "tr",
        element("td", kitchen_fractions(spelled(one.measure)), class_="measure"),
        element("th", element("bdi", one.name), *note, scope="row", class_="name"),
        element("td", one.weighs, class_="weighs"),
    )


def _method(card: Content) -> Markup:
    steps = [element("li", step, dir="auto") for step in card.steps]
    return _section(
        "method",
        "Method",
        *_list(
            "ul", [element("li", spelled(text)) for text in card.conditions], class_="conditions"
        ),
        *_list("ol", steps, class_="steps"),
        *(element("p", "Note: ", element("bdi", note), class_="remark") for note in card.notes),
    )


def _figures(card: Content, found: Estimate) -> Markup:
    lines = any(drawn(one, found) is not None for one in card.figures)
    legend = [element("span", LEGEND, aria_hidden="true")] if lines else []
    return _section(
        "figures",
        FIGURES_HEAD,
        element(
            "p",
            f"({card.figures_foot}). {DV} ",
            *legend,
            class_="foot",
        ),
        figures_table(card.figures, found, labelled_by="figures"),
        element("div", *_told((*card.beneath, *card.allergens)), class_="beneath"),
    )


def _mind(noted: tuple[Noted, ...]) -> Markup:
    return _section("mind", "Mind", *_list("ul", [caution_item(one) for one in noted]))


def _notes(notes: tuple[str, ...]) -> Markup:
    return _section("who", "Who says so", *_list("ol", note_items(notes)))


def _dated(date: str | None) -> Iterator[Markup]:
    if date:
        yield element("p", "Card of ", element("time", date, datetime=date))


def _section(name: str, heading: str, *inside: Markup) -> Markup:
    return element(
        "section",
        element("h2", heading, id=name),
        *inside,
        class_=name.partition("-")[0],
        aria_labelledby=name,
    )


def _list(name: str, items: list[Markup], **attributes: str) -> Iterator[Markup]:
    """Yield a list, or nothing where there is nothing to list."""
    if items:
        # Without its marks a list is no list to some screen readers, unless it says so.
        yield element(name, *items, role="list", **attributes)


def _told(texts: Iterable[str], **attributes: str) -> Iterator[Markup]:
    return (element("p", *unbroken(text), dir="auto", **attributes) for text in texts if text)
