"""Every reader of what others write: where to start from, and what a right answer is.

Each gives a value or a fault that is documented, and says nothing that could move a cursor.
"""

from __future__ import annotations

import csv
import io
import json
import re
from collections.abc import Callable, Sequence
from contextlib import redirect_stderr, redirect_stdout
from datetime import UTC, datetime
from fractions import Fraction
from functools import cache
from html.parser import HTMLParser
from pathlib import Path
from typing import Any, NamedTuple

import sources
from judged import Refused, fault_wrong, findings_wrong
from taken_in import line_wrong, page_wrong, tidy_wrong

from tarebook.cards.lines import clean
from tarebook.cards.sheet import sheet
from tarebook.cards.spreadsheet import scale_rows
from tarebook.cards.text_card import text_card
from tarebook.cards.worksheet import worksheet
from tarebook.cells import csv_text
from tarebook.clocks.moments import read_moment
from tarebook.findings import Severity, TarebookError
from tarebook.kitchen.read import read_kitchen
from tarebook.lookup.answers import read_food, read_search
from tarebook.probe.log import read_log
from tarebook.quantities.amount import parse_amount
from tarebook.recipe import Recipe, read_recipe
from tarebook.recipe.bottle import read_bottle
from tarebook.recipe.write import to_toml
from tarebook.recipe.write_bottle import bottle_toml
from tarebook.records.bring import read_file
from tarebook.safety import check
from tarebook.shopping.pantry import read_pantry
from tarebook.where import folder

CARD_EVERY = 3
PAGE_EVERY = 30
NOW = datetime(2026, 11, 25, 9, 0, tzinfo=UTC)
TESTS = Path(__file__).parents[1]
_read = {"recipes": 0}


class Reader(NamedTuple):
    """What to start from, and a function that says what is wrong with an answer, or nothing."""

    sources: Callable[[], Sequence[bytes]]
    wrong: Callable[[bytes], str]


def _recipe(data: bytes) -> str:
    recipe, findings = read_recipe(data, file="fuzz.toml")
    wrong = findings_wrong(findings, data, found=recipe is not None)
    if wrong:
        return wrong
    if recipe is None:
        raise Refused
    again, _ = read_recipe(to_toml(recipe), file="fuzz.toml")
    if recipe != again:
        return "written and read again it is another recipe"
    check(recipe)
    _read["recipes"] += 1
    return _printed(recipe) if _read["recipes"] % CARD_EVERY == 0 else ""


def _printed(recipe: Recipe) -> str:
    """Take a recipe all the way to what is printed, and look for what it could smuggle in."""
    try:
        done = worksheet(recipe, factor=Fraction(12, 5))
    except TarebookError as fault:
        return fault_wrong(fault)
    lines = [*sheet(done), *text_card(done)]
    if any(line.text != clean(line.text) for line in lines):
        return "a sheet or card with what no terminal should get"
    if _read["recipes"] % PAGE_EVERY:
        return ""
    for row in csv.reader(io.StringIO(csv_text(scale_rows(done)))):
        if any(cell[:1] in ("=", "+", "@", "\t", "\r") for cell in row):
            return f"a cell that a spreadsheet would run: {row!r}"
    from tarebook.paper.html_card import html_card
    from tarebook.paper.markdown_card import markdown_card

    markdown_card(done)
    return _page_wrong(html_card(done))


def _page_wrong(page: str) -> str:
    found = _Tags()
    found.feed(page)
    strange = found.tags - _tags_of_shipped()
    if strange or found.handlers:
        return f"a page with {strange or found.handlers} that we never write"
    for text in found.scripts:
        json.loads(text)
    return ""


class _Tags(HTMLParser):
    def __init__(self) -> None:
        super().__init__()
        self.tags: set[str] = set()
        self.handlers: set[str] = set()
        self.scripts: list[str] = []
        self._in_script = False

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.tags.add(tag)
        self.handlers |= {name for name, _ in attrs if name.startswith("on")}
        self._in_script = tag == "script"

    def handle_endtag(self, tag: str) -> None:
        self._in_script = False

    def handle_data(self, data: str) -> None:
        if self._in_script:
            self.scripts.append(data)


@cache
def _tags_of_shipped() -> frozenset[str]:
    from tarebook.paper.html_card import html_card

    found = _Tags()
    for data in _recipes():
        recipe, _ = read_recipe(data, file="shipped.toml")
        if recipe is not None:
            try:
                found.feed(html_card(worksheet(recipe, factor=Fraction(1))))
            except TarebookError:
                continue
    return frozenset(found.tags)


@cache
def _recipes() -> tuple[bytes, ...]:
    shipped = sorted(folder("recipes").glob("*.toml"))
    own = [sources.KITCHEN_SINK, sources.SMALLEST, sources.KITCHEN_SINK.replace("\n", "\r\n")]
    return (*(path.read_bytes() for path in shipped), *(text.encode() for text in own))


def _bottle(data: bytes) -> str:
    bottle, findings = read_bottle(data, key="lakeside", file="lakeside.toml")
    wrong = findings_wrong(findings, data, found=bottle is not None)
    if wrong:
        return wrong
    if bottle is None:
        raise Refused
    again, _ = read_bottle(bottle_toml(bottle), key="lakeside", file="lakeside.toml")
    return "" if bottle == again else "written and read again it is another bottle"


def _kitchen(data: bytes) -> str:
    _, findings = read_kitchen(data, file="kitchen.toml")
    errors = any(one.severity is Severity.ERROR for one in findings)
    wrong = findings_wrong(findings, data, found=not errors)
    if errors and not wrong:
        raise Refused
    return wrong


def _pantry(data: bytes) -> str:
    pantry, findings = read_pantry(data, file="pantry.toml")
    wrong = findings_wrong(findings, data, found=pantry is not None)
    if pantry is None and not wrong:
        raise Refused
    return wrong


def _log(data: bytes) -> str:
    column = "meat" if b"Meat" in data else ""
    log = read_log(data, file="fuzz.csv", column=column, scale="f")
    times = [one.seconds for one in log.readings]
    if times != sorted(times) or len(times) < 2:
        return "readings out of order, or fewer than two"
    # A file without any line feed ends its lines with the other mark.
    lines = data if b"\n" in data else data.replace(b"\r", b"\n")
    return findings_wrong(log.findings, lines, found=True)


def _book(data: bytes) -> str:
    name = "book.csv" if b"," in data[:40] else "book.toml"
    carried = read_file(data, file=name)
    return "" if isinstance(carried.bundle.batches, tuple) else "no batches"


@cache
def _books() -> tuple[bytes, ...]:
    """Return a book of one batch in both forms, as the program writes them."""
    import os
    import tempfile

    from tarebook.cli.main import run

    with tempfile.TemporaryDirectory() as home, redirect_stdout(None), redirect_stderr(None):
        os.environ["TAREBOOK_HOME"] = home
        written = []
        for words in (
            ["batch", "start", "juniper-venison", "--meat", "6lb"],
            ["batch", "weigh", "soaked", "3 kg"],
            ["batch", "note", "=cmd()", "--next-time"],
            ["batch", "temp", "161 F", "--where", "meat"],
            ["batch", "undo"],
            ["batch", "finish"],
            ["batch", "export", "-o", f"{home}/book.toml"],
            ["batch", "export", "-o", f"{home}/book.csv"],
        ):
            try:
                run(words)
            except SystemExit:
                continue
        for name in ("book.toml", "book.csv"):
            file = Path(home, name)
            if file.exists():
                written.append(file.read_bytes())
        del os.environ["TAREBOOK_HOME"]
    assert len(written) == 2, "the program exported no book"
    return tuple(written)


def _answer(data: bytes) -> str:
    if b'"foods"' in data:
        found = read_search(data)
        told = [f"{hit}" for hit in found.foods]
    else:
        asked = re.search(rb'"fdcId": *(\d{1,12})', data)
        told = [f"{read_food(data, fdc_id=int(asked[1]) if asked else 0)}"]
    return "" if all("\x1b" not in text for text in told) else "an escape that gets through"


def _answers() -> Sequence[bytes]:
    return [(TESTS / "lookup" / f"{name}.json").read_bytes() for name in ("food", "search", "pack")]


def _amount(data: bytes) -> str:
    text = data.decode("utf-8", "replace")
    found = parse_amount(text)
    again = parse_amount(str(found))
    return "" if found == again else f"{text!r} reads as {found}, and that as {again}"


def _moment(data: bytes) -> str:
    text = data.decode("utf-8", "replace")
    found, _ = read_moment(text, NOW, past="yesterday" in text)
    return "" if found.tzinfo else f"{text!r} has no zone"


def _pages() -> Sequence[bytes]:
    saved = [(TESTS / "exchange" / name).read_bytes() for name in ("page.html", "page.json")]
    return [sources.PAGE.encode(), *saved]


def _lines() -> Sequence[bytes]:
    own = (TESTS / "exchange" / "lines-own.txt").read_bytes().splitlines()
    return [sources.LINE.encode(), *(row.partition(b" | ")[0] for row in own)]


def _untidy() -> Sequence[bytes]:
    return [*_recipes(), sources.BOTTLE.encode(), sources.REMARKS.encode()]


def _texts(*texts: str) -> Callable[[], Sequence[bytes]]:
    return lambda: [text.encode() for text in texts]


READERS: dict[str, Reader] = {
    "recipe": Reader(_recipes, _recipe),
    "bottle": Reader(_texts(sources.BOTTLE), _bottle),
    "kitchen": Reader(_texts(sources.KITCHEN), _kitchen),
    "pantry": Reader(_texts(sources.PANTRY), _pantry),
    "log": Reader(_texts(sources.LOG, sources.LOG_OF_CLOCKS), _log),
    "book": Reader(_books, _book),
    "answer": Reader(_answers, _answer),
    "amount": Reader(_texts(*sources.AMOUNTS), _amount),
    "line": Reader(_lines, line_wrong),
    "page": Reader(_pages, page_wrong),
    "tidy": Reader(_untidy, tidy_wrong),
    "moment": Reader(_texts(*sources.MOMENTS), _moment),
}


def wrong_with(reader: Reader, data: bytes) -> tuple[str, Any]:
    """Return what is wrong with an answer, or nothing, and whether a value came of it."""
    try:
        return reader.wrong(data), True
    except Refused:
        return "", False
    except TarebookError as fault:
        return fault_wrong(fault), False
