"""The builder of HTML: text stays text, whatever it is."""

from __future__ import annotations

import json
from html import unescape

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tarebook.paper.elements import Markup, data_block, element, fit, page, style


@given(st.text())
def test_text_cannot_open_a_tag_or_leave_an_attribute(text: str) -> None:
    """Whatever a text holds, what stands in the page reads back as that text and nothing more."""
    made = element("b", text, title=text).source
    before, _, rest = made.partition('title="')
    value, _, inside = rest.partition('">')

    assert "<b " == before
    assert fit(text) == unescape(value)
    assert inside.endswith("</b>")
    assert "<" not in inside.removesuffix("</b>") and '"' not in value
    shown = unescape(inside.removesuffix("</b>"))
    assert fit(text).replace("\xa0", " ") == shown.replace("\xa0", " ")


def test_markup_is_not_escaped_twice() -> None:
    """An element inside an element is that element."""
    assert "<b>a &amp; <b>b</b></b>" == element("b", "a & ", element("b", "b")).source


def test_attributes_are_named_as_html_names_them() -> None:
    """``class_`` is ``class``; ``aria_label`` is ``aria-label``."""
    assert '<b class="x" aria-label="y"></b>' == element("b", class_="x", aria_label="y").source


def test_an_element_that_holds_nothing_closes_itself() -> None:
    """Inside a drawing, a line left open would swallow what follows."""
    assert '<line x1="0"/>' == element("line", x1="0").source


def test_numbers_keep_their_units() -> None:
    """A line never ends between a number and its degree sign or gram."""
    shown = element("b", "at 160 °F (71 °C), 12 g or 3 % in 4 gulps").source

    assert "at 160\xa0°F (71\xa0°C), 12\xa0g or 3\xa0% in 4 gulps" in shown


def test_what_is_no_character_is_replaced() -> None:
    """Code points that HTML forbids are shown as replaced; control characters as spaces."""
    assert "a�b�c d e" == fit("a\ufffeb\ufdd0c\x00d\u202ee")
    assert "\N{CJK UNIFIED IDEOGRAPH-4E00}½😀" == fit("\N{CJK UNIFIED IDEOGRAPH-4E00}½😀")


@given(
    st.recursive(st.text(), lambda inner: st.lists(inner) | st.dictionaries(st.just("key"), inner))
)
def test_data_can_neither_end_its_script_nor_comment_it_out(data: object) -> None:
    """What is written as data holds no angle bracket, and reads back as the same data."""
    made = data_block({"a": data}).source
    inside = made.split("\n", 1)[1].rsplit("\n", 2)[0]

    assert not set("<>&") & set(inside)
    assert {"a": _fitted(data)} == json.loads(inside)


def _fitted(data: object) -> object:
    if isinstance(data, str):
        return fit(data)
    if isinstance(data, dict):
        return {key: _fitted(value) for key, value in data.items()}
    assert isinstance(data, list)
    return [_fitted(one) for one in data]


def test_a_style_sheet_cannot_hold_markup() -> None:
    """A style sheet that would end its own element is refused."""
    for css in ("a {} </style>", "<!-- a"):
        with pytest.raises(ValueError, match="markup"):
            style(css)
    assert "<style>a {}</style>\n" == style("a {}").source


def test_a_page_names_its_kind_and_language() -> None:
    """HTML, in English."""
    assert page(Markup("x")).startswith('<!DOCTYPE html>\n<html lang="en">x')
