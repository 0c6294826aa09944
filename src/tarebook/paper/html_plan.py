"""The days of a batch as one HTML file, for the kitchen's tablet and for the printer.

Nothing is fetched and nothing runs, as on the card. Words come from ``cards.plan_content``.
"""

from __future__ import annotations

from collections.abc import Iterable
from functools import cache
from pathlib import Path

from tarebook.cards.plan_content import (
    COUNTED,
    NOT_AS_ASKED,
    TO_KNOW,
    Day,
    Head,
    PlanContent,
    Row,
)
from tarebook.paper.elements import Markup, element, page, style
from tarebook.paper.plan import FOOT, sheet_cautions
from tarebook.plan.conflicts import AT_ODDS


def html_plan(found: PlanContent) -> str:
    """Return a plan as the text of one HTML file; the same for the same words."""
    title = "; ".join(head.title for head in found.heads)
    return page(
        element(
            "head",
            element("meta", charset="utf-8"),
            element("meta", http_equiv="Content-Security-Policy", content=_policy()),
            element("meta", name="viewport", content="width=device-width, initial-scale=1"),
            element("meta", name="format-detection", content="telephone=no"),
            element("meta", name="color-scheme", content="light dark"),
            element("title", title),
            style(_css()),
        ),
        element(
            "body",
            element("header", *map(_head, found.heads), element("p", found.when, class_="about")),
            element(
                "main",
                *_listed("grave", AT_ODDS, found.grave),
                *_listed("conflicts", NOT_AS_ASKED, found.conflicts),
                *(_day(number, day) for number, day in enumerate(found.days, 1)),
                *_listed("counted", COUNTED, found.counted),
                *_listed("know", TO_KNOW, found.to_know),
                *_listed(
                    "mind",
                    "Mind",
                    (f"{c.title}. {c.text} [{c.citation}]" for c in sheet_cautions(found)),
                ),
            ),
            element("footer", element("p", FOOT)),
        ),
    )


@cache
def _css() -> str:
    here = Path(__file__)
    return "".join(
        here.with_name(name).read_text(encoding="utf-8") for name in ("card.css", "plan.css")
    )


def _policy() -> str:
    from base64 import b64encode
    from hashlib import sha256

    digest = b64encode(sha256(_css().encode()).digest()).decode()
    return f"default-src 'none'; style-src 'sha256-{digest}'; base-uri 'none'; form-action 'none'"


def _head(head: Head) -> Markup:
    letter = (element("span", f"{head.letter} ", class_="letter"),) if head.letter else ()
    return element(
        "div",
        element("h1", *letter, element("bdi", head.title)),
        element("p", head.size, class_="size"),
    )


def _day(number: int, day: Day) -> Markup:
    heads = (
        ("tick", ""),
        ("at", "at"),
        ("what", "what"),
        ("takes", "takes"),
        ("until", ""),
    )
    return element(
        "section",
        element("h2", day.name, id=f"day-{number}"),
        element(
            "table",
            element(
                "thead",
                element(
                    "tr", *(element("th", words, scope="col", class_=name) for name, words in heads)
                ),
            ),
            element("tbody", *map(_row, day.rows)),
            aria_labelledby=f"day-{number}",
        ),
        class_="day",
        aria_labelledby=f"day-{number}",
    )


def _row(row: Row) -> Markup:
    box = (element("span", class_="box", aria_hidden="true"),) if row.attended else ()
    load = (element("span", f"{row.mark}: ", class_="load"),) if row.mark else ()
    return element(
        "tr",
        element("td", *box, class_="tick"),
        element("td", row.time, class_="at"),
        element(
            "th",
            *load,
            element("bdi", row.what),
            *(element("span", note, class_="note", dir="auto") for note in row.notes),
            scope="row",
            class_="what",
        ),
        element("td", row.length, class_="takes"),
        element("td", row.until, class_="until"),
        **({} if row.attended else {"class_": "idle"}),
    )


def _listed(name: str, heading: str, texts: Iterable[str]) -> tuple[Markup, ...]:
    items = [element("li", text, dir="auto") for text in texts]
    if not items:
        return ()
    return (
        element(
            "section",
            element("h2", heading, id=name),
            element("ul", *items, role="list"),
            class_=f"listed {name}",
            aria_labelledby=name,
        ),
    )
