"""The days of a batch as a printed sheet and as HTML: every word of the page is on them."""

from __future__ import annotations

import io
import re
from collections.abc import Iterator
from datetime import datetime
from fractions import Fraction
from functools import cache
from typing import Any
from zoneinfo import ZoneInfo

import html5lib
import pytest
from pypdf import PdfReader

from tarebook.cards.plan_content import PlanContent, others, plan_content
from tarebook.clocks.zones import minute_of
from tarebook.kitchen import Kitchen, Tray
from tarebook.paper.html_plan import html_plan
from tarebook.paper.plan import FOOT, plan_pdf, sheet_cautions
from tarebook.paper.spelled import spelled
from tarebook.paper.who_says_so import citations_of
from tarebook.plan.jobs import job_of
from tarebook.plan.make import Wish, make_plan
from tarebook.plan.trays import dryer_of
from tarebook.recipe import load_recipe
from tarebook.recipe.model import Recipe
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
def words(*names: str, short: bool = False) -> PlanContent:
    """Return the words of a plan of recipes; one of them may be hostile."""
    dryer = dryer_of(FIVE)
    pounds = Fraction("453.59237") * 11
    jobs = [
        job_of(opened(name), meat_g=pounds / len(names), kitchen=FIVE, dryer=dryer)
        for name in names
    ]
    now = minute_of(datetime(2026, 11, 25, 9, tzinfo=ZONE))
    wish = Wish(now=now, start=now, nights=((22, 0), (6, 0)))
    found = make_plan(jobs, dryer, wish, ZONE)
    return plan_content(found, zone_name="America/Chicago", short=short)


def opened(name: str) -> Recipe:
    """Return a shipped recipe, or the hostile one."""
    if name != "hostile":
        return load_recipe(name)[0]
    recipe, findings = read_recipe(HOSTILE, file="hostile.toml")
    assert recipe is not None, [str(one) for one in findings]
    return recipe


def said(found: PlanContent) -> Iterator[str]:
    """Yield every piece of text of a plan, in the order of the page."""
    yield found.when
    for head in found.heads:
        yield from (head.title, head.size)
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
    tree = parsed(words(name))
    body = tree.find("body")

    text = spelled("".join(body.itertext()))
    told = {one.citation for one in sheet_cautions(words(name))}
    assert [] == in_order((spelled(one) for one in said(words(name)) if one not in told), text)
    bodies = {one for each in sheet_cautions(words(name)) for one in citations_of(each)}
    assert [] == [one for one in bodies if close(spelled(one)) not in close(text)]
    assert [] == [one.tag for one in tree.iter() if one.tag in ("script", "img", "iframe", "link")]


def headings(tree: Any, level: str) -> list[str]:
    """Return the headings of a level."""
    return ["".join(one.itertext()).strip() for one in tree.iter(level)]


def parsed(found: PlanContent) -> Any:
    """Return the HTML of a plan as a tree."""
    parser = html5lib.HTMLParser(strict=True, namespaceHTMLElements=False)
    return parser.parse(html_plan(found))


def test_headings_say_that_it_is_a_plan_and_whose() -> None:
    """One heading of the first level, in the title too; recipes are of the second."""
    found = words("juniper-venison", "woodland-mushrooms")
    tree = parsed(found)

    assert ["The days"] == headings(tree, "h1")
    assert ["A Juniper venison strips", "B Woodland mushroom strips"] == headings(tree, "h2")[:2]
    assert ["The days: Juniper venison strips; Woodland mushroom strips"] == headings(tree, "title")
    (pdf,) = [PdfReader(io.BytesIO(plan_pdf(found)))]
    assert pdf.metadata is not None
    assert headings(tree, "title") == [pdf.metadata.title]


def test_every_column_and_cell_says_something() -> None:
    """No header and no cell is empty; who is needed is told as a word that stands alone."""
    tree = parsed(words("juniper-venison"))
    cells = ["".join(one.itertext()) for tag in ("td", "th") for one in tree.iter(tag)]

    assert all(cell.strip() for cell in cells)
    heads = [one.text for one in tree.find(".//thead").iter("th")]
    assert ["at", "what", "takes", "who, or until"] == heads
    last = {"".join(row[-1].itertext()) for row in tree.iter("tr") if row.find("td") is not None}
    assert "by you" in last and all(one == "by you" or one.startswith("to ") for one in last)


def test_rows_stay_rows_on_a_phone() -> None:
    """Where rows are set as lines, roles say that it is a table still."""
    tree = parsed(words("juniper-venison"))

    roles = {"table": "table", "tr": "row", "td": "cell", "thead": "rowgroup", "tbody": "rowgroup"}
    for tag, role in roles.items():
        assert {role} == {one.get("role") for one in tree.iter(tag)}
    assert {"rowheader", "columnheader"} == {one.get("role") for one in tree.iter("th")}


def test_grave_cautions_are_headed_and_called_important() -> None:
    """Each caution has a heading of its own; a grave one says so in words, and for whom."""
    found = words("juniper-venison", "woodland-mushrooms")
    heads = headings(parsed(found), "h3")

    assert [f"{one.title}." for one in sheet_cautions(found)] == heads
    assert [one.grave for one in found.cautions] == [
        one.startswith(("Important: ", "Important for ")) for one in heads
    ]
    assert "Important for B: Gathered mushrooms." in heads


def test_a_box_for_what_somebody_does() -> None:
    """Every attended step has its box, and nothing else has."""
    found = words("juniper-venison")
    tree = parsed(found)

    rows = [one for one in tree.iter("tr") if one.find("td") is not None]
    boxes = [any(cell.get("class") == "box" for cell in row.iter()) for row in rows]
    assert [row.attended for day in found.days for row in day.rows] == boxes


def test_short_pages_have_every_word_of_the_short_plan() -> None:
    """HTML and paper in the short form: its words, the other titles, no note of who says so."""
    found = words("juniper-venison", short=True)
    text = spelled("".join(parsed(found).find("body").itertext()))
    pages = PdfReader(io.BytesIO(plan_pdf(found))).pages
    paper = "\n".join(page.extract_text() for page in pages)
    cited = {one.citation for one in sheet_cautions(found)}
    told = [one for one in (*said(found), *others(found)) if one not in cited]

    assert found.also and not found.counted and not found.to_know
    assert [] == in_order(map(spelled, told), text) == in_order(iter(told), paper)
    assert "Who says so" not in text and close(min(cited)) not in close(text + paper)


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


def test_an_option_is_never_broken() -> None:
    """What is to be typed stands in one piece, however narrow the page."""
    found = words("juniper-venison", short=True)
    spans = [one.text for one in parsed(found).iter("span") if one.get("class") == "whole"]

    assert ["--short."] == spans
