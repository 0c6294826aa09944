"""Finding the Recipe in a file, and refusing in words what is hostile or broken."""

from __future__ import annotations

import json
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tarebook.exchange.page import MOST_BYTES, find_recipe
from tarebook.findings import FileUnreadable

RECIPE = {"@type": "Recipe", "name": "Lake strips"}


def found(value: Any) -> tuple[Any, int]:
    """Return what is found in a value written as JSON."""
    return find_recipe(json.dumps(value).encode(), "page.json")


@pytest.mark.parametrize(
    "value",
    [
        RECIPE,
        [RECIPE],
        {"@graph": [{"@type": "WebPage"}, RECIPE]},
        {"@type": "WebPage", "mainEntity": {"x": [[RECIPE]]}},
        {**RECIPE, "@type": ["Thing", "Recipe"]},
        {**RECIPE, "@type": "https://schema.org/Recipe"},
        {**RECIPE, "@type": "schema:Recipe"},
    ],
)
def test_the_recipe_is_found_wherever_it_stands(value: Any) -> None:
    """A Recipe is found in a graph, a list, another thing, and with its type in any spelling."""
    recipe, others = found(value)

    assert ("Lake strips", 0) == (recipe["name"], others)


def test_the_first_of_several_is_taken_and_the_others_are_counted() -> None:
    """Of three recipes the first is taken, and two more are told of."""
    recipe, others = found([RECIPE, {**RECIPE, "name": "b"}, {**RECIPE, "name": "c"}])

    assert ("Lake strips", 2) == (recipe["name"], others)


def test_a_saved_page_is_read() -> None:
    """The block of linked data in a page is found, past other scripts and a broken block."""
    page = (
        "<!DOCTYPE html><html><script>let a = '<b>';</script>"
        '<SCRIPT type="application/ld+json">{"broken": </SCRIPT>'
        "<script class=x type='application/ld+json'><!--"
        f"{json.dumps(RECIPE)}--></script>"
    )

    assert "Lake strips" == find_recipe(page.encode(), "page.html")[0]["name"]


def test_byte_order_marks_and_wide_letters_are_read() -> None:
    """Files as Windows saves them are read: with a mark in front, or in UTF-16."""
    text = json.dumps(RECIPE)

    for data in (text.encode("utf-8-sig"), text.encode("utf-16")):
        assert "Lake strips" == find_recipe(data, "page.json")[0]["name"]


@pytest.mark.parametrize(
    ("data", "words"),
    [
        (b"", "a value is missing"),
        (b"{", "line 1, column 2"),
        (b"[" * 100_000, "nested too deeply"),
        (b'{"a":' * 50 + b"1" + b"}" * 50, "nested too deeply"),
        (b'{"@type": "Recipe", "name": "a", "name": "b"}', '"name" is told twice'),
        (b'{"@type": "Recipe", "name": "a\x00b"}', "control character"),
        (b'{"@type": "Recipe", "name": NaN}', "NaN is no number"),
        (b'{"@type": "Recipe", "name": ' + b"9" * 10_000 + b"}", "a number too long"),
        (b'{"@type": "Article"}', "holds no Recipe"),
        (b"[1, 2, null]", "holds no Recipe"),
        (b'"Recipe"', "holds no Recipe"),
        (b"\xff\x00", "no text in UTF-8"),
        (b"<html><body>Recipe</body></html>", "without any application/ld+json block"),
        (b'<script type="application/ld+json">{</script>', "cannot be read as JSON"),
        (b'{"x": "' + b"a" * MOST_BYTES + b'"}', "more than 5,000,000 bytes"),
        (json.dumps([0] * 300_000).encode(), "more than 200,000 values"),
        (b'{"@type": "Recipe"} {"@type": "Recipe"}', "more follows"),
    ],
)
def test_what_is_hostile_or_broken_is_refused_in_words(data: bytes, words: str) -> None:
    """Each way of being wrong has its own words, and never another exception."""
    with pytest.raises(FileUnreadable) as refused:
        find_recipe(data, "page.json")

    assert words in str(refused.value)


@given(st.binary(max_size=400) | st.text(max_size=400).map(lambda text: text.encode()))
def test_any_bytes_are_read_or_refused(data: bytes) -> None:
    """Any bytes give a recipe or a refusal in words."""
    try:
        recipe, _ = find_recipe(data, "x")
    except FileUnreadable as refused:
        assert str(refused)
    else:
        assert recipe
