"""The days of a batch as a printed sheet and as HTML: every word of the page is on them."""

from __future__ import annotations

import io
import re
from collections.abc import Iterator
from datetime import datetime
from fractions import Fraction
from functools import cache
from zoneinfo import ZoneInfo

import html5lib
import pytest
from pypdf import PdfReader

from tarebook.cards.plan_content import PlanContent, plan_content
from tarebook.clocks.zones import minute_of
from tarebook.kitchen import Kitchen, Tray
from tarebook.paper.html_plan import html_plan
from tarebook.paper.plan import FOOT, plan_pdf, sheet_cautions
from tarebook.plan.jobs import job_of
from tarebook.plan.make import Wish, make_plan
from tarebook.plan.trays import dryer_of
from tarebook.recipe import load_recipe
from tarebook.recipe.read import read_recipe

ZONE = ZoneInfo("America/Chicago")
FIVE = Kitchen(trays=5, tray=Tray(330.2), hole=Tray(76.2))
HOSTILE = """
title = "</title><script>parent.ran = 1</script> #set page() $x$ *b* @x \\\\ Lochoooooooooooo"
[meat]
food = "bear"
amount = "9 lb"
thickness = "1/4 in"
[marinade]
soy-sauce = "1 cup"
[soak]
hours = "30-40"
[heat]
step = "oven after drying"
[drying]
temperature = "140 F"
"""


@cache
def words(name: str) -> PlanContent:
    """Return the words of a plan of one recipe, or of a hostile one."""
    if name == "hostile":
        recipe, findings = read_recipe(HOSTILE, file="hostile.toml")
        assert recipe is not None, [str(one) for one in findings]
    else:
        recipe, _ = load_recipe(name)
    dryer = dryer_of(FIVE)
    pounds = Fraction("453.59237") * 11
    job = job_of(recipe, meat_g=pounds, kitchen=FIVE, dryer=dryer)
    now = minute_of(datetime(2026, 11, 25, 9, tzinfo=ZONE))
    wish = Wish(now=now, start=now, nights=((22, 0), (6, 0)))
    return plan_content(make_plan([job], dryer, wish, ZONE), zone_name="America/Chicago")


def said(found: PlanContent) -> Iterator[str]:
    """Yield every piece of text of a plan, in the order of the page."""
    for head in found.heads:
        yield from (head.title, head.size)
    yield found.when
    yield from (*found.grave, *found.conflicts)
    for day in found.days:
        yield day.name
        for row in day.rows:
            yield from filter(
                None, (row.time, row.mark, row.what, *row.notes, row.length, row.until)
            )
    yield from (*found.counted, *found.to_know)
    for one in sheet_cautions(found):
        yield from (one.title, one.text, one.citation)


def close(text: str) -> str:
    """Return text without its spaces and small capitals, which a line end may stand for."""
    return re.sub(r"\s+", "", text).lower()


def in_order(pieces: Iterator[str], text: str) -> list[str]:
    """Return the pieces that do not follow each other in a text."""
    whole, at, lost = close(text), 0, []
    for piece in pieces:
        found = whole.find(close(piece), at)
        if found < 0:
            lost.append(piece)
        else:
            at = found
    return lost


@pytest.mark.parametrize("name", ["juniper-venison", "orchard-turkey", "hostile"])
def test_the_sheet_has_every_word(name: str) -> None:
    """No word of the plan is lost on paper, whatever it says; steps stand in their order."""
    pages = PdfReader(io.BytesIO(plan_pdf(words(name)))).pages
    lost = in_order(said(words(name)), "\n".join(page.extract_text() for page in pages))

    assert [] == lost
    assert all(FOOT in page.extract_text() for page in pages)


@pytest.mark.parametrize("name", ["juniper-venison", "orchard-turkey", "hostile"])
def test_the_html_has_every_word(name: str) -> None:
    """No word is lost in HTML, nothing of a recipe becomes markup, and nothing runs."""
    parser = html5lib.HTMLParser(strict=True, namespaceHTMLElements=False)
    tree = parser.parse(html_plan(words(name)))
    body = tree.find("body")

    assert [] == in_order(said(words(name)), "".join(body.itertext()))
    assert [] == [one.tag for one in tree.iter() if one.tag in ("script", "img", "iframe", "link")]


def test_a_box_for_what_somebody_does() -> None:
    """Every attended step has its box, and nothing else has."""
    found = words("juniper-venison")
    parser = html5lib.HTMLParser(strict=True, namespaceHTMLElements=False)
    tree = parser.parse(html_plan(found))

    rows = [one for one in tree.iter("tr") if one.find("td") is not None]
    boxes = [any(cell.get("class") == "box" for cell in row.iter()) for row in rows]
    assert [row.attended for day in found.days for row in day.rows] == boxes


def test_the_same_words_make_the_same_bytes() -> None:
    """A sheet made twice is the same to the byte; paper follows the kitchen's units."""
    found = words("juniper-venison")

    assert plan_pdf(found) == plan_pdf(found)
    assert html_plan(found) == html_plan(found)
    sizes = [
        PdfReader(io.BytesIO(plan_pdf(found, units=units))).pages[0].mediabox
        for units in (None, "us", "metric")
    ]
    assert [(612, 792), (612, 792), (595, 842)] == [
        (round(float(box.width)), round(float(box.height))) for box in sizes
    ]
