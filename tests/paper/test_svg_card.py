"""A card as one SVG picture."""

from __future__ import annotations

from collections.abc import Callable
from xml.etree import ElementTree

import pytest

from tarebook.cards.lines import plain_text
from tarebook.cards.text_card import text_card
from tarebook.cards.worksheet import Worksheet
from tarebook.paper.card import card_pages
from tarebook.paper.sizes import card_size
from tarebook.paper.svg_card import stacked

SVG = "{http://www.w3.org/2000/svg}"
LINK = "{http://www.w3.org/1999/xlink}href"


def picture(sheet: Worksheet, size: str = "4x6in") -> ElementTree.Element:
    """Return a card as a parsed picture."""
    sides = card_pages(sheet, card_size(size), form="svg", tell=lambda _: None)
    title, text = sheet.recipe.title, plain_text(text_card(sheet))
    return ElementTree.fromstring(stacked(sides, title=title, text=text))


def test_all_sides_stand_under_one_another(shipped: Callable[..., Worksheet]) -> None:
    """The picture is as high as its sides with their gaps, and each has its outline."""
    sheet = shipped("juniper-venison")
    sides = card_pages(sheet, card_size("4x6in"), form="svg")
    root = picture(sheet)
    _, _, width, height = map(float, root.attrib["viewBox"].split())
    groups = [one for one in root if one.tag == f"{SVG}g"]

    assert (432 + 28, len(sides) * (288 + 14) + 14) == (width, height)
    assert [f"translate(14 {14 + n * 302})" for n in range(len(sides))] == [
        one.attrib["transform"] for one in groups
    ]
    assert all("#999" == one[-1].attrib["stroke"] for one in groups)


def test_every_shape_is_there_once(shipped: Callable[..., Worksheet]) -> None:
    """No name is given twice, and none that is used is missing."""
    root = picture(shipped("juniper-venison"))
    names = [one.attrib["id"] for one in root.iter() if "id" in one.attrib]
    used = {one.attrib[LINK].removeprefix("#") for one in root.iter() if LINK in one.attrib}

    assert len(names) == len(set(names))
    assert used and used <= set(names)
    assert {"svg", "title", "desc", "defs", "symbol", "g", "path", "use"} >= {
        one.tag.removeprefix(SVG) for one in root.iter()
    }


@pytest.mark.parametrize("which", ["shipped", "hostile"])
def test_title_and_words_are_there_to_be_read_aloud(
    which: str, shipped: Callable[..., Worksheet], hostile: Worksheet
) -> None:
    """Who cannot see the picture is told its title and all its words; none becomes markup."""
    sheet = hostile if which == "hostile" else shipped("woodland-mushrooms")
    root = picture(sheet)
    title, text = root.find(f"{SVG}title"), root.find(f"{SVG}desc")
    assert title is not None and text is not None

    assert ("img", "title description") == (root.attrib["role"], root.attrib["aria-labelledby"])
    assert sheet.recipe.title.replace("\ufffe", "\ufffd") == title.text
    assert plain_text(text_card(sheet)).replace("\ufffe", "\ufffd").strip() == text.text
    assert not any("script" in one.tag for one in root.iter())


def test_what_is_no_picture_of_the_engine_is_refused() -> None:
    """A new way of the engine's to write pictures would be noticed, not guessed at."""
    with pytest.raises(ValueError, match="not known here"):
        stacked([b"<svg/>"], title="", text="")
