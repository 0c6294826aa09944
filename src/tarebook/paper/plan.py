"""The days of a batch as a printed sheet."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from tarebook.cards.on_paper import on_paper
from tarebook.cards.plan_content import (
    AT,
    COUNTED,
    NOT_AS_ASKED,
    TAKES,
    TITLE,
    TO_KNOW,
    UNTIL,
    WHAT,
    PlanContent,
    others,
)
from tarebook.paper.press import press
from tarebook.plan.conflicts import AT_ODDS
from tarebook.safety import Caution

FOOT = "Home estimate. Local codes and licensed practice stand over it."
PAPERS = {"us": "us-letter", "metric": "a4"}
"""Paper by the units that a kitchen prefers."""


def plan_pdf(
    found: PlanContent, *, units: str | None = None, tell: Callable[[str], object] | None = None
) -> bytes:
    """Return a plan as a PDF document, with a box to tick for all that somebody does.

    Args:
        found: its words.
        units: ``us`` for letter paper, ``metric`` for A4; letter where nobody said.
        tell: called with a sentence for the cook where a letter came from a font of this computer.

    Returns:
        The document, tagged; the same for the same words.
    """
    data = plan_sheet(found, paper=PAPERS.get(units or "us", "us-letter"))
    pages = press("plan.typ", data, tell=tell) if tell else press("plan.typ", data)
    return pages[0]


def plan_title(found: PlanContent) -> str:
    """Return the title of a plan's document: that it is one, and whose."""
    return f"{TITLE}: {'; '.join(head.title for head in found.heads)}"


def sheet_cautions(found: PlanContent) -> tuple[Caution, ...]:
    """Return the cautions of a plan as paper says them, each with the letters it is for."""
    return tuple(
        one._replace(caution=told).named
        for one in found.cautions
        for told in on_paper([one.caution])
    )


def plan_sheet(found: PlanContent, *, paper: str) -> dict[str, Any]:
    """Return the words of a plan as the template takes them."""
    return {
        "title": plan_title(found),
        "heading": TITLE,
        "columns": [AT, WHAT, TAKES, UNTIL],
        "paper": paper,
        "foot": FOOT,
        "names": {
            "grave": AT_ODDS,
            "conflicts": NOT_AS_ASKED,
            "counted": COUNTED,
            "to_know": TO_KNOW,
            "mind": "Mind",
        },
        "heads": [head._asdict() for head in found.heads],
        "when": found.when,
        "grave": list(found.grave),
        "conflicts": list(found.conflicts),
        "days": [
            {"name": day.name, "rows": [row._asdict() for row in day.rows]} for day in found.days
        ],
        "counted": list(found.counted),
        "to_know": list(found.to_know),
        "cautions": [
            {
                "title": one.title,
                "text": one.text,
                "citation": "" if found.short else f"[{one.citation}]",
            }
            for one in sheet_cautions(found)
        ],
        "others": list(others(found)) if found.short else [],
    }
