"""The recipe card as one HTML file."""

from __future__ import annotations

import base64
import hashlib
import json
import re
from collections.abc import Callable, Iterator
from itertools import pairwise
from xml.etree.ElementTree import Element

import html5lib
import pytest

from tarebook.cards.content import Content, content
from tarebook.cards.worksheet import Worksheet
from tarebook.nutrition.range import Range
from tarebook.paper.html_card import html_card
from tarebook.paper.html_figures import mark
from tarebook.paper.reach import reach_of
from tarebook.paper.spelled import spelled
from tarebook.recipe.load import shipped_recipes

Shipped = Callable[..., Worksheet]

_GLYPHS = {"½": "1/2", "⅓": "1/3", "⅔": "2/3", "¼": "1/4", "¾": "3/4", "⅛": "1/8"}


def parsed(html: str) -> Element:
    """Return a page as a parser of the standard reads it; any fault of syntax raises."""
    parser = html5lib.HTMLParser(strict=True, namespaceHTMLElements=False)
    tree = parser.parse(html)
    assert isinstance(tree, Element)
    return tree


def elements(tree: Element, *names: str) -> list[Element]:
    """Return every element of these names, in the order of the page."""
    return [one for one in tree.iter() if one.tag in names]


def text_of(one: Element) -> str:
    """Return what an element says, with fractions as they are typed."""
    text = "".join(one.itertext())
    for glyph, typed in _GLYPHS.items():
        text = re.sub(rf"(?<=\d){glyph}", f" {typed}", text).replace(glyph, typed)
    return " ".join(text.split())


def words_of(card: Content) -> Iterator[str]:
    """Yield everything that a card says, piece by piece."""
    yield from (card.title, card.size, card.about, *card.cure, *map(spelled, card.conditions))
    for group in card.groups:
        yield group.heading
        for item in group.items:
            yield from (item.name, spelled(item.measure), item.weighs, item.note)
    yield from (*card.steps, *card.notes, card.figures_foot, *card.beneath, *card.allergens)
    for row in card.figures:
        yield from (row.name, row.amount, row.share, spelled(row.span))
    for caution in card.cautions:
        yield f"{caution.title}."
        yield caution.text
        yield from caution.citation.split("; ")
    yield card.foot


@pytest.fixture(params=[*shipped_recipes(), "hostile"])
def sheet(request: pytest.FixtureRequest, shipped: Shipped, hostile: Worksheet) -> Worksheet:
    """Return each shipped recipe, and the one written to do harm."""
    return hostile if request.param == "hostile" else shipped(request.param)


def test_it_is_valid_and_says_all_that_the_card_says(sheet: Worksheet) -> None:
    """A strict parser finds no fault; every word of the card is on the page, unscathed."""
    body = text_of(elements(parsed(html_card(sheet)), "body")[0])
    lost = [
        one
        for one in words_of(content(sheet))
        if " ".join(one.replace("\ufffe", "\ufffd").split()) not in body
    ]

    assert [] == lost


def test_a_recipe_adds_no_element_of_its_own(hostile: Worksheet) -> None:
    """However a recipe is worded: our elements only, no script but the data, no outside link."""
    tree = parsed(html_card(hostile))
    ours = {
        "html", "head", "meta", "title", "style", "script", "body", "header", "main", "footer",
        "section", "div", "h1", "h2", "h3", "p", "span", "bdi", "a", "ul", "ol", "li", "table",
        "thead", "tbody", "tr", "th", "td", "{http://www.w3.org/2000/svg}svg",
        "{http://www.w3.org/2000/svg}line", "{http://www.w3.org/2000/svg}circle",
    }  # fmt: skip

    assert set() == {one.tag for one in tree.iter()} - ours
    assert ["application/ld+json"] == [one.get("type") for one in elements(tree, "script")]
    assert all(one.get("href", "").startswith("#note-") for one in elements(tree, "a"))
    assert not any(name.startswith("on") for one in tree.iter() for name in one.attrib)
    assert not any("style" in one.attrib for one in tree.iter())


def test_the_data_inside_reads_back_whole(sheet: Worksheet) -> None:
    """The data block is JSON whatever the recipe says, with the title as on the page."""
    tree = parsed(html_card(sheet, date="2026-11-25"))
    (script,) = elements(tree, "script")
    data = json.loads(script.text or "")

    assert data["name"] == "".join(elements(tree, "h1")[0].itertext())
    assert "2026-11-25" == data["sdDatePublished"]


def test_its_policy_allows_its_own_style_sheet_and_nothing_else(sheet: Worksheet) -> None:
    """The hash in the policy is that of the style sheet on the page."""
    tree = parsed(html_card(sheet))
    (style,) = elements(tree, "style")
    (policy,) = [
        one.get("content", "")
        for one in elements(tree, "meta")
        if one.get("http-equiv") == "Content-Security-Policy"
    ]
    digest = base64.b64encode(hashlib.sha256((style.text or "").encode()).digest()).decode()

    assert [
        "default-src 'none'",
        f"style-src 'sha256-{digest}'",
        "base-uri 'none'",
        "form-action 'none'",
    ] == policy.split("; ")


def test_nothing_is_fetched(sheet: Worksheet) -> None:
    """No address to load anything from, in markup or style sheet."""
    html = html_card(sheet)
    tree = parsed(html)
    (style,) = elements(tree, "style")

    assert not re.search(r"url\(|@import|@font-face", style.text or "")
    assert not elements(tree, "link", "img", "iframe", "object", "video", "audio", "source")
    assert not any({"src", "srcset", "action", "poster"} & set(one.attrib) for one in tree.iter())


def test_headings_go_down_step_by_step(sheet: Worksheet) -> None:
    """One heading of the first rank, first of all; none skips a rank."""
    ranks = [int(one.tag[1]) for one in elements(parsed(html_card(sheet)), "h1", "h2", "h3")]

    assert 1 == ranks[0] and 1 == ranks.count(1)
    assert all(after <= before + 1 for before, after in pairwise(ranks))


def test_every_part_has_a_place_and_a_name(sheet: Worksheet) -> None:
    """Header, main part and footer once each; every section and table named by a heading."""
    tree = parsed(html_card(sheet))
    headings = {one.get("id"): text_of(one) for one in elements(tree, "h2")}
    (body,) = elements(tree, "body")

    assert "en" == tree.get("lang")
    assert ["header", "main", "footer"] == [one.tag for one in body]
    named = elements(tree, "section", "table")
    assert len(named) > 5
    assert all(headings[one.get("aria-labelledby")] for one in named)


def test_ids_are_unique_and_every_link_leads_somewhere(sheet: Worksheet) -> None:
    """No id stands twice, and each note mark leads to a note with that number."""
    tree = parsed(html_card(sheet))
    ids = [one.get("id") for one in tree.iter() if one.get("id")]
    notes = [one.get("id") for one in elements(tree, "li") if one.get("id")]
    marks = elements(tree, "a")

    assert len(ids) == len(set(ids))
    assert [f"note-{n}" for n in range(1, len(notes) + 1)] == notes
    assert marks and {one.get("href", "")[1:] for one in marks} == set(notes)
    assert all(one.get("href") == f"#note-{one.text}" for one in marks)
    assert all(one.get("aria-label", "").startswith(f"{one.text}, ") for one in marks)


def test_every_cell_has_a_column_and_a_row_to_its_name(sheet: Worksheet) -> None:
    """Column heads and row heads say what they head; every row is as broad as the head."""
    for table in elements(parsed(html_card(sheet)), "table"):
        head, *rows = elements(table, "tr")
        assert rows
        assert {"col"} == {one.get("scope") for one in head}
        assert {"th"} == {one.tag for one in head}
        for row in rows:
            assert len(head) == len(row)
            assert ["row"] == [one.get("scope") for one in row if one.tag == "th"]


def test_a_note_says_who_says_so(shipped: Shipped) -> None:
    """The marks of a caution lead to the bodies that its citation names."""
    sheet = shipped()
    tree = parsed(html_card(sheet))
    notes = {one.get("id"): text_of(one) for one in elements(tree, "li") if one.get("id")}
    said = [
        "; ".join(notes[mark.get("href", "")[1:]] for mark in elements(item, "a"))
        for item in elements(tree, "li")
        if elements(item, "h3")
    ]

    assert [one.citation for one in sheet.cautions] == said


def test_a_range_is_drawn_and_told() -> None:
    """Ends and dot lie where the figures are; beside words that say it, it is not heard."""
    span = Range(low=150, likely=200, high=300, unit="mg")
    drawn = mark(span, 0.5).source

    assert 'aria-hidden="true"' in drawn
    assert '<line x1="25.0%" x2="100.0%"' in drawn
    assert '<circle cx="50%"' in drawn


def test_the_widest_range_sets_the_reach_of_all() -> None:
    """One scale for a table, so that a longer line is a less sure figure."""
    narrow = Range(low=95, likely=100, high=105, unit="mg")
    wide = Range(low=0.4, likely=1.0, high=1.3, unit="g")

    assert 0.25 == reach_of([narrow])
    assert 0.75 == reach_of([narrow, wide])
    assert 0.25 == reach_of([])


def test_only_what_has_a_range_is_drawn(sheet: Worksheet) -> None:
    """A floor, an unknown and a plain nothing have no line to show."""
    tree = parsed(html_card(sheet))
    rows = {row.name: row for row in content(sheet).figures}
    (figures,) = [one for one in elements(tree, "section") if one.get("class") == "figures"]
    drawn = [
        text_of(elements(row, "th")[0])
        for row in elements(figures, "tr")
        if any("svg" in one.tag for one in row.iter())
    ]

    assert drawn
    assert all(rows[name].span for name in drawn)


def test_the_gravest_cautions_are_marked(shipped: Shipped) -> None:
    """Warnings carry a mark of their own, mere notes do not."""
    sheet = shipped()
    items = [one for one in elements(parsed(html_card(sheet)), "li") if elements(one, "h3")]

    assert ["plain" if one.severity.value == "note" else "grave" for one in sheet.cautions] == [
        one.get("class") for one in items
    ]
    assert {"plain", "grave"} == {one.get("class") for one in items}
    heard = [elements(one, "h3")[0].get("aria-label", "") for one in items]
    assert [one.get("class") == "grave" for one in items] == [
        one.startswith("Important: ") for one in heard
    ]


def test_a_date_stands_only_where_it_was_given(shipped: Shipped) -> None:
    """No date of its own: with one, the foot bears it."""
    assert not elements(parsed(html_card(shipped())), "time")
    (time,) = elements(parsed(html_card(shipped(), date="2026-11-25")), "time")
    assert ("2026-11-25", "2026-11-25") == (time.get("datetime"), time.text)


def test_the_same_sheet_makes_the_same_bytes(sheet: Worksheet) -> None:
    """Twice the same, to the last byte."""
    assert html_card(sheet) == html_card(sheet)


@pytest.mark.parametrize("name", shipped_recipes())
def test_nothing_is_claimed(name: str, shipped: Shipped) -> None:
    """No word of ours praises what is in it or not, or calls it safe; a cited title may."""
    sheet = shipped(name)
    bought = {one.name for group in content(sheet).groups for one in group.items}
    bought |= {one.name for one in sheet.recipe.ingredients}
    bought.add("on a diet low in salt")  # advice about the eater, not about the meat
    sections = elements(parsed(html_card(sheet)), "section", "header", "footer")
    said = [one for part in sections if part.get("class") != "who" for one in _pieces(part)]
    claims = (
        r"(?i)\b(?:low|reduced|free|lean|light|no added|less|good source|rich|healthy)\b.{0,4}"
        r"(?:sodium|salt|sugar|fat|calorie|protein)|\bsafe(?:ly|r)?\b|\bhealthy\b"
    )
    ours = [re.sub("|".join(re.escape(n) for n in bought), "", one) for one in said]

    assert len(ours) > 50
    assert [] == [one for one in ours if re.search(claims, one)]


def _pieces(part: Element) -> Iterator[str]:
    """Yield what stands in each element alone, so that neighbouring cells make no phrase."""
    for one in part.iter():
        yield from (" ".join(text.split()) for text in (one.text, one.tail) if text)


def test_no_sign_stands_for_a_word(sheet: Worksheet) -> None:
    """Ranges say "to", several of a measure "×"; a line to write on is heard as one."""
    tree = parsed(html_card(sheet))
    (figures,) = [one for one in elements(tree, "section") if one.get("class") == "figures"]
    said = [text_of(one) for one in elements(tree, "td")]
    said += [text_of(one) for lst in elements(tree, "ul") for one in lst if lst.get("class")]
    blank = [one for one in figures.iter() if one.get("role") == "img"]

    assert any(" to " in one for one in said)
    assert [] == [one for one in said if re.search(r"\d-\d|\d x \d", one)]
    assert all(set("".join(one.itertext())) == {"_"} and one.get("aria-label") for one in blank)
    assert len(re.findall("__+", text_of(figures))) == len(blank)


def test_no_cell_is_empty(sheet: Worksheet) -> None:
    """Where nothing is printed, a voice tells why: no daily value, no upper figure, not known."""
    tree = parsed(html_card(sheet))
    rows = {row.name: row for row in content(sheet).figures}
    (table,) = [one for one in elements(tree, "table") if one.get("aria-labelledby") == "figures"]
    for row in elements(table, "tr")[1:]:
        name, amount, share, span = map(text_of, row)
        told = rows[name]
        assert amount == told.amount
        assert share == (told.share or share) != ""
        assert span == (spelled(told.span) or span) != ""
        if told.amount == "not known":
            assert ("not known", "not known") == (share, span)
        elif told.amount.startswith("at least"):
            assert told.span or "no upper figure" == span
            assert share in ("not reckoned", "no daily value")


def test_what_dv_means_is_said_once(sheet: Worksheet) -> None:
    """The short form is spelled out above the table that uses it."""
    (body,) = elements(parsed(html_card(sheet)), "body")

    assert 1 == text_of(body).count("DV: the daily value")
