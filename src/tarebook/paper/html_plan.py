"""The days of a batch as one HTML file, for the kitchen's tablet and for the printer.

Nothing is fetched and nothing runs, as on the card. Words come from ``cards.plan_content``.
"""

from __future__ import annotations

from collections.abc import Iterable
from functools import cache
from pathlib import Path

from tarebook.cards.plan_content import (
    AT,
    COUNTED,
    NOT_AS_ASKED,
    TAKES,
    TITLE,
    TO_KNOW,
    UNTIL,
    WHAT,
    Day,
    Head,
    PlanContent,
    Row,
    others,
)
from tarebook.paper.elements import Markup, element, page, style
from tarebook.paper.html_mind import caution_item, note_items
from tarebook.paper.plan import FOOT, plan_title, sheet_cautions
from tarebook.paper.spelled import spelled, unbroken
from tarebook.paper.who_says_so import who_says_so
from tarebook.plan.conflicts import AT_ODDS


def html_plan(found: PlanContent) -> str:
    """Return a plan as the text of one HTML file; the same for the same words."""
    noted, notes = who_says_so(sheet_cautions(found))
    if found.short:
        noted, notes = tuple(one._replace(numbers=()) for one in noted), ()
    return page(
        element(
            "head",
            element("meta", charset="utf-8"),
            element("meta", http_equiv="Content-Security-Policy", content=_policy()),
            element("meta", name="viewport", content="width=device-width, initial-scale=1"),
            element("meta", name="format-detection", content="telephone=no"),
            element("meta", name="color-scheme", content="light dark"),
            element("title", plan_title(found)),
            style(_css()),
        ),
        element(
            "body",
            element(
                "header",
                element("h1", TITLE),
                element("p", found.when, class_="about"),
                *map(_head, found.heads),
            ),
            element(
                "main",
                *_listed("grave", AT_ODDS, _told(found.grave)),
                *_listed("conflicts", NOT_AS_ASKED, _told(found.conflicts)),
                *(_day(number, day) for number, day in enumerate(found.days, 1)),
                *_listed("counted", COUNTED, _told(map(spelled, found.counted))),
                *_listed("know", TO_KNOW, _told(found.to_know)),
                *_listed("mind", "Mind", [caution_item(one, heard=False) for one in noted]),
                *(
                    element("p", *unbroken(text), class_="about")
                    for text in others(found)
                    if found.short
                ),
                *_listed("who", "Who says so", note_items(notes), kind="ol"),
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
        element("h2", *letter, element("bdi", head.title)),
        element("p", head.size, class_="size"),
        class_="recipe",
    )


def _day(number: int, day: Day) -> Markup:
    heads = {"at": AT, "what": WHAT, "takes": TAKES, "until": UNTIL}
    # On a phone rows are no rows of a table to the eye; their roles say that they still are.
    columns = [
        element("th", words, scope="col", class_=name, role="columnheader")
        for name, words in heads.items()
    ]
    return element(
        "section",
        element("h2", day.name, id=f"day-{number}"),
        element(
            "table",
            element("thead", element("tr", *columns, role="row"), role="rowgroup"),
            element("tbody", *map(_row, day.rows), role="rowgroup"),
            aria_labelledby=f"day-{number}",
            role="table",
        ),
        class_="day",
        aria_labelledby=f"day-{number}",
    )


def _row(row: Row) -> Markup:
    box = (element("span", class_="box", aria_hidden="true"),) if row.attended else ()
    load = (element("span", f"{row.mark}: ", class_="load"),) if row.mark else ()
    return element(
        "tr",
        element("td", *box, row.time, class_="at", role="cell"),
        element(
            "th",
            *load,
            element("bdi", spelled(row.what)),
            *(element("span", spelled(note), class_="note", dir="auto") for note in row.notes),
            scope="row",
            class_="what",
            role="rowheader",
        ),
        element("td", row.length, class_="takes", role="cell"),
        element("td", row.until, class_="until", role="cell"),
        role="row",
        **({} if row.attended else {"class_": "idle"}),
    )


def _told(texts: Iterable[str]) -> list[Markup]:
    return [element("li", *unbroken(text), dir="auto") for text in texts]


def _listed(
    name: str, heading: str, items: list[Markup], *, kind: str = "ul"
) -> tuple[Markup, ...]:
    if not items:
        return ()
    return (
        element(
            "section",
            element("h2", heading, id=name),
            element(kind, *items, role="list"),
            class_=name if name in ("mind", "who") else f"listed {name}",
            aria_labelledby=name,
        ),
    )
